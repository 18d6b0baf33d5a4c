package tape

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
)

// cornerSlack is how far, in parts of the value, a kernel may stray from its own
// Trend by rounding.
const cornerSlack = 1e-12

// encloseCall asks the kernel's Enclose or its corners. Outside their ranges a
// kernel is NaN, so the arguments are cut to them first.
func (p *Program) encloseCall(reg []interval.I, s *step) interval.I {
	c := &p.calls[s.a]
	x := reg[p.scratch:][:len(c.args)]
	for i, n := range c.args {
		if x[i] = reg[n].Meet(c.kernel.Args[i].Range); x[i].Empty() {
			return interval.None()
		}
	}
	if c.kernel.Enclose != nil {
		if r := c.kernel.Enclose(x); !r.Empty() {
			return r
		}
		return interval.None()
	}
	return p.corners(&c.kernel, x)
}

// corners bounds a kernel by its Trends. A corner where the kernel is NaN says
// nothing, nor does an argument that varies without a Trend.
func (p *Program) corners(k *kernel.Kernel, x []interval.I) interval.I {
	point := true
	for i := range x {
		if x[i].Lo != x[i].Hi {
			if point = false; k.Args[i].Trend == 0 {
				return interval.Whole()
			}
		}
	}
	w := p.work()
	defer works.Put(w)
	lo, hi := corner(k, x, w.x, -1), corner(k, x, w.x, +1)
	if point && math.IsNaN(lo) {
		return interval.None()
	}
	r := interval.Whole()
	if !math.IsNaN(lo) {
		r.Lo = lo - math.Abs(lo)*cornerSlack - math.SmallestNonzeroFloat64
	}
	if !math.IsNaN(hi) {
		r.Hi = hi + math.Abs(hi)*cornerSlack + math.SmallestNonzeroFloat64
	}
	return r
}

// corner is the kernel's value where its Trends make it greatest (side +1) or
// least (-1).
func corner(k *kernel.Kernel, x []interval.I, at []float64, side int8) float64 {
	at = at[:len(x)]
	for i := range x {
		if at[i] = x[i].Lo; k.Args[i].Trend*side > 0 {
			at[i] = x[i].Hi
		}
	}
	return k.Value(at)
}
