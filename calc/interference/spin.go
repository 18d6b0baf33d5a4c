package interference

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Spin is a pair that turns fast enough for its own mass to loosen it.
type Spin struct {
	Pair
	Interference q.Length
	ShaftDensity q.Density
	HubDensity   q.Density
}

// LooseningSpeed returns the speed at which a turning hub has grown off its
// shaft and presses no more.
//
//	δ/d = ω²·{ρo·[(3+νo)·D² + (1−νo)·d²]/Eo − ρi·[(1−νi)·d² + (3+νi)·b²]/Ei}/16
//
// One material, solid shaft: ω² = 16·E·δ/((3+ν)·ρ·d·D²).
//
//   - Holds for: elastic discs of even thickness, free to grow; plane stress.
//   - Beyond: below a fifth of this speed the loss is under 4 %. Rim weights, blades and teeth loosen earlier.
//   - Source: Lamé's ring with its own mass (rotating disc), any strength text; worked out.
func LooseningSpeed(s Spin) (q.Rotation, error) {
	if _, err := s.pressureAtRest(); err != nil {
		return 0, err
	}
	opens := s.opens()
	if !(opens > 0) {
		return 0, refuse("growth of the hub over the shaft", fmt.Sprintf("%.3g per (rad/s)²", opens), "more than 0: this shaft grows more than its hub, no speed loosens them")
	}
	return q.Rotation(math.Sqrt(float64(s.Interference/s.Seat)/opens) / (2 * math.Pi)), nil
}

// SpinningPressure returns the pressure between shaft and hub at speed. It falls
// as the square of the speed; faces that have parted press with 0, with a note.
//
//	p = p rest − (growth of hub over shaft)·ω²/(hub give + shaft give) = p rest·[1 − (n/n loose)²]
//
// The growth is that of LooseningSpeed.
//
//   - Holds for: as LooseningSpeed.
//   - Beyond: as LooseningSpeed.
//   - Source: Lamé's ring with its own mass (rotating disc), any strength text; worked out.
func SpinningPressure(s Spin, speed q.Rotation) (q.Stress, []basis.Note, error) {
	rest, err := s.pressureAtRest()
	if err != nil {
		return 0, nil, err
	}
	if !(speed >= 0) {
		return 0, nil, refuse("speed", fmt.Sprintf("%.6g rpm", 60*float64(speed)), "0 or more")
	}
	shaft, hub, err := s.gives()
	if err != nil {
		return 0, nil, err
	}
	ω := 2 * math.Pi * float64(speed)
	p := rest - q.Stress(s.opens()*ω*ω/float64(shaft+hub))
	if p > 0 {
		return p, nil, nil
	}
	return 0, []basis.Note{{Says: "nothing presses any more at this speed", Source: "rotating disc", Grade: basis.Derived}}, nil
}

func (s Spin) pressureAtRest() (q.Stress, error) {
	for _, part := range []struct {
		name string
		ρ    q.Density
	}{{"shaft", s.ShaftDensity}, {"hub", s.HubDensity}} {
		if !(part.ρ > 0) {
			return 0, refuse("density of the "+part.name, fmt.Sprintf("%.6g kg/m³", float64(part.ρ)), "more than 0")
		}
	}
	return ContactPressure(s.Pair, s.Interference)
}

// opens is how much further the hub's bore grows than the shaft, per diameter
// and per ω².
func (s Spin) opens() float64 {
	b, d, D := float64(s.Bore), float64(s.Seat), float64(s.Outside)
	hub := float64(s.HubDensity) / float64(s.Hub.E) * ((3+s.Hub.Nu)*D*D + (1-s.Hub.Nu)*d*d)
	shaft := float64(s.ShaftDensity) / float64(s.Shaft.E) * ((1-s.Shaft.Nu)*d*d + (3+s.Shaft.Nu)*b*b)
	return (hub - shaft) / 16
}
