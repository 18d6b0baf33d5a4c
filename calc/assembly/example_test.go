package assembly_test

import (
	"fmt"

	"wornfit/calc/assembly"
)

func ExampleShaftTemperature() {
	// A 50 mm pin 15 µm tight, to go in with 20 to spare: 35 µm over 50 mm · 10 µm per m and K is 70 K.
	cold, err := assembly.ShaftTemperature(assembly.Entry{Seat: 0.050, Interference: 15e-6, Hub: 11.7e-6, Shaft: 10e-6, Room: 293.15}, 20e-6)
	fmt.Printf("%.0f °C %v\n", cold-273.15, err)
	// Output: -50 °C <nil>
}
