package rolling

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	q "wornfit/calc/quantity"
)

// Ground and Turned are what a seat loses to the smoothing of its roughness, as
// the length in d/(d+s): from memory of bearing handbooks.
const (
	Ground q.Length = 2e-3
	Turned q.Length = 3e-3
)

// The ring's own metal: modulus and Poisson's number of steel from memory of
// strength texts; its expansion from a bearing maker's catalogue (SOURCES.md).
const (
	ringModulus = 206e9   // Pa
	ringPoisson = 0.3     // plain number
	ringExpands = 12.5e-6 // 1/K
)

// ball is a ball's diameter as a part of (D−d)/2, the height between bore and
// outside: 0.6, from memory of 6205 (0.59), 6206 (0.60), 6306 (0.59), 6008 (0.57).
const ball = 0.6

// Smoothed returns the interference of a seat that is left when its roughness is
// pressed flat.
//
//	δeff = δ·d/(d + s), s = 2 mm ground, 3 mm turned
//
// A seat that is loose keeps its clearance.
//
//   - Holds for: a bearing ring on a ground or finely turned steel shaft.
//   - Beyond: rougher seats lose more; interference.Effective takes it from the roughness itself.
//   - Source: bearing handbooks, from memory.
func Smoothed(seat, interference, smoothing q.Length) (q.Length, error) {
	if !(seat > 0) {
		return 0, refuse("diameter of the seat", mm(seat), "more than 0")
	}
	if !(interference < seat && interference > -seat) {
		return 0, refuse("interference", mm(interference), "less than the seat itself, "+mm(seat))
	}
	if !(smoothing >= 0) {
		return 0, refuse("smoothing", mm(smoothing), "0 or more; 2 mm ground, 3 mm turned")
	}
	if interference <= 0 {
		return interference, nil
	}
	return q.Length(smoothed(float64(seat), float64(interference), float64(smoothing))), nil
}

// Races returns where the balls run, as an estimate from the outer sizes: balls of
// 0.3 of the difference of outside and bore, midway between them.
//
//	inner = (D + 4·d)/5, outer = (4·D + d)/5
//
// All in SI units.
//
//   - Holds for: deep groove ball bearings of the 60, 62 and 63 series; good to about 2 % of the height between bore and outside (6206: 36.4 mm for 36.475).
//   - Beyond: other kinds have other balls; refused where there is no ring.
//   - Source: geometry, with the size of the balls from memory of four bearings.
func Races(bore, outside q.Length) (inner, outer q.Length, err error) {
	if err := ring(bore, outside); err != nil {
		return 0, 0, err
	}
	i, o := races(float64(bore), float64(outside))
	return q.Length(i), q.Length(o), nil
}

func ring(bore, outside q.Length) error {
	if !(bore > 0) {
		return refuse("bore of the bearing", mm(bore), "more than 0")
	}
	if !(outside > bore) {
		return refuse("outside of the bearing", mm(outside), "more than its bore, "+mm(bore))
	}
	return nil
}

// Seats is a bearing between its two seats. An interference of less than 0 is a
// clearance: that ring is left as it is.
type Seats struct {
	Bore, Outside          q.Length // nominal sizes of the bearing
	Internal               q.Length // radial internal clearance before mounting
	OnShaft, InHousing     q.Length // interferences, after smoothing
	ShaftGive, HousingGive interference.Give
	InnerHotter            q.TemperatureChange // inner ring and balls over outer ring
}

// Left is what becomes of a bearing's internal clearance.
type Left struct {
	InnerGrows   q.Length // raceway of the inner ring, larger
	OuterShrinks q.Length // raceway of the outer ring, smaller
	Heat         q.Length // taken by the hotter inner ring and balls
	Clearance    q.Length // left to run with; less than 0 is preload
}

