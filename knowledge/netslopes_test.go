package knowledge_test

import (
	"fmt"
	"math"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

const (
	sameSlope = 1e-6 // of slopes, and of the share of the value they carry
)

// steps are the shares of an input that a difference goes to either side: a
// long one is free of rounding, a short one of the curve.
var steps = []float64{1e-5, 1e-6, 1e-7}

// slopes holds the gradient to central differences, for every number lowered
// and every margin, at draws that go round all of them.
func slopes(d *drawer, l *lot, regs [][]float64, n *tally) error {
	p := &prober{l: l, d: d, n: n, near: make([]float64, l.prog.Len()), adj: make([]float64, l.prog.Len()), other: make([]float64, l.prog.Len()),
		point: make([]interval.I, l.prog.Len()), ranges: make([]interval.I, l.prog.Len())}
	l.prog.StartI(p.point)
	for _, root := range l.nodes() {
		if l.prog.Kind(root) != lang.NumberKind {
			continue
		}
		prog := l.prog.Only(root)
		uses := d.movable(l, root)
		for range l.share[root] {
			if err := p.at(prog, uses, regs[d.rng.IntN(len(regs))], root); err != nil {
				return err
			}
		}
	}
	return nil
}

// prober measures slopes.
type prober struct {
	l                *lot
	d                *drawer
	n                *tally
	near, adj, other []float64
	point, ranges    []interval.I // value and slopes at the point, as wide as their rounding
}

func (p *prober) at(prog *tape.Program, uses []*link.Slot, reg []float64, root tape.Node) error {
	copy(p.near, reg)
	prog.Gradient(reg, p.adj, root)
	carried := math.Abs(reg[root]) // what the value and its shares come to
	for _, s := range uses {
		carried += math.Abs(p.adj[s.Node] * reg[s.Node])
	}
	if !finite(carried) {
		return nil
	}
	for i := range p.l.slots {
		n := p.l.slots[i].Node
		p.point[n] = interval.Point(reg[n])
	}
	prog.Enclose(p.point)
	prog.Slopes(p.point, p.ranges, root)
	for _, s := range uses {
		if discrete(s) || reg[s.Node] == 0 {
			continue
		}
		p.n.add("slopes", 1)
		got, agrees, rough := p.slope(prog, s, reg, root, carried)
		switch {
		case agrees || !finite(got):
		case rough:
			p.n.add("rough", 1)
		default:
			return fmt.Errorf("%s has the slope %v over %s = %v, and by differences %v", p.l.say(root), p.adj[s.Node], s.Name, reg[s.Node], got)
		}
	}
	return nil
}

// slope tries the steps until one agrees with the gradient. rough says that no
// step may judge it: a kink, differences that differ among themselves, or a
// value that is mostly rounding, as with a wall of a millionth of a millimetre.
func (p *prober) slope(prog *tape.Program, s *link.Slot, reg []float64, root tape.Node, carried float64) (got float64, agrees, rough bool) {
	x, want := math.Abs(reg[s.Node]), p.adj[s.Node]
	low, high := math.Inf(1), math.Inf(-1)
	for _, share := range steps {
		var bend bool
		got, bend = p.difference(prog, s, reg, root, share*x)
		off := math.Abs(got - want)
		if off <= sameSlope*max(math.Abs(want), math.Abs(got), carried/x) {
			return got, true, false
		}
		low, high = min(low, got), max(high, got)
		rounding := p.point[root].Width() / (share * x)
		if w := p.ranges[s.Node].Width(); finite(w) { // a kernel may promise nothing of its slopes
			rounding += w
		}
		rough = rough || bend || high-low > 0.1*off || !(rounding < off)
	}
	return got, false, rough
}

// difference is the slope by values to either side; bend says that the gradient
// itself, or the difference over half the step, is another: a kink or a jump
// stands between.
func (p *prober) difference(prog *tape.Program, s *link.Slot, reg []float64, root tape.Node, h float64) (slope float64, bend bool) {
	x := reg[s.Node]
	value := func(at float64) float64 {
		p.near[s.Node] = at
		prog.Run(p.near)
		return p.near[root]
	}
	lo, hi := x-h, x+h
	slope = (value(hi) - value(lo)) / (hi - lo)
	half := (value(x+h/2) - value(x-h/2)) / (x + h/2 - (x - h/2))
	var ends [2]float64
	for i, at := range [2]float64{lo, hi} {
		value(at)
		prog.Gradient(p.near, p.other, root)
		ends[i] = p.other[s.Node]
	}
	p.near[s.Node] = x
	apart := func(a, b float64) bool { return !(math.Abs(a-b) <= 1e-3*max(math.Abs(a), math.Abs(b))) }
	return slope, apart(ends[0], ends[1]) || apart(slope, half)
}
