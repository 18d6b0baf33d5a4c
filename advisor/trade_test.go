package advisor_test

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
)

// hardGrounds are the world's: what neither money nor a better shop mends.
var hardGrounds = []string{"physics", "geometry", "function", "standard"}

// The shipped cases show the whole trade: many ways come first somewhere, most
// work somewhere, and each is barred somewhere by the world itself, not by the
// shop, a wish or caution.
func TestTheCasesShowTheWholeTrade(t *testing.T) {
	base := base(t)
	files, err := filepath.Glob(cases + "*.yaml")
	if err != nil || len(files) < 12 {
		t.Fatalf("%d cases, %v", len(files), err)
	}
	first, works, barred := map[string][]string{}, map[string][]string{}, map[string][]string{}
	purposes := map[string]bool{}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		c := read(t, base, shipped(t, name))
		for _, f := range c.Fits {
			purposes[f.Purpose] = true
			a, err := advisor.Advise(base, c, f, advisor.Ask{Speech: c.Speech(), All: true})
			if err != nil {
				t.Fatal(err)
			}
			for _, m := range a.Methods {
				switch {
				case open(m.Verdict):
					works[m.Name] = append(works[m.Name], name)
					if m.Rank == 1 {
						first[m.Name] = append(first[m.Name], name)
					}
				case m.Verdict == answer.RuledOut && byTheWorld(a, m):
					barred[m.Name] = append(barred[m.Name], name)
				}
			}
		}
	}
	for _, p := range base.Input.Parts {
		if p.Side.String() == "purpose" && !purposes[p.ID] {
			t.Errorf("no case is of the purpose %s", p.ID)
		}
	}
	t.Logf("first: %v", first)
	t.Logf("work: %v", slices.Sorted(maps.Keys(works)))
	if len(first) < 6 {
		t.Errorf("only %d ways come first in some case: %v", len(first), first)
	}
	if len(works) < 10 {
		t.Errorf("only %d ways work in some case", len(works))
	}
	for i := range base.Names {
		if n := base.Names[i].ID; len(barred[n]) == 0 {
			t.Errorf("%s is barred by physics, geometry, function or standard in no case", n)
		}
	}
}

func open(verdict string) bool { return verdict == answer.Works || verdict == answer.WithCare }

// byTheWorld reports a name whose best option is barred by a must of the world,
// or that cannot serve the purpose at all.
func byTheWorld(a *answer.Answer, m answer.Method) bool {
	if m.Kind != answer.Never {
		return false
	}
	if m.Best == nil {
		return true
	}
	for i := range a.Options {
		if a.Options[i].ID != *m.Best {
			continue
		}
		for _, r := range a.Options[i].Reasons {
			if r.Blocks && slices.Contains(hardGrounds, r.Ground) {
				return true
			}
		}
	}
	return false
}
