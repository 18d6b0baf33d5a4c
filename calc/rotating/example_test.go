package rotating_test

import (
	"fmt"

	"wornfit/calc/rotating"
)

func ExampleRimEnergy() {
	// A flywheel of 25 kg and 400 mm at 600 rpm: 25·(π·0.4·10)²/2.
	e, err := rotating.RimEnergy(rotating.Part{Mass: 25, Swing: 0.400, Turns: 10})
	fmt.Printf("%.0f J at most %v\n", e, err)
	// Output: 1974 J at most <nil>
}
