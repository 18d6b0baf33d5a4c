package interference

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// Effective returns the interference left after the roughness of both faces is
// pressed flat.
//
//	δeff = δ − loss·(Rz shaft + Rz hub)
//
// Use it with the smallest δ for the least grip; use δ itself for the greatest
// stress and force. A result of 0 or less is given as it is, with a note: such a
// joint holds nothing.
//
//   - Holds for: turned and ground faces pressed cold; loss 0.8 by DIN 7190:2001, reported as 0.4 by DIN 7190-1:2017.
//   - Beyond: shrunk joints lose less.
//   - Source: DIN 7190:2001 (from memory); its 2017 edition from a secondary text.
func Effective(interference, rzShaft, rzHub quantity.Length, loss float64) (quantity.Length, []basis.Note, error) {
	switch {
	case !(interference >= 0):
		return 0, nil, refuse("interference", mm(interference), "0 or more")
	case !(rzShaft >= 0):
		return 0, nil, refuse("roughness of the shaft", mm(rzShaft), "0 or more")
	case !(rzHub >= 0):
		return 0, nil, refuse("roughness of the hub", mm(rzHub), "0 or more")
	case !(loss >= 0 && loss <= 1):
		return 0, nil, refuse("loss", fmt.Sprintf("%.4g", loss), "from 0 to 1 of the roughness depth")
	}
	left := quantity.Length(effective(float64(interference), float64(rzShaft), float64(rzHub), loss))
	if left > 0 {
		return left, nil, nil
	}
	return left, []basis.Note{{
		Says:   "the roughness is as deep as the interference: pressed flat, nothing presses",
		Source: "DIN 7190:2001", Grade: basis.Memory,
	}}, nil
}

// GripThrust returns the axial force a joint holds before it slides.
//
//	F = µ·π·d·L·p
//
// All in SI units.
//
//   - Holds for: even pressure over the length.
//   - Beyond: to be sure of the grip take the least pressure and the lowest friction. Shock and reversing loads work a joint loose below this.
//   - Source: friction on a cylinder; any machine-element text.
func GripThrust(seat, length quantity.Length, pressure quantity.Stress, friction float64) (quantity.Force, error) {
	if err := grips(seat, length, pressure, friction); err != nil {
		return 0, err
	}
	return quantity.Force(gripThrust(float64(seat), float64(length), float64(pressure), friction)), nil
}

// GripTorque returns the torque a joint holds before it turns.
//
//	T = µ·π·d²·L·p/2
//
// All in SI units.
//
//   - Holds for: even pressure over the length.
//   - Beyond: as GripThrust; a torque that bends or twists the shaft strongly creeps out from the edge.
//   - Source: friction on a cylinder; any machine-element text.
func GripTorque(seat, length quantity.Length, pressure quantity.Stress, friction float64) (quantity.Torque, error) {
	f, err := GripThrust(seat, length, pressure, friction)
	return quantity.Torque(float64(f) * float64(seat) / 2), err
}

// GripUsed returns the part of the grip that torque and thrust together use up:
// 1 is on the point of slipping.
//
//	used = √((2T/d)² + F²) / holds
//
// holds is the GripThrust of the joint.
//
//   - Holds for: torque and thrust steady and at the same time.
//   - Beyond: above 1 the joint slips.
//   - Source: friction acts against the sum of both motions; any machine-element text.
func GripUsed(seat quantity.Length, torque quantity.Torque, thrust, holds quantity.Force) (float64, error) {
	switch {
	case !(seat > 0):
		return 0, refuse("seat", mm(seat), "more than 0")
	case !(torque >= 0):
		return 0, refuse("torque", fmt.Sprintf("%.6g N m", torque), "0 or more")
	case !(thrust >= 0):
		return 0, refuse("thrust", newton(thrust), "0 or more")
	case !(holds > 0):
		return 0, refuse("grip of the joint", newton(holds), "more than 0")
	}
	return gripUsed(float64(seat), float64(torque), float64(thrust), float64(holds)), nil
}

func grips(seat, length quantity.Length, pressure quantity.Stress, friction float64) error {
	switch {
	case !(seat > 0):
		return refuse("seat", mm(seat), "more than 0")
	case !(length > 0):
		return refuse("length", mm(length), "more than 0")
	case !(pressure >= 0):
		return refuse("pressure", mpa(pressure), "0 or more")
	case !(friction > 0 && friction < 1):
		return refuse("friction", fmt.Sprintf("%.4g", friction), "more than 0 and less than 1")
	}
	return nil
}

func newton(f quantity.Force) string { return fmt.Sprintf("%.6g N", float64(f)) }

func effective(interference, rzShaft, rzHub, loss float64) float64 {
	return interference - loss*(rzShaft+rzHub)
}

func gripThrust(seat, length, pressure, friction float64) float64 {
	return friction * math.Pi * seat * length * pressure
}

func gripTorque(seat, length, pressure, friction float64) float64 {
	return gripThrust(seat, length, pressure, friction) * seat / 2
}

func gripUsed(seat, torque, thrust, holds float64) float64 {
	return math.Hypot(2*torque/seat, thrust) / holds
}
