package gears_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/gears"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func teeth(t *testing.T, r outside.Row, name string) int { t.Helper(); return int(r.In(t, name)) }

// Khurmi and Gupta: three pairs, one after the other.
func TestSpeedThroughThreePairsAgreesWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "G05")
	train := []gears.Mesh{
		{Driver: teeth(t, r, "TA"), Driven: teeth(t, r, "TB"), Efficiency: 1},
		{Driver: teeth(t, r, "TC"), Driven: teeth(t, r, "TD"), Efficiency: 1},
		{Driver: teeth(t, r, "TE"), Driven: teeth(t, r, "TF"), Efficiency: 1},
	}
	shafts, err := gears.Shafts(1000, q.Rotation(r.In(t, "NA")), train)
	kerneltest.Fine(t, err)
	r.Want(t, "NF", float64(shafts[3].Turns))
	if !shafts[3].Opposite {
		t.Error("after three meshes the last shaft must turn against the first")
	}
}

// Wentzell: a pair, then a pair with an idler of 22 teeth between.
func TestAnIdlerCancelsAsInTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "G06")
	idler := teeth(t, r, "Nd")
	train := []gears.Mesh{
		{Driver: teeth(t, r, "Na"), Driven: teeth(t, r, "Nb")},
		{Driver: teeth(t, r, "Nc"), Driven: idler, Idler: true},
		{Driver: idler, Driven: teeth(t, r, "Ne")},
	}
	ratio, opposite, err := gears.Ratio(train)
	kerneltest.Fine(t, err)
	r.Want(t, "ratio", ratio)
	turns, err := gears.TrainTurns(q.Rotation(r.In(t, "n")), ratio)
	kerneltest.Fine(t, err)
	r.Want(t, "n_out", float64(turns))
	if !opposite {
		t.Error("two pairs and an idler must turn the last shaft against the first")
	}
	for _, z := range []int{13, 57} {
		train[1].Driven, train[2].Driver = z, z
		other, _, err := gears.Ratio(train)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "ratio with another idler", other, ratio, 1e-15)
	}
}

// Wentzell: forces on a 20-tooth pinion from the motor's power.
func TestToothForcesAgreeWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "G02")
	first, err := gears.Shafts(q.Power(r.In(t, "power")), q.Rotation(r.In(t, "n")), []gears.Mesh{{Driver: teeth(t, r, "N"), Driven: 40, Efficiency: 1}})
	kerneltest.Fine(t, err)
	f, err := gears.ToothForces(first[0].Torque, q.Length(r.In(t, "N")/r.In(t, "Pd")), r.In(t, "phi"))
	kerneltest.Fine(t, err)
	r.Want(t, "Ft", float64(f.Tangential))
	r.Want(t, "Fr", float64(f.Radial))
	r.Want(t, "F", float64(f.Total))
}

// Second route: the torque that each tooth force makes about its own axis, mesh
// by mesh, an idler passing its force straight on.
func TestTorqueByToothForces(t *testing.T) {
	const module, φ = 0.003, 20 * math.Pi / 180
	train := []gears.Mesh{{Driver: 18, Driven: 54, Efficiency: 0.97}, {Driver: 17, Driven: 31, Idler: true, Efficiency: 0.96}, {Driver: 31, Driven: 60, Efficiency: 0.95}}
	shafts, err := gears.Shafts(1500, 24, train)
	kerneltest.Fine(t, err)
	torque := 1500 / (2 * math.Pi * 24)
	for i, m := range train {
		f, err := gears.ToothForces(q.Torque(torque), q.Length(module*float64(m.Driver)), φ)
		kerneltest.Fine(t, err)
		torque = m.Efficiency * float64(f.Tangential) * module * float64(m.Driven) / 2
		kerneltest.Near(t, fmt.Sprintf("torque on shaft %d", i+2), float64(shafts[i+1].Torque), torque, 1e-13)
		kerneltest.Near(t, "power", float64(shafts[i+1].Power), torque*2*math.Pi*float64(shafts[i+1].Turns), 1e-13)
	}
	if shafts[2].Fit != 0 || shafts[1].Fit != shafts[1].Torque || shafts[3].Fit != shafts[3].Torque {
		t.Errorf("the fit of the idler carries %v, of the others %v and %v; want none, and all of it", shafts[2].Fit, shafts[1].Fit, shafts[3].Fit)
	}
	if shafts[1].Opposite != true || shafts[2].Opposite != false || shafts[3].Opposite != true {
		t.Errorf("senses of turning: %v", shafts)
	}
}

