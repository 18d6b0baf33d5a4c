// Package uncertainty answers: how well is this size known, and does it pass?
//
// Start with Rectangular and its fellows to turn what is known of an influence
// into a standard uncertainty, Combine and Expand to put them together, Gauge
// for the part of a gauge's error that all its readings share, SizeAt20 for
// temperature, Measured for the decision at a limit. Which gauge reads how well
// is not in here. Names and symbols follow the GUM (JCGM 100:2008).
package uncertainty

import (
	"fmt"
	"math"

	"wornfit/calc/basis"

	"gonum.org/v1/gonum/mathext"
)

// Rectangular returns the standard uncertainty of a quantity that lies anywhere
// within ± half with equal chance: a scale's step, a stated error limit.
//
//	half / √3
//
// Limits and source:
//
//   - Holds for: half from 0 up.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 4.3.7.
func Rectangular[T ~float64](half T) (T, error) { return spread(half, math.Sqrt(3)) }

// Triangular returns the standard uncertainty of a quantity within ± half that
// is likeliest in the middle: the sum of two equal rectangular ones.
//
//	half / √6
//
// Limits and source:
//
//   - Holds for: half from 0 up.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 4.3.9.
func Triangular[T ~float64](half T) (T, error) { return spread(half, math.Sqrt(6)) }

// Arcsine returns the standard uncertainty of a quantity that swings within
// ± half as a sine does: a shop's temperature, an eccentric in any direction.
//
//	half / √2
//
// Limits and source:
//
//   - Holds for: half from 0 up.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 H.1.3.4 (cyclic variation of temperature), from memory.
func Arcsine[T ~float64](half T) (T, error) { return spread(half, math.Sqrt2) }

// Resolution returns the standard uncertainty left by reading to a step.
//
//	step / √12
//
// Limits and source:
//
//   - Holds for: a reading rounded to the nearest step.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 F.2.2.1.
func Resolution[T ~float64](step T) (T, error) { return spread(step, math.Sqrt(12)) }

func spread[T ~float64](half T, by float64) (T, error) {
	if !(half >= 0) || math.IsInf(float64(half), 0) {
		return 0, refuse("half-width", show(half), "0 or more")
	}
	return half / T(by), nil
}

// Repeats returns the mean of repeated readings, its standard uncertainty and
// the degrees of freedom. What all readings share is not in it: see Gauge.
//
//	u = s / √n,  s² = Σ(x - mean)² / (n-1),  freedom n-1
//
// Limits and source:
//
//   - Holds for: independent readings, at least two.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 4.2.
func Repeats[T ~float64](readings []T) (mean, u T, freedom float64, err error) {
	n := float64(len(readings))
	if n < 2 {
		return 0, 0, 0, refuse("readings", fmt.Sprint(len(readings)), "at least two")
	}
	for _, x := range readings {
		mean += x / T(n)
	}
	var squares float64
	for _, x := range readings {
		squares += float64((x - mean) * (x - mean))
	}
	if math.IsNaN(squares) || math.IsInf(squares, 0) {
		return 0, 0, 0, refuse("readings", "not all finite", "finite")
	}
	return mean, T(math.Sqrt(squares / (n - 1) / n)), n - 1, nil
}

// Input is one influence on a result.
type Input struct {
	Name    string
	U       float64 // standard uncertainty, in SI
	By      float64 // sensitivity: change of the result per change of the input
	Freedom float64 // degrees of freedom; Known if the value is sure
}

// Known is the freedom of an uncertainty that is itself beyond doubt.
var Known = math.Inf(1)

func (in Input) check() error {
	switch {
	case !(in.U >= 0) || math.IsInf(in.U, 0):
		return refuse("standard uncertainty of "+in.Name, show(in.U), "0 or more")
	case math.IsNaN(in.By) || math.IsInf(in.By, 0):
		return refuse("sensitivity to "+in.Name, show(in.By), "finite")
	case !(in.Freedom > 0):
		return refuse("degrees of freedom of "+in.Name, show(in.Freedom), "above 0, +Inf if known for sure")
	}
	return nil
}

