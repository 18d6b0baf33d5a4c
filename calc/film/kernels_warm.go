package film

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// The temperatures oil is graded at: 40 °C and 100 °C, from memory of ISO 3448.
const (
	gradeCool = 313.15 // K, from memory of ISO 3448
	gradeWarm = 373.15 // K, from memory of oil data sheets
)

// oilArgs are an oil as its data sheet tells it.
func oilArgs() []kernel.Arg {
	return []kernel.Arg{
		kernel.Takes("viscosity_40", "at 40 °C, the number of its ISO grade", q.KinematicDim, 2e-6, 1.5e-3, 0),
		kernel.Takes("viscosity_100", "at 100 °C", q.KinematicDim, 1.1e-6, 1e-4, 0),
		kernel.Takes("oil_density", "at 15 °C", q.DensityDim, 800, 1000, 0),
	}
}

func oilOf(x []float64) Oil {
	return Oil{Cool: Reading{gradeCool, q.Kinematic(x[0])}, Warm: Reading{gradeWarm, q.Kinematic(x[1])}, Density: q.Density(x[2])}
}

func warmKernels() []kernel.Kernel {
	oilThen := append(oilArgs(), kernel.Takes("oil_temperature", "of the oil", q.TemperatureDim, 253.15, 423.15, -1))
	oilThen[2].Trend = 1
	running := append([]kernel.Arg{load(0), diameter(0), length(0), clearance(0), speed(slowest, 0)}, oilArgs()...)
	surrounding := func(name, says string) kernel.Arg {
		return kernel.Takes(name, says, q.TemperatureDim, 253.15, 373.15, 0)
	}
	const heat = "balance of heat, worked out; Walther's law and the oil's heat from memory"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "oil_viscosity", Says: "of a mineral oil at a temperature", Result: q.ViscosityDim, Args: oilThen,
			Source: "Walther's law, ASTM D341, from memory", Grade: basis.Memory, Enclose: encloseOil,
		}, "log log(ν + 0.7) = A − B·log T, μ = ν·ρ",
			func(x []float64) float64 {
				if !(x[1] < x[0]) {
					return math.NaN()
				}
				return lawOf(gradeCool, x[0], gradeWarm, x[1], x[2]).viscosity(x[3])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(oilOf(x).ViscosityAt(q.Temperature(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "oil_rise", Says: "how much warmer oil leaves a bearing when it carries all the heat", Result: q.ChangeDim,
			Args: []kernel.Arg{
				kernel.Takes("friction_power", "turned into heat", q.PowerDim, 0, 1e6, 1), kernel.Takes("oil_flow", "drawn in", q.FlowDim, 1e-9, 1e-2, -1), kernel.Takes("side_leakage", "of that, at the sides", q.FlowDim, 0, 1e-2, 1),
			}, Source: "balance of heat; the oil's heat from memory", Grade: basis.Memory,
		}, "ΔT = power/(ρc·(flow − leakage/2))",
			func(x []float64) float64 {
				if !(x[2] <= x[1]) {
					return math.NaN()
				}
				return oilRise(x[0], x[1], x[2])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(OilRise(q.Power(x[0]), q.Flow(x[1]), q.Flow(x[2])))
			}),
		slowly(kernel.Kernel{
			Name: "fed_temperature", Says: "of the oil in a bearing whose oil carries the heat away", Result: q.TemperatureDim,
			Args: append(append([]kernel.Arg(nil), running...), surrounding("inlet", "temperature of the oil fed")), Source: heat, Grade: basis.Memory,
		}, "T = T in + ΔT(μ(T))/2", func(x []float64) balance { return balance{from: x[8]} },
			func(x []float64) (Warm, []basis.Note, error) {
				return FedTemperature(journalOf(append(append([]float64(nil), x[:5]...), 1)), oilOf(x[5:]), q.Temperature(x[8]))
			}),
		slowly(kernel.Kernel{
			Name: "housed_temperature", Says: "of the oil in a bearing that sheds its heat through the housing", Result: q.TemperatureDim,
			Args: append(append([]kernel.Arg(nil), running...), surrounding("air", "temperature round the housing"),
				kernel.Takes("cooling", "heat shed per kelvin; 15 to 20 W/K for a square metre in still air", q.CoolingDim, 0.01, 1e3, 0)), Source: heat, Grade: basis.Memory,
		}, "power(μ(T)) = cooling·(T − T air)", func(x []float64) balance { return balance{from: x[8], cooling: x[9]} },
			func(x []float64) (Warm, []basis.Note, error) {
				return HousedTemperature(journalOf(append(append([]float64(nil), x[:5]...), 1)), oilOf(x[5:]), q.Temperature(x[8]), q.Cooling(x[9]))
			}),
	}
}

// encloseOil takes the readings' corners: at one temperature the line rises or falls
// with each of them, and it falls as the oil warms.
func encloseOil(x []interval.I) interval.I {
	low, high := math.Inf(1), 0.0
	for _, cool := range [...]float64{x[0].Lo, x[0].Hi} {
		for _, warm := range [...]float64{x[1].Lo, x[1].Hi} {
			w := lawOf(gradeCool, cool, gradeWarm, warm, 1)
			low, high = min(low, w.kinematic(x[3].Hi)), max(high, w.kinematic(x[3].Lo))
		}
	}
	thinner := func(t float64) float64 { return mm2 * (1 - swelling*(t-densityAt)) }
	return interval.Of(max(0, min(low, thickest))*thinner(x[3].Hi), min(high, thickest)*thinner(x[3].Lo)).Mul(x[2]).Mul(rounding)
}

// slowly makes a kernel of a running temperature: it is searched for.
func slowly(k kernel.Kernel, formula string, of func(x []float64) balance, worked func(x []float64) (Warm, []basis.Note, error)) kernel.Kernel {
	k.Slow = true
	return kernel.Make(k, formula,
		func(x []float64) float64 {
			if !gap(x[1], x[3]) || !(x[6] < x[5]) {
				return math.NaN()
			}
			b := bare{load: x[0], diameter: x[1], length: x[2], clearance: x[3], speed: x[4]}
			return of(x).find(b, lawOf(gradeCool, x[5], gradeWarm, x[6], x[7]))
		},
		func(x []float64) (float64, []basis.Note, error) {
			w, notes, err := worked(x)
			return float64(w.Temperature), notes, err
		})
}
