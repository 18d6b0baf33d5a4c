package machining_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/machining"
	q "wornfit/calc/quantity"
)

const (
	mm, inch   = 1e-3, 25.4e-3
	mPerMin    = 1. / 60
	ftPerMin   = 0.3048 / 60
	rpm, mins_ = 1. / 60, 60.
)

func want(t *testing.T, what string, got, want, tol float64, from string) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.8g, want %.8g ± %g (%s)", what, got, want, tol, from)
	}
}

// Printed examples; the tolerance is the printed digit or the source's π = 3.14.
func TestPublished(t *testing.T) {
	n, _, err := machining.Turns(200*mm, 2.30)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "turns", float64(n), 3.66, 0.005, "Groover, problem 22.1, published solution: 3.66 rev/s")
	pass, _, err := machining.PassTime(700*mm, 0.32*mm, n)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "one pass", float64(pass), 597.6, 0.5, "Groover, problem 22.1, published solution: 597.6 s, 9.96 min")
	v, err := machining.CuttingSpeed(50*mm, 700*rpm)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "cutting speed", float64(v)/mPerMin, 110, 0.1, "Mitsubishi Materials, formulas for turning: 110 m/min")
	v, err = machining.CuttingSpeed(150*mm, 250*rpm)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "cutting speed", float64(v)/mPerMin, 117, 1, "Tungaloy catalogue 2020-2021 L030: 117 m/min, cut off from 117.75")
	pass, _, err = machining.PassTime(100*mm, 0.2*mm, 1000*rpm)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "one pass", float64(pass), 30, 1e-9, "Mitsubishi Materials, formulas for turning: 30 seconds")
	// 4.5 in bar, 46 in long, 450 ft/min, 6.75 in³/min at 1/8 in deep: feed is
	// 6.75/(450·12·0.125) = 0.010 in, so 46·π·4.5/(0.010·450·12) = 12.04 min
	n, _, err = machining.Turns(4.5*inch, 450*ftPerMin)
	if err != nil {
		t.Fatal(err)
	}
	pass, _, err = machining.PassTime(46*inch, 0.010*inch, n)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "one pass", float64(pass)/mins_, 12.04, 0.005, "Groover, problem 22.6: data read, the answer by hand")
}

// Kyocera's form by hand: 50 to 44 in passes of 1 mm is 3 passes at a mean 47 mm;
// 3·π·47·120/(0.2·100·1000) = 2.658 min.
func TestTurnDownByHand(t *testing.T) {
	c := machining.Cut{From: 50 * mm, To: 44 * mm, Length: 120 * mm, Speed: 100 * mPerMin, Feed: 0.2 * mm, Depth: 1 * mm}
	got, _, err := machining.TurnDown(c)
	if err != nil {
		t.Fatal(err)
	}
	want(t, "turn down", float64(got)/mins_, 2.6578, 5e-5, "hand working of the catalogue's formula")
	back, _, err := machining.BoreOut(machining.Cut{From: 44 * mm, To: 50 * mm, Length: c.Length, Speed: c.Speed, Feed: c.Feed, Depth: c.Depth})
	if err != nil {
		t.Fatal(err)
	}
	want(t, "bore out", float64(back), float64(got), 1e-9, "the same metal path, the other way")
}

// Second route: as the passes get thin the time tends to what a count of all
// passes, each at its own diameter, gives.
func TestMeanAgreesWithPassByPass(t *testing.T) {
	const N = 200
	from, to := 60*mm, 50*mm
	sum := 0.0
	for i := range N { // each pass at the diameter half-way through it
		d := from - (from-to)*(float64(i)+0.5)/N
		n, _, err := machining.Turns(q.Length(d), 1.5)
		if err != nil {
			t.Fatal(err)
		}
		pass, _, err := machining.PassTime(80*mm, 0.1*mm, n)
		if err != nil {
			t.Fatal(err)
		}
		sum += float64(pass)
	}
	got, _, err := machining.TurnDown(machining.Cut{From: q.Length(from), To: q.Length(to), Length: 80 * mm, Speed: 1.5, Feed: 0.1 * mm, Depth: q.Length((from - to) / 2 / N)})
	if err != nil {
		t.Fatal(err)
	}
	want(t, "200 passes", float64(got)/sum, 1, 1e-9, "sum over the passes")
}

