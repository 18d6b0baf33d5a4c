package gears

import (
	"fmt"
	"math"

	q "wornfit/calc/quantity"
)

// Mesh is one wheel driving the next. Two wheels fast on one shaft end one mesh
// and begin the next; an idler does both with the same teeth.
type Mesh struct {
	Driver, Driven int     // teeth
	SameWay        bool    // wheel inside a ring, or a chain: both turn the same way
	Idler          bool    // the driven wheel is itself the driver of the next mesh
	Efficiency     float64 // share of the power that is passed on, the losses of the driven shaft's bearings with it
}

// Shaft is one shaft of a running train.
type Shaft struct {
	Turns    q.Rotation
	Opposite bool     // turns against the first shaft
	Power    q.Power  // that reaches it
	Torque   q.Torque // that reaches its driven wheel; of the first, what the motor gives
	Fit      q.Torque // of it what the fits of its wheels on the shaft carry: none for an idler
}

// Ratio returns how many turns of the first shaft make one of the last, and
// whether the last turns against the first.
//
//	i = (z2/z1)·(z4/z3)· ..., driven over drivers
//
// Teeth of an idler stand above and below and cancel; it only turns the sense round.
//
//   - Holds for: wheels on fixed axes, any number of meshes in a row; chains too, counted in teeth.
//   - Beyond: a train with a moving axis (sun and planets) is another sum.
//   - Source: geometry.
func Ratio(train []Mesh) (ratio float64, opposite bool, err error) {
	if len(train) == 0 {
		return 0, false, refuse("train", "empty", "one mesh or more")
	}
	ratio = 1
	for i := range train {
		if err := checkMesh(train, i); err != nil {
			return 0, false, err
		}
		m := train[i]
		ratio *= float64(m.Driven) / float64(m.Driver)
		opposite = opposite != !m.SameWay
	}
	return ratio, opposite, nil
}

// Shafts returns speed, power and torque at every shaft of a train that runs
// steadily, the first shaft before all others.
//
//	n2 = n1·z1/z2, P2 = η·P1, T = P/(2π·n), so T2 = η·T1·z2/z1
//
// Each mesh is taken in turn. The efficiency is the caller's to state: none is assumed.
//
//   - Holds for: power going one way, from the first shaft to the last, at steady speed.
//   - Beyond: starting, jamming and shock give a torque that the motor's rated power does not tell. A train driven from its far end loses on the other side.
//   - Source: power is kept but for the losses; any mechanics text.
func Shafts(power q.Power, turns q.Rotation, train []Mesh) ([]Shaft, error) {
	if _, _, err := Ratio(train); err != nil {
		return nil, err
	}
	if err := firstOf(above0("power", watt(power), float64(power)), above0("speed of the first shaft", rpm(turns), float64(turns))); err != nil {
		return nil, err
	}
	at := Shaft{Turns: turns, Power: power, Torque: q.Torque(torqueOf(float64(power), float64(turns)))}
	at.Fit = at.Torque
	out := append(make([]Shaft, 0, len(train)+1), at)
	for i, m := range train {
		if !(m.Efficiency > 0 && m.Efficiency <= 1) {
			return nil, refuse(fmt.Sprintf("efficiency of mesh %d", i+1), plain(m.Efficiency), "more than 0 and no more than 1")
		}
		step := float64(m.Driven) / float64(m.Driver)
		at.Turns /= q.Rotation(step)
		at.Opposite = at.Opposite != !m.SameWay
		at.Power *= q.Power(m.Efficiency)
		at.Torque *= q.Torque(step * m.Efficiency)
		at.Fit = at.Torque
		if m.Idler {
			at.Fit = 0
		}
		out = append(out, at)
	}
	return out, nil
}

// TrainTorque returns the torque on the last shaft of a train whose meshes all
// lose alike.
//
//	T = P/(2π·n)·i·η^k
//
// n is the speed of the first shaft, i the ratio, k the number of meshes.
//
//   - Holds for: power going from the first shaft to the last, at steady speed.
//   - Beyond: see Shafts, which takes each mesh by itself.
//   - Source: power is kept but for the losses; any mechanics text.
func TrainTorque(power q.Power, turns q.Rotation, ratio, efficiency float64, meshes int) (q.Torque, error) {
	if err := firstOf(
		above0("power", watt(power), float64(power)),
		above0("speed of the first shaft", rpm(turns), float64(turns)),
		above0("ratio", plain(ratio), ratio),
	); err != nil {
		return 0, err
	}
	if !(efficiency > 0 && efficiency <= 1) {
		return 0, refuse("efficiency of a mesh", plain(efficiency), "more than 0 and no more than 1")
	}
	if meshes < 1 {
		return 0, refuse("number of meshes", fmt.Sprint(meshes), "1 or more")
	}
	return q.Torque(trainTorque(float64(power), float64(turns), ratio, efficiency, float64(meshes))), nil
}

// TrainTurns returns the speed of the last shaft of a train.
//
//	n2 = n1/i
//
// All in SI units; a ratio above 1 slows down.
//
//   - Holds for: gears and chains; a belt slips and runs a little slower.
//   - Beyond: refused.
//   - Source: geometry.
func TrainTurns(turns q.Rotation, ratio float64) (q.Rotation, error) {
	if err := firstOf(above0("speed of the first shaft", rpm(turns), float64(turns)), above0("ratio", plain(ratio), ratio)); err != nil {
		return 0, err
	}
	return turns / q.Rotation(ratio), nil
}

func checkMesh(train []Mesh, i int) error {
	m := train[i]
	switch {
	case m.Driver < 1:
		return refuse(fmt.Sprintf("teeth of the driver of mesh %d", i+1), fmt.Sprint(m.Driver), "1 or more")
	case m.Driven < 1:
		return refuse(fmt.Sprintf("teeth of the driven wheel of mesh %d", i+1), fmt.Sprint(m.Driven), "1 or more")
	case m.Idler && i+1 == len(train):
		return refuse("idler", fmt.Sprintf("the driven wheel of mesh %d, the last", i+1), "followed by the mesh it drives")
	case m.Idler && train[i+1].Driver != m.Driven:
		return refuse("idler", fmt.Sprintf("driven with %d teeth and driving with %d", m.Driven, train[i+1].Driver), "one wheel; leave idler off if there are two on the shaft")
	}
	return nil
}

func torqueOf(power, turns float64) float64 { return power / (2 * math.Pi * turns) }

func trainTorque(power, turns, ratio, efficiency, meshes float64) float64 {
	return torqueOf(power, turns) * ratio * math.Pow(efficiency, meshes)
}
