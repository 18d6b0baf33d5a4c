package solve

import (
	"math"

	"wornfit/calc/interval"
)

// least returns the least margin over the active rows, in machine widths, less
// what their worst corners take.
func (q *problem) least(active []bool) float64 {
	q.all.Run(q.reg)
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

// points tries the fixed low-discrepancy points of the box and leaves the
// targets at the best; box is of the coordinates.
func (q *problem) points(active []bool, box []interval.I, a against, n int) {
	y, best := make([]float64, len(box)), make([]float64, len(box))
	for k := range box {
		best[k] = box[k].Lo + (box[k].Hi-box[k].Lo)/2
	}
	q.place(best)
	q.freeze(a)
	top := q.least(active)
	step := additive(len(box))
	for i := 1; i <= n; i++ {
		for k := range box {
			y[k] = box[k].Lo + (box[k].Hi-box[k].Lo)*frac(0.5+float64(i)*step[k])
		}
		q.place(y)
		if v := q.least(active); v > top {
			top = v
			copy(best, y)
		}
	}
	q.place(best)
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

// climb raises the least margin from where the targets stand; span is the
// first step of each coordinate. It stops early once enough is reached.
func (q *problem) climb(active []bool, span []float64, a against, steps int, enough float64) float64 {
	var low float64
	for range 3 {
		q.freeze(a)
		low = q.ascend(active, span, steps/3, enough)
		if v, _ := q.truly(active, a); v >= enough {
			return v
		}
	}
	low, _ = q.truly(active, a)
	return low
}

// ascend climbs with frozen corners: along each coordinate and along the fixed
// directions of a low-discrepancy set, halving the step when none helps.
func (q *problem) ascend(active []bool, span []float64, steps int, enough float64) float64 {
	y := q.coordinates()
	try := make([]float64, len(y))
	dirs := directions(len(y))
	top := q.least(active)
	size, last := 1.0, -1
	for n := 0; n < steps && size > 1e-7; {
		better := false
		for k := range dirs {
			d := (k + max(last, 0)) % len(dirs)
			for i := range y {
				try[i] = y[i] + size*span[i]*dirs[d][i]
			}
			q.place(try)
			n++
			if v := q.least(active); v > top {
				top, better, last = v, true, d
				copy(y, try)
				break
			}
		}
		if top >= enough {
			break
		}
		if better {
			size *= 1.6
		} else {
			size /= 3
		}
	}
	q.place(y)
	return q.least(active)
}

// directions are the coordinate axes both ways, then fixed mixed directions:
// a ridge between two limits lies along none of the axes.
func directions(d int) [][]float64 {
	var out [][]float64
	for k := range d {
		for _, s := range [2]float64{1, -1} {
			v := make([]float64, d)
			v[k] = s
			out = append(out, v)
		}
	}
	if d < 2 {
		return out
	}
	step := additive(d)
	for i := 1; i <= 6*d; i++ {
		v, norm := make([]float64, d), 0.0
		for k := range v {
			v[k] = 2*frac(0.5+float64(i)*step[k]) - 1
			norm = max(norm, math.Abs(v[k]))
		}
		for k := range v {
			v[k] /= norm
		}
		out = append(out, v)
	}
	return out
}
