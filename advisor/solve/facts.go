package solve

import (
	"math"
	"sort"

	"wornfit/calc/interval"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// facts judges the needs: yes-no of facts, which no size can change.
func (q *problem) facts() []State {
	o := q.m.Option
	states := make([]State, len(o.Checks))
	for i := range o.Checks {
		c := &o.Checks[i]
		s := &states[i]
		s.Applies = q.applies(c)
		if c.After {
			s.Holds = NotProved
		}
		if !c.Need {
			continue
		}
		if s.Applies == No {
			s.Holds = Yes
			continue
		}
		s.Holds, s.Of = q.fact(c.Margin)
		if s.Applies == Depends && s.Holds == No {
			s.Holds = Depends
			_, s.Of = q.fact(c.When)
		}
		s.Proved = true
		if s.Holds == Yes {
			s.Worst, s.AtTarget = 1, 1
		}
	}
	return states
}

// broken lists the needs that fail, and the limits that no size can change and
// that fail whatever is unknown.
func broken(q *problem, states []State) (out []int) {
	for _, i := range q.needs {
		if states[i].Holds == No && q.m.Option.Checks[i].Strength == link.Must {
			out = append(out, i)
		}
	}
	for i := range q.rows {
		r := &q.rows[i]
		if r.free || !r.must || r.check < 0 || !r.sure {
			continue
		}
		reg := q.ranged()
		for _, s := range r.in {
			reg[s] = interval.Point(q.reg[s])
		}
		for _, k := range r.at {
			reg[q.slots[k].node] = q.slots[k].span
		}
		empty := r.prog.Contract(reg, []tape.Node{r.plus})
		q.m.Shared.back(reg)
		if empty {
			states[r.check].Holds, states[r.check].Proved = No, true
			copy(q.tmp, q.reg)
			states[r.check].Worst = q.corner(r, forAll)
			states[r.check].AtTarget = q.margin(r, q.reg)
			out = append(out, r.check)
		}
	}
	return out
}

// plain returns the registers with everything at its best value.
func (q *problem) plain() []float64 {
	q.prog.Run(q.reg)
	return append([]float64(nil), q.reg...)
}

// judge fills the state of every limit at the targets as they stand.
func (q *problem) judge(states []State, prove bool) {
	for i := range q.rows {
		if r := &q.rows[i]; r.check >= 0 {
			q.judgeRow(r, states, prove)
		}
	}
}

func (q *problem) judgeRow(r *row, states []State, prove bool) {
	s := &states[r.check]
	s.Worst = q.corner(r, forAll)
	s.AtTarget = q.margin(r, q.reg)
	switch {
	case s.Worst >= 0:
		s.Holds = Yes
		s.Proved = prove && q.proved(r)
	case !r.sure: // it may not apply at all
		s.Holds = Depends
		_, s.Of = q.fact(q.m.Option.Checks[r.check].When)
	case q.corner(r, onlyMade) < 0:
		s.Holds = No
	default:
		s.Holds = Depends
		s.Of = q.hangs(r)
	}
}

// hangs names the slots without which a limit would be decided: at the worst
// corner those that would gain most are set to their kindest one after another,
// what is not known before what is gauged, until the limit is kept.
func (q *problem) hangs(r *row) (names []string) {
	worst := q.corner(r, forAll)
	corner := append([]float64(nil), q.tmp...)
	kind := map[int]float64{} // by slot: its value where the limit is best off
	gain := map[int]float64{}
	q.corner(r, onlyMade)
	for _, i := range r.at {
		kind[i] = q.tmp[q.slots[i].node]
	}
	var list []int
	for _, i := range r.at {
		s := &q.slots[i]
		if s.class != unknown && s.class != read {
			continue
		}
		copy(q.tmp, corner)
		q.tmp[s.node] = kind[i]
		if gain[i] = q.margin(r, q.tmp) - worst; gain[i] > 0 || math.IsInf(worst, 0) {
			list = append(list, i)
		}
	}
	sort.SliceStable(list, func(x, y int) bool {
		a, b := list[x], list[y]
		if ca, cb := q.slots[a].class, q.slots[b].class; ca != cb {
			return ca == unknown
		}
		return gain[a] > gain[b]
	})
	copy(q.tmp, corner)
	for _, i := range list {
		names = append(names, q.slots[i].name)
		q.tmp[q.slots[i].node] = kind[i]
		if q.margin(r, q.tmp) >= 0 {
			break
		}
	}
	return names
}
