// Package interval is arithmetic on closed ranges of numbers: every operation
// returns a range that holds every result its operands can give.
package interval

// I is the closed range from Lo to Hi; it is empty when Lo > Hi or either is NaN.
type I struct{ Lo, Hi float64 }

// Point is the range that holds x alone.
func Point(x float64) I { return I{x, x} }
