package condition

import (
	"errors"
	"math"
	"slices"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/rotating"

	q "wornfit/calc/quantity"
)

// tolerated is how far from nominal, as a share of it, a size may have been
// made when the case does not say: about a drilled and reamed fit.
// Common practice, no source.
const tolerated = 0.001

// before settles the size before the wear: an unworn land, else nominal with
// the room its fit leaves.
func (s *Surface) before(c *Condition, lands []size) {
	if len(lands) > 0 {
		s.Before, s.BeforeFrom = about(mean(byStation(lands)), meanU(lands)), "land"
		return
	}
	nom := c.Fit.Given["fit.nominal"]
	if !nom.Known {
		return
	}
	s.BeforeFrom = "nominal"
	s.Before = stated(nom)
	below, above := tolerated*nom.Hi, tolerated*nom.Hi
	if fit := c.Fit.WhenNew; fit.Known {
		below = max(math.Abs(fit.Lo), math.Abs(fit.Hi))
		above = below
	}
	if slices.Contains([]string{"running", "oscillating", "sliding"}, c.Fit.Purpose) {
		if s.Side == casefile.Hub { // a free bore is made at nominal or over, its shaft at nominal or under
			below = 0
		} else {
			above = 0
		}
	}
	s.Before = s.Before.widened(below, above)
	c.note("common practice, no source", basis.Practice, "the wear of %s is told from its nominal size; an unworn land would tell it better", s.Part.Called)
}

// wear is what the surface lost, on diameter, where it lost most.
func (s *Surface) wear(c *Condition, sizes, lands []size) {
	if !s.Before.Is {
		return
	}
	worst, best := s.Largest, s.Largest.Best-s.Before.Best
	if s.Side == casefile.Shaft {
		worst, best = s.Smallest, s.Before.Best-s.Smallest.Best
	}
	if len(lands) > 0 { // gauge against gauge: what both readings share drops out
		u := apartU(worstOf(s.Side, sizes), lands)
		hidden := max(worst.Range.Hi-worst.Best, worst.Best-worst.Range.Lo) - worst.U
		s.Wear = about(best, u).widened(0, hidden).atLeastNothing()
		return
	}
	lost := worst.Range.Sub(s.Before.Range)
	if s.Side == casefile.Shaft {
		lost = s.Before.Range.Sub(worst.Range)
	}
	s.Wear = Figure{Is: true, Best: best, Range: lost, U: worst.U}.atLeastNothing()
}

func worstOf(side casefile.Side, sizes []size) []size {
	worst := sizes[0]
	for _, z := range sizes {
		if side == casefile.Hub && z.value > worst.value || side == casefile.Shaft && z.value < worst.value {
			worst = z
		}
	}
	return []size{worst}
}

// oneSided is the depth worn to one side: what the most worn line across lost
// more than the line that is least worn at that station. Sizes cannot tell one
// side from both; when nobody saw which, it may be half.
func (s *Surface) oneSided(stations [][]size, seen string) {
	if !s.Before.Is || !s.OutOfRound.Is {
		return
	}
	deepest := Figure{}
	for _, st := range stations {
		big, small, ok := across(st)
		if !ok {
			continue
		}
		lost := big.value - max(small.value, s.Before.Best)
		if s.Side == casefile.Shaft {
			lost = min(big.value, s.Before.Best) - small.value
		}
		if !deepest.Is || lost > deepest.Best {
			deepest = about(lost, apartU([]size{big}, []size{small}))
		}
	}
	switch seen {
	case "one side":
	case "both sides", "all round":
		deepest = Figure{Is: true, Best: deepest.Best / 2, U: deepest.U / 2,
			Range: interval.I{Lo: deepest.Range.Lo / 2, Hi: deepest.Range.Hi / 2}}
	default:
		deepest.Range.Lo -= deepest.Best / 2
	}
	s.OneSided = deepest.atLeastNothing()
}

// wearRate is the wear of both surfaces over the hours run.
func (c *Condition) wearRate() {
	h := c.Case.Duty["duty.hours"]
	if !c.Hub.Wear.Is || !c.Shaft.Wear.Is || !h.Known || h.Lo <= 0 {
		return
	}
	lost := c.Hub.Wear.Range.Add(c.Shaft.Wear.Range)
	rate := lost.Div(interval.I{Lo: h.Lo, Hi: h.Hi})
	c.WearRate = Figure{Is: true, Best: (c.Hub.Wear.Best + c.Shaft.Wear.Best) / h.Mid(), Range: rate}
	c.WearRate.U = c.WearRate.Doubt()
}

// energy is what the heavier and wider of the two parts stores when it turns:
// at least as a disc of even thickness, at most as a rim.
func (c *Condition) energy() {
	v := c.Case.Duty["duty.speed"]
	if p := c.Case.Duty["duty.part_speed"]; p.Known && (!v.Known || p.Hi > v.Hi) {
		v = p
	}
	if !v.Known {
		return
	}
	for _, side := range casefile.Sides {
		g := c.Fit.Part(side).Given
		m, d := g[string(side)+".weight"], g[string(side)+".swing"]
		if !m.Known || !d.Known {
			continue
		}
		at := func(m, d, n float64) rotating.Part {
			return rotating.Part{Mass: q.Mass(m), Swing: q.Length(d), Turns: q.Rotation(n)}
		}
		best, err := rotating.DiscEnergy(at(m.Mid(), d.Mid(), v.Mid()))
		least, err2 := rotating.DiscEnergy(at(m.Lo, d.Lo, v.Lo))
		most, err3 := rotating.RimEnergy(at(m.Hi, d.Hi, v.Hi))
		if errors.Join(err, err2, err3) != nil {
			continue // no weight or no size: nothing can be said
		}
		e := Figure{Is: true, Best: float64(best), Range: interval.I{Lo: float64(least), Hi: float64(most)}}
		if e.Range.Hi > c.Energy.Range.Hi || !c.Energy.Is {
			c.Energy = e
		}
	}
}
