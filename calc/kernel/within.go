package kernel

import "math"

// Within gives a kernel's Value its promise: NaN unless there is one number for
// each argument and every number lies in its argument's Range.
func Within(args []Arg, value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		if len(x) != len(args) {
			return math.NaN()
		}
		for i := range args {
			if !args[i].Range.Has(x[i]) {
				return math.NaN()
			}
		}
		return value(x)
	}
}
