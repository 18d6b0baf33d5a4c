package tape

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// Slopes writes ranges that hold the slope of the root over every node, at every
// point of the box in reg, into adjoint, which has Len registers and needs no
// clearing; the slots' enclose the gradient. reg comes from Enclose.
//
// A comparison the box does not decide is a jump: what it rests on gets the whole
// line. So does an argument of a kernel, but for the sign its Trend promises.
func (p *Program) Slopes(reg, adjoint []interval.I, root Node) {
	clear(adjoint[:p.Len()])
	adjoint[root] = yes
	for i := p.upTo(root) - 1; i >= 0; i-- {
		s := &p.steps[i]
		if d := adjoint[s.dst]; d != no && !reg[s.dst].Empty() {
			p.slope(reg, adjoint, s, d)
		}
	}
}

func (p *Program) slope(reg, adjoint []interval.I, s *step, d interval.I) {
	add := func(n Node, r interval.I) { adjoint[n] = adjoint[n].Add(r) }
	switch s.op {
	case lang.Neg:
		add(s.a, d.Neg())
	case lang.Add:
		add(s.a, d)
		add(s.b, d)
	case lang.Sub:
		add(s.a, d)
		add(s.b, d.Neg())
	case lang.Mul:
		add(s.a, d.Mul(reg[s.b]))
		add(s.b, d.Mul(reg[s.a]))
	case lang.Div:
		add(s.a, d.Div(reg[s.b]))
		add(s.b, d.Mul(reg[s.dst]).Div(reg[s.b]).Neg())
	case square:
		add(s.a, d.Mul(reg[s.a].Add(reg[s.a])))
	case lang.Pow:
		add(s.a, d.Mul(steepnesses(reg[s.a], reg[s.b].Lo)))
	case lang.Sqrt:
		add(s.a, d.Div(reg[s.dst].Add(reg[s.dst])))
	case lang.Abs:
		add(s.a, d.Mul(signs(reg[s.a])))
	case lang.Min:
		kink(adjoint, s.a, s.b, d, reg[s.a].Hi <= reg[s.b].Lo, reg[s.b].Hi < reg[s.a].Lo)
	case lang.Max:
		kink(adjoint, s.a, s.b, d, reg[s.a].Lo >= reg[s.b].Hi, reg[s.b].Lo > reg[s.a].Hi)
	case lang.Cond:
		kink(adjoint, s.b, s.c, d, !mayNo(reg[s.a]), !mayYes(reg[s.a]))
		jump(reg, adjoint, s.a)
	case lang.Call:
		p.callSlopes(adjoint, s, d)
	default: // a comparison, and, or, not
		if reg[s.dst].Lo != reg[s.dst].Hi {
			jump(reg, adjoint, s.a)
			jump(reg, adjoint, s.b)
		}
	}
}

// kink shares a slope out to the one of two nodes it is sure to come from, or to
// either in part.
func kink(adjoint []interval.I, a, b Node, d interval.I, isA, isB bool) {
	switch {
	case isA:
		adjoint[a] = adjoint[a].Add(d)
	case isB:
		adjoint[b] = adjoint[b].Add(d)
	default:
		part := d.Join(no)
		adjoint[a] = adjoint[a].Add(part)
		adjoint[b] = adjoint[b].Add(part)
	}
}

// jump gives a node that is not settled the whole line.
func jump(reg, adjoint []interval.I, n Node) {
	if n != 0 && reg[n].Lo != reg[n].Hi {
		adjoint[n] = interval.Whole()
	}
}

// steepnesses are the slopes of x to the power y over a; at the edge of where it
// is a number they have no end.
func steepnesses(a interval.I, y float64) interval.I {
	r := raise(a, y-1)
	if r.Empty() {
		return interval.Whole()
	}
	return r.Mul(interval.Point(y))
}

// signs are the slopes of abs over a.
func signs(a interval.I) interval.I {
	switch {
	case a.Lo >= 0:
		return interval.Point(1)
	case a.Hi < 0:
		return interval.Point(-1)
	}
	return interval.I{Lo: -1, Hi: 1}
}

func (p *Program) callSlopes(adjoint []interval.I, s *step, d interval.I) {
	c := &p.calls[s.a]
	for i, n := range c.args {
		r := interval.Whole()
		switch trend := c.kernel.Args[i].Trend; {
		case trend > 0:
			r = interval.AtLeast(0)
		case trend < 0:
			r = interval.AtMost(0)
		}
		adjoint[n] = adjoint[n].Add(d.Mul(r))
	}
}

// Middle starts mid and encloses every node at the middle of the box in reg.
func (p *Program) Middle(reg, mid []interval.I) {
	p.StartI(mid)
	for _, s := range p.slots {
		mid[s] = interval.Point(reg[s].Mid())
	}
	p.Enclose(mid)
}

// MeanValue narrows the range of the root over the box in reg (from Enclose) by
// its slopes: it lies within slope times distance of its value at the middle. For
// small boxes and quantities that stand twice in a formula this is far tighter
// than Enclose. mid comes from Middle, once for all roots; adjoint has Len
// registers and needs no clearing. Nothing is allocated.
//
// It holds the exact value, from which a run may differ by its own rounding.
func (p *Program) MeanValue(reg, mid, adjoint []interval.I, root Node) interval.I {
	natural, sum := reg[root], mid[root]
	if natural.Empty() || sum.Empty() {
		return natural
	}
	p.Slopes(reg, adjoint, root)
	for _, s := range p.slots {
		if s > root {
			break
		}
		if adjoint[s] != no {
			sum = sum.Add(adjoint[s].Mul(reg[s].Sub(mid[s])))
		}
	}
	if sum.Empty() || math.IsNaN(sum.Lo) || math.IsNaN(sum.Hi) {
		return natural
	}
	return natural.Meet(sum)
}
