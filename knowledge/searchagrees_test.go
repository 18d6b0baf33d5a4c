package knowledge_test

import (
	"os"
	"path/filepath"
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
)

// What the rule tests hold to work at sizes chosen by hand, the search finds to
// work by itself, tolerances, doubts and all.
func TestTheSearchFindsWhatTheRuleTestsHoldToWork(t *testing.T) {
	base := shipped(t)
	answers := map[string]*answer.Answer{}
	for _, r := range ruleTests(t) {
		if len(r.always) > 0 {
			continue // an option that its very kind rules out
		}
		a := answers[r.base]
		if a == nil {
			data, err := os.ReadFile(filepath.Join("..", r.base))
			if err != nil {
				t.Fatal(err)
			}
			c, faults := casefile.Read(r.base, data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")})
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			if a, err = advisor.Advise(base, c, c.Fits[0], advisor.Ask{Speech: c.Speech(), All: true}); err != nil {
				t.Fatal(err)
			}
			answers[r.base] = a
		}
		found := false
		for _, o := range a.Options {
			if o.ID != r.option {
				continue
			}
			found = true
			if o.Verdict != answer.Works && o.Verdict != answer.WithCare {
				t.Errorf("%s: the search says %s is %s on %s", r.file, o.ID, o.Verdict, r.base)
			}
		}
		if !found {
			t.Errorf("%s: the answer to %s has no option %s", r.file, r.base, r.option)
		}
	}
}