// With alike meshes the one-line formula is the shaft-by-shaft sum; without
// losses what comes out is what went in; a chain leaves the sense alone.
func TestOneLineTorqueAndLimits(t *testing.T) {
	train := []gears.Mesh{{Driver: 20, Driven: 60, Efficiency: 0.95}, {Driver: 15, Driven: 50, Efficiency: 0.95, SameWay: true}}
	shafts, err := gears.Shafts(750, 25, train)
	kerneltest.Fine(t, err)
	ratio, opposite, err := gears.Ratio(train)
	kerneltest.Fine(t, err)
	got, err := gears.TrainTorque(750, 25, ratio, 0.95, 2)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "torque", float64(got), float64(shafts[2].Torque), 1e-13)
	if !opposite || !shafts[2].Opposite {
		t.Error("a gear pair and a chain must turn the last shaft against the first")
	}
	got, err = gears.TrainTorque(750, 25, 1, 1, 3)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "torque of a train of 1:1", float64(got), 750/(2*math.Pi*25), 1e-15)
}

// Two pairs on parallel shafts come back to the first line if their distances agree.
func TestPairsInLine(t *testing.T) {
	first := gears.Pair{Module: 2.5e-3, Pinion: 20, Wheel: 52, Pressure: 0.35}
	second := gears.Pair{Module: 3e-3, Pinion: 16, Wheel: 44, Pressure: 0.35}
	off, err := gears.OutOfLine(first, second)
	kerneltest.Fine(t, err)
	if math.Abs(float64(off)) > 1e-15 {
		t.Errorf("72 teeth of 2.5 and 60 of 3 stand %v apart; both are at 90 mm", off)
	}
	second.Wheel++
	off, err = gears.OutOfLine(first, second)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "one tooth more", float64(off), 1.5e-3, 1e-12)
}

// Second route: the two tooth forces drawn in the plane and added, for mates all
// round and an idler that turns either way; the stud's axis then moved along them.
func TestIdlerLoadInThePlane(t *testing.T) {
	const ft = 800.
	for _, φ := range []float64{14.5 * math.Pi / 180, 20 * math.Pi / 180} {
		for _, turn := range []float64{1, -1} {
			for β := 0.2; β < 6.2; β += 0.37 {
				driver, driven := 0.7, 0.7+turn*β // where the mates stand
				fx, fy := 0., 0.
				for i, at := range []float64{driver, driven} {
					s, c := math.Sincos(at)
					push := turn * ft // the driver pushes the way the idler turns, the driven mate back
					if i == 1 {
						push = -push
					}
					fx += -ft*math.Tan(φ)*c - push*s
					fy += -ft*math.Tan(φ)*s + push*c
				}
				got, notes, err := gears.IdlerLoad(ft, φ, β)
				kerneltest.Fine(t, err)
				force := math.Hypot(fx, fy)
				kerneltest.Near(t, "load on the stud", float64(got.Force), force, 1e-9)
				for _, at := range []float64{driver, driven} {
					s, c := math.Sincos(at)
					kerneltest.Near(t, fmt.Sprintf("opening at %v", β), got.Opens, -(fx*c+fy*s)/force, 1e-9)
				}
				if balanced := math.Abs(β/2-φ) < 0.05; balanced != (len(notes) > 0) {
					t.Errorf("at %v and %v: notes %v", β, φ, notes)
				}
			}
		}
	}
	inLine, _, err := gears.IdlerLoad(ft, 0.35, math.Pi)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "in line", float64(inLine.Force), 2*ft, 1e-12)
	if math.Abs(inLine.Opens) > 1e-15 {
		t.Errorf("in line wear goes sideways, yet it opens by %v", inLine.Opens)
	}
}

