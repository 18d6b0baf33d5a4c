package assembly_test

import (
	"fmt"

	"wornfit/calc/assembly"
)

func ExampleShaftTemperature() {
	// A 50 mm pin 15 µm tight, to go in with 20 to spare: 35 µm over 50 mm · 10 µm per m and K is 70 K.
	cold, _, err := assembly.ShaftTemperature(assembly.Entry{Seat: 0.050, Interference: 15e-6, Hub: 11.7e-6, Shaft: 10e-6, Room: 293.15}, 20e-6)
	fmt.Printf("%.0f °C %v\n", cold-273.15, err)
	// Output: -50 °C <nil>
}

func ExampleTimeConstant() {
	// An iron hub 40 by 80, 40 wide, in the hand: 1/(2/0.04 + 4/0.04) m deep; 7200·500·0.00667/25 is 960 s.
	iron := assembly.Metal{Conductivity: 50, Density: 7200, SpecificHeat: 500}
	τ, _, err := assembly.TimeConstant(assembly.Body{Metal: iron, Depth: assembly.RingDepth(0.040, 0.080, 0.040), Film: assembly.StillAir})
	fmt.Printf("63 %% of the heat is gone in %.0f min %v\n", τ/60, err)
	// Output: 63 % of the heat is gone in 16 min <nil>
}

func ExampleBiot() {
	// A steel pin of 60 dropped in oil, 500 W/(m² K): 500·0.015/46.
	bi, err := assembly.Biot(assembly.Body{Metal: assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510}, Depth: assembly.BarDepth(0.060), Film: 500})
	fmt.Printf("Bi %.2f: over 0.1, its middle lags %v\n", bi, err)
	// Output: Bi 0.16: over 0.1, its middle lags <nil>
}

func ExamplePlateSoak() {
	// A steel plate of 80 for 15 min in an oil bath at 180 °C: Bi 0.261, Fo 6.46, z 0.4896, 0.2209 left in the middle, 0.2122 of all.
	plate := assembly.Soak{Metal: assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510}, Half: 0.040, Film: 300, From: 293.15, Around: 453.15}
	got, err := assembly.PlateSoak(plate, 0, 900)
	fmt.Printf("middle %.0f °C, mean %.0f °C %v\n", got.There-273.15, got.Mean-273.15, err)
	// Output: middle 145 °C, mean 146 °C <nil>
}

func ExampleGrabTime() {
	// A coupling half that lies on one side of its shaft; a solver: even rings in small steps, reckoned apart, close in 8.9 s.
	steel := assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510, Expansion: 12.2e-6}
	t, _, err := assembly.GrabTime(assembly.Joining{
		Seat: 0.040, Outside: 0.080, Width: 0.040, Interference: 50e-6, Rough: assembly.Peaks,
		Hub: steel, Shaft: steel, Film: assembly.StillAir, HubAt: 493.15, ShaftAt: 293.15, Room: 293.15,
	}, assembly.Touching)
	fmt.Printf("be home in %.0f s %v\n", t, err)
	// Output: be home in 9 s <nil>
}

func ExampleGrabTimeAlong() {
	// A sprocket midway on a long shaft; a solver, up to 8 % long: even slices in small steps, reckoned apart, close in 16.7 s.
	steel := assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510, Expansion: 12.2e-6}
	t, _, err := assembly.GrabTimeAlong(assembly.Joining{
		Seat: 0.030, Outside: 0.090, Width: 0.012, Interference: 40e-6, Rough: assembly.Peaks,
		Hub: steel, Shaft: steel, Film: assembly.StillAir, HubAt: 493.15, ShaftAt: 293.15, Room: 293.15,
	}, assembly.Touching)
	fmt.Printf("some %.0f s till it grabs, lying on one side %v\n", t, err)
	// Output: some 17 s till it grabs, lying on one side <nil>
}

func ExampleGrabEstimate() {
	// A pulley held centred: M 30026, from 200 K apart to 84.4; the integral of 0.0006013 summed in strips.
	steel := assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510, Expansion: 12.2e-6}
	t, _, err := assembly.GrabEstimate(assembly.Joining{
		Seat: 0.040, Outside: 0.080, Width: 0.040, Interference: 40e-6, Rough: assembly.Peaks,
		Hub: steel, Shaft: steel, Film: assembly.StillAir, HubAt: 493.15, ShaftAt: 293.15, Room: 293.15,
	}, assembly.Centred)
	fmt.Printf("about %.0f s %v\n", t, err)
	// Output: about 18 s <nil>
}
