package solve

import (
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
		reg := make([]interval.I, q.prog.Len())
		r.prog.StartI(reg)
		for _, s := range q.uses(r.plus) {
			reg[s] = interval.Point(q.reg[s])
		}
		for _, k := range r.at {
			reg[q.slots[k].node] = q.slots[k].span
		}
		if r.prog.Contract(reg, []tape.Node{r.plus}) {
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
		r := &q.rows[i]
		if r.check < 0 {
			continue
		}
		s := &states[r.check]
		s.Worst = q.corner(r, forAll)
		q.prog.Run(q.reg)
		s.AtTarget = r.value(q.reg)
		switch {
		case s.Worst >= 0:
			s.Holds = Yes
			s.Proved = prove && q.proved(r)
		case q.corner(r, onlyMade) < 0:
			s.Holds = No
		default:
			s.Holds = Depends
			s.Of = q.hangs(r)
		}
	}
}

// hangs names the unknown and gauged slots without which a limit would be decided.
func (q *problem) hangs(r *row) []string {
	var unknowns, reads []string
	for _, i := range r.at {
		switch q.slots[i].class {
		case unknown:
			unknowns = append(unknowns, q.slots[i].name)
		case read:
			reads = append(reads, q.slots[i].name)
		}
	}
	if q.corner(r, exceptGaps) >= 0 || len(reads) == 0 {
		return unknowns
	}
	return append(unknowns, reads...)
}
