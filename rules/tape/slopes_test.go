package tape

import (
	"math"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// The gradient is the limit of differences wherever those from both sides agree.
func TestGradientIsTheSlope(t *testing.T) {
	checked, ops := 0, map[lang.Op]int{}
	programs(t, 4000, func(d drawer, p *Program, roots []Node) {
		reg, other, adjoint, box := make([]float64, p.Len()), make([]float64, p.Len()), make([]float64, p.Len()), ranges(p)
		p.Start(reg)
		p.Start(other)
		for _, root := range roots {
			if p.Kind(root) != lang.NumberKind {
				continue
			}
			d.box(p, box)
			d.point(p, box, reg)
			p.Run(reg)
			if math.IsNaN(reg[root]) || math.Abs(reg[root]) > 1e3 || steep(p, reg, root) {
				continue
			}
			p.Gradient(reg, adjoint, root)
			for _, s := range p.Uses(root) {
				if p.Kind(s) != lang.NumberKind {
					continue
				}
				want, ok := difference(p, reg, other, root, s)
				if !ok {
					continue
				}
				if !(math.Abs(adjoint[s]-want) <= 1e-6*(1+math.Abs(want))) {
					t.Fatalf("slope of %s over %s is %v, by differences %v", p.Formula(root, nil), p.SlotName(s), adjoint[s], want)
				}
				checked++
				for n, need := range needed(p, root) {
					if need {
						ops[p.nodes[n].op]++
					}
				}
			}
		}
	})
	if checked < 10000 {
		t.Errorf("only %d slopes were smooth enough to check", checked)
	}
	for _, op := range []lang.Op{lang.Neg, lang.Add, lang.Sub, lang.Mul, lang.Div, lang.Pow, square, lang.Cond, lang.Min, lang.Max, lang.Abs, lang.Sqrt, lang.Call} {
		if ops[op] < 300 {
			t.Errorf("op %d stood in only %d checked slopes", op, ops[op])
		}
	}
}

// steep: a root, or a power below 1, of 0 stands in it. Its slope has no end, even
// where what lies under it does not move.
func steep(p *Program, reg []float64, root Node) bool {
	for n, need := range needed(p, root) {
		if nd := p.nodes[n]; need && reg[n] == 0 && (nd.op == lang.Sqrt || nd.op == lang.Pow && reg[nd.args[1]] < 1) {
			return true
		}
	}
	return false
}

// difference is a central one over three steps, refined; ok is false where it is
// not smooth enough to say six digits.
func difference(p *Program, at, reg []float64, root, s Node) (slope float64, ok bool) {
	value := func(h float64) float64 {
		for _, q := range p.Slots() {
			reg[q] = at[q]
		}
		reg[s] += h
		p.Run(reg)
		return reg[root]
	}
	central := func(h float64) float64 { return (value(h) - value(-h)) / (2 * h) }
	const h = 1e-4
	one, half, quarter := central(h), central(h/2), central(h/4)
	fine, finer := (4*half-one)/3, (4*quarter-half)/3
	left, right := (at[root]-value(-h/4))/(h/4), (value(h/4)-at[root])/(h/4)
	scale := 1 + math.Abs(finer)
	smooth := math.Abs(fine-finer) < 1e-7*scale && math.Abs(left-right) < 1e-2*scale
	return finer, smooth
}

func TestGradientAtKinks(t *testing.T) {
	b := NewBuilder()
	x, y := b.Slot("x"), b.Slot("y")
	test := b.Apply(lang.LessEq, x, y)
	roots := map[string]Node{
		"min takes its first":        b.Apply(lang.Min, x, b.Apply(lang.Mul, y, b.Const(3))),
		"max takes its first":        b.Apply(lang.Max, x, b.Apply(lang.Mul, y, b.Const(3))),
		"abs at 0 rises":             b.Apply(lang.Abs, x),
		"the branch taken":           b.Apply(lang.Cond, test, x, b.Apply(lang.Neg, x)),
		"root of a yes-no has none":  test,
		"a branch not taken is free": b.Apply(lang.Cond, test, x, b.Apply(lang.Div, y, y)),
	}
	p := b.Build()
	reg, adjoint := make([]float64, p.Len()), make([]float64, p.Len())
	p.Start(reg)
	p.Run(reg) // x = y = 0
	for name, root := range roots {
		want := 1.0
		if root == test {
			want = 0
		}
		if p.Gradient(reg, adjoint, root); adjoint[x] != want || adjoint[y] != 0 {
			t.Errorf("%s: slopes %v and %v, want %v and 0", name, adjoint[x], adjoint[y], want)
		}
	}
}

// Slopes hold the gradient at every point of the box, and MeanValue the value.
func TestSlopesAndMeanValueHold(t *testing.T) {
	slopes, narrower := 0, 0
	programs(t, 2500, func(d drawer, p *Program, roots []Node) {
		box, mid, sides := ranges(p), ranges(p), ranges(p)
		reg, adjoint := make([]float64, p.Len()), make([]float64, p.Len())
		p.Start(reg)
		for range 3 {
			d.box(p, box)
			p.Enclose(box)
			p.Middle(box, mid)
			for _, root := range roots {
				mean := p.MeanValue(box, mid, sides, root)
				if hasNaN(mean) || !box[root].Covers(mean) {
					t.Fatalf("%s: mean value %v is not within %v", p.Formula(root, nil), mean, box[root])
				}
				if mean != box[root] {
					narrower++
				}
				p.Slopes(box, sides, root)
				for range 10 {
					d.point(p, box, reg)
					p.Run(reg)
					v := reg[root]
					if math.IsNaN(v) {
						continue
					}
					if slack := 1e-9 * (1 + math.Abs(v)); v < mean.Lo-slack || v > mean.Hi+slack {
						t.Fatalf("%s is %v, outside the mean value %v", p.Formula(root, nil), v, mean)
					}
					p.Gradient(reg, adjoint, root)
					for _, s := range p.Slots() {
						g, r := adjoint[s], sides[s]
						slopes++
						if slack := 1e-9 * (1 + math.Abs(g)); g < r.Lo-slack || g > r.Hi+slack {
							t.Fatalf("slope of %s over %s is %v, outside %v", p.Formula(root, nil), p.SlotName(s), g, r)
						}
					}
				}
			}
		}
	})
	if slopes < 100000 || narrower < 1000 {
		t.Errorf("%d slopes, %d narrower mean values: too few to mean anything", slopes, narrower)
	}
}

// A hub around a bush, in Lamé's terms: hoop stress per pressure is
// (D²+d²)/(D²-d²). D and d stand twice in it, so plain intervals take them for
// four quantities; the slopes know better. Written with one of each,
// 1 + 2/((D/d)²-1), the corners are exact and are the check.
func TestMeanValueSeesOneQuantityTwice(t *testing.T) {
	b := NewBuilder()
	outer, inner := b.Slot("outer"), b.Slot("inner")
	o, i := b.Apply(lang.Mul, outer, outer), b.Apply(lang.Mul, inner, inner)
	hoop := b.Apply(lang.Div, b.Apply(lang.Add, o, i), b.Apply(lang.Sub, o, i))
	ratio := b.Apply(lang.Pow, b.Apply(lang.Div, outer, inner), b.Const(2))
	once := b.Apply(lang.Add, b.Const(1), b.Apply(lang.Div, b.Const(2), b.Apply(lang.Sub, ratio, b.Const(1))))
	p := b.Build()
	box, mid, adjoint := ranges(p), ranges(p), ranges(p)
	p.StartI(box)
	box[outer], box[inner] = interval.Of(0.0498, 0.0502), interval.Of(0.0298, 0.0302)
	p.Enclose(box)
	p.Middle(box, mid)
	mean := p.MeanValue(box, mid, adjoint, hoop)
	if !mean.Covers(box[once]) {
		t.Errorf("mean value %v loses part of the exact %v", mean, box[once])
	}
	if natural, exact := box[hoop].Width(), box[once].Width(); mean.Width() > 1.1*exact || natural < 1.5*exact {
		t.Errorf("widths: exact %.4g, mean value %.4g, natural %.4g; want the mean value within 10 %% and the natural at 1.5 times or more", exact, mean.Width(), natural)
	}
}
