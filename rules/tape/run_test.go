package tape

import (
	"math"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

var nan = math.NaN()

// tree is the language's meaning written a second time, straight over the
// expression and without the tape.
func tree(e *lang.Expr, name func(string) float64) float64 {
	at := func(i int) float64 { return tree(e.Args[i], name) }
	truth := func(b bool, of ...float64) float64 {
		for _, v := range of {
			if math.IsNaN(v) {
				return nan
			}
		}
		if b {
			return 1
		}
		return 0
	}
	chain := func(f func(a, b float64) float64) float64 {
		v := at(0)
		for i := range e.Args[1:] {
			v = f(v, at(i+1))
		}
		return v
	}
	switch e.Op {
	case lang.Const:
		return e.Value
	case lang.Name:
		return name(e.Name)
	case lang.Neg:
		return -at(0)
	case lang.Add:
		return at(0) + at(1)
	case lang.Sub:
		return at(0) - at(1)
	case lang.Mul:
		return at(0) * at(1)
	case lang.Div:
		if at(1) == 0 {
			return nan
		}
		return at(0) / at(1)
	case lang.Pow:
		if v := math.Pow(at(0), at(1)); !math.IsInf(v, 0) {
			return v
		}
		return nan
	case lang.LessEq:
		return truth(at(0) <= at(1), at(0), at(1))
	case lang.GreaterEq:
		return truth(at(0) >= at(1), at(0), at(1))
	case lang.Less:
		return truth(at(0) < at(1), at(0), at(1))
	case lang.Greater:
		return truth(at(0) > at(1), at(0), at(1))
	case lang.Equal:
		return truth(at(0) == at(1), at(0), at(1))
	case lang.NotEqual:
		return truth(at(0) != at(1), at(0), at(1))
	case lang.And:
		return chain(func(a, b float64) float64 {
			if a == 0 || b == 0 {
				return 0
			}
			return truth(true, a, b)
		})
	case lang.Or:
		return chain(func(a, b float64) float64 {
			if a == 1 || b == 1 {
				return 1
			}
			return truth(false, a, b)
		})
	case lang.Not:
		return truth(at(0) == 0, at(0))
	case lang.Cond:
		switch at(0) {
		case 1:
			return at(1)
		case 0:
			return at(2)
		}
		return nan
	case lang.Min:
		return chain(math.Min)
	case lang.Max:
		return chain(math.Max)
	case lang.Abs:
		return math.Abs(at(0))
	case lang.Sqrt:
		return math.Sqrt(at(0))
	case lang.Call:
		var x []float64
		for i := range e.Args {
			x = append(x, at(i))
		}
		return e.Func.Kernel.Value(x)
	}
	panic("an op the test does not know")
}

func alike(a, b, rel float64) bool {
	return a == b || math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) <= rel*max(math.Abs(a), math.Abs(b))
}

// A run gives what the expression says, to the rounding of a power.
func TestRunSaysWhatTheExpressionSays(t *testing.T) {
	checked, defined := 0, 0
	for seed := range uint64(3000) {
		d := draw(seed)
		e := d.number(1 + int(seed%4))
		if seed%3 == 0 {
			e = d.yesNo(1 + int(seed%4))
		}
		p, roots := program(t, e)
		if len(roots) == 0 {
			continue
		}
		reg, box := make([]float64, p.Len()), ranges(p)
		p.Start(reg)
		for range 20 {
			d.box(p, box)
			d.point(p, box, reg)
			p.Run(reg)
			want := tree(e, func(name string) float64 { n, _ := p.Slot(name); return reg[n] })
			// a power's last digit may tip a comparison or nearly cancel
			if got := reg[roots[0]]; !alike(got, want, 1e-9) {
				t.Fatalf("seed %d: %s is %v, want %v", seed, p.Formula(roots[0], nil), got, want)
			} else if checked++; !math.IsNaN(got) {
				defined++
			}
		}
	}
	if checked < 40000 || defined < checked/2 {
		t.Errorf("only %d of %d runs gave a number: too few to mean anything", defined, checked)
	}
}

