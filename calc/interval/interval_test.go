package interval

import (
	"math"
	"math/rand/v2"
	"testing"
)

var inf = math.Inf(1)

// near: an edge may lie outside the exact one by up to 16 units in the last place
// (sums and products by 2, real powers by the error of the logarithm), never inside.
func near(got, exact I) bool {
	if exact.Empty() || got.Empty() {
		return exact.Empty() && got.Empty()
	}
	slack := func(x float64) float64 { return 16 * 0x1p-52 * math.Abs(x) }
	return got.Covers(exact) &&
		(got.Lo == exact.Lo || got.Lo >= exact.Lo-slack(exact.Lo)) &&
		(got.Hi == exact.Hi || got.Hi <= exact.Hi+slack(exact.Hi))
}

// The empty range changes nothing when joined and wins when met, on either side.
func TestEmpty(t *testing.T) {
	a := I{1, 2}
	for _, e := range []I{None(), {2, 1}, {math.NaN(), 1}, {1, math.NaN()}} {
		if !e.Empty() || e.Has(1) || e.Width() != 0 || !math.IsNaN(e.Mid()) {
			t.Errorf("%v is not treated as empty", e)
		}
		if a.Join(e) != a || e.Join(a) != a {
			t.Errorf("joining %v changed %v", e, a)
		}
		for name, got := range map[string]I{
			"a meet e": a.Meet(e), "e meet a": e.Meet(a), "a+e": a.Add(e), "e+a": e.Add(a),
			"a-e": a.Sub(e), "e-a": e.Sub(a), "a*e": a.Mul(e), "e*a": e.Mul(a), "a/e": a.Div(e), "e/a": e.Div(a),
			"-e": e.Neg(), "e²": e.Sqr(), "e³": e.PowInt(3), "e⁻²": e.PowInt(-2), "e^0": e.PowInt(0), "e^.5": e.Pow(.5),
			"root": e.Sqrt(), "|e|": e.Abs(), "min": e.Min(a), "min2": a.Min(e), "max": e.Max(a), "max2": a.Max(e),
		} {
			if !got.Empty() {
				t.Errorf("%s with e = %v gives %v, want nothing", name, e, got)
			}
		}
		if !a.Covers(e) || !e.Covers(e) {
			t.Errorf("%v is not covered", e)
		}
	}
}

// Hand working: the corners are plain arithmetic.
func TestByHand(t *testing.T) {
	a, b := I{-2, 3}, I{4, 5}
	for name, c := range map[string]struct{ got, want I }{
		"sum":                   {a.Add(b), I{2, 8}},
		"difference":            {a.Sub(b), I{-7, -1}},
		"product":               {a.Mul(b), I{-10, 15}},
		"product, both signs":   {a.Mul(I{-1, 4}), I{-8, 12}},
		"quotient":              {a.Div(b), I{-.5, .75}},
		"over negative":         {b.Div(I{-2, -1}), I{-5, -2}},
		"over 0 from above":     {b.Div(I{0, 2}), I{2, inf}},
		"over 0 from below":     {b.Div(I{-2, 0}), I{-inf, -2}},
		"negative over 0":       {b.Neg().Div(I{0, 2}), I{-inf, -2}},
		"both signs over 0":     {a.Div(I{0, 2}), Whole()},
		"over 0 inside":         {b.Div(I{-1, 1}), Whole()},
		"over 0 alone":          {b.Div(Point(0)), Whole()},
		"negative":              {a.Neg(), I{-3, 2}},
		"square":                {a.Sqr(), I{0, 9}},
		"cube":                  {a.PowInt(3), I{-8, 27}},
		"fourth":                {a.PowInt(4), I{0, 81}},
		"power 0":               {a.PowInt(0), Point(1)},
		"power 1":               {a.PowInt(1), a},
		"power -2":              {b.PowInt(-2), I{1. / 25, 1. / 16}},
		"power -1 across 0":     {a.PowInt(-1), Whole()},
		"power -2 across 0":     {a.PowInt(-2), I{1. / 9, inf}},
		"root":                  {I{4, 9}.Sqrt(), I{2, 3}},
		"root of the part >= 0": {I{-4, 9}.Sqrt(), I{0, 3}},
		"root of a negative":    {I{-4, -1}.Sqrt(), None()},
		"power 3/2":             {I{4, 9}.Pow(1.5), I{8, 27}},
		"power -1/2":            {I{4, 9}.Pow(-.5), I{1. / 3, .5}},
		"power -1/2 from 0":     {I{0, 4}.Pow(-.5), I{.5, inf}},
		"0 to a negative":       {Point(0).Pow(-1), None()},
		"absolute":              {a.Abs(), I{0, 3}},
		"absolute of negative":  {I{-3, -2}.Abs(), I{2, 3}},
		"smaller":               {a.Min(I{1, 9}), I{-2, 3}},
		"larger":                {a.Max(I{1, 9}), I{1, 9}},
		"join":                  {a.Join(b), I{-2, 5}},
		"meet":                  {a.Meet(I{1, 9}), I{1, 3}},
		"meet apart":            {a.Meet(b), None()},
		"meet at an edge":       {a.Meet(I{3, 4}), Point(3)},
		"around":                {Around(10, .5), I{9.5, 10.5}},
		"around, negative half": {Around(10, -1), None()},
		"either way round":      {Of(3, -2), a},
	} {
		if !near(c.got, c.want) {
			t.Errorf("%s: got %v, want %v", name, c.got, c.want)
		}
	}
}

