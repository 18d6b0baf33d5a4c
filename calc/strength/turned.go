package strength

import q "wornfit/calc/quantity"

// StrengthLeft returns the part of its strength in bending and torsion that a
// shaft keeps after turning down. A solid one keeps the cube of the ratio.
//
//	left = (now⁴−b⁴)/now · was/(was⁴−b⁴); solid: (now/was)³
//
// All in SI units.
//
//   - Holds for: nominal stress, the same load and material.
//   - Beyond: a new shoulder takes more, see FilletBending; case hardening turned off takes its own.
//   - Source: section modulus of a round bar, any strength text.
func StrengthLeft(bore, was, now q.Length) (float64, error) {
	if err := turned(bore, was, now); err != nil {
		return 0, err
	}
	return strengthLeft(float64(bore), float64(was), float64(now)), nil
}

// StiffnessLeft returns the part of its stiffness in bending and torsion that a
// shaft keeps where it is turned down. A solid one keeps the fourth power.
//
//	left = (now⁴−b⁴)/(was⁴−b⁴); solid: (now/was)⁴
//
// All in SI units.
//
//   - Holds for: the length that is turned down.
//   - Beyond: a shaft turned down over a short length loses less as a whole.
//   - Source: second moment of area of a round bar, any strength text.
func StiffnessLeft(bore, was, now q.Length) (float64, error) {
	if err := turned(bore, was, now); err != nil {
		return 0, err
	}
	return stiffnessLeft(float64(bore), float64(was), float64(now)), nil
}

// HubWall returns the metal left on each side between a bore and the outside.
// Measure to the bottom of teeth, threads, keyways and holes.
//
//	wall = (D−d)/2
//
// All in SI units.
//
//   - Holds for: a bore in the middle of the outside.
//   - Beyond: a bore off centre leaves its offset less on one side.
//   - Source: geometry.
func HubWall(bore, outside q.Length) (q.Length, error) {
	if !(bore > 0 && bore < outside) {
		return 0, refuse("bore", mm(bore), "more than 0 and less than the outside diameter, "+mm(outside))
	}
	return (outside - bore) / 2, nil
}

func turned(bore, was, now q.Length) error {
	if !(was > 0) {
		return refuse("diameter before", mm(was), "more than 0")
	}
	if !(now > 0 && now <= was) {
		return refuse("diameter after", mm(now), "more than 0 and no more than before, "+mm(was))
	}
	if !(bore >= 0 && bore < now) {
		return refuse("bore", mm(bore), "0 (solid) or more and less than the diameter after, "+mm(now))
	}
	return nil
}

func strengthLeft(bore, was, now float64) float64 {
	return stiffnessLeft(bore, was, now) * was / now
}

func stiffnessLeft(bore, was, now float64) float64 {
	b, w, n := bore*bore, was*was, now*now
	return (n - b) / (w - b) * (n + b) / (w + b)
}
