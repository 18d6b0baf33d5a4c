package gears

import (
	"math"

	q "wornfit/calc/quantity"
)

// Forces are what one tooth does to another, and so the shafts to their bearings.
type Forces struct {
	Tangential q.Force // turns the wheel
	Radial     q.Force // pushes the axes apart
	Total      q.Force // both together; at right angles to the tooth
}

// ToothForces returns the forces between two spur gears from the torque on one.
//
//	Ft = 2T/d, Fr = Ft·tan(φ), F = Ft/cos(φ)
//
// d is the pitch diameter of the wheel that bears T. A driven shaft is pushed
// away from its mate at 90° − φ to the line of centres. All in SI units.
//
//   - Holds for: spur gears without friction, at the pressure angle at which they really run.
//   - Beyond: an idler bears two such forces: see IdlerLoad.
//   - Source: statics, any machine-element text.
func ToothForces(torque q.Torque, pitchDiameter q.Length, pressure float64) (Forces, error) {
	if err := firstOf(
		above0("torque", nm(torque), float64(torque)),
		above0("pitch diameter", mm(pitchDiameter), float64(pitchDiameter)),
		checkPressure(pressure),
	); err != nil {
		return Forces{}, err
	}
	t := tangential(float64(torque), float64(pitchDiameter))
	return Forces{
		Tangential: q.Force(t), Radial: q.Force(t * math.Tan(pressure)), Total: q.Force(t / math.Cos(pressure)),
	}, nil
}

func tangential(torque, pitchDiameter float64) float64 { return 2 * torque / pitchDiameter }
