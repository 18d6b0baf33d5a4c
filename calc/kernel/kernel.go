// Package kernel says what a calculation must offer so that the rule language,
// the solver, the formula command and the tests can all use the one copy of it.
package kernel

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
)

// Arg is one argument of a Kernel. Its Range, in SI, is where Trend and Value
// are promised and where tests sample.
type Arg struct {
	Name  string // snake_case: `formula run` and the rule language use the same word
	Says  string // meaning in a line
	Dim   quantity.Dim
	Range interval.I
	Trend int8 // +1 the result never falls as this grows, -1 never rises, 0 no promise

	Unsaid *Unsaid // what it stands at where nobody says it; nil: it must be said
}

// Takes is an argument with its range, both ends in SI units; trend is how the
// result goes as it grows: +1 rises, -1 falls, 0 either.
func Takes(name, says string, dim quantity.Dim, lo, hi float64, trend int8) Arg {
	return Arg{Name: name, Says: says, Dim: dim, Range: interval.Of(lo, hi), Trend: trend}
}

// Unsaid is the value of an argument that is left out, and what that means.
type Unsaid struct {
	Value float64 // SI
	Says  string  // solid
}

// Kernel is one scalar result. A calculation with five results is five kernels.
type Kernel struct {
	Name    string
	Says    string
	Result  quantity.Dim
	Args    []Arg
	Value   func(x []float64) float64        // NaN outside Range; no allocation; never clamps
	Slopes  func(x, out []float64)           // nil: central differences
	Enclose func(x []interval.I) interval.I  // nil: corners by Trend; nil and a Trend of 0: cannot be proved
	Slow    bool                             // over 2 µs or iterative: never in a search
	Worked  func(x []float64) (Sheet, error) // the documented public function: result, notes, steps
	Source  string
	Grade   basis.Grade
}

// Sheet is a calculation worked for a reader.
type Sheet struct {
	Result float64
	Steps  []string
	Notes  []basis.Note
}
