package interference

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// Pushes is what the gauge of a press should show at a point of the stroke.
type Pushes struct {
	Least quantity.Force // under it the joint will not hold what it must
	Most  quantity.Force // over it something gives: stop
}

// StopForces returns the force window at a point of the stroke: too hard means
// galling, a burr or a hub about to yield; too easy means that it will not grip.
//
//	least = µ low·π·d·engaged·p least, most = µ high·π·d·engaged·p most
//
// p least is the pressure at the loosest sizes less the roughness, p most that at
// the tightest with nothing off. The friction is that of PRESSING, which is not
// that of holding later.
//
//   - Holds for: parts pressed square, elastic, at even pressure, slowly; oil or paste as when the friction was found.
//   - Beyond: the first tenth of the stroke is lead and chamfer: read the gauge from a quarter on.
//   - Source: friction on a cylinder; any machine-element text.
func StopForces(s Stroke, least, most quantity.Stress, low, high float64) (Pushes, []basis.Note, error) {
	if !(low <= high) {
		return Pushes{}, nil, refuse("lowest friction", fmt.Sprintf("%.3g", low), fmt.Sprintf("no more than the highest, %.3g", high))
	}
	if !(least <= most) {
		return Pushes{}, nil, refuse("least pressure", mpa(least), "no more than the most, "+mpa(most))
	}
	hard, err := PressForce(s, most, high)
	if err != nil {
		return Pushes{}, nil, err
	}
	easy, err := PressForce(s, max(least, 0), low)
	if err != nil {
		return Pushes{}, nil, err
	}
	if least > 0 {
		return Pushes{Least: easy, Most: hard}, nil, nil
	}
	return Pushes{Most: hard}, []basis.Note{{Says: "at its loosest the joint does not press at all: no force tells that it holds", Source: "friction on a cylinder", Grade: basis.Derived}}, nil
}
