package keyed

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Kennedy is a pair of square taper keys set on their corners a quarter turn
// apart, each with its diagonal along the joint. Width is the side of one key.
type Kennedy struct {
	Shaft, Width, Length q.Length
}

// KennedyShearTorque returns the torque at which two Kennedy keys shear, each
// across its diagonal.
//
//	T = 2·τ·√2·b·L·d/2
//
// All in SI units.
//
//   - Holds for: two square keys driven alike, so that both bear.
//   - Beyond: a pair not bedded alike shares worse; count one and a half keys of two (several pins or keys: 75 %, from memory). Torque one way loads one of them more.
//   - Source: statics; Jindal, Machine Design, example 14.3, which counts both in full.
func KennedyShearTorque(k Kennedy, shear q.Stress) (q.Torque, []basis.Note, error) {
	return k.torque("shear stress", shear, math.Sqrt2)
}

// KennedyCrushTorque returns the torque at which two Kennedy keys or their
// keyways are crushed: half of each diagonal bears.
//
//	T = 2·p·(b/√2)·L·d/2
//
// All in SI units.
//
//   - Holds for: two square keys driven alike; p of the weakest of key, shaft and hub.
//   - Beyond: as KennedyShearTorque. Of the source the crushing length as worked by its companion sheet is wrong: 380/3 is cut to 126 there, giving 19.85 mm for 19.74.
//   - Source: statics; Jindal, Machine Design, example 14.3.
func KennedyCrushTorque(k Kennedy, crush q.Stress) (q.Torque, []basis.Note, error) {
	return k.torque("crushing stress", crush, 1/math.Sqrt2)
}

func (k Kennedy) torque(what string, stress q.Stress, part float64) (q.Torque, []basis.Note, error) {
	if err := (Key{Shaft: k.Shaft, Width: k.Width, Depth: 1, Length: k.Length}).check(); err != nil {
		return 0, nil, err
	}
	if err := above0(what, mpa(stress), float64(stress)); err != nil {
		return 0, nil, err
	}
	return q.Torque(kennedy(float64(k.Shaft), float64(k.Width), float64(k.Length), float64(stress), part)), []basis.Note{{
		Says:   "both keys are counted in full, as the source does; bedded unlike, count three quarters",
		Source: "machine-element texts, from memory", Grade: basis.Memory,
	}}, nil
}

func kennedy(shaft, width, length, stress, part float64) float64 {
	return 2 * shearTorque(shaft, part*width, length, stress)
}
