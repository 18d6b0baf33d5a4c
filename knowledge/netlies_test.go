package knowledge_test

import (
	"strings"
	"testing"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// The net is of use only if it catches something: each lie below is one that a
// program could tell.
func TestTheNetCatchesLies(t *testing.T) {
	base := shipped(t)
	square := kernel.Kernel{
		Name: "square", Args: []kernel.Arg{{Name: "x", Range: interval.Of(1, 10)}},
		Value:   func(x []float64) float64 { return x[0] * x[0] },
		Slopes:  func(x, out []float64) { out[0] = 2 * x[0] },
		Enclose: func(x []interval.I) interval.I { return x[0].Sqr() },
	}
	slope, range_, trend := square, square, square
	trend.Args = []kernel.Arg{{Name: "x", Range: interval.Of(1, 10), Trend: -1}}
	slope.Slopes = func(x, out []float64) { out[0] = 2.00001 * x[0] }
	range_.Enclose = func(x []interval.I) interval.I { s := x[0].Sqr(); s.Hi = s.Lo + 0.5*(s.Hi-s.Lo); return s }
	for _, c := range []struct {
		lie   string
		k     kernel.Kernel
		check func(*drawer, *lot, [][]float64, *tally) error
		says  string
	}{
		{"none", square, slopes, ""}, {"none", square, encloses, ""}, {"none", square, contracts, ""}, {"none", square, blocks, ""}, {"none", square, proves, ""},
		{"a slope one in two hundred thousand off", slope, slopes, "by differences"},
		{"a range half too short", range_, encloses, "outside"},
		{"a trend the wrong way", trend, proves, "outside"},
		{"a range half too short, narrowed by", range_, contracts, "cut off"},
	} {
		l := lotOf(c.k)
		d := newDrawer(base, "lies")
		regs, lopsided := d.draws(&l)
		if len(lopsided) > 0 {
			t.Fatal(lopsided)
		}
		err := c.check(d, &l, regs, &tally{})
		if got := err != nil; got != (c.says != "") || got && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v; want %q", c.lie, err, c.says)
		}
	}
	l := lotOf(square)
	d := newDrawer(base, "lies")
	regs, _ := d.draws(&l)
	regs[77][l.checks[0].Margin] *= 1 + 1e-15
	if err := blocks(d, &l, regs, &tally{}); err == nil {
		t.Error("a block one bit off was not seen")
	}
}

// lotOf is the limit square(x) >= 30 over a number from 1 to 10.
func lotOf(k kernel.Kernel) lot {
	b := tape.NewBuilder()
	x := b.Slot("test/part.x")
	margin := b.Apply(lang.Sub, b.Call(k, x), b.Const(30))
	c := link.Check{Rule: &link.Rule{ID: "test"}, FullID: "test", Margin: margin}
	return lot{name: "lie", prog: b.Build(), checks: []link.Check{c}, share: map[tape.Node]int{margin: leastDraws},
		slots: []link.Slot{{Node: x, Ask: &link.Ask{Name: "test/part.x", Kind: link.NumberSlot, Dim: quantity.Number, Number: &link.Number{Low: 4, High: 4, DoubtLow: 1, DoubtHi: 10}}}}}
}

// The VM sees a program that is not what the file says.
func TestTheVMCatchesAnotherFormula(t *testing.T) {
	in := shipped(t).Input
	number := lang.Type{Kind: lang.NumberKind}
	a, b := &lang.Expr{Op: lang.Name, Name: "a", Type: number}, &lang.Expr{Op: lang.Name, Name: "b", Type: number}
	regs := [][]float64{{0, 3, 4, 7}, {0, 3, 0, 3}, {0, 1, 2, 3}}
	for text, same := range map[string]bool{"a + b": true, "b + a": true, "a - b": false, "a + 2*b": false} {
		at := fault.Place{File: "told", Line: 1, Column: 1, Width: len(text)}
		x := &link.Lowered{Expr: &lang.Expr{Op: lang.Add, Args: []*lang.Expr{a, b}, Type: number, At: at}, Node: 3, Names: map[string]tape.Node{"a": 1, "b": 2}}
		n, err := compare(written{"told": {text}}, x, &in, regs)
		if same && (err != nil || n != len(regs)) || !same && err == nil {
			t.Errorf("%s held against a + b: %d, %v", text, n, err)
		}
	}
}
