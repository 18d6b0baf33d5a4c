package tape

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// pulls narrow the arguments of a step to what its own range leaves them; each
// reports false when that is nothing.
var pulls = [...]func(w *work, s *step) bool{
	lang.Neg: func(w *work, s *step) bool { return w.pull(s.a, w.reg[s.dst].Neg()) },
	lang.Add: func(w *work, s *step) bool {
		z := loose(w.reg[s.dst])
		return w.pull(s.a, z.Sub(w.reg[s.b])) && w.pull(s.b, z.Sub(w.reg[s.a]))
	},
	lang.Sub: func(w *work, s *step) bool {
		z := loose(w.reg[s.dst])
		return w.pull(s.a, z.Add(w.reg[s.b])) && w.pull(s.b, w.reg[s.a].Sub(z))
	},
	lang.Mul: func(w *work, s *step) bool {
		z := looser(w.reg[s.dst], 1)
		return w.pull(s.a, factor(w.reg[s.a], w.reg[s.b], z)) && w.pull(s.b, factor(w.reg[s.b], w.reg[s.a], z))
	},
	lang.Div: func(w *work, s *step) bool {
		z := looser(w.reg[s.dst], 1)
		return w.pull(s.a, z.Mul(w.reg[s.b])) && w.pull(s.b, factor(w.reg[s.b], z, w.reg[s.a]))
	},
	square: func(w *work, s *step) bool {
		return w.pull(s.a, eitherSign(w.reg[s.a], looser(w.reg[s.dst], 1).Sqrt()))
	},
	lang.Pow: func(w *work, s *step) bool {
		return w.pull(s.a, root(w.reg[s.a], w.reg[s.dst], w.reg[s.b].Lo))
	},
	lang.Sqrt: func(w *work, s *step) bool {
		return w.pull(s.a, loose(w.reg[s.dst]).Meet(interval.AtLeast(0)).Sqr())
	},
	lang.Abs: func(w *work, s *step) bool {
		return w.pull(s.a, eitherSign(w.reg[s.a], w.reg[s.dst]))
	},
	lang.Min: func(w *work, s *step) bool {
		z := w.reg[s.dst]
		return w.pull(s.a, interval.AtLeast(z.Lo)) && w.pull(s.b, interval.AtLeast(z.Lo)) &&
			(w.reg[s.a].Lo <= z.Hi || w.pull(s.b, interval.AtMost(z.Hi))) &&
			(w.reg[s.b].Lo <= z.Hi || w.pull(s.a, interval.AtMost(z.Hi)))
	},
	lang.Max: func(w *work, s *step) bool {
		z := w.reg[s.dst]
		return w.pull(s.a, interval.AtMost(z.Hi)) && w.pull(s.b, interval.AtMost(z.Hi)) &&
			(w.reg[s.a].Hi >= z.Lo || w.pull(s.b, interval.AtLeast(z.Lo))) &&
			(w.reg[s.b].Hi >= z.Lo || w.pull(s.a, interval.AtLeast(z.Lo)))
	},
	lang.LessEq:    func(w *work, s *step) bool { return w.order(s, s.a, s.b) },
	lang.Less:      func(w *work, s *step) bool { return w.order(s, s.a, s.b) },
	lang.GreaterEq: func(w *work, s *step) bool { return w.order(s, s.b, s.a) },
	lang.Greater:   func(w *work, s *step) bool { return w.order(s, s.b, s.a) },
	lang.Equal:     func(w *work, s *step) bool { return w.alike(s, Yes(w.reg[s.dst]), No(w.reg[s.dst])) },
	lang.NotEqual:  func(w *work, s *step) bool { return w.alike(s, No(w.reg[s.dst]), Yes(w.reg[s.dst])) },
	lang.And:       func(w *work, s *step) bool { return w.both(s, yes, no) },
	lang.Or:        func(w *work, s *step) bool { return w.both(s, no, yes) },
	lang.Not:       func(w *work, s *step) bool { return w.pull(s.a, not(w.reg[s.dst])) },
	lang.Cond:      func(w *work, s *step) bool { return w.branch(s) },
	lang.Call: func(w *work, s *step) bool {
		c := &w.p.calls[s.a]
		for i, n := range c.args {
			if !w.pull(n, c.kernel.Args[i].Range) {
				return false
			}
		}
		return true
	},
}

