package link

import (
	"fmt"
	"slices"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// scores lowers the contributions of the parts, joins them as the criteria say,
// then lowers what each criterion reads.
func (l *linker) scores(lw *lowering) {
	for _, e := range l.envs() {
		for i := range e.part.Scores {
			s := &e.part.Scores[i]
			if !slices.ContainsFunc(l.in.Criteria, func(c Criterion) bool { return c.ID == s.Criterion }) {
				l.faults = append(l.faults, fault.Fault{At: s.At, Says: fmt.Sprintf("%s counts towards %s, which is no criterion", s.ID, s.Criterion),
					Remedy: fault.DidYouMean(s.Criterion, l.criteria())})
				continue
			}
			l.opt.Scores = append(l.opt.Scores, LinkedScore{Score: *s, Of: e.part, Joint: e.jointName(), Node: lw.expr(e, s.Is)})
		}
	}
	for i := range l.in.Criteria {
		c := &l.in.Criteria[i]
		l.sums["joined."+c.ID] = l.joined(lw.b, c)
	}
	for i := range l.in.Criteria {
		c := &l.in.Criteria[i]
		n := l.sums["joined."+c.ID]
		if c.Is != nil {
			n = lw.expr(l.scoring, c.Is)
		}
		l.opt.Criteria[c.ID] = n
	}
}

func (l *linker) criteria() []string {
	var ids []string
	for _, c := range l.in.Criteria {
		ids = append(ids, c.ID)
	}
	return ids
}

// joined makes one number of the contributions to a criterion.
func (l *linker) joined(b *tape.Builder, c *Criterion) tape.Node {
	var nodes []tape.Node
	for _, s := range l.opt.Scores {
		if s.Criterion == c.ID && s.Node != 0 {
			nodes = append(nodes, s.Node)
		}
	}
	if len(nodes) == 0 {
		return b.Const(c.None)
	}
	one := b.Const(1)
	if c.Join == Risk { // what each leaves, of what the others left
		for i := range nodes {
			nodes[i] = b.Apply(lang.Sub, one, nodes[i])
		}
	}
	if len(nodes) > 1 {
		nodes[0] = b.Apply(joinOps[c.Join], nodes...)
	}
	if c.Join == Risk {
		return b.Apply(lang.Sub, one, nodes[0])
	}
	return nodes[0]
}

var joinOps = [...]lang.Op{Sum: lang.Add, Risk: lang.Mul, Least: lang.Min, Most: lang.Max}