// Combine returns the combined standard uncertainty of a result and its
// effective degrees of freedom (Welch-Satterthwaite).
//
//	u² = Σ (By·U)²,  freedom = u⁴ / Σ (By·U)⁴/Freedom
//
// Limits and source:
//
//   - Holds for: independent inputs, a result nearly linear over their spread.
//   - Beyond: refused; inputs that move together need Correlated.
//   - Source: JCGM 100:2008 5.1.2 and G.4.1.
func Combine(inputs []Input) (u, freedom float64, err error) {
	if len(inputs) == 0 {
		return 0, 0, refuse("inputs", "none", "at least one")
	}
	var squares, fourths float64
	for _, in := range inputs {
		if err := in.check(); err != nil {
			return 0, 0, err
		}
		part := in.By * in.U
		squares += part * part
		fourths += part * part * part * part / in.Freedom
	}
	if fourths == 0 {
		return math.Sqrt(squares), Known, nil
	}
	return math.Sqrt(squares), squares * squares / fourths, nil
}

// Correlated returns the combined standard uncertainty of a result whose inputs
// move together; r(i, j) is the correlation of two of them.
//
//	u² = ΣΣ ci·cj·ui·uj·r(i,j)
//
// Limits and source:
//
//   - Holds for: r symmetric, 1 on the diagonal, each from -1 to 1, a result nearly linear.
//   - Beyond: refused, also when the correlations can not all hold at once.
//   - Source: JCGM 100:2008 5.2.2.
func Correlated(inputs []Input, r [][]float64) (float64, error) {
	if len(inputs) == 0 || len(r) != len(inputs) {
		return 0, refuse("correlations", fmt.Sprintf("%d rows", len(r)), fmt.Sprintf("one row for each of the %d inputs", len(inputs)))
	}
	var squares, scale float64
	for i, a := range inputs {
		if err := a.check(); err != nil {
			return 0, err
		}
		if len(r[i]) != len(inputs) || r[i][i] != 1 {
			return 0, refuse("correlations of "+a.Name, fmt.Sprint(r[i]), "one for each input, 1 with itself")
		}
		for j, b := range inputs {
			if !(math.Abs(r[i][j]) <= 1) || r[i][j] != r[j][i] {
				return 0, refuse("correlation of "+a.Name+" with "+b.Name, show(r[i][j]), "from -1 to 1 and the same both ways")
			}
			squares += a.By * a.U * b.By * b.U * r[i][j]
		}
		scale += a.By * a.U * a.By * a.U
	}
	if squares < -1e-12*scale {
		return 0, refuse("correlations", "contradict each other", "such that the variance of the result is not negative")
	}
	return math.Sqrt(max(squares, 0)), nil
}

// Coverage returns the factor k that widens a standard uncertainty so that the
// interval holds the value with a chance.
//
//	Student's t for the whole degrees of freedom below
//
// Limits and source:
//
//   - Holds for: freedom 1 and up, chance above 0 and below 1.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 G.3 and G.4.1 (truncate to the lower whole number).
func Coverage(freedom, chance float64) (float64, error) {
	switch {
	case !(freedom >= 1):
		return 0, refuse("degrees of freedom", show(freedom), "1 or more")
	case !(chance > 0 && chance < 1):
		return 0, refuse("chance", show(chance), "above 0 and below 1")
	}
	ν := math.Floor(freedom)
	if ν > 1e6 { // the normal distribution to 6 digits
		return math.Sqrt2 * math.Erfinv(chance), nil
	}
	x := mathext.InvRegIncBeta(ν/2, 0.5, 1-chance)
	return math.Sqrt(ν * (1 - x) / x), nil
}

// Expand returns the expanded uncertainty U: the value lies within ± U with a chance.
//
//	U = k·u
//
// Limits and source:
//
//   - Holds for: u from 0 up, freedom 1 and up, chance above 0 and below 1.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 6.2.1.
func Expand[T ~float64](u T, freedom, chance float64) (T, error) {
	if !(u >= 0) || math.IsInf(float64(u), 0) {
		return 0, refuse("standard uncertainty", show(u), "0 or more")
	}
	k, err := Coverage(freedom, chance)
	return T(k) * u, err
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func show[T ~float64](x T) string { return fmt.Sprintf("%.6g", float64(x)) }
