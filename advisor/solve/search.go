package solve

import (
	"math"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/tape"
)

// least returns the least margin over the active rows, in machine widths, less
// what their worst corners took when they were last frozen; prog works out
// what changed.
func (q *problem) least(active []bool, prog *tape.Program) float64 {
	prog.Run(q.reg)
	low := math.Inf(1)
	for i := range q.rows {
		if r := &q.rows[i]; active[i] {
			if v := (r.value(q.reg) - r.deduct) / r.scale; v < low {
				low = v
			}
		}
	}
	return low
}

// truly returns the least margin with every corner worked out afresh, and the
// row that has it.
func (q *problem) truly(active []bool, a against) (low float64, at int) {
	low, at = math.Inf(1), -1
	for i := range q.rows {
		if r := &q.rows[i]; active[i] {
			if v := q.corner(r, a) / r.scale; v < low || at < 0 {
				low, at = v, i
			}
		}
	}
	return low, at
}

// points tries the fixed low-discrepancy points of the box and returns the most
// promising, best first, no two of them near each other; box is of the coordinates.
func (q *problem) points(active []bool, box []interval.I, a against, n, most int) [][]float64 {
	y := make([]float64, len(box))
	for k := range box {
		y[k] = box[k].Lo + (box[k].Hi-box[k].Lo)/2
	}
	q.place(y)
	q.freeze(a)
	found := starts{box: box, most: most}
	found.take(y, q.least(active, q.all))
	moved := q.all.Moved(q.targets())
	step := additive(len(box))
	for i := 1; i <= n; i++ {
		for k := range box {
			y[k] = q.spreadOver(k, box[k], frac(0.5+float64(i)*step[k]))
		}
		q.place(y)
		found.take(y, q.least(active, moved))
	}
	q.place(found.y[0])
	return found.y
}

// spreadOver takes 0..1 over a coordinate's range: evenly over sizes, and close
// about nought over differences, as what suits a size is most often near it.
func (q *problem) spreadOver(k int, over interval.I, u float64) float64 {
	if q.lead[q.free[k]] < 0 || over.Lo >= 0 || over.Hi <= 0 {
		return over.Lo + (over.Hi-over.Lo)*u
	}
	if u = 2*u - 1; u < 0 {
		return over.Lo * math.Pow(-u, 3)
	}
	return over.Hi * math.Pow(u, 3)
}

// starts keeps the best places to start from, best first.
type starts struct {
	box  []interval.I
	most int
	y    [][]float64
	top  []float64
}

// take keeps a place when it is among the best; of two that are near each other
// only the better.
func (s *starts) take(y []float64, v float64) {
	at := len(s.top)
	for at > 0 && v > s.top[at-1] {
		at--
	}
	if at >= s.most || slices.ContainsFunc(s.y[:at], func(x []float64) bool { return s.close(x, y) }) {
		return
	}
	s.y, s.top = slices.Insert(s.y, at, slices.Clone(y)), slices.Insert(s.top, at, v)
	for i := len(s.y) - 1; i > at; i-- {
		if i >= s.most || s.close(s.y[i], y) {
			s.y, s.top = slices.Delete(s.y, i, i+1), slices.Delete(s.top, i, i+1)
		}
	}
}

// close is within a tenth of the box in every coordinate.
func (s *starts) close(x, y []float64) bool {
	for k := range x {
		if math.Abs(x[k]-y[k]) > (s.box[k].Hi-s.box[k].Lo)/10 {
			return false
		}
	}
	return true
}

// anywhere climbs from each start in turn until the rows needed are kept; where
// they alone lead into a corner, the rows wanted may lead out of it. It returns
// the start that led there and what was reached, with the targets at the best.
func (q *problem) anywhere(from [][]float64, need, want []bool, span []float64, a against, steps int) (start []float64, top float64) {
	top = math.Inf(-1)
	var best []float64
	for _, y := range from {
		for _, led := range [2]bool{false, true} {
			q.place(y)
			if led {
				q.climb(want, span, a, steps, 0)
			}
			v := q.climb(need, span, a, steps, 0)
			if v > top {
				start, top, best = y, v, q.coordinates()
			}
			if v >= 0 {
				return start, top
			}
		}
	}
	q.place(best)
	return start, top
}

// additive gives the steps of an additive low-discrepancy sequence in d
// dimensions: powers of the root of x**(d+1) = x + 1.
func additive(d int) []float64 {
	g := 2.0
	for range 60 {
		g = math.Pow(1+g, 1/float64(d+1))
	}
	step := make([]float64, d)
	for k := range step {
		step[k] = frac(1 / math.Pow(g, float64(k+1)))
	}
	return step
}

func frac(x float64) float64 { return x - math.Floor(x) }