func TestBlockIsRunBitForBit(t *testing.T) {
	programs(t, 300, func(d drawer, p *Program, _ []Node) {
		block, reg, box := make([][Lanes]float64, p.Len()), make([]float64, p.Len()), ranges(p)
		p.StartBlock(block)
		p.Start(reg)
		lanes := make([][]float64, Lanes)
		for i := range Lanes {
			if i%8 == 0 {
				d.box(p, box)
			}
			d.point(p, box, reg)
			for _, s := range p.Slots() {
				block[s][i] = reg[s]
			}
			p.Run(reg)
			lanes[i] = append([]float64(nil), reg...)
		}
		p.RunBlock(block)
		for i, want := range lanes {
			for n := 1; n < len(p.nodes); n++ {
				got := block[n][i]
				if math.Float64bits(got) != math.Float64bits(want[n]) && !(math.IsNaN(got) && math.IsNaN(want[n])) {
					t.Fatalf("lane %d of %s is %v, a run gives %v", i, p.Formula(Node(n), nil), got, want[n])
				}
			}
		}
	})
}

// What is no number decides nothing, whichever way round it is asked.
func TestNoNumberDecidesNothing(t *testing.T) {
	b := NewBuilder()
	x, y, zero, one := b.Slot("x"), b.Slot("y"), b.Const(0), b.Const(1)
	bad := b.Apply(lang.Div, x, y)
	over, under := b.Apply(lang.Greater, bad, one), b.Apply(lang.LessEq, bad, one)
	cases := map[string]struct {
		node Node
		want float64
	}{
		"x/0":                   {bad, nan},
		"x/0 > 1":               {over, nan},
		"not (x/0 > 1)":         {b.Apply(lang.Not, over), nan},
		"x/0 <= 1":              {under, nan},
		"x/0 == x/0":            {b.Apply(lang.Equal, bad, bad), nan},
		"x/0 != 1":              {b.Apply(lang.NotEqual, bad, one), nan},
		"no and x/0 > 1":        {b.Apply(lang.And, b.Apply(lang.Less, x, zero), over), 0},
		"x/0 > 1 and yes":       {b.Apply(lang.And, over, b.Apply(lang.Greater, x, zero)), nan},
		"x/0 > 1 or yes":        {b.Apply(lang.Or, over, b.Apply(lang.Greater, x, zero)), 1},
		"x/0 > 1 or no":         {b.Apply(lang.Or, over, b.Apply(lang.Less, x, zero)), nan},
		"x/0 > 1 ? 1 : x":       {b.Apply(lang.Cond, over, one, x), nan},
		"y == 0 ? x : x/0":      {b.Apply(lang.Cond, b.Apply(lang.Equal, y, zero), x, bad), 3},
		"min(x/0, 1)":           {b.Apply(lang.Min, bad, one), nan},
		"max(1, x/0)":           {b.Apply(lang.Max, one, bad), nan},
		"(x/0)^0":               {b.Apply(lang.Pow, bad, zero), nan},
		"y^-1":                  {b.Apply(lang.Pow, y, b.Const(-1)), nan},
		"root of a negative":    {b.Apply(lang.Sqrt, b.Apply(lang.Neg, x)), nan},
		"power of a negative":   {b.Apply(lang.Pow, b.Apply(lang.Neg, x), b.Const(1.5)), nan},
		"beyond kernel's reach": {b.Call(heat, b.Apply(lang.Mul, x, b.Const(2))), nan},
	}
	p := b.Build()
	reg := make([]float64, p.Len())
	p.Start(reg)
	reg[x], reg[y] = 3, 0
	p.Run(reg)
	box := ranges(p)
	p.StartI(box)
	box[x], box[y] = interval.Point(3), interval.Point(0)
	p.Enclose(box)
	for name, c := range cases {
		if got := reg[c.node]; !alike(got, c.want, 0) {
			t.Errorf("%s is %v, want %v", name, got, c.want)
		}
		if math.IsNaN(c.want) != box[c.node].Empty() || !math.IsNaN(c.want) && !box[c.node].Has(c.want) {
			t.Errorf("%s is enclosed by %v, want %v", name, box[c.node], c.want)
		}
		if math.IsNaN(c.want) && (p.Keeps(reg, c.node) || Yes(box[c.node]) || No(box[c.node])) {
			t.Errorf("%s decides something", name)
		}
	}
}
