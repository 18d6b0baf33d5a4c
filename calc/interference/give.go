package interference

import "wornfit/calc/quantity"

// Give is how far a surface moves under pressure: change of diameter per
// diameter and per pressure, in 1/Pa. Two gives and an interference make a joint.
type Give float64

// HubGive returns how much the bore of a hub grows under pressure from inside.
//
//	g = (k + ν)/E, k = (D²+d²)/(D²−d²)
//
// All in SI units.
//
//   - Holds for: an elastic hub of even wall, as long as the joint; plane stress.
//   - Beyond: a hub shorter than half its bore on a longer shaft gives less (pressure 11 % higher at a quarter, by finite elements).
//   - Source: Lamé's thick ring, any strength text; worked out.
func HubGive(hub Ring) (Give, error) {
	if err := hub.bored("hub"); err != nil {
		return 0, err
	}
	return Give(hubGive(hub.thick(), hub.Nu, float64(hub.E))), nil
}

// ShaftGive returns how much a solid or hollow shaft shrinks under pressure from
// outside. A solid shaft has k = 1.
//
//	g = (k − ν)/E, k = (d²+b²)/(d²−b²)
//
// All in SI units.
//
//   - Holds for: an elastic shaft, solid or with a hole right through; plane stress.
//   - Beyond: a shaft that stands out of the hub gives less (pressure 2 % higher when the joint is one diameter long, by finite elements).
//   - Source: Lamé's thick ring, any strength text; worked out.
func ShaftGive(shaft Ring) (Give, error) {
	if err := shaft.round("shaft"); err != nil {
		return 0, err
	}
	return Give(shaftGive(shaft.thick(), shaft.Nu, float64(shaft.E))), nil
}

// BackedBushGive returns how much the bore of a bush grows under pressure from
// inside when a hub of give hub holds it all round.
//
//	g = (k + ν − (k²−1)/(E·hub + k − ν))/E
//
// k²−1 is 4a²b²/(b²−a²)². A hub that gives without end leaves the bare bush.
//
//   - Holds for: a bush that goes on pressing on its hub; it may be pressed or bonded in. Plane stress.
//   - Beyond: a bush that has come loose in its hub gives as HubGive of the bush alone.
//   - Source: two of Lamé's rings joined; worked out, and held to Press by a test.
func BackedBushGive(bush Ring, hub Give) (Give, error) {
	if err := bush.bored("bush"); err != nil {
		return 0, err
	}
	if err := hub.check("hub"); err != nil {
		return 0, err
	}
	return Give(backedBushGive(bush.thick(), bush.Nu, float64(bush.E), float64(hub))), nil
}

// SleeveGive returns how much the outside of a sleeve shrinks under pressure
// from outside when it sits on a shaft of give shaft.
//
//	g = (k − ν − (k²−1)/(E·shaft + k + ν))/E
//
// All in SI units.
//
//   - Holds for: a sleeve that goes on pressing on its shaft; it may be pressed or bonded on. Plane stress.
//   - Beyond: a sleeve that has come loose gives as ShaftGive of the sleeve alone.
//   - Source: two of Lamé's rings joined; worked out, and held to Press by a test.
func SleeveGive(sleeve Ring, shaft Give) (Give, error) {
	if err := sleeve.bored("sleeve"); err != nil {
		return 0, err
	}
	if err := shaft.check("shaft"); err != nil {
		return 0, err
	}
	return Give(sleeveGive(sleeve.thick(), sleeve.Nu, float64(sleeve.E), float64(shaft))), nil
}

// BushPassesOn returns the part of a pressure in the bush's bore that arrives at
// its joint with the hub, on top of what was there: pressing a shaft into a bush
// makes the bush sit tighter.
//
//	q/p = (k − 1)/(E·hub + k − ν)
//
// k−1 is 2a²/(b²−a²).
//
//   - Holds for: a bush that presses on its hub; plane stress.
//   - Beyond: a loose bush passes nothing on until it touches.
//   - Source: two of Lamé's rings joined; worked out, and held to Press by a test.
func BushPassesOn(bush Ring, hub Give) (float64, error) {
	if err := bush.bored("bush"); err != nil {
		return 0, err
	}
	if err := hub.check("hub"); err != nil {
		return 0, err
	}
	return bushPassesOn(bush.thick(), bush.Nu, float64(bush.E), float64(hub)), nil
}

// SleevePassesOn returns the part of a pressure on the sleeve's outside that
// arrives at its joint with the shaft, on top of what was there.
//
//	q/p = (k + 1)/(E·shaft + k + ν)
//
// All in SI units.
//
//   - Holds for: a sleeve that presses on its shaft; plane stress.
//   - Beyond: a loose sleeve passes nothing on until it touches.
//   - Source: two of Lamé's rings joined; worked out, and held to Press by a test.
func SleevePassesOn(sleeve Ring, shaft Give) (float64, error) {
	if err := sleeve.bored("sleeve"); err != nil {
		return 0, err
	}
	if err := shaft.check("shaft"); err != nil {
		return 0, err
	}
	return sleevePassesOn(sleeve.thick(), sleeve.Nu, float64(sleeve.E), float64(shaft)), nil
}

func hubGive(k, nu, e float64) float64   { return (k + nu) / e }
func shaftGive(k, nu, e float64) float64 { return (k - nu) / e }

func backedBushGive(k, nu, e, hub float64) float64 {
	return (k + nu - (k*k-1)/(e*hub+k-nu)) / e
}

func sleeveGive(k, nu, e, shaft float64) float64 {
	return (k - nu - (k*k-1)/(e*shaft+k+nu)) / e
}

func bushPassesOn(k, nu, e, hub float64) float64     { return (k - 1) / (e*hub + k - nu) }
func sleevePassesOn(k, nu, e, shaft float64) float64 { return (k + 1) / (e*shaft + k + nu) }

func (g Give) check(part string) error {
	if !(g > 0) {
		return refuse("give of the "+part, quantityPerPa(g), "more than 0")
	}
	return nil
}

func quantityPerPa(g Give) string { return mm(quantity.Length(1e6*float64(g))) + " per m and MPa" }
