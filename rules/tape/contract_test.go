package tape

import (
	"math"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// No point that a run keeps is lost, for limits and yes-nos of every form.
func TestContractLosesNoKeptPoint(t *testing.T) {
	kept, narrowed, refuted := 0, 0, 0
	programs(t, 6000, func(d drawer, p *Program, roots []Node) {
		if len(roots) == 0 {
			return
		}
		box, was, again, reg := ranges(p), ranges(p), ranges(p), make([]float64, p.Len())
		p.Start(reg)
		p.StartI(again)
		for range 3 {
			keep := []Node{roots[d.IntN(len(roots))]}
			if d.IntN(2) == 0 {
				keep = append(keep, roots[d.IntN(len(roots))])
			}
			d.box(p, box)
			copy(was, box)
			empty := p.Contract(box, keep)
			if empty {
				refuted++
			} else if smaller(t, p, was, box) {
				narrowed++
			}
			for range 30 {
				d.point(p, was, reg)
				p.Run(reg)
				if !p.Keeps(reg, keep[0]) || !p.Keeps(reg, keep[len(keep)-1]) {
					continue
				}
				kept++
				for _, s := range p.Slots() {
					if empty || !box[s].Has(reg[s]) {
						t.Fatalf("lost %s = %v of %v, left %v (empty: %v)\nkeep %s\nkeep %s", p.SlotName(s), reg[s], was[s], box[s],
							empty, p.Formula(keep[0], nil), p.Formula(keep[len(keep)-1], nil))
					}
				}
			}
			if empty {
				continue
			}
			for _, s := range p.Slots() {
				again[s] = box[s]
			}
			p.Enclose(again)
			for n := 1; n < len(p.nodes); n++ {
				if again[n] != box[n] {
					t.Fatalf("after contraction %s holds %v, Enclose gives %v", p.Formula(Node(n), nil), box[n], again[n])
				}
			}
		}
	})
	if kept < 50000 || narrowed < 3000 || refuted < 3000 {
		t.Errorf("%d kept points, %d boxes narrowed, %d refuted: too few to mean anything", kept, narrowed, refuted)
	}
}

// smaller reports whether a slot was narrowed, and fails if one grew or a word
// left its codes.
func smaller(t *testing.T, p *Program, was, now []interval.I) bool {
	t.Helper()
	any := false
	for _, s := range p.Slots() {
		if !was[s].Covers(now[s]) {
			t.Fatalf("%s grew from %v to %v", p.SlotName(s), was[s], now[s])
		}
		if whole := p.Kind(s) != lang.NumberKind; whole && (now[s].Lo != float64(int(now[s].Lo)) || now[s].Hi != float64(int(now[s].Hi))) {
			t.Fatalf("%s is left at %v, between codes", p.SlotName(s), now[s])
		}
		any = any || was[s] != now[s]
	}
	return any
}

// Each op narrows its arguments to what hand working leaves of them.
func TestContractByHand(t *testing.T) {
	of := interval.Of
	cases := []struct {
		name string
		keep func(b *Builder, x, y Node) Node
		x, y interval.I // before
		a, b interval.I // after; empty: nothing can keep it
	}{
		{"x - y >= 0", func(b *Builder, x, y Node) Node { return b.Apply(lang.Sub, x, y) }, of(0, 5), of(3, 9), of(3, 5), of(3, 5)},
		{"1 - (x + y) >= 0", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Sub, b.Const(1), b.Apply(lang.Add, x, y))
		}, of(0, 5), of(-2, 9), of(0, 3), of(-2, 1)},
		{"x*y >= 6", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.GreaterEq, b.Apply(lang.Mul, x, y), b.Const(6))
		}, of(-1, 4), of(0, 2), of(3, 4), of(1.5, 2)},
		{"x/y >= 4", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.GreaterEq, b.Apply(lang.Div, x, y), b.Const(4))
		}, of(0, 8), of(1, 9), of(4, 8), of(1, 2)},
		{"x^2 <= y", func(b *Builder, x, y Node) Node { return b.Apply(lang.LessEq, b.Apply(lang.Mul, x, x), y) },
			of(-5, 9), of(-1, 4), of(-2, 2), of(0, 4)},
		{"x^3 >= y", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.GreaterEq, b.Apply(lang.Pow, x, b.Const(3)), y)
		}, of(-5, 3), of(-8, 99), of(-2, 3), of(-8, 27)},
		{"x^-2 >= y", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.GreaterEq, b.Apply(lang.Pow, x, b.Const(-2)), y)
		}, of(1, 3), of(.25, 9), of(1, 2), of(.25, 1)},
		{"sqrt(x) <= y", func(b *Builder, x, y Node) Node { return b.Apply(lang.LessEq, b.Apply(lang.Sqrt, x), y) },
			of(-3, 20), of(-1, 3), of(0, 9), of(0, 3)},
		{"abs(x) <= y", func(b *Builder, x, y Node) Node { return b.Apply(lang.LessEq, b.Apply(lang.Abs, x), y) },
			of(-9, 1), of(-1, 3), of(-3, 1), of(0, 3)},
		{"min(x, y) >= 2", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.GreaterEq, b.Apply(lang.Min, x, y), b.Const(2))
		}, of(0, 5), of(1, 9), of(2, 5), of(2, 9)},
		{"max(x, y) >= 4, y below", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.GreaterEq, b.Apply(lang.Max, x, y), b.Const(4))
		}, of(0, 5), of(1, 3), of(4, 5), of(1, 3)},
		{"not (x < y)", func(b *Builder, x, y Node) Node { return b.Apply(lang.Not, b.Apply(lang.Less, x, y)) },
			of(0, 5), of(3, 9), of(3, 5), of(3, 5)},
		{"x < y or y < 0, y positive", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Or, b.Apply(lang.Less, x, y), b.Apply(lang.Less, y, b.Const(0)))
		}, of(0, 5), of(0, 3), of(0, 3), of(0, 3)},
		{"x < y or y > 2: open", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Or, b.Apply(lang.Less, x, y), b.Apply(lang.Greater, y, b.Const(2)))
		}, of(0, 5), of(0, 3), of(0, 5), of(0, 3)},
		{"sqrt(x) >= 1 or y >= 0: x may be negative", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Or, b.Apply(lang.GreaterEq, b.Apply(lang.Sqrt, x), b.Const(1)), b.Apply(lang.GreaterEq, y, b.Const(0)))
		}, of(-5, 5), of(-3, 3), of(-5, 5), of(-3, 3)},
		{"(y >= 1 ? x : -1) >= 0", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Cond, b.Apply(lang.GreaterEq, y, b.Const(1)), x, b.Const(-1))
		}, of(-5, 5), of(-3, 3), of(0, 5), of(1, 3)},
		{"not (sqrt(x) >= 1 and y >= 0): x may be negative", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Not, b.Apply(lang.And, b.Apply(lang.GreaterEq, b.Apply(lang.Sqrt, x), b.Const(1)), b.Apply(lang.GreaterEq, y, b.Const(0))))
		}, of(-5, 5), of(-3, 3), of(-5, 5), of(-3, 3)},
		{"y >= 1 ? x >= 2 : x >= 9", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Cond, b.Apply(lang.GreaterEq, y, b.Const(1)), b.Apply(lang.GreaterEq, x, b.Const(2)), b.Apply(lang.GreaterEq, x, b.Const(9)))
		}, of(-5, 5), of(-3, 3), of(2, 5), of(1, 3)},
		{"x != 0: a number has no next", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.NotEqual, x, b.Const(0))
		}, of(0, 5), of(0, 1), of(0, 5), of(0, 1)},
		{"x == y", func(b *Builder, x, y Node) Node { return b.Apply(lang.Equal, x, y) }, of(0, 5), of(3, 9), of(3, 5), of(3, 5)},
		{"heat(x) - y >= 0, in the kernel's range", func(b *Builder, x, y Node) Node {
			return b.Apply(lang.Sub, b.Call(heat, x), y)
		}, of(-9, 0), of(0, 9), of(-3, 0), of(0, 1)},
		{"x - y >= 0 cannot be", func(b *Builder, x, y Node) Node { return b.Apply(lang.Sub, x, y) },
			of(0, 2), of(3, 9), interval.None(), interval.None()},
		{"0/0 is kept nowhere", func(b *Builder, x, y Node) Node { return b.Apply(lang.Div, x, y) },
			of(0, 2), of(0, 0), interval.None(), interval.None()},
		{"a constant no", func(b *Builder, x, y Node) Node { return b.Apply(lang.Less, b.Const(2), b.Const(1)) },
			of(0, 2), of(0, 1), interval.None(), interval.None()},
		{"a margin of 0", func(b *Builder, x, y Node) Node { return b.Const(0) }, of(0, 2), of(0, 1), of(0, 2), of(0, 1)},
	}
	for _, c := range cases {
		b := NewBuilder()
		x, y := b.Slot("x"), b.Slot("y")
		keep := c.keep(b, x, y)
		p := b.Build()
		box := ranges(p)
		p.StartI(box)
		box[x], box[y] = c.x, c.y
		if empty := p.Contract(box, []Node{keep}); empty != c.a.Empty() {
			t.Errorf("%s: empty is %v", c.name, empty)
		} else if !empty && (!close(box[x], c.a) || !close(box[y], c.b)) {
			t.Errorf("%s: left %v and %v, want %v and %v", c.name, box[x], box[y], c.a, c.b)
		}
	}
}

