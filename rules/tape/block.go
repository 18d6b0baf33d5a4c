package tape

import (
	"math"

	"wornfit/rules/lang"
)

// lane holds one register for a block of draws.
type lane = [Lanes]float64

// RunBlock is Run for Lanes draws at once: bit for bit what Run gives for each,
// but that the bits of a NaN may differ.
func (p *Program) RunBlock(reg [][Lanes]float64) {
	for i := range p.steps {
		s := &p.steps[i]
		if s.op == lang.Call {
			p.values(reg, s)
			continue
		}
		blocks[s.op](&reg[s.dst], &reg[s.a], &reg[s.b], &reg[s.c])
	}
}

// values gathers each draw's arguments in the first register behind the nodes;
// a kernel of more than Lanes arguments does not exist.
func (p *Program) values(reg [][Lanes]float64, s *step) {
	c := &p.calls[s.a]
	if len(c.args) == 0 {
		for i := range reg[s.dst] {
			reg[s.dst][i] = c.kernel.Value(nil)
		}
		return
	}
	x := reg[p.scratch][:len(c.args)]
	for i := range reg[s.dst] {
		for k, n := range c.args {
			x[k] = reg[n][i]
		}
		reg[s.dst][i] = c.kernel.Value(x)
	}
}

// blocks hold a loop each, so that nothing is looked up inside one.
var blocks = [...]func(dst, a, b, c *lane){
	lang.Neg: func(dst, a, _, _ *lane) {
		for i := range dst {
			dst[i] = -a[i]
		}
	},
	lang.Add: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = a[i] + b[i]
		}
	},
	lang.Sub: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = a[i] - b[i]
		}
	},
	lang.Mul: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = a[i] * b[i]
		}
	},
	lang.Div: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = over(a[i], b[i])
		}
	},
	square: func(dst, a, _, _ *lane) {
		for i := range dst {
			dst[i] = a[i] * a[i]
		}
	},
	lang.Pow: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = power(a[i], b[i])
		}
	},
	lang.LessEq:    func(dst, a, b, _ *lane) { lessEqs(dst, a, b) },
	lang.GreaterEq: func(dst, a, b, _ *lane) { lessEqs(dst, b, a) },
	lang.Less:      func(dst, a, b, _ *lane) { lesses(dst, a, b) },
	lang.Greater:   func(dst, a, b, _ *lane) { lesses(dst, b, a) },
	lang.Equal: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = equal(a[i], b[i])
		}
	},
	lang.NotEqual: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = 1 - equal(a[i], b[i])
		}
	},
	lang.And: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = and(a[i], b[i])
		}
	},
	lang.Or: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = or(a[i], b[i])
		}
	},
	lang.Not: func(dst, a, _, _ *lane) {
		for i := range dst {
			dst[i] = 1 - a[i]
		}
	},
	lang.Cond: func(dst, a, b, c *lane) {
		for i := range dst {
			dst[i] = cond(a[i], b[i], c[i])
		}
	},
	lang.Min: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = min(a[i], b[i])
		}
	},
	lang.Max: func(dst, a, b, _ *lane) {
		for i := range dst {
			dst[i] = max(a[i], b[i])
		}
	},
	lang.Abs: func(dst, a, _, _ *lane) {
		for i := range dst {
			dst[i] = math.Abs(a[i])
		}
	},
	lang.Sqrt: func(dst, a, _, _ *lane) {
		for i := range dst {
			dst[i] = math.Sqrt(a[i])
		}
	},
}

func lessEqs(dst, a, b *lane) {
	for i := range dst {
		dst[i] = lessEq(a[i], b[i])
	}
}

func lesses(dst, a, b *lane) {
	for i := range dst {
		dst[i] = less(a[i], b[i])
	}
}
