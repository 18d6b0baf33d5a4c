package link

import "testing"

// A combination's needs by themselves are those of the whole option that ask
// about what is given, word for word.
func TestNeedsAreThoseOfTheOption(t *testing.T) {
	k := newBench(t).stock()
	some := 0
	for _, purpose := range []string{"running", "press-fit"} {
		for _, c := range All(k.in, k.named(purpose, Purpose)) {
			whole, err := c.Link(k.in)
			if err != nil {
				t.Fatal(err)
			}
			few, err := c.Needs(k.in, nil)
			if err != nil {
				t.Fatal(err)
			}
			if len(few.Dims) > 0 || len(few.Steps) > 0 {
				t.Errorf("%s: %d sizes and %d steps were worked out", c.ID, len(few.Dims), len(few.Steps))
			}
			at := 0
			for _, x := range whole.Checks {
				if !x.Need || whole.asksMore(x.Margin) || x.When != 0 && whole.asksMore(x.When) {
					continue
				}
				if at >= len(few.Checks) || few.Checks[at].FullID != x.FullID {
					t.Fatalf("%s: %s is missing among its needs", c.ID, x.FullID)
				}
				at++
			}
			if at != len(few.Checks) {
				t.Errorf("%s: %d needs by themselves, %d in the option", c.ID, len(few.Checks), at)
			}
			some += at
		}
	}
	if some == 0 {
		t.Error("no option has a need that asks about what is given")
	}
}
