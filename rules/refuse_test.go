package rules_test

import (
	"strings"
	"testing"

	"wornfit/rules"
)

// One fault planted in a sound base is told, and nothing else: the faults that
// would follow from it are not.
func TestOneFaultIsToldOnce(t *testing.T) {
	for _, c := range []struct{ file, edit, says, remedy string }{
		// sources
		{"sources.yaml", "how: page} => how: paged}", `"paged" is not a word known here`, "did you mean page?"},
		{"criteria.yaml", "most_energy: {value: 500 J, from: practice => most_energy: {value: 500 J, from: from memory of nobody", "there is no source nobody", ""},
		{"criteria.yaml", "most_energy: {value: 500 J, from: practice => most_energy: {value: 500 J, from: handbook and handbok", "there is no source handbok", "did you mean handbook?"},
		// vocabulary
		{"vocabulary/hub.yaml", "hub.outside, says: outside diameter of the hub, role: given, quantity: length => hub.outside, says: outside diameter of the hub, role: given, quantity: lenght", "there is no kind of quantity lenght", "did you mean length?"},
		{"vocabulary/hub.yaml", "range: 3 mm to 2 m => range: 3 to 2000", `has no unit`, ""},
		{"vocabulary/fit.yaml", "duty.load, says: load across the fit, role: given => duty.load, says: load across the fit, role: giver", `"giver" is not a word known here`, "did you mean given?"},
		{"vocabulary/fit.yaml", "example: steady => example: stedy", `"stedy" is not a word known here`, "did you mean steady?"},
		{"vocabulary/fit.yaml", "example: 900 N => example: 9000 kN", "the example 9000 kN is outside the range duty.load may have", ""},
		{"vocabulary/fit.yaml", "name: fit.nominal => name: nominal", "the name nominal does not say whose it is", "write it with a dot, such as hub.nominal"},
		{"vocabulary/fit.yaml", "- {name: fit.nominal => - {name: duty.load, says: x, role: given, quantity: force, range: 0 N to 2 N, unknown: whole range}\n- {name: fit.nominal", "duty.load stands at vocabulary/fit.yaml:1:3 already", "keep one of the two"},
		{"vocabulary/fit.yaml", "words: {steady: smooth, heavy: hammering} => words: {steady: smooth, heavy: hammering, on: all the time}", "on is read as yes or no", ""},
		{"vocabulary/fit.yaml", "unknown: {value: 10 degC to 60 degC, from: practice, seen: practice} => unknown: sometimes", `"sometimes" is not a word known here`, "whole range"},
		{"vocabulary/hub.yaml", "table: materials => table: metals", "there is no table metals", ""},
		{"vocabulary/tables.yaml", "- {name: turns => - {name: bores, says: x, quantity: yes-no}\n  - {name: turns", "the column bores of machines stands at", "keep one"},
		// the seam
		{"seam.yaml", "shaft_small: length => shaft_small: lenght", "there is no kind of quantity and no table lenght", "did you mean length?"},
		// rows
		{"materials/iron.yaml", "family: iron => family: irn", `"irn" is no family`, "did you mean iron?"},
		{"materials/iron.yaml", "yield: {value: 200 MPa => yield: {value: 200 GPa", "200 GPa is outside what a yield can be", "check the value and its unit"},
		{"materials/iron.yaml", "yield: {value: 200 MPa, from: handbook, seen: page} => yield: 200 MPa", "the number 200 MPa has no source", "write {value: 200 MPa, from: KEY, seen: page}"},
		{"materials/iron.yaml", "id: iron => id: irn", "the id irn is not the file's name", "write iron"},
		{"materials/iron.yaml", "bush: no => bosh: no", "there is no key bosh here", "did you mean bush?"},
		{"machines/lathe.yaml", "value: 20 um => value: 30 um to 20 um", "30 um to 20 um", ""},
		// pairings
		{"pairings/faces.yaml", "verdict: good => verdict: poor", `"poor" is not a word known here`, "did you mean good?"},
		{"pairings/faces.yaml", "shaft: [steel], bore: [steel] => shaft: [steel], bore: [steel, bronze]", "steel in bronze is listed already", "keep one"},
		// criteria
		{"criteria.yaml", "8 h: 50, 40 h: 0} => 8 h: 50, 40 h: 60}", "the corner 40 h turns the curve against better", ""},
		{"criteria.yaml", "8 h: 50, 40 h: 0} => 40 h: 50, 8 h: 0}", "the corner 8 h does not come after the one before it", "from small to large"},
		{"criteria.yaml", "curve: {0 h: 100, 8 h: 50 => curve: {0 h: 100, 8: 50", `has no unit`, ""},
		{"criteria.yaml", "weight: 2 => weight: heavy", "heavy is no weight", ""},
		{"criteria.yaml", "is: 'total.hours' => is: 'total.costs'", "total.costs is money", ""},
		{"criteria.yaml", "is: 'total.hours' => is: 'total.hurs'", "the name total.hurs is unknown here", "did you mean total.hours?"},
		{"criteria.yaml", "points: 8, => points: 800,", "800 is no number of points", ""},
		// trade names
		{"options.yaml", "hub: [leave], cannot: {running: it would shake} => hub: [leave], cannot: {running: }", "no sentence says why", ""},
		{"options.yaml", "- {id: bore-and-bush, says: bore the hub and bush it, hub: [bush]} => - {id: bore-and-bush, says: bore the hub and bush it}", "the trade name bore-and-bush fits every option", ""},
		// parts
		{"hub/bush.yaml", "schema: part/1 => schema: part/2", `"part/2" is not a word known here`, "part/1"},
		{"hub/bush.yaml", "side: hub => side: shaft", `"shaft" is not a word known here`, "hub"},
		{"hub/bush.yaml", "finishes: bush_bore => finishes: bush_bor", "bush_bor is not chosen in this file", ""},
		{"hub/bush.yaml", "    outer_size: 'hub_bore'\n => ", "the joint bush does not say its outer_size", ""},
		{"hub/bush.yaml", "inner_material: bush_material => inner_material: borer", "borer is a row of machines, and a row of materials is wanted here", ""},
		{"hub/bush.yaml", "inner_material: bush_material => inner_material: bush_meterial", "the name bush_meterial is unknown here", "did you mean bush_material?"},
		{"hub/bush.yaml", "best: {least: 'it.tolerance'} => best: {least: 'it.bores'}", "put in order by it.bores, which is no number", ""},
		{"hub/bush.yaml", "where: 'it.bores' => where: 'hub_bore >= hub.largest'", "a pick hangs on hub_bore", "ask about what is given"},
		{"hub/bush.yaml", "best: {least: 'it.tolerance'}, => ", "neither or both of all and best", ""},
		{"hub/bush.yaml", "by: borer, gauged: inside, range: 'hub.smallest .. hub.outside'} => by: bush_material, gauged: inside, range: 'hub.smallest .. hub.outside'}", "a row of materials, which has no column tolerance", ""},
		{"hub/bush.yaml", "range: 'hub.smallest .. hub.outside', suits: hub_bore => range: 'hub.smallest', suits: hub_bore", "a range with one end", "write LOW .. HIGH"},
		{"hub/bush.yaml", "{answer: ruled out, why: a keyway would cut the bush in two} => {answer: rule out, why: a keyway would cut the bush in two}", `"rule out" is not a word known here`, "did you mean ruled out?"},
		{"hub/bush.yaml", "why: 'it closes in by {close_in}' => why: 'it closes in by {close_in'", "a { is not closed", ""},
		{"hub/bush.yaml", "{is: '(bush_outside - bush_bore)/2', says: wall of the bush} => {says: wall of the bush}", "wall says neither or both of is and row", ""},
		{"hub/bush.yaml", "{is: '(bush_outside - bush_bore)/2', says: wall of the bush} => {is: '(bush_outside - bush_bore)/2', tell: yes}", "wall is to be told and has no words", "write says:"},
		{"hub/bush.yaml", "when: 'option.purpose == \"running\"' => when: 'option.purpose == \"runing\"'", `"runing" is no word of option.purpose`, "did you mean running?"},
		{"hub/bush.yaml", "should: 'wall >= least_wall' => prefer: 'wall > least_wall'", "a limit with >", "write >="},
		{"hub/bush.yaml", "id: bush-cleans, => id: bush-wall-least,", "the id bush-wall-least stands at hub/bush.yaml:", "ids are never used twice"},
		{"hold/press.yaml", "joint.inner_size - => joint.inner_siz -", "the name joint.inner_siz is unknown here", "did you mean joint.inner_size?"},
		{"hold/press.yaml", "give:        {value: 100 GPa => joint:        {value: 100 GPa\n\ngive*max => joint*max", "names that begin with joint. mean something already", ""},
		{"purpose/running.yaml", "holds: none => holds: maybe", `"maybe" is not a word known here`, "fit, none"},
		{"purpose/running.yaml", "least_gap:    {value: 0.03 mm => fit:    {value: 0.03 mm\n\n>= least_gap => >= fit", "names that begin with fit. mean something already", ""},
		{"steps.yaml", "cautions: [C32], acts => cautions: [], acts", "stripping stands in a step without the caution C32", "add C32"},
		{"steps.yaml", "hours: 'stripping'} => hours: 'striping'}", "the name striping is unknown here", "did you mean stripping?"},
	} {
		faults := told(t, map[string]string{c.file: c.edit})
		if len(faults) != 1 {
			t.Errorf("%s: %s\n%d faults, one was planted:\n%v", c.file, c.edit, len(faults), faults)
			continue
		}
		if f := faults[0]; !strings.Contains(f.Says, c.says) || !strings.Contains(f.Remedy, c.remedy) || f.At.Line == 0 && c.file != "vocabulary/near.yaml" {
			t.Errorf("%s: %s\ntold %q\nwant %q and the remedy %q, with a place", c.file, c.edit, f.Error(), c.says, c.remedy)
		}
	}
}

