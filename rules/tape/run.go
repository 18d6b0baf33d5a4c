package tape

import (
	"math"

	"wornfit/rules/lang"
)

// Run computes every node from the slots in reg, which has Len registers and has
// been through Start. All registers are kept: they are the trace.
func (p *Program) Run(reg []float64) {
	for i := range p.steps {
		s := &p.steps[i]
		switch s.op {
		case lang.Neg:
			reg[s.dst] = -reg[s.a]
		case lang.Add:
			reg[s.dst] = reg[s.a] + reg[s.b]
		case lang.Sub:
			reg[s.dst] = reg[s.a] - reg[s.b]
		case lang.Mul:
			reg[s.dst] = reg[s.a] * reg[s.b]
		case lang.Div:
			reg[s.dst] = over(reg[s.a], reg[s.b])
		case square:
			reg[s.dst] = reg[s.a] * reg[s.a]
		case lang.Pow:
			reg[s.dst] = power(reg[s.a], reg[s.b])
		case lang.LessEq:
			reg[s.dst] = lessEq(reg[s.a], reg[s.b])
		case lang.GreaterEq:
			reg[s.dst] = lessEq(reg[s.b], reg[s.a])
		case lang.Less:
			reg[s.dst] = less(reg[s.a], reg[s.b])
		case lang.Greater:
			reg[s.dst] = less(reg[s.b], reg[s.a])
		case lang.Equal:
			reg[s.dst] = equal(reg[s.a], reg[s.b])
		case lang.NotEqual:
			reg[s.dst] = 1 - equal(reg[s.a], reg[s.b])
		case lang.And:
			reg[s.dst] = and(reg[s.a], reg[s.b])
		case lang.Or:
			reg[s.dst] = or(reg[s.a], reg[s.b])
		case lang.Not:
			reg[s.dst] = 1 - reg[s.a]
		case lang.Cond:
			reg[s.dst] = cond(reg[s.a], reg[s.b], reg[s.c])
		case lang.Min:
			reg[s.dst] = min(reg[s.a], reg[s.b])
		case lang.Max:
			reg[s.dst] = max(reg[s.a], reg[s.b])
		case lang.Abs:
			reg[s.dst] = math.Abs(reg[s.a])
		case lang.Sqrt:
			reg[s.dst] = math.Sqrt(reg[s.a])
		case lang.Call:
			reg[s.dst] = p.value(reg, s)
		}
	}
}

// value gathers a call's arguments behind the nodes, where they need no room of
// their own, and asks the kernel.
func (p *Program) value(reg []float64, s *step) float64 {
	c := &p.calls[s.a]
	x := reg[p.scratch:][:len(c.args)]
	for i, n := range c.args {
		x[i] = reg[n]
	}
	return c.kernel.Value(x)
}

func over(a, b float64) float64 {
	if b == 0 {
		return math.NaN()
	}
	return a / b
}

// power is x to the y. The few powers of the trade are multiplied out.
func power(x, y float64) float64 {
	switch y {
	case 3:
		return x * x * x
	case 4:
		return (x * x) * (x * x)
	}
	if x != x || x == 0 && y < 0 {
		return math.NaN()
	}
	return math.Pow(x, y)
}

func lessEq(a, b float64) float64 {
	switch {
	case a <= b:
		return 1
	case a > b:
		return 0
	}
	return math.NaN()
}

func less(a, b float64) float64 {
	switch {
	case a < b:
		return 1
	case a >= b:
		return 0
	}
	return math.NaN()
}

func equal(a, b float64) float64 {
	switch {
	case a == b:
		return 1
	case a != a || b != b:
		return math.NaN()
	}
	return 0
}

func and(a, b float64) float64 {
	if a == 0 || b == 0 {
		return 0
	}
	return a * b
}

func or(a, b float64) float64 {
	if a == 1 || b == 1 {
		return 1
	}
	return a + b
}

func cond(test, yes, no float64) float64 {
	switch {
	case test > 0:
		return yes
	case test == 0:
		return no
	}
	return math.NaN()
}
