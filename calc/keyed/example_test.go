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

func ExampleKennedyShearTorque() {
	// The 60 mm shaft of a press flywheel, two keys 12 square and 80 long: 2·50·√2·12·80 N at 30 mm.
	t, _, err := keyed.KennedyShearTorque(keyed.Kennedy{Shaft: 0.060, Width: 0.012, Length: 0.080}, 50e6)
	fmt.Printf("%.0f N m %v\n", t, err)
	// Output: 4073 N m <nil>
}

func ExampleKennedyCrushTorque() {
	// The same flywheel is iron and bears 90 MPa: 2·90·12/√2·80 N at 30 mm.
	t, notes, err := keyed.KennedyCrushTorque(keyed.Kennedy{Shaft: 0.060, Width: 0.012, Length: 0.080}, 90e6)
	fmt.Printf("%.0f N m, %v; %s\n", t, err, notes[0].Says)
	// Output: 3666 N m, <nil>; both keys are counted in full, as the source does; bedded unlike, count three quarters
}

func ExampleSetScrewHolds() {
	// A pulley on 25 mm, two M8 cup screws counted as 5/16 in: 1.5 times 700 to 1500 lbf at 12.5 mm; 165 lbf in to tighten.
	h, _, err := keyed.SetScrewHolds(keyed.SetScrews{Shaft: 0.025, Screw: 0.008, Point: keyed.Cup, Count: 2})
	fmt.Printf("tightened to %.1f N m each they hold %.0f to %.0f N m %v\n", h.Seating, h.LeastTorque, h.MostTorque, err)
	// Output: tightened to 18.6 N m each they hold 58 to 125 N m <nil>
}

func ExampleSharedTorque() {
	// Three pins round a mower's coupling, one good for 120 N m: 0.75·3·120.
	t, notes, err := keyed.SharedTorque(120, 3)
	fmt.Printf("%.0f N m: %s %v\n", t, notes[0].Says, err)
	// Output: 270 N m: of several keys or pins only three quarters are counted as sharing <nil>
}

func ExampleTaperKeyDrive() {
	// A key 8 by 40 to be driven to 60 MPa, 1 in 100, oiled: 60·8·40·(0.11/0.999 + 0.1) N.
	f, err := keyed.TaperKeyDrive(keyed.Taper{Shaft: 0.030, Width: 0.008, Length: 0.040, Seat: 0.004}, 60e6, 0.01, 0.1)
	fmt.Printf("%.1f kN %v\n", f/1e3, err)
	// Output: 4.0 kN <nil>
}

func ExampleChordDrop() {
	// An 8 mm keyway in a 30 mm pump shaft: 15 − √(900 − 64)/2.
	f, err := keyed.ChordDrop(0.030, 0.008)
	fmt.Printf("a gauge on the edges reads %.2f mm short %v\n", 1e3*f, err)
	// Output: a gauge on the edges reads 0.54 mm short <nil>
}

func ExampleRecutTorque() {
	// A 30 mm spindle turned to 29.8, to be bonded in its bore: 4 − 0.1 − 0.547 of wall left in it, 100·3.353·32 N at 14.9 mm.
	spindle := keyed.Keyed{Shaft: 0.030, Bore: 0.030, Width: 0.008, Height: 0.007, ShaftKeyway: 0.004, HubKeyway: 0.0033}
	t, notes, err := keyed.RecutTorque(spindle, 0.0298, 0.030, 0.032, 100e6, 100e6)
	fmt.Printf("%.0f N m %v %v\n", t, notes, err)
	// Output: 160 N m [] <nil>
}

func ExampleWoodruffLength() {
	// A 5 by 6.5 key of a 16 mm disc in a magneto shaft, 2.5 standing out: 2·√(4·12).
	l, err := keyed.WoodruffLength(keyed.Woodruff{Width: 0.005, Disc: 0.016, Height: 0.0065, Stands: 0.0025})
	fmt.Printf("%.1f mm %v\n", 1e3*l, err)
	// Output: 13.9 mm <nil>
}

func ExampleWoodruffKey() {
	// A key stamped 606: 6/32 in wide, 6/8 in disc, 0.313 in high, half its width proud.
	k, _, err := keyed.WoodruffKey(606)
	fmt.Printf("%.2f wide, disc %.2f, %.2f high, %.2f mm stands out %v\n", 1e3*k.Width, 1e3*k.Disc, 1e3*k.Height, 1e3*k.Stands, err)
	// Output: 4.76 wide, disc 19.05, 7.95 high, 2.38 mm stands out <nil>
}
