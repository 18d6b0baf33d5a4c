package quantity_test

import (
	"fmt"

	"wornfit/calc/quantity"
)

// A fitter's bore reading, and the limits of its bush, spoken back.
func Example() {
	bore, err := quantity.Parse("1-3/16 in", quantity.LengthDim)
	if err != nil {
		fmt.Println(err)
		return
	}
	speech := quantity.Speech{Units: quantity.Both, Money: "EUR"}
	fmt.Println("bore", speech.Size(bore.Best, bore.Earned()))
	low, high := speech.Limits(0.030200, 0.030213, quantity.ByTenth)
	fmt.Println("bush outside", low, "to", high)
	fmt.Println("tight by", speech.Gap(38.1e-6, quantity.ByTenth))
	_, err = quantity.Parse("30", quantity.ForceDim)
	fmt.Println(err)
	// Output:
	// bore 1.1875 in (30.163 mm)
	// bush outside 1.1890 in (30.200 mm) to 1.1894 in (30.213 mm)
	// tight by 0.0015 in (0.038 mm)
	// "30" has no unit; write 30 N or 30 lbf
}
