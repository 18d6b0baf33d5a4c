package condition

import (
	"fmt"
	"math"

	"wornfit/advisor/casefile"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
)

// Clearance is how loose the fit is now, on diameter; below 0 it is tight.
type Clearance struct {
	Least, Mean, Most Figure // from the sizes
	Shakes            []Shake
}

// Shake is a clearance by indicator, beside what the sizes say in its direction.
type Shake struct {
	Found, Expected Figure
	Toward          casefile.Value
	Agrees          bool
}

// less is the difference of two figures of different gauges.
func less(hub, shaft Figure) Figure {
	f := about(hub.Best-shaft.Best, math.Hypot(hub.U, shaft.U))
	return f.widened(hub.Best-hub.U-hub.Range.Lo+shaft.Range.Hi-shaft.Best-shaft.U,
		hub.Range.Hi-hub.Best-hub.U+shaft.Best-shaft.U-shaft.Range.Lo)
}

func (c *Condition) clearance(solve *fault.List) {
	if c.Hub.Largest.Is && c.Shaft.Largest.Is {
		c.Clearance.Least = less(c.Hub.Smallest, c.Shaft.Largest)
		c.Clearance.Mean = less(c.Hub.Mean, c.Shaft.Mean)
		c.Clearance.Most = less(c.Hub.Largest, c.Shaft.Smallest)
	}
	for _, s := range c.Fit.Shake {
		if !s.Move.Known {
			continue
		}
		u := 0.0
		if s.Gauge != nil && s.Gauge.Within.Known {
			u = s.Gauge.Within.Hi
		}
		one := Shake{Found: about(s.Move.Mid(), u), Toward: s.Toward, Agrees: true}
		if one.Expected = c.along(s); one.Expected.Is {
			one.Agrees = !one.Found.Range.Meet(one.Expected.Range).Empty()
		}
		c.Clearance.Shakes = append(c.Clearance.Shakes, one)
		if !one.Agrees {
			solve.Add(s.Place, "fits."+c.Fit.ID+".shake", c.quarrel(one),
				"solve it before going on: a part that tilts or springs, an indicator arm that swings, grease taking up room, "+
					"a bore gauge rocked or a micrometer thimble one turn out, parts read warm")
		}
	}
}

// along is the clearance that the sizes promise in the direction of a shake:
// the bore read that way, less the shaft, which may have stood at any angle
// unless it was read that way too.
func (c *Condition) along(s casefile.Shake) Figure {
	if !c.Clearance.Most.Is {
		return Figure{}
	}
	hub, ok := c.toward(casefile.Hub, s)
	if !ok {
		hub = interval.I{Lo: c.Hub.Smallest.Best, Hi: c.Hub.Largest.Best}
	}
	shaft, also := c.toward(casefile.Shaft, s)
	if !also || c.Fit.Purpose == "running" {
		shaft = interval.I{Lo: c.Shaft.Smallest.Best, Hi: c.Shaft.Largest.Best}
	}
	u := math.Hypot(c.Hub.Largest.U, c.Shaft.Smallest.U) + c.Hub.Unseen.Best + c.Shaft.Unseen.Best
	r := hub.Sub(shaft)
	return Figure{Is: true, Best: r.Mid(), Range: interval.I{Lo: r.Lo - u, Hi: r.Hi + u}, U: u}
}

// near is how far from the direction of the shake a reading still counts.
const near = 30 * math.Pi / 180

// toward is the range of sizes read in the direction of a shake.
func (c *Condition) toward(side casefile.Side, s casefile.Shake) (interval.I, bool) {
	out := interval.None()
	for _, r := range c.Fit.Surfaces[side].Readings {
		if !s.Toward.Known || !r.Toward.Known || math.Abs(math.Remainder(r.Toward.Lo-s.Toward.Lo, math.Pi)) > near {
			continue
		}
		for _, v := range r.Sizes {
			if v.Known {
				out = out.Join(interval.Point(v.Lo))
			}
		}
	}
	return out, !out.Empty()
}

func (c *Condition) quarrel(s Shake) string {
	show := func(m float64) string { return c.Case.Speech().Say(m, quantity.LengthDim) }
	return fmt.Sprintf("the shake is %s and the sizes give %s to %s in that direction, doubt included",
		show(s.Found.Best), show(s.Expected.Range.Lo), show(s.Expected.Range.Hi))
}
