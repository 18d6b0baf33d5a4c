package joints

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Braze is a brazed lap: what the weaker member pulls, what the filler shears at
// and how much of the gap is sound metal.
type Braze struct {
	Tensile q.Stress // of the weaker member, as it is after the heat
	Shear   q.Stress // of the filler in the joint
	Sound   float64  // part of the lap that is filled; 0.8 is usual
}

// Lap is the overlap of a brazed joint.
type Lap struct {
	Balance q.Length // the lap shears when the member pulls apart
	Rule    q.Length // three times the thinner member
}

// Length is the lap to make: the longer of the two.
func (l Lap) Length() q.Length { return max(l.Balance, l.Rule) }

// three is how many times the thinner member a lap is made at least: a brazing
// handbook, read as an extract; tests of an AWS standard say the member fails from
// 2.3 on, read in what quotes it.
const three = 3

// FlatLap returns the overlap at which a brazed flat lap is as strong as its
// weaker member, and the least by the rule.
//
//	X = T·W/(C·L); X ≥ 3·W
//
// T is the tensile strength of the member, W its thickness, C the sound part, L
// the shear strength of the filler, an ULTIMATE one: 172 MPa is typical of silver.
//
//   - Holds for: silver-brazed laps of thin members pulled along; the member as soft as the heat left it.
//   - Beyond: a lap far over the rule carries no more: its ends take the load. Bending peels it. Shock and fatigue want a factor besides.
//   - Source: a brazing filler maker's handbook (The Brazing Book), read as an extract; a balance of forces.
func FlatLap(thickness q.Length, b Braze) (Lap, []basis.Note, error) {
	if err := b.check(); err != nil {
		return Lap{}, nil, err
	}
	if err := above0("thickness of the thinner member", mm(thickness), float64(thickness)); err != nil {
		return Lap{}, nil, err
	}
	return lap(thickness, flatLap(float64(thickness), float64(b.Tensile), float64(b.Shear), b.Sound))
}

// TubeLap returns the overlap at which a brazed tube in a socket is as strong as
// the tube, and the least by the rule.
//
//	X = W·(D − W)·T/(C·L·D); X ≥ 3·W
//
// D is the outside diameter of the lap, W the wall of the weaker member.
//
//   - Holds for: a tube pulled along its axis; as FlatLap.
//   - Beyond: as FlatLap. For a bush or sleeve under torque use Sleeve.
//   - Source: as FlatLap.
func TubeLap(outside, wall q.Length, b Braze) (Lap, []basis.Note, error) {
	if err := b.check(); err != nil {
		return Lap{}, nil, err
	}
	if err := above0("outside diameter of the lap", mm(outside), float64(outside)); err != nil {
		return Lap{}, nil, err
	}
	if !(wall > 0 && wall <= outside/2) {
		return Lap{}, nil, refuse("wall of the thinner member", mm(wall), "more than 0 and at most half the outside, "+mm(outside/2))
	}
	return lap(wall, tubeLap(float64(outside), float64(wall), float64(b.Tensile), float64(b.Shear), b.Sound))
}

// lap joins the balance with the rule and says which one decides.
func lap(thinner q.Length, balance float64) (Lap, []basis.Note, error) {
	l := Lap{Balance: q.Length(balance), Rule: three * thinner}
	says := "the rule of three times the thinner member decides"
	if l.Balance > l.Rule {
		says = "three times the thinner member is not enough for these strengths"
	}
	return l, []basis.Note{{Says: says, Source: "a brazing filler maker's handbook", Grade: basis.Page}}, nil
}

func (b Braze) check() error {
	if err := above0("tensile strength of the member", mpa(b.Tensile), float64(b.Tensile)); err != nil {
		return err
	}
	if err := above0("shear strength of the filler", mpa(b.Shear), float64(b.Shear)); err != nil {
		return err
	}
	if !(b.Sound > 0 && b.Sound <= 1) {
		return refuse("sound part of the lap", fmt.Sprintf("%.4g", b.Sound), "more than 0 and at most 1, such as 0.8")
	}
	return nil
}

// Gap is a brazed joint of two round parts: the diametral gap cold, and how much
// each part is warmed.
type Gap struct {
	Cold, Joint          q.Length
	Outer, Inner         q.Expansion // mean, from cold to brazing heat
	OuterRise, InnerRise q.TemperatureChange
}

// The gap on a diameter that silver braze fills well, 0.001 to 0.005 in a side: a
// brazing filler maker's sheet, read as an extract.
const (
	leastGap = 2 * 0.001 * inch
	mostGap  = 2 * 0.005 * inch
	inch     = 0.0254 // exact by definition
)

// HotGap returns the diametral gap a braze meets at its temperature.
//
//	c' = c + (αo·ΔTo − αi·ΔTi)·d
//
// With both parts as hot it is c + (αo − αi)·d·ΔT. Below 0 the parts bind.
//
//   - Holds for: parts heated through and free to grow; mean expansions up to the brazing heat, which are higher than the warm ones of handbooks.
//   - Beyond: outside 0.05 to 0.25 mm on the diameter it is noted: less does not fill, more does not draw by itself. On cooling the gap goes back and stretches or squeezes the braze: unlike metals crack it.
//   - Source: geometry; the gap of silver braze from a filler maker's sheet, read.
func HotGap(g Gap) (q.Length, []basis.Note, error) {
	if math.IsNaN(float64(g.Cold)) || math.IsInf(float64(g.Cold), 0) {
		return 0, nil, refuse("gap when cold", mm(g.Cold), "a size")
	}
	if err := above0("diameter of the joint", mm(g.Joint), float64(g.Joint)); err != nil {
		return 0, nil, err
	}
	for _, e := range []struct {
		name string
		x    float64
	}{{"expansion of the outer part", float64(g.Outer)}, {"expansion of the inner part", float64(g.Inner)}} {
		if !(e.x >= 0 && e.x < 1e-3) {
			return 0, nil, refuse(e.name, fmt.Sprintf("%.4g per K", e.x), "0 or more and under 0.001 per K")
		}
	}
	for _, r := range []struct {
		name string
		x    float64
	}{{"warming of the outer part", float64(g.OuterRise)}, {"warming of the inner part", float64(g.InnerRise)}} {
		if !(math.Abs(r.x) <= 3000) {
			return 0, nil, refuse(r.name, fmt.Sprintf("%.4g K", r.x), "a change of at most 3000 K")
		}
	}
	hot := hotGap(float64(g.Cold), float64(g.Joint), float64(g.Outer), float64(g.Inner), float64(g.OuterRise), float64(g.InnerRise))
	return q.Length(hot), gapNotes(hot), nil
}

func gapNotes(hot float64) []basis.Note {
	var says string
	switch {
	case hot <= 0:
		says = "the parts bind when hot: no braze gets in"
	case hot < leastGap*(1-1e-9):
		says = "under 0.05 mm on the diameter the braze does not run through"
	case hot > mostGap*(1+1e-9):
		says = "over 0.25 mm on the diameter the gap does not draw braze in, and the joint is no stronger than the filler"
	default:
		return nil
	}
	return []basis.Note{{Says: says, Source: "a brazing filler maker's sheet", Grade: basis.Page}}
}

func flatLap(thickness, tensile, shear, sound float64) float64 {
	return tensile * thickness / (sound * shear)
}

func tubeLap(outside, wall, tensile, shear, sound float64) float64 {
	return wall * (outside - wall) * tensile / (sound * shear * outside)
}

func hotGap(cold, joint, outer, inner, outerRise, innerRise float64) float64 {
	return cold + (outer*outerRise-inner*innerRise)*joint
}
