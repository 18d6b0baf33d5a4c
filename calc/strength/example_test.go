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

func ExampleUnnotchedLimit() {
	// A fan shaft of 600 MPa steel: half of it.
	s, err := strength.UnnotchedLimit(600e6)
	fmt.Printf("%.0f MPa for ever %v\n", s/1e6, err)
	// Output: 300 MPa for ever <nil>
}

func ExampleSurfaceFactor() {
	// The fan shaft's seat is turned: 4.51·600^−0.265.
	ka, notes, err := strength.SurfaceFactor(strength.Machined, 600e6)
	fmt.Printf("%.0f %% left by the tool marks %v %v\n", 100*ka, notes, err)
	// Output: 83 % left by the tool marks [] <nil>
}

func ExampleSizeFactor() {
	// It is 30 mm thick, 1.1811 in: 0.879·1.1811^−0.107.
	kb, notes, err := strength.SizeFactor(0.030)
	fmt.Printf("%.0f %% of a small bar's limit %v %v\n", 100*kb, notes, err)
	// Output: 86 % of a small bar's limit [] <nil>
}

func ExampleReliabilityFactor() {
	// One fan in a hundred may break: 1 − 0.08·2.326.
	ke, err := strength.ReliabilityFactor(0.99)
	fmt.Printf("%.0f %% of the mean limit %v\n", 100*ke, err)
	// Output: 81 % of the mean limit <nil>
}

func ExampleEnduranceLimit() {
	// The fan shaft, all told: 300·0.83·0.86·1·0.814·1.
	s, err := strength.EnduranceLimit(600e6, strength.Factors{Surface: 0.83, Size: 0.86, Load: strength.BendingLoad, Reliability: 0.814, Kept: 1})
	fmt.Printf("%.0f MPa up and down %v\n", s/1e6, err)
	// Output: 174 MPa up and down <nil>
}

func ExampleGrooveTwisting() {
	// A relief 1 deep of 1 mm radius in a 25 mm shaft, t 0.08: 2 − 3.555·0.08 + 4.898·0.0064 − 2.365·0.000512.
	k, notes, err := strength.GrooveTwisting(strength.Groove{Outside: 0.025, Depth: 0.001, Radius: 0.001})
	fmt.Printf("%.2f times the shear %v %v\n", k, notes, err)
	// Output: 1.75 times the shear [] <nil>
}

func ExampleKeywayFatigue() {
	// A conveyor shaft of 500 MPa steel, its keyway cut with a disc cutter; the row as the table prints it.
	f, notes, err := strength.KeywayFatigue(strength.SledRunner, 500e6)
	fmt.Printf("bending × %g to %g, twisting × %g to %g, seen: %v, %v\n", f.Bending.Lo, f.Bending.Hi, f.Twisting.Lo, f.Twisting.Hi, notes[0].Grade, err)
	// Output: bending × 1.3 to 1.7, twisting × 1.3 to 3, seen: memory, <nil>
}

func ExampleNotchSensitivity() {
	// A 0.5 mm corner, √r 0.1403 √in, in 500 MPa steel, 72.52 kpsi: 1/(1 + 0.0919/0.1403).
	q, notes, err := strength.NotchSensitivity(500e6, 0.0005)
	fmt.Printf("%.2f of the notch is felt in bending %v %v\n", q, notes, err)
	// Output: 0.60 of the notch is felt in bending [] <nil>
}

func ExampleNotchSensitivityTwisting() {
	// The same corner in torsion: 1/(1 + 0.0688/0.1403).
	q, notes, err := strength.NotchSensitivityTwisting(500e6, 0.0005)
	fmt.Printf("%.2f of the notch is felt in torsion %v %v\n", q, notes, err)
	// Output: 0.67 of the notch is felt in torsion [] <nil>
}

func ExampleVonMisesSwing() {
	// A pump shaft bent 20 ± 50 MPa and twisted 40 ± 10: √(400 + 4800) and √(2500 + 300).
	s, err := strength.VonMisesSwing(strength.Swing{Amplitude: 50e6, Mean: 20e6}, strength.Swing{Amplitude: 10e6, Mean: 40e6})
	fmt.Printf("%.0f ± %.0f MPa %v\n", s.Mean/1e6, s.Amplitude/1e6, err)
	// Output: 72 ± 53 MPa <nil>
}

func ExampleSoderbergSafety() {
	// A rocker pin at 40 ± 60 MPa that stands ± 180 and yields at 360: 1/(1/3 + 1/9).
	n, err := strength.SoderbergSafety(strength.Swing{Amplitude: 60e6, Mean: 40e6}, 180e6, 360e6)
	fmt.Printf("%.2f times safe %v\n", n, err)
	// Output: 2.25 times safe <nil>
}

func ExampleGerberSafety() {
	// A hook pin at 120 ± 54 MPa that stands ± 180 and breaks at 600: 2.5·0.3 + (2.5·0.2)² is 1.
	n, err := strength.GerberSafety(strength.Swing{Amplitude: 54e6, Mean: 120e6}, 180e6, 600e6)
	fmt.Printf("%.2f times, an even chance, %v\n", n, err)
	// Output: 2.50 times, an even chance, <nil>
}

func ExampleYieldSafety() {
	// A saw arbor bent 20 ± 60 MPa and twisted 35, of 355 MPa steel: 355/√(6400 + 3675).
	n, err := strength.YieldSafety(strength.Swing{Amplitude: 60e6, Mean: 20e6}, strength.Swing{Mean: 35e6}, 355e6)
	fmt.Printf("%.1f times before it bends for good %v\n", n, err)
	// Output: 3.5 times before it bends for good <nil>
}

func ExamplePressedEdge() {
	// A pulley pressed on a shaft of 700 MPa steel: 2.7·0.8578, and 0.65 of it.
	f, notes, err := strength.PressedEdge(700e6)
	fmt.Printf("bending × %.2f, twisting × %.2f %v %v\n", f.Bending, f.Twisting, notes, err)
	// Output: bending × 2.32, twisting × 1.51 [] <nil>
}

func ExampleKeyedHub() {
	// The same pulley with a key instead: 3·0.8732, and 0.56 of it + 0.1.
	f, notes, err := strength.KeyedHub(700e6)
	fmt.Printf("bending × %.2f, twisting × %.2f %v %v\n", f.Bending, f.Twisting, notes, err)
	// Output: bending × 2.62, twisting × 1.57 [] <nil>
}
