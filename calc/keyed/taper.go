package keyed

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Taper is a key driven between the bottom of its keyways, 1 in 100 as a rule.
// It grips by top and bottom, not by its sides. Seat is how deep its bottom lies
// below the surface of the shaft: 0 for a saddle key on the bare shaft.
type Taper struct {
	Shaft, Width, Length, Seat q.Length
}

// TaperKeyTorque returns the torque a driven taper key carries by friction alone,
// on the key itself and on the far side where it pulls hub and shaft together.
//
//	T = μ·p·b·L·(d − t)
//
// The lever is d/2 − t at the bottom of the key and d/2 on the far side.
//
//   - Holds for: a key fitted over its whole length, p the pressure it was driven to, friction the same on both sides.
//   - Beyond: when friction gives, a sunk key goes on as a parallel key with play at its sides. The hub is pushed off centre by its clearance and hammers at speed: noted.
//   - Source: statics, worked out; the form with friction on two sides from memory of machine-element texts.
func TaperKeyTorque(k Taper, pressure q.Stress, friction float64) (q.Torque, []basis.Note, error) {
	if err := k.check(pressure, friction); err != nil {
		return 0, nil, err
	}
	t := taperTorque(float64(k.Shaft), float64(k.Width), float64(k.Length), float64(k.Seat), float64(pressure), friction)
	return q.Torque(t), []basis.Note{{
		Says:   "a taper key sets the hub off centre by half its clearance; above some 1200 a minute that shakes",
		Source: "an encyclopaedia article on keys, read as an extract", Grade: basis.Secondary,
	}}, nil
}

// TaperKeyDrive returns the force along the shaft that drives a taper key to a
// pressure. Slope is the taper: 0.01 for 1 in 100.
//
//	F = p·b·L·(tan(α + ρ) + tan ρ), tan α = slope, tan ρ = μ
//
// One face slopes, both rub.
//
//   - Holds for: a steady push. A hammer drives by blows: the force is then that of the blow.
//   - Beyond: a key comes out by itself when it slopes more than both faces rub, α over 2·ρ: refused.
//   - Source: statics of a wedge.
func TaperKeyDrive(k Taper, pressure q.Stress, slope, friction float64) (q.Force, error) {
	if err := k.check(pressure, friction); err != nil {
		return 0, err
	}
	if !(slope > 0 && math.Atan(slope) <= 2*math.Atan(friction)) {
		return 0, refuse("taper", fmt.Sprintf("%.4g", slope),
			fmt.Sprintf("more than 0 and at most %.4g, or the key backs out; 0.01 is usual", math.Tan(2*math.Atan(friction))))
	}
	return q.Force(float64(pressure) * float64(k.Width*k.Length) * wedge(slope, friction)), nil
}

func (k Taper) check(pressure q.Stress, friction float64) error {
	if err := (Key{Shaft: k.Shaft, Width: k.Width, Depth: 1, Length: k.Length}).check(); err != nil {
		return err
	}
	if !(k.Seat >= 0 && k.Seat < k.Shaft/2) {
		return refuse("depth of the key's bottom", mm(k.Seat), "0 or more and less than half the shaft, "+mm(k.Shaft/2))
	}
	if err := above0("pressure on the key", mpa(pressure), float64(pressure)); err != nil {
		return err
	}
	if !(friction > 0 && friction < 1) {
		return refuse("friction", fmt.Sprintf("%.4g", friction), "between 0 and 1, such as 0.1")
	}
	return nil
}

func taperTorque(shaft, width, length, seat, pressure, friction float64) float64 {
	return friction * pressure * width * length * (shaft - seat)
}

// wedge is the push per load of a wedge with one sloping face and two that rub;
// the sum of angles is worked out, so that no angle is taken back.
func wedge(slope, friction float64) float64 {
	return (slope+friction)/(1-slope*friction) + friction
}
