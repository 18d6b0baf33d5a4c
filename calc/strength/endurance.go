package strength

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Finish is how a steel surface was left.
type Finish string

// The finishes of the surface factor.
const (
	Ground    Finish = "ground"
	Machined  Finish = "machined" // or cold drawn
	HotRolled Finish = "hot-rolled"
	Forged    Finish = "forged"
)

// finishes are the factor and the power of SurfaceFactor, S in MPa: from memory
// of Shigley, the same read in an open companion to Bhandari's Design of Machine
// Elements.
var finishes = map[Finish]power{
	Ground: {1.58, -0.085}, Machined: {4.51, -0.265}, HotRolled: {57.7, -0.718}, Forged: {272, -0.995},
}

type power struct{ a, b float64 }

func (p power) at(tensile float64) float64 { return min(1, p.a*math.Pow(tensile/1e6, p.b)) }

// Load factors of the endurance limit: from memory of Shigley. Stresses joined
// by von Mises have the factor of torsion in them: use BendingLoad.
const (
	BendingLoad  = 1.0  // by definition: the limit is that of a bent bar
	AxialLoad    = 0.85 // from memory of Shigley
	TwistingLoad = 0.59 // from memory of Shigley
)

// Where the surface and size factors hold: from memory of Shigley.
const (
	softestSurface, hardestSurface = 340e6, 1.7e9 // Pa, from memory of Shigley
	largestSized                   = 0.254        // m, from memory of Shigley
)

// UnnotchedLimit returns the endurance limit of a small polished steel bar
// rotating under bending.
//
//	S' = 0.5·Su up to Su = 1400 MPa, 700 MPa above
//
// All in SI units.
//
//   - Holds for: wrought steel; half of all bars stand more, half less, see ReliabilityFactor.
//   - Beyond: grey iron about 0.4 Su. Bronze and aluminium have no limit. A brazed or welded zone is annealed: use its own tensile strength.
//   - Source: Shigley's Mechanical Engineering Design, from memory.
func UnnotchedLimit(tensile q.Stress) (q.Stress, error) {
	if err := steel(tensile); err != nil {
		return 0, err
	}
	return q.Stress(unnotchedLimit(float64(tensile))), nil
}

// SurfaceFactor returns the part of the endurance limit that a finish leaves.
//
//	ka = a·Su^b, no more than 1: ground 1.58, −0.085; machined 4.51, −0.265; hot-rolled 57.7, −0.718; forged 272, −0.995
//
// with Su in MPa.
//
//   - Holds for: steel of 340 to 1700 MPa tensile strength.
//   - Beyond: noted as extrapolated. Rust and fretting take far more.
//   - Source: Shigley's Mechanical Engineering Design, from memory; the same figures read in an open companion to Bhandari.
func SurfaceFactor(f Finish, tensile q.Stress) (float64, []basis.Note, error) {
	p, known := finishes[f]
	if !known {
		return 0, nil, refuse("finish", "'"+string(f)+"'", "ground, machined, hot-rolled or forged")
	}
	if err := steel(tensile); err != nil {
		return 0, nil, err
	}
	var notes []basis.Note
	if !(tensile >= softestSurface && tensile <= hardestSurface) {
		notes = []basis.Note{{Says: "the surface factor is known from " + mpa(softestSurface) + " to " + mpa(hardestSurface) + " tensile strength", Source: shigley, Grade: basis.Extrapolated}}
	}
	return p.at(float64(tensile)), notes, nil
}

// SizeFactor returns the part of the endurance limit a rotating shaft of that
// diameter has, against the small bars limits are measured on.
//
//	kb = 1 to 7.6 mm; 0.879·d^−0.107 to 2 in; 0.91·d^−0.157 to 10 in
//
// with d in inches.
//
//   - Holds for: bending and torsion of a rotating solid shaft up to 254 mm.
//   - Beyond: larger is noted as extrapolated. One that is bent but does not turn counts as 0.37 of its diameter.
//   - Source: Shigley's Mechanical Engineering Design, from memory; no credit is given below 7.6 mm, our choice.
func SizeFactor(d q.Length) (float64, []basis.Note, error) {
	if !(d > 0 && d <= 10) {
		return 0, nil, refuse("diameter", mm(d), "more than 0 and no more than "+mm(10))
	}
	var notes []basis.Note
	if d > largestSized {
		notes = []basis.Note{{Says: "the size factor is known up to " + mm(largestSized), Source: shigley, Grade: basis.Extrapolated}}
	}
	return sizeFactor(float64(d)), notes, nil
}

// ReliabilityFactor returns the part of the mean endurance limit that the given
// part of all shafts stands.
//
//	ke = 1 − 0.08·z, with z the normal quantile of the reliability: 90 % 0.897, 99 % 0.814, 99.9 % 0.753
//
// The spread of endurance limits is taken as 8 %.
//
//   - Holds for: reliability 0.5 to 0.999999.
//   - Beyond: refused.
//   - Source: Shigley's Mechanical Engineering Design, from memory; its table read in an open companion to Bhandari.
func ReliabilityFactor(reliability float64) (float64, error) {
	if !(reliability >= 0.5 && reliability <= 0.999999) {
		return 0, refuse("reliability", number(reliability), "0.5 to 0.999999")
	}
	return reliabilityFactor(reliability), nil
}

// Factors are the parts of the unnotched endurance limit that a real shaft
// keeps; 1 where nothing is lost.
type Factors struct {
	Surface, Size, Load, Reliability float64
	Kept                             float64 // by a treatment of the surface, see TreatmentFor
}

// EnduranceLimit returns the stress amplitude a shaft stands for ever.
//
//	Se = ka·kb·kc·ke·kept·S', S' = 0.5·Su up to 1400 MPa, 700 MPa above
//
// The notch is not in it: multiply the stress by FatigueFactor.
//
//   - Holds for: wrought steel in air below 250 °C.
//   - Beyond: rust, hotter parts and fretting take more.
//   - Source: Marin's form, Shigley's Mechanical Engineering Design, from memory.
func EnduranceLimit(tensile q.Stress, f Factors) (q.Stress, error) {
	if err := steel(tensile); err != nil {
		return 0, err
	}
	for _, part := range []struct {
		name  string
		value float64
	}{{"surface factor", f.Surface}, {"size factor", f.Size}, {"load factor", f.Load}, {"reliability factor", f.Reliability}, {"part kept", f.Kept}} {
		if !(part.value > 0 && part.value <= 1) {
			return 0, refuse(part.name, number(part.value), "more than 0 and no more than 1, which loses nothing")
		}
	}
	return q.Stress(unnotchedLimit(float64(tensile)) * f.Surface * f.Size * f.Load * f.Reliability * f.Kept), nil
}

func steel(tensile q.Stress) error {
	if !(tensile > 0 && tensile <= 4e9) {
		return refuse("tensile strength", mpa(tensile), "more than 0 and no more than 4000 MPa")
	}
	return nil
}

func unnotchedLimit(tensile float64) float64 { return min(0.5*tensile, 700e6) }

// sizeFactor: the two powers meet at 2 in, the larger fall counts from there.
func sizeFactor(d float64) float64 {
	d /= inch
	return min(1, 0.879*math.Pow(d, -0.107), 0.91*math.Pow(d, -0.157))
}

func reliabilityFactor(r float64) float64 { return 1 - 0.08*math.Sqrt2*math.Erfinv(2*r-1) }
