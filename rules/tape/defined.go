package tape

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/rules/lang"
)

// Defined reports whether the root is surely a finite number at every point of
// the box in reg, which comes from Enclose: no divisor reaches 0, no root a
// negative, no argument leaves its kernel's Range. A limit is proved over a box
// only if its margin is also defined there. False means "not sure".
//
// A kernel may be NaN inside its ranges where the parts are impossible. That is
// looked for at the corners of its Trends alone and not proved.
func (p *Program) Defined(reg []interval.I, root Node) bool {
	w := p.work()
	defer works.Put(w)
	clear(w.need)
	w.need[root] = true
	if !bounded(reg[root]) {
		return false
	}
	for i := p.upTo(root) - 1; i >= 0; i-- {
		s := &p.steps[i]
		if w.need[s.dst] && !p.sure(reg, w, s) {
			return false
		}
	}
	return true
}

// sure checks one step and asks for the arguments it needs. What may divide by 0
// has a range without end and is refused for that.
func (p *Program) sure(reg []interval.I, w *work, s *step) bool {
	ask := func(n Node) bool {
		w.need[n] = true
		return bounded(reg[n])
	}
	a, b := reg[s.a], reg[s.b]
	switch s.op {
	case lang.Call:
		return p.sureCall(reg, w, s)
	case lang.Cond:
		return ask(s.a) && (!mayYes(a) || ask(s.b)) && (!mayNo(a) || ask(s.c))
	case lang.Sqrt:
		return a.Lo >= 0 && ask(s.a)
	case lang.Pow:
		return (a.Lo >= 0 || b.Lo == math.Trunc(b.Lo)) && ask(s.a)
	}
	return ask(s.a) && (traits[s.op].args == 1 || ask(s.b))
}

func (p *Program) sureCall(reg []interval.I, w *work, s *step) bool {
	c := &p.calls[s.a]
	x := reg[p.scratch:][:len(c.args)]
	for i, n := range c.args {
		w.need[n] = true
		if x[i] = reg[n]; !c.kernel.Args[i].Range.Covers(x[i]) {
			return false
		}
	}
	return answers(&c.kernel, x, w.x)
}

func answers(k *kernel.Kernel, x []interval.I, at []float64) bool {
	return !math.IsNaN(corner(k, x, at, -1)) && !math.IsNaN(corner(k, x, at, +1))
}

func bounded(r interval.I) bool {
	return r.Lo <= r.Hi && !math.IsInf(r.Lo, 0) && !math.IsInf(r.Hi, 0)
}
