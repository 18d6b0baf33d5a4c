package wear

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	arg := func(name, says string, dim q.Dim, lo, hi float64, trend int8) kernel.Arg {
		return kernel.Arg{Name: name, Says: says, Dim: dim, Range: interval.Of(lo, hi), Trend: trend}
	}
	size := func(name, says string, trend int8) kernel.Arg { return arg(name, says, q.LengthDim, 0, 2, trend) }
	const century = 100 * 8766 * 3600.0 // s: a hundred years, longer than any machine; our choice
	factor := arg("wear_factor", "volume lost per load and distance", q.SpecificWearDim, 1e-20, 1e-9, -1)
	speed := arg("sliding_speed", "mean", q.SpeedDim, 1e-6, 20, -1)
	worsens := func(a kernel.Arg) kernel.Arg { a.Trend = 1; return a }
	wears := func(value func(x []float64) float64) func(x []float64) float64 {
		return func(x []float64) float64 {
			if !worn(x[0], x[1]) {
				return math.NaN()
			}
			return value(x)
		}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "wear_rate", Says: "how fast a clearance or bore has grown", Result: q.WearRateDim,
			Args:   []kernel.Arg{size("new", "clearance or bore when new", -1), size("now", "clearance or bore now", 1), arg("time", "in service between the two", q.TimeDim, 3600, century, -1)},
			Source: "a difference over a time", Grade: basis.Derived,
		}, "rate = (now − new)/t",
			wears(func(x []float64) float64 { return (x[1] - x[0]) / x[2] }),
			func(x []float64) (float64, []basis.Note, error) {
				rate, _, notes, err := Rate(History{New: q.Length(x[0]), Now: q.Length(x[1]), Hours: q.Time(x[2])})
				return float64(rate), notes, err
			}),
		kernel.Make(kernel.Kernel{
			Name: "life_left", Says: "time until the act limit at the rate it has worn; less than 0 if passed", Result: q.TimeDim,
			Args:   []kernel.Arg{size("new", "clearance or bore when new", 0), size("now", "clearance or bore now", -1), size("act", "size at which it needs repair again", 1), arg("time", "in service so far", q.TimeDim, 3600, century, 0)},
			Source: "a difference over a rate", Grade: basis.Derived,
		}, "left = (act − now)·t/(now − new)",
			wears(func(x []float64) float64 {
				if !(x[2] > x[0]) {
					return math.NaN()
				}
				return lifeLeft(x[0], x[1], x[2], x[3])
			}),
			func(x []float64) (float64, []basis.Note, error) {
				left, _, notes, err := LifeLeft(History{New: q.Length(x[0]), Now: q.Length(x[1]), Hours: q.Time(x[3])}, q.Length(x[2]))
				return float64(left), notes, err
			}),
		kernel.Make(kernel.Kernel{
			Name: "remeasure_after", Says: "how much longer to run before measuring again: half the earliest time to the act limit", Result: q.TimeDim,
			Args: []kernel.Arg{
				size("new", "clearance or bore when new", 1), size("now", "clearance or bore now", -1), size("act", "size at which it needs repair again", 1),
				arg("time", "in service so far", q.TimeDim, 3600, century, 1),
				size("new_u", "half width the size when new is known to", -1), size("now_u", "half width the size now is known to", -1),
				arg("time_u", "half width the time is known to", q.TimeDim, 0, century, -1),
			},
			Source: "a difference over a rate, at the worst corner; the half is common practice, no source", Grade: basis.Practice,
		}, "½·(act − now − now_u)·(time − time_u)/(now + now_u − new + new_u), 0 if less",
			wears(func(x []float64) float64 {
				if !(x[2] > x[0]) {
					return math.NaN()
				}
				return remeasure(x[0], x[1], x[2], x[3], x[4], x[5], x[6])
			}),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(RemeasureAfter(History{
					New: q.Length(x[0]), Now: q.Length(x[1]), Hours: q.Time(x[3]), NewU: q.Length(x[4]), NowU: q.Length(x[5]), HoursU: q.Time(x[6]),
				}, q.Length(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "wear_depth", Says: "wear of a rubbing face by a wear factor", Result: q.LengthDim,
			Args:   []kernel.Arg{worsens(factor), arg("pressure", "on the projected area", q.StressDim, 0, 1e9, 1), worsens(speed), arg("time", "of rubbing", q.TimeDim, 0, century, 1)},
			Source: "Archard's law, any text on wear", Grade: basis.Memory,
		}, "w = K·p·v·t",
			func(x []float64) float64 { return depth(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Depth(Factor(x[0]), q.Stress(x[1]), q.Speed(x[2]), q.Time(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "bush_life", Says: "time until a bush without film has worn by a depth", Result: q.TimeDim,
			Args: []kernel.Arg{
				arg("bore", "of the bush", q.LengthDim, 1e-3, 2, 1), arg("length", "of the bush", q.LengthDim, 1e-3, 2, 1),
				arg("load", "on the bush", q.ForceDim, 1e-3, 1e8, -1), speed, factor,
				arg("motion", "f1, 1.0 to 1.5 by load and motion", q.Number, 1, 10, -1), arg("surroundings", "f2, 1.0 clean and cool", q.Number, 1, 10, -1),
				arg("wear", "depth on the loaded side", q.LengthDim, 0, 0.05, 1),
			}, Source: "Shigley's Mechanical Engineering Design, chapter 12, from memory", Grade: basis.Memory,
		}, "t = π·d·L·w/(4·f1·f2·K·v·F)",
			func(x []float64) float64 { return bushLife(x[0], x[1], x[2], x[3], x[4]*(x[5]*x[6]), x[7]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(BushLife(Bush{
					Bore: q.Length(x[0]), Length: q.Length(x[1]), Load: q.Force(x[2]), Speed: q.Speed(x[3]),
					K: Factor(x[4]), Motion: x[5], Surroundings: x[6],
				}, q.Length(x[7])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "hardness_share", Says: "how hard one face is against another", Result: q.Number,
			Args:   []kernel.Arg{arg("of", "hardness of the face", q.HardnessHB, 1, 1000, 1), arg("with", "hardness it is held against", q.HardnessHB, 1, 1000, -1)},
			Source: "a quotient", Grade: basis.Derived,
		}, "s = H/Hwith",
			func(x []float64) float64 { return x[0] / x[1] },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(HardnessShare(Brinell(x[0]), Brinell(x[1])))
			}),
	}
}
