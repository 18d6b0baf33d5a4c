package bearing_test

import (
	"fmt"

	"wornfit/calc/bearing"
)

func ExampleSlidingSpeed() {
	// A 30 mm countershaft at 300 rpm: π·0.030·5.
	v, err := bearing.SlidingSpeed(0.030, 300./60)
	fmt.Printf("%.2f m/s %v\n", v, err)
	// Output: 0.47 m/s <nil>
}

func ExamplePressureSpeed() {
	pv, err := bearing.PressureSpeed(1.5e6, 0.4)
	fmt.Printf("%.2f MPa m/s %v\n", pv/1e6, err)
	// Output: 0.60 MPa m/s <nil>
}

func ExampleStiffBoreGrowth() {
	// A bronze bush 47 by 50 in heavy steel, both 60 K up: 0.702·50 − 3·(1.08 + 0.34·0.378) µm.
	grows, notes, err := bearing.StiffBoreGrowth(bearing.Stiff{
		Bore: 0.047, Outside: 0.050, Nu: 0.34, BushExpands: 18e-6, HousingGrows: 11.7e-6, BushWarmer: 60, HousingsWarmer: 60,
	})
	fmt.Printf("%.1f µm %v %v\n", 1e6*grows, notes, err)
	// Output: 31.5 µm [] <nil>
}
