package joints

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Sleeve is a round joint that holds by shear of what is in its gap: braze or
// retaining compound. Sound is the part of it that is filled.
type Sleeve struct {
	Joint, Length q.Length
	Shear         q.Stress // allowed
	Sound         float64
}

// SleeveTorque returns the torque a brazed or bonded sleeve carries.
//
//	T = C·τ·π·d²·L/2
//
// All in SI units.
//
//   - Holds for: shear even over the joint: a sleeve of about equal stiffness inside and out, no longer than some 1.5 diameters; τ an ALLOWED stress.
//   - Beyond: a long sleeve twists more at one end, which then takes most. For braze use a quarter of the ultimate shear or less (common practice, no source): 172 MPa is an ultimate one.
//   - Source: statics.
func SleeveTorque(s Sleeve) (q.Torque, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	return q.Torque(s.force() * float64(s.Joint) / 2), nil
}

// SleeveThrust returns the thrust a brazed or bonded sleeve carries along its axis.
//
//	F = C·τ·π·d·L
//
// All in SI units.
//
//   - Holds for: as SleeveTorque.
//   - Beyond: as SleeveTorque. A compound is never the only stop along a shaft: give it a shoulder or a ring.
//   - Source: statics.
func SleeveThrust(s Sleeve) (q.Force, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	return q.Force(s.force()), nil
}

// SleeveUse returns what part of its strength a sleeve needs for a torque and a
// thrust at once; over 1 it gives way.
//
//	u = √((2·T/d)² + F²)/(C·τ·π·d·L)
//
// Torque and thrust shear the joint at right angles, so their stresses add so.
//
//   - Holds for: as SleeveTorque; either load may be of either sign.
//   - Beyond: bending or prising apart is not in it; both peel a joint open.
//   - Source: statics.
func SleeveUse(s Sleeve, torque q.Torque, thrust q.Force) (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	if math.IsNaN(float64(torque)) || math.IsInf(float64(torque), 0) {
		return 0, refuse("torque", fmt.Sprintf("%.6g N m", float64(torque)), "a torque")
	}
	if math.IsNaN(float64(thrust)) || math.IsInf(float64(thrust), 0) {
		return 0, refuse("thrust", fmt.Sprintf("%.6g N", float64(thrust)), "a force")
	}
	return math.Hypot(2*float64(torque)/float64(s.Joint), float64(thrust)) / s.force(), nil
}

func (s Sleeve) force() float64 {
	return sleeveForce(float64(s.Joint), float64(s.Length), float64(s.Shear), s.Sound)
}

func sleeveForce(joint, length, shear, sound float64) float64 {
	return sound * shear * math.Pi * joint * length
}

func (s Sleeve) check() error {
	if err := above0("diameter of the joint", mm(s.Joint), float64(s.Joint)); err != nil {
		return err
	}
	if err := above0("length of the joint", mm(s.Length), float64(s.Length)); err != nil {
		return err
	}
	if err := above0("shear stress", mpa(s.Shear), float64(s.Shear)); err != nil {
		return err
	}
	if !(s.Sound > 0 && s.Sound <= 1) {
		return refuse("sound part of the joint", fmt.Sprintf("%.4g", s.Sound), "more than 0 and at most 1, such as 0.8")
	}
	return nil
}

func above0(name, value string, x float64) error {
	if !(x > 0) || math.IsInf(x, 0) {
		return refuse(name, value, "more than 0")
	}
	return nil
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }

func mpa(p q.Stress) string { return fmt.Sprintf("%.6g MPa", float64(p)/1e6) }
