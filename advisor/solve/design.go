package solve

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// Search is the solver of this package.
type Search struct{}

// Design finds whether the option works, and a design when one does.
func (Search) Design(m Model, b Budget) Answer {
	q := newProblem(m)
	defer q.done()
	facts := q.facts()
	if bad := broken(q, facts); len(bad) > 0 {
		return q.hopeless(facts, bad, b)
	}
	box := q.declared()
	if b.Boxes == 0 { // a proof takes it apart
		defer q.m.Shared.back(box)
	}
	q.centre(box)
	musts, _ := q.sets()
	wide := q.spans(box)
	q.tightest() // what fails so fails at any width
	if empty, by := q.narrow(box, 12); empty {
		q.centre(q.declared())
		if b == Glance {
			return Answer{Works: No, States: facts, Broken: []int{q.rows[by].check}, Reg: q.plain()}
		}
		ans := q.nearest(musts, wide, facts, b, true)
		if c := q.rows[by].check; len(ans.Broken) == 0 {
			ans.Broken, facts[c].Holds = []int{c}, No
		}
		return ans
	}
	q.full()
	q.centre(box)
	if b == Glance {
		q.fixed(facts, box)
		at := make([]interval.I, len(q.dims))
		for _, i := range q.free {
			at[i] = box[q.dims[i].Target]
		}
		return Answer{Works: NotProved, States: facts, Reg: q.plain(), Within: q.within(box), Box: at}
	}
	return q.search(b, box, q.spans(box), facts)
}

// fixed judges the limits that no size moves, and those that no size in the box
// keeps; the others may be kept.
func (q *problem) fixed(states []State, box []interval.I) {
	work := q.ranged()
	defer q.m.Shared.back(work)
	for i := range q.rows {
		r := &q.rows[i]
		if r.check < 0 {
			continue
		}
		states[r.check].Holds = Yes
		switch {
		case !r.free:
			q.judgeRow(r, states, false)
		case !r.must && r.sure && q.lost(r, box, work):
			states[r.check].Holds = No
		case r.must && r.sure && q.neverSure(r, box, work):
			states[r.check].Holds = Depends
		}
	}
}

// neverSure reports a row that no design in the box keeps at one end or the other
// of something that nobody knows.
func (q *problem) neverSure(r *row, box, work []interval.I) bool {
	for _, k := range r.at {
		s := &q.slots[k]
		if s.class != unknown || s.picked {
			continue
		}
		whole := s.span
		for _, end := range []float64{whole.Lo, whole.Hi} {
			if math.IsInf(end, 0) {
				continue
			}
			s.span = interval.Point(end)
			lost := q.lost(r, box, work)
			if s.span = whole; lost {
				return true
			}
		}
	}
	return false
}

// lost reports a row that is broken all over a box, whatever the rest may be.
func (q *problem) lost(r *row, box, work []interval.I) bool {
	for _, s := range r.in {
		work[s] = box[s]
		if i := q.index[s]; i > 0 && q.slots[i-1].class != sure {
			work[s] = q.slots[i-1].span
		}
	}
	r.prog.Enclose(work)
	return work[r.plus].Hi < 0
}

// within encloses what the criteria may be while the targets stay in the box
// and the rest stands at its best value.
func (q *problem) within(box []interval.I) []interval.I {
	out := make([]interval.I, len(q.m.Marks))
	reg := box
	for _, s := range q.slots {
		reg[s.node] = interval.Point(q.reg[s.node])
	}
	if q.m.Joined {
		q.anyPick(reg)
	}
	for i, n := range q.m.Marks {
		prog := q.only(n)
		prog.Enclose(reg)
		out[i] = reg[n]
		if !prog.Defined(reg, n) {
			out[i] = interval.Whole()
		}
	}
	return out
}

// anyPick lets what is picked be all it may be over the sets.
func (q *problem) anyPick(reg []interval.I) {
	for k, i := range q.m.Option.PickSlots {
		reg[q.m.Option.Slots[i].Node] = q.m.Picked[k].Value
	}
}

// hopeless is the answer when facts rule the option out, whatever its sizes; the
// other limits are told where the sizes come nearest to keeping them.
func (q *problem) hopeless(facts []State, bad []int, b Budget) Answer {
	box := q.declared()
	defer q.m.Shared.back(box)
	q.centre(box)
	if b == Glance {
		return Answer{Works: No, States: facts, Broken: bad, Reg: q.plain()}
	}
	rest, _ := q.sets()
	for i := range q.rows {
		rest[i] = rest[i] && q.rows[i].free
	}
	q.climb(q.binding(rest, onlyMade), spansOf(q.spans(box)), onlyMade, 12, 0)
	q.judge(facts, false)
	return Answer{Works: No, States: facts, Broken: bad, Reg: q.plain()}
}

