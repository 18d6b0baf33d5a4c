package cleanup_test

import (
	"fmt"
	"math"

	"wornfit/calc/cleanup"
	q "wornfit/calc/quantity"
)

// dozen is a profile of twelve radii in mm, every 30° from the mark: those
// given, then 12.5 for the rest.
func dozen(radiiMM ...float64) []cleanup.Point {
	readings := make([]cleanup.Radial, 12)
	for i := range readings {
		r := 12.5
		if i < len(radiiMM) {
			r = radiiMM[i]
		}
		readings[i] = cleanup.Radial{Angle: float64(i) * math.Pi / 6, Radius: q.Length(r * mm)}
	}
	return cleanup.Profile(readings)
}

func ExampleShaftAbout() {
	// A 25 mm pin with a low of 0.2 at the mark: twice the least radius, 12.3.
	size, _, err := cleanup.ShaftAbout(dozen(12.3, 12.4), cleanup.Point{})
	fmt.Printf("%.1f mm %v\n", size/mm, err)
	// Output: 24.6 mm <nil>
}

func ExampleBoreAbout() {
	// A 25 mm eye worn 0.2 deep at the mark: twice the greatest radius, 12.7.
	size, _, err := cleanup.BoreAbout(dozen(12.7, 12.6), cleanup.Point{})
	fmt.Printf("%.1f mm %v\n", size/mm, err)
	// Output: 25.4 mm <nil>
}

func ExampleRunOutAbout() {
	// A round pin turned 0.03 off its middle: the indicator swings twice that.
	tir, _, err := cleanup.RunOutAbout(dozen(), cleanup.Point{X: 0.03 * mm})
	fmt.Printf("%.2f mm %v\n", tir/mm, err)
	// Output: 0.06 mm <nil>
}

func ExampleShaftAboutLeaving() {
	// One low of twelve may stay, as a tenth of the turn is more than a twelfth: the second, 12.4, decides.
	size, _, err := cleanup.ShaftAboutLeaving(dozen(12.3, 12.4), cleanup.Point{}, 0.1)
	fmt.Printf("%.1f mm %v\n", size/mm, err)
	// Output: 24.8 mm <nil>
}

func ExampleBoreAboutLeaving() {
	// The deepest of twelve may stay: the second, 12.6, decides.
	size, _, err := cleanup.BoreAboutLeaving(dozen(12.7, 12.6), cleanup.Point{}, 0.1)
	fmt.Printf("%.1f mm %v\n", size/mm, err)
	// Output: 25.2 mm <nil>
}

func ExampleCircumscribed() {
	// An eye worn 0.3 deep at the mark: from there to the sound side is 12.8 + 12.5.
	c, _, err := cleanup.Circumscribed(dozen(12.8))
	fmt.Printf("%.2f mm, axis moved %.2f mm, %v\n", c.Diameter/mm, c.Centre.X/mm, err)
	// Output: 25.30 mm, axis moved 0.15 mm, <nil>
}

func ExampleLeastSquares() {
	// Radii of 12.5 + 0.02·cos 2θ: their mean is 12.5, greatest less least 0.04.
	c, roundness, _, err := cleanup.LeastSquares(dozen(12.52, 12.51, 12.49, 12.48, 12.49, 12.51, 12.52, 12.51, 12.49, 12.48, 12.49, 12.51))
	fmt.Printf("%.2f mm, %.2f mm out of round, %v\n", c.Diameter/mm, roundness/mm, err)
	// Output: 25.00 mm, 0.04 mm out of round, <nil>
}

func ExampleShaftFromWorn() {
	// 30 − 0.2 − 2·0.01.
	size, _, err := cleanup.ShaftFromWorn(cleanup.OneSided{Size: 30 * mm, Wear: 0.2 * mm, Offset: 0.01 * mm})
	fmt.Printf("%.2f mm %v\n", size/mm, err)
	// Output: 29.78 mm <nil>
}

