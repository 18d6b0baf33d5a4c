package uncertainty

import (
	"fmt"
	"math"

	q "wornfit/calc/quantity"
)

// Gauge is how well a gauge reads, as standard uncertainties.
type Gauge struct {
	Common  q.Length // the same in all its readings: zero, master, screw
	Reading q.Length // new in each reading: feel, step, dirt
}

func (g Gauge) check(name string, readings int) error {
	switch {
	case !(g.Common >= 0) || math.IsInf(float64(g.Common), 0):
		return refuse("common part of "+name, show(g.Common), "0 m or more")
	case !(g.Reading >= 0) || math.IsInf(float64(g.Reading), 0):
		return refuse("reading part of "+name, show(g.Reading), "0 m or more")
	case readings < 1:
		return refuse("readings with "+name, fmt.Sprint(readings), "at least one")
	}
	return nil
}

// Mean returns the standard uncertainty of the mean of n readings with one
// gauge. Its common part does not average out, however often one reads.
//
//	√(Common² + Reading²/n)
//
// Limits and source:
//
//   - Holds for: n readings of one size without a new zero between them.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 5.1.2 with 4.2.3 (only what varies averages out).
func (g Gauge) Mean(n int) (q.Length, error) {
	if err := g.check("the gauge", n); err != nil {
		return 0, err
	}
	return q.Length(math.Sqrt(sq(g.Common) + sq(g.Reading)/float64(n))), nil
}

// Two is a pair of sizes to be subtracted: a bore less a shaft is a clearance.
type Two struct {
	A, B   Gauge
	NA, NB int      // readings of each size
	Shared q.Length // part of both Common that is one and the same: same gauge and zero, same master; 0 if nothing
}

// Difference returns the standard uncertainty of one size less another. What
// both share drops out; what each has alone adds up.
//
//	√(Ca² - S² + Cb² - S² + Ra²/na + Rb²/nb)
//
// Limits and source:
//
//   - Holds for: Shared no more than either Common part.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 5.2.2 and F.1.2.3 (correlation from a common standard).
func (t Two) Difference() (q.Length, error) {
	if err := t.A.check("the first gauge", t.NA); err != nil {
		return 0, err
	}
	if err := t.B.check("the second gauge", t.NB); err != nil {
		return 0, err
	}
	if !(t.Shared >= 0 && t.Shared <= min(t.A.Common, t.B.Common)) {
		return 0, refuse("shared part", show(t.Shared), "from 0 m to the smaller common part, "+show(min(t.A.Common, t.B.Common)))
	}
	own := max(0, sq(t.A.Common)+sq(t.B.Common)-2*sq(t.Shared))
	return q.Length(math.Sqrt(own + sq(t.A.Reading)/float64(t.NA) + sq(t.B.Reading)/float64(t.NB))), nil
}

func sq(x q.Length) float64 { return float64(x * x) }
