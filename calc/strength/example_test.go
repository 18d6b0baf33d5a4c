package strength_test

import (
	"fmt"

	"wornfit/calc/strength"
)

func ExampleFilletTwisting() {
	// A 25 mm stud turned down to 24 with a 1 mm radius: D/d 1.0417, r/d 0.0417.
	k, notes, err := strength.FilletTwisting(strength.Shoulder{Large: 0.025, Small: 0.024, Radius: 0.001})
	fmt.Printf("%.2f times the shear %v %v\n", k, notes, err)
	// Output: 1.37 times the shear [] <nil>
}

func ExampleTwisting() {
	// A 25 mm stub shaft that drives 100 N m: 16·100000/(π·15625).
	τ, err := strength.Twisting(strength.Section{Outside: 0.025}, 100)
	fmt.Printf("%.1f MPa %v\n", τ/1e6, err)
	// Output: 32.6 MPa <nil>
}

func ExampleVonMises() {
	// A crank pin bent to 80 MPa and twisted to 30: √(6400 + 2700).
	σ, err := strength.VonMises(80e6, 30e6)
	fmt.Printf("%.0f MPa %v\n", σ/1e6, err)
	// Output: 95 MPa <nil>
}

func ExampleGreatestShear() {
	// The same crank pin: √(40² + 30²).
	τ, err := strength.GreatestShear(80e6, 30e6)
	fmt.Printf("%.0f MPa %v\n", τ/1e6, err)
	// Output: 50 MPa <nil>
}

func ExampleGreatestNormal() {
	// The same in cast iron: 40 + √(40² + 30²).
	σ, err := strength.GreatestNormal(80e6, 30e6)
	fmt.Printf("%.0f MPa %v\n", σ/1e6, err)
	// Output: 90 MPa <nil>
}

func ExampleStiffnessLeft() {
	// A 25 mm stud turned down by a millimetre: 0.96⁴.
	left, err := strength.StiffnessLeft(0, 0.025, 0.024)
	fmt.Printf("%.0f %% %v\n", 100*left, err)
	// Output: 85 % <nil>
}
