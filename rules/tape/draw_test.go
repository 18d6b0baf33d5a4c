package tape

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/rules/lang"
)

// The kernels of these tests stand for the kinds there are: known by its trends,
// by an enclosure of its own, by nothing; the first has no slopes.
var (
	ringHoop = kernel.Kernel{
		Name: "ring_hoop",
		Args: []kernel.Arg{{Name: "outer", Range: interval.Of(1, 6), Trend: -1}, {Name: "inner", Range: interval.Of(0.2, 4), Trend: 1}},
		Value: kernel.Within([]kernel.Arg{{Range: interval.Of(1, 6)}, {Range: interval.Of(0.2, 4)}}, func(x []float64) float64 {
			if x[0] <= x[1] {
				return math.NaN()
			}
			return 1 + 2/(x[0]*x[0]/(x[1]*x[1])-1)
		}),
	}
	heat = kernel.Kernel{
		Name:  "heat",
		Args:  []kernel.Arg{{Name: "x", Range: interval.Of(-3, 3)}},
		Value: kernel.Within([]kernel.Arg{{Range: interval.Of(-3, 3)}}, func(x []float64) float64 { return math.Exp(x[0]) }),
		Slopes: func(x, out []float64) {
			out[0] = math.Exp(x[0])
		},
		Enclose: func(x []interval.I) interval.I {
			return interval.Of(math.Exp(x[0].Lo)*(1-1e-14), math.Exp(x[0].Hi)*(1+1e-14))
		},
	}
	ripple = kernel.Kernel{
		Name:  "ripple",
		Args:  []kernel.Arg{{Name: "x", Range: interval.Of(-4, 4)}},
		Value: kernel.Within([]kernel.Arg{{Range: interval.Of(-4, 4)}}, func(x []float64) float64 { return math.Sin(x[0]) }),
		Slopes: func(x, out []float64) {
			out[0] = math.Cos(x[0])
		},
	}
	number = lang.Type{Kind: lang.NumberKind}
	yesNo  = lang.Type{Kind: lang.YesNo}
	metals = &lang.Words{Name: "metals", List: []string{"cast iron", "steel", "bronze"}}
	word   = lang.Type{Kind: lang.Word, Words: metals}
)

func funcOf(k kernel.Kernel) *lang.Func {
	f := &lang.Func{Kernel: k, Result: number}
	for range k.Args {
		f.Args = append(f.Args, lang.FuncArg{Type: number})
	}
	return f
}

const numbers, facts = 4, 2 // slots x0..x3, f0 and f1; and one word, metal

// drawer makes expressions and boxes at random, the same in every run.
type drawer struct{ *rand.Rand }

func draw(seed uint64) drawer { return drawer{rand.New(rand.NewPCG(seed, 7))} }

func lit(v float64) *lang.Expr { return &lang.Expr{Op: lang.Const, Value: v, Type: number} }

func (d drawer) number(depth int) *lang.Expr {
	if depth == 0 {
		if d.IntN(5) == 0 {
			return lit([]float64{0, 1, 2, 4, -1.5, 0.3}[d.IntN(6)])
		}
		return &lang.Expr{Op: lang.Name, Name: fmt.Sprintf("x%d", d.IntN(numbers)), Type: number}
	}
	ops := []lang.Op{lang.Neg, lang.Add, lang.Add, lang.Sub, lang.Sub, lang.Mul, lang.Mul, lang.Div, lang.Div, lang.Pow, lang.Cond, lang.Min, lang.Max, lang.Abs, lang.Sqrt, lang.Call}
	e := &lang.Expr{Op: ops[d.IntN(len(ops))], Type: number}
	count := 2
	switch e.Op {
	case lang.Neg, lang.Abs, lang.Sqrt:
		count = 1
	case lang.Min, lang.Max:
		count = 2 + d.IntN(2)
	case lang.Pow:
		powers := []float64{2, 3, 4, 5, -1, -2, -3, 0.5, 1.5, 1. / 3, -0.5}
		e.Args = []*lang.Expr{d.number(depth - 1), lit(powers[d.IntN(len(powers))])}
		return e
	case lang.Cond:
		e.Args = []*lang.Expr{d.yesNo(depth - 1)}
	case lang.Call:
		e.Func = funcOf([]kernel.Kernel{ringHoop, heat, ripple}[d.IntN(3)])
		count = len(e.Func.Args)
	}
	for range count {
		e.Args = append(e.Args, d.number(depth-1))
	}
	return e
}

