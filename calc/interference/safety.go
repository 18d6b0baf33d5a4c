package interference

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// Strength is what a hub's metal stands.
type Strength struct {
	Yield   quantity.Stress // of a ductile metal
	Tensile quantity.Stress // of a brittle one
	Brittle bool            // iron and its like break before they yield
}

// HubSafety returns how many times the pressure in its bore a hub stands, by the
// criterion that is right for its metal: a ductile one by von Mises at the bore
// against its yield, a brittle one by the stress round the bore against its
// tensile strength. Under 1 it is past it, with a note: a ductile hub is pressed
// plastically and holds less than the elastic sum says, a brittle one is broken.
//
//	ductile: n = Re·(1−Q²)/(p·√(3+Q⁴)); brittle: n = Rm·(1−Q²)/(p·(1+Q²)), Q = d/D
//
// All in SI units.
//
//   - Holds for: a hub of even wall, as long as the joint; plane stress; its ends about 10 % worse.
//   - Beyond: holes, keyways and slots through the wall, casting skin and shakes are not in it.
//   - Source: Lamé's stresses at the bore; von Mises; greatest stress for brittle metal, any strength text.
func HubSafety(bore, outside quantity.Length, pressure quantity.Stress, m Strength) (float64, []basis.Note, error) {
	if !(pressure > 0) {
		return 0, nil, refuse("pressure", mpa(pressure), "more than 0")
	}
	var n float64
	what := "the hub yields: the joint holds less than the elastic sum says"
	if m.Brittle {
		if !(m.Tensile > 0) {
			return 0, nil, refuse("tensile strength", mpa(m.Tensile), "more than 0 for a brittle metal")
		}
		hoop, err := HubHoop(bore, outside, pressure)
		if err != nil {
			return 0, nil, err
		}
		n, what = float64(m.Tensile/hoop), "the hub bursts"
	} else {
		yields, err := HubYieldPressure(bore, outside, m.Yield)
		if err != nil {
			return 0, nil, err
		}
		n = float64(yields / pressure)
	}
	if n >= 1 {
		return n, nil, nil
	}
	return n, []basis.Note{{Says: fmt.Sprintf("%s (%.2f of what it stands)", what, 1/n), Source: "Lamé's thick ring", Grade: basis.Derived}}, nil
}
