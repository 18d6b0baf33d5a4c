package tape

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

func TestSameExpressionIsOneNode(t *testing.T) {
	b := NewBuilder()
	x, y := b.Slot("x"), b.Slot("y")
	sum := b.Apply(lang.Add, x, y)
	same := map[string]struct{ got, want Node }{
		"slot":          {b.Slot("x"), x},
		"y + x":         {b.Apply(lang.Add, y, x), sum},
		"(x + y) + x":   {b.Apply(lang.Add, x, y, x), b.Apply(lang.Add, sum, x)},
		"x*x is x^2":    {b.Apply(lang.Mul, x, x), b.Apply(lang.Pow, x, b.Const(2))},
		"x + 0":         {b.Apply(lang.Add, x, b.Const(0)), x},
		"1*x":           {b.Apply(lang.Mul, b.Const(1), x), x},
		"x/1":           {b.Apply(lang.Div, x, b.Const(1)), x},
		"--x":           {b.Apply(lang.Neg, b.Apply(lang.Neg, x)), x},
		"min(x, x)":     {b.Apply(lang.Min, x, x), x},
		"2*3":           {b.Apply(lang.Mul, b.Const(2), b.Const(3)), b.Const(6)},
		"2 < 3":         {b.Apply(lang.Less, b.Const(2), b.Const(3)), b.YesNo(true)},
		"yes and x < y": {b.Apply(lang.And, b.YesNo(true), b.Apply(lang.Less, x, y)), b.Apply(lang.Less, x, y)},
		"yes or x < y":  {b.Apply(lang.Or, b.Apply(lang.Less, x, y), b.YesNo(true)), b.YesNo(true)},
		"yes ? x : y":   {b.Apply(lang.Cond, b.YesNo(true), x, y), x},
		"no ? x : y":    {b.Apply(lang.Cond, b.YesNo(false), x, y), y},
		"heat(x)":       {b.Call(heat, x), b.Call(heat, x)},
		"heat(2)":       {b.Call(heat, b.Const(2)), b.Const(math.Exp(2))},
	}
	for name, c := range same {
		if c.got != c.want {
			t.Errorf("%s is node %d, want %d", name, c.got, c.want)
		}
	}
	for name, c := range map[string][2]Node{
		"x - y and y - x":       {b.Apply(lang.Sub, x, y), b.Apply(lang.Sub, y, x)},
		"0 and no":              {b.Const(0), b.YesNo(false)},
		"0*x, NaN where x is":   {b.Apply(lang.Mul, x, b.Const(0)), b.Const(0)},
		"x - x, NaN where x is": {b.Apply(lang.Sub, x, x), b.Const(0)},
		"heat and ripple":       {b.Call(heat, x), b.Call(ripple, x)},
	} {
		if c[0] == c[1] {
			t.Errorf("%s are one node", name)
		}
	}
	if err := b.Err(); err != nil {
		t.Error(err)
	}
}

