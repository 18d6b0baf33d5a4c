package casefile

import (
	"fmt"
	"strings"
	"testing"

	"wornfit/rules/fault"
)

// Twenty faults planted in one file are told in one run, each with its place,
// and nothing else is.
func TestTwentyFaults(t *testing.T) {
	_, told := Read("twenty-faults.yaml", file(t, "faults/twenty-faults.yaml"), vocabulary(t), ids(t))
	want := []struct{ at, key, says, remedy string }{
		{"3:16", "if_it_lets_go", `"maybe"`, "machine damage"},
		{"8:15", "parts.arm.material", "steel-1054", "steel-1045"},
		{"9:5", "parts.arm.outsid", "no key outsid", "outside?"},
		{"10:14", "parts.arm.outside", "28 mm outside and its bore 30.31 mm", "larger"},
		{"11:15", "parts.arm.hardness", "length", "HB"},
		{"13:17", "parts.arm.case_depth", `"thou" is not read`, "write 50 thou"},
		{"14:13", "parts.arm.weight", "_ is not part of a number", "kg"},
		{"15:12", "parts.arm.reach", "octal", "without the leading 0"},
		{"17:36", "parts.arm.datums.true-axis.set_upp", "no key set_upp", "set_up?"},
		{"18:25", "parts.arm.next_to_it[0].kind", "keywey", "keyway?"},
		{"22:11", "parts.stub.bore", "12 has no unit", "mm"},
		{"23:12", "parts.stub.swing", "40 m is outside the range", "between 0.001 and 5 m"},
		{"31:14", "fits[0].purpose", "runing", "running?"},
		{"36:60", "fits[0].readings.hub[1].with", "bgg is not listed", "bg?"},
		{"38:11", "fits[0].readings.shaft[0]", "names no gauge", "with:"},
		{"39:9", "fits[1].id", "pivot is already used on line 28", "its own"},
		{"44:47", "fits[1].readings.hub.rows[0][2]", "the bore reads 30.02 and the shaft", "swapped"},
		{"51:12", "fits[2].readings.hub", "states no unit", "unit: mm"},
		{"52:50", "fits[2].readings.shaft.rows[0][2]", "29.95 at least and was 29.90 mm", "wear cannot"},
		{"55:14", "duty.load", "mass", "lbf"},
	}
	if len(want) != 20 || len(told) != len(want) {
		t.Errorf("%d faults are told, %d planted", len(told), len(want))
	}
	for i, w := range want {
		if i >= len(told) {
			break
		}
		f := told[i]
		at := fmt.Sprintf("%d:%d", f.At.Line, f.At.Column)
		if at != w.at || f.Key != w.key || !strings.Contains(f.Says, w.says) || !strings.Contains(f.Remedy, w.remedy) {
			t.Errorf("fault %d: %v\n\twant %s %s: %s; %s", i+1, f, w.at, w.key, w.says, w.remedy)
		}
	}
}

// sound is a small case without a fault; the tests change one line of it.
const sound = `schema: case/1
title: arm on its stub (invented)
if_it_lets_go: machine damage
parts:
  arm: {is: hub, material: steel-1045, outside: 62 mm}
  stub: {is: shaft, material: steel-1045, bore: 0 mm}
gauges:
  bg: {kind: inside, within: ±0.005 mm}
  mic: {kind: outside, within: ±0.003 mm}
fits:
  - id: pivot
    hub: arm
    shaft: stub
    purpose: running
    nominal: 30 mm
    readings:
      hub: [{at: 5 mm, toward: 0 deg, size: 30.31 mm, with: bg}]
      shaft: {unit: mm, with: mic, rows: [[5, 0, 29.62]]}
duty: {load: 900 N}
`

// read reads the sound case with one line changed.
func read(t *testing.T, from, to string) (*Case, fault.List) {
	t.Helper()
	if !strings.Contains(sound, from) {
		t.Fatalf("the sound case holds no %q", from)
	}
	return Read("case.yaml", []byte(strings.Replace(sound, from, to, 1)), vocabulary(t), ids(t))
}

