package gears_test

import (
	"fmt"
	"math"

	"wornfit/calc/gears"
)

func ExampleBacklashByRule() {
	// A winch pinion 0.15 further off its wheel, 20° teeth: 2·0.364·0.15.
	grows, err := gears.BacklashByRule(20*math.Pi/180, 0.15e-3)
	fmt.Printf("%.3f mm more backlash %v\n", 1e3*grows, err)
	// Output: 0.109 mm more backlash <nil>
}

func ExampleCentreShift() {
	// A mixer's pinion shaft 0.8 down in its bush, the tooth force alone on it, 20° teeth: 0.8·cos(70°).
	shift, err := gears.CentreShift(0.8e-3, math.Pi/2-20*math.Pi/180)
	fmt.Printf("%.2f mm further apart %v\n", 1e3*shift, err)
	// Output: 0.27 mm further apart <nil>
}

func ExampleFormFactor() {
	// 25 teeth lie 0.48 of the way in 1/z from the row of 26, 0.346, to that of 24, 0.337.
	y, notes, err := gears.FormFactor(25)
	fmt.Printf("Y %.3f, seen: %v, %v\n", y, notes[0].Grade, err)
	// Output: Y 0.342, seen: memory, <nil>
}

func ExampleGeneratedFormFactor() {
	// A hobbed saw-feed pinion of 18 teeth; the same by rolling a drawn tool corner past it point by point.
	y, notes, err := gears.GeneratedFormFactor(gears.Rack{Pressure: 20 * math.Pi / 180, Addendum: 1, Dedendum: 1.25, TipRadius: 0.38}, 18)
	fmt.Printf("Y %.3f %v %v\n", y, notes, err)
	// Output: Y 0.300 [] <nil>
}

func ExampleToothLoad() {
	// An iron hoist wheel of module 2.5, face 25, Y 0.32, held to 100 MPa: 100·25·2.5·0.32/1.25.
	ft, err := gears.ToothLoad(gears.Tooth{Module: 2.5e-3, Face: 25e-3, Form: 0.32}, 100e6, 1.25)
	fmt.Printf("%.0f N round the pitch circle %v\n", ft, err)
	// Output: 1600 N round the pitch circle <nil>
}

func ExampleVelocityFactor() {
	// A pump pinion of 60 mm at 764 rpm rolls at 2.4 m/s: (3 + 2.4)/3.
	kv, notes, err := gears.VelocityFactor(gears.OrdinaryMetric, 2.4)
	fmt.Printf("load × %.2f %v %v\n", kv, notes, err)
	// Output: load × 1.80 [] <nil>
}

func ExampleCentreDistance() {
	// A grain elevator's drive, 19 teeth into 57 of module 2: 2·76/2.
	a, err := gears.CentreDistance(gears.Pair{Module: 2e-3, Pinion: 19, Wheel: 57, Pressure: 20 * math.Pi / 180})
	fmt.Printf("%.2f mm from axis to axis %v\n", 1e3*a, err)
	// Output: 76.00 mm from axis to axis <nil>
}

func ExampleOutOfLine() {
	// A hoist gearbox, its drum in line with its motor, gets a new second pair: 2.5·61/2 − 2·76/2.
	first := gears.Pair{Module: 2e-3, Pinion: 19, Wheel: 57, Pressure: 20 * math.Pi / 180}
	second := gears.Pair{Module: 2.5e-3, Pinion: 16, Wheel: 45, Pressure: 20 * math.Pi / 180}
	out, err := gears.OutOfLine(first, second)
	fmt.Printf("%.2f mm out of line %v\n", 1e3*out, err)
	// Output: 0.25 mm out of line <nil>
}

func ExampleRootCircle() {
	// A mixer pinion of 20 teeth, module 2.5: 2.5·17.5.
	root, err := gears.RootCircle(2.5e-3, 20)
	fmt.Printf("%.2f mm at the bottom of the teeth %v\n", 1e3*root, err)
	// Output: 43.75 mm at the bottom of the teeth <nil>
}

func ExampleRim() {
	// That pinion bored out to 28, with a keyway 3.3 deep: (43.75 − 28)/2 − 3.3.
	rim, err := gears.Rim(43.75e-3, 28e-3, 3.3e-3)
	fmt.Printf("%.3f mm under the teeth %v\n", 1e3*rim, err)
	// Output: 4.575 mm under the teeth <nil>
}

func ExampleRimFactor() {
	// The same pinion: teeth 5.625 deep, mB 0.8133, 1.6·ln(2.757).
	kb, notes, err := gears.RimFactor(4.575e-3, 5.625e-3)
	fmt.Printf("stress in the teeth × %.2f, seen: %v, %v\n", kb, notes[0].Grade, err)
	// Output: stress in the teeth × 1.62, seen: memory, <nil>
}

func ExampleToothForces() {
	// A pump wheel of 60 mm takes 30 N m, 20° teeth: 2·30/0.060, that × 0.3640, that / 0.9397.
	f, err := gears.ToothForces(30, 0.060, 20*math.Pi/180)
	fmt.Printf("%.0f N turn it, %.0f N push it off, the bush bears %.0f N, %v\n", f.Tangential, f.Radial, f.Total, err)
	// Output: 1000 N turn it, 364 N push it off, the bush bears 1064 N, <nil>
}

func ExampleRatio() {
	// A mangle: 20 teeth, an idler of 35, 60 on the roller: 60/20.
	i, opposite, err := gears.Ratio([]gears.Mesh{{Driver: 20, Driven: 35, Idler: true}, {Driver: 35, Driven: 60}})
	fmt.Printf("%.1f turns for one of the roller, against the first: %v, %v\n", i, opposite, err)
	// Output: 3.0 turns for one of the roller, against the first: false, <nil>
}

func ExampleTrainTorque() {
	// A mixer motor, 0.75 kW at 1400 rpm, 30 to 1 in two meshes of 95 %: 5.116·30·0.9025.
	t, err := gears.TrainTorque(750, 1400./60, 30, 0.95, 2)
	fmt.Printf("%.1f N m %v\n", t, err)
	// Output: 138.5 N m <nil>
}

func ExampleTrainTurns() {
	// The same mixer's drum: 1400/30.
	n, err := gears.TrainTurns(1400./60, 30)
	fmt.Printf("%.1f rpm %v\n", 60*n, err)
	// Output: 46.7 rpm <nil>
}
