package bearing

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	return append(rubbingKernels(), append(plainKernels(), bushedKernel())...)
}

func size(name, says string, trend int8) kernel.Arg {
	return kernel.Takes(name, says, q.LengthDim, 1e-3, 2, trend)
}

func expansion(name string, trend int8) kernel.Arg {
	return kernel.Takes(name, "mean expansion", q.ExpansionDim, 0, 200e-6, trend)
}

func warmer(name string, trend int8) kernel.Arg {
	return kernel.Takes(name, "above gauging temperature", q.ChangeDim, -200, 300, trend)
}

func rubbingKernels() []kernel.Kernel {
	diameter := func(trend int8) kernel.Arg { return size("diameter", "of the bearing", trend) }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "projected_pressure", Says: "load over the projected area", Result: q.StressDim,
			Args:   []kernel.Arg{kernel.Takes("load", "square to the axis", q.ForceDim, 0, 1e8, 1), diameter(-1), size("length", "of the bearing", -1)},
			Source: "definition, any machine-element text", Grade: basis.Derived,
		}, "p = F/(d·L)",
			func(x []float64) float64 { return pressure(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Pressure(q.Force(x[0]), q.Length(x[1]), q.Length(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "sliding_speed", Says: "of a turning shaft", Result: q.SpeedDim,
			Args:   []kernel.Arg{diameter(1), kernel.Takes("speed", "turns in a time", q.RotationDim, 0, 2000, 1)},
			Source: "geometry", Grade: basis.Derived,
		}, "v = π·d·n",
			func(x []float64) float64 { return slidingSpeed(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(SlidingSpeed(q.Length(x[0]), q.Rotation(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "swing_speed", Says: "mean sliding speed of a swinging pin", Result: q.SpeedDim,
			Args:   []kernel.Arg{diameter(1), kernel.Takes("half_swing", "angle to either side of the middle", q.Number, 0, 2*math.Pi, 1), kernel.Takes("cycles", "full swings there and back in a time", q.RotationDim, 0, 200, 1)},
			Source: "four quarter swings a cycle; worked out", Grade: basis.Derived,
		}, "v = 2·half·d·f",
			func(x []float64) float64 { return swingSpeed(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(SwingSpeed(q.Length(x[0]), x[1], q.Rotation(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "pv", Says: "pressure times sliding speed", Result: q.PVDim,
			Args:   []kernel.Arg{kernel.Takes("pressure", "on the projected area", q.StressDim, 0, 1e9, 1), kernel.Takes("sliding_speed", "mean", q.SpeedDim, 0, 100, 1)},
			Source: "definition, any machine-element text", Grade: basis.Derived,
		}, "pv = p·v",
			func(x []float64) float64 { return x[0] * x[1] },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(PressureSpeed(q.Stress(x[0]), q.Speed(x[1])))
			}),
	}
}

func plainKernels() []kernel.Kernel {
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "hot_clearance_plain", Says: "clearance of a shaft in a one-piece hub, both warm", Result: q.LengthDim,
			Args: []kernel.Arg{
				kernel.Takes("clearance", "cold, on diameter", q.LengthDim, 0, 1e-2, 1), size("shaft", "diameter", 0),
				expansion("hub_expansion", 0), warmer("hub_warmer", 1), expansion("shaft_expansion", 0), warmer("shaft_warmer", -1),
			}, Source: "linear expansion", Grade: basis.Derived,
			Enclose: func(x []interval.I) interval.I {
				return x[0].Add(x[1].Mul(x[2].Mul(x[3]).Sub(x[4].Mul(x[5]))))
			},
		}, "hot = cold + d·(αh·Th − αs·Ts)",
			func(x []float64) float64 {
				if !(x[0] < x[1]/10) {
					return math.NaN()
				}
				return plainHot(x[0], x[1], x[2], x[3], x[4], x[5])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(PlainHotClearance(Plain{
					Clearance: q.Length(x[0]), Shaft: q.Length(x[1]), HubGrows: q.Expansion(x[2]), HubsWarmer: q.TemperatureChange(x[3]),
					ShaftExpands: q.Expansion(x[4]), ShaftWarmer: q.TemperatureChange(x[5]),
				}))
			}),
		kernel.Make(kernel.Kernel{
			Name: "stiff_bore_growth", Says: "growth of a thin bush's bore in a heavy housing, both warm", Result: q.LengthDim,
			Args: []kernel.Arg{
				size("bore", "of the bush", 0), size("outside", "of the bush", 0), kernel.Takes("poisson", "of the bush", q.Number, 0, 0.5, 0),
				expansion("bush_expansion", 0), warmer("bush_warmer", -1), expansion("housing_expansion", 0), warmer("housing_warmer", 1),
			}, Source: "thin ring with its outside held; worked out", Grade: basis.Derived,
			Enclose: func(x []interval.I) interval.I {
				bush, housing := x[3].Mul(x[4]), x[5].Mul(x[6])
				wall := x[1].Sub(x[0]).Meet(interval.AtLeast(0))
				return housing.Mul(x[1]).Sub(wall.Mul(bush.Add(x[2].Mul(bush.Sub(housing)))))
			},
		}, "Δ = αh·D·Th − (D−d)·[αb·Tb + ν·(αb·Tb − αh·Th)]",
			func(x []float64) float64 {
				if !(x[0] < x[1]) {
					return math.NaN()
				}
				return stiffGrowth(x[0], x[1], x[2], x[3]*x[4], x[5]*x[6])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(StiffBoreGrowth(Stiff{
					Bore: q.Length(x[0]), Outside: q.Length(x[1]), Nu: x[2],
					BushExpands: q.Expansion(x[3]), BushWarmer: q.TemperatureChange(x[4]),
					HousingGrows: q.Expansion(x[5]), HousingsWarmer: q.TemperatureChange(x[6]),
				}))
			}),
	}
}
