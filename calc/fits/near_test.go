package fits_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"
	"wornfit/calc/outside"

	"wornfit/calc/basis"
	"wornfit/calc/fits"
	q "wornfit/calc/quantity"
)

func nearest(t *testing.T, size, least, most float64) []fits.Candidate {
	t.Helper()
	list, err := fits.Near(q.Length(size), q.Length(least), q.Length(most))
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// Asked for what a printed fit comes to, that fit comes first, off by nothing: no
// other that stays inside is as wide. It stands before its twin on the other basis:
// the delta rule makes P7/h6 of H7/p6. Limits as printed: 25 H7 +21 0, H8 +33 0; p6
// +35 +22, s6 +48 +35, g6 -7 -20, f7 -20 -41 (ISO 286-2); at 1 in RC4 is +0.8 to
// +2.8 thou and FN2 -1.9 to -0.6 (B4.1-1967).
func TestNearestIsTheFitItself(t *testing.T) {
	for _, c := range []struct {
		size, least, most float64
		name, next        string
	}{
		{25 * mm, -35 * um, -1 * um, "H7/p6", "P7/h6"},
		{25 * mm, -48 * um, -14 * um, "H7/s6", "S7/h6"},
		{25 * mm, 7 * um, 41 * um, "H7/g6", "G7/h6"},
		{25 * mm, 20 * um, 74 * um, "H8/f7", "F8/h7"},
		{1 * inch, 0.8 * thou, 2.8 * thou, "RC4", ""},
		{1 * inch, -1.9 * thou, -0.6 * thou, "FN2", ""},
	} {
		list := nearest(t, c.size, c.least, c.most)
		if list[0].Name != c.name || !near(float64(list[0].Off), 0, 1e-12) || c.next != "" && list[1].Name != c.next {
			t.Errorf("%g to %g m wanted: %s and %s come first, off by %g; want %s and %s", c.least, c.most, list[0].Name, list[1].Name, list[0].Off, c.name, c.next)
		}
	}
}

// One clearance alone: every fit misses it by its farther end.
func TestNearestToOneClearance(t *testing.T) {
	for _, wanted := range []float64{-60 * um, 0, 30 * um, 200 * um} {
		last := 0.0
		for _, c := range nearest(t, 25*mm, wanted, wanted) {
			least, most := float64(c.Hole.Smallest()-c.Shaft.Largest()), float64(c.Hole.Largest()-c.Shaft.Smallest())
			want := max(wanted-least, most-wanted)
			if !near(float64(c.Off), want, 1e-12) || !(want > 0) || want < last-1e-12 {
				t.Errorf("%g m wanted: %s is off by %g, want %g and no less than %g", wanted, c.Name, c.Off, want, last)
			}
			last = want
		}
	}
}

// Of a range, what never leaves it is off by nothing, and the widest of these comes
// first; what leaves it is off by what sticks out.
func TestNearestToARange(t *testing.T) {
	list := nearest(t, 25*mm, 15*um, 80*um)
	last := q.Length(0)
	inside := 0
	for i, c := range list {
		least, most := float64(c.LeastClearance()), float64(c.MostClearance())
		out := max(0, 15*um-least, most-80*um)
		if !near(float64(c.Off), out, 1e-12) || float64(c.Off) < float64(last)-1e-12 {
			t.Errorf("%s: %g to %g m is off by %g, after one off by %g", c.Name, least, most, c.Off, last)
		}
		last = c.Off
		if near(out, 0, 1e-12) {
			inside++
			if i > 0 && most-least > float64(list[i-1].MostClearance()-list[i-1].LeastClearance())+1e-12 {
				t.Errorf("%s is wider than %s before it", c.Name, list[i-1].Name)
			}
		}
	}
	// 25 H8/f7 is 20 to 74 µm, of the printed limits +33 0 and -20 -41
	if inside < 3 || !slices.ContainsFunc(list[:inside], func(c fits.Candidate) bool { return c.Name == "H8/f7" }) {
		t.Errorf("%d fits inside, H8/f7 not among them", inside)
	}
}

// Every size to 500 mm finds all pairs the package lists; inch fits end at their own span.
func TestNearOverAllSizes(t *testing.T) {
	for _, c := range []struct {
		size        float64
		iso, inches int
	}{{2 * mm, 74, 23}, {10 * mm, 74, 24}, {50 * mm, 74, 25}, {150 * mm, 74, 20}, {181 * mm, 74, 0}, {500 * mm, 74, 0}} {
		inches, iso := 0, 0
		for _, got := range nearest(t, c.size, 0, 0) {
			if got.System == fits.Inch {
				inches++
			} else {
				iso++
			}
		}
		if inches != c.inches || iso != c.iso {
			t.Errorf("%g m: %d pairs of ISO, %d inch fits; want %d and %d", c.size, iso, inches, c.iso, c.inches)
		}
	}
}

func TestNearRefusals(t *testing.T) {
	for _, c := range []struct {
		size, least, most float64
		blame             string
	}{
		{0, 0, 0, "nominal size"}, {0.6, 0, 0, "nominal size"}, {.025, 2e-5, 1e-5, "least clearance"},
		{.025, .025, .025, "clearance"}, {.025, -.03, -.03, "clearance"},
	} {
		_, err := fits.Near(q.Length(c.size), q.Length(c.least), q.Length(c.most))
		var r *basis.Refusal
		if !errors.As(err, &r) || r.Name != c.blame {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// The width of a printed class is held by its own grade and by no finer one: 98
// printed limits, none of them read by the program.
func TestHeldGradeOfPrintedLimits(t *testing.T) {
	for _, r := range outside.Table(t, "../../testdata/published/fits/iso286_limits.csv") {
		size := q.Length(number(t, r["size_mm"]) * mm)
		width := (number(t, r["upper_um"]) - number(t, r["lower_um"])) * um
		grade := class(t, r["class"]).Grade
		for share, want := range map[float64]int{1: grade, 1.001: grade + 1} {
			got, _, err := fits.HeldGrade(size, q.Length(width*share))
			if err != nil || got != want {
				t.Errorf("%s %s: %g times its width is held by IT%d, %v; want IT%d", r["size_mm"], r["class"], share, got, err, want)
			}
		}
	}
}

func TestHeldGradeAtItsEnds(t *testing.T) {
	if n, notes, err := fits.HeldGrade(25*mm, 3*um); n != 4 || len(notes) != 1 || err != nil { // 25 mm IT4 is 6 µm
		t.Errorf("3 µm at 25 mm: IT%d, %v, %v", n, notes, err)
	}
	for _, c := range []struct {
		size, width float64
		blame       string
	}{{25 * mm, 331 * um, "width"}, {25 * mm, 0, "width"}, {0.6, 1e-5, "nominal size"}} { // 25 mm IT13 is 330 µm
		_, _, err := fits.HeldGrade(q.Length(c.size), q.Length(c.width))
		var r *basis.Refusal
		if !errors.As(err, &r) || r.Name != c.blame {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// What the charts print: turning 7 to 13, lapping 4 to 5; honing 4 to 5 in one
// chart and 6 to 7 in another, which is said.
func TestProcesses(t *testing.T) {
	for _, c := range []struct {
		name                    string
		usual, finest, coarsest int
		notes                   int
	}{{"turning", 7, 7, 13, 0}, {"lapping", 4, 4, 5, 0}, {"honing", 6, 4, 7, 1}, {"boring", 8, 5, 13, 1}, {"drilling", 11, 10, 13, 1}} {
		p, notes, err := fits.ProcessNamed(c.name)
		if err != nil || p.Usual != c.usual || p.Finest != c.finest || p.Coarsest != c.coarsest || len(notes) != c.notes {
			t.Errorf("%s: %+v, %v, %v", c.name, p, notes, err)
		}
	}
	var r *basis.Refusal
	if _, _, err := fits.ProcessNamed("filing"); !errors.As(err, &r) || r.Name != "process" {
		t.Errorf("filing: %v", err)
	}
	usual, atBest := fits.ProcessesFor(class(t, "H7"))
	if fmt.Sprint(usual, atBest) != "[lapping honing cylindrical grinding] [reaming boring]" {
		t.Errorf("H7: %v, at best %v", usual, atBest)
	}
	for g := 5; g <= 13; g++ { // a coarser grade is never harder to hold
		fine, _ := fits.ProcessesFor(fits.Class{Letter: "h", Grade: g - 1})
		coarse, _ := fits.ProcessesFor(fits.Class{Letter: "h", Grade: g})
		for _, p := range fine {
			if !slices.Contains(coarse, p) {
				t.Errorf("%s holds h%d, but not h%d", p, g-1, g)
			}
		}
	}
}

func ExampleNear() {
	list, _ := fits.Near(25*mm, 0.030*mm, 0.030*mm)
	for _, c := range list[:3] {
		fmt.Printf("%s %s: %.1f to %.1f µm\n", c.System, c.Name, c.LeastClearance()/um, c.MostClearance()/um)
	}
	// Output:
	// ANSI B4.1 LC5: 7.6 to 40.6 µm
	// ANSI B4.1 RC2: 7.6 to 30.5 µm
	// ANSI B4.1 RC1: 7.6 to 24.1 µm
}

func ExampleHeldGrade() {
	n, _, _ := fits.HeldGrade(25*mm, 0.020*mm)
	fmt.Printf("a lathe that scatters 0.02 mm holds IT%d at 25 mm\n", n)
	// Output: a lathe that scatters 0.02 mm holds IT7 at 25 mm
}
