package tape

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

var (
	yes    = interval.Point(1)
	no     = interval.Point(0)
	either = interval.I{Lo: 0, Hi: 1}
)

// Enclose gives every node a range that holds each value Run can give it while
// the slots stay in theirs. A yes-no is 0, 1 or 0 to 1. NaN is in no range: a
// node that is a number in part of the box gets the range of that part, one that
// is nowhere a number an empty range. Defined tells whether there is a NaN.
func (p *Program) Enclose(reg []interval.I) {
	for i := range p.steps {
		p.enclose(reg, &p.steps[i])
	}
}

func (p *Program) enclose(reg []interval.I, s *step) {
	if s.op == lang.Call {
		reg[s.dst] = p.encloseCall(reg, s)
		return
	}
	a, b := reg[s.a], reg[s.b]
	switch s.op {
	case lang.Neg:
		reg[s.dst] = a.Neg()
	case lang.Add:
		reg[s.dst] = a.Add(b)
	case lang.Sub:
		reg[s.dst] = a.Sub(b)
	case lang.Mul:
		reg[s.dst] = a.Mul(b)
	case lang.Div:
		reg[s.dst] = divide(a, b)
	case square:
		reg[s.dst] = a.Sqr()
	case lang.Pow:
		reg[s.dst] = raise(a, b.Lo)
	case lang.LessEq:
		reg[s.dst] = encloseLessEq(a, b)
	case lang.GreaterEq:
		reg[s.dst] = encloseLessEq(b, a)
	case lang.Less:
		reg[s.dst] = not(encloseLessEq(b, a))
	case lang.Greater:
		reg[s.dst] = not(encloseLessEq(a, b))
	case lang.Equal:
		reg[s.dst] = encloseEqual(a, b)
	case lang.NotEqual:
		reg[s.dst] = not(encloseEqual(a, b))
	case lang.And:
		reg[s.dst] = encloseAnd(a, b)
	case lang.Or:
		reg[s.dst] = not(encloseAnd(not(a), not(b)))
	case lang.Not:
		reg[s.dst] = not(a)
	case lang.Cond:
		reg[s.dst] = encloseCond(a, b, reg[s.c])
	case lang.Min:
		reg[s.dst] = a.Min(b)
	case lang.Max:
		reg[s.dst] = a.Max(b)
	case lang.Abs:
		reg[s.dst] = a.Abs()
	case lang.Sqrt:
		reg[s.dst] = a.Sqrt()
	}
}

// divide is a over b; by 0 alone there is no quotient.
func divide(a, b interval.I) interval.I {
	if b.Lo == 0 && b.Hi == 0 {
		return interval.None()
	}
	return a.Div(b)
}

func raise(a interval.I, y float64) interval.I {
	switch {
	case a.Lo == 0 && a.Hi == 0 && y < 0:
		return interval.None()
	case y == math.Trunc(y) && math.Abs(y) <= math.MaxInt32:
		return a.PowInt(int(y))
	}
	return a.Pow(y)
}

func encloseLessEq(a, b interval.I) interval.I {
	switch {
	case a.Empty() || b.Empty():
		return interval.None()
	case a.Hi <= b.Lo:
		return yes
	case a.Lo > b.Hi:
		return no
	}
	return either
}

func encloseEqual(a, b interval.I) interval.I {
	switch {
	case a.Empty() || b.Empty():
		return interval.None()
	case a.Lo > b.Hi || b.Lo > a.Hi:
		return no
	case a.Lo == a.Hi && b.Lo == b.Hi:
		return yes
	}
	return either
}

func mayYes(a interval.I) bool { return a.Lo <= a.Hi && a.Hi > 0 }
func mayNo(a interval.I) bool  { return a.Lo <= a.Hi && a.Lo <= 0 }

// encloseAnd is empty only where neither side can say anything: no and NaN is no.
func encloseAnd(a, b interval.I) interval.I {
	switch canNo, canYes := mayNo(a) || mayNo(b), mayYes(a) && mayYes(b); {
	case canNo && canYes:
		return either
	case canNo:
		return no
	case canYes:
		return yes
	}
	return interval.None()
}

func not(a interval.I) interval.I {
	if a.Empty() {
		return interval.None()
	}
	return interval.I{Lo: 1 - a.Hi, Hi: 1 - a.Lo}
}

func encloseCond(test, then, other interval.I) interval.I {
	switch {
	case test.Empty():
		return interval.None()
	case !mayNo(test):
		return then
	case !mayYes(test):
		return other
	}
	return then.Join(other)
}