// An edge at infinity stands for every number beyond, and nothing becomes NaN.
func TestUnbounded(t *testing.T) {
	pos := AtLeast(1)
	for name, c := range map[string]struct{ got, want I }{
		"0 times all":    {Point(0).Mul(Whole()), Point(0)},
		"half over half": {pos.Div(pos), AtLeast(0)},
		"half less half": {pos.Sub(pos), Whole()},
		"half squared":   {pos.Sqr(), pos},
		"over half":      {Point(2).Div(pos), I{0, 2}},
		"overflow":       {Point(1e200).Mul(Point(1e200)), AtLeast(math.MaxFloat64)},
		"inf less inf":   {Point(inf).Sub(Point(inf)), Whole()},
	} {
		if !near(c.got, c.want) {
			t.Errorf("%s: got %v, want %v", name, c.got, c.want)
		}
	}
	for _, a := range []I{Whole(), pos, AtMost(-1), {1, math.MaxFloat64}, Point(tiny), Point(-tiny)} {
		if m := a.Mid(); !a.Has(m) || math.IsInf(m, 0) {
			t.Errorf("middle of %v is %g", a, m)
		}
	}
	if w := pos.Width(); w != inf {
		t.Errorf("width of a half-line is %g", w)
	}
}

// Numbers too small to write still lie inside their range.
func TestUnderflow(t *testing.T) {
	small := Point(1e-200)
	for name, got := range map[string]I{"product": small.Mul(small), "square": small.Sqr(), "cube": small.PowInt(3), "quotient": small.Div(Point(1e200)), "power": small.Pow(2)} {
		if !(got.Lo >= 0 && got.Lo < tiny && got.Hi >= tiny) {
			t.Errorf("%s of 1e-200: %v must lie round a number above 0", name, got)
		}
	}
}

// draw gives a range of widely differing size and sign, and a number inside it.
func draw(r *rand.Rand) (I, float64) {
	number := func() float64 { return (r.Float64()*2 - 1) * math.Pow(10, r.Float64()*8-4) }
	a := Of(number(), number())
	switch r.IntN(8) {
	case 0:
		a = Point(a.Lo)
	case 1:
		a = Of(0, a.Hi)
	}
	x := a.Lo + r.Float64()*(a.Hi-a.Lo)
	switch r.IntN(6) {
	case 0:
		x = a.Lo
	case 1:
		x = a.Hi
	}
	return a, min(max(x, a.Lo), a.Hi)
}

// What the operands hold, the result holds: sampled, 200,000 draws of each operation.
func TestHoldsEveryResult(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200_000 {
		a, x := draw(r)
		b, y := draw(r)
		n := r.IntN(9) - 3
		for name, c := range map[string]struct {
			in I
			of float64
		}{
			"+": {a.Add(b), x + y}, "-": {a.Sub(b), x - y}, "*": {a.Mul(b), x * y}, "/": {a.Div(b), x / y},
			"square": {a.Sqr(), x * x}, "root": {a.Sqrt(), math.Sqrt(x)}, "abs": {a.Abs(), math.Abs(x)},
			"min": {a.Min(b), min(x, y)}, "max": {a.Max(b), max(x, y)},
			"int power": {a.PowInt(n), math.Pow(x, float64(n))}, "power": {a.Pow(y / 100), math.Pow(x, y/100)},
		} {
			if math.IsNaN(c.of) || math.IsInf(c.of, 0) || name == "power" && x < 0 {
				continue // no such number: x/0, the root of a negative
			}
			if !c.in.Has(c.of) {
				t.Fatalf("%s: %v and %v hold %g and %g (n %d), the result %g is outside %v", name, a, b, x, y, n, c.of, c.in)
			}
		}
	}
}

// Laws that hold exactly, or by inclusion where rounding gets in.
func TestLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 50_000 {
		a, _ := draw(r)
		b, _ := draw(r)
		c, _ := draw(r)
		sub := I{a.Mid(), a.Hi}
		for name, ok := range map[string]bool{
			"a+b = b+a":                a.Add(b) == b.Add(a),
			"a*b = b*a":                a.Mul(b) == b.Mul(a),
			"-(-a) = a":                a.Neg().Neg() == a,
			"join is symmetric":        a.Join(b) == b.Join(a),
			"join covers both":         a.Join(b).Covers(a) && a.Join(b).Covers(b),
			"both cover meet":          a.Covers(a.Meet(b)) && b.Covers(a.Meet(b)),
			"meet of a and join is a":  a.Meet(a.Join(b)) == a,
			"square within product":    a.Mul(a).Covers(a.Sqr()),
			"narrower in, narrower +":  a.Add(b).Covers(sub.Add(b)),
			"narrower in, narrower *":  a.Mul(b).Covers(sub.Mul(b)),
			"narrower in, narrower /":  a.Div(b).Covers(sub.Div(b)),
			"narrower in, narrower ^3": a.PowInt(3).Covers(sub.PowInt(3)),
			"a(b+c) within ab+ac":      a.Mul(b).Add(a.Mul(c)).Join(a.Mul(b.Add(c))).Width() <= a.Mul(b).Add(a.Mul(c)).Width()*(1+1e-9)+1e-9,
			"root undoes square":       a.Sqr().Sqrt().Covers(a.Abs()),
			"width never negative":     a.Width() >= 0,
			"middle inside":            a.Has(a.Mid()),
		} {
			if !ok {
				t.Fatalf("%s fails for a = %v, b = %v, c = %v", name, a, b, c)
			}
		}
	}
}

func BenchmarkMul(b *testing.B) {
	x, y := I{1, 2}, I{-3, 4}
	for b.Loop() {
		x.Mul(y)
	}
}
