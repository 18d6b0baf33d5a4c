package knowledge_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/link"
)

const throwaway = "testdata/throwaway"

// A treatment that no Go file and no other rule file knows is one YAML file: it
// loads, links with all there is, and has nothing a shipped one would not have.
func TestATreatmentIsOneFile(t *testing.T) {
	base, faults := knowledge.Check(throwaway)
	for _, f := range faults {
		t.Error(f.Error())
	}
	shafts, options := map[string]bool{}, 0
	for _, purpose := range base.Input.Parts {
		if purpose.Side != link.Purpose {
			continue
		}
		for _, c := range link.All(base.Input, purpose) {
			if c.Hub.ID != "close-up" {
				continue
			}
			if _, err := c.Link(base.Input); err != nil {
				t.Errorf("%s for %s: %v", c.ID, purpose.ID, err)
			}
			shafts[c.Shaft.ID+" "+purpose.ID] = true
			options++
		}
	}
	want := 0
	for _, s := range base.Input.Parts {
		for _, p := range base.Input.Parts {
			if s.Side != link.Shaft || p.Side != link.Purpose {
				continue
			}
			want++
			if !shafts[s.ID+" "+p.ID] {
				t.Errorf("it was not linked with shaft/%s for %s", s.ID, p.ID)
			}
		}
	}
	if want < 9 || options < want {
		t.Errorf("%d options of %d pairs; three shaft treatments and three purposes make nine at least", options, want)
	}
	if seen := len(rulesNamed(base, "close-up-")); seen < 8 {
		t.Errorf("only %d rules of it are in its options; it has two limits, two needs of facts and machines, and five kinds of neighbour that rule it out", seen)
	}
}

func rulesNamed(base *rules.Base, prefix string) []string {
	var out []string
	for _, id := range rulesOf(base) {
		if _, bare, _ := strings.Cut(id, "/"); strings.HasPrefix(bare, prefix) {
			out = append(out, id)
		}
	}
	return out
}

func leverEye(t *testing.T, base *rules.Base) *answer.Answer {
	t.Helper()
	data, err := os.ReadFile("../testdata/cases/lever-eye.yaml")
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read("lever-eye.yaml", data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a, err := advisor.Advise(base, c, c.Fits[0], advisor.Ask{Speech: c.Speech(), All: true})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// shouldsBroken counts what takes points off below those of the criteria.
func shouldsBroken(o *answer.Option) int {
	n := 0
	for _, r := range o.Reasons {
		if r.Strength == "should" && r.Holds != nil && !*r.Holds {
			n++
		}
	}
	return n
}

// It is judged like any other on a shipped case: ranked, scored, sized, named.
func TestATreatmentOfOneFileIsJudged(t *testing.T) {
	base, faults := knowledge.Load(throwaway)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a := leverEye(t, base)
	seen := 0
	for _, o := range a.Options {
		if !strings.Contains(o.ID, "hub-close-up") {
			continue
		}
		seen++
		if math.IsNaN(o.Points) || math.IsInf(o.Points, 0) || o.Points < -base.OffShould*float64(shouldsBroken(&o)) || o.Points > 100 {
			t.Errorf("%s has %v points", o.ID, o.Points)
		}
		if o.ID != "shaft-replace+hub-close-up" {
			continue
		}
		if o.Verdict == answer.RuledOut || o.Verdict == answer.CantTell {
			t.Errorf("%s: %s; a new pin in a closed eye would do", o.ID, o.Verdict)
		}
		if len(o.Dimensions) != 2 {
			t.Errorf("%s has %d sizes; the eye and the pin are two", o.ID, len(o.Dimensions))
		}
		for _, d := range o.Dimensions {
			if d.Name == "closed_bore" && !(d.Target > 24e-3 && d.Target < 25.5e-3) {
				t.Errorf("the eye would be cut to %v m; it is 25 mm", d.Target)
			}
		}
	}
	if seen < 3 {
		t.Errorf("%d options close the eye in; there are three shaft treatments", seen)
	}
	for _, m := range a.Methods {
		if m.Name == "close-in" {
			return
		}
	}
	t.Error("its trade name is not among the methods")
}
