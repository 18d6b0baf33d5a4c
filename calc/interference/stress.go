package interference

import "wornfit/calc/quantity"

// HubHoop returns the stress round the bore of a hub under pressure from inside,
// the greatest in the hub. Brittle iron is judged by it, against its tensile
// strength.
//
//	σ = p·(D²+d²)/(D²−d²)
//
// All in SI units.
//
//   - Holds for: an elastic hub of even wall, as long as the joint; plane stress.
//   - Beyond: about 10 % more at the ends of a hub, 18 % more in a plate a quarter as thick as its bore on a long shaft (finite elements).
//   - Source: Lamé's thick ring, any strength text; worked out.
func HubHoop(bore, outside quantity.Length, pressure quantity.Stress) (quantity.Stress, error) {
	if err := wall(bore, outside, pressure); err != nil {
		return 0, err
	}
	return pressure * quantity.Stress(thick(float64(bore), float64(outside))), nil
}

// BushHoop returns the stress round the bore of a bush or hollow shaft under
// pressure from outside, the greatest in it. It squeezes, so it is negative.
//
//	σ = −2·p·D²/(D²−d²)
//
// All in SI units.
//
//   - Holds for: an elastic ring with a hole, pressed over its whole length; plane stress.
//   - Beyond: a solid shaft has −p everywhere, half of what the smallest hole gives.
//   - Source: Lamé's thick ring, any strength text; worked out.
func BushHoop(bore, outside quantity.Length, pressure quantity.Stress) (quantity.Stress, error) {
	if err := wall(bore, outside, pressure); err != nil {
		return 0, err
	}
	return -pressure * quantity.Stress(1+thick(float64(bore), float64(outside))), nil
}

func wall(bore, outside quantity.Length, pressure quantity.Stress) error {
	if !(bore > 0 && bore < outside) {
		return refuse("bore", mm(bore), "more than 0 and less than the outside diameter, "+mm(outside))
	}
	if !(pressure >= 0) {
		return refuse("pressure", mpa(pressure), "0 or more")
	}
	return nil
}

// RingStress returns the stresses at a diameter inside a ring under pressure from
// inside and from outside: along the radius and round it, negative where it
// squeezes.
//
//	σr, σt = [pi·d² − po·D² ∓ (pi − po)·d²·D²/x²]/(D² − d²)
//
// All in SI units.
//
//   - Holds for: an elastic ring of even wall; plane stress; x from d to D.
//   - Beyond: as HubHoop.
//   - Source: Lamé's thick ring, any strength text; worked out.
func RingStress(bore, outside quantity.Length, inside, around quantity.Stress, x quantity.Length) (radial, hoop quantity.Stress, err error) {
	if err := wall(bore, outside, inside); err != nil {
		return 0, 0, err
	}
	switch {
	case !(around >= 0):
		return 0, 0, refuse("pressure from outside", mpa(around), "0 or more")
	case !(x >= bore && x <= outside):
		return 0, 0, refuse("diameter looked at", mm(x), "from the bore, "+mm(bore)+", to the outside, "+mm(outside))
	}
	d2, D2, x2 := float64(bore*bore), float64(outside*outside), float64(x*x)
	even := (float64(inside)*d2 - float64(around)*D2) / (D2 - d2)
	bent := float64(inside-around) * d2 * D2 / x2 / (D2 - d2)
	return quantity.Stress(even - bent), quantity.Stress(even + bent), nil
}
