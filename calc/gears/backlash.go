package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Backlash is the play between the teeth of a pair, told in each way it is measured.
type Backlash struct {
	Working     float64  // pressure angle at which the pair now runs
	Circular    q.Length // along the circle on which the wheels now roll
	Normal      q.Length // square to the tooth, as a feeler gauge or a lead wire finds it
	PinionTurns float64  // how far the pinion can be rocked, the wheel held; radians
	WheelTurns  float64  // how far the wheel can be rocked, the pinion held; radians
}

// BacklashAt returns the backlash of a pair whose axes have moved apart.
//
//	cos(φ') = a0·cos(φ)/a', a' = a0 + Δa
//	jn = j0·cos(φ) + 2·a0·cos(φ)·(inv(φ') − inv(φ)), jt = jn/cos(φ')
//
// inv(x) is tan(x) − x; j0 is the circular backlash at the distance a0 of the
// pitch circles, as cut. Without it jt is 2a'·(inv(φ') − inv(φ)). Rocked at the
// pitch circle by an indicator the pair shows jt, by a feeler jn. An axis that
// moves closer has a negative Δa; a negative answer is what the teeth would
// have to go into each other by.
//
//   - Holds for: spur gears, unworn involutes, wheels that run true, shafts parallel.
//   - Beyond: worn flanks, runout and slack bearings add; the least play counts for binding, so turn the pair right round. A shift of two modules and more is refused: the teeth no longer reach each other.
//   - Source: geometry of the involute, worked out.
func BacklashAt(p Pair, before, shift q.Length) (Backlash, []basis.Note, error) {
	if err := firstOf(p.check(), p.checkShift(shift), finite("backlash before", mm(before), float64(before))); err != nil {
		return Backlash{}, nil, err
	}
	if before < 0 {
		return Backlash{}, nil, refuse("backlash before", mm(before), "0 or more")
	}
	a0, φ := p.centre(), p.Pressure
	w := working(a0, φ, float64(shift))
	jn := normalBacklash(a0, φ, float64(before), float64(shift))
	base := float64(p.Module) / 2 * math.Cos(φ) // radius of the base circle, per tooth
	b := Backlash{
		Working: w, Normal: q.Length(jn), Circular: q.Length(jn / math.Cos(w)),
		PinionTurns: jn / (base * float64(p.Pinion)), WheelTurns: jn / (base * float64(p.Wheel)),
	}
	return b, p.backlashNotes(b, shift), nil
}

// BacklashByRule returns the shop's answer to the same question: how much the
// circular backlash grows when the axes move apart.
//
//	j = 2·tan(φ)·Δa
//
// The factor is 0.728 at 20° and 0.517 at 14.5°.
//
//   - Holds for: small shifts. It is the exact growth as the shift goes to nought; 1.6 % short of it at a tenth of a module on 20 and 40 teeth.
//   - Beyond: work the play exactly from both axes. Square to the tooth the play is less, by the cosine.
//   - Source: from memory of Machinery's Handbook and AGMA 2002; worked out as the limit of BacklashAt.
func BacklashByRule(pressure float64, shift q.Length) (q.Length, error) {
	if err := firstOf(checkPressure(pressure), finite("shift of the axes", mm(shift), float64(shift))); err != nil {
		return 0, err
	}
	return q.Length(byRule(pressure, float64(shift))), nil
}

// CentreShift returns how far the axes of a pair move apart when one shaft sinks
// into its bearing along the line of the load.
//
//	Δa = e·cos(θ)
//
// e is how far the axis has moved, θ the angle between the way it moved and the
// line of centres, pointing away from the mate: 0 is straight away, 180° straight
// in, and 90° − φ where only the tooth force wore the bearing.
//
//   - Holds for: shafts that stay parallel, one bearing worn or both alike.
//   - Beyond: moving sideways adds (e·sin(θ))²/(2a) for the distance a of the axes: 2 µm for half a millimetre at 60 mm. A shaft worn at one end only tilts; take e at the middle of the teeth.
//   - Source: geometry.
func CentreShift(moved q.Length, θ float64) (q.Length, error) {
	if err := finite("way the axis moved", mm(moved), float64(moved)); err != nil {
		return 0, err
	}
	if moved < 0 {
		return 0, refuse("way the axis moved", mm(moved), "0 or more; the angle says which way")
	}
	if !(math.Abs(θ) <= math.Pi) {
		return 0, refuse("angle to the line of centres", deg(θ), "-180° to 180°, in radians")
	}
	return q.Length(float64(moved) * math.Cos(θ)), nil
}

// reach is how many modules the tips of standard teeth overlap: geometry, two addenda of 1.
const reach = 2

// tipGap is how many modules a tip stays off the bottom of the space: from memory
// of ISO 53, the standard rack.
const tipGap = 0.25

func (p Pair) checkShift(shift q.Length) error {
	s, a0 := float64(shift), p.centre()
	switch {
	case !(s < reach*float64(p.Module)):
		return refuse("shift of the axes", mm(shift), "less than two modules, "+mm(reach*p.Module)+"; beyond that the teeth do not reach each other")
	case !(s > -a0*(1-math.Cos(p.Pressure))):
		return refuse("shift of the axes", mm(shift), "more than "+mm(q.Length(-a0*(1-math.Cos(p.Pressure))))+"; closer than that the base circles have no line of action between them")
	}
	return nil
}

func (p Pair) backlashNotes(b Backlash, shift q.Length) []basis.Note {
	var out []basis.Note
	if b.Normal < 0 {
		out = append(out, basis.Note{
			Says:   fmt.Sprintf("the pair binds: the teeth would have to go %s into each other", mm(-b.Normal)),
			Source: "geometry", Grade: basis.Derived,
		})
	}
	if shift < -tipGap*p.Module {
		out = append(out, basis.Note{
			Says:   fmt.Sprintf("the tips touch bottom: standard teeth leave only %s there", mm(tipGap*p.Module)),
			Source: "ISO 53, from memory", Grade: basis.Memory,
		})
	}
	return out
}

func normalBacklash(a0, φ, before, shift float64) float64 {
	return math.Cos(φ) * (before + 2*a0*(inv(working(a0, φ, shift))-inv(φ)))
}

func byRule(φ, shift float64) float64 { return 2 * math.Tan(φ) * shift }
