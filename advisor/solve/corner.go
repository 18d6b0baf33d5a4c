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

// corner returns the row's margin at the corner of its uncertain slots that is
// worst for the classes in `a` and best for the rest. It leaves the corner in
// tmp, run, and the row's slopes there in adj.
func (q *problem) corner(r *row, a against) float64 {
	copy(q.tmp, q.reg)
	r.prog.Run(q.tmp)
	q.slope(r, q.tmp)
	if len(r.at) == 0 {
		return r.value(q.tmp)
	}
	q.lean(r, a)
	v := q.margin(r, q.tmp)
	q.slope(r, q.tmp)
	// where the slope turns on the way, the other end may be worse
	turned := false
	for _, i := range r.at {
		s := &q.slots[i]
		if s.class == sure || !a[s.class] || s.discrete {
			continue
		}
		if g := q.adj[s.node]; g > 0 && q.tmp[s.node] == s.span.Hi || g < 0 && q.tmp[s.node] == s.span.Lo {
			was := q.tmp[s.node]
			q.tmp[s.node] = s.span.Lo
			if was == s.span.Lo {
				q.tmp[s.node] = s.span.Hi
			}
			turned = true
			if w := q.margin(r, q.tmp); w < v {
				v = w
			} else {
				q.tmp[s.node] = was
			}
		}
	}
	if turned {
		v = q.margin(r, q.tmp)
		q.slope(r, q.tmp)
	}
	return v
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
		copy(q.tmp, q.reg)
		r.prog.Run(q.tmp)
		r.prog.Gradient(q.tmp, q.adj, r.plus)
		r.scale = 0
		for _, j := range q.free {
			r.scale += math.Abs(q.adj[q.dims[j].Target]) * q.unit(j)
		}
		if r.minus != 0 || r.scale == 0 {
			r.scale = q.unit(max(r.dim, 0))
		}
	}
}

// unit is the length a dimension's margins are counted in.
func (q *problem) unit(i int) float64 {
	if len(q.dims) == 0 {
		return 1
	}
	return max(q.m.Width[q.dims[i].ID], 1e-6)
}
