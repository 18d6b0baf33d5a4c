package interference_test

import (
	"fmt"

	"wornfit/calc/interference"
)

func ExampleHubGive() {
	// An iron lever eye 25 by 50: k = 3125/1875, g = (1.6667 + 0.26)/110 GPa.
	g, err := interference.HubGive(interference.Ring{Bore: 0.025, Outside: 0.050, Elastic: interference.Elastic{E: 110e9, Nu: 0.26}})
	fmt.Printf("%.2f µm per m and MPa: at 40 MPa the bore grows %.1f µm, %v\n", 1e12*g, 1e6*float64(g)*0.025*40e6, err)
	// Output: 17.52 µm per m and MPa: at 40 MPa the bore grows 17.5 µm, <nil>
}

func ExampleShaftGive() {
	// A 30 mm steel spindle with a 10 mm hole: k = 1000/800, g = (1.25 − 0.3)/206 GPa.
	g, err := interference.ShaftGive(interference.Ring{Bore: 0.010, Outside: 0.030, Elastic: interference.Elastic{E: 206e9, Nu: 0.3}})
	fmt.Printf("%.2f µm per m and MPa: at 40 MPa it shrinks %.1f µm, %v\n", 1e12*g, 1e6*float64(g)*0.030*40e6, err)
	// Output: 4.61 µm per m and MPa: at 40 MPa it shrinks 5.5 µm, <nil>
}

func ExampleSleeveGive() {
	// A steel sleeve 40 by 48 on a solid steel stud gives as solid steel does: 0.7/206 GPa.
	steel := interference.Elastic{E: 206e9, Nu: 0.3}
	stud, _ := interference.ShaftGive(interference.Ring{Outside: 0.040, Elastic: steel})
	g, err := interference.SleeveGive(interference.Ring{Bore: 0.040, Outside: 0.048, Elastic: steel}, stud)
	fmt.Printf("%.2f µm per m and MPa %v\n", 1e12*g, err)
	// Output: 3.40 µm per m and MPa <nil>
}

func ExampleBushPassesOn() {
	// A bronze bush 25 by 32 in a steel housing of 64: (4.133 − 1)/(0.955 + 4.133 − 0.34).
	housing, _ := interference.HubGive(interference.Ring{Bore: 0.032, Outside: 0.064, Elastic: interference.Elastic{E: 206e9, Nu: 0.3}})
	part, err := interference.BushPassesOn(interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: interference.Elastic{E: 100e9, Nu: 0.34}}, housing)
	fmt.Printf("%.0f %% of a pressure in the bush reaches the housing %v\n", 100*part, err)
	// Output: 66 % of a pressure in the bush reaches the housing <nil>
}

func ExampleSleevePassesOn() {
	// A steel sleeve 40 by 48 on a spindle with a 20 mm hole: (5.545 + 1)/(1.367 + 5.545 + 0.3).
	steel := interference.Elastic{E: 206e9, Nu: 0.3}
	spindle, _ := interference.ShaftGive(interference.Ring{Bore: 0.020, Outside: 0.040, Elastic: steel})
	part, err := interference.SleevePassesOn(interference.Ring{Bore: 0.040, Outside: 0.048, Elastic: steel}, spindle)
	fmt.Printf("%.0f %% of a pressure on the sleeve reaches the spindle %v\n", 100*part, err)
	// Output: 91 % of a pressure on the sleeve reaches the spindle <nil>
}

func ExampleSleeveGrowth() {
	// An aluminium boss 30 by 50 at 25 MPa: 2·25·50·900/(70000·1600) mm.
	grows, err := interference.SleeveGrowth(interference.Ring{Bore: 0.030, Outside: 0.050, Elastic: interference.Elastic{E: 70e9, Nu: 0.33}}, 25e6)
	fmt.Printf("%.1f µm larger outside %v\n", 1e6*grows, err)
	// Output: 20.1 µm larger outside <nil>
}

func ExampleBushHoop() {
	// A bush 25 by 32 pressed at 19.75 MPa: −2·19.75·1024/399.
	hoop, err := interference.BushHoop(0.025, 0.032, 19.75e6)
	fmt.Printf("%.0f MPa, squeezed, %v\n", hoop/1e6, err)
	// Output: -101 MPa, squeezed, <nil>
}

func ExampleRingStress() {
	// Half way through a hub 25 by 50 with 60 MPa in its bore: 20 ∓ 20·2500/1406.25.
	radial, hoop, err := interference.RingStress(0.025, 0.050, 60e6, 0, 0.0375)
	fmt.Printf("%.1f MPa along the radius, %.1f round it %v\n", radial/1e6, hoop/1e6, err)
	// Output: -15.6 MPa along the radius, 55.6 round it <nil>
}

