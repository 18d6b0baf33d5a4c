package advisor_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
)

// With nothing looked at, no cause is told and the answer asks; one sign that
// settles it, and the asking ends.
func TestAskingEndsWhenSomethingFits(t *testing.T) {
	b := base(t)
	data, err := os.ReadFile(cases + "lever-eye.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var kept []string
	for _, l := range strings.Split(string(data), "\n") {
		if x := strings.TrimSpace(l); strings.HasPrefix(x, "hub: {wear_side") {
			l = "      hub: {SIGNS}"
		} else if strings.HasPrefix(x, "shaft: {wear_side") {
			continue
		}
		kept = append(kept, l)
	}
	text := strings.Join(kept, "\n")
	if !strings.Contains(text, "SIGNS") {
		t.Fatal("the case has no signs to take out")
	}
	answered := func(signs string) *answer.Answer {
		c := read(t, b, strings.Replace(text, "SIGNS", signs, 1))
		a, err := advisor.Advise(b, c, c.Fits[0], advisor.Ask{})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	a := answered("powder: not looked")
	if len(a.Diagnosis) > 0 || len(a.Look) < 4 {
		t.Errorf("told %v, asks %d things", a.Diagnosis, len(a.Look))
	}
	for _, m := range a.Look {
		if m.Ask == "" {
			t.Errorf("%s is asked for without a question", m.Name)
		}
	}
	if n := strings.Count(text, "material: "); n < 2 {
		t.Fatal("the case names no materials")
	}
	c := read(t, b, regexp.MustCompile(`(?m)^(\s+)material: .*$`).ReplaceAllString(strings.Replace(text, "SIGNS", "torn_metal: torn", 1), "${1}material: unknown"))
	torn, err := advisor.Advise(b, c, c.Fits[0], advisor.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(torn.Look, func(m answer.Missing) bool { return strings.Contains(m.Name, "hub.material") && m.Ask != "" }) {
		t.Errorf("torn metal of unknown parts: what they are made of is not asked: %+v", torn.Look)
	}
	a = answered("powder: grey")
	if len(a.Diagnosis) != 1 || a.Diagnosis[0].Rule != "grit-paste" || len(a.Look) > 0 {
		t.Errorf("told %v, asks %v", a.Diagnosis, a.Look)
	}
}
