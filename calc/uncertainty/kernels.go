package uncertainty

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers temperature correction and the decision at a limit to rules
// and to `formula run`.
func Kernels() []kernel.Kernel {
	return []kernel.Kernel{sizeAt20(), change(), chanceWithin(), guardBand()}
}

func sizeAt20() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("reading", "size as read", q.LengthDim, 1e-3, 2, 1),
		kernel.Takes("part_temperature", "temperature of the part", q.TemperatureDim, 193.15, 393.15, -1),
		kernel.Takes("gauge_temperature", "temperature of the gauge", q.TemperatureDim, 193.15, 393.15, 1),
		kernel.Takes("part_expansion", "expansion of the part", q.ExpansionDim, 0, 1e-4, 0),
		kernel.Takes("gauge_expansion", "expansion of the gauge", q.ExpansionDim, 0, 1e-4, 0),
	}
	at := interval.Point(-reference)
	return kernel.Kernel{
		Name: "size_at_20", Says: "size a part will have at 20 °C", Result: q.LengthDim, Args: args,
		Source: "ISO 1; JCGM 100:2008 H.1.2", Grade: basis.Derived,
		Value: kernel.Within(args, func(x []float64) float64 {
			return x[0] * (1 + x[4]*(x[2]-reference)) / (1 + x[3]*(x[1]-reference))
		}),
		Enclose: func(x []interval.I) interval.I {
			one := interval.Point(1)
			gauge, part := one.Add(x[4].Mul(x[2].Add(at))), one.Add(x[3].Mul(x[1].Add(at)))
			return x[0].Mul(gauge).Div(part)
		},
		Worked: func(x []float64) (kernel.Sheet, error) {
			d, notes, err := SizeAt20(Warm{q.Length(x[0]), q.Temperature(x[1]), q.Temperature(x[2]), q.Expansion(x[3]), q.Expansion(x[4])})
			formula := "reading·(1 + gauge_expansion·(gauge_temperature - 293.15 K)) / (1 + part_expansion·(part_temperature - 293.15 K))"
			return kernel.Work(formula, args, x, float64(d), q.LengthDim, notes, err)
		},
	}
}

func change() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("size", "size at the first temperature", q.LengthDim, 1e-3, 2, 0),
		kernel.Takes("expansion", "expansion of the metal", q.ExpansionDim, 0, 1e-4, 0),
		kernel.Takes("change", "change of temperature", q.ChangeDim, -250, 500, 1),
	}
	return kernel.Kernel{
		Name: "temperature_size_change", Says: "by how much a size changes with temperature", Result: q.LengthDim, Args: args,
		Source: "JCGM 100:2008 H.1.2, first-order form", Grade: basis.Derived,
		Value:   kernel.Within(args, func(x []float64) float64 { return x[1] * x[0] * x[2] }),
		Slopes:  func(x, out []float64) { out[0], out[1], out[2] = x[1]*x[2], x[0]*x[2], x[0]*x[1] },
		Enclose: func(x []interval.I) interval.I { return x[0].Mul(x[1]).Mul(x[2]) },
		Worked: func(x []float64) (kernel.Sheet, error) {
			d, notes, err := TemperatureChange(q.Length(x[0]), q.Expansion(x[1]), q.TemperatureChange(x[2]))
			return kernel.Work("expansion·size·change", args, x, float64(d), q.LengthDim, notes, err)
		},
	}
}

func chanceWithin() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("size", "size as measured", q.LengthDim, 1e-3, 2, 0),
		kernel.Takes("u", "its standard uncertainty", q.LengthDim, 1e-8, 1e-3, 0),
		kernel.Takes("low_limit", "smallest size allowed", q.LengthDim, 1e-3, 2, -1),
		kernel.Takes("high_limit", "largest size allowed", q.LengthDim, 1e-3, 2, 1),
	}
	return kernel.Kernel{
		Name: "chance_within_limits", Says: "chance that the true size lies between two limits", Result: q.Number, Args: args,
		Source: "JCGM 106:2012 7.4, from memory", Grade: basis.Memory,
		Value: kernel.Within(args, func(x []float64) float64 {
			if !(x[2] <= x[3]) {
				return math.NaN()
			}
			return within(x[0], x[1], x[2], x[3])
		}),
		Worked: func(x []float64) (kernel.Sheet, error) {
			p, err := Measured[q.Length]{q.Length(x[0]), q.Length(x[1])}.ChanceWithin(q.Length(x[2]), q.Length(x[3]))
			return kernel.Work("Φ((high_limit - size)/u) - Φ((low_limit - size)/u)", args, x, p, q.Number, nil, err)
		},
	}
}

func guardBand() kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("u", "standard uncertainty of the reading", q.LengthDim, 1e-8, 1e-3, 1),
		kernel.Takes("chance", "chance wanted that the limit is kept", q.Number, 0.5, 0.9999, 1),
	}
	return kernel.Kernel{
		Name: "guard_band", Says: "how far inside a limit a reading must lie to be sure of it", Result: q.LengthDim, Args: args,
		Source: "JCGM 106:2012 8.3; ISO 14253-1:2017, both from memory", Grade: basis.Memory,
		Value: kernel.Within(args, func(x []float64) float64 { return guard(x[0], x[1]) }),
		Worked: func(x []float64) (kernel.Sheet, error) {
			g, err := GuardBand(q.Length(x[0]), x[1])
			return kernel.Work("Φ⁻¹(chance)·u", args, x, float64(g), q.LengthDim, nil, err)
		},
	}
}