// A constant that is no number is told, kept, and NaN in every run; one that a
// constant shuts off is never made.
func TestConstantsThatAreNoNumber(t *testing.T) {
	zero, one := lit(0), lit(1)
	at := fault.Place{File: "bush.yaml", Line: 3, Column: 9}
	div := &lang.Expr{Op: lang.Div, Args: []*lang.Expr{one, zero}, Type: number, At: at}
	lowered := map[string]*lang.Expr{
		"1 / 0 is NaN":             div,
		"sqrt(-1) is NaN":          {Op: lang.Sqrt, Args: []*lang.Expr{lit(-1)}, Type: number, At: at},
		"constant +Inf":            {Op: lang.Const, Value: math.Inf(1), Type: number, At: at},
		"1e+308 * 10 is +Inf":      {Op: lang.Mul, Args: []*lang.Expr{lit(1e308), lit(10)}, Type: number, At: at},
		"heat(4) is NaN":           {Op: lang.Call, Func: funcOf(heat), Args: []*lang.Expr{lit(4)}, Type: number, At: at},
		"exponent is no constant":  {Op: lang.Pow, Args: []*lang.Expr{one, {Op: lang.Name, Name: "x", Type: number}}, At: at},
		"plate is a row":           {Op: lang.Name, Name: "plate", Type: lang.Type{Kind: lang.Row}, At: at},
		"ghost stands for nothing": {Op: lang.Name, Name: "ghost", Type: number, At: at},
	}
	for says, e := range lowered {
		b := NewBuilder()
		x := b.Slot("x")
		n, err := b.Lower(e, func(name string) (Node, error) {
			if name == "ghost" {
				return 0, nil
			}
			return x, nil
		})
		var f fault.Fault
		if n != 0 || !errors.As(err, &f) || !strings.Contains(f.Says, says) || f.At != at {
			t.Errorf("lowered to node %d with %v, want a fault at %v that says %q", n, err, at, says)
		}
	}
	b := NewBuilder()
	bad := b.Apply(lang.Div, b.Const(1), b.Const(0))
	if b.Err() == nil || !strings.Contains(b.Err().Error(), "1 / 0") {
		t.Errorf("1/0 leaves the error %v", b.Err())
	}
	after := b.Apply(lang.Add, bad, b.Const(1))
	p := b.Build()
	reg, box := make([]float64, p.Len()), ranges(p)
	p.Start(reg)
	p.Run(reg)
	p.StartI(box)
	p.Enclose(box)
	if !math.IsNaN(reg[after]) || !box[after].Empty() || !p.Contract(box, []Node{after}) {
		t.Errorf("1/0 + 1 runs to %v in %v; want NaN, nothing, and kept nowhere", reg[after], box[after])
	}
	shut := &lang.Expr{Op: lang.Cond, Type: number, Args: []*lang.Expr{
		{Op: lang.Or, Type: yesNo, Args: []*lang.Expr{{Op: lang.Equal, Type: yesNo, Args: []*lang.Expr{zero, zero}}, {Op: lang.Less, Type: yesNo, Args: []*lang.Expr{div, one}}}},
		lit(2), div}}
	b = NewBuilder()
	if n, err := b.Lower(shut, nil); err != nil || n != b.Const(2) {
		t.Errorf("a branch shut off gives node %d and %v, want the constant 2", n, err)
	}
}

// An error of the resolver is kept if it has a place, and given one if not.
func TestResolverErrors(t *testing.T) {
	e := &lang.Expr{Op: lang.Low, Args: []*lang.Expr{{Op: lang.Name, Name: "wear", Type: lang.Type{Kind: lang.RangeKind}}}, Type: number, At: fault.Place{File: "bush.yaml", Line: 2, Column: 1}}
	own := fault.Fault{At: fault.Place{File: "hub.yaml", Line: 9, Column: 1}, Says: "wear has no low end"}
	for _, err := range []error{own, errors.New("wear has no low end")} {
		_, got := NewBuilder().Lower(e, func(name string) (Node, error) {
			if name != "low(wear)" {
				t.Errorf("asked for %q, want low(wear)", name)
			}
			return 0, err
		})
		var f fault.Fault
		if !errors.As(got, &f) || f.Says != "wear has no low end" || f.At.Line == 0 {
			t.Errorf("%v became %v", err, got)
		}
	}
}

// A row passes its column to a call, through a choice between rows too.
func TestRowsPassTheirColumn(t *testing.T) {
	row := lang.Type{Kind: lang.Row, Table: "materials"}
	f := funcOf(heat)
	f.Args[0] = lang.FuncArg{Type: row, Column: "growth"}
	name := func(s string) *lang.Expr { return &lang.Expr{Op: lang.Name, Name: s, Type: row} }
	sleeved := &lang.Expr{Op: lang.Name, Name: "sleeved", Type: yesNo}
	e := &lang.Expr{Op: lang.Call, Func: f, Type: number, Args: []*lang.Expr{{Op: lang.Cond, Type: row, Args: []*lang.Expr{sleeved, name("sleeve"), name("shaft")}}}}
	b := NewBuilder()
	n, err := b.Lower(e, func(name string) (Node, error) { return b.Slot(name), nil })
	if err != nil {
		t.Fatal(err)
	}
	p := b.Build()
	if got := p.Formula(n, nil); got != "heat(sleeved ? sleeve.growth : shaft.growth)" {
		t.Errorf("lowered to %s", got)
	}
	if s, _ := p.Slot("sleeved"); p.Kind(s) != lang.YesNo {
		t.Error("a name of a yes-no did not mark its slot")
	}
}