// search tries for all values first, then with what is unknown at its kindest,
// then with the readings so too.
func (q *problem) search(b Budget, box, coords []interval.I, facts []State) Answer {
	musts, all := q.sets()
	span, near := spansOf(coords), q.near()
	if near && q.climb(all, span, forAll, b.Ascent, 1) >= 0 {
		return q.finish(all, all, coords, forAll, b, facts)
	}
	ways := q.kindnesses(musts)
	kind := ways[len(ways)-1] // what fails so fails always
	need := q.binding(musts, kind)
	q.tightest()
	if q.m.Beat != nil && q.known(need, kind) {
		return q.none(musts, coords, facts, b, box)
	}
	q.full()
	var from [][]float64
	if near {
		from = append(from, q.coordinates())
	}
	if !near || q.m.Beat == nil { // where nothing is found yet, look everywhere
		from = append(from, q.points(all, coords, forAll, b.Points, mostStarts)...)
	}
	q.tightest()
	start, top := q.anywhere(from, need, q.binding(all, kind), span, kind, b.Ascent)
	if top < 0 {
		q.learn(need, kind, coords)
		return q.none(musts, coords, facts, b, box)
	}
	if from = [][]float64{start}; !near {
		from = append(from, q.coordinates())
	}
	for _, a := range ways {
		need, want := q.binding(musts, a), q.binding(all, a)
		for _, start := range from {
			q.tightest()
			q.place(start)
			if q.m.Beat != nil && a != kind && q.climb(need, span, a, b.Ascent, 0) < 0 { // at the tightest: none to be had
				continue
			}
			q.full()
			q.place(start)
			if kept, ok := q.keep(need, want, span, a, b, q.mayLose(a)); ok {
				return q.finish(kept, want, coords, a, b, facts)
			}
		}
	}
	return q.none(musts, coords, facts, b, box)
}

// none is the answer when no design was found.
func (q *problem) none(musts []bool, coords []interval.I, facts []State, b Budget, box []interval.I) Answer {
	if q.m.Beat != nil {
		return Answer{Works: NotProved, States: facts, Reg: q.plain(), Passed: true}
	}
	return q.nearest(musts, coords, facts, b, b.Boxes > 0 && q.impossible(box, b.Boxes))
}

// mostStarts is how many places are climbed from before a search gives up.
const mostStarts = 2

// keep finds a design that keeps every row needed and all but `lose` of those wanted.
func (q *problem) keep(need, want []bool, span []float64, a against, b Budget, lose int) (kept []bool, ok bool) {
	start := q.coordinates()
	if q.climb(want, span, a, b.Ascent, 1) >= 0 {
		return want, true
	}
	from := q.coordinates()
	q.tightest()
	if q.climb(need, span, a, b.Ascent, 0) < 0 {
		if q.place(start); q.climb(need, span, a, b.Ascent, 0) < 0 { // the way to what is wanted may have led off
			return nil, false // not even held as close as can be
		}
		from = start
	}
	near := q.coordinates()
	q.full()
	q.place(from)
	kept, ok = q.settle(need, want, span, near, a, b, max(0, count(want)-lose-1))
	if !ok || count(kept) < count(want) {
		kept, ok = q.closer(need, want, kept, span, near, a, b, ok)
	}
	return kept, ok && count(want)-count(kept)+len(q.narrowed()) <= lose
}

// finish meets the aims and tells of the design.
func (q *problem) finish(kept, want []bool, coords []interval.I, a against, b Budget, facts []State) Answer {
	if b.Whole {
		q.aims(kept, want, coords, a)
	}
	return q.answer(facts, kept, a, b)
}

// near puts the targets where a like set of picks had its design, if one is told.
func (q *problem) near() bool {
	if len(q.m.Near) == 0 {
		return false
	}
	for _, i := range q.free {
		q.reg[q.dims[i].Target] = q.m.Near[q.dims[i].ID]
	}
	return true
}

// mayLose is how many shoulds a design may cost and still be of interest.
func (q *problem) mayLose(a against) int {
	switch {
	case q.m.Beat == nil:
		return len(q.rows) + len(q.dims)
	case a == forAll:
		return q.m.Beat.Works
	}
	return q.m.Beat.Depends
}

// binding drops, where what is unknown is taken at its kindest, the rows that
// may not apply at all.
func (q *problem) binding(set []bool, a against) []bool {
	if a == forAll {
		return set
	}
	out := append([]bool(nil), set...)
	for i := range q.rows {
		out[i] = out[i] && (q.rows[i].sure || q.rows[i].check < 0)
	}
	return out
}

// kindnesses are the ways to take what is not certain that may differ and are of
// interest: at its worst; what is unknown at its kindest; the readings too.
func (q *problem) kindnesses(musts []bool) []against {
	var has against
	for i := range q.rows {
		for _, k := range q.rows[i].at {
			has[q.slots[k].class] = has[q.slots[k].class] || musts[i]
		}
		has[unknown] = has[unknown] || musts[i] && q.rows[i].check >= 0 && !q.rows[i].sure
	}
	out := []against{forAll}
	if q.m.Beat != nil && q.m.Beat.Depends < 0 {
		return out
	}
	if has[unknown] {
		out = append(out, exceptGaps)
	}
	if has[read] {
		out = append(out, onlyMade)
	}
	return out
}

// sets gives the rows that bind: the musts, and the musts with every should
// that hangs on a size or is met.
func (q *problem) sets() (musts, all []bool) {
	musts, all = make([]bool, len(q.rows)), make([]bool, len(q.rows))
	for i := range q.rows {
		r := &q.rows[i]
		if r.check >= 0 && q.m.Option.Checks[r.check].Strength == link.Prefer {
			continue
		}
		musts[i] = r.must
		all[i] = r.must || r.free
	}
	return musts, all
}

// centre puts the targets in the middle of a box.
func (q *problem) centre(reg []interval.I) {
	for _, i := range q.free {
		t := reg[q.dims[i].Target]
		if t.Lo <= t.Hi {
			q.reg[q.dims[i].Target] = t.Lo + (t.Hi-t.Lo)/2
		}
	}
	q.all.Run(q.reg)
}

func spansOf(coords []interval.I) []float64 {
	out := make([]float64, len(coords))
	for k, c := range coords {
		out[k] = max((c.Hi-c.Lo)/4, 1e-6)
	}
	return out
}

func count(set []bool) (n int) {
	for _, b := range set {
		if b {
			n++
		}
	}
	return n
}

var inf = math.Inf(1)
