package uncertainty_test

import (
	"fmt"

	q "wornfit/calc/quantity"
	un "wornfit/calc/uncertainty"
)

func ExampleRectangular() {
	// A micrometer stated good to ± 5 µm: 5/√3.
	u, err := un.Rectangular[q.Length](5 * um)
	fmt.Printf("%.1f µm %v\n", u/um, err)
	// Output: 2.9 µm <nil>
}

func ExampleTriangular() {
	// Zero and reading, each good to ± 2.5 µm, together within ± 5: 5/√6.
	u, err := un.Triangular[q.Length](5 * um)
	fmt.Printf("%.1f µm %v\n", u/um, err)
	// Output: 2.0 µm <nil>
}

func ExampleArcsine() {
	// A shop that swings 2 K to either side between morning and noon: 2/√2.
	u, err := un.Arcsine[q.TemperatureChange](2)
	fmt.Printf("%.1f K %v\n", u, err)
	// Output: 1.4 K <nil>
}

func ExampleResolution() {
	// A dial read to a hundredth: 10/√12.
	u, err := un.Resolution[q.Length](10 * um)
	fmt.Printf("%.1f µm %v\n", u/um, err)
	// Output: 2.9 µm <nil>
}

func ExampleRepeats() {
	// Off their mean by −1, 1, 0, 2 and −2 µm: √(10/4/5).
	mean, u, freedom, err := un.Repeats([]q.Length{25.012 * mm, 25.014 * mm, 25.013 * mm, 25.015 * mm, 25.011 * mm})
	fmt.Printf("%.3f mm, u %.1f µm, freedom %.0f, %v\n", mean/mm, u/um, freedom, err)
	// Output: 25.013 mm, u 0.7 µm, freedom 4, <nil>
}

func ExampleCorrelated() {
	// A bore and its pin, each to 3 µm by one master, alike by 0.8: √(9 + 9 − 2·0.8·9).
	clearance := []un.Input{{Name: "bore", U: 3 * um, By: 1, Freedom: un.Known}, {Name: "pin", U: 3 * um, By: -1, Freedom: un.Known}}
	u, err := un.Correlated(clearance, [][]float64{{1, 0.8}, {0.8, 1}})
	fmt.Printf("clearance to %.1f µm %v\n", u/um, err)
	// Output: clearance to 1.9 µm <nil>
}

func ExampleCoverage() {
	// Ten readings leave nine degrees of freedom: Student's t, where a bell curve has 1.96.
	k, err := un.Coverage(9, 0.95)
	fmt.Printf("k = %.2f %v\n", k, err)
	// Output: k = 2.26 <nil>
}

func ExampleExpand() {
	// Ten readings, the mean to 1.5 µm: 2.262·1.5.
	U, err := un.Expand[q.Length](1.5*um, 9, 0.95)
	fmt.Printf("± %.1f µm %v\n", U/um, err)
	// Output: ± 3.4 µm <nil>
}

func ExampleTwo_Difference() {
	// Bore gauge and micrometer set to one ring of 2 µm: √(9 − 4 + 4 − 4 + 4/4 + 1/1).
	clearance := un.Two{
		A: un.Gauge{Common: 3 * um, Reading: 2 * um}, NA: 4,
		B: un.Gauge{Common: 2 * um, Reading: 1 * um}, NB: 1,
		Shared: 2 * um,
	}
	u, err := clearance.Difference()
	fmt.Printf("%.1f µm %v\n", u/um, err)
	// Output: 2.6 µm <nil>
}

func ExampleMeasured_ChanceBelow() {
	// A bore that reads 3 µm under its limit, to 4 µm: Φ(0.75).
	bore := un.Measured[q.Length]{Value: 30.018 * mm, U: 4 * um}
	chance, err := bore.ChanceBelow(30.021 * mm)
	fmt.Printf("%.0f %% %v\n", 100*chance, err)
	// Output: 77 % <nil>
}

func ExampleMeasured_ChanceWithin() {
	// 30 H7 read as 30.010 to 5 µm: Φ(2.2) − Φ(−2).
	bore := un.Measured[q.Length]{Value: 30.010 * mm, U: 5 * um}
	chance, err := bore.ChanceWithin(30*mm, 30.021*mm)
	fmt.Printf("%.0f %% %v\n", 100*chance, err)
	// Output: 96 % <nil>
}

func ExampleGuardBand() {
	// 1.645·2 µm.
	g, err := un.GuardBand[q.Length](2*um, 0.95)
	fmt.Printf("%.1f µm inside the limit %v\n", g/um, err)
	// Output: 3.3 µm inside the limit <nil>
}

func ExampleLineThrough() {
	// Wear at 0 to 3000 h: Sxy 52, Sxx 5, off the line by 0.4, 1.2, 1.2 and 0.4: s² = 3.2/2, u = 1.265/√5.
	hours, wear := []float64{0, 1, 2, 3}, []float64{50, 62, 70, 82} // thousands, µm
	l, err := un.LineThrough(hours, wear)
	fmt.Printf("%.1f ± %.1f µm in 1000 h, from %.1f µm %v\n", l.Slope, l.USlope, l.Intercept, err)
	// Output: 10.4 ± 0.6 µm in 1000 h, from 50.4 µm <nil>
}

func ExampleTemperatureChange() {
	// A 50 mm steel pin still 15 K warm from the lathe: 50·11.5·15 nm.
	grows, _, err := un.TemperatureChange(50*mm, 11.5e-6, 15)
	fmt.Printf("%.1f µm large %v\n", grows/um, err)
	// Output: 8.6 µm large <nil>
}
