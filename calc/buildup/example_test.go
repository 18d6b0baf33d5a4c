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
