package rules_test

import (
	"strings"
	"testing"
)

// limitsOf puts limits in place of those of hub/bush.
func limitsOf(lines string) map[string]string {
	return map[string]string{"hub/bush.yaml": "limits:\n => limits:\n" + lines}
}

// Rules that no value the vocabulary allows can keep, or break.
func TestNeverAndAlways(t *testing.T) {
	for _, c := range []struct{ name, limit, says string }{
		{"under every hub there is", "must: 'hub.outside <= least_wall', ground: geometry", "it can never be kept"}, // 3 mm to 2 m; 1 mm to 2 mm
		{"a wall that no wall can miss", "must: 'hub.outside >= least_wall', ground: geometry", "it is always kept"},
		{"through a define", "must: 'hub.outside + least_wall - wall >= hub.outside - wall', ground: geometry", "it is always kept"},
		{"a root of less than nothing", "must: 'sqrt(0*mm**2 - hub.outside**2) <= hub.outside', ground: geometry", "it comes to no number"},
		{"by the words of a row", "must: 'bush_material.E <= 0*MPa', ground: physics", "it can never be kept"}, // 1 GPa to 700 GPa
		{"within reach", "must: 'hub.outside >= hub_bore + 2*least_wall', ground: geometry", ""},
		{"a size within its own range", "must: 'hub_bore >= 0*mm', ground: geometry", "it is always kept"}, // from hub.smallest
		{"a when that never is", "must: 'hub.outside >= hub_bore', when: 'hub.outside <= 0*mm', ground: geometry", "its when is never true"},
		{"another file's, which may be anything", "must: 'shaft_large >= 0*mm', ground: geometry", ""},
	} {
		faults := told(t, limitsOf("  - {id: bush-tried, "+c.limit+", why: w, remedy: r, from: geometry}\n"))
		switch {
		case c.says == "" && len(faults) > 0:
			t.Errorf("%s: told %v, and it may well be kept or broken", c.name, faults)
		case c.says != "" && (len(faults) != 1 || !strings.Contains(faults[0].Says, c.says) || faults[0].Key != "bush-tried"):
			t.Errorf("%s: told %v, want %q", c.name, faults, c.says)
		}
	}
}

// Needs are judged like limits.
func TestNeedThatNeverHolds(t *testing.T) {
	for need, says := range map[string]string{
		"hub.outside <= least_wall":                           "it can never be kept",
		`duty.shock == "steady" or duty.shock == "heavy"`:     "it is always kept",
		`duty.shock == "steady" and duty.shock == "heavy"`:    "it can never be kept",
		`pair(bush_material, bush_material) in ["good"]`:      "it can never be kept", // no metal is listed as good on itself
		`bush_material.family in ["iron", "steel", "bronze"]`: "it is always kept",
	} {
		faults := told(t, map[string]string{"hub/bush.yaml": "needs:\n => needs:\n  - {id: bush-tried, must: '" + need + "', ground: shop, why: w, remedy: r, from: geometry}\n"})
		if got := faults.Error(); says == "" && len(faults) > 0 || !strings.Contains(got, says) {
			t.Errorf("%s: told %q, want %q", need, got, says)
		}
	}
}

// Two limits that no size keeps are told once, with both places, unless they
// never apply together.
func TestContradiction(t *testing.T) {
	const more, less = "must: 'hub_bore >= hub.outside - least_wall', ground: geometry", "must: 'hub_bore <= hub.outside - 2*least_wall', ground: geometry"
	two := func(first, second string) map[string]string {
		return limitsOf("  - {id: bush-one, " + first + ", why: w, remedy: r, from: geometry}\n  - {id: bush-two, " + second + ", why: w, remedy: r, from: geometry}\n")
	}
	only(t, told(t, two(more, less)), "bush-two and bush-one can never be kept together") // whatever least_wall is, twice it is more
	big, small := "must: 'hub_bore >= hub.smallest + hub.outside', ground: geometry", "must: 'hub_bore <= hub.outside - hub.largest', ground: geometry"
	faults := told(t, two(big, small))
	only(t, faults, "bush-two and bush-one can never be kept together", "tell them apart by when")
	if len(faults) == 1 && (len(faults[0].Also) != 1 || faults[0].Also[0].File != "hub/bush.yaml") {
		t.Errorf("the other place is %v", faults[0].Also)
	}
	apart := []string{`, when: 'duty.shock == "steady"'`, `, when: 'duty.shock == "heavy"'`}
	if faults = told(t, two(big+apart[0], small+apart[1])); len(faults) > 0 {
		t.Errorf("told %v, and the two never apply together", faults)
	}
	only(t, told(t, two(big+apart[0], small+apart[0])), "can never be kept together")
}

// What nothing uses is remarked on; what the seam or the page reads is used.
func TestRemarks(t *testing.T) {
	b := good(t, small(t, map[string]string{
		"hub/bush.yaml": "  boring:  =>   idle: {value: 1 h, from: practice, seen: practice}\n  boring: \n\n" +
			"define:\n => define:\n  spare: {is: '2*fit.length'}\n  shown: {is: '2*fit.length', says: twice the length}\n",
		"options.yaml": "shaft: [true-up], hub: [bush] => shaft: [true-up, spray], hub: [bush]",
	}))
	got := b.Remarks().Error()
	for _, want := range []string{"numbers.idle: idle is used nowhere", "define.spare: spare is used nowhere", "there is no shaft treatment spray", "shop.press_force is used by no rule"} {
		if !strings.Contains(got, want) {
			t.Errorf("%s\nwant %q", got, want)
		}
	}
	for _, not := range []string{"shown", "least_wall", "bore_small", "bush_material", "hub.comes_off", "hub.near_keyway", "hub.largest", "left_to_bore"} {
		if strings.Contains(got, not+" is used") {
			t.Errorf("%s is said to be used nowhere", not)
		}
	}
}