func (d drawer) yesNo(depth int) *lang.Expr {
	e := &lang.Expr{Type: yesNo}
	if depth == 0 {
		if d.IntN(2) == 0 {
			return &lang.Expr{Op: lang.Name, Name: fmt.Sprintf("f%d", d.IntN(facts)), Type: yesNo}
		}
		e.Op = []lang.Op{lang.Equal, lang.NotEqual}[d.IntN(2)]
		metal := &lang.Expr{Op: lang.Name, Name: "metal", Type: word}
		e.Args = []*lang.Expr{metal, {Op: lang.Const, Value: float64(d.IntN(3)), Type: word}}
		return e
	}
	ops := []lang.Op{lang.LessEq, lang.GreaterEq, lang.Less, lang.Greater, lang.And, lang.Or, lang.Not, lang.Cond, lang.Equal}
	e.Op = ops[d.IntN(len(ops))]
	part := d.yesNo
	count := 2
	switch e.Op {
	case lang.LessEq, lang.GreaterEq, lang.Less, lang.Greater:
		part = d.number
	case lang.And, lang.Or:
		count = 2 + d.IntN(2)
	case lang.Not:
		count = 1
	case lang.Cond:
		count = 3
	}
	for range count {
		e.Args = append(e.Args, part(depth-1))
	}
	return e
}

// program lowers expressions; those that hold a constant like 1/0 are left out.
func program(t testing.TB, es ...*lang.Expr) (*Program, []Node) {
	t.Helper()
	b := NewBuilder()
	for i := range numbers {
		b.Slot(fmt.Sprintf("x%d", i))
	}
	for i := range facts {
		b.Mark(b.Slot(fmt.Sprintf("f%d", i)), lang.YesNo)
	}
	b.Mark(b.Slot("metal"), lang.Word)
	var roots []Node
	for _, e := range es {
		if n, err := b.Lower(e, func(name string) (Node, error) { return b.Slot(name), nil }); err == nil {
			roots = append(roots, n)
		}
	}
	if err := b.Err(); err != nil {
		t.Fatal(err)
	}
	return b.Build(), roots
}

// programs draws many programs, with number roots and yes-no roots.
func programs(t testing.TB, count int, each func(d drawer, p *Program, roots []Node)) {
	t.Helper()
	for seed := range uint64(count) {
		d := draw(seed)
		es := []*lang.Expr{d.number(1), d.number(2), d.number(3), d.yesNo(2), d.yesNo(3), d.number(4)}
		p, roots := program(t, es...)
		each(d, p, roots)
	}
}

// box draws ranges for the slots: wide, narrow or a point.
func (d drawer) box(p *Program, reg []interval.I) {
	p.StartI(reg)
	for _, s := range p.Slots() {
		switch {
		case p.Kind(s) == lang.YesNo:
			reg[s] = []interval.I{yes, no, either}[d.IntN(3)]
		case p.Kind(s) == lang.Word:
			lo := d.IntN(3)
			reg[s] = interval.Of(float64(lo), float64(lo+d.IntN(3-lo)))
		default:
			half := []float64{0, 0.01, 0.5, 3}[d.IntN(4)]
			mid := d.Float64()*8 - 4
			if d.IntN(4) == 0 {
				mid = math.Round(mid)
			}
			reg[s] = interval.I{Lo: mid - half, Hi: mid + half}
		}
	}
}

// point draws a value in each slot's range, often at an edge.
func (d drawer) point(p *Program, box []interval.I, reg []float64) {
	for _, s := range p.Slots() {
		r := box[s]
		switch {
		case d.IntN(8) == 0:
			reg[s] = r.Lo
		case d.IntN(7) == 0:
			reg[s] = r.Hi
		default:
			reg[s] = min(r.Lo+d.Float64()*(r.Hi-r.Lo), r.Hi)
		}
		if p.Kind(s) != lang.NumberKind {
			reg[s] = math.Round(reg[s])
		}
	}
}
