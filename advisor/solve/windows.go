package solve

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// aims moves the design from the largest least margin to what the option aims
// at, as far as no active row breaks, in the order of the aims.
func (q *problem) aims(kept []bool, coords []interval.I, a against) {
	for _, aim := range q.m.Option.Aims {
		switch {
		case aim.Least != 0:
			q.pull(kept, coords, a, aim.Least, -1)
		case aim.Most != 0:
			q.pull(kept, coords, a, aim.Most, 1)
		case aim.Middle != 0:
			q.middle(kept, a, aim.Middle)
		}
	}
}

// pull moves the first dimension that an aim hangs on as far its way as the
// active rows let it, the later ones making room.
func (q *problem) pull(kept []bool, coords []interval.I, a against, node tape.Node, way int) {
	k := q.first(node)
	if k < 0 {
		return
	}
	y := q.coordinates()
	good, far := y[k], coords[k].Hi
	if way < 0 {
		far = coords[k].Lo
	}
	span := spansOf(coords)
	span[k] = 0
	best := append([]float64(nil), y...)
	for range 14 {
		mid := good + (far-good)/2
		if math.Abs(far-good) < 2e-7 {
			break
		}
		copy(y, best)
		y[k] = mid
		q.place(y)
		if q.climb(kept, span, a, 120, 0) >= 0 {
			good = mid
			best = q.coordinates()
		} else {
			far = mid
		}
	}
	q.place(best)
	// hold it, and put the rest where their least margin is largest
	q.climb(kept, span, a, 300, inf)
	if v, _ := q.truly(kept, a); v < 0 {
		q.place(best)
	}
}

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

// first and last give the coordinate of the first or last free dimension that a
// node hangs on, or -1.
func (q *problem) first(node tape.Node) int {
	for k := range q.free {
		if q.hangsOn(node, k) {
			return k
		}
	}
	return -1
}

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
// is exact.
func (q *problem) edge(kept []bool, a against, k, way int, alone bool) (float64, int) {
	i := q.free[k]
	was := q.width[i]
	if alone {
		q.width[i] = 0
		q.spread()
	}
	y := q.coordinates()
	at := y[k]
	good, step := at, q.unit(i)/4
	bad := math.NaN()
	by := -1
	holds := func(x float64) bool {
		y[k] = x
		q.place(y)
		v, row := q.truly(kept, a)
		if v < 0 {
			by = row
		}
		return v >= 0
	}
	for range 40 {
		x := good + float64(way)*step
		if !holds(x) {
			bad = x
			break
		}
		good, step = x, step*2
	}
	for range 50 {
		if math.IsNaN(bad) || math.Abs(bad-good) < 1e-9 {
			break
		}
		mid := good + (bad-good)/2
		if holds(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	y[k] = at
	q.place(y)
	q.width[i] = was
	q.spread()
	return good, by
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
func (q *problem) answer(states []State, kept []bool, a against) Answer {
	q.judge(states)
	ans := Answer{Works: Yes, States: states, Design: map[string]float64{}}
	for _, d := range q.dims {
		ans.Design[d.ID] = q.reg[d.Target]
	}
	for i := range states {
		c := &q.m.Option.Checks[i]
		if c.Strength == link.Must && states[i].Holds == Depends {
			ans.Works = Depends
			ans.Missing = append(ans.Missing, states[i].Of...)
		}
	}
	ans.Windows = q.windows(kept, a)
	for k, i := range q.free {
		if q.width[i] < q.m.Width[q.dims[i].ID]*(1-1e-6) {
			ans.Narrowed = append(ans.Narrowed, q.dims[q.free[k]].ID)
		}
	}
	ans.Missing = unique(ans.Missing)
	ans.Reg = q.plain()
	return ans
}

func (q *problem) hangsOn(node tape.Node, k int) bool {
	t := q.dims[q.free[k]].Target
	for _, s := range q.prog.Uses(node) {
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
