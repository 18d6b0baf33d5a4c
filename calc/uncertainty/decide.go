package uncertainty

import "math"

// Measured is a value with its standard uncertainty.
type Measured[T ~float64] struct{ Value, U T }

func (m Measured[T]) check() error {
	switch {
	case math.IsNaN(float64(m.Value)) || math.IsInf(float64(m.Value), 0):
		return refuse("measured value", show(m.Value), "finite")
	case !(m.U > 0) || math.IsInf(float64(m.U), 0):
		return refuse("standard uncertainty", show(m.U), "above 0")
	}
	return nil
}

// ChanceBelow returns the chance that the true value lies below a limit.
//
//	Φ((limit - value) / u)
//
// Limits and source:
//
//   - Holds for: u above 0, errors spread as a bell curve, no better knowledge beforehand.
//   - Beyond: refused.
//   - Source: JCGM 106:2012 7.3, from memory.
func (m Measured[T]) ChanceBelow(limit T) (float64, error) {
	if err := m.check(); err != nil {
		return 0, err
	}
	if math.IsNaN(float64(limit)) {
		return 0, refuse("limit", show(limit), "a number")
	}
	return below(float64(limit-m.Value) / float64(m.U)), nil
}

// ChanceWithin returns the chance that the true value lies between two limits.
//
//	Φ((upper - value) / u) - Φ((lower - value) / u)
//
// Limits and source:
//
//   - Holds for: u above 0, errors spread as a bell curve; a limit may be infinite.
//   - Beyond: refused.
//   - Source: JCGM 106:2012 7.4, from memory.
func (m Measured[T]) ChanceWithin(lower, upper T) (float64, error) {
	if err := m.check(); err != nil {
		return 0, err
	}
	if !(lower <= upper) {
		return 0, refuse("lower limit", show(lower), "at most the upper, "+show(upper))
	}
	return within(float64(m.Value), float64(m.U), float64(lower), float64(upper)), nil
}

// within subtracts on the side where both numbers are small, to keep digits.
func within(value, u, lower, upper float64) float64 {
	a, b := (lower-value)/u, (upper-value)/u
	if a > 0 {
		a, b = -b, -a
	}
	return below(b) - below(a)
}

// below is Φ, the share of a bell curve below z.
func below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// GuardBand returns how far inside a limit a reading must lie to be sure of it
// with a chance (outside, to be sure that it fails).
//
//	Φ⁻¹(chance) · u
//
// Limits and source:
//
//   - Holds for: u above 0, chance from a half to below 1.
//   - Beyond: refused: below a half a guard band would reward doubt.
//   - Source: JCGM 106:2012 8.3; 1.65·u at 95 % as in ISO 14253-1:2017, both from memory.
func GuardBand[T ~float64](u T, chance float64) (T, error) {
	if err := (Measured[T]{U: u}).check(); err != nil {
		return 0, err
	}
	if !(chance >= 0.5 && chance < 1) {
		return 0, refuse("chance", show(chance), "from 0.5 to below 1")
	}
	return T(guard(float64(u), chance)), nil
}

func guard(u, chance float64) float64 { return math.Sqrt2 * math.Erfinv(2*chance-1) * u }

// Finding is what a reading shows about a limit.
type Finding uint8

const (
	Depends Finding = iota // within the guard band: the reading settles nothing
	Holds                  // surely inside
	Fails                  // surely outside
)

func (f Finding) String() string { return [...]string{"depends", "holds", "fails"}[f] }

// Decide returns what a reading shows about two limits at a chance. Whoever
// must prove carries the doubt: to accept, the zone shrinks by the guard band on
// both sides; to reject, it widens.
//
//	holds:  lower + g <= value <= upper - g;   fails:  value < lower - g or value > upper + g
//
// Limits and source:
//
//   - Holds for: what GuardBand holds for; a limit may be infinite. With both limits
//     nearer than a few u the chance is a little less than asked.
//   - Beyond: refused.
//   - Source: JCGM 106:2012 8.3.2; ISO 14253-1:2017 rules for proving, both from memory.
func (m Measured[T]) Decide(lower, upper T, chance float64) (Finding, error) {
	g, err := GuardBand(m.U, chance)
	if err == nil {
		err = m.check()
	}
	switch {
	case err != nil:
		return Depends, err
	case !(lower <= upper):
		return Depends, refuse("lower limit", show(lower), "at most the upper, "+show(upper))
	case m.Value < lower-g || m.Value > upper+g:
		return Fails, nil
	case lower+g <= m.Value && m.Value <= upper-g:
		return Holds, nil
	}
	return Depends, nil
}