func TestPasses(t *testing.T) {
	for _, c := range []struct {
		stock, depth float64
		want         int
	}{{0, 1, 0}, {0.6, 0.1, 3}, {0.61, 0.1, 4}, {2, 1, 1}, {0.1, 1, 1}} {
		n, err := machining.Passes(q.Length(c.stock*mm), q.Length(c.depth*mm))
		if err != nil || n != c.want {
			t.Errorf("%g off at %g deep: %d passes, want %d (%v)", c.stock, c.depth, n, c.want, err)
		}
	}
	nothing, _, err := machining.TurnDown(machining.Cut{From: .05, To: .05, Length: 1, Speed: 1, Feed: 1e-4, Depth: 1e-3})
	if err != nil || nothing != 0 {
		t.Errorf("nothing to cut takes %g s (%v)", nothing, err)
	}
}

func TestRefusals(t *testing.T) {
	good := machining.Cut{From: .05, To: .04, Length: .1, Speed: 1, Feed: 2e-4, Depth: 1e-3}
	nan, inf := math.NaN(), math.Inf(1)
	cut := func(change func(*machining.Cut)) error {
		c := good
		change(&c)
		_, _, err := machining.TurnDown(c)
		return err
	}
	third := func(_ any, _ []basis.Note, err error) error { return err }
	second := func(_ any, err error) error { return err }
	for _, c := range []struct {
		err   error
		blame string
	}{
		{cut(func(c *machining.Cut) { c.To = .06 }), "size after turning"},
		{cut(func(c *machining.Cut) { c.To = q.Length(nan) }), "size after turning"},
		{cut(func(c *machining.Cut) { c.To = 0 }), "size after the cut"},
		{cut(func(c *machining.Cut) { c.From = q.Length(inf) }), "size before the cut"},
		{cut(func(c *machining.Cut) { c.Length = 0 }), "length of cut"},
		{cut(func(c *machining.Cut) { c.Speed = -1 }), "cutting speed"},
		{cut(func(c *machining.Cut) { c.Feed = q.Length(nan) }), "feed per turn"},
		{cut(func(c *machining.Cut) { c.Depth = 0 }), "depth of a pass"},
		{cut(func(c *machining.Cut) { c.Depth = 1e-6 }), "depth of a pass"},
		{third(machining.BoreOut(good)), "size after boring"},
		{third(machining.Turns(0, 1)), "diameter"},
		{third(machining.Turns(1, q.Speed(inf))), "cutting speed"},
		{third(machining.PassTime(1, 1, 0)), "speed of rotation"},
		{second(machining.CuttingSpeed(1, q.Rotation(nan))), "speed of rotation"},
		{second(machining.Passes(-1, 1)), "stock on diameter"},
	} {
		var r *basis.Refusal
		if !errors.As(c.err, &r) || r.Name != c.blame {
			t.Errorf("%v, want a refusal that blames %s", c.err, c.blame)
		}
	}
}

// 30 m/min typed as 30 m/s is worked, and doubted.
func TestDoubts(t *testing.T) {
	_, notes, err := machining.TurnDown(machining.Cut{From: .05, To: .04, Length: .1, Speed: 30, Feed: 5e-3, Depth: 1e-3})
	if err != nil || len(notes) != 2 {
		t.Errorf("30 m/s and 5 mm per turn: notes %v, %v; want two", notes, err)
	}
}

func TestKernels(t *testing.T) { kerneltest.Check(t, machining.Kernels()) }

func ExampleTurnDown() {
	t, _, err := machining.TurnDown(machining.Cut{From: 25.4 * mm, To: 24.8 * mm, Length: 60 * mm, Speed: 25 * mPerMin, Feed: 0.1 * mm, Depth: 0.15 * mm})
	fmt.Printf("%.1f min, %v\n", float64(t)/60, err)
	// Output: 3.8 min, <nil>
}

func ExamplePassTime() {
	t, _, _ := machining.PassTime(100*mm, 0.2*mm, 1000*rpm)
	fmt.Printf("%.0f s\n", float64(t))
	// Output: 30 s
}