func TestSoundCaseHasNoFault(t *testing.T) {
	if _, told := read(t, "schema", "schema"); len(told) > 0 {
		t.Fatal(told)
	}
}

func TestOneFaultEach(t *testing.T) {
	for name, c := range map[string]struct{ from, to, says string }{
		"schema of another program":      {"case/1", "job/1", `the schema is "job/1"`},
		"no title":                       {"title: arm on its stub (invented)\n", "", "title is missing"},
		"part not listed":                {"hub: arm", "hub: lever", "the part lever is not listed"},
		"hub and shaft swapped":          {"hub: arm", "hub: stub", "is a shaft, and here it stands as the hub"},
		"gauge of the wrong kind":        {"with: mic", "with: bg", "measures insides, and this is the shaft"},
		"gauge without its error":        {", within: ±0.005 mm", "", "within is missing"},
		"gauge without an error":         {"±0.005 mm", "±0 mm", "does not exist"},
		"gauge repeats worse than true":  {"within: ±0.005 mm", "within: ±0.005 mm, repeats_within: ±0.01 mm", "reads true within"},
		"leading nought in a block":      {"29.62", "029.62", "nought too many"},
		"octal in a block":               {"[5, 0, 29.62]", "[5, 010, 29.62]", "octal"},
		"underscore in a block":          {"29.62", "29_62", "_ is not part of a number"},
		"text in a block":                {"29.62", "about 29.62", "about"},
		"bare number outside a block":    {"30.31 mm", "30.31", "30.31 has no unit"},
		"bare angle outside a block":     {"0 deg", "90", "unit"},
		"row too short":                  {"[5, 0, 29.62]", "[5, 29.62]", "too short"},
		"departures without a setting":   {"unit: mm, with: mic", "in: tenths, unit: mm, with: mic", "is for departures"},
		"setting without its step":       {"unit: mm, with: mic", "set_to: 29.6 mm, with: mic", "in is missing"},
		"reading of another fit":         {"29.62", "2.962", "the shaft reads 2.962 and the fit is 30 mm"},
		"station past the fit":           {"nominal: 30 mm", "nominal: 30 mm\n    length: 4 mm", "is read at station 5 mm and the fit is 4 mm long"},
		"station before the fit":         {"at: 5 mm", "at: -5 mm", "is read at station -5 mm"},
		"size the gauge cannot take":     {"bg: {kind: inside, within: ±0.005 mm}", "bg: {kind: inside, within: ±0.005 mm, takes: 50 mm to 100 mm}", "takes 50 mm to 100 mm"},
		"size no bore has":               {"30.31 mm", "30.31 m", "outside the range"},
		"hole larger than the shaft":     {"bore: 0 mm", "bore: 29.7 mm", "the hole through stub is 29.7 mm"},
		"wear that added metal":          {"30.31 mm", "29.9 mm", "was 30 mm before it wore"},
		"vocabulary name elsewhere":      {"outside: 62 mm", "outside: 62 mm, near_keyway: yes", "no key near_keyway"},
		"reading given as a plain key":   {"outside: 62 mm", "outside: 62 mm, largest: 30 mm", "no key largest"},
		"alias":                          {"stub: {is: shaft, material: steel-1045, bore: 0 mm}", "stub: &s {is: shaft}\n  other: *s", "alias"},
		"two keys alike":                 {"duty: {load: 900 N}", "duty: {load: 900 N, load: 90 N}", "already given"},
		"list where a map belongs":       {"duty: {load: 900 N}", "duty: [load]", "keys and values"},
		"map where a value belongs":      {"load: 900 N", "load: {of: 900 N}", "one value"},
		"ambiguous unit":                 {"900 N", "2 ton", "ton"},
		"neither yes nor no":             {"outside: 62 mm", "outside: 62 mm, keep: perhaps", "neither yes nor no"},
		"two currencies":                 {"duty: {load: 900 N}", "buys: {arm: {price: 60 EUR}, stub: {price: 30 USD}}", "2 currencies"},
		"bought part not listed":         {"duty: {load: 900 N}", "buys: {armm: {price: 60 EUR}}", "armm is not listed"},
		"sign nobody knows":              {"nominal: 30 mm", "nominal: 30 mm\n    seen: {hub: {powder: pink}}", "pink"},
		"surface nobody knows":           {"nominal: 30 mm", "nominal: 30 mm\n    deepest_score: {bore: 1 mm}", "no key bore"},
		"lobes by no known making":       {"nominal: 30 mm", "nominal: 30 mm\n    lobes: {hub: reemed}", "reemed"},
		"designation without quotes":     {"material: steel-1045, outside: 62 mm", "bearing: 6206, outside: 62 mm", "quotes"},
		"offset and run-out both":        {"outside: 62 mm", "outside: 62 mm, datums: {a: {offset: 1 mm, run_out: 2 mm}}", "both run_out and offset"},
		"machine that does the unheard":  {"duty: {load: 900 N}", "shop: {machines: [{id: l, does: [turn, knit]}]}", "knit"},
		"two machines alike":             {"duty: {load: 900 N}", "shop: {machines: [{id: l, does: turn}, {id: l, does: bore}]}", "machine id l is already used"},
		"weight of a criterion too high": {"duty: {load: 900 N}", "wishes: {weights: {cost: 100}}", "the weight is 100"},
		"made size of no fit":            {"duty: {load: 900 N}", "made: [{fit: far, surface: hub, dimension: hub_bore, sizes: 30 mm, with: bg}]", "fit far is not listed"},
		"outside wider than its swing":   {"outside: 62 mm", "outside: 62 mm, swing: 50 mm", "swings 50 mm"},
	} {
		_, told := read(t, c.from, c.to)
		if len(told) == 0 || !strings.Contains(told.Error(), c.says) {
			t.Errorf("%s: told %q, want %q", name, told, c.says)
			continue
		}
		for _, f := range told {
			if f.At.Line == 0 || f.Remedy == "" {
				t.Errorf("%s: %v lacks its place or its remedy", name, f)
			}
		}
	}
}

