package joints_test

import (
	"fmt"

	"wornfit/calc/joints"
)

func ExampleFlatLap() {
	// A strap on a cracked 2 mm guard, soft at 300 MPa: 300·2/(0.8·172) balances, 3·2 is the rule.
	l, _, err := joints.FlatLap(0.002, joints.Braze{Tensile: 300e6, Shear: 172e6, Sound: 0.8})
	fmt.Printf("%.1f mm balances, lap it %.1f mm %v\n", 1e3*l.Balance, 1e3*l.Length(), err)
	// Output: 4.4 mm balances, lap it 6.0 mm <nil>
}

func ExampleTubeLap() {
	// A stainless coolant pipe 12 by 1.5 in a socket: 1.5·10.5·620/(0.8·172·12), more than 3·1.5.
	l, notes, err := joints.TubeLap(0.012, 0.0015, joints.Braze{Tensile: 620e6, Shear: 172e6, Sound: 0.8})
	fmt.Printf("lap it %.1f mm: %s %v\n", 1e3*l.Length(), notes[0].Says, err)
	// Output: lap it 5.9 mm: three times the thinner member is not enough for these strengths <nil>
}

func ExampleSleeveThrust() {
	// A bush bonded in a swing arm, 30 by 25, four fifths sound at 6 MPa: 0.8·6·π·30·25 N.
	f, err := joints.SleeveThrust(joints.Sleeve{Joint: 0.030, Length: 0.025, Shear: 6e6, Sound: 0.8})
	fmt.Printf("%.1f kN %v\n", f/1e3, err)
	// Output: 11.3 kN <nil>
}

func ExampleSleeveUse() {
	// That bush with 80 N m, which is 5.33 kN round it, and 4 kN along it: √(5.33² + 4²) = 6.67 of 11.31.
	used, err := joints.SleeveUse(joints.Sleeve{Joint: 0.030, Length: 0.025, Shear: 6e6, Sound: 0.8}, 80, 4000)
	fmt.Printf("%.0f %% of the bond %v\n", 100*used, err)
	// Output: 59 % of the bond <nil>
}

func ExampleSprayLeast() {
	// A 4 in roller neck: the old rule wants 0.025 in a side, the maker 0.015.
	l, notes, err := joints.SprayLeast(0.1016, false)
	fmt.Printf("%.3f mm a side: %s (%s), %v\n", 1e3*l, notes[0].Says, notes[0].Grade, err)
	// Output: 0.635 mm a side: the old rule by size decides (memory), <nil>
}
