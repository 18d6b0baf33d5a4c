package solve

import (
	"math"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/tape"
)

// Boxes of targets: the declared ranges, narrowed by what every design would
// have to bear.

// declared returns registers of ranges with every given at its span and every
// free target in its declared range.
func (q *problem) declared() []interval.I {
	reg := q.ranged()
	for _, s := range q.prog.Slots() {
		reg[s] = interval.Point(q.reg[s])
	}
	for _, s := range q.slots {
		reg[s.node] = s.span
	}
	for _, d := range q.dims {
		reg[d.Cut], reg[d.Gauge] = interval.Point(0), interval.Point(0)
	}
	if q.m.Box != nil {
		for _, i := range q.free {
			reg[q.dims[i].Target] = q.m.Box[i]
		}
		return reg
	}
	for _, i := range q.free {
		d := q.dims[i]
		reg[d.Target] = anySize
	}
	for range 3 { // a range may hang on another dimension's
		ends := q.alike(reg)
		q.all.Enclose(ends)
		for _, i := range q.free {
			d := q.dims[i]
			t := interval.I{Lo: ends[d.Low].Lo, Hi: ends[d.High].Hi}
			if t.Lo < t.Hi {
				reg[d.Target] = interval.I{Lo: max(t.Lo, anySize.Lo), Hi: min(t.Hi, anySize.Hi)}
			}
		}
		q.m.Shared.back(ends)
	}
	return reg
}

// anySize holds whatever a dimension may be: metres, of a difference below nought,
// or kelvin of a heat.
var anySize = interval.I{Lo: -1e4, Hi: 1e4}

// narrow contracts the targets by each must in turn, its cuts and gauge errors
// fixed at the corner worst for it: whatever design there is must bear that. A
// must is tried again only when a target it rests on was narrowed. It reports
// whether the box is proved empty, and by which row.
func (q *problem) narrow(reg []interval.I, rounds int) (empty bool, by int) {
	work := q.ranged()
	defer func() { q.m.Shared.back(work) }()
	copy(q.tmp, q.reg)
	q.all.Run(q.tmp)
	ends, from := q.worstEnds()
	now := 1
	moved, tried := make([]int, len(q.dims)), make([]int, len(q.rows)) // when last; a row's 0: never
	for range rounds {
		again := false
		for i := range q.rows {
			r := &q.rows[i]
			if from[i] < 0 || tried[i] > 0 && !q.movedSince(r, moved, tried[i]) {
				continue
			}
			for _, s := range r.in {
				work[s] = reg[s]
			}
			for k, at := range r.at {
				if s := &q.slots[at]; s.class == made {
					work[s.node] = interval.Point(ends[from[i]+k])
				}
			}
			if r.prog.Contract(work, []tape.Node{r.plus}) {
				return true, i
			}
			now++
			for _, j := range r.targets {
				t := q.dims[j].Target
				if was := reg[t]; work[t].Hi-work[t].Lo < 0.99*(was.Hi-was.Lo) {
					moved[j], again = now, true
				}
				reg[t] = work[t]
			}
			now++
			tried[i] = now
		}
		if !again {
			return false, -1
		}
	}
	return false, -1
}

// movedSince reports whether a target of the row was narrowed after a time.
func (q *problem) movedSince(r *row, moved []int, when int) bool {
	return slices.ContainsFunc(r.targets, func(j int) bool { return moved[j] > when })
}

// worstEnds gives, for every must that surely applies, the ends of its cuts and
// gauge errors that are worst at tmp, from an index on; -1 for the other rows. It
// holds until it is asked again.
// Any end is a fair demand.
func (q *problem) worstEnds() (ends []float64, from []int) {
	ends, from = q.ends[:0], slices.Grow(q.from[:0], len(q.rows))[:len(q.rows)]
	defer func() { q.ends, q.from = ends, from }()
	for i := range q.rows {
		r := &q.rows[i]
		if from[i] = len(ends); !r.must || r.check < 0 || !r.sure {
			from[i] = -1
			continue
		}
		r.prog.Gradient(q.tmp, q.adj, r.plus)
		for _, at := range r.at {
			s := &q.slots[at]
			if q.adj[s.node] > 0 {
				ends = append(ends, s.span.Lo)
			} else {
				ends = append(ends, s.span.Hi)
			}
		}
	}
	return ends, from
}