// close: no point of want is lost and no edge is far out.
func close(got, want interval.I) bool {
	return got.Covers(want) && want.Lo-got.Lo < 1e-9 && got.Hi-want.Hi < 1e-9
}

// A run rounds, so it keeps points that exact arithmetic would not: -1 + 1e20 is
// 1e20. They are not lost.
func TestContractForgivesRounding(t *testing.T) {
	b := NewBuilder()
	x, y := b.Slot("x"), b.Slot("y")
	for name, c := range map[string]struct {
		keep Node
		x, y float64
	}{
		"sum":        {b.Apply(lang.GreaterEq, b.Apply(lang.Add, x, y), b.Const(1e20)), -1, 1e20},
		"difference": {b.Apply(lang.GreaterEq, b.Apply(lang.Sub, y, x), b.Const(1e20)), 1, 1e20},
		"product":    {b.Apply(lang.GreaterEq, b.Apply(lang.Mul, x, y), b.Const(0)), -1e-200, 1e-200},
		"quotient":   {b.Apply(lang.GreaterEq, b.Apply(lang.Div, x, y), b.Const(0)), -1e-200, 1e200},
		"square":     {b.Apply(lang.LessEq, b.Apply(lang.Mul, x, x), b.Const(0)), 1e-200, 0},
		"root":       {b.Apply(lang.GreaterEq, b.Apply(lang.Sqrt, x), b.Const(math.Sqrt2)), 2, 0},
	} {
		p := b.Build()
		reg, box := make([]float64, p.Len()), ranges(p)
		p.Start(reg)
		reg[x], reg[y] = c.x, c.y
		if p.Run(reg); !p.Keeps(reg, c.keep) {
			t.Errorf("%s: a run does not keep the point; the test is wrong", name)
		}
		p.StartI(box)
		box[x], box[y] = interval.Of(-5, 5), interval.Point(c.y)
		if p.Contract(box, []Node{c.keep}) || !box[x].Has(c.x) {
			t.Errorf("%s: left %v, want %v in it", name, box[x], c.x)
		}
	}
}