func TestTrainRefusals(t *testing.T) {
	run := func(power q.Power, turns q.Rotation, train ...gears.Mesh) func() error {
		return func() error { _, err := gears.Shafts(power, turns, train); return err }
	}
	one := func(power q.Power, turns q.Rotation, ratio, efficiency float64, meshes int) func() error {
		return func() error { _, err := gears.TrainTorque(power, turns, ratio, efficiency, meshes); return err }
	}
	force := func(torque q.Torque, d q.Length, φ float64) func() error {
		return func() error { _, err := gears.ToothForces(torque, d, φ); return err }
	}
	sound := gears.Mesh{Driver: 20, Driven: 40, Efficiency: 0.95}
	checkRefusals(t, []refused{
		{"no mesh", "train", run(1, 1)},
		{"no driver", "teeth of the driver of mesh 2", run(1, 1, sound, gears.Mesh{Driven: 3, Efficiency: 1})},
		{"no driven wheel", "teeth of the driven wheel of mesh 1", run(1, 1, gears.Mesh{Driver: 3, Driven: -2, Efficiency: 1})},
		{"nothing stated of the losses", "efficiency of mesh 1", run(1, 1, gears.Mesh{Driver: 20, Driven: 40})},
		{"more out than in", "efficiency of mesh 2", run(1, 1, sound, gears.Mesh{Driver: 20, Driven: 40, Efficiency: 95})},
		{"an idler that drives nothing", "idler", run(1, 1, gears.Mesh{Driver: 20, Driven: 40, Efficiency: 1, Idler: true})},
		{"an idler of two sizes", "idler", run(1, 1, gears.Mesh{Driver: 20, Driven: 40, Efficiency: 1, Idler: true}, gears.Mesh{Driver: 41, Driven: 60, Efficiency: 1})},
		{"no power", "power", run(0, 1, sound)},
		{"standing still", "speed of the first shaft", run(1, 0, sound)},
		{"unknown speed", "speed of the first shaft", run(1, q.Rotation(nan), sound)},
		{"no power in one line", "power", one(-1, 1, 1, 1, 1)},
		{"no speed in one line", "speed of the first shaft", one(1, 0, 1, 1, 1)},
		{"no ratio", "ratio", one(1, 1, 0, 1, 1)},
		{"no efficiency", "efficiency of a mesh", one(1, 1, 1, nan, 1)},
		{"no meshes", "number of meshes", one(1, 1, 1, 1, 0)},
		{"turns without end", "speed of the first shaft", func() error { _, err := gears.TrainTurns(q.Rotation(math.Inf(1)), 2); return err }},
		{"a ratio of nothing", "ratio", func() error { _, err := gears.TrainTurns(1, 0); return err }},
		{"no torque", "torque", force(0, 1, 0.35)},
		{"no wheel", "pitch diameter", force(1, 0, 0.35)},
		{"degrees for radians", "pressure angle", force(1, 1, 20)},
		{"an idle idler", "tangential force", func() error { _, _, err := gears.IdlerLoad(0, 0.35, 3); return err }},
		{"an idler in degrees", "pressure angle", func() error { _, _, err := gears.IdlerLoad(1, 20, 3); return err }},
		{"mates in one place", "angle between the mates", func() error { _, _, err := gears.IdlerLoad(1, 0.35, 0); return err }},
	})
}

func ExampleIdlerLoad() {
	// Mates a third of a turn apart; the stud has worn 0.3 along the load.
	load, _, err := gears.IdlerLoad(500, 20*math.Pi/180, 120*math.Pi/180)
	fmt.Printf("%.0f N, both meshes %.2f mm closer, %v\n", load.Force, -0.3*load.Opens, err)
	// Output: 684 N, both meshes 0.15 mm closer, <nil>
}

func ExampleShafts() {
	// A 1.1 kW motor at 1440 rpm; two pairs on parallel shafts, 95 % in each.
	shafts, err := gears.Shafts(1100, 24, []gears.Mesh{
		{Driver: 20, Driven: 60, Efficiency: 0.95}, {Driver: 18, Driven: 54, Efficiency: 0.95},
	})
	for _, s := range shafts {
		fmt.Printf("%.0f rpm, %.1f N m\n", 60*s.Turns, s.Fit)
	}
	fmt.Println(err)
	// Output:
	// 1440 rpm, 7.3 N m
	// 480 rpm, 20.8 N m
	// 160 rpm, 59.3 N m
	// <nil>
}
