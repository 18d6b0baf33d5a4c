package solve

import (
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/tape"
)

// certify tries to prove a box of targets empty by a mix of its musts: were all
// of them kept somewhere in the box, so would be any sum of them with parts of
// one sign; the linear program at the middle finds the parts for which the sum
// stays below zero over the whole box, by an enclosure of its slopes.
func (q *problem) certify(box []interval.I) bool {
	vars, span := q.variables(box)
	if len(vars) == 0 {
		return false
	}
	var m []float64
	var g [][]float64
	var slopes [][]interval.I
	work, adj := q.ranged(), q.ranged()
	defer q.m.Shared.back(work, adj)
	point := append([]float64(nil), q.reg...)
	copy(q.tmp, q.reg)
	q.all.Run(q.tmp)
	ends, from := q.worstEnds()
	for i := range q.rows {
		r := &q.rows[i]
		if from[i] < 0 {
			continue
		}
		copy(work, box)
		bounded := true
		for k, at := range r.at {
			switch s := q.slots[at]; {
			case s.class == made:
				work[s.node] = interval.Point(ends[from[i]+k])
			case math.IsInf(box[s.node].Width(), 0): // no middle to start from
				bounded = false
			}
		}
		if !bounded {
			continue
		}
		copy(point, q.reg)
		for _, s := range q.prog.Slots() {
			point[s] = work[s].Mid()
		}
		r.prog.Run(point)
		r.prog.Enclose(work)
		if !r.prog.Defined(work, r.plus) {
			continue
		}
		r.prog.Slopes(work, adj, r.plus)
		v := point[r.plus]
		if math.IsNaN(v) || math.IsInf(v, 0) {
			continue
		}
		row, ok := make([]interval.I, len(vars)), true
		mid := make([]float64, len(vars))
		size := math.Abs(v)
		for k, n := range vars {
			row[k] = adj[n]
			ok = ok && !math.IsInf(row[k].Lo, 0) && !math.IsInf(row[k].Hi, 0)
			mid[k] = row[k].Mid()
			size = max(size, row[k].Width()*span[k], math.Abs(mid[k])*span[k])
		}
		if !ok || size == 0 {
			continue
		}
		for k := range row {
			row[k] = row[k].Mul(interval.Point(1 / size))
			mid[k] /= size
		}
		m, g, slopes = append(m, v/size), append(g, mid), append(slopes, row)
	}
	if len(m) == 0 {
		return false
	}
	var lp maximin
	if lp.solve(m, g, span) >= 0 {
		return false
	}
	return mixed(&lp, m, slopes, span) < 0
}

// mixed is the most that the mix of rows can come to over the box.
func mixed(lp *maximin, m []float64, slopes [][]interval.I, span []float64) float64 {
	top, parts := interval.Point(0), 0.0
	sum := make([]interval.I, len(span))
	for i := range m {
		p := lp.share(i)
		if p <= 0 {
			continue
		}
		parts += p
		top = top.Add(interval.Point(m[i]).Mul(interval.Point(p)))
		for k := range sum {
			sum[k] = sum[k].Add(slopes[i][k].Mul(interval.Point(p)))
		}
	}
	if parts == 0 {
		return 0
	}
	hi := top.Hi
	for k := range sum {
		hi += max(math.Abs(sum[k].Lo), math.Abs(sum[k].Hi)) * span[k]
	}
	return hi + 1e-7*parts // rounding of the point values
}

// variables are what may move in a box: free targets, and whatever is not known
// exactly, which a design need only bear at one value; with half their widths.
func (q *problem) variables(box []interval.I) (nodes []tape.Node, span []float64) {
	add := func(n tape.Node) {
		if w := box[n].Hi - box[n].Lo; w > 0 && !math.IsInf(w, 0) {
			nodes, span = append(nodes, n), append(span, w/2*(1+1e-12))
		}
	}
	for _, i := range q.free {
		add(q.dims[i].Target)
	}
	for _, s := range q.slots {
		if s.class != made {
			add(s.node)
		}
	}
	return nodes, span
}