// Working returns the clearance a bearing runs with: what it had, less what both
// seats and the heat take.
//
//	left = c − growth − shrinkage − α·T·outer race
//	growth = 2·δ·s/((k+1) − (k−1)·s²), s = bore/inner race, k = E·shaft give + ν
//	shrinkage = 2·δ·s/((k+1) − (k−1)·s²), s = outer race/outside, k = E·housing give − ν
//
// On a solid steel shaft, and in a thick steel housing, that is δ·s.
//
//   - Holds for: elastic thick rings without their grooves, races as Races has them, steel rings (206 GPa, 0.3); plane stress.
//   - Beyond: no clearance left is noted. Load, speed and an inner ring gripped by a nut take a little more. A ring that slips under load asks for interference this does not choose.
//   - Source: Lamé's thick ring, worked out, held to interference.Press by a test; heat by a bearing maker's catalogue, steel's modulus from memory.
func Working(s Seats) (Left, []basis.Note, error) {
	if err := s.check(); err != nil {
		return Left{}, nil, err
	}
	d, o := float64(s.Bore), float64(s.Outside)
	l := Left{
		InnerGrows:   q.Length(innerGrows(d, o, float64(s.OnShaft), float64(s.ShaftGive))),
		OuterShrinks: q.Length(outerShrinks(d, o, float64(s.InHousing), float64(s.HousingGive))),
		Heat:         q.Length(heat(d, o, float64(s.InnerHotter))),
	}
	l.Clearance = s.Internal - l.InnerGrows - l.OuterShrinks - l.Heat
	if l.Clearance > 0 {
		return l, nil, nil
	}
	return l, []basis.Note{{
		Says:   fmt.Sprintf("no clearance is left: the balls are squeezed by %.1f µm", -1e6*float64(l.Clearance)),
		Source: "thick-ring theory", Grade: basis.Derived,
	}}, nil
}

func (s Seats) check() error {
	if err := ring(s.Bore, s.Outside); err != nil {
		return err
	}
	switch {
	case !(s.Internal >= 0):
		return refuse("internal clearance", mm(s.Internal), "0 or more")
	case !(s.OnShaft < s.Bore && s.OnShaft > -s.Bore):
		return refuse("interference on the shaft", mm(s.OnShaft), "less than the bore, "+mm(s.Bore))
	case !(s.InHousing < s.Outside && s.InHousing > -s.Outside):
		return refuse("interference in the housing", mm(s.InHousing), "less than the outside, "+mm(s.Outside))
	case !(s.ShaftGive > 0):
		return refuse("give of the shaft", fmt.Sprintf("%.4g 1/Pa", float64(s.ShaftGive)), "more than 0, see interference.ShaftGive")
	case !(s.HousingGive >= leastGive):
		return refuse("give of the housing", fmt.Sprintf("%.4g 1/Pa", float64(s.HousingGive)), "3e-12 1/Pa or more, half that of a thick steel one; see interference.HubGive")
	case !(s.InnerHotter > -300 && s.InnerHotter < 300):
		return refuse("inner ring hotter by", fmt.Sprintf("%.4g K", float64(s.InnerHotter)), "a difference of less than 300 K")
	}
	return nil
}

// leastGive is half the give of an endless steel housing: stiffer ones are not
// made; our choice.
const leastGive = 3e-12

func smoothed(seat, interference, smoothing float64) float64 {
	return interference * seat / (seat + smoothing)
}

func races(bore, outside float64) (inner, outer float64) {
	mid, half := (bore+outside)/2, ball*(outside-bore)/2
	return mid - half, mid + half
}

// passed is the part of a joint's interference that reaches the race: s is the
// smaller of race and seat over the larger, k the mate's stiffness against the ring's.
func passed(s, k float64) float64 { return 2 * s / ((k + 1) - (k-1)*s*s) }

func innerGrows(bore, outside, interference, give float64) float64 {
	inner, _ := races(bore, outside)
	return max(interference, 0) * passed(bore/inner, ringModulus*give+ringPoisson)
}

func outerShrinks(bore, outside, interference, give float64) float64 {
	_, outer := races(bore, outside)
	return max(interference, 0) * passed(outer/outside, ringModulus*give-ringPoisson)
}

func heat(bore, outside, hotter float64) float64 {
	_, outer := races(bore, outside)
	return ringExpands * hotter * outer
}