func TestBuiltAgainNodesKeepTheirNumbers(t *testing.T) {
	b := NewBuilder()
	x := b.Slot("x")
	double := b.Apply(lang.Mul, x, b.Const(2))
	early := b.Build()
	y := b.Slot("y")
	later := b.Build()
	sum := b.Apply(lang.Add, double, b.Call(heat, y))
	last := b.Build()
	if _, ok := early.Slot("y"); ok || len(early.Slots()) != 1 || early.Len() != int(double)+1 {
		t.Error("a program changed after it was built")
	}
	if n, ok := later.Slot("x"); !ok || n != x || later.SlotName(y) != "y" || later.SlotName(double) != "" {
		t.Error("a slot changed its number or name")
	}
	if again := b.Apply(lang.Mul, x, b.Const(2)); again != double {
		t.Errorf("2x is node %d after building, was %d", again, double)
	}
	reg := make([]float64, last.Len())
	last.Start(reg)
	reg[x], reg[y] = 3, 0
	if last.Run(reg); reg[sum] != 7 {
		t.Errorf("2*3 + heat(0) is %v", reg[sum])
	}
	if !slices.Equal(last.Uses(sum), []Node{x, y}) || !slices.Equal(last.Uses(double), []Node{x}) || last.Uses(b.Const(2)) != nil {
		t.Errorf("uses are %v and %v", last.Uses(sum), last.Uses(double))
	}
}

func TestOnlyRunsWhatTheRootsNeed(t *testing.T) {
	programs(t, 200, func(d drawer, p *Program, roots []Node) {
		if len(roots) == 0 {
			return
		}
		root := roots[d.IntN(len(roots))]
		only := p.Only(root)
		box, part := ranges(p), ranges(only)
		d.box(p, box)
		copy(part, box)
		p.Enclose(box)
		only.Enclose(part)
		reg, short := make([]float64, p.Len()), make([]float64, only.Len())
		p.Start(reg)
		only.Start(short)
		d.point(p, box, reg)
		for _, s := range p.Slots() {
			short[s] = reg[s]
		}
		p.Run(reg)
		only.Run(short)
		need := needed(p, root)
		for n := 1; n < len(p.nodes); n++ {
			runs := slices.ContainsFunc(only.steps, func(s step) bool { return s.dst == Node(n) })
			if inner := p.nodes[n].op != lang.Const && p.nodes[n].op != lang.Name; runs != (need[n] && inner) {
				t.Fatalf("node %d: runs %v, needed %v", n, runs, need[n])
			}
			if need[n] && (!alike(reg[n], short[n], 0) || box[n] != part[n]) {
				t.Fatalf("%s is %v in %v, alone %v in %v", p.Formula(Node(n), nil), reg[n], box[n], short[n], part[n])
			}
		}
	})
}

func TestOpaqueAndBlind(t *testing.T) {
	b := NewBuilder()
	x := b.Slot("x")
	b.Call(ripple, x)
	b.Call(heat, x)
	b.Call(heat, b.Apply(lang.Neg, x))
	b.Call(ringHoop, x, b.Const(1))
	p := b.Build()
	var opaque []string
	for _, k := range p.Opaque() {
		opaque = append(opaque, k.Name)
	}
	if !slices.Equal(opaque, []string{"ripple", "heat", "ring_hoop"}) {
		t.Errorf("opaque are %v", opaque)
	}
	if blind := p.Blind(); len(blind) != 1 || blind[0].Name != "ripple" {
		t.Errorf("blind are %v, want ripple alone", blind)
	}
}

