package tape

import (
	"math"
	"testing"

	"wornfit/rules/lang"
)

// What is called straight has the same slope everywhere: two equal steps of what
// moves change it alike.
func TestStraightHasOneSlope(t *testing.T) {
	yes, no := 0, 0
	programs(t, 400, func(d drawer, p *Program, roots []Node) {
		moves := make([]bool, p.Len())
		for i, s := range p.Slots() {
			moves[s] = i%2 == 0 && p.Kind(s) == lang.NumberKind
		}
		box := ranges(p)
		d.box(p, box)
		for _, root := range roots {
			if p.Kind(root) != lang.NumberKind || !p.Straight(root, moves) {
				no++
				continue
			}
			at := make([][]float64, 3)
			for k := range at {
				at[k] = make([]float64, p.Len())
				p.Start(at[k])
			}
			d.point(p, box, at[0])
			for i, s := range p.Slots() {
				step := 0.0
				if moves[s] {
					step = 0.5 + float64(i)
				}
				at[1][s], at[2][s] = at[0][s]+step, at[0][s]+2*step
			}
			for _, reg := range at {
				p.Run(reg)
			}
			a, b, c := at[0][root], at[1][root], at[2][root]
			if math.IsNaN(a+b+c) || math.IsInf(a+b+c, 0) {
				continue
			}
			yes++
			if math.Abs((c-b)-(b-a)) > 1e-9*(math.Abs(a)+math.Abs(b)+math.Abs(c)) {
				t.Fatalf("%s goes %g, %g, %g", p.Formula(root, nil), a, b, c)
			}
		}
	})
	if yes < 50 || no < 50 {
		t.Errorf("%d straight, %d not: too few to tell", yes, no)
	}
}