// spans turns boxes of targets into boxes of coordinates: differences are
// looked for within both, no wider than the wider of the two.
func (q *problem) spans(reg []interval.I) []interval.I {
	out := make([]interval.I, len(q.free))
	for k, i := range q.free {
		t := reg[q.dims[i].Target]
		out[k] = t
		if l := q.lead[i]; l >= 0 {
			lt := reg[q.dims[l].Target]
			if _, held := q.m.Held[q.dims[l].ID]; held {
				lt = interval.Point(q.reg[q.dims[l].Target])
			}
			out[k] = interval.I{Lo: t.Lo - lt.Hi, Hi: t.Hi - lt.Lo}
		}
	}
	return out
}

// impossible tries to prove that no design exists: boxes are bisected on their
// widest target, each contracted, until all are empty or the budget is spent.
// The widths are the closest the gauges can tell: a design may ask for no less.
func (q *problem) impossible(reg []interval.I, budget int) bool {
	q.tightest()
	stack := [][]interval.I{q.alike(reg)}
	defer func() { q.m.Shared.back(stack...) }()
	for used := 0; len(stack) > 0; used++ {
		if used >= budget {
			return false
		}
		box := stack[len(stack)-1]
		if empty, _ := q.narrow(box, 4); empty || q.certify(box) {
			stack = stack[:len(stack)-1]
			q.m.Shared.back(box)
			continue
		}
		at, wide := -1, 0.0
		for _, i := range q.free {
			t := box[q.dims[i].Target]
			if w := (t.Hi - t.Lo) / q.unit[i]; w > wide {
				at, wide = int(q.dims[i].Target), w
			}
		}
		if at < 0 || wide < 0.05 {
			return false
		}
		stack = append(stack, q.split(box, at))
	}
	return true
}

// split halves a box on a register: the low half stays, the high one is returned.
func (q *problem) split(box []interval.I, at int) []interval.I {
	other, mid := q.alike(box), box[at].Mid()
	box[at].Hi, other[at].Lo = mid, mid
	return other
}

// proved reports whether an enclosure over the box of the design shows that a
// row keeps: every uncertain slot in its span. It is split on the slot that
// widens it most, up to sixty-four boxes.
func (q *problem) proved(r *row) bool {
	base := q.ranged()
	for _, s := range r.in {
		base[s] = interval.Point(q.reg[s])
	}
	for _, i := range r.at {
		base[q.slots[i].node] = q.slots[i].span
	}
	stack := [][]interval.I{base}
	defer func() { q.m.Shared.back(stack...) }()
	for used := 0; len(stack) > 0; used++ {
		if used >= 64 {
			return false
		}
		box := stack[len(stack)-1]
		if q.encloses(r, box) >= 0 && r.prog.Defined(box, r.plus) {
			stack = stack[:len(stack)-1]
			q.m.Shared.back(box)
			continue
		}
		at, wide := -1, 0.0
		for _, i := range r.at {
			s := q.slots[i]
			w := (box[s.node].Hi - box[s.node].Lo) * max(math.Abs(q.adj[s.node]), 1e-300)
			if w > wide && box[s.node].Lo < box[s.node].Hi {
				at, wide = int(s.node), w
			}
		}
		if at < 0 {
			return false
		}
		stack = append(stack, q.split(box, at))
	}
	return true
}

// encloses returns the low end of the row's margin over a box, by its natural
// range and by its slopes.
func (q *problem) encloses(r *row, box []interval.I) float64 {
	r.prog.Enclose(box)
	low := box[r.plus].Lo
	if low >= 0 {
		return low
	}
	mid, adj := q.ranged(), q.ranged()
	defer q.m.Shared.back(mid, adj)
	r.prog.Middle(box, mid)
	return max(low, r.prog.MeanValue(box, mid, adj, r.plus).Lo)
}
