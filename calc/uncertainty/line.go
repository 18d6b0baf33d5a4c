package uncertainty

import (
	"fmt"
	"math"
)

// Line is y = Intercept + Slope·x: wear against hours, say.
type Line struct {
	Slope, Intercept   float64 // in the units of y per x, and of y
	USlope, UIntercept float64 // standard uncertainties
	Freedom            float64
}

// LineThrough returns the line nearest to points by least squares, and how well
// it is known from their scatter.
//
//	slope = Σ(x-x̄)(y-ȳ)/Sxx,  u(slope) = s/√Sxx,  u(intercept) = s·√(1/n + x̄²/Sxx),  s² = Σ residual²/(n-2)
//
// Limits and source:
//
//   - Holds for: x known well, y with even scatter, three points or more, not all at one x.
//   - Beyond: refused.
//   - Source: JCGM 100:2008 H.3; EURACHEM/CITAC guide, example A5.
func LineThrough(x, y []float64) (Line, error) {
	n := float64(len(x))
	if len(x) != len(y) || n < 3 {
		return Line{}, refuse("points of a line", fmt.Sprintf("%d and %d", len(x), len(y)), "three or more, as many x as y")
	}
	var mx, my, sxx, sxy, rest float64
	for i := range x {
		mx, my = mx+x[i]/n, my+y[i]/n
	}
	for i := range x {
		sxx, sxy = sxx+(x[i]-mx)*(x[i]-mx), sxy+(x[i]-mx)*(y[i]-my)
	}
	if !(sxx > 0) || math.IsInf(sxx, 0) || math.IsNaN(sxy) || math.IsInf(sxy, 0) {
		return Line{}, refuse("points of a line", "all at one x, or not finite", "spread over x and finite")
	}
	l := Line{Slope: sxy / sxx, Freedom: n - 2}
	l.Intercept = my - l.Slope*mx
	for i := range x {
		r := y[i] - l.Intercept - l.Slope*x[i]
		rest += r * r
	}
	s := math.Sqrt(rest / l.Freedom)
	l.USlope, l.UIntercept = s/math.Sqrt(sxx), s*math.Sqrt(1/n+mx*mx/sxx)
	return l, nil
}
