package solve

import (
	"sort"

	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// What stands in the way when nothing works.

// nearest is the answer when nothing works: what stands in the way at the
// sizes that come nearest to a design.
func (q *problem) nearest(musts []bool, coords []interval.I, facts []State, b Budget, proved bool) Answer {
	q.tightest()
	musts = q.binding(musts, onlyMade)
	q.climb(musts, spansOf(coords), onlyMade, b.Ascent, 1)
	ans := Answer{Works: NotProved, States: facts, Broken: q.inTheWay(q.hardest(musts, coords, b), coords), Reg: q.plain()}
	q.judge(facts, false)
	if proved {
		ans.Works = No
		for _, i := range ans.Broken {
			facts[i].Holds = No
		}
	}
	return ans
}

// hardest gives the musts that are still in each other's way when what the shop
// lacks and the owner wishes is left out; all of them when those alone are.
func (q *problem) hardest(musts []bool, coords []interval.I, b Budget) []bool {
	hard, fewer := append([]bool(nil), musts...), false
	for i := range q.rows {
		if c := q.rows[i].check; musts[i] && c >= 0 && q.m.Option.Checks[c].Ground >= link.Shop {
			hard[i], fewer = false, true
		}
	}
	if !fewer || q.climb(hard, spansOf(coords), onlyMade, b.Ascent, 0) >= 0 {
		return musts
	}
	return hard
}

// inTheWay lists the checks that together hold the least margin down where the
// targets stand, the greatest part first.
func (q *problem) inTheWay(musts []bool, coords []interval.I) []int {
	rows, parts := q.holding(musts, onlyMade, coords)
	var list []int
	share := map[int]float64{}
	for k, i := range rows {
		c := q.rows[i].check
		if c < 0 {
			continue
		}
		if share[c] == 0 {
			list = append(list, c)
		}
		share[c] += max(parts[k], 1e-9)
	}
	sort.SliceStable(list, func(a, b int) bool { return share[list[a]] > share[list[b]] })
	return list
}

// holding lists the rows that together hold the least margin below nought where
// the targets stand, with their parts: those of the last linear program.
func (q *problem) holding(musts []bool, a against, coords []interval.I) (rows []int, parts []float64) {
	low := q.lines(musts, a)
	if low >= 0 {
		return nil, nil
	}
	if len(q.free) > 0 {
		span := spansOf(coords)
		for k := range span {
			span[k] *= 1e-3
		}
		q.lp.solve(q.lined.m, q.lined.g, span)
	}
	for i, at := range q.lined.at {
		part := 0.0
		if len(q.free) > 0 {
			part = q.lp.share(i)
		} else if q.lined.m[i] == low {
			part = 1
		}
		if part > 1e-6 {
			rows, parts = append(rows, at), append(parts, part)
		}
	}
	return rows, parts
}
