package interference

import "wornfit/calc/quantity"

// CloseIn returns by how much the bore of a pressed bush gets smaller.
//
//	close-in = 2·p·d·D²/(E·(D²−d²))
//
// p is the pressure on its outside. The share of the interference that reaches
// the bore is no constant: 0.93 for a thin bronze bush in heavy steel, 0.33 in a
// thin aluminium boss.
//
//   - Holds for: an elastic bush held over its whole length; plane stress.
//   - Beyond: an end that stands proud does not close in; an uneven housing leaves the bore tapered (both seen in finite elements).
//   - Source: Lamé's thick ring, any strength text; worked out.
func CloseIn(bush Ring, pressure quantity.Stress) (quantity.Length, error) {
	if err := pressed(bush, "bush", pressure); err != nil {
		return 0, err
	}
	return quantity.Length(closeIn(float64(bush.Bore), float64(bush.Outside), float64(bush.E), float64(pressure))), nil
}

// SleeveGrowth returns by how much the outside of a sleeve or hub gets larger
// under pressure in its bore.
//
//	growth = 2·p·D·d²/(E·(D²−d²))
//
// All in SI units.
//
//   - Holds for: an elastic ring of even wall, as long as the joint; plane stress.
//   - Beyond: a wall that changes along the length grows unevenly; turn the outside after pressing.
//   - Source: Lamé's thick ring, any strength text; worked out.
func SleeveGrowth(sleeve Ring, pressure quantity.Stress) (quantity.Length, error) {
	if err := pressed(sleeve, "sleeve", pressure); err != nil {
		return 0, err
	}
	return quantity.Length(growth(float64(sleeve.Bore), float64(sleeve.Outside), float64(sleeve.E), float64(pressure))), nil
}

func pressed(r Ring, part string, pressure quantity.Stress) error {
	if err := r.bored(part); err != nil {
		return err
	}
	if !(pressure >= 0) {
		return refuse("pressure", mpa(pressure), "0 or more")
	}
	return nil
}

func closeIn(bore, outside, e, pressure float64) float64 {
	q := bore / outside
	return 2 * pressure * bore / (e * (1 - q*q))
}

func growth(bore, outside, e, pressure float64) float64 {
	return pressure * outside * (thick(bore, outside) - 1) / e
}
