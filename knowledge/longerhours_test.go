package knowledge_test

import "testing"

// The hours of a repair grow with what is cut and laid on: the same fit four times
// as long takes longer, whatever the repair, and a thicker coat than a thin one.
func TestHoursGrowWithTheFit(t *testing.T) {
	base := shipped(t)
	for _, c := range []struct{ option, long, coat string }{
		{"shaft-true-up+hub-true-up", "hub/true-up.longer", ""},
		{"shaft-leave+hub-bush-press", "hub/bush.longer", ""},
		{"shaft-sleeve-press+hub-true-up", "shaft/sleeve.longer", ""},
		{"shaft-braze+hub-true-up", "shaft/braze.longer", "shaft/braze.rod"},
		{"shaft-weld+hub-true-up", "shaft/weld.longer", "shaft/weld.rod"},
		{"shaft-spray+hub-true-up", "shaft/spray.longer", "shaft/spray.wire"},
		{"shaft-leave+hub-braze", "hub/braze.longer", "hub/braze.rod"},
		{"shaft-leave+hub-weld", "hub/weld.longer", "hub/weld.rod"},
	} {
		o, l, f := figuresOf(t, base, c.option, "running")
		hours := o.Totals["total.hours"]
		grew, laid := 0, 0
		for _, reg := range things(newDrawer(base, "hours"), &l) {
			f.reg = reg
			l.prog.Run(reg)
			before := reg[hours]
			if c.coat != "" && f.v(c.coat) > 0 {
				laid++
			}
			f.put("fit.length", 4*f.v("fit.length"))
			l.prog.Run(reg)
			if reg[hours] < before {
				t.Fatalf("%s: %.3g s, four times as long %.3g s", c.option, before, reg[hours])
			}
			if reg[hours] > before {
				grew++
			}
			if f.v(c.long) <= 1 {
				t.Fatalf("%s: %s is %.3g", c.option, c.long, f.v(c.long))
			}
		}
		if grew < 100 || c.coat != "" && laid < 20 {
			t.Errorf("%s: longer in %d draws, something laid on in %d", c.option, grew, laid)
		}
	}
}