func ExampleBushYieldPressure() {
	// A mild steel bush 25 by 32: 235·(1 − 0.6104)/2.
	p, err := interference.BushYieldPressure(0.025, 0.032, 235e6)
	fmt.Printf("%.1f MPa %v\n", p/1e6, err)
	// Output: 45.8 MPa <nil>
}

func ExampleDiscHoop() {
	// An iron gear blank 60 by 400 at 1450 rpm: 7200·151.8²·(3.26·0.16 + 0.74·0.0036)/16.
	hoop, err := interference.DiscHoop(0.060, 0.400, 0.26, 7200, 1450./60)
	fmt.Printf("%.1f MPa %v\n", hoop/1e6, err)
	// Output: 5.4 MPa <nil>
}

func ExampleDiscBurstSpeed() {
	// A steel wheel 50 by 300: ω² = 12·355e6/(7850·(0.09 + 0.015 + 0.0025)).
	n, err := interference.DiscBurstSpeed(0.050, 0.300, 7850, 355e6)
	fmt.Printf("%.0f rpm %v\n", 60*n, err)
	// Output: 21455 rpm <nil>
}

func ExampleEngaged() {
	// A bush 30 long goes through a hub of 20; its front is 35 past the mouth: 30 + 20 − 35.
	engaged, err := interference.Engaged(interference.Stroke{SeatLength: 0.030, HubLength: 0.020, Travel: 0.035})
	fmt.Printf("%.0f mm still in the hub %v\n", 1e3*engaged, err)
	// Output: 15 mm still in the hub <nil>
}

func ExampleEffective() {
	// 40 µm tight, a turned pin of Rz 6.3 in a bored hub of Rz 10: 40 − 0.8·16.3.
	left, notes, err := interference.Effective(40e-6, 6.3e-6, 10e-6, 0.8)
	fmt.Printf("%.0f µm %v %v\n", 1e6*left, notes, err)
	// Output: 27 µm [] <nil>
}

func ExampleGripThrust() {
	// A joint 25 by 25 at 46.1 MPa, oiled: 0.12·π·25·25·46.1 N.
	f, err := interference.GripThrust(0.025, 0.025, 46.1e6, 0.12)
	fmt.Printf("%.1f kN %v\n", f/1e3, err)
	// Output: 10.9 kN <nil>
}

func ExampleGripUsed() {
	// 60 N m on 25 mm is 4.8 kN round it; with 3 kN along it √(4.8² + 3²) of 10.9.
	used, err := interference.GripUsed(0.025, 60, 3000, 10900)
	fmt.Printf("%.0f %% of the grip %v\n", 100*used, err)
	// Output: 52 % of the grip <nil>
}

func ExampleJointPressure() {
	// 20 µm tight on 30 mm: 20/0.030 over gives of 3.4 and 17.5 µm per m and MPa.
	p, err := interference.JointPressure(0.030, 20e-6, 3.4e-12, 17.5e-12)
	fmt.Printf("%.1f MPa %v\n", p/1e6, err)
	// Output: 31.9 MPa <nil>
}

func ExampleInterferenceFor() {
	// A steel stud of 25 in an iron eye of 50, to press at 30 MPa: 30·0.025·(17.52 + 3.40).
	steel, iron := interference.Elastic{E: 206e9, Nu: 0.3}, interference.Elastic{E: 110e9, Nu: 0.26}
	δ, err := interference.InterferenceFor(interference.Pair{Seat: 0.025, Outside: 0.050, Shaft: steel, Hub: iron}, 30e6)
	fmt.Printf("%.1f µm %v\n", 1e6*δ, err)
	// Output: 15.7 µm <nil>
}

func ExampleShortHub() {
	// A lever 12.5 thick on 25 mm: 0.26/0.76 of the way from 1.11 to 1.02, and from 1.18 to 1.02.
	pressure, hoop, _, err := interference.ShortHub(0.025, 0.0125, true)
	fmt.Printf("pressure × %.2f, stress × %.2f %v\n", pressure, hoop, err)
	// Output: pressure × 1.08, stress × 1.13 <nil>
}

func ExampleSpinningPressure() {
	// A steel fan hub 25 by 100: 77.25 MPa at rest, gone at ω² = 16·206e9·20e-6/(3.3·7850·0.025·0.01), 30466 rpm.
	steel := interference.Elastic{E: 206e9, Nu: 0.3}
	p, _, err := interference.SpinningPressure(interference.Spin{
		Pair: interference.Pair{Seat: 0.025, Outside: 0.100, Shaft: steel, Hub: steel}, Interference: 20e-6, ShaftDensity: 7850, HubDensity: 7850,
	}, 10000./60)
	fmt.Printf("%.1f MPa %v\n", p/1e6, err)
	// Output: 68.9 MPa <nil>
}
