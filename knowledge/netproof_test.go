package knowledge_test

import (
	"fmt"
	"math"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// proves looks, at points of boxes, for what would make a proof false: a slope
// outside the range of slopes, a value outside its mean-value range, and no
// number where a rule was said to be defined.
func proves(d *drawer, l *lot, regs [][]float64, n *tally) error {
	reg, adj := slices.Clone(regs[0]), make([]float64, l.prog.Len())
	mid, ranges := make([]interval.I, l.prog.Len()), make([]interval.I, l.prog.Len())
	for i := range l.checks {
		c := &l.checks[i]
		if l.prog.Kind(c.Margin) != lang.NumberKind {
			continue
		}
		prog, uses := l.prog.Only(c.Margin), d.movable(l, c.Margin)
		for range (l.share[c.Margin] + 3) / 4 {
			box := d.box(l, regs[d.rng.IntN(len(regs))], regs[d.rng.IntN(len(regs))])
			prog.Enclose(box)
			prog.Middle(box, mid)
			value := prog.MeanValue(box, mid, ranges, c.Margin)
			prog.Slopes(box, ranges, c.Margin)
			defined := prog.Defined(box, c.Margin)
			for range 4 {
				d.inside(l, prog, box, reg)
				v := reg[c.Margin]
				switch {
				case !finite(v) && defined:
					return fmt.Errorf("%s is said to be defined, and is %v", c.FullID, v)
				case !finite(v):
					continue
				}
				prog.Gradient(reg, adj, c.Margin)
				carried := math.Abs(v)
				for _, s := range uses {
					carried += math.Abs(adj[s.Node] * reg[s.Node])
				}
				if !holds(value, v, 1e-12*carried) {
					return fmt.Errorf("%s is %v, outside its mean-value range %v", c.FullID, v, value)
				}
				for _, s := range uses {
					if g := adj[s.Node]; !discrete(s) && finite(g) && !holds(ranges[s.Node], g, 1e-12*max(math.Abs(g), carried/max(math.Abs(reg[s.Node]), 1e-300))) {
						return fmt.Errorf("%s has the slope %v over %s, outside %v", c.FullID, g, s.Name, ranges[s.Node])
					}
				}
				n.add("proofs", 1)
				if defined {
					n.add("defined", 1)
				}
			}
		}
	}
	return nil
}

// holds is Has but for a rounding.
func holds(r interval.I, v, slack float64) bool { return r.Lo-slack <= v && v <= r.Hi+slack }