// climb raises the least margin from where the targets stand: every active row
// is taken at its worst corner and made straight there, the small linear
// program says where to go within span, and the span shrinks when that proves
// wrong. It stops early once enough is reached, and returns what it reached.
func (q *problem) climb(active []bool, span []float64, a against, steps int, enough float64) float64 {
	q.hasty = true
	top := q.climbs(active, span, a, steps, enough)
	q.hasty = false
	if top < enough {
		return top
	}
	if top = q.lines(active, a); top < enough { // a kink hid something: once more, slowly
		top = q.climbs(active, span, a, steps, enough)
	}
	return top
}

// patience is how many times the pace of its last step a climb may need to make
// good what it lacks before it gives up.
const patience = 30

func (q *problem) climbs(active []bool, span []float64, a against, steps int, enough float64) float64 {
	n := len(q.free)
	y := q.coordinates()
	top := q.lines(active, a)
	if n == 0 {
		return top
	}
	reach := append([]float64(nil), span...)
	try := make([]float64, n)
	here := &q.here
	q.swap()
	cuts := &q.cuts
	cuts.forget()
	for left := steps; left > 0; left-- {
		if top >= enough {
			break
		}
		s := cuts.solve(&q.lp, here, reach)
		if s <= top+1e-6*max(1, math.Abs(top)) {
			break
		}
		d := q.lp.y[1:]
		for k := range n {
			try[k] = y[k] + d[k]
		}
		q.place(try)
		v := q.lines(active, a)
		if v <= top {
			if !shrink(reach, cuts.missed(here, &q.lined, d)) {
				break
			}
			continue
		}
		if v-top < 0.3*(s-top) {
			shrink(reach, 0.5)
		} else {
			shrink(reach, 1.5)
		}
		cuts.moved(here, &q.lined, d)
		gain := v - top
		top = v
		copy(y, try)
		q.swap()
		if enough == 0 && top+patience*gain*float64(left) < 0 { // not to be had at many times this pace
			break
		}
	}
	q.place(y)
	return top
}

// swap makes the lines just drawn those of the place the climb stands on.
func (q *problem) swap() { q.here, q.lined = q.lined, q.here }

// shrink scales a reach; false when it is too small to matter.
func shrink(reach []float64, by float64) bool {
	big := 0.0
	for k := range reach {
		reach[k] *= by
		big = max(big, reach[k])
	}
	return big > 1e-10
}

// lines makes every active row straight at its worst corner: margins and slopes
// to the coordinates, in machine widths. It returns the least margin.
func (q *problem) lines(active []bool, a against) float64 {
	n, out := len(q.free), &q.lined
	out.m, out.at = out.m[:0], out.at[:0]
	low, now := math.Inf(1), q.coordinates()
	for i := range q.rows {
		if !active[i] {
			continue
		}
		r := &q.rows[i]
		k := len(out.m)
		if len(out.g) <= k {
			out.g = append(out.g, make([]float64, n))
		}
		g, v := out.g[k], 0.0
		if q.straight(r, a, now) {
			v = r.line.margin(now)
			copy(g, r.line.g)
		} else {
			v = q.corner(r, a)
			q.slopes(r, g)
		}
		size := 0.0
		for c, j := range q.free {
			size += math.Abs(g[c]) * q.unit[j]
		}
		if !(size < inf) || math.IsInf(v, 0) { // not defined here: no slope to go by
			clear(g)
			v, size = max(v, -1e12), 0
		}
		r.scale = size
		if size == 0 {
			r.scale = q.flatScale(r, v)
		}
		for c := range g {
			g[c] /= r.scale
		}
		out.m, out.at = append(out.m, v/r.scale), append(out.at, i)
		low = min(low, v/r.scale)
	}
	return low
}

// flatScale is for a row that no size moves here: it counts for one width.
func (q *problem) flatScale(r *row, v float64) float64 {
	if r.check == -1 {
		return q.flatUnit(r)
	}
	if v = math.Abs(v); v < 1e-12 || math.IsInf(v, 0) {
		return 1e-12
	}
	return v
}

// slopes fills in how a row's margin, at the corner left in tmp, changes with
// each coordinate, from the slopes that corner left: moving a size moves what
// suits it too.
func (q *problem) slopes(r *row, g []float64) {
	for i, d := range q.dims {
		q.dt[i] = q.adj[d.Target]
	}
	if r.minus != 0 {
		q.flatten()
		r.prog.Gradient(q.tmp, q.adj, r.minus)
		for i, d := range q.dims {
			q.dt[i] -= q.adj[d.Target]
		}
	}
	for i := len(q.dims) - 1; i > 0; i-- {
		if l := q.lead[i]; l >= 0 {
			q.dt[l] += q.dt[i]
		}
	}
	for k, i := range q.free {
		g[k] = q.dt[i]
	}
}
