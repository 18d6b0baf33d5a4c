package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// enough is the contact ratio that a pair should keep, from memory of
// machine-element texts (Shigley: not below 1.2).
const enough = 1.2

// ContactRatio returns how many pairs of teeth are in mesh on the average when
// the axes of a pair have moved apart.
//
//	ε = (√(ra1² − rb1²) + √(ra2² − rb2²) − a'·sin(φ'))/(π·m·cos(φ))
//
// ra are the outside radii as given, or one module over the pitch circle; rb
// the base circles, a' the distance of the axes and φ' their pressure angle, see
// BacklashAt.
//
//   - Holds for: spur gears, unworn involutes from the base circle to the tip; tips not rounded off.
//   - Beyond: below 1 there is a gap in the drive, which is noted, as is less than 1.2. Tips that reach past the end of the involute dig in and are noted: the ratio then tells too much, as it does of undercut teeth.
//   - Source: geometry of the involute, worked out; any machine-element text.
func ContactRatio(p Pair, shift q.Length) (float64, []basis.Note, error) {
	if err := firstOf(p.check(), p.checkShift(shift)); err != nil {
		return 0, nil, err
	}
	pinion, err := p.tip("outside of the pinion", p.Pinion, p.PinionOutside)
	if err != nil {
		return 0, nil, err
	}
	wheel, err := p.tip("outside of the wheel", p.Wheel, p.WheelOutside)
	if err != nil {
		return 0, nil, err
	}
	a0, φ := p.centre(), p.Pressure
	line := lineOfAction(a0, φ, float64(shift))
	ε := (pinion + wheel - line) / basePitch(float64(p.Module), φ)
	if !(ε > 0) {
		return 0, nil, refuse("shift of the axes", mm(shift), "less: the teeth do not reach each other")
	}
	return ε, p.contactNotes(ε, pinion, wheel, line), nil
}

// tip is how far along the line of action a wheel's tip reaches from its base circle.
func (p Pair) tip(name string, teeth int, outside q.Length) (float64, error) {
	m, z := float64(p.Module), float64(teeth)
	if outside == 0 {
		return tipReach(m, z, p.Pressure, m*(z+2)), nil
	}
	if base := m * z * math.Cos(p.Pressure); !(float64(outside) > base) || math.IsInf(float64(outside), 1) {
		return 0, refuse(name, mm(outside), "more than the base circle, "+mm(q.Length(base)))
	}
	return tipReach(m, z, p.Pressure, float64(outside)), nil
}

func (p Pair) contactNotes(ε, pinion, wheel, line float64) []basis.Note {
	var out []basis.Note
	switch {
	case ε < 1:
		out = append(out, basis.Note{
			Says:   fmt.Sprintf("contact ratio %.2f: one tooth lets go before the next takes hold", ε),
			Source: "geometry", Grade: basis.Derived,
		})
	case ε < enough:
		out = append(out, basis.Note{
			Says:   fmt.Sprintf("contact ratio %.2f; 1.2 is the least that is advised", ε),
			Source: "machine-element texts, from memory", Grade: basis.Memory,
		})
	}
	if wheel > line || pinion > line {
		who, whose := "wheel", "pinion"
		if pinion > line {
			who, whose = "pinion", "wheel"
		}
		out = append(out, basis.Note{
			Says:   fmt.Sprintf("the tips of the %s dig below the base circle of the %s: less of them is in mesh than is counted", who, whose),
			Source: "geometry", Grade: basis.Derived,
		})
	}
	return out
}

// lineOfAction is how long the line between the two base circles is.
func lineOfAction(a0, φ, shift float64) float64 {
	return (a0 + shift) * math.Sin(working(a0, φ, shift))
}

func tipReach(module, teeth, φ, outside float64) float64 {
	base := module * teeth * math.Cos(φ)
	return math.Sqrt((outside-base)*(outside+base)) / 2
}

func basePitch(module, φ float64) float64 { return math.Pi * module * math.Cos(φ) }