func TestFormula(t *testing.T) {
	b := NewBuilder()
	d, D, p0, f := b.Slot("bore"), b.Slot("outside"), b.Slot("pressure"), b.Slot("sleeved")
	b.Mark(f, lang.YesNo)
	wall := b.Apply(lang.Div, b.Apply(lang.Sub, D, d), b.Const(2))
	sum := b.Apply(lang.Add, D, d)
	cases := map[string]Node{
		"(outside - bore) / 2":                                 wall,
		"outside - (bore - pressure)":                          b.Apply(lang.Sub, D, b.Apply(lang.Sub, d, p0)),
		"outside - bore - pressure":                            b.Apply(lang.Sub, b.Apply(lang.Sub, D, d), p0),
		"outside / (bore / pressure)":                          b.Apply(lang.Div, D, b.Apply(lang.Div, d, p0)),
		"outside * (outside + bore)":                           b.Apply(lang.Mul, D, sum),
		"(outside + bore)^2":                                   b.Apply(lang.Mul, sum, sum),
		"-outside^2":                                           b.Apply(lang.Neg, b.Apply(lang.Mul, D, D)),
		"(-outside)^3":                                         b.Apply(lang.Pow, b.Apply(lang.Neg, D), b.Const(3)),
		"bore^(-1)":                                            b.Apply(lang.Pow, d, b.Const(-1)),
		"bore <= outside and not(sleeved)":                     b.Apply(lang.And, b.Apply(lang.LessEq, d, D), b.Apply(lang.Not, f)),
		"(bore < outside or sleeved) and bore > 1":             b.Apply(lang.And, b.Apply(lang.Or, b.Apply(lang.Less, d, D), f), b.Apply(lang.Greater, d, b.Const(1))),
		"sleeved ? bore : outside":                             b.Apply(lang.Cond, f, d, D),
		"(sleeved ? bore : outside) + pressure":                b.Apply(lang.Add, b.Apply(lang.Cond, f, d, D), p0),
		"min(bore, max(outside, pressure)) * heat(sqrt(bore))": b.Apply(lang.Mul, b.Apply(lang.Min, d, b.Apply(lang.Max, D, p0)), b.Call(heat, b.Apply(lang.Sqrt, d))),
	}
	prog := b.Build()
	for want, n := range cases {
		if got := prog.Formula(n, nil); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	say := func(n Node) string {
		if n == wall {
			return "wall"
		}
		return ""
	}
	thin := b.Apply(lang.Less, wall, b.Const(0.002))
	if got := b.Build().Formula(thin, say); got != "wall < 0.002" {
		t.Errorf("named: %s", got)
	}
	if got := prog.Formula(wall, say); got != "(outside - bore) / 2" {
		t.Errorf("the root itself is written out, got %s", got)
	}
}

// Defined is sure only where no point of the box is NaN.
func TestDefined(t *testing.T) {
	sure, unsure := 0, 0
	programs(t, 1500, func(d drawer, p *Program, roots []Node) {
		box, reg := ranges(p), make([]float64, p.Len())
		p.Start(reg)
		for _, root := range roots {
			d.box(p, box)
			p.Enclose(box)
			if !p.Defined(box, root) {
				unsure++
				continue
			}
			sure++
			for range 20 {
				d.point(p, box, reg)
				if p.Run(reg); math.IsNaN(reg[root]) || math.IsInf(reg[root], 0) {
					t.Fatalf("%s is said to be a number, but is %v", p.Formula(root, nil), reg[root])
				}
			}
		}
	})
	if sure < 2000 || unsure < 1000 {
		t.Errorf("sure of %d, unsure of %d: too few to mean anything", sure, unsure)
	}
	b := NewBuilder()
	x := b.Slot("x")
	root := b.Apply(lang.Cond, b.Apply(lang.Greater, x, b.Const(0)), b.Apply(lang.Sqrt, x), b.Apply(lang.Div, x, b.Const(3)))
	p := b.Build()
	box := ranges(p)
	p.StartI(box)
	for r, want := range map[interval.I]bool{{Lo: 1, Hi: 2}: true, {Lo: -2, Hi: -1}: true, {Lo: -1, Hi: 1}: false} {
		box[x] = r
		if p.Enclose(box); p.Defined(box, root) != want {
			t.Errorf("over %v: defined is %v", r, !want)
		}
	}
}

// A kernel that bounds itself may still refuse parts that cannot be.
func TestDefinedAsksTheKernel(t *testing.T) {
	k := ringHoop
	k.Enclose = func([]interval.I) interval.I { return interval.Of(1, 1000) }
	b := NewBuilder()
	outer, inner := b.Slot("outer"), b.Slot("inner")
	root := b.Call(k, outer, inner)
	p := b.Build()
	box := ranges(p)
	for r, want := range map[interval.I]bool{{Lo: 3, Hi: 4}: true, {Lo: 1.5, Hi: 4}: false, {Lo: 5, Hi: 9}: false} {
		box[outer], box[inner] = r, interval.Of(1, 2)
		if p.Enclose(box); p.Defined(box, root) != want {
			t.Errorf("outer %v around inner 1 to 2: defined is %v", r, !want)
		}
	}
}

func TestMisuseIsRefused(t *testing.T) {
	b := NewBuilder()
	x := b.Slot("x")
	for name, misuse := range map[string]func(){
		"too few arguments":    func() { b.Apply(lang.Sub, x) },
		"too many":             func() { b.Apply(lang.Neg, x, x) },
		"a slot is no op":      func() { b.Apply(lang.Name, x) },
		"node of none":         func() { b.Apply(lang.Neg, 0) },
		"node of another":      func() { b.Apply(lang.Neg, 99) },
		"exponent that varies": func() { b.Apply(lang.Pow, x, x) },
		"call short of one":    func() { b.Call(ringHoop, x) },
	} {
		func() {
			defer func() {
				if says, _ := recover().(string); !strings.HasPrefix(says, "tape: ") {
					t.Errorf("%s: panicked with %q", name, says)
				}
			}()
			misuse()
			t.Errorf("%s was taken", name)
		}()
	}
}

// After a full run, running just what moved gives what a full run gives.
func TestMovedRunsWhatOthersLeave(t *testing.T) {
	ran, skipped := 0, 0
	programs(t, 200, func(d drawer, p *Program, _ []Node) {
		box := ranges(p)
		d.box(p, box)
		reg, part := make([]float64, p.Len()), make([]float64, p.Len())
		p.Start(reg)
		p.Start(part)
		d.point(p, box, part)
		p.Run(part)
		if len(p.Slots()) == 0 {
			return
		}
		move := p.Slots()[:1]
		d.point(p, box, reg)
		for _, s := range p.Slots()[1:] {
			reg[s] = part[s]
		}
		part[move[0]] = reg[move[0]]
		moved := p.Moved(move)
		p.Run(reg)
		moved.Run(part)
		ran, skipped = ran+len(moved.steps), skipped+len(p.steps)-len(moved.steps)
		for n := range p.nodes {
			if !alike(reg[n], part[n], 0) {
				t.Fatalf("%s is %v, moved %v", p.Formula(Node(n), nil), reg[n], part[n])
			}
		}
	})
	if ran == 0 || skipped == 0 {
		t.Errorf("%d steps ran and %d did not: nothing was put to the test", ran, skipped)
	}
}

// needed marks what a node rests on, from the top down: nodes come after their
// arguments.
func needed(p *Program, root Node) []bool {
	need := make([]bool, len(p.nodes))
	need[root] = true
	for n := len(need) - 1; n > 0; n-- {
		if need[n] {
			for _, a := range p.args(Node(n)) {
				need[a] = true
			}
		}
	}
	need[0] = false
	return need
}
