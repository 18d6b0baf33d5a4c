package render

import (
	"strings"
	"testing"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// flat is a page as one line, so that a sentence is found wherever it wraps.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

func says(t *testing.T, page string, want ...string) {
	t.Helper()
	for _, s := range want {
		if !strings.Contains(flat(page), s) {
			t.Errorf("does not say %q:\n%s", s, page)
		}
	}
}

func saysNot(t *testing.T, page string, words ...string) {
	t.Helper()
	for _, s := range words {
		if strings.Contains(flat(page), s) {
			t.Errorf("says %q:\n%s", s, page)
		}
	}
}

func TestASentenceKeepsTheNameOfAFile(t *testing.T) {
	for in, want := range map[string]string{
		"h-shake.yaml:97:12: the shake is 0.15 mm": "h-shake.yaml:97:12: the shake is 0.15 mm.",
		"arm.yaml is empty":                        "arm.yaml is empty.",
		"fits.pivot.shake: does not agree":         "fits.pivot.shake: does not agree.",
		"arm:12 is where it stands":                "arm:12 is where it stands.",
		"it wears. it squeaks":                     "It wears. it squeaks.",
		"arm: read at 2 angles only":               "Arm: read at 2 angles only.",
		"öse worn":                                 "Öse worn.",
	} {
		if got := sentence(in); got != want {
			t.Errorf("%q: %q, not %q", in, got, want)
		}
	}
}

func TestWhatIsRuledOutIsNotAmongTheBest(t *testing.T) {
	a := fixture()
	page := Advise(Look{Width: 80}, a, Voice{}, false)
	says(t, page, "The 1 option not ruled out, of 2 judged")
	_, options, _ := strings.Cut(page, "not ruled out")
	saysNot(t, options, "shaft-leave+")
	says(t, Advise(Look{Width: 80}, a, Voice{}, true), "All options", "shaft-leave+hub-leave ruled out - - - -")

	a.Options[0].Verdict, a.Options[0].Kind = answer.RuledOut, answer.NotHere
	a.Methods[0].Verdict, a.Methods[0].Kind, a.Methods[0].Why = answer.RuledOut, answer.NotHere, "no machine here bores it"
	page = Advise(Look{Width: 80}, a, Voice{}, false)
	says(t, page, "none works, the nearest to working first", "None of the 2 options works", "Nearest to working: true-shaft-bush-bore.")
	saysNot(t, page, "best", "63")
}

func TestWaysAreNumberedOneByOne(t *testing.T) {
	a := fixture()
	third := a.Methods[0]
	third.Name, third.Rank = "bore-and-bush", 7
	a.Methods = []answer.Method{a.Methods[0], third, a.Methods[1]}
	says(t, Advise(Look{Width: 100}, a, Voice{}, false), "1 true-shaft-bush-bore works", "2 bore-and-bush works", "- knurl ruled out")
}

// What nobody knows is never told as if it had been found.
func TestNotKnownIsSaid(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"need", "no machine here takes the arm", "Not known whether no machine here takes the arm."},
		{"need", "not known whether no machine here takes the arm", "Not known whether no machine here takes the arm."},
		{"limit", "it stands at 0.2 mm, and 0.3 mm is wanted", "Not known whether this is kept: it stands at 0.2 mm, and 0.3 mm is wanted."},
	} {
		a := fixture()
		o := &a.Options[0]
		o.Verdict, a.Methods[0].Verdict = answer.CantTell, answer.CantTell
		o.Reasons = []answer.Reason{{Rule: "open", What: c.what, Strength: "must", Ground: "physics", Text: c.text}}
		a.Methods[0].Why = "not known well enough: " + c.text
		for name, page := range pages(a, Look{Width: 100}, Voice{}) {
			if name != "advise" && name != "why "+o.ID {
				continue
			}
			says(t, page, c.want)
			saysNot(t, page, "not known whether not known", "Not known well enough")
		}
	}
}

func TestNoCurrencyIsNamedThatNobodyStated(t *testing.T) {
	page := Advise(Look{Width: 100}, fixture(), Voice{}, true)
	says(t, page, "works with care 63 6.5 h 87.25 7.5 h")
	saysNot(t, page, "money")
	if got := (Voice{}).Value(1, quantity.RateDim); got != "3600 per h" {
		t.Errorf("got %q", got)
	}
	if got := (Voice{quantity.Speech{Money: "EUR"}}).Value(12, quantity.MoneyDim); got != "12 EUR" {
		t.Errorf("got %q", got)
	}
}

func TestNoScoreIsNone(t *testing.T) {
	score := answer.Line{Name: "score", Dim: quantity.LengthDim}
	if got := (Voice{}).figure(score); got != "none" {
		t.Errorf("no score: %q", got)
	}
	if score.Value = 0.0001; (Voice{}).figure(score) != "0.100 mm" { // no doubt known: no ±
		t.Errorf("got %q", (Voice{}).figure(score))
	}
	if score.Value, score.U = 0, 0.0001; (Voice{}).figure(score) != "0.0 ±0.1 mm" {
		t.Errorf("one that may hide: %q", (Voice{}).figure(score))
	}
}

func TestFiveMistakesUnlessAllAreAskedFor(t *testing.T) {
	a := fixture()
	o := &a.Options[0]
	o.Mistakes = nil
	for _, s := range strings.Fields("one two three four five six seven") {
		o.Mistakes = append(o.Mistakes, answer.Mistake{Says: "mistake " + s})
	}
	page := Advise(Look{Width: 80}, a, Voice{}, false)
	says(t, page, "Mistakes to avoid (2 more with --all)", "- Mistake one.", "- Mistake five.")
	saysNot(t, page, "Mistake six")
	page = Advise(Look{Width: 80}, a, Voice{}, true)
	says(t, page, "- Mistake seven.")
	saysNot(t, page, "more with")
}

func TestACautionStandsOnceBeforeItsStep(t *testing.T) {
	a := fixture()
	s := &a.Options[0].Steps[0]
	s.Cautions = append(s.Cautions, s.Cautions[0])
	if n := strings.Count(Advise(Look{Width: 80}, a, Voice{}, false), "Start-up"); n != 2 { // in full, then as before
		t.Errorf("told %d times", n)
	}
}

// Figures of an option that is ruled out were counted at no size that works.
func TestCompareCountsNothingForWhatIsRuledOut(t *testing.T) {
	a := fixture()
	a.Options[1].Shaft = "replace" // one that cuts
	page := Compare(Look{Width: 120}, a, []*answer.Option{&a.Options[0], &a.Options[1]}, Voice{quantity.Speech{Money: "EUR"}})
	says(t, page, "verdict works with care ruled out", "points 63 -", "cost 87.25 EUR, 54 points -",
		"To be found out: The load on the fit, such as 1800 N.")
	saysNot(t, page, "104 EUR")
	saysNot(t, Why(Look{Width: 120}, a, &a.Options[1], Voice{}), "Its points")
	says(t, Why(Look{Width: 120}, a, &a.Options[0], Voice{}), "Its points")
	a.Options[0].Missing[0].Ask = "how long is it?"
	page = Compare(Look{Width: 120}, a, []*answer.Option{&a.Options[0]}, Voice{})
	says(t, page, "To be found out: How long is it?")
	saysNot(t, page, "?.")
}
