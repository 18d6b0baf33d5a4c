package fits_test

import (
	"math"
	"strings"
	"testing"
	"wornfit/calc/outside"

	"wornfit/calc/fits"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/calc/kernel/kerneltest"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, fits.Kernels()) }

func kernelOf(t testing.TB, name string) kernel.Kernel {
	t.Helper()
	for _, k := range fits.Kernels() {
		if k.Name == name {
			return k
		}
	}
	t.Fatalf("no kernel %s", name)
	return kernel.Kernel{}
}

// place is the number of a letter; js stands at j.
func place(letter string) float64 { return float64(strings.ToLower(letter)[0]-'a') + 1 }

// The printed limits by number, as a rule asks for them.
func TestPrintedLimitsByNumber(t *testing.T) {
	tried := 0
	for _, r := range outside.Table(t, "../../testdata/published/fits/iso286_limits.csv") {
		c := class(t, r["class"])
		at := []float64{number(t, r["size_mm"]) * mm, place(c.Letter), float64(c.Grade)}
		side := "shaft"
		if c.Hole() {
			side = "hole"
		}
		for _, edge := range []string{"upper", "lower"} {
			got := kernelOf(t, side+"_"+edge).Value(at) / um
			if want := number(t, r[edge+"_um"]); !near(got, want, 1e-9) {
				t.Errorf("%s %s %s: %g, want %g", r["size_mm"], r["class"], edge, got, want)
			}
		}
		tried++
	}
	if tried != 98 {
		t.Errorf("%d limits tried, want all 98", tried)
	}
}

// Widths against the formula of the standard, where its rounding leaves no doubt:
// over 80 to 250 mm IT6 to IT10 are 10, 16, 25, 40 and 64 i, rounded to 1 up to 100 and to 5 above.
func TestWidthsByTheFormula(t *testing.T) {
	it := kernelOf(t, "it_width")
	for _, s := range [][2]float64{{80, 120}, {120, 180}, {180, 250}} {
		d := math.Sqrt(s[0] * s[1])
		i := 0.45*math.Cbrt(d) + 0.001*d
		for n, times := range []float64{10, 16, 25, 40, 64} {
			want := times * i
			grain := 1.0
			if want > 100 {
				grain = 5
			}
			if got := it.Value([]float64{s[1] * mm, float64(6 + n)}) / um; !near(got, want, grain/2+0.01) {
				t.Errorf("IT%d over %g to %g: %g, the formula %.2f", 6+n, s[0], s[1], got, want)
			}
		}
	}
}

// A range of sizes across an edge holds both steps, and one that ends on the edge
// only the step that ends there: 30 k6 is +15 +2, 31 k6 +18 +2.
func TestEncloseLooksAtEveryStep(t *testing.T) {
	k := kernelOf(t, "shaft_upper")
	k6 := []interval.I{{}, interval.Point(11), interval.Point(6)}
	for _, c := range []struct{ from, to, low, high float64 }{
		{28, 30, 15, 15}, {28, 31, 15, 18}, {30.001, 31, 18, 18}, {1, 500, 6, 45}, // 500 k6 is +45 +5
	} {
		k6[0] = interval.Of(c.from*mm, c.to*mm)
		got := k.Enclose(k6)
		if !near(got.Lo/um, c.low, 1e-9) || !near(got.Hi/um, c.high, 1e-9) {
			t.Errorf("%g to %g mm: %v, want %g to %g µm", c.from, c.to, got, c.low, c.high)
		}
	}
	loose := k.Enclose([]interval.I{interval.Whole(), interval.Of(3, 8), interval.Whole()})
	if !near(loose.Lo, -480*um, 1e-12) || loose.Hi != 0 { // by the standard's last step: c is -480; h is 0
		t.Errorf("c to h at once: %v", loose)
	}
	// i, l and o are no letters of the standard: nothing is sure of a range that holds them
	if all := k.Enclose([]interval.I{interval.Whole(), interval.Whole(), interval.Whole()}); all != interval.Whole() {
		t.Errorf("everything at once: %v", all)
	}
	if got := k.Enclose([]interval.I{interval.None(), interval.Whole(), interval.Whole()}); !got.Empty() {
		t.Errorf("no size at all: %v", got)
	}
}

// A letter the standard does not have is NaN, and Worked refuses it: i, l, o and q.
func TestLettersTheTablesDoNotHold(t *testing.T) {
	for _, name := range []string{"shaft_upper", "hole_lower"} {
		k := kernelOf(t, name)
		for _, l := range []float64{9, 12, 15, 17} {
			x := []float64{25 * mm, l, 7}
			if _, err := k.Worked(x); err == nil || !math.IsNaN(k.Value(x)) {
				t.Errorf("%s of letter %g: %v, %v", name, l, k.Value(x), err)
			}
		}
	}
	if v := kernelOf(t, "hole_upper").Value([]float64{25 * mm, 11, 9}); !math.IsNaN(v) {
		t.Errorf("25 K9 has the upper deviation %g; the standard has none", v)
	}
}

func BenchmarkDeviation(b *testing.B) {
	k := kernelOf(b, "hole_lower")
	x := []float64{25 * mm, 16, 7}
	for b.Loop() {
		k.Value(x)
	}
}
