package bushes_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/bushes"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
)

const mm = 1e-3

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, bushes.Kernels()) }

// Sizes another hand remembered of the same standards: 12 x 14 and 20 x 23
// wrapped; 25 x 28 solid; 20 x 25 or 26 sintered.
func TestSizesASecondMemoryHas(t *testing.T) {
	for _, c := range []struct {
		kind          bushes.Kind
		bore, outside float64
	}{{bushes.Wrapped, 12, 14}, {bushes.Wrapped, 20, 23}, {bushes.Solid, 25, 28}, {bushes.Sintered, 20, 26}, {bushes.Sintered, 20, 25}} {
		under, over, _, err := bushes.ByBore(c.kind, q.Length(c.bore*mm))
		kerneltest.Fine(t, err)
		found := false
		for _, b := range under {
			found = found || math.Abs(float64(b.Outside)-c.outside*mm) < 1e-9
		}
		if !found || len(over) != len(under) {
			t.Errorf("%s %g: %v under and %v over; want %g outside in both", c.kind, c.bore, under, over, c.outside)
		}
	}
}

// Every row is a bush: a wall of half the difference, a class for the housing, a
// source and a mark, no size twice.
func TestEveryRow(t *testing.T) {
	rows, seen := 0, map[string]bool{}
	for _, k := range bushes.Kinds() {
		last := q.Length(0)
		for _, b := range bushes.Of(k) {
			rows++
			key := fmt.Sprint(k, b.Bore, b.Outside)
			if seen[key] || b.Bore < last {
				t.Errorf("%v stands twice or out of order", b)
			}
			seen[key], last = true, b.Bore
			if d := float64(b.Outside - b.Bore - 2*b.Wall); math.Abs(d) > 1e-12 {
				t.Errorf("%v: the wall is off by %g m", b, d)
			}
			if b.Housing != "H7" || b.Source == "" || !b.Grade.Weak() {
				t.Errorf("%v: housing %q, source %q, grade %v", b, b.Housing, b.Source, b.Grade)
			}
			// a wall under a fortieth or over half of the bore is a slip of the pen
			if r := float64(b.Wall / b.Bore); r < 1./40-1e-9 || r > 0.5+1e-9 {
				t.Errorf("%v: a wall of %.2f bores", b, r)
			}
		}
	}
	if rows < 140 {
		t.Errorf("only %d rows", rows)
	}
}

func TestNearestUnderAndOver(t *testing.T) {
	under, over, notes, err := bushes.ByBore(bushes.Wrapped, 26*mm)
	kerneltest.Fine(t, err)
	if len(under) != 1 || len(over) != 1 || under[0].Bore != 25*mm || over[0].Bore != 28*mm {
		t.Errorf("26: %v and %v; want 25 and 28", under, over)
	}
	if len(notes) != 1 || notes[0].Grade != basis.Memory {
		t.Errorf("notes %v, want one from memory", notes)
	}
	under, over, _, err = bushes.ByOutside(bushes.Solid, 33*mm)
	kerneltest.Fine(t, err)
	if under[0].Outside != 32*mm || over[0].Outside != 34*mm || len(over) != 2 { // 28 x 34 and 30 x 34
		t.Errorf("housing 33: %v and %v", under, over)
	}
}

// At the ends of the table one side is empty; a size on the step counts for both.
func TestEnds(t *testing.T) {
	under, over, _, err := bushes.ByBore(bushes.Sintered, 2*mm)
	if err != nil || len(under) != 0 || over[0].Bore != 6*mm {
		t.Errorf("2 mm: %v, %v, %v", under, over, err)
	}
	under, over, _, err = bushes.ByBore(bushes.Sintered, 80*mm)
	if err != nil || len(over) != 0 || under[0].Bore != 50*mm {
		t.Errorf("80 mm: %v, %v, %v", under, over, err)
	}
	under, over, _, err = bushes.ByBore(bushes.Solid, 0.3*0.1) // 30 mm made of fractions
	if err != nil || under[0].Bore != 30*mm || over[0].Bore != 30*mm {
		t.Errorf("30 mm: %v, %v, %v", under, over, err)
	}
}

// A kernel has one number to give: past the end of the table it refuses.
func TestKernelsRefuseBeyondTheTable(t *testing.T) {
	beyond := map[string]float64{"sintered_bore_under": 2 * mm, "sintered_bore_over": 80 * mm, "solid_outside_over": 1}
	for _, k := range bushes.Kernels() {
		size, ok := beyond[k.Name]
		if !ok {
			continue
		}
		delete(beyond, k.Name)
		var refusal *basis.Refusal
		if sheet, err := k.Worked([]float64{size}); !errors.As(err, &refusal) || refusal.Name != k.Args[0].Says {
			t.Errorf("%s of %g: %v and %v, want the %s blamed", k.Name, size, sheet.Result, err, k.Args[0].Says)
		}
	}
	if len(beyond) > 0 {
		t.Errorf("no kernel is named %v", beyond)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		what, blame string
		kind        bushes.Kind
		size        float64
	}{
		{"a kind not sold", "kind of bush", "plastic", 0.02}, {"no bore", "bore", bushes.Solid, 0},
		{"an unknown bore", "bore", bushes.Wrapped, math.NaN()},
	} {
		var refusal *basis.Refusal
		if _, _, _, err := bushes.ByBore(c.kind, q.Length(c.size)); !errors.As(err, &refusal) || refusal.Name != c.blame {
			t.Errorf("%s: err = %v, want %s blamed", c.what, err, c.blame)
		}
	}
	var refusal *basis.Refusal
	if _, _, _, err := bushes.ByOutside(bushes.Solid, -1); !errors.As(err, &refusal) || refusal.Name != "bore of the housing" {
		t.Errorf("no housing: %v", err)
	}
}

func ExampleByBore() {
	under, over, _, err := bushes.ByBore(bushes.Wrapped, 21*mm)
	fmt.Printf("%.0f x %.0f or %.0f x %.0f mm %v\n", under[0].Bore/mm, under[0].Outside/mm, over[0].Bore/mm, over[0].Outside/mm, err)
	// Output: 20 x 23 or 22 x 25 mm <nil>
}
