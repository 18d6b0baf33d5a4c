package advisor_test

import (
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
)

// Options that cannot win are not worked out, and nothing that is shown changes
// by it: the same names in the same order with the same points, the same five best.
func TestWhatCannotWinNeedNotBeWorkedOut(t *testing.T) {
	base := base(t)
	for _, name := range []string{"lever-eye", "gear-bore", "loose-hub"} {
		c := read(t, base, shipped(t, name))
		every, err := advisor.Advise(base, c, c.Fits[0], advisor.Ask{Speech: c.Speech(), All: true})
		if err != nil {
			t.Fatal(err)
		}
		some, err := advisor.Advise(base, c, c.Fits[0], advisor.Ask{Speech: c.Speech()})
		if err != nil {
			t.Fatal(err)
		}
		if len(every.Options) != len(every.IDs) || len(some.IDs) != len(every.IDs) {
			t.Errorf("%s: %d options told of %d", name, len(every.Options), len(every.IDs))
		}
		sameMethods(t, name, every, some)
		for i := range 5 {
			a, b := &every.Options[i], &some.Options[i]
			if a.ID != b.ID || a.Verdict != b.Verdict || a.Points != b.Points {
				t.Errorf("%s: option %d is %s, %s, %.3f of all and %s, %s, %.3f of some", name, i+1, a.ID, a.Verdict, a.Points, b.ID, b.Verdict, b.Points)
			}
		}
	}
}

func sameMethods(t *testing.T, name string, every, some *answer.Answer) {
	t.Helper()
	if len(every.Methods) != len(some.Methods) {
		t.Fatalf("%s: %d and %d names", name, len(every.Methods), len(some.Methods))
	}
	out := map[string]bool{} // names come in the order of what speaks for them
	for _, m := range some.Methods {
		out[m.Name] = m.Verdict == answer.RuledOut
	}
	for _, m := range every.Methods {
		if out[m.Name] != (m.Verdict == answer.RuledOut) {
			t.Errorf("%s: %s is %s of all", name, m.Name, m.Verdict)
		}
	}
	for i := range every.Methods {
		a, b := every.Methods[i], some.Methods[i]
		if a.Verdict == answer.RuledOut && b.Verdict == answer.RuledOut {
			continue // of a name that is all ruled out one speaks for the rest
		}
		if a.Name != b.Name || a.Verdict != b.Verdict || a.Points != b.Points || a.Others != b.Others || (a.Best == nil) != (b.Best == nil) || a.Best != nil && *a.Best != *b.Best {
			t.Errorf("%s: name %d is %+v of all and %+v of some", name, i+1, a, b)
		}
	}
}
