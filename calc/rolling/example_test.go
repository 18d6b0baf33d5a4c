package rolling_test

import (
	"fmt"

	"wornfit/calc/rolling"
)

func ExampleRead() {
	d, err := rolling.Read("6308-2rs/c3")
	fmt.Println("series", d.Series, "bore figures", d.Code, "seals", d.Seals, "clearance", d.Group, err)
	// Output: series 63 bore figures 08 seals 2RS clearance C3 <nil>
}

func ExampleSmoothed() {
	// A turned seat of 40 mm, 18 µm tight: 18·40/43.
	left, err := rolling.Smoothed(0.040, 18*um, rolling.Turned)
	fmt.Printf("%.1f µm %v\n", left/um, err)
	// Output: 16.7 µm <nil>
}

func ExampleRaces() {
	// 6206: (62 + 4·30)/5 and (4·62 + 30)/5.
	inner, outer, err := rolling.Races(30*mm, 62*mm)
	fmt.Printf("the balls run on %.1f and in %.1f mm %v\n", inner/mm, outer/mm, err)
	// Output: the balls run on 36.4 and in 55.6 mm <nil>
}

func ExampleBoreLower() {
	low, err := rolling.BoreLower(30 * mm)
	fmt.Printf("30 mm bore: 0 to %.0f µm %v\n", low/um, err)
	// Output: 30 mm bore: 0 to -10 µm <nil>
}

func ExampleOutsideLower() {
	low, err := rolling.OutsideLower(62 * mm)
	fmt.Printf("62 mm outside: 0 to %.0f µm %v\n", low/um, err)
	// Output: 62 mm outside: 0 to -13 µm <nil>
}

func ExampleInternalClearance() {
	least, most, err := rolling.InternalClearance(40*mm, rolling.C3)
	fmt.Printf("%.0f to %.0f µm %v\n", least/um, most/um, err)
	// Output: 15 to 33 µm <nil>
}