// order narrows lo and hi of the yes-no lo <= hi, or lo < hi: the edge itself
// stays in either case.
func (w *work) order(s *step, lo, hi Node) bool {
	switch z := w.reg[s.dst]; {
	case Yes(z):
	case No(z):
		lo, hi = hi, lo
	default:
		return w.defined(s)
	}
	return w.pull(lo, interval.AtMost(w.reg[hi].Hi)) && w.pull(hi, interval.AtLeast(w.reg[lo].Lo))
}

func (w *work) alike(s *step, same, differ bool) bool {
	switch {
	case same:
		return w.pull(s.a, w.reg[s.b]) && w.pull(s.b, w.reg[s.a])
	case differ:
		return w.pull(s.a, w.without(s.a, w.reg[s.b])) && w.pull(s.b, w.without(s.b, w.reg[s.a]))
	}
	return w.defined(s)
}

// without takes a single other value out of a node's range, if it is all there is
// or the first or last code of a word.
func (w *work) without(n Node, other interval.I) interval.I {
	r := w.reg[n]
	switch whole := w.p.nodes[n].kind != lang.NumberKind; {
	case other.Lo != other.Hi:
	case r.Lo == r.Hi && r.Lo == other.Lo:
		return interval.None()
	case whole && r.Lo == other.Lo:
		r.Lo++
	case whole && r.Hi == other.Lo:
		r.Hi--
	}
	return r
}

// both narrows an `and`: all when it must be yes, the last that can when it must
// be no. For `or`, yes and no change places.
func (w *work) both(s *step, all, one interval.I) bool {
	can := func(r interval.I) bool { return !r.Meet(one).Empty() }
	z, a, b := w.reg[s.dst], w.reg[s.a], w.reg[s.b]
	switch {
	case z == all:
		return w.pull(s.a, all) && w.pull(s.b, all)
	case z != one || can(a) && can(b):
		return true
	case can(a):
		return w.pull(s.a, one)
	}
	return w.pull(s.b, one)
}

func (w *work) branch(s *step) bool {
	z, test := w.reg[s.dst], w.reg[s.a]
	then := mayYes(test) && !w.reg[s.b].Meet(z).Empty()
	other := mayNo(test) && !w.reg[s.c].Meet(z).Empty()
	switch {
	case then && other:
		return w.pull(s.a, interval.Whole())
	case then:
		return w.pull(s.a, yes) && w.pull(s.b, z)
	}
	return w.pull(s.a, no) && w.pull(s.c, z)
}

// loose widens a range by more than the rounding of the op that made it, so that
// its inverse loses no point that a run keeps.
func loose(z interval.I) interval.I {
	const slack = 0x1p-52
	return interval.I{Lo: z.Lo - math.Abs(z.Lo)*slack, Hi: z.Hi + math.Abs(z.Hi)*slack}
}

// looser widens by some units in the last place, and by the least number there
// is: products and quotients too small to be written are 0.
func looser(z interval.I, ulps float64) interval.I {
	slack := ulps * 0x1p-52
	return interval.I{
		Lo: z.Lo - math.Abs(z.Lo)*slack - math.SmallestNonzeroFloat64,
		Hi: z.Hi + math.Abs(z.Hi)*slack + math.SmallestNonzeroFloat64,
	}
}

// factor narrows x where x*y lies in z. If y and z both reach 0, x may be anything.
func factor(x, y, z interval.I) interval.I {
	switch {
	case !y.Has(0):
		return z.Div(y)
	case z.Has(0):
		return x
	case y.Lo < 0 && y.Hi > 0:
		below := x.Meet(z.Div(interval.I{Lo: y.Lo, Hi: 0}))
		return below.Join(x.Meet(z.Div(interval.I{Lo: 0, Hi: y.Hi})))
	}
	return z.Div(y)
}

// eitherSign narrows x where its size lies in r.
func eitherSign(x, r interval.I) interval.I {
	return x.Meet(r).Join(x.Meet(r.Neg()))
}

// root narrows x where x to the power y lies in z.
func root(x, z interval.I, y float64) interval.I {
	if y == 0 {
		return x
	}
	z = looser(z, 8+math.Abs(y))
	if y != math.Trunc(y) {
		return looser(z.Pow(1/y), 4)
	}
	if y < 0 {
		z, y = interval.Point(1).Div(z), -y
	}
	if math.Mod(y, 2) == 0 {
		return eitherSign(x, looser(z.Pow(1/y), 4))
	}
	above := z.Meet(interval.AtLeast(0)).Pow(1 / y)
	below := z.Neg().Meet(interval.AtLeast(0)).Pow(1 / y).Neg()
	return looser(below.Join(above), 4)
}
