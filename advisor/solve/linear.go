package solve

import "math"

// line is a row that is a sum of multiples of all that moves: its worst corner
// is the same wherever the targets stand, and so are its slopes there.
type line struct {
	asked, is bool
	of        against
	when      int       // of q.changed: what it holds for
	at        float64   // margin at that corner with the targets at y
	y, g      []float64 // by coordinate: where it was worked out, and its slopes
}

// straight reports whether a row is a line, worked out for what is held against
// it; now is where the targets stand.
func (q *problem) straight(r *row, a against, now []float64) bool {
	l := &r.line
	if !l.asked {
		l.asked = true
		if r.check == aimRow { // asked for more and more
			return false
		}
		moves := q.moving()
		l.is = r.prog.Straight(r.plus, moves) && (r.minus == 0 || r.prog.Straight(r.minus, moves))
	}
	if !l.is {
		return false
	}
	if l.y == nil || l.of != a || l.when != q.changed {
		l.of, l.when = a, q.changed
		l.at = q.corner(r, a)
		l.y, l.g = append(l.y[:0], now...), append(l.g[:0], now...)
		q.slopes(r, l.g)
	}
	return true
}

// margin is the row's margin at its worst corner with the targets at now, less
// what rounding may have added: what is kept here is kept when run.
func (l *line) margin(now []float64) float64 {
	v, size := l.at, math.Abs(l.at)
	for k, g := range l.g {
		v += g * (now[k] - l.y[k])
		size += math.Abs(g * now[k])
	}
	return v - 4e-16*size
}

// moving marks, by node, what is not one value: targets, cuts, gauges, readings.
func (q *problem) moving() []bool {
	if q.moves == nil {
		q.moves = make([]bool, q.prog.Len())
		for _, i := range q.free {
			q.moves[q.dims[i].Target] = true
		}
		for _, s := range q.slots {
			q.moves[s.node] = true
		}
	}
	return q.moves
}
