package cleanup

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the one-sided clean-up sizes to rules and to `formula run`.
func Kernels() []kernel.Kernel {
	return []kernel.Kernel{
		oneSided("shaft_cleanup_keeping_axis", "size at which a shaft worn on one side cleans up about its original axis", -2, ShaftKeepingAxis),
		oneSided("shaft_cleanup_from_worn", "size at which a shaft worn on one side cleans up, set true by the worn surface", -1, ShaftFromWorn),
		oneSided("bore_cleanup_keeping_axis", "size at which a bore worn on one side cleans up about its original axis", 2, BoreKeepingAxis),
		oneSided("bore_cleanup_from_worn", "size at which a bore worn on one side cleans up, set true by the worn surface", 1, BoreFromWorn),
	}
}

func oneSided(name, says string, wearTimes float64, worked func(OneSided) (q.Length, []basis.Note, error)) kernel.Kernel {
	trend := int8(math.Copysign(1, wearTimes))
	offsetTimes := 2 * float64(trend)
	args := []kernel.Arg{
		{Name: "size", Says: "diameter before the wear", Dim: q.LengthDim, Range: interval.Of(1e-3, 2), Trend: 1},
		{Name: "wear", Says: "depth worn off the one side, not a diameter", Dim: q.LengthDim, Range: interval.Of(0, 0.02), Trend: trend},
		{Name: "offset", Says: "how far the set-up may run out of centre, half the indicator reading", Dim: q.LengthDim, Range: interval.Of(0, 5e-3), Trend: trend},
	}
	return kernel.Kernel{
		Name: name, Says: says, Result: q.LengthDim, Args: args, Source: source, Grade: basis.Derived,
		Value: kernel.Within(args, func(x []float64) float64 {
			if !(2*x[1] < x[0]) || !(2*x[2] < x[0]-2*x[1]) {
				return math.NaN()
			}
			return x[0] + wearTimes*x[1] + offsetTimes*x[2]
		}),
		Slopes: func(_, out []float64) { out[0], out[1], out[2] = 1, wearTimes, offsetTimes },
		Enclose: func(x []interval.I) interval.I {
			return x[0].Add(x[1].Mul(interval.Point(wearTimes))).Add(x[2].Mul(interval.Point(offsetTimes)))
		},
		Worked: func(x []float64) (kernel.Sheet, error) {
			size, notes, err := worked(OneSided{q.Length(x[0]), q.Length(x[1]), q.Length(x[2])})
			formula := fmt.Sprintf("size %+g·wear %+g·offset", wearTimes, offsetTimes)
			return kernel.Work(formula, args, x, float64(size), q.LengthDim, notes, err)
		},
	}
}
