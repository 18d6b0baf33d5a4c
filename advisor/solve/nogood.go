package solve

import (
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/tape"
)

// nogood is musts that were in each other's way, with all they rest on but the
// targets: another set of picks that leaves those as they are fails alike.
type nogood struct {
	kind against
	rows [][2]tape.Node
	in   []tape.Node
	best []float64
	span []interval.I
}

// learn keeps what stands in the way where the targets are.
func (q *problem) learn(musts []bool, a against, coords []interval.I) {
	n := nogood{kind: a}
	rows, _ := q.holding(musts, a, coords)
	for _, i := range rows {
		r := &q.rows[i]
		n.rows = append(n.rows, [2]tape.Node{r.plus, r.minus})
		n.in = append(n.in, r.in...)
	}
	if len(n.rows) == 0 {
		return
	}
	slices.Sort(n.in)
	n.in = slices.DeleteFunc(slices.Compact(n.in), q.isTarget)
	for _, s := range n.in {
		best, span := q.stands(s)
		n.best, n.span = append(n.best, best), append(n.span, span)
	}
	q.m.Shared.nogoods = append(q.m.Shared.nogoods, n)
}

// known reports whether a set of picks before failed by what this one has too.
func (q *problem) known(musts []bool, a against) bool {
	return slices.ContainsFunc(q.m.Shared.nogoods, func(n nogood) bool { return n.kind == a && q.same(&n, musts) })
}

func (q *problem) same(n *nogood, musts []bool) bool {
	for k, s := range n.in {
		if best, span := q.stands(s); best != n.best[k] || span != n.span[k] {
			return false
		}
	}
	for _, of := range n.rows {
		at := slices.IndexFunc(q.rows, func(r row) bool { return r.plus == of[0] && r.minus == of[1] })
		if at < 0 || !musts[at] {
			return false
		}
	}
	return true
}

// stands is what an input that is no target stands at.
func (q *problem) stands(n tape.Node) (best float64, span interval.I) {
	if i := q.index[n]; i > 0 {
		return q.reg[n], q.slots[i-1].span
	}
	return q.reg[n], interval.Point(q.reg[n])
}

func (q *problem) isTarget(n tape.Node) bool {
	return slices.ContainsFunc(q.free, func(i int) bool { return q.dims[i].Target == n })
}
