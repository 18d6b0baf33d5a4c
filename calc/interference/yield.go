package interference

import (
	"math"

	"wornfit/calc/quantity"
)

// HubYieldPressure returns the pressure in its bore at which a hub first yields,
// by von Mises.
//
//	p = Re·(1−Q²)/√(3+Q⁴), Q = d/D
//
// DIN 7190 writes √3 below (from memory): 1 % higher at Q 0.5, 10 % at Q 0.9.
//
//   - Holds for: a ductile hub of even wall, as long as the joint; plane stress.
//   - Beyond: the ends of a hub yield about 10 % earlier; brittle iron breaks instead, see HubHoop.
//   - Source: Lamé's stresses at the bore put into von Mises; worked out.
func HubYieldPressure(bore, outside quantity.Length, yield quantity.Stress) (quantity.Stress, error) {
	if err := yielding(bore > 0, bore, outside, yield); err != nil {
		return 0, err
	}
	return quantity.Stress(hubYield(float64(bore), float64(outside), float64(yield))), nil
}

// BushYieldPressure returns the pressure on its outside at which a bush or a
// shaft first yields. With a hole it yields there, at half the stress a solid
// shaft bears.
//
//	p = Re·(1−q²)/2, q = b/d; solid: p = Re
//
// All in SI units.
//
//   - Holds for: a ductile bush or shaft, pressed over its whole length; plane stress. von Mises and Tresca agree here.
//   - Beyond: a bush that yields hot is loose when cold again.
//   - Source: Lamé's stresses at the hole put into von Mises; worked out.
func BushYieldPressure(bore, outside quantity.Length, yield quantity.Stress) (quantity.Stress, error) {
	if err := yielding(bore >= 0, bore, outside, yield); err != nil {
		return 0, err
	}
	return quantity.Stress(bushYield(float64(bore), float64(outside), float64(yield))), nil
}

func yielding(bored bool, bore, outside quantity.Length, yield quantity.Stress) error {
	if !(bored && bore < outside) {
		return refuse("bore", mm(bore), "a hole smaller than the outside diameter, "+mm(outside))
	}
	if !(yield > 0) {
		return refuse("yield strength", mpa(yield), "more than 0")
	}
	return nil
}

func hubYield(bore, outside, yield float64) float64 {
	q := bore / outside
	q *= q
	return yield * (1 - q) / math.Sqrt(3+q*q)
}

func bushYield(bore, outside, yield float64) float64 {
	if bore == 0 {
		return yield
	}
	q := bore / outside
	return yield * (1 - q*q) / 2
}
