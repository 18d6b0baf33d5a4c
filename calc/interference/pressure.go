package interference

import (
	"fmt"

	"wornfit/calc/quantity"
)

// Pair is a shaft in a hub of whatever materials.
type Pair struct {
	Bore    quantity.Length // the shaft's own hole, 0 if solid
	Seat    quantity.Length // where they meet
	Outside quantity.Length // of the hub
	Shaft   Elastic
	Hub     Elastic
}

// ContactPressure returns the pressure between shaft and hub for an
// interference on diameter.
//
//	p = δ / (d·(hub give + shaft give))
//	  = δ / { d·[ ((D²+d²)/(D²−d²) + νo)/Eo + ((d²+b²)/(d²−b²) − νi)/Ei ] }
//
// All in SI units.
//
//   - Holds for: elastic parts of even wall and equal length; plane stress, confirmed by finite elements to 0.05 %.
//   - Beyond: the shaft standing out of the hub raises it: 2 % for a joint one diameter long, 11 % for a plate a quarter as thick as its bore; sticking faces 1 to 9 %. A hub past YieldPressure grips less than this says.
//   - Source: Lamé's thick ring in plane stress, any strength text; DIN 7190 uses the same form (from memory).
func ContactPressure(p Pair, interference quantity.Length) (quantity.Stress, error) {
	shaft, hub, err := p.gives()
	if err != nil {
		return 0, err
	}
	return JointPressure(p.Seat, interference, shaft, hub)
}

// JointPressure returns the pressure in a joint whose two sides give as stated.
//
//	p = δ / (d·(outer + inner))
//
// All in SI units.
//
//   - Holds for: whatever the gives hold for.
//   - Beyond: an interference that takes a side past its yield.
//   - Source: the two sides together move by the interference; worked out.
func JointPressure(seat, interference quantity.Length, inner, outer Give) (quantity.Stress, error) {
	if err := joint(seat, inner, outer); err != nil {
		return 0, err
	}
	if !(interference >= 0 && interference < seat) {
		return 0, refuse("interference", mm(interference), "0 or more (a clearance presses on nothing) and less than the seat, "+mm(seat))
	}
	return quantity.Stress(jointPressure(float64(seat), float64(interference), float64(inner), float64(outer))), nil
}

// InterferenceFor returns the interference on diameter that gives a wanted
// pressure between shaft and hub.
//
//	δ = p·d·(hub give + shaft give)
//
// All in SI units.
//
//   - Holds for: as ContactPressure.
//   - Beyond: as ContactPressure; roughness pressed flat must be added (see Effective).
//   - Source: ContactPressure turned round.
func InterferenceFor(p Pair, pressure quantity.Stress) (quantity.Length, error) {
	shaft, hub, err := p.gives()
	if err != nil {
		return 0, err
	}
	if !(pressure >= 0) {
		return 0, refuse("pressure", mpa(pressure), "0 or more")
	}
	return quantity.Length(float64(pressure) * float64(p.Seat) * float64(shaft+hub)), nil
}

func (p Pair) gives() (shaft, hub Give, err error) {
	if shaft, err = ShaftGive(Ring{p.Bore, p.Seat, p.Shaft}); err != nil {
		return 0, 0, err
	}
	hub, err = HubGive(Ring{p.Seat, p.Outside, p.Hub})
	return shaft, hub, err
}

func joint(seat quantity.Length, inner, outer Give) error {
	if !(seat > 0) {
		return refuse("seat", mm(seat), "more than 0")
	}
	if !(inner >= 0 && outer >= 0 && inner+outer > 0) {
		return refuse("give of the joint", fmt.Sprintf("%.4g inside and %.4g outside", inner, outer), "0 (rigid) or more on each side and more than 0 together")
	}
	return nil
}

func jointPressure(seat, interference, inner, outer float64) float64 {
	return interference / (seat * (inner + outer))
}
