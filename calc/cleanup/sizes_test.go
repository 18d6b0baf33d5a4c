package cleanup_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/cleanup"
	"wornfit/calc/interval"
	q "wornfit/calc/quantity"
)

// across gives sizes in mm of one section, spread evenly over half a turn.
func across(sizesMM ...float64) []cleanup.Reading {
	var out []cleanup.Reading
	for i, s := range sizesMM {
		out = append(out, cleanup.Reading{Angle: math.Pi * float64(i) / float64(len(sizesMM)), Size: q.Length(s * mm)})
	}
	return out
}

// What a micrometer can not say. The true clean-up of each shape is known in
// closed form; the range from sizes must hold it, and a single number would not.
func TestTwoPointSizes(t *testing.T) {
	holds := func(what string, r interval.I, wantMM float64) {
		t.Helper()
		if slack := interval.Around(0, 1e-12); !r.Add(slack).Has(wantMM * mm) {
			t.Errorf("%s: %v mm must hold %g", what, fmt.Sprintf("%.4f to %.4f", r.Lo/mm, r.Hi/mm), wantMM)
		}
	}
	// three lobes of 0.02: every reading 25.000, cleans up at 24.96, bore at 25.04
	lobed := cleanup.TwoPoint{Readings: across(25, 25, 25, 25), Unseen: 0.04 * mm}
	holds("three-lobed shaft", must[interval.I](t)(lobed.ShaftFree()), 24.96)
	holds("three-lobed bore", must[interval.I](t)(lobed.BoreFree()), 25.04)
	blind := lobed
	blind.Unseen = 0
	if r := must[interval.I](t)(blind.ShaftFree()); r.Has(24.96 * mm) {
		t.Error("without an allowance a three-lobed shaft looks round; the range must not hold 24.96")
	}
	// flat 0.3 deep on a 25 shaft: least size 24.7; axis kept it cleans at 24.40
	flat := cleanup.TwoPoint{Readings: across(24.7, 25, 25), Unworn: 25 * mm}
	holds("flat, axis kept", must[interval.I](t)(flat.ShaftFixed()), 24.4)
	// the same sizes from wear on both sides, 0.15 each: 24.70
	holds("worn both sides, axis kept", must[interval.I](t)(flat.ShaftFixed()), 24.7)
	bore := cleanup.TwoPoint{Readings: across(40.2, 40, 40), Unworn: 40 * mm}
	holds("bore worn one side, axis kept", must[interval.I](t)(bore.BoreFixed()), 40.4)
	holds("bore worn all round, axis kept", must[interval.I](t)(bore.BoreFixed()), 40.2)
}

// The oval between the readings: 25 ± 0.04 lying at 20°, read at 0°, 60°, 120°.
// Two readings at right angles to an oval at 45° read its mean and see nothing.
func TestOvalBetweenReadings(t *testing.T) {
	size := func(deg float64) q.Length {
		return q.Length((25 + 0.04*math.Cos(2*(deg-20)*math.Pi/180)) * mm)
	}
	var section []cleanup.Reading
	for _, deg := range []float64{0, 60, 120} {
		section = append(section, cleanup.Reading{Angle: deg * math.Pi / 180, Size: size(deg)})
	}
	o, err := cleanup.OvalThrough(section)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mean", o.Mean, 25, 1e-9, "three sizes 60° apart average to the mean")
	near(t, "swing", o.Swing, 0.04, 1e-9, "as made")
	if math.Abs(o.Angle*180/math.Pi-20) > 1e-6 {
		t.Errorf("largest at %g°, want 20°", o.Angle*180/math.Pi)
	}
	r := must[interval.I](t)(cleanup.TwoPoint{Readings: section}.ShaftFree())
	near(t, "smallest of the oval", q.Length(r.Lo), 24.96, 1e-9, "mean - swing, lower than any reading")
	_, err = cleanup.OvalThrough(section[:2])
	var refusal *basis.Refusal
	if !errors.As(err, &refusal) {
		t.Errorf("two angles give an oval: %v", err)
	}
	_, notes, err := cleanup.TwoPoint{Readings: section[:2]}.ShaftFree()
	if err != nil || len(notes) != 1 {
		t.Errorf("two angles bring %d notes, want 1 (%v)", len(notes), err)
	}
}

func ExampleTwoPoint_ShaftFixed() {
	sizes := cleanup.TwoPoint{Readings: across(24.90, 25.00, 25.00), Unseen: 0.01 * mm, Unworn: 25 * mm}
	r, _, _ := sizes.ShaftFixed()
	fmt.Printf("cleans up somewhere from %.2f to %.2f mm\n", r.Lo/mm, r.Hi/mm)
	// Output: cleans up somewhere from 24.79 to 24.90 mm
}
