package tape

import "wornfit/rules/lang"

// How a node hangs on the slots that move.
const (
	fixed    = iota // not at all
	straight        // as a sum of multiples of them
	bent            // any other way, or not known
)

// Straight reports whether a root is a sum of multiples of the slots that move
// (by node), whatever they are; the others stand still.
func (p *Program) Straight(root Node, moves []bool) bool {
	w := p.work()
	defer works.Put(w)
	hangs := w.hangs
	of := func(n Node) uint8 {
		if op := p.nodes[n].op; op == lang.Name && moves[n] {
			return straight
		} else if n == 0 || op == lang.Name || op == lang.Const {
			return fixed
		}
		return hangs[n]
	}
	for i := range p.steps[:p.upTo(root)] {
		s := &p.steps[i]
		most := uint8(fixed)
		for _, a := range p.args(s.dst) {
			most = max(most, of(a))
		}
		if most > fixed && !keepsStraight(s, of) {
			most = bent
		}
		hangs[s.dst] = most
	}
	return of(root) <= straight
}

// keepsStraight reports whether a step makes of straight arguments a straight result.
func keepsStraight(s *step, of func(Node) uint8) bool {
	switch s.op {
	case lang.Add, lang.Sub, lang.Neg:
		return true
	case lang.Mul:
		return of(s.a) == fixed || of(s.b) == fixed
	case lang.Div:
		return of(s.b) == fixed
	case lang.Cond:
		return of(s.a) == fixed
	}
	return false
}
