package main

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wornfit/calc/outside"
	"wornfit/cmd/wornfit/render"
)

// limitsJSON is what programs read of wornfit limits.
type limitsJSON struct {
	Members []struct {
		Class string
		Kind  string
		Upper float64 `json:"upper_deviation"`
		Lower float64 `json:"lower_deviation"`
		Grade string
	}
	Clearance *struct{ Min, Max float64 }
	OfEach    int `json:"of_each_system"`
	Near      []struct {
		Name      string
		Off       float64
		Clearance struct{ Min, Max float64 }
	}
}

func limitsOf(t *testing.T, args ...string) limitsJSON {
	t.Helper()
	got := try(t, nil, append([]string{"limits", "--json"}, args...)...)
	var out limitsJSON
	if err := json.Unmarshal([]byte(got.out), &out); got.code != exitDone || err != nil {
		t.Fatalf("limits %q: exit %d, %v: %s", args, got.code, err, got.err)
	}
	return out
}

// confirmed are the rows its SOURCES.md says are asserted to the printed digit.
func confirmed(t *testing.T, file string) []map[string]string {
	t.Helper()
	return slices.DeleteFunc(outside.Table(t, "../../testdata/published/fits/"+file), func(row map[string]string) bool { return row["confirmed"] != "yes" })
}

// is holds a length in metres to a printed one.
func is(t *testing.T, what string, got float64, printed string, unit float64) {
	t.Helper()
	want, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(got-want*unit) > 1e-10 { // what JSON is rounded to
		t.Errorf("%s is %g m, printed %s", what, got, printed)
	}
}

// Every confirmed limit of the published lists, typed at the prompt and read back as JSON.
func TestLimitsAsPublished(t *testing.T) {
	iso, inch := confirmed(t, "iso286_limits.csv"), confirmed(t, "ansi_b41.csv")
	if len(iso) != 98 || len(inch) != 190 {
		t.Fatalf("%d and %d rows", len(iso), len(inch))
	}
	for _, r := range iso {
		ask := r["size_mm"] + " " + r["class"]
		got := limitsOf(t, ask)
		if len(got.Members) != 1 || got.Members[0].Kind != r["kind"] || got.Members[0].Class != r["class"] || got.Clearance != nil || got.Members[0].Grade == "" {
			t.Fatalf("%s: %+v", ask, got)
		}
		is(t, ask+" upper", got.Members[0].Upper, r["upper_um"], 1e-6)
		is(t, ask+" lower", got.Members[0].Lower, r["lower_um"], 1e-6)
	}
	const thou = 0.0254e-3
	for _, r := range inch {
		ask := r["to_in"] + " in " + r["class"]
		got := limitsOf(t, ask)
		if len(got.Members) != 2 || got.Members[0].Kind != "hole" || got.Members[1].Kind != "shaft" || got.Clearance == nil {
			t.Fatalf("%s: %+v", ask, got)
		}
		is(t, ask+" hole upper", got.Members[0].Upper, r["hole_upper_thou"], thou)
		is(t, ask+" hole lower", got.Members[0].Lower, r["hole_lower_thou"], thou)
		is(t, ask+" shaft upper", got.Members[1].Upper, r["shaft_upper_thou"], thou)
		is(t, ask+" shaft lower", got.Members[1].Lower, r["shaft_lower_thou"], thou)
		is(t, ask+" least", got.Clearance.Min, r["min_clearance_thou"], thou)
		is(t, ask+" most", got.Clearance.Max, r["max_clearance_thou"], thou)
	}
}

// The fit typed as a clearance finds itself, wherever the size stands and in
// whatever unit: 25 H8/f7 is 20 to 74 µm (limits +33 0 and -20 -41 as printed).
func TestNearFindsTheFit(t *testing.T) {
	for _, args := range [][]string{
		{"--near", "0.020 to 0.074 mm clearance", "--size", "25 mm"},
		{"--near", "20 to 74 um free at 25 mm"},
		{"25 mm", "--near", "0.020 to 0.074 mm loose"},
		{"25", "--near", "0.020 mm to 0.074 mm clearance"},
	} {
		got := limitsOf(t, args...)
		if len(got.Near) != 3*got.OfEach || got.OfEach == 0 || got.Near[0].Name != "H8/f7" || got.Near[0].Off > 1e-10 {
			t.Errorf("%q: %+v", args, got.Near)
		}
	}
	// H7/s6: +21 0 and +48 +35
	if got := limitsOf(t, "--near", "14 to 48 um interference at 25"); got.Near[0].Name != "H7/s6" || got.Near[0].Clearance.Max > -13e-6 {
		t.Errorf("H7/s6 by its interference: %+v", got.Near[0])
	}
	// H7/k6: +21 0 and +15 +2
	if got := limitsOf(t, "--near", "0.015 mm tight to 0.019 mm free at 25"); got.Near[0].Name != "H7/k6" || got.Near[0].Off > 1e-10 {
		t.Errorf("H7/k6 by both ends: %+v", got.Near[0])
	}
}

