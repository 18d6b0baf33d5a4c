package buildup_test

import (
	"fmt"

	"wornfit/calc/buildup"
)

func ExampleBoreCoat() {
	// Bored out to 32, built in to 29.5, 25 long and 2 past each end: π/4·(3.2² − 2.95²)·2.9.
	v, err := buildup.BoreCoat(buildup.Coat{From: 0.032, As: 0.0295, Length: 0.025, RunOut: 0.002})
	fmt.Printf("%.1f cm³ %v\n", 1e6*v, err)
	// Output: 3.5 cm³ <nil>
}

func ExampleTurnedOff() {
	// A weld of 52 turned to 50 over 40: π/4·(5.2² − 5²)·4.
	v, err := buildup.TurnedOff(0.052, 0.050, 0.040)
	fmt.Printf("%.1f cm³ %v\n", 1e6*v, err)
	// Output: 6.4 cm³ <nil>
}

func ExampleBoredOut() {
	// The coat of 29.5 bored to 30 over 25: π/4·(3² − 2.95²)·2.5.
	v, err := buildup.BoredOut(0.0295, 0.030, 0.025)
	fmt.Printf("%.2f cm³ %v\n", 1e6*v, err)
	// Output: 0.58 cm³ <nil>
}

func ExampleLayers() {
	// 1.8 a side in beads of 0.8: two and a quarter, so three.
	n, err := buildup.Layers(0.0018, 0.0008)
	fmt.Println(n, "layers", err)
	// Output: 3 layers <nil>
}

func ExampleArcHeat() {
	// Gas-shielded wire at 24 V and 150 A, 5 mm/s: 0.8·3600/5.
	h, err := buildup.ArcHeat(24*150, 0.005, buildup.StickAndWire)
	fmt.Printf("%.0f J/mm %v\n", h/1e3, err)
	// Output: 576 J/mm <nil>
}

func ExampleReach() {
	// A bead of 400 J/mm through an 8 mm lever, drawn soft from 500 °C: 400/(4.133·0.0044·8)·(1/480 − 1/1490).
	lever := buildup.Plate{Thickness: 0.008, Capacity: 4.4e6, Start: 293.15}
	y, err := buildup.Reach(400e3, 773.15, 1783.15, lever)
	fmt.Printf("soft for %.1f mm beside the bead %v\n", 1e3*y, err)
	// Output: soft for 3.9 mm beside the bead <nil>
}

func ExampleBarPeak() {
	// 1.4 m of bead at 576 J/mm on a 60 mm shaft, the seal 200 mm off: 20 + 806.4e3/(4.133·4.4·2827·0.2).
	seal, err := buildup.BarPeak(576*1400, 0.200, buildup.Bar{Round: 0.060, Capacity: 4.4e6, Start: 293.15})
	fmt.Printf("at most %.0f °C at the seal %v\n", seal-273.15, err)
	// Output: at most 98 °C at the seal <nil>
}

func ExampleCarbonEquivalent() {
	// A winch shaft of 0.40 C, 0.90 Mn, 1.0 Cr and 0.20 Mo: 0.40 + 0.15 + 0.24.
	ce, notes, err := buildup.CarbonEquivalent(buildup.Steel{Carbon: 0.40, Manganese: 0.90, Chromium: 1.0, Molybdenum: 0.20})
	fmt.Printf("CE %.2f %v %v\n", ce, notes, err)
	// Output: CE 0.79 [] <nil>
}

func ExampleSprayedCoat() {
	// A pump shaft of 49, bonded to 49.3, sprayed to 50.6 over 44: 1.019·7.0/0.5 g, 4.488·6.9/0.7 g, 0.65/0.1 passes.
	s, err := buildup.SprayedCoat(buildup.Sprayed{
		Coat: buildup.Coat{From: 0.049, As: 0.0506, Length: 0.040, RunOut: 0.002}, Bond: 0.00015, Pass: 0.0001,
		BondDensity: 7000, TopDensity: 6900, BondEfficiency: 0.5, TopEfficiency: 0.7,
	})
	fmt.Printf("%.0f g of bond coat, %.0f g of wire in %d passes %v\n", 1e3*s.BondMass, 1e3*s.TopMass, s.Passes, err)
	// Output: 14 g of bond coat, 44 g of wire in 7 passes <nil>
}

func ExampleDepositEfficiency() {
	// 31 g of arc-sprayed metal to stay on a fan shaft, bought by the least: 31/0.5.
	least, most, _, err := buildup.DepositEfficiency(buildup.ArcWire)
	fmt.Printf("%.0f to %.0f %% stays: buy %.0f g %v\n", 100*least, 100*most, 31/least, err)
	// Output: 50 to 75 % stays: buy 62 g <nil>
}