// A bush story: which metals are left when iron is out and the bush needs a wall.
func TestContractNarrowsWords(t *testing.T) {
	b := NewBuilder()
	metal, pressed, wall := b.Slot("metal"), b.Slot("pressed"), b.Slot("wall")
	b.Mark(metal, lang.Word)
	b.Mark(pressed, lang.YesNo)
	notIron := b.Apply(lang.NotEqual, metal, b.Const(0))
	steel := b.Apply(lang.Equal, metal, b.Const(1))
	least := b.Apply(lang.Cond, steel, b.Const(0.001), b.Const(0.002))
	thick := b.Apply(lang.GreaterEq, wall, least)
	bronzeOnly := b.Apply(lang.Or, b.Apply(lang.Not, pressed), b.Apply(lang.Equal, metal, b.Const(2)))
	afterIron := b.Apply(lang.Greater, metal, b.Const(0.5))
	p := b.Build()
	start := func() []interval.I {
		box := ranges(p)
		p.StartI(box)
		box[metal], box[pressed], box[wall] = interval.Of(0, 2), either, interval.Of(0.0012, 0.0015)
		return box
	}
	box := start()
	if p.Contract(box, []Node{notIron}) || box[metal] != interval.Of(1, 2) {
		t.Errorf("without iron %v is left, want steel and bronze", box[metal])
	}
	box = start()
	if p.Contract(box, []Node{notIron, thick}) || box[metal] != interval.Of(1, 1) {
		t.Errorf("a thin wall leaves %v, want steel", box[metal])
	}
	if p.Contract(box, []Node{bronzeOnly}) || box[pressed] != no {
		t.Errorf("steel leaves pressed at %v, want no", box[pressed])
	}
	box = start()
	if p.Contract(box, []Node{afterIron}) || box[metal] != interval.Of(1, 2) {
		t.Errorf("a code over 0.5 leaves %v, want whole codes", box[metal])
	}
	box = start()
	box[pressed] = yes
	if !p.Contract(box, []Node{thick, bronzeOnly, notIron}) {
		t.Errorf("a pressed bush of thin bronze is left: %v", box[metal])
	}
}