func ExampleBoreKeepingAxis() {
	// A lever eye at its right distance from the other: 30 + 2·0.4 + 2·0.02.
	size, _, err := cleanup.BoreKeepingAxis(cleanup.OneSided{Size: 30 * mm, Wear: 0.4 * mm, Offset: 0.02 * mm})
	fmt.Printf("%.2f mm %v\n", size/mm, err)
	// Output: 30.84 mm <nil>
}

func ExampleBoreFromWorn() {
	// The same eye where the distance does not matter: 30 + 0.4 + 2·0.02.
	size, _, err := cleanup.BoreFromWorn(cleanup.OneSided{Size: 30 * mm, Wear: 0.4 * mm, Offset: 0.02 * mm})
	fmt.Printf("%.2f mm %v\n", size/mm, err)
	// Output: 30.44 mm <nil>
}

func ExampleAxisShift() {
	shift, err := cleanup.AxisShift(0.4 * mm)
	fmt.Printf("%.1f mm toward the worn side of a bore %v\n", shift/mm, err)
	// Output: 0.2 mm toward the worn side of a bore <nil>
}

func ExampleShaftOffset() {
	// 29.9 − 2·0.05.
	size, _, err := cleanup.ShaftOffset(29.9*mm, 0.05*mm)
	fmt.Printf("%.1f mm %v\n", size/mm, err)
	// Output: 29.8 mm <nil>
}

func ExampleBoreOffset() {
	// 30.2 + 2·0.05.
	size, _, err := cleanup.BoreOffset(30.2*mm, 0.05*mm)
	fmt.Printf("%.1f mm %v\n", size/mm, err)
	// Output: 30.3 mm <nil>
}

func ExampleOffsetFromRunOut() {
	offset, err := cleanup.OffsetFromRunOut(0.12 * mm)
	fmt.Printf("an indicator that swings 0.12 mm: %.2f mm off centre %v\n", offset/mm, err)
	// Output: an indicator that swings 0.12 mm: 0.06 mm off centre <nil>
}

func ExampleTwoPoint_ShaftFree() {
	// Three sizes 60° apart; the oval through them is 24.967 ± 0.067, so no less than read; less 0.01 unseen.
	sizes := cleanup.TwoPoint{Readings: across(24.90, 25.00, 25.00), Unseen: 0.01 * mm}
	r, _, err := sizes.ShaftFree()
	fmt.Printf("%.2f to %.2f mm %v\n", r.Lo/mm, r.Hi/mm, err)
	// Output: 24.89 to 24.90 mm <nil>
}

func ExampleTwoPoint_BoreFree() {
	// The oval is 30.06 ± 0.069 (see OvalThrough); with 0.02 unseen 30.149.
	sizes := cleanup.TwoPoint{Readings: across(30.00, 30.12, 30.06), Unseen: 0.02 * mm}
	r, _, err := sizes.BoreFree()
	fmt.Printf("%.2f to %.2f mm %v\n", r.Lo/mm, r.Hi/mm, err)
	// Output: 30.12 to 30.15 mm <nil>
}

func ExampleTwoPoint_BoreFixed() {
	// All worn off one side: 2·30.129 − 30 + 0.02.
	sizes := cleanup.TwoPoint{Readings: across(30.00, 30.12, 30.06), Unseen: 0.02 * mm, Unworn: 30 * mm}
	r, _, err := sizes.BoreFixed()
	fmt.Printf("%.2f to %.2f mm %v\n", r.Lo/mm, r.Hi/mm, err)
	// Output: 30.12 to 30.28 mm <nil>
}

func ExampleOvalThrough() {
	// 0°, 60° and 120°: mean 30.06; (−0.060, 0.035) are 0.069 at 150°, the half of which is the angle.
	o, err := cleanup.OvalThrough(across(30.00, 30.12, 30.06))
	fmt.Printf("%.2f ± %.2f mm, widest at %.0f° %v\n", o.Mean/mm, o.Swing/mm, o.Angle*180/math.Pi, err)
	// Output: 30.06 ± 0.07 mm, widest at 75° <nil>
}