// Ids and words that YAML or the rule language would read as something else.
func TestMisreadWords(t *testing.T) {
	for word, as := range map[string]string{
		"yes": "yes or no", "No": "yes or no", "on": "yes or no", "off": "yes or no", "y": "yes or no", "true": "yes or no",
		"null": "nothing at all", "'~'": "nothing at all", "010": "a number", "1_000": "a number", "0x1F": "a number", "1e3": "a number", "1.5": "a number", "'.inf'": "a number",
		"2024-01-02": "a date", "'12:30'": "a time of day", "not": "a word of the rule language", "in": "a word of the rule language",
	} {
		faults := told(t, map[string]string{"vocabulary/fit.yaml": "heavy: hammering => heavy: hammering, " + word + ": x"})
		only(t, faults, "is read as "+as, "choose a word that is plain text")
	}
	for _, name := range []string{"map", "count", "now", "mm", "pi", "min", "sqrt", "low"} {
		faults := told(t, map[string]string{"hub/bush.yaml": "  boring:  => " + "  " + name + ": {value: 1 h, from: practice, seen: practice}\n  boring: "})
		only(t, faults, name+" is a word of the expression language")
	}
}

// A file that must be there is missed.
func TestMissingFiles(t *testing.T) {
	for _, p := range []string{"seam.yaml", "criteria.yaml", "options.yaml", "sources.yaml", "steps.yaml"} {
		fsys := small(t, nil)
		delete(fsys, p)
		_, faults := rules.Load([]rules.Layer{{Name: "small", Files: fsys}}, nil)
		if !strings.Contains(faults.Error(), p+": the file is missing") {
			t.Errorf("without %s: %v", p, faults)
		}
	}
}

// A kind of neighbour that is new to the base must be stated by cases and
// answered by every treatment.
func TestNewKindOfNeighbour(t *testing.T) {
	faults := told(t, map[string]string{"vocabulary/near.yaml": "kinds: [keyway, spline]\n"})
	for _, says := range []string{"there is no name hub.near_spline", "there is no name shaft.near_spline",
		"hub/bush.yaml:44:3: features: no answer for a spline", "hub/leave.yaml:11:3: features: no answer for a spline"} {
		if !strings.Contains(faults.Error(), says) {
			t.Errorf("%v\nwant %q", faults, says)
		}
	}
	if len(faults) != 6 { // two names, four treatments
		t.Errorf("%d faults, want 6: %v", len(faults), faults)
	}
}
