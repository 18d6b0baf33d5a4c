package machining_test

import (
	"fmt"

	"wornfit/calc/machining"
)

func ExampleTurns() {
	// 25 m/min on a 40 mm pin: 25/(π·0.040).
	n, _, err := machining.Turns(40*mm, 25*mPerMin)
	fmt.Printf("%.0f rpm %v\n", n/rpm, err)
	// Output: 199 rpm <nil>
}

func ExampleCuttingSpeed() {
	// A lathe set to 315 rpm, 40 mm: π·0.040·315.
	v, err := machining.CuttingSpeed(40*mm, 315*rpm)
	fmt.Printf("%.1f m/min %v\n", v/mPerMin, err)
	// Output: 39.6 m/min <nil>
}

func ExamplePasses() {
	// A millimetre on diameter at 0.15 a side: 1/0.3 is three and a third.
	n, err := machining.Passes(1*mm, 0.15*mm)
	fmt.Println(n, "passes", err)
	// Output: 4 passes <nil>
}

func ExampleBoreOut() {
	// A 25 mm eye bored from 30 to 30.8 in two passes: 2·π·25·30.4/(0.1·20000).
	t, _, err := machining.BoreOut(machining.Cut{From: 30 * mm, To: 30.8 * mm, Length: 25 * mm, Speed: 20 * mPerMin, Feed: 0.1 * mm, Depth: 0.2 * mm})
	fmt.Printf("%.1f min %v\n", t/60, err)
	// Output: 2.4 min <nil>
}