func TestFilesThatAreNoCase(t *testing.T) {
	for name, c := range map[string]struct{ data, says string }{
		"empty":        {"", "the file is empty"},
		"only remarks": {"# nothing yet\n", "the file is empty"},
		"a list":       {"- a\n- b\n", "no case file"},
		"a word":       {"hello\n", "no case file"},
		"a tab":        {"parts:\n\tarm: {}\n", "a tab"},
		"half a map":   {"parts: {arm: {is: hub\n", "not readable as YAML"},
		"over 1 MB":    {"notes: " + strings.Repeat("x", 1<<20), "bytes long"},
	} {
		if _, told := Read("case.yaml", []byte(c.data), vocabulary(t), nil); len(told) == 0 || !strings.Contains(told.Error(), c.says) {
			t.Errorf("%s: told %q, want %q", name, told, c.says)
		}
	}
}

// What looks like a fault and is none: the gauges' doubt, a press fit, and what
// a bore below nominal means where the fit is tight.
func TestToldOnlyBeyondDoubt(t *testing.T) {
	for name, c := range map[string]struct{ from, to string }{
		"bore 0.006 under the shaft, gauges ±0.005 and ±0.003": {"size: 30.31 mm, with: bg}]\n      shaft: {unit: mm, with: mic, rows: [[5, 0, 29.62]]}", "size: 29.999 mm, with: bg}]\n      shaft: {unit: mm, with: mic, rows: [[5, 0, 30.003]]}"},
		"press fit": {"purpose: running\n    nominal: 30 mm\n    readings:\n      hub: [{at: 5 mm, toward: 0 deg, size: 30.31 mm", "purpose: press-fit\n    nominal: 30 mm\n    readings:\n      hub: [{at: 5 mm, toward: 0 deg, size: 29.60 mm"},
	} {
		if _, told := read(t, c.from, c.to); len(told) > 0 {
			t.Errorf("%s: told %v", name, told)
		}
	}
}
