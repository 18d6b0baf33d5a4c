// Package interval is arithmetic on closed ranges of numbers: every operation
// returns a range that holds every result its operands can give.
//
// Start with Of, Point and Around; then Add, Mul and their fellows. Edges are
// rounded outward by one or two units in the last place, so a range stays sound
// through any chain of operations. An edge may be infinite: AtLeast(0) has no
// upper end.
//
// An empty range means that no value exists. It wins in every operation and in
// Meet, and changes nothing in Join. Whoever asks whether a limit holds must
// read it as "decides nothing". The package knows no units and no variables: a
// quantity that stands twice in a formula counts as two.
package interval

import (
	"fmt"
	"math"
)

// I is the closed range from Lo to Hi; it is empty when Lo > Hi or either is NaN.
type I struct{ Lo, Hi float64 }

// Point is the range that holds x alone.
func Point(x float64) I { return I{x, x} }

// Of is the range that holds both numbers and all between, given either way round.
func Of(x, y float64) I { return I{min(x, y), max(x, y)} }

// Around is the range from mid-half to mid+half; empty when half is negative.
func Around(mid, half float64) I {
	if !(half >= 0) {
		return None()
	}
	return Point(mid).Add(I{-half, half})
}

// AtLeast is the range of x and everything above.
func AtLeast(x float64) I { return I{x, math.Inf(1)} }

// AtMost is the range of x and everything below.
func AtMost(x float64) I { return I{math.Inf(-1), x} }

// Whole is the range of all numbers: nothing is known.
func Whole() I { return I{math.Inf(-1), math.Inf(1)} }

// None is the empty range.
func None() I { return I{math.Inf(1), math.Inf(-1)} }

// Empty reports whether the range holds no number.
func (a I) Empty() bool { return !(a.Lo <= a.Hi) }

// Has reports whether x lies in the range, edges included. NaN lies in none.
func (a I) Has(x float64) bool { return a.Lo <= x && x <= a.Hi }

// Covers reports whether all of b lies in a. Every range covers the empty one.
func (a I) Covers(b I) bool { return b.Empty() || a.Lo <= b.Lo && b.Hi <= a.Hi }

// Width is Hi-Lo: 0 for a point and for the empty range, +Inf for a half-line.
func (a I) Width() float64 {
	if a.Empty() || a.Lo == a.Hi {
		return 0
	}
	return a.Hi - a.Lo
}

// Mid is a finite number in the range: its middle where both edges are finite,
// 0 for the whole line. It is NaN for the empty range.
func (a I) Mid() float64 {
	if a.Empty() {
		return math.NaN()
	}
	lo, hi := max(a.Lo, -math.MaxFloat64), min(a.Hi, math.MaxFloat64)
	return min(max(lo/2+hi/2, lo), hi)
}

// Join is the smallest range that holds both. The empty range changes nothing.
func (a I) Join(b I) I {
	switch {
	case a.Empty():
		return b
	case b.Empty():
		return a
	}
	return I{min(a.Lo, b.Lo), max(a.Hi, b.Hi)}
}

// Meet is what both ranges hold; empty if they have nothing in common.
func (a I) Meet(b I) I {
	m := I{max(a.Lo, b.Lo), min(a.Hi, b.Hi)}
	if m.Empty() {
		return None()
	}
	return m
}

func (a I) String() string {
	if a.Empty() {
		return "nothing"
	}
	return fmt.Sprintf("%g to %g", a.Lo, a.Hi)
}
