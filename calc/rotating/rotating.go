// Package rotating answers how much energy a turning part stores and how fast
// its rim runs: what it can do to somebody when it comes off.
//
// Start with DiscEnergy for a part of even thickness, RimEnergy for one whose
// weight sits outside; a real part lies between, unless it thins outwards. The
// package knows no limit and no burst speed.
package rotating

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Part is what turns, about its own axis.
type Part struct {
	Mass  q.Mass
	Swing q.Length // greatest diameter
	Turns q.Rotation
}

// DiscEnergy returns the energy of a part that turns, taken as a solid disc of
// even thickness.
//
//	E = m·v²/4, v = π·D·n
//
// All in SI units.
//
//   - Holds for: a disc or solid roll turning about its own middle; the least a wheel with a rim can store.
//   - Beyond: a part that thins outwards (a cone, a hub with a thin web) stores less; one with a rim up to twice as much, see RimEnergy.
//   - Source: moment of inertia of a disc, any mechanics text.
func DiscEnergy(p Part) (q.Energy, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	return q.Energy(rim(float64(p.Mass), float64(p.Swing), float64(p.Turns)) / 2), nil
}

// RimEnergy returns the energy of a part that turns, all its mass taken to sit
// at its greatest diameter. No part of that mass and swing stores more.
//
//	E = m·v²/2, v = π·D·n
//
// All in SI units.
//
//   - Holds for: any part turning about its own middle, as the most it can store.
//   - Beyond: one that turns off its middle stores more by its whole mass running round.
//   - Source: moment of inertia of a ring, any mechanics text.
func RimEnergy(p Part) (q.Energy, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	return q.Energy(rim(float64(p.Mass), float64(p.Swing), float64(p.Turns))), nil
}

// RimSpeed returns how fast the surface at a diameter runs.
//
//	v = π·D·n
//
// All in SI units.
//
//   - Holds for: any diameter above 0, at rest or turning.
//   - Beyond: refused.
//   - Source: geometry.
func RimSpeed(swing q.Length, turns q.Rotation) (q.Speed, error) {
	if err := (Part{Mass: 1, Swing: swing, Turns: turns}).check(); err != nil {
		return 0, err
	}
	return q.Speed(rimSpeed(float64(swing), float64(turns))), nil
}

func (p Part) check() error {
	switch {
	case !(p.Mass > 0):
		return refuse("mass", fmt.Sprintf("%.6g kg", float64(p.Mass)), "more than 0")
	case !(p.Swing > 0):
		return refuse("greatest diameter", fmt.Sprintf("%.6g mm", 1e3*float64(p.Swing)), "more than 0")
	case !(p.Turns >= 0):
		return refuse("speed of rotation", fmt.Sprintf("%.6g rpm", 60*float64(p.Turns)), "0 or more, whichever way it turns")
	}
	return nil
}

func rimSpeed(swing, turns float64) float64 { return math.Pi * swing * turns }

func rim(mass, swing, turns float64) float64 {
	v := rimSpeed(swing, turns)
	return mass * v * v / 2
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}
