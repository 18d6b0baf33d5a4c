package tape

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// Contraction ends when a round narrows no slot by more than leastStep of its
// width, and after mostRounds in any case: what is left then is sound, only wider.
const (
	leastStep  = 1e-3
	mostRounds = 50
)

// Contract narrows the slots in reg to what the keep nodes leave: no point of the
// box where a run keeps all of them (see Keeps) is lost. It reports true when it
// proved that there is none; reg then means nothing. Words and yes-nos stay at
// whole codes. Otherwise the other registers hold what Enclose makes of the
// narrowed slots, so that reg[keep] tells whether the whole box is kept.
//
// It works forward and backward over the nodes in turn (HC4). A node narrows its
// arguments only where a kept point needs it to be a number, so the branch of an
// undecided `or` or conditional narrows nothing.
func (p *Program) Contract(reg []interval.I, keep []Node) (empty bool) {
	w := p.work()
	w.p, w.reg = p, reg
	clear(w.need)
	empty = !w.contract(keep)
	w.p, w.reg = nil, nil
	works.Put(w)
	if !empty {
		p.Enclose(reg)
	}
	return empty
}

func (w *work) contract(keep []Node) bool {
	w.p.Enclose(w.reg)
	for range mostRounds {
		w.moved = false
		if !w.demand(keep) || !w.backward() {
			return false
		}
		if !w.moved {
			break
		}
		if !w.forward() {
			return false
		}
	}
	return true
}

// forward encloses again, but what a kept point needs stays in the range it was
// already narrowed to.
func (w *work) forward() bool {
	for i := range w.p.steps {
		s := &w.p.steps[i]
		was := w.reg[s.dst]
		w.p.enclose(w.reg, s)
		if w.need[s.dst] {
			if w.reg[s.dst] = w.reg[s.dst].Meet(was); w.reg[s.dst].Empty() {
				return false
			}
		}
	}
	return true
}

func (w *work) demand(keep []Node) bool {
	for _, k := range keep {
		want := interval.AtLeast(0)
		if w.p.nodes[k].kind == lang.YesNo {
			want = yes
		}
		if !w.pull(k, want) {
			return false
		}
	}
	return true
}

func (w *work) backward() bool {
	for i := len(w.p.steps) - 1; i >= 0; i-- {
		s := &w.p.steps[i]
		if w.need[s.dst] && !pulls[s.op](w, s) {
			return false
		}
	}
	return true
}

// pull says that at every kept point n is a number in r. It reports false when
// that leaves nothing.
func (w *work) pull(n Node, r interval.I) bool {
	w.need[n] = true
	was := w.reg[n]
	lo, hi := max(was.Lo, r.Lo), min(was.Hi, r.Hi)
	if !(lo <= hi) {
		return false
	}
	if lo == was.Lo && hi == was.Hi {
		return true
	}
	if nd := &w.p.nodes[n]; nd.op == lang.Name {
		if nd.kind != lang.NumberKind {
			if lo, hi = math.Ceil(lo), math.Floor(hi); lo > hi {
				return false
			}
		}
		w.moved = w.moved || hi-lo < (1-leastStep)*(was.Hi-was.Lo) || was.Width() > math.MaxFloat64
	}
	w.reg[n] = interval.I{Lo: lo, Hi: hi}
	return true
}

// defined says that both arguments are numbers, and nothing else of them.
func (w *work) defined(s *step) bool {
	return w.pull(s.a, interval.Whole()) && w.pull(s.b, interval.Whole())
}
