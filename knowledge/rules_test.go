package knowledge_test

import (
	"slices"
	"strings"
	"testing"

	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/link"
)

func shipped(t *testing.T) *rules.Base {
	t.Helper()
	base, faults := knowledge.Load()
	for _, f := range faults {
		t.Fatal(f.Error())
	}
	return base
}

// A repair that breaks nothing is changed in one point, and exactly the rules
// that a machinist would name break, of all the files it is made of.
func TestRules(t *testing.T) {
	base := shipped(t)
	for _, r := range ruleTests(t) {
		t.Run(strings.TrimSuffix(strings.TrimPrefix(r.file, "tests/"), ".yaml"), func(t *testing.T) {
			b, err := newRuleBench(base, r)
			if err != nil {
				t.Fatalf("%s: %v", r.file, err)
			}
			if broken, err := b.broken(ruleLine{}); err != nil || !slices.Equal(broken, r.always) {
				t.Fatalf("%s: the base breaks %v, %v; it must break %v", r.file, broken, err, r.always)
			}
			for _, l := range r.lines {
				broken, err := b.broken(l)
				want := append(slices.Clone(r.always), l.breaks...)
				slices.Sort(want)
				switch {
				case err != nil:
					t.Errorf("%s: %v", l.at, err)
				case !slices.Equal(broken, want):
					t.Errorf("%s: with %v %v\n  breaks %v\n  want   %v", l.at, l.change, l.sizes, broken, want)
				}
			}
		})
	}
}

// Every need, limit and pick of every part breaks in a line of a file under its
// own side of tests/.
func TestEveryRuleHasALine(t *testing.T) {
	base := shipped(t)
	told := map[string]bool{}
	lines := 0
	for _, r := range ruleTests(t) {
		side := strings.Split(r.file, "/")[1]
		ids := slices.Clone(r.always)
		for _, l := range r.lines {
			lines++
			ids = append(ids, l.breaks...)
		}
		for _, id := range ids {
			if _, bare, ok := strings.Cut(id, "."); ok {
				id = bare
			}
			told[side+"/"+id] = true
		}
	}
	all := rulesOf(base)
	for _, id := range all {
		if !told[id] {
			t.Errorf("%s has no line in tests/%s/", id, strings.Split(id, "/")[0])
		}
	}
	t.Logf("%d lines for %d rules", lines, len(all))
	if len(all) < 100 {
		t.Errorf("only %d rules were found; the walk has lost its way", len(all))
	}
}

// rulesOf lists every rule there is, SIDE/ID, those that links make of features
// and picks among them.
func rulesOf(base *rules.Base) []string {
	seen := map[string]bool{}
	var out []string
	add := func(c *link.Check) {
		if id := c.Of.Side.String() + "/" + c.ID; !seen[id] {
			seen[id] = true
			out = append(out, id)
		}
	}
	for _, p := range base.Input.Parts {
		if p.Side != link.Purpose {
			continue
		}
		for _, c := range link.Every(base.Input, p) {
			o, err := c.Link(base.Input)
			if err != nil {
				continue // another test tells it
			}
			for i := range o.Checks {
				add(&o.Checks[i])
			}
			for i := range o.Picks {
				f := o.Picks[i].Failed
				f.Of = o.Picks[i].Of
				add(&f)
			}
		}
	}
	slices.Sort(out)
	return out
}
