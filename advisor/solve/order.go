package solve

import "wornfit/rules/tape"

// Coordinates of the search: the target of a dimension that suits none, and
// the difference from the one it suits for the rest.

// leader is the index of the dimension that d suits, or -1.
func (q *problem) leader(i int) int {
	for j := range q.dims[:i] {
		if q.dims[j].ID == q.dims[i].Suits {
			return j
		}
	}
	return -1
}

// place writes targets from the coordinates, in cutting order.
func (q *problem) place(y []float64) {
	for k, i := range q.free {
		t := y[k]
		if l := q.lead[i]; l >= 0 {
			t += q.reg[q.dims[l].Target]
		}
		q.reg[q.dims[i].Target] = t
	}
}

// coordinates reads them back.
func (q *problem) coordinates() []float64 {
	y := make([]float64, len(q.free))
	for k, i := range q.free {
		y[k] = q.reg[q.dims[i].Target]
		if l := q.lead[i]; l >= 0 {
			y[k] -= q.reg[q.dims[l].Target]
		}
	}
	return y
}

// targets are the nodes of the free dimensions.
func (q *problem) targets() []tape.Node {
	out := make([]tape.Node, len(q.free))
	for k, i := range q.free {
		out[k] = q.dims[i].Target
	}
	return out
}
