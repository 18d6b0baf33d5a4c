package rules_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"wornfit/calc/basis"
	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/link"
)

// ours is a folder laid over the small base.
func ours(files map[string]string) rules.Layer {
	fsys := fstest.MapFS{}
	for p, text := range files {
		fsys[p] = &fstest.MapFile{Data: []byte(text)}
	}
	return rules.Layer{Name: "ours", Files: fsys}
}

func over(t *testing.T, overrides string) (*rules.Base, fault.List) {
	t.Helper()
	return load(small(t, nil), ours(map[string]string{"overrides.yaml": overrides}))
}

// A shop lays its own number over one that was common practice, and stands by it.
func TestOwnNumber(t *testing.T) {
	b, faults := over(t, "hub/bush.least_wall: {value: 2.5 mm, from: our shop standard 7}\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	n := number(t, b.Input.Parts, link.Hub, "bush", "least_wall")
	if n.Low != 2.5e-3 || n.High != 2.5e-3 || n.DoubtLow != 2.5e-3 || n.DoubtHi != 2.5e-3 || n.From != "our shop standard 7" || n.Grade != basis.Practice {
		t.Errorf("least wall is %+v; want 2.5 mm from our shop standard 7, without doubt", *n)
	}
	if n.At.File != "ours/overrides.yaml" || n.At.Line != 1 {
		t.Errorf("the number is said to stand at %s", n.At)
	}
	if got := strings.Join(b.Layers, ", "); got != "small, ours" {
		t.Errorf("layers %s", got)
	}
	// with a doubt of its own
	b, faults = over(t, "hub/bush.least_wall: {value: 2.5 mm, doubt: 2 mm to 3 mm, from: our standard, seen: derived}\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if n := number(t, b.Input.Parts, link.Hub, "bush", "least_wall"); n.DoubtLow != 2e-3 || n.DoubtHi != 3e-3 || n.Grade != basis.Derived {
		t.Errorf("least wall is %+v", *n)
	}
}

// A weak number of a table's row gives way too.
func TestOwnNumberInATable(t *testing.T) {
	b, faults := over(t, "machines/lathe.tolerance: {value: 12 um, from: our trial of March}\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if k := b.Rows("machines")[0].Columns["tolerance"]; k.Best != 12e-6 || k.Says != "our trial of March" {
		t.Errorf("the lathe holds %+v, want 12 um", k)
	}
}

func TestShouldBecomesMust(t *testing.T) {
	b, faults := over(t, "bush-wall-least: {becomes: must, from: our shop standard 7}\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, p := range b.Input.Parts {
		for _, r := range p.Limits {
			if r.ID == "bush-wall-least" && (r.Strength != link.Must || r.From != "our shop standard 7") {
				t.Errorf("%s is %s from %s", r.ID, rules.StrengthWord(r.Strength), r.From)
			}
		}
	}
}

func TestOverridesRefused(t *testing.T) {
	for _, c := range []struct{ name, text, says string }{
		{"a number read in a source", "materials/iron.yield: {value: 900 MPa, from: us}", "was read in a source"},
		{"another kind of quantity", "hub/bush.least_wall: {value: 2 N, from: us}", "2 N is force, and hub/bush.least_wall is length"},
		{"nobody's number", "hub/bush.least_wall: {value: 2 mm}", "from is missing"},
		{"no number", "hub/bush.least_wall: {from: us}", "value is missing"},
		{"no such number", "hub/bush.leest_wall: {value: 2 mm, from: us}", "did you mean hub/bush.least_wall?"},
		{"a must made a should", "bush-cleans: {becomes: should, from: us}", "never the reverse"},
		{"a safety rule", "bush-safe: {becomes: must, from: us}", "rests on safety, which is never touched"},
		{"a number of a safety rule", "hub/bush.food_share: {value: 0.9, from: us}", "the safety rule bush-safe rests on food_share"},
		{"a doubt beside the value", "hub/bush.least_wall: {value: 5 mm, doubt: 1 mm to 2 mm, from: us}", "does not hold the value"},
		{"an unknown key", "hub/bush.least_wall: {value: 5 mm, frm: us}", "did you mean from?"},
		{"a bare number", "hub/bush.least_wall: 2 mm", "where keys and values should stand"},
	} {
		_, faults := over(t, c.text+"\n")
		if !strings.Contains(faults.Error(), c.says) {
			t.Errorf("%s: told %q, want %q", c.name, faults.Error(), c.says)
		}
		for _, f := range faults {
			if f.At.File != "ours/overrides.yaml" || f.At.Line != 1 {
				t.Errorf("%s: told at %s", c.name, f.At)
			}
		}
	}
}

// A layer adds: a metal, a source, a trade name, a treatment, words of a pair.
func TestLayerAdds(t *testing.T) {
	b, faults := load(small(t, nil), ours(map[string]string{
		"sources.yaml":         "our-book: {what: our note book, how: page}\n",
		"materials/brass.yaml": "id: brass\nsays: brass\nfamily: bronze\nE: {value: 100 GPa, from: our-book, seen: page}\nbush: yes\n",
		"options.yaml":         "- {id: leave-the-hub, says: leave the hub, hub: [leave]}\n",
		"steps.yaml":           "after:\n  - {id: common-flag, says: take the flag down, hours: '0*h'}\n",
		"pairings/ours.yaml":   "pairs:\n  - {shaft: [steel], bore: [steel], verdict: fair, from: our-book, seen: page}\n  - {shaft: [iron], bore: [iron], verdict: bad, from: our-book, seen: page}\n",
		"hold/glue.yaml":       strings.NewReplacer("id: press\n", "id: glue\n", "press-", "glue-", "pressing]", "pressing]").Replace(string(small(t, nil)["hold/press.yaml"].Data)),
	}))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if !b.Has("materials", "brass") || b.Purpose("running") == nil || len(b.Input.Common.Steps) != 4 {
		t.Error("the layer's metal or step is not there")
	}
	var glued bool
	for _, c := range link.All(b.Input, b.Purpose("running")) {
		if n := b.NameOf(c); c.ID == "shaft-true-up+hub-leave" && (n == nil || n.ID != "leave-the-hub") {
			t.Errorf("%s is called %v", c.ID, n)
		}
		glued = glued || c.ID == "shaft-leave+hub-bush-glue"
	}
	if !glued {
		t.Error("no option is held by the layer's hold")
	}
}

func TestLayerMayNot(t *testing.T) {
	for _, c := range []struct{ name, file, text, says string }{
		{"write a file again", "hub/bush.yaml", "id: bush\n", "hub/bush.yaml stands in hub/bush.yaml already"},
		{"change the seam", "seam.yaml", "shaft: {}\n", "seam.yaml stands in seam.yaml already"},
		{"change the scoring", "criteria.yaml", "criteria: []\n", "criteria.yaml stands in criteria.yaml already"},
		{"use a source key again", "sources.yaml", "practice: {what: our habit, how: page}\n", "the source practice is already common practice"},
		{"use a trade name again", "options.yaml", "- {id: leave-it, says: x, hub: [leave]}\n", "the trade name leave-it stands at options.yaml:3:3 already"},
		{"use a step's id again", "steps.yaml", "before:\n  - {id: common-strip, says: x, hours: '0*h'}\n", "the id common-strip stands at steps.yaml:4:10 already"},
		{"turn a sourced pair round", "pairings/ours.yaml", "pairs:\n  - {shaft: [steel], bore: [bronze], verdict: bad, from: practice, seen: practice}\n", "steel in bronze was read in a source"},
		{"bring a file nothing reads", "notes.yaml", "a: b\n", "no file notes.yaml is read here"},
		{"bring a folder nothing reads", "material/x.yaml", "a: b\n", "did you mean materials?"},
		{"bring a file by another ending", "hub/ours.yml", "a: b\n", "call it hub/ours.yaml"},
	} {
		_, faults := load(small(t, nil), ours(map[string]string{c.file: c.text}))
		if !strings.Contains(faults.Error(), c.says) {
			t.Errorf("%s: told %q, want %q", c.name, faults.Error(), c.says)
		}
	}
}
