package knowledge_test

import (
	"slices"

	"wornfit/rules/link"
	"wornfit/rules/tape"
)

const (
	leastDraws = 1024
	eachSide   = 20 // draws on each side of each limit
)

// draws are the runs of a lot: at random, then steered until every limit has
// its share on both sides. lopsided names the limits for which that failed.
func (d *drawer) draws(l *lot) (regs [][]float64, lopsided []string) {
	for range leastDraws {
		regs = append(regs, d.draw(l))
	}
	for i := range l.checks {
		c := &l.checks[i]
		if c.Need {
			continue
		}
		for _, kept := range []bool{true, false} {
			more, ok := d.steer(l, c, regs[:leastDraws], kept)
			if regs = append(regs, more...); !ok {
				side := "kept"
				if !kept {
					side = "broken"
				}
				lopsided = append(lopsided, l.name+": "+c.FullID+" is too seldom "+side)
			}
		}
	}
	return regs, lopsided
}

func onSide(v float64, kept bool) bool { return finite(v) && (v >= 0) == kept }

// steer makes up what a side of a limit wants: a draw from the other side is
// changed input by input, each change that brings it nearer kept.
func (d *drawer) steer(l *lot, c *link.Check, regs [][]float64, kept bool) (more [][]float64, ok bool) {
	have := 0
	var others [][]float64
	for _, r := range regs {
		switch v := r[c.Margin]; {
		case onSide(v, kept):
			have++
		case finite(v):
			others = append(others, r)
		}
	}
	if have >= eachSide {
		return nil, true
	}
	prog := l.prog.Only(c.Margin)
	uses := d.movable(l, c.Margin)
	if len(uses) == 0 { // it rests on nothing here: no torque passes the seat of a bearing
		return nil, true
	}
	for i := 0; i < 20*eachSide && have+len(more) < eachSide && len(others) > 0; i++ {
		if r := d.walk(prog, uses, others[i%len(others)], c.Margin, kept); r != nil {
			l.prog.Run(r)
			more = append(more, r)
		}
	}
	return more, have+len(more) >= eachSide
}

func (d *drawer) movable(l *lot, n tape.Node) []*link.Slot {
	uses := l.prog.Uses(n)
	var out []*link.Slot
	for i := range l.slots {
		if s := &l.slots[i]; slices.Contains(uses, s.Node) && d.rangeOf(s).Width() > 0 {
			out = append(out, s)
		}
	}
	return out
}

// walk goes from a run towards the other side of a limit; nil when it did not
// get there.
func (d *drawer) walk(prog *tape.Program, uses []*link.Slot, from []float64, n tape.Node, kept bool) []float64 {
	r := slices.Clone(from)
	best := r[n]
	for range 400 {
		s := uses[d.rng.IntN(len(uses))]
		was := r[s.Node]
		r[s.Node] = d.moved(s, was)
		prog.Run(r)
		v := r[n]
		switch {
		case onSide(v, kept):
			return r
		case !finite(v), kept && v < best, !kept && v > best:
			r[s.Node] = was
		default:
			best = v
		}
	}
	return nil
}

// moved is another value of an input: near the one it has, or anywhere.
func (d *drawer) moved(s *link.Slot, was float64) float64 {
	r := d.rangeOf(s)
	switch {
	case discrete(s):
		return float64(d.rng.IntN(int(r.Hi) + 1))
	case s.Kind == link.TargetSlot && was < 0: // a difference of sizes
		return was * (0.5 + d.rng.Float64()*1.5)
	case d.rng.IntN(2) == 0:
		return min(max(was*(0.5+d.rng.Float64()*1.5), r.Lo), r.Hi)
	}
	return d.wide(r)
}
