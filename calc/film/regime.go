package film

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Regime is how much of the load the oil carries.
type Regime string

// The regimes, thick film to thin.
const (
	Full     Regime = "full"     // the film stands clear of the roughness
	Mixed    Regime = "mixed"    // peaks touch; it wears slowly
	Boundary Regime = "boundary" // metal carries, as in a dry bush: choose by pv
)

// FullFrom and BoundaryTo are the film ratios at which the regimes part: from
// memory of tribology texts. The texts agree on 3; for the lower one they give 1 or less.
const (
	FullFrom   = 3.0 // from memory of tribology texts
	BoundaryTo = 1.0 // from memory of tribology texts
)

// FilmRatio returns how the least film stands to the roughness of both faces.
//
//	λ = h/√(Rq₁² + Rq₂²)
//
// Rq is the root mean square roughness; about 1.25 times Ra (from memory).
//
//   - Holds for: faces true in shape; roughness of running-in not yet worn off.
//   - Beyond: out-of-round, tilt and waviness are not in Rq: take them off the film first.
//   - Source: tribology texts, from memory.
func FilmRatio(least, shaftRq, boreRq q.Length) (float64, error) {
	if !(least >= 0) {
		return 0, refuse("least film", mm(least), "0 or more")
	}
	if !(shaftRq > 0) {
		return 0, refuse("roughness of the shaft", mm(shaftRq), "more than 0")
	}
	if !(boreRq > 0) {
		return 0, refuse("roughness of the bore", mm(boreRq), "more than 0")
	}
	return filmRatio(float64(least), float64(shaftRq), float64(boreRq)), nil
}

// RegimeOf returns the regime of a film ratio.
//
//	over 3 full, 1 to 3 mixed, under 1 boundary
//
// The borders are no sharp ones.
//
//   - Holds for: ordinary ground, bored or reamed faces.
//   - Beyond: a bearing near a border is between the two; it always comes with a note of its mark.
//   - Source: tribology texts, from memory.
func RegimeOf(filmRatio float64) (Regime, []basis.Note, error) {
	note := []basis.Note{{Says: "film ratios 3 and 1 part the regimes", Source: "tribology texts, from memory", Grade: basis.Memory}}
	switch {
	case !(filmRatio >= 0):
		return "", nil, refuse("film ratio", fmt.Sprintf("%.4g", filmRatio), "0 or more")
	case filmRatio > FullFrom:
		return Full, note, nil
	case filmRatio >= BoundaryTo:
		return Mixed, note, nil
	}
	return Boundary, note, nil
}

// Trumpler's least film: 0.0002 in and 0.00004 of the diameter, from memory of
// Shigley's text, which quotes him; read as 5 µm.
const (
	trumplerBase  = 5e-6 // m, from memory of Shigley
	trumplerShare = 4e-5 // from memory of Shigley
)

const trumplerSource = "Trumpler as quoted by Shigley, from memory"

// TrumplerFilm returns the least film a designer should allow: room for the
// dirt that a filter lets through, more for a larger shaft.
//
//	h ≥ 5 µm + 0.00004·d
//
// It is a rule of design, not a limit of physics.
//
//   - Holds for: ground journals, filtered oil.
//   - Beyond: rough or dirty bearings need more; see FilmRatio.
//   - Source: Trumpler as quoted by Shigley, from memory.
func TrumplerFilm(diameter q.Length) (q.Length, []basis.Note, error) {
	if !(diameter > 0) {
		return 0, nil, refuse("diameter", mm(diameter), "more than 0")
	}
	note := basis.Note{Says: "a designer's rule for ground journals", Source: trumplerSource, Grade: basis.Memory}
	return q.Length(trumpler(float64(diameter))), []basis.Note{note}, nil
}

func filmRatio(least, a, b float64) float64 { return least / math.Hypot(a, b) }

func trumpler(diameter float64) float64 { return trumplerBase + trumplerShare*diameter }
