package solve

// Which shoulds are kept, and how closely each size must be held for it.

// settle finds a design that keeps every must and more than `floor` rows, as
// many shoulds as it can; near is a second place to start from.
func (q *problem) settle(musts, all []bool, span, near []float64, a against, b Budget, floor int) (kept []bool, ok bool) {
	kept = append([]bool(nil), all...)
	if v := q.climb(kept, span, a, b.Ascent, 1); v >= 0 {
		return kept, true
	}
	from := q.coordinates()
	if v := q.climb(musts, span, a, b.Ascent, 1); v < 0 {
		q.place(near)
		if v := q.climb(musts, span, a, b.Ascent, 1); v < 0 {
			return musts, false
		}
	}
	// give up the should that is furthest from kept, until the rest fit
	good := q.coordinates()
	for n := count(kept) - count(musts); n > 0 && count(kept)-1 > floor; n-- {
		kept[q.furthest(kept, musts, from, a)] = false
		q.place(good)
		if v := q.climb(kept, span, a, b.Ascent, 1); v >= 0 {
			return q.giveBack(kept, all, span, a, b), true
		}
		from = q.coordinates()
	}
	q.place(good)
	q.climb(musts, span, a, b.Ascent, 1)
	return musts, true
}

// furthest is the should among the kept rows that is furthest from kept at a place.
func (q *problem) furthest(kept, musts []bool, from []float64, a against) int {
	worst, at := 0.0, -1
	q.place(from)
	for i := range q.rows {
		if kept[i] && !musts[i] {
			if v := q.corner(&q.rows[i], a) / q.rows[i].scale; at < 0 || v < worst {
				worst, at = v, i
			}
		}
	}
	return at
}

// giveBack takes up again each should that was given up in vain.
func (q *problem) giveBack(kept, all []bool, span []float64, a against, b Budget) []bool {
	for i := range all {
		if !all[i] || kept[i] || !q.rows[i].free {
			continue
		}
		was := q.coordinates()
		kept[i] = true
		if v := q.climb(kept, span, a, b.Ascent/2, 1); v < 0 {
			kept[i] = false
			q.place(was)
		}
	}
	return kept
}

// closer tries sizes held closer than the machines' widths, as close as the
// gauges can tell: where that makes a design, or keeps a should that full widths
// give up, each size is then given all the width it may have, the last cut
// first, so that earlier dimensions give way. Else the full widths stand.
func (q *problem) closer(musts, all, wide []bool, span, near []float64, a against, b Budget, works bool) ([]bool, bool) {
	at, floor := q.coordinates(), 0
	if works {
		floor = count(wide)
	}
	q.tightest()
	kept, ok := q.settle(musts, all, span, near, a, b, floor)
	if !ok || works && count(kept) <= floor {
		q.full()
		q.place(at)
		return wide, works
	}
	q.widen(kept, span, a, b)
	if works && count(kept)-floor < len(q.narrowed()) { // each size held closer is a should broken too
		q.full()
		q.place(at)
		return wide, true
	}
	return kept, true
}

// narrowed lists the dimensions that are held closer than their machine's width.
func (q *problem) narrowed() (out []string) {
	for _, i := range q.free {
		if id := q.dims[i].ID; q.width[i] < q.m.Width[id]*(1-1e-6) {
			out = append(out, id)
		}
	}
	return out
}

// widen gives each dimension the most of its machine's width that a design bears.
func (q *problem) widen(kept []bool, span []float64, a against, b Budget) {
	for k := len(q.free) - 1; k >= 0; k-- {
		i := q.free[k]
		lo, hi, good := q.width[i], q.m.Width[q.dims[i].ID], q.coordinates()
		for try := hi; hi-lo > 2e-7; try = lo + (hi-lo)/2 {
			q.width[i] = try
			q.spread()
			if v := q.climb(kept, span, a, b.Ascent/2, 0); v >= 0 {
				lo, good = try, q.coordinates()
			} else {
				hi = try
				q.place(good)
				if !b.Whole { // a quick look: all of it or none
					break
				}
			}
		}
		q.width[i] = lo
		q.spread()
		q.place(good)
	}
}

// tightest narrows every width to twice what its gauge can tell.
func (q *problem) tightest() {
	for _, i := range q.free {
		q.width[i] = min(q.width[i], 2*q.m.Gauge[q.dims[i].ID])
	}
	q.spread()
}

// full gives every dimension its machine's width.
func (q *problem) full() {
	for _, i := range q.free {
		q.width[i] = q.m.Width[q.dims[i].ID]
	}
	q.spread()
}
