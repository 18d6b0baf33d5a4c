package keyed_test

import (
	"fmt"

	"wornfit/calc/keyed"
)

func ExampleShearTorque() {
	// A key 8 wide and 30 long on a 25 mm shaft: 100·8·30 N at 12.5 mm.
	t, err := keyed.ShearTorque(keyed.Key{Shaft: 0.025, Width: 0.008, Depth: 0.003, Length: 0.030}, 100e6)
	fmt.Printf("%.0f N m %v\n", t, err)
	// Output: 300 N m <nil>
}

func ExampleCrushTorque() {
	// The same key stands 3 mm in an iron hub that bears 90 MPa: 90·3·30 N at 12.5 mm.
	t, err := keyed.CrushTorque(keyed.Key{Shaft: 0.025, Width: 0.008, Depth: 0.003, Length: 0.030}, 90e6)
	fmt.Printf("%.0f N m %v\n", t, err)
	// Output: 101 N m <nil>
}

func ExamplePinShearTorque() {
	// Two 6 mm pins 25 long on a 25 mm joint, counted as one and a half: 1.5·160·6·25 N at 12.5 mm.
	t, notes, err := keyed.PinShearTorque(keyed.RoundPins{Joint: 0.025, Pin: 0.006, Length: 0.025, Count: 2}, 160e6)
	fmt.Printf("%.0f N m, %d note, %v\n", t, len(notes), err)
	// Output: 450 N m, 1 note, <nil>
}

func ExampleCrossPinHolds() {
	// An 8 mm pin through 25 and 45: 160·π·64·25/4, 200·8·625/6 and 120·8·(2025 − 625)/4 N mm.
	t, _, err := keyed.CrossPinHolds(keyed.CrossPin{Shaft: 0.025, Hub: 0.045, Pin: 0.008}, 160e6, 200e6, 120e6)
	fmt.Printf("pin %.0f, shaft %.0f, hub %.0f N m %v\n", t.Shear, t.Shaft, t.Hub, err)
	// Output: pin 201, shaft 167, hub 336 N m <nil>
}
