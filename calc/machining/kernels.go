package machining

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers cutting times to rules and to `formula run`.
func Kernels() []kernel.Kernel {
	return []kernel.Kernel{turns(), passTime(), passCount(),
		cutTime("turn_down_time", "time in the cut of turning a shaft down at one cutting speed", 1, TurnDown),
		cutTime("bore_out_time", "time in the cut of boring a hole out at one cutting speed", -1, BoreOut)}
}

func turns() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("diameter", "diameter under the tool", q.LengthDim, 1e-3, 2, -1),
		kernel.Takes("cutting_speed", "speed of the surface under the tool", q.SpeedDim, 0.01, fastest, 1),
	}
	return kernel.Kernel{
		Name: "spindle_turns", Says: "speed of rotation for a cutting speed", Result: q.RotationDim, Args: args, Source: source, Grade: basis.Derived,
		Value: kernel.Within(args, func(x []float64) float64 { return x[1] / (math.Pi * x[0]) }),
		Enclose: func(x []interval.I) interval.I {
			return x[1].Div(x[0].Mul(interval.Point(math.Pi)))
		},
		Worked: func(x []float64) (kernel.Sheet, error) {
			n, notes, err := Turns(q.Length(x[0]), q.Speed(x[1]))
			return kernel.Work("cutting_speed / (π·diameter)", args, x, float64(n), q.RotationDim, notes, err)
		},
	}
}

func passTime() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("length", "length of cut with run-up and run-out", q.LengthDim, 1e-3, 5, 1),
		kernel.Takes("feed", "feed per turn", q.LengthDim, 1e-5, coarse, -1),
		kernel.Takes("turns", "speed of rotation", q.RotationDim, 0.05, 100, -1),
	}
	return kernel.Kernel{
		Name: "pass_time", Says: "time of one pass at a set speed of rotation", Result: q.TimeDim, Args: args, Source: source, Grade: basis.Derived,
		Value:   kernel.Within(args, func(x []float64) float64 { return x[0] / (x[1] * x[2]) }),
		Enclose: func(x []interval.I) interval.I { return x[0].Div(x[1].Mul(x[2])) },
		Worked: func(x []float64) (kernel.Sheet, error) {
			t, notes, err := PassTime(q.Length(x[0]), q.Length(x[1]), q.Rotation(x[2]))
			return kernel.Work("length / (feed·turns)", args, x, float64(t), q.TimeDim, notes, err)
		},
	}
}

func passCount() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("stock", "stock on diameter", q.LengthDim, 0, 0.02, 1),
		kernel.Takes("depth", "depth of one pass, per side", q.LengthDim, 2e-5, 0.01, -1),
	}
	return kernel.Kernel{
		Name: "cut_passes", Says: "passes that take off a stock", Result: q.Number, Args: args, Source: source, Grade: basis.Derived,
		Value:   kernel.Within(args, func(x []float64) float64 { return passes(x[0], x[1]) }),
		Enclose: func(x []interval.I) interval.I { return enclosePasses(x[0], x[1]) },
		Worked: func(x []float64) (kernel.Sheet, error) {
			n, err := Passes(q.Length(x[0]), q.Length(x[1]))
			return kernel.Work("stock / (2·depth), rounded up", args, x, float64(n), q.Number, nil, err)
		},
	}
}

// enclosePasses is exact: the count never falls as the stock grows and never
// rises as the depth does.
func enclosePasses(stock, depth interval.I) interval.I {
	stock = stock.Meet(interval.AtLeast(0))
	if stock.Empty() || !(depth.Lo > 0) {
		return interval.AtLeast(0)
	}
	return interval.I{Lo: passes(stock.Lo, depth.Hi), Hi: passes(stock.Hi, depth.Lo)}
}

// cutTime is turning for sign +1 (stock = from - to) and boring for -1. The size
// after the cut has no trend: a smaller one means more passes, each shorter.
func cutTime(name, says string, sign float64, worked func(Cut) (q.Time, []basis.Note, error)) kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("size_before", "diameter before the cut", q.LengthDim, 5e-3, 0.5, 0),
		kernel.Takes("size_after", "diameter after the cut", q.LengthDim, 5e-3, 0.5, 0),
		kernel.Takes("length", "length of cut with run-up and run-out", q.LengthDim, 1e-3, 2, 1),
		kernel.Takes("cutting_speed", "speed of the surface under the tool", q.SpeedDim, 0.01, fastest, -1),
		kernel.Takes("feed", "feed per turn", q.LengthDim, 1e-5, coarse, -1),
		kernel.Takes("depth", "depth of one pass, per side", q.LengthDim, 3e-4, 0.01, -1),
	}
	return kernel.Kernel{
		Name: name, Says: says, Result: q.TimeDim, Args: args, Source: source, Grade: basis.Derived,
		Value: kernel.Within(args, func(x []float64) float64 {
			stock := sign * (x[0] - x[1])
			if !(stock >= 0) {
				return math.NaN()
			}
			return passes(stock, x[5]) * math.Pi * x[2] * ((x[0] + x[1]) / 2) / (x[4] * x[3])
		}),
		Enclose: func(x []interval.I) interval.I {
			count := enclosePasses(x[0].Sub(x[1]).Mul(interval.Point(sign)), x[5])
			turned := x[0].Add(x[1]).Mul(interval.Point(math.Pi / 2)).Mul(x[2])
			return count.Mul(turned).Div(x[4].Mul(x[3]))
		},
		Worked: func(x []float64) (kernel.Sheet, error) {
			t, notes, err := worked(Cut{q.Length(x[0]), q.Length(x[1]), q.Length(x[2]), q.Speed(x[3]), q.Length(x[4]), q.Length(x[5])})
			return kernel.Work("passes·π·length·(size_before + size_after)/2 / (feed·cutting_speed)", args, x, float64(t), q.TimeDim, notes, err)
		},
	}
}
