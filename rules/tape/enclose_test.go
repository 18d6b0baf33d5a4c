package tape

import (
	"math"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

func ranges(p *Program) []interval.I { return make([]interval.I, p.Len()) }
func hasNaN(r interval.I) bool       { return math.IsNaN(r.Lo) || math.IsNaN(r.Hi) }

// Every value of every node lies in its range: at least 1,000 points for each op.
func TestEncloseHoldsEveryRun(t *testing.T) {
	points := map[lang.Op]int{}
	programs(t, 1500, func(d drawer, p *Program, _ []Node) {
		box, reg := ranges(p), make([]float64, p.Len())
		p.Start(reg)
		for range 4 {
			d.box(p, box)
			p.Enclose(box)
			for range 12 {
				d.point(p, box, reg)
				p.Run(reg)
				for _, s := range p.steps {
					v, r := reg[s.dst], box[s.dst]
					if hasNaN(r) {
						t.Fatalf("%s is enclosed by %v", p.Formula(s.dst, nil), r)
					}
					if math.IsNaN(v) {
						continue
					}
					if points[s.op]++; !r.Has(v) {
						t.Fatalf("%s is %v, outside %v", p.Formula(s.dst, nil), v, r)
					}
				}
			}
		}
	})
	for op := range traits {
		if traits[op].args > 0 && points[lang.Op(op)] < 1000 {
			t.Errorf("op %q was seen at %d points, want 1,000", traits[op].sign, points[lang.Op(op)])
		}
	}
	if points[lang.Call] < 1000 {
		t.Errorf("calls were seen at %d points, want 1,000", points[lang.Call])
	}
}

// By hand: what is known, what is not.
func TestEncloseByHand(t *testing.T) {
	b := NewBuilder()
	x, f, metal := b.Slot("x"), b.Slot("f"), b.Slot("metal")
	b.Mark(f, lang.YesNo)
	b.Mark(metal, lang.Word)
	two := b.Const(2)
	isSteel := b.Apply(lang.Equal, metal, b.Const(1))
	big := b.Apply(lang.Greater, x, two)
	cases := map[string]struct {
		node Node
		want interval.I
	}{
		"2 < x <= 3 is over 2 or not":     {big, either},
		"fact or its opposite":            {b.Apply(lang.Or, f, b.Apply(lang.Not, f)), either},
		"not steel":                       {isSteel, no},
		"steel and unknown":               {b.Apply(lang.And, isSteel, f), no},
		"unknown and unknown":             {b.Apply(lang.And, f, big), either},
		"branch by what is known":         {b.Apply(lang.Cond, isSteel, x, two), interval.Point(2)},
		"both branches":                   {b.Apply(lang.Cond, f, x, b.Const(5)), interval.Of(1, 5)},
		"min":                             {b.Apply(lang.Min, x, two), interval.Of(1, 2)},
		"abs":                             {b.Apply(lang.Abs, b.Apply(lang.Neg, x)), interval.Of(1, 3)},
		"ripple has no promise":           {b.Call(ripple, x), interval.Whole()},
		"root of what is partly negative": {b.Apply(lang.Sqrt, b.Apply(lang.Sub, two, x)), interval.Of(0, 1)},
		"quotient by what may be 0":       {b.Apply(lang.Div, two, b.Apply(lang.Sub, x, two)), interval.Whole()},
		"ring at corners":                 {b.Call(ringHoop, b.Apply(lang.Add, x, two), b.Const(1)), interval.Of(1+2/24., 1+2/8.)},
	}
	p := b.Build()
	box := ranges(p)
	p.StartI(box)
	box[x], box[f], box[metal] = interval.Of(1, 3), either, interval.Of(2, 2)
	p.Enclose(box)
	for name, c := range cases {
		got := box[c.node]
		if !got.Covers(c.want) || math.Abs(got.Lo-c.want.Lo) > 1e-11 || math.Abs(got.Hi-c.want.Hi) > 1e-11 {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
