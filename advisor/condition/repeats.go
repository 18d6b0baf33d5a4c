package condition

import (
	"fmt"
	"math"
	"slices"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/uncertainty"
	"wornfit/rules/fault"

	q "wornfit/calc/quantity"
)

// Repeats of one place that lie further apart than this many times what the
// gauge repeats within, or, where that is not stated, what it reads true
// within, contradict each other: one of them was not read, written or set
// right. Common practice, no source: feel and dirt spread repeats by two or
// three times what a gauge is said to, not by more.
const (
	timesRepeats = 6
	timesWithin  = 3
	rounding     = 1e-9 // m, so that a spread typed as the limit is not beyond it
)

// farApart is the spread at which repeats with a gauge contradict each other;
// ok is false where nothing is said of the gauge.
func farApart(g *casefile.Gauge) (limit float64, ok bool) {
	switch {
	case g == nil:
		return 0, false
	case g.Repeats.Known:
		return timesRepeats * g.Repeats.Hi, true
	case g.Within.Known:
		return timesWithin * g.Within.Hi, true
	}
	return 0, false
}

// repeats tells the places whose repeats contradict each other.
func (c *Condition) repeats(solve *fault.List) {
	show := func(m float64) string { return c.Case.Speech().Say(m, q.LengthDim) }
	for _, side := range casefile.Sides {
		f := c.Fit.Surfaces[side]
		for _, r := range slices.Concat(f.Readings, f.Lands) {
			low, high := reach(r)
			limit, ok := farApart(r.Gauge)
			if !ok || high-low <= limit+rounding {
				continue
			}
			solve.Add(r.Place, fmt.Sprintf("fits.%s.readings.%s", c.Fit.ID, side),
				fmt.Sprintf("%s reads %s and %s at one place, and the %s can differ by %s at most (common practice, no source)",
					c.Fit.Part(side).Called, show(low), show(high), r.Gauge.Called, show(limit)),
				"read it again: one of the two is a slip of the pen, a rocked gauge, a thimble one turn out or a burr")
		}
	}
}

// reach is the smallest and largest repeat of a reading; without one high is
// below low.
func reach(r casefile.Reading) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range r.Sizes {
		if v.Known {
			low, high = min(low, v.Lo), max(high, v.Lo)
		}
	}
	return low, high
}

// fewRepeats tells a doubt that is wide only because the repeats are few:
// more than twice what the same spread would give with k = 2.
func (c *Condition) fewRepeats(s size, r casefile.Reading, p *casefile.Part) {
	u, _, err := uncertainty.Combine(s.inputs())
	if err != nil || u == 0 || s.u() <= 4*u {
		return
	}
	c.note("JCGM 100:2008, annex G", basis.Page, "%s: %d repeats of %s that differ are few: k is %.1f in place of 2, and its doubt ±%s; more repeats would narrow it",
		r.Place, s.n, p.Called, s.u()/u, c.Case.Speech().Say(s.u(), q.LengthDim))
}
