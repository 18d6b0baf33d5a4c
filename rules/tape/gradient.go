package tape

import (
	"math"

	"wornfit/calc/kernel"
	"wornfit/rules/lang"
)

// Gradient writes the slope of the root over every node the program has into
// adjoint, which has Len registers and needs no clearing; the slots' are the
// gradient. What a program made by Only does not rest on stays as it is. reg
// comes from Run. Where the root is NaN the slopes mean nothing.
//
// At a kink it takes one side: the first argument of a min or max whose arguments
// are equal, +1 for abs at 0. A conditional has the slope of the branch taken;
// comparisons, words and yes-nos have none. A root of 0 is infinitely steep.
func (p *Program) Gradient(reg, adjoint []float64, root Node) {
	if p.rests == nil {
		clear(adjoint[:p.Len()])
	}
	for _, n := range p.rests {
		adjoint[n] = 0
	}
	adjoint[root] = 1
	for i := p.upTo(root) - 1; i >= 0; i-- {
		s := &p.steps[i]
		d := adjoint[s.dst]
		if d == 0 {
			continue
		}
		switch s.op {
		case lang.Neg:
			adjoint[s.a] -= d
		case lang.Add:
			adjoint[s.a] += d
			adjoint[s.b] += d
		case lang.Sub:
			adjoint[s.a] += d
			adjoint[s.b] -= d
		case lang.Mul:
			adjoint[s.a] += d * reg[s.b]
			adjoint[s.b] += d * reg[s.a]
		case lang.Div:
			adjoint[s.a] += d / reg[s.b]
			adjoint[s.b] -= d * reg[s.dst] / reg[s.b]
		case square:
			adjoint[s.a] += 2 * d * reg[s.a]
		case lang.Pow:
			adjoint[s.a] += d * steepness(reg[s.a], reg[s.b], reg[s.dst])
		case lang.Sqrt:
			adjoint[s.a] += d / (2 * reg[s.dst])
		case lang.Abs:
			adjoint[s.a] += d * sign(reg[s.a])
		case lang.Min:
			adjoint[first(s, reg[s.a] <= reg[s.b])] += d
		case lang.Max:
			adjoint[first(s, reg[s.a] >= reg[s.b])] += d
		case lang.Cond:
			if reg[s.a] > 0 {
				adjoint[s.b] += d
			} else if reg[s.a] == 0 {
				adjoint[s.c] += d
			}
		case lang.Call:
			p.callGradient(reg, adjoint, s, d)
		}
	}
}

func first(s *step, is bool) Node {
	if is {
		return s.a
	}
	return s.b
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

// steepness is the slope of z = x to the power y.
func steepness(x, y, z float64) float64 {
	if x == 0 {
		return y * math.Pow(x, y-1)
	}
	return y * z / x
}

// callGradient uses the registers behind the nodes in both reg and adjoint.
func (p *Program) callGradient(reg, adjoint []float64, s *step, d float64) {
	c := &p.calls[s.a]
	x, out := reg[p.scratch:][:len(c.args)], adjoint[p.scratch:][:len(c.args)]
	for i, n := range c.args {
		x[i] = reg[n]
	}
	if c.kernel.Slopes != nil {
		c.kernel.Slopes(x, out)
	} else {
		differences(&c.kernel, x, out)
	}
	for i, n := range c.args {
		if out[i] != 0 {
			adjoint[n] += d * out[i]
		}
	}
	clear(out)
}

// differences are central ones over a step near the cube root of rounding, where
// its error and that of the curve are alike; at the end of a Range, or where a
// side is NaN, one-sided. Where both are NaN so is the slope.
func differences(k *kernel.Kernel, x, out []float64) {
	mid := k.Value(x)
	for i := range x {
		r := k.Args[i].Range
		at, h := x[i], 6e-6*max(math.Abs(x[i]), 1e-3*min(r.Width(), 1e300))
		lo, hi := max(at-h, r.Lo), min(at+h, r.Hi)
		x[i] = lo
		down := k.Value(x)
		x[i] = hi
		up := k.Value(x)
		if math.IsNaN(down) {
			lo, down = at, mid
		}
		if math.IsNaN(up) {
			hi, up = at, mid
		}
		x[i] = at
		out[i] = (up - down) / (hi - lo)
	}
}
