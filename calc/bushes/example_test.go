package bushes_test

import (
	"fmt"

	"wornfit/calc/bushes"
)

func ExampleByOutside() {
	// A worn housing cleaned up at 33 mm: bored on to 34 it takes the next bush, of two bores.
	_, over, _, err := bushes.ByOutside(bushes.Solid, 33*mm)
	for _, b := range over {
		fmt.Printf("%.0f x %.0f mm in %s\n", b.Bore/mm, b.Outside/mm, b.Housing)
	}
	fmt.Println(err)
	// Output:
	// 28 x 34 mm in H7
	// 30 x 34 mm in H7
	// <nil>
}
