package interference

import "wornfit/calc/quantity"

// Stroke is a press on its way: the seat of the inner part goes through the hub.
type Stroke struct {
	Seat       quantity.Length // diameter
	SeatLength quantity.Length // of the inner part
	HubLength  quantity.Length
	Travel     quantity.Length // of the seat's leading edge past the mouth of the hub
}

// Engaged returns how much of the seat sits in the hub after a travel. It grows
// to the shorter of the two lengths, stays there while the longer part is pressed
// through, and falls as the seat comes out at the far side.
//
//	engaged = least of travel, seat length, hub length, seat + hub length − travel
//
// All in SI units.
//
//   - Holds for: square ends; take chamfers off the lengths.
//   - Beyond: nothing is left in the hub once the travel reaches both lengths together.
//   - Source: geometry.
func Engaged(s Stroke) (quantity.Length, error) {
	switch {
	case !(s.SeatLength > 0):
		return 0, refuse("length of the seat", mm(s.SeatLength), "more than 0")
	case !(s.HubLength > 0):
		return 0, refuse("length of the hub", mm(s.HubLength), "more than 0")
	case !(s.Travel >= 0 && s.Travel <= s.SeatLength+s.HubLength):
		return 0, refuse("travel", mm(s.Travel), "from 0 to both lengths together, "+mm(s.SeatLength+s.HubLength))
	}
	return min(s.Travel, s.SeatLength, s.HubLength, s.SeatLength+s.HubLength-s.Travel), nil
}

// PressForce returns the force at a point of the stroke; with the travel at the
// shorter length it is the greatest.
//
//	F = µ·π·d·engaged·p
//
// To size a press take the pressure of the greatest interference, nothing off
// for roughness, and the highest friction.
//
//   - Holds for: parts pressed square, elastic, at even pressure.
//   - Beyond: a dry start, a burr or galling takes more; a hub that varies along its length presses unevenly.
//   - Source: friction on a cylinder; any machine-element text.
func PressForce(s Stroke, pressure quantity.Stress, friction float64) (quantity.Force, error) {
	engaged, err := Engaged(s)
	if err != nil {
		return 0, err
	}
	if err := grips(s.Seat, s.HubLength, pressure, friction); err != nil {
		return 0, err
	}
	return quantity.Force(gripThrust(float64(s.Seat), float64(engaged), float64(pressure), friction)), nil
}
