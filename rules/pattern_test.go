package rules_test

import (
	"slices"
	"strings"
	"testing"
)

// hammered is a pattern of the small base; with what is added or put in place of its when.
func hammered(id, when, more string) string {
	return "schema: diagnosis/1\nid: " + id + "\n" + more + "says: hammered\nwhen: '" + when +
		"'\ncause: blows\ncure: find the blows\nrepair: any\nfrom: practice\n"
}

func TestPatternsStandInTheOrderTold(t *testing.T) {
	base, faults := load(small(t, map[string]string{
		"diagnosis/a.yaml": hammered("a", `duty.shock == "heavy"`, "told: last\n"),
		"diagnosis/b.yaml": hammered("b", `duty.shock == "heavy"`, ""),
		"diagnosis/c.yaml": hammered("c", `duty.shock == "heavy"`, "told: late\n"),
		"diagnosis/d.yaml": hammered("d", `duty.shock == "heavy"`, "told: first\n"),
		"diagnosis/e.yaml": hammered("e", `option.purpose == "running"`, "told: early\n"),
		"diagnosis/f.yaml": hammered("f", `duty.shock == "heavy"`, ""),
	}))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	var got []string
	for _, p := range base.Patterns {
		got = append(got, p.ID)
	}
	if want := []string{"d", "e", "b", "f", "c", "a"}; !slices.Equal(got, want) {
		t.Errorf("told in the order %v, want %v", got, want)
	}
}

func TestPatternsRefused(t *testing.T) {
	for _, c := range []struct{ when, more, says, remedy string }{
		{`duty.shock == "heavy"`, "told: soon\n", `"soon" is not a word known here`, "first, early, late, last"},
		{`option.hub == "leave"`, "", "a pattern hangs on option.hub", "option.purpose is what the fit is for"},
		{`duty.shock == "havy"`, "", `"havy" is no word of duty.shock`, "did you mean heavy?"},
		{`duty.shock == "heavy"`, "again: after {gap} it is loose\n", "{gap} is no number of this file", ""},
		{`hub.outside`, "", "hub.outside is length (mm), and yes or no is wanted here", "compare it"},
	} {
		faults := told(t, map[string]string{"diagnosis/a.yaml": hammered("a", c.when, c.more)})
		if len(faults) != 1 || !strings.Contains(faults[0].Says, c.says) || !strings.Contains(faults[0].Remedy, c.remedy) || faults[0].At.Line == 0 {
			t.Errorf("%s %s: told %v\nwant %q, %q", c.when, c.more, faults, c.says, c.remedy)
		}
	}
}

func TestANumberOfAPatternIsUsedOrRemarked(t *testing.T) {
	base, faults := load(small(t, map[string]string{"diagnosis/a.yaml": hammered("a", `duty.load >= heavy`,
		"numbers:\n  heavy: {value: 100 N, from: practice, seen: practice}\n  gap: {value: 0.1 mm, from: practice, seen: practice}\n  idle: {value: 0.2 mm, from: practice, seen: practice}\nagain: 'loose at {gap}'\n")}))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	var got []string
	for _, r := range base.Remarks() {
		if strings.HasPrefix(r.At.File, "diagnosis/") {
			got = append(got, r.Says)
		}
	}
	if !slices.Equal(got, []string{"idle is used nowhere"}) {
		t.Errorf("remarked %v", got)
	}
}
