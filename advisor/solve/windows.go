package solve

import (
	"math"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// aims moves the design from the largest least margin to what the option aims
// at: those that come first (metal is not cut for a should that is lost anyway),
// then shoulds given up, then the others, each held while the next is met. A tenth
// of a machine width (or a quarter of what there is) is left to every rule.
func (q *problem) aims(kept, all []bool, coords []interval.I, a against) {
	rows := len(q.rows)
	defer func() { q.rows = q.rows[:rows] }()
	active := append([]bool(nil), kept...)
	least, _ := q.truly(kept, a)
	spare := min(0.1, max(0, least/4))
	toward := func(node tape.Node, most bool) {
		if node != 0 {
			active = q.pull(active, coords, a, node, most, spare)
			spare *= 0.8 // each aim met leaves the next a little room
		}
	}
	var middles []tape.Node
	meet := func(first bool) {
		for _, aim := range q.m.Option.Aims {
			if aim.First != first {
				continue
			}
			toward(aim.Least, false)
			toward(aim.Most, true)
			if aim.Middle != 0 {
				middles = append(middles, aim.Middle)
			}
		}
	}
	meet(true)
	for _, i := range q.givenUp(kept, all) { // come as near to it as may be
		toward(q.rows[i].plus, true)
	}
	meet(false)
	good := q.coordinates()
	q.climb(active, spansOf(coords), a, 30, inf)
	if v, _ := q.truly(active, a); v < 0 {
		q.place(good)
	}
	for _, n := range middles {
		q.middle(active, a, n)
	}
}

// givenUp lists the shoulds that are lost, those of the stronger ground first: a
// fit is not opened for the sake of a workshop rule that is lost as well.
func (q *problem) givenUp(kept, all []bool) []int {
	var out []int
	for i := range all {
		if r := &q.rows[i]; all[i] && !kept[i] && r.free && r.check >= 0 {
			out = append(out, i)
		}
	}
	ground := func(i int) int { return int(q.m.Option.Checks[q.rows[i].check].Ground) }
	slices.SortStableFunc(out, func(a, b int) int { return ground(a) - ground(b) })
	return out
}

// pull makes an aim's value as small (or large) as the active rows let it: the
// aim becomes one more row, asked for more and more, and stays at what it reached.
func (q *problem) pull(active []bool, coords []interval.I, a against, node tape.Node, most bool, spare float64) []bool {
	r := row{check: aimRow, dim: -1, plus: node, flip: !most}
	q.rests(&r, node)
	if !r.free {
		return active
	}
	q.rows = append(q.rows, r)
	at := &q.rows[len(q.rows)-1]
	active = append(active, true)
	sign := -1.0
	if most {
		sign = 1
	}
	good := sign * q.corner(at, a) // what it is at the worst, as every row is judged
	span, step := spansOf(coords), 0.0
	for k := range coords {
		step = max(step, coords[k].Hi-coords[k].Lo)
	}
	best := q.coordinates()
	for range 28 {
		at.offset = good + sign*step
		if q.climb(active, span, a, 16, spare) >= spare*(1-1e-6)-1e-9 {
			good = at.offset
			best = q.coordinates()
		} else {
			step /= 3
			q.place(best)
		}
		if step < 1e-6 {
			break
		}
	}
	q.place(best)
	at.offset = good - sign*q.room(at) // for the aims to come
	return active
}

// room is what a tenth of a machine width moves an aim's value by.
func (q *problem) room(r *row) float64 {
	q.corner(r, onlyMade)
	size := 0.0
	for _, i := range q.free {
		size += math.Abs(q.adj[q.dims[i].Target]) * q.unit[i]
	}
	return 0.1 * size
}

// aimRow marks a row that is an aim, not a check.
const aimRow = -2

// middle puts the last dimension that an aim hangs on in the middle of its slice.
func (q *problem) middle(kept []bool, a against, node tape.Node) {
	k := q.last(node)
	if k < 0 {
		return
	}
	was := q.coordinates()
	low, _ := q.edge(kept, a, k, -1, false)
	high, _ := q.edge(kept, a, k, 1, false)
	y := append([]float64(nil), was...)
	y[k] = low + (high-low)/2
	q.place(y)
	if v, _ := q.truly(kept, a); v < 0 {
		q.place(was)
	}
}

// last gives the coordinate of the last free dimension that a node hangs on, or -1.
func (q *problem) last(node tape.Node) int {
	for k := len(q.free) - 1; k >= 0; k-- {
		if q.hangsOn(node, k) {
			return k
		}
	}
	return -1
}

// edge returns how far coordinate k may go one way while the others stand, and
// the row that stops it. With alone, the size itself is looked for: its own cut
// is exact. Every row is nearly straight, so its slope tells where it ends; what
// the slope misses is bisected.
func (q *problem) edge(kept []bool, a against, k, way int, alone bool) (float64, int) {
	i := q.free[k]
	was := q.width[i]
	if alone {
		q.width[i] = 0
		q.spread()
	}
	y := q.coordinates()
	at, dir := y[k], float64(way)
	good, bad, by := at, math.NaN(), -1
	x := at
	for range 60 {
		y[k] = x
		q.place(y)
		low := q.lines(kept, a)
		if low >= -1e-9 {
			good = x
		} else {
			bad = x
		}
		next, row := q.reaches(k, x, dir)
		if row >= 0 {
			by = row
		}
		if !math.IsNaN(bad) && (math.Abs(bad-good) < 5e-9 || math.Abs(next-good) < 5e-9 && low >= -1e-9) {
			break
		}
		if math.IsNaN(bad) && (math.IsInf(next, 0) || math.Abs(next-x) < 5e-9) {
			if math.IsInf(next, 0) {
				next = x + dir*0.05 // nothing in sight: look further on
				if math.Abs(next-at) > 1 {
					break
				}
			} else {
				next = x + dir*1e-8
			}
		}
		if !math.IsNaN(bad) && !(min(good, bad) < next && next < max(good, bad)) {
			next = good + (bad-good)/2
		}
		x = next
	}
	if !math.IsNaN(bad) { // what is broken just beyond is what stops it
		y[k] = bad
		q.place(y)
		q.lines(kept, a)
		by = q.lowest(by)
	}
	y[k] = at
	q.place(y)
	q.width[i] = was
	q.spread()
	return good, by
}

// lowest is the row of the lines just drawn with the least margin.
func (q *problem) lowest(by int) int {
	low := inf
	for i, m := range q.lined.m {
		if m < low {
			low, by = m, q.lined.at[i]
		}
	}
	return by
}

// reaches gives where the first active row would end along coordinate k, by the
// lines just drawn at x, and which row that is.
func (q *problem) reaches(k int, x, dir float64) (float64, int) {
	first, by := math.Inf(1), -1
	for i := range q.lined.m {
		if g := q.lined.g[i][k] * dir; g < 0 {
			if d := q.lined.m[i] / -g; d < first {
				first, by = d, q.lined.at[i]
			}
		}
	}
	return x + dir*first, by
}

// windows gives the slice window of every dimension at the design.
func (q *problem) windows(kept []bool, a against) []Window {
	var out []Window
	coordinate := map[int]int{}
	for k, i := range q.free {
		coordinate[i] = k
	}
	for i, d := range q.dims {
		t := q.reg[d.Target]
		w := Window{ID: d.ID, Target: t, Low: t, High: t, Lower: t, Upper: t,
			Machine: q.m.Width[d.ID], Gauge: q.m.Gauge[d.ID]}
		k, ok := coordinate[i]
		if !ok {
			w.Held = true
			out = append(out, w)
			continue
		}
		y := q.coordinates()
		low, lowBy := q.edge(kept, a, k, -1, true)
		high, highBy := q.edge(kept, a, k, 1, true)
		w.Low, w.High = t+low-y[k], t+high-y[k]
		w.LowBy, w.HighBy = q.named(lowBy), q.named(highBy)
		w.Width = q.width[i]
		w.Lower, w.Upper = t-w.Width/2, t+w.Width/2
		out = append(out, w)
	}
	return out
}

func (q *problem) named(row int) []string {
	if row < 0 {
		return nil
	}
	if c := q.rows[row].check; c >= 0 {
		return []string{q.m.Option.Checks[c].FullID}
	}
	return []string{"range of " + q.dims[q.rows[row].dim].ID}
}

// answer judges the design where the targets stand.
func (q *problem) answer(states []State, kept []bool, a against, b Budget) Answer {
	q.judge(states, b.Whole)
	ans := Answer{Works: Yes, States: states, Design: map[string]float64{}}
	for _, d := range q.dims {
		ans.Design[d.ID] = q.reg[d.Target]
	}
	for i := range q.after {
		q.judgeRow(&q.after[i], states, false)
	}
	for i := range states {
		c := &q.m.Option.Checks[i]
		switch {
		case c.Strength != link.Must:
		case states[i].Holds == Depends:
			ans.Works = Depends
			ans.Missing = append(ans.Missing, states[i].Of...)
		case c.After && states[i].Holds == No: // another design might keep it
			ans.Broken = append(ans.Broken, i)
		}
	}
	if len(ans.Broken) > 0 {
		ans.Works = NotProved
	}
	if b.Whole {
		q.weak(states, kept, coordsOf(q), a)
		ans.Windows = q.windows(kept, a)
	}
	ans.Narrowed = q.narrowed()
	ans.Missing = unique(ans.Missing)
	ans.Reg = q.plain()
	return ans
}

func (q *problem) hangsOn(node tape.Node, k int) bool {
	t := q.dims[q.free[k]].Target
	for _, s := range q.uses(node) {
		if s == t {
			return true
		}
	}
	return false
}

func unique(list []string) (out []string) {
	seen := map[string]bool{}
	for _, s := range list {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}
