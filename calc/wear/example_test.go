package wear_test

import (
	"fmt"

	"wornfit/calc/wear"
)

func ExampleHardnessShare() {
	// A journal of 240 HB in a bronze bush of 80.
	share, err := wear.HardnessShare(240, 80)
	fmt.Printf("%.0f times as hard %v\n", share, err)
	// Output: 3 times as hard <nil>
}
