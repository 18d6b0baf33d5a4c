package solve

import "math"

// maximin solves the small linear program behind every step of the search:
//
//	maximise s  over d and s,  subject to  m[i] + g[i]·d >= s  and  |d[k]| <= span[k]
//
// by a revised simplex on its dual, whose basis has one more row than there are
// coordinates: the multipliers of the dual are d and s, and its basic values
// say how much each row has a part in holding s down.
type maximin struct {
	n     int       // coordinates
	inv   []float64 // inverse of the basis, (n+1) x (n+1)
	basis []int     // columns: rows first, then +box, then -box
	x     []float64 // basic values
	y     []float64 // s, d
	col   []float64
	dir   []float64
}

// solve returns s; d is left in lp.y[1:], the parts the rows have in lp.share.
func (lp *maximin) solve(m []float64, g [][]float64, span []float64) float64 {
	n, rows := len(span), len(m)
	lp.reset(n)
	if rows == 0 {
		clear(lp.y)
		clear(lp.x)
		return inf
	}
	lp.start(m, g)
	cost := func(j int) float64 {
		switch {
		case j < rows:
			return m[j]
		case j < rows+n:
			return span[j-rows]
		}
		return span[j-rows-n]
	}
	for it := 0; it < 60*(n+2); it++ {
		lp.price(cost)
		enter := lp.cheapest(m, g, span, it > 20*(n+2))
		if enter < 0 {
			break
		}
		lp.column(enter, rows, g)
		if !lp.pivot(enter) {
			break
		}
	}
	lp.price(cost)
	return lp.y[0]
}

// cheapest is the column whose entering gains most for its size, or, against
// going in circles (Bland's rule), the first that gains; -1: none.
func (lp *maximin) cheapest(m []float64, g [][]float64, span []float64, first bool) int {
	enter, worst := -1, -1e-11
	s, d := lp.y[0], lp.y[1:]
	for j, c := range m {
		r := c - s
		for k, v := range g[j] {
			r += v * d[k]
		}
		if scale := 1 + math.Abs(c); r < worst*scale {
			enter, worst = j, r/scale
			if first {
				return enter
			}
		}
	}
	for k, c := range span {
		scale := 1 + math.Abs(c)
		if r := c - d[k]; r < worst*scale {
			enter, worst = len(m)+k, r/scale
		}
		if r := c + d[k]; r < worst*scale {
			enter, worst = len(m)+len(span)+k, r/scale
		}
		if first && enter >= 0 {
			return enter
		}
	}
	return enter
}

func (lp *maximin) reset(n int) {
	if lp.n != n || lp.inv == nil {
		w := n + 1
		*lp = maximin{n: n, inv: make([]float64, w*w), basis: make([]int, w), x: make([]float64, w), y: make([]float64, w),
			col: make([]float64, w), dir: make([]float64, w)}
	}
}

// start is the basis of the row with the least margin, its slope balanced by
// the box: A = [1 0; -g I or -I].
func (lp *maximin) start(m []float64, g [][]float64) {
	low := 0
	for i := range m {
		if m[i] < m[low] {
			low = i
		}
	}
	w := lp.n + 1
	clear(lp.inv)
	lp.inv[0] = 1
	lp.basis[0], lp.x[0] = low, 1
	for k := range lp.n {
		v := g[low][k]
		sign := 1.0
		lp.basis[1+k] = len(m) + k
		if v < 0 {
			sign = -1
			lp.basis[1+k] += lp.n
		}
		lp.inv[(1+k)*w] = sign * v
		lp.inv[(1+k)*w+1+k] = sign
		lp.x[1+k] = math.Abs(v)
	}
}

// price finds the multipliers y = c_B B^-1: y[0] is s, the rest is d.
func (lp *maximin) price(cost func(int) float64) {
	w := lp.n + 1
	for k := range w {
		lp.y[k] = 0
	}
	for i, j := range lp.basis {
		c := cost(j)
		for k := range w {
			lp.y[k] += c * lp.inv[i*w+k]
		}
	}
}

// column works out B^-1 times a column.
func (lp *maximin) column(j, rows int, g [][]float64) {
	w := lp.n + 1
	clear(lp.col)
	switch {
	case j < rows:
		lp.col[0] = 1
		for k := range lp.n {
			lp.col[1+k] = -g[j][k]
		}
	case j < rows+lp.n:
		lp.col[1+j-rows] = 1
	default:
		lp.col[1+j-rows-lp.n] = -1
	}
	for i := range w {
		lp.dir[i] = 0
		for k := range w {
			lp.dir[i] += lp.inv[i*w+k] * lp.col[k]
		}
	}
}

// pivot brings a column into the basis by the ratio test.
func (lp *maximin) pivot(enter int) bool {
	w := lp.n + 1
	leave, least := -1, math.Inf(1)
	for i := range w {
		if lp.dir[i] > 1e-12 {
			if r := lp.x[i] / lp.dir[i]; r < least-1e-15 || r < least+1e-15 && leave >= 0 && lp.basis[i] < lp.basis[leave] {
				leave, least = i, r
			}
		}
	}
	if leave < 0 {
		return false
	}
	p := lp.dir[leave]
	for k := range w {
		lp.inv[leave*w+k] /= p
	}
	lp.x[leave] = least
	for i := range w {
		if i == leave || lp.dir[i] == 0 {
			continue
		}
		f := lp.dir[i]
		for k := range w {
			lp.inv[i*w+k] -= f * lp.inv[leave*w+k]
		}
		lp.x[i] = max(0, lp.x[i]-f*least)
	}
	lp.basis[leave] = enter
	return true
}

// share is the part a row has in holding the least margin down: its multiplier.
func (lp *maximin) share(row int) float64 {
	for i, j := range lp.basis {
		if j == row {
			return lp.x[i]
		}
	}
	return 0
}
