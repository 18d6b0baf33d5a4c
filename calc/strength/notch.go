package strength

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Where the notch sensitivity curves hold, in Pa: from memory of Shigley.
const (
	softestNotch    = 345e6 // 50 kpsi, from memory of Shigley
	hardestBending  = 1.7e9 // from memory of Shigley
	hardestTwisting = 1.5e9 // from memory of Shigley
)

const shigley = "Shigley's Mechanical Engineering Design, from memory"

// NotchSensitivity returns how much of the factor of a notch fatigue feels in
// bending, 0 to 1. Soft steel and small radii feel less.
//
//	q = 1/(1 + √a/√r), √a = 0.246 − 3.08e−3·S + 1.51e−5·S² − 2.67e−8·S³
//
// with S in kpsi and √a in √in; r is the radius of the notch.
//
//   - Holds for: steel of 345 to 1700 MPa tensile strength.
//   - Beyond: softer is noted as extrapolated, harder is refused: the curve runs through zero there. Grey iron: q about 0.2. In doubt take 1.
//   - Source: Neuber's form with Shigley's curve, from memory, the same read in an open script.
func NotchSensitivity(tensile q.Stress, radius q.Length) (float64, []basis.Note, error) {
	if err := notched(tensile, radius, hardestBending); err != nil {
		return 0, nil, err
	}
	return notchSensitivity(float64(tensile), float64(radius)), softNotes(tensile), nil
}

// NotchSensitivityTwisting returns how much of the factor of a notch fatigue
// feels in torsion, 0 to 1.
//
//	q = 1/(1 + √a/√r), √a = 0.190 − 2.51e−3·S + 1.35e−5·S² − 2.67e−8·S³
//
// with S in kpsi and √a in √in; r is the radius of the notch.
//
//   - Holds for: steel of 345 to 1500 MPa tensile strength.
//   - Beyond: softer is noted as extrapolated, harder is refused: the curve runs through zero there.
//   - Source: Neuber's form with Shigley's curve, from memory.
func NotchSensitivityTwisting(tensile q.Stress, radius q.Length) (float64, []basis.Note, error) {
	if err := notched(tensile, radius, hardestTwisting); err != nil {
		return 0, nil, err
	}
	return notchSensitivityTwisting(float64(tensile), float64(radius)), softNotes(tensile), nil
}

// FatigueFactor returns by how much a notch raises the stress that fatigue feels.
//
//	Kf = 1 + q·(Kt − 1)
//
// Kt is the factor of the shape, q the notch sensitivity.
//
//   - Holds for: one notch at the section. Where two meet, a keyway ending in a fillet, reckon with their product.
//   - Beyond: a pressed-on edge has no Kt; see TreatmentFor and PressedEdge.
//   - Source: Peterson's definition of notch sensitivity, any strength text.
func FatigueFactor(kt, sensitivity float64) (float64, error) {
	if !(kt >= 1 && kt <= 100) {
		return 0, refuse("stress concentration factor", number(kt), "1 to 100")
	}
	if !(sensitivity >= 0 && sensitivity <= 1) {
		return 0, refuse("notch sensitivity", number(sensitivity), "0 to 1")
	}
	return fatigueFactor(kt, sensitivity), nil
}

func notched(tensile q.Stress, radius q.Length, hardest q.Stress) error {
	if !(tensile > 0 && tensile <= hardest) {
		return refuse("tensile strength", mpa(tensile), "more than 0 and no more than "+mpa(hardest)+"; take a sensitivity of 1 for harder steel")
	}
	if !(radius > 0 && radius <= 10) {
		return refuse("radius of the notch", mm(radius), "more than 0 and no more than "+mm(10))
	}
	return nil
}

func softNotes(tensile q.Stress) []basis.Note {
	if tensile >= softestNotch {
		return nil
	}
	return []basis.Note{{Says: "the notch sensitivity is known for steel from " + mpa(softestNotch) + " tensile strength", Source: shigley, Grade: basis.Extrapolated}}
}

// kpsi in Pa and the inch in m, exact by definition (the pound force with
// standard gravity).
const (
	kpsi = 1e3 * 0.45359237 * 9.80665 / (inch * inch) // exact
	inch = 0.0254                                     // exact
)

func notchSensitivity(tensile, radius float64) float64 {
	s := tensile / kpsi
	return 1 / (1 + (0.246+s*(-3.08e-3+s*(1.51e-5-s*2.67e-8)))/math.Sqrt(radius/inch))
}

func notchSensitivityTwisting(tensile, radius float64) float64 {
	s := tensile / kpsi
	return 1 / (1 + (0.190+s*(-2.51e-3+s*(1.35e-5-s*2.67e-8)))/math.Sqrt(radius/inch))
}

func fatigueFactor(kt, sensitivity float64) float64 { return 1 + sensitivity*(kt-1) }

func number(x float64) string { return fmt.Sprintf("%.6g", x) }
