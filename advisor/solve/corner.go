package solve

import (
	"math"
)

// against tells which classes of uncertain slots are taken at their worst; the
// others are taken at their best for each row.
type against [4]bool

var (
	forAll     = against{made: true, read: true, unknown: true}
	exceptGaps = against{made: true, read: true} // what is unknown, at its kindest
	onlyMade   = against{made: true}             // readings too, at their kindest
)

// slope fills the adjoint of a row at the registers given.
func (q *problem) slope(r *row, reg []float64) {
	q.flatten()
	r.prog.Gradient(reg, q.adj, r.plus)
	if r.flip {
		for _, i := range r.at {
			q.adj[q.slots[i].node] *= -1
		}
		for _, d := range q.dims {
			q.adj[d.Target] *= -1
		}
	}
}

// flatten clears the slopes to targets: a row's program leaves those it does not
// rest on as they are.
func (q *problem) flatten() {
	for _, d := range q.dims {
		q.adj[d.Target] = 0
	}
}

// corner returns the row's margin at the corner of its uncertain slots that is
// worst for the classes in `a` and best for the rest. It leaves the corner in
// tmp, run, and the row's slopes there in adj.
func (q *problem) corner(r *row, a against) float64 {
	q.take(r)
	if len(r.at) == 0 {
		v := q.margin(r, q.tmp)
		q.slope(r, q.tmp)
		return v
	}
	if q.hasty && r.ends != nil && r.endsOf == a {
		if v, same := q.again(r, a); same {
			return v
		}
		q.take(r)
	}
	r.prog.Run(q.tmp)
	q.slope(r, q.tmp)
	q.lean(r, a)
	v := q.margin(r, q.tmp)
	q.slope(r, q.tmp)
	if q.turn(r, a, &v) {
		v = q.margin(r, q.tmp)
		q.slope(r, q.tmp)
	}
	q.note(r, a)
	return v
}

// take puts the best values and targets of what a row depends on into tmp.
func (q *problem) take(r *row) {
	for _, s := range r.in {
		q.tmp[s] = q.reg[s]
	}
}

// turn looks where the slope turned on the way to the corner: the other end may
// be worse. It reports whether tmp was touched.
func (q *problem) turn(r *row, a against, v *float64) (touched bool) {
	for _, i := range r.at {
		s := &q.slots[i]
		if s.class == sure || !a[s.class] || s.discrete {
			continue
		}
		was := q.tmp[s.node]
		if g := q.adj[s.node]; g > 0 && was == s.span.Hi && was != s.span.Lo || g < 0 && was == s.span.Lo && was != s.span.Hi {
			q.tmp[s.node] = s.span.Lo
			if was == s.span.Lo {
				q.tmp[s.node] = s.span.Hi
			}
			touched = true
			if w := q.margin(r, q.tmp); w < *v {
				*v = w
			} else {
				q.tmp[s.node] = was
			}
		}
	}
	return touched
}

// note keeps the corner in tmp as the one last found for the row.
func (q *problem) note(r *row, a against) {
	r.ends, r.endsOf = r.ends[:0], a
	for _, i := range r.at {
		s := &q.slots[i]
		switch x := q.tmp[s.node]; {
		case s.discrete:
			r.ends = append(r.ends, x)
		case x == s.span.Lo:
			r.ends = append(r.ends, atLow)
		case x == s.span.Hi:
			r.ends = append(r.ends, atHigh)
		default:
			r.ends = append(r.ends, atBest)
		}
	}
}

// Where a slot stands in a corner that is kept.
const (
	atLow  = -1.0
	atBest = 0.0
	atHigh = 1.0
)

// again tries the corner last found: the slopes there say whether it still is
// the one. A word stays what it was.
func (q *problem) again(r *row, a against) (v float64, same bool) {
	for k, i := range r.at {
		s := &q.slots[i]
		switch {
		case s.discrete:
			q.tmp[s.node] = r.ends[k]
		case r.ends[k] == atLow:
			q.tmp[s.node] = s.span.Lo
		case r.ends[k] == atHigh:
			q.tmp[s.node] = s.span.Hi
		}
	}
	v = q.margin(r, q.tmp)
	q.slope(r, q.tmp)
	for k, i := range r.at {
		s := &q.slots[i]
		if s.discrete || s.span.Lo == s.span.Hi {
			continue
		}
		g := q.adj[s.node]
		if !a[s.class] {
			g = -g
		}
		if g > 0 && r.ends[k] != atLow || g < 0 && r.ends[k] != atHigh {
			return 0, false
		}
	}
	return v, true
}

// lean sets every uncertain slot in tmp to the end the slope points from (or to).
func (q *problem) lean(r *row, a against) {
	for _, i := range r.at {
		s := &q.slots[i]
		if s.discrete {
			q.choose(r, s, a[s.class])
			continue
		}
		g := q.adj[s.node]
		if !a[s.class] {
			g = -g
		}
		switch {
		case g > 0:
			q.tmp[s.node] = s.span.Lo
		case g < 0:
			q.tmp[s.node] = s.span.Hi
		case s.span.Lo < s.span.Hi && !q.hasty:
			q.flat(r, s, a[s.class])
		}
	}
}

// choose tries every code of a word or yes-no and keeps the worst (or best).
func (q *problem) choose(r *row, s *slot, worst bool) {
	best, at := 0.0, math.NaN()
	for c := math.Ceil(s.span.Lo); c <= s.span.Hi; c++ {
		q.tmp[s.node] = c
		if v := q.margin(r, q.tmp); math.IsNaN(at) || (v < best) == worst && v != best {
			best, at = v, c
		}
	}
	q.tmp[s.node] = at
}

// flat tries both ends where the slope says nothing: beyond a kink it may not be flat.
func (q *problem) flat(r *row, s *slot, worst bool) {
	mid := q.tmp[s.node]
	best, at := q.margin(r, q.tmp), mid
	for _, x := range [2]float64{s.span.Lo, s.span.Hi} {
		q.tmp[s.node] = x
		if v := q.margin(r, q.tmp); (v < best) == worst && v != best {
			best, at = v, x
		}
	}
	q.tmp[s.node] = at
}

func (q *problem) margin(r *row, reg []float64) float64 {
	r.prog.Run(reg)
	return r.value(reg)
}

// freeze finds for every row what its worst corner takes from its margin here,
// and what a machine width is worth to it. Both change slowly with the targets.
func (q *problem) freeze(a against) {
	for i := range q.rows {
		r := &q.rows[i]
		at := q.margin(r, q.reg)
		r.deduct = at - q.corner(r, a)
		if math.IsInf(at, 0) || math.IsNaN(r.deduct) || math.IsInf(r.deduct, 0) {
			r.deduct = 0
		}
		q.take(r)
		r.prog.Run(q.tmp)
		q.flatten()
		r.prog.Gradient(q.tmp, q.adj, r.plus)
		r.scale = 0
		for _, j := range q.free {
			r.scale += math.Abs(q.adj[q.dims[j].Target]) * q.unit[j]
		}
		if r.minus != 0 || r.scale == 0 {
			r.scale = q.flatUnit(r)
		}
	}
}

// flatUnit is the length the margins of a row that no size moves are counted in.
func (q *problem) flatUnit(r *row) float64 {
	if len(q.dims) == 0 {
		return 1
	}
	return q.unit[max(r.dim, 0)]
}
