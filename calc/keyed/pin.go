package keyed

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// RoundPins are straight pins driven along the joint, half in the shaft and
// half in the hub or bush.
type RoundPins struct {
	Joint, Pin, Length q.Length // diameter of the joint, of a pin, length of a pin
	Count              int
}

// sharing is the part of several pins that is counted as bearing, because they
// never share evenly: from memory of machine-element texts.
const sharing = 0.75

// slender and stout are the pins that are usual for a joint, as parts of its
// diameter: common practice, no source.
const slender, stout = 0.15, 0.25

// PinShearTorque returns the torque at which round pins half in each part shear.
//
//	T = z·τ·d·L·D/2, z = 1 for one pin, 0.75 of their number for several
//
// All in SI units.
//
//   - Holds for: straight pins, tight in their holes, drilled on the joint.
//   - Beyond: pins outside 0.15 to 0.25 of the joint are noted. Beside a press fit or braze they are a backup: the stiffer joint takes the load first. A taper pin does not stand reversals.
//   - Source: statics, the form of machine-element texts (Decker; Roloff/Matek, from memory); the sharing from memory.
func PinShearTorque(p RoundPins, shear q.Stress) (q.Torque, []basis.Note, error) {
	return p.torque("shear stress", shear, 1)
}

// PinCrushTorque returns the torque at which the holes of round pins half in
// each part are crushed: the half depth of a pin bears.
//
//	T = z·p·(d/2)·L·D/2, z = 1 for one pin, 0.75 of their number for several
//
// All in SI units.
//
//   - Holds for: straight pins, tight in their holes; p of the weakest of shaft, hub and pin.
//   - Beyond: pins outside 0.15 to 0.25 of the joint are noted. An iron hub or thin bush usually cracks at the hole before the pin shears.
//   - Source: statics, the form of machine-element texts (Decker; Roloff/Matek, from memory); the sharing from memory.
func PinCrushTorque(p RoundPins, crush q.Stress) (q.Torque, []basis.Note, error) {
	return p.torque("crushing stress", crush, 0.5)
}

// torque is that of a stress on a part of each pin's diameter.
func (p RoundPins) torque(what string, stress q.Stress, part float64) (q.Torque, []basis.Note, error) {
	if err := above0("diameter of the joint", mm(p.Joint), float64(p.Joint)); err != nil {
		return 0, nil, err
	}
	if !(p.Pin > 0 && p.Pin < p.Joint) {
		return 0, nil, refuse("diameter of the pin", mm(p.Pin), "more than 0 and less than the joint, "+mm(p.Joint))
	}
	if err := above0("length of the pin", mm(p.Length), float64(p.Length)); err != nil {
		return 0, nil, err
	}
	if p.Count < 1 {
		return 0, nil, refuse("number of pins", fmt.Sprint(p.Count), "1 or more")
	}
	if err := above0(what, mpa(stress), float64(stress)); err != nil {
		return 0, nil, err
	}
	t := bearing(float64(p.Count)) * shearTorque(float64(p.Joint), part*float64(p.Pin), float64(p.Length), float64(stress))
	return q.Torque(t), p.notes(), nil
}

func (p RoundPins) notes() []basis.Note {
	var out []basis.Note
	if r := p.Pin / p.Joint; r < slender*(1-1e-9) || r > stout*(1+1e-9) {
		out = append(out, basis.Note{
			Says:   fmt.Sprintf("the pin is %.2f of the joint; 0.15 to 0.25 is usual", r),
			Source: "common practice, no source", Grade: basis.Practice,
		})
	}
	return append(out, shared("pins", p.Count)...)
}

// shared is the note that goes with several of a kind.
func shared(kind string, count int) []basis.Note {
	if count < 2 {
		return nil
	}
	return []basis.Note{{
		Says:   "of several " + kind + " only three quarters are counted as sharing",
		Source: "machine-element texts, from memory", Grade: basis.Memory,
	}}
}

// bearing is how many of a number of pins are counted; it never falls.
func bearing(count float64) float64 { return max(1, sharing*count) }

// CrossPin is a pin right through a hub and its shaft, at right angles.
type CrossPin struct {
	Shaft, Hub, Pin q.Length // diameter of the shaft, outside of the hub, diameter of the pin
}

// CrossPinTorque are the torques at which a cross pin joint gives way.
type CrossPinTorque struct {
	Shear q.Torque // both ends of the pin shear at the joint
	Shaft q.Torque // the hole in the shaft is crushed
	Hub   q.Torque // the hole in the hub is crushed
}

// CrossPinHolds returns the torques at which a cross pin shears, and at which the
// holes in shaft and hub are crushed. The smallest counts.
//
//	shear: T = τ·π·d²·D/4; shaft: T = p·d·D²/6; hub: T = p·d·(Dh²−D²)/4
//
// Pressure in the shaft rises from nothing at its middle; that on the hub's wall
// is taken as even.
//
//   - Holds for: a tight pin through the middle of the shaft, a hub of even wall; each hole with its own crushing stress.
//   - Beyond: a pin over a third of the shaft is noted: it takes too much of it. The hole raises the stress in the shaft; that is not counted here.
//   - Source: statics, worked out; the form of machine-element texts (Decker; Roloff/Matek, from memory).
func CrossPinHolds(c CrossPin, shear, crushShaft, crushHub q.Stress) (CrossPinTorque, []basis.Note, error) {
	if err := above0("shaft diameter", mm(c.Shaft), float64(c.Shaft)); err != nil {
		return CrossPinTorque{}, nil, err
	}
	if !(c.Pin > 0 && c.Pin < c.Shaft) {
		return CrossPinTorque{}, nil, refuse("diameter of the pin", mm(c.Pin), "more than 0 and less than the shaft, "+mm(c.Shaft))
	}
	if !(c.Hub > c.Shaft) {
		return CrossPinTorque{}, nil, refuse("outside of the hub", mm(c.Hub), "more than the shaft, "+mm(c.Shaft))
	}
	for _, s := range []struct {
		name string
		q.Stress
	}{{"shear stress", shear}, {"crushing stress of the shaft", crushShaft}, {"crushing stress of the hub", crushHub}} {
		if err := above0(s.name, mpa(s.Stress), float64(s.Stress)); err != nil {
			return CrossPinTorque{}, nil, err
		}
	}
	d, shaft, hub := float64(c.Pin), float64(c.Shaft), float64(c.Hub)
	return CrossPinTorque{
		Shear: q.Torque(crossShear(shaft, d, float64(shear))),
		Shaft: q.Torque(crossShaft(shaft, d, float64(crushShaft))),
		Hub:   q.Torque(crossHub(shaft, hub, d, float64(crushHub))),
	}, c.notes(), nil
}

func (c CrossPin) notes() []basis.Note {
	if 3*c.Pin <= c.Shaft*(1+1e-9) {
		return nil
	}
	return []basis.Note{{
		Says:   fmt.Sprintf("the pin is %.2f of the shaft; a third is the most that is usual", c.Pin/c.Shaft),
		Source: "common practice, no source", Grade: basis.Practice,
	}}
}

func crossShear(shaft, pin, shear float64) float64 { return math.Pi / 4 * shear * pin * pin * shaft }

func crossShaft(shaft, pin, crush float64) float64 { return crush * pin * shaft * shaft / 6 }

func crossHub(shaft, hub, pin, crush float64) float64 {
	return crush * pin * (hub - shaft) * (hub + shaft) / 4
}