// A pair of classes is one fit, with the stroke between or without; RC 4 is no pair.
func TestAFitTypedWithSpaces(t *testing.T) {
	for spaced, plain := range map[string]string{"25 H7 p6": "25 H7/p6", "25 H7 / p6": "25 H7/p6", "1 in RC 4": "1 in RC4"} {
		want := try(t, nil, "limits", plain)
		if got := try(t, nil, "limits", spaced); want.code != exitDone || got.out != want.out {
			t.Errorf("%s: %s%s", spaced, got.out, got.err)
		}
	}
}

// Two lines, exit 2, nothing on stdout, the value and what would be right.
func TestLimitsNotUnderstood(t *testing.T) {
	for _, c := range []struct {
		args       []string
		says, hint string
	}{
		{[]string{}, "wants a size and a class", "25 H7/p6"},
		{[]string{"25"}, `in "25" no class`, "25 H7/p6"},
		{[]string{"H7"}, `in "H7" no size`, "--size"},
		{[]string{"25 H7/"}, "tolerance class is ''", "js9"},
		{[]string{"25 Q7"}, "letter of Q7 is 'Q'", "one of A B C D"},
		{[]string{"25 H14"}, "IT14", "IT4 to IT13"},
		{[]string{"25 p6/H7"}, "hole class is p6", "capital letter"},
		{[]string{"600 H7"}, "nominal size is 600 mm", "500 mm"},
		{[]string{"1.000 RC4"}, "1.000 of an inch fit has no unit", "1.000 in"},
		{[]string{"1 in RC12"}, "'RC12'", "RC9"},
		{[]string{"6 in FN2"}, "nominal size is 6 in", "5.52 in"},
		{[]string{"8 in LC2"}, "nominal size is 8 in", "7.09 in"},
		{[]string{"25 lb H7"}, "25 lb", "mm or in"},
		{[]string{"24 to 26 mm H7"}, "is a range", "one number"},
		{[]string{"25 H7", "--size", "25 mm"}, "--size 25 mm is given", "one of the two"},
		{[]string{"25 H7", "--units", "cm"}, `"cm"`, "--units mm"},
		{[]string{"--near", "0.03 mm", "--size", "25"}, "does not say clearance or interference", "0.03 mm clearance"},
		{[]string{"--near", "0.03 clearance", "--size", "25"}, "has no unit", "0.03 mm"},
		{[]string{"--near", "0.03 mm clearance"}, "0 are given", "--size"},
		{[]string{"25 mm", "--near", "0.03 mm clearance at 25 mm"}, "2 are given", "once"},
		{[]string{"25 H7", "--near", "0.03 mm clearance"}, "names a class", "leave"},
		{[]string{"--near", "30 mm clearance at 25 mm"}, "clearance is 30 mm", "25 mm"},
		{[]string{"--near", "-1 mm clearance at 25 mm"}, "below nought", "interference"},
	} {
		got := try(t, nil, append([]string{"limits"}, c.args...)...)
		first, second, _ := strings.Cut(got.err, "\n")
		if got.code != exitUnknown || got.out != "" || !strings.Contains(first, c.says) || !strings.Contains(second, c.hint) {
			t.Errorf("limits %q: exit %d, out %q, said:\n%s", c.args, got.code, got.out, got.err)
		}
	}
}

// The pages keep to every width, in every unit, and in plain characters.
func TestLimitsFitEveryWidth(t *testing.T) {
	for _, width := range []int{36, 40, 60, 67, 68, 80, 100, 120} {
		for _, args := range [][]string{{"25 H7/p6"}, {"1-3/16 in RC9"}, {"300 M6"}, {"25 js7"}, {"--near", "1 thou tight to 0.02 mm free at 25 mm"}, {"--near", "0 mm clearance at 500 mm"}} {
			for _, more := range [][]string{nil, {"--ascii"}, {"--units", "both"}, {"--units", "inch"}} {
				got := try(t, map[string]string{"COLUMNS": strconv.Itoa(width)}, append(append([]string{"limits"}, args...), more...)...)
				if got.code != exitDone {
					t.Fatalf("%q: %s", args, got.err)
				}
				fits(t, strings.Join(args, " "), render.Look{Width: width, ASCII: len(more) == 1}, got.out)
			}
		}
	}
}
