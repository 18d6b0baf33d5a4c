package keyed

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// SharedTorque returns the torque that several like keys, pins or screws carry
// together, when one carries the torque given. Their fits are never alike, so
// that some idle until others have given.
//
//	T = T1·max(1, 0.75·z)
//
// z is their number; 0.75 is the part counted as sharing.
//
//   - Holds for: two to some six of one kind and size, fitted with care.
//   - Beyond: unlike kinds do not share: the stiffer takes all until it gives (a press fit before a key). Splines share by their own rules.
//   - Source: machine-element texts, from memory.
func SharedTorque(one q.Torque, count int) (q.Torque, []basis.Note, error) {
	if err := above0("torque of one", fmt.Sprintf("%.6g N m", float64(one)), float64(one)); err != nil {
		return 0, nil, err
	}
	if count < 1 {
		return 0, nil, refuse("number that share", fmt.Sprint(count), "1 or more")
	}
	return one * q.Torque(bearing(float64(count))), shared("keys or pins", count), nil
}
