package condition

import (
	"math"

	"wornfit/advisor/casefile"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/link"
)

// putKeyway tells what says how wide the key is when nobody says it: the keyway
// in the fit itself and the units the fit was made in.
func (c *Condition) putKeyway(out map[string]link.Known) {
	if w := c.keyway(); w > 0 {
		out["fit.keyway_width"] = link.Known{Value: interval.Point(w), Best: w, Is: true, Says: "stated"}
	}
	is := 0.0
	if inchMade(c.Fit.Given["fit.nominal"]) {
		is = 1
	}
	out["fit.inch_made"] = link.Known{Value: interval.Point(is), Best: is, Is: true, Says: "stated"}
}

// keyway is the narrower of the keyways of hub and shaft: a keyway only gets
// wider by wear. One that stands off the fit is another part's. 0: none stated.
func (c *Condition) keyway() float64 {
	least := math.Inf(1)
	for _, side := range casefile.Sides {
		for _, n := range c.Surface(side).Part.Near {
			off := n.Distance.Known && n.Distance.Lo > 0
			if n.Kind == "keyway" && !off && n.Size.Known {
				least = min(least, n.Size.Mid())
			}
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// inchMade is true of a size typed in inches, and of one in millimetres that
// stands on a sixteenth of an inch and on no half millimetre: 31.75 mm.
func inchMade(nominal casefile.Value) bool {
	if !nominal.Known {
		return false
	}
	if sys, ok := nominal.Typed.Speaks(); ok && sys == quantity.Inch {
		return true
	}
	const sixteenth, halfMM, near = 0.0254 / 16, 0.0005, 0.00002 // near: as closely as such a size is typed
	off := func(step float64) float64 {
		return math.Abs(nominal.Mid() - step*math.Round(nominal.Mid()/step))
	}
	return off(sixteenth) <= near && off(halfMM) > near
}
