package solve

import (
	"testing"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/rules/link"
)

// A slow limit is asked about the finished design, at its worst sizes, and never
// in the search; kept, it is not called proved; broken, no design is told to work.
func TestASlowLimitIsAskedOfTheFinishedDesign(t *testing.T) {
	for _, c := range []struct {
		most  float64
		works Truth
	}{{25.2, Yes}, {25.005, NotProved}} {
		asked := 0
		slow := kernel.Kernel{Name: "slow", Result: quantity.LengthDim, Slow: true,
			Args: []kernel.Arg{{Name: "x", Dim: quantity.LengthDim, Range: interval.I{Lo: 0, Hi: 1}}},
			Value: func(x []float64) float64 {
				asked++
				return x[0]
			}}
		h := byHand()
		bore := h.dim("bore", "", 20, 30, 0.02, 0.004)
		h.must("least", h.over(bore, 25))
		h.must("most", h.under(bore, 25.1))
		h.must("slow", h.under(h.b.Call(slow, bore), c.most))
		h.o.Checks[2].After = true
		a := h.solve(Thorough)
		s := a.States[2]
		if a.Works != c.works || s.Proved || (s.Holds == Yes) != (c.works == Yes) {
			t.Errorf("at most %v: works %v, holds %v, proved %v", c.most, a.Works, s.Holds, s.Proved)
		}
		if c.works == NotProved && (len(a.Broken) != 1 || a.Broken[0] != 2) {
			t.Errorf("in the way is %v", a.Broken)
		}
		// half the cut and the gauge's error stand against it
		if w := window(t, a, "bore"); s.Worst > c.most*mm-w.Target-w.Width/2-0.004*mm+1e-9 {
			t.Errorf("it is judged at a margin of %g, not at the worst size", s.Worst)
		}
		if asked == 0 || asked > 60 {
			t.Errorf("the slow calculation was asked %d times", asked)
		}
	}
}

// A slow should that fails costs what any broken should does.
func TestASlowShouldThatFailsIsBroken(t *testing.T) {
	slow := kernel.Kernel{Name: "slow", Result: quantity.LengthDim, Slow: true,
		Args:  []kernel.Arg{{Name: "x", Dim: quantity.LengthDim, Range: interval.I{Lo: 0, Hi: 1}}},
		Value: func(x []float64) float64 { return x[0] }}
	h := byHand()
	bore := h.dim("bore", "", 20, 30, 0.02, 0.004)
	h.must("least", h.over(bore, 25))
	h.limit("slow", link.Should, link.Practice, h.under(h.b.Call(slow, bore), 24))
	h.o.Checks[1].After = true
	if a := h.solve(Quick); a.Works != Yes || a.States[1].Holds != No {
		t.Errorf("works %v, the should holds %v", a.Works, a.States[1].Holds)
	}
}
