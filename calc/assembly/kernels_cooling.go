package assembly

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const lumped = "lumped heat balance, any text on heat transfer"

func bodyArgs(trend int8) []kernel.Arg {
	return []kernel.Arg{
		kernel.Takes("depth", "volume over surface: half a plate's thickness, a quarter of a bar's diameter", q.LengthDim, 0.2e-3, 0.2, trend),
		kernel.Takes("density", "of the part", q.DensityDim, 1000, 20000, trend),
		kernel.Takes("specific_heat", "mean", q.SpecificHeatDim, 100, 1000, trend),
		kernel.Takes("film", "in still air about 25 W/(m² K)", q.FilmDim, 1, 1000, -trend),
	}
}

// bodyOf is of a metal that conducts well, so that the notes of a thick one do not
// hang on what the kernel does not ask.
func bodyOf(x []float64) Body {
	return Body{Metal: Metal{Conductivity: wellConducting, Density: q.Density(x[1]), SpecificHeat: q.SpecificHeat(x[2])}, Depth: q.Length(x[0]), Film: q.Film(x[3])}
}

const wellConducting = 50 // W/(m K): plain steel, from memory of any handbook

func coolingKernels() []kernel.Kernel {
	at := func(name string, trend int8) kernel.Arg {
		return kernel.Takes(name, "temperature", q.TemperatureDim, 70, 1300, trend)
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "time_constant", Says: "time for the first 63 % of cooling or warming", Result: q.TimeDim,
			Args: bodyArgs(1), Source: lumped, Grade: basis.Derived,
		}, "τ = ρ·c·depth/h",
			func(x []float64) float64 { return timeConstant(x[1]*x[2], x[0], x[3]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(TimeConstant(bodyOf(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "biot", Says: "how much a part lags inside; above 0.1 it is not of one temperature", Result: q.Number,
			Args: []kernel.Arg{
				kernel.Takes("depth", "volume over surface", q.LengthDim, 0.2e-3, 0.2, 1), kernel.Takes("film", "heat passed on by the surface", q.FilmDim, 1, 1000, 1),
				kernel.Takes("conductivity", "of the part", q.ConductivityDim, 5, 450, -1),
			}, Source: "definition", Grade: basis.Derived,
		}, "Bi = h·depth/k",
			func(x []float64) float64 { return x[1] * x[0] / x[2] },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Biot(Body{Metal: Metal{q.Conductivity(x[2]), 7850, 500, 0}, Depth: q.Length(x[0]), Film: q.Film(x[1])}))
			}),
		kernel.Make(kernel.Kernel{
			Name: "cooling_time", Says: "time from one temperature to another, in air or in an oven", Result: q.TimeDim,
			Args: append(bodyArgs(1), at("from", 0), at("to", 0), at("around", 0)), Source: lumped, Grade: basis.Derived,
		}, "t = τ·ln((from − around)/(to − around))",
			func(x []float64) float64 {
				if left := (x[5] - x[6]) / (x[4] - x[6]); !(left > 0 && left <= 1) {
					return math.NaN()
				}
				return coolingTime(timeConstant(x[1]*x[2], x[0], x[3]), x[4], x[5], x[6])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(CoolingTime(bodyOf(x), q.Temperature(x[4]), q.Temperature(x[5]), q.Temperature(x[6])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "carried_temperature", Says: "how warm a part still is after a wait", Result: q.TemperatureDim,
			Args: append(bodyArgs(0), at("from", 1), at("around", 1), kernel.Takes("wait", "on the way", q.TimeDim, 0, 36000, 0)), Source: lumped, Grade: basis.Derived,
		}, "T = around + (from − around)·exp(−t/τ)",
			func(x []float64) float64 { return carried(timeConstant(x[1]*x[2], x[0], x[3]), x[4], x[5], x[6]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(Carried(bodyOf(x), q.Temperature(x[4]), q.Temperature(x[5]), q.Time(x[6])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "hot_go_gauge", Says: "size to turn a plug to that drops into the bore when it is hot enough", Result: q.LengthDim,
			Args: []kernel.Arg{
				kernel.Takes("shaft", "largest over its seat, at room temperature", q.LengthDim, 1e-3, 2, 1), kernel.Takes("gap", "clearance wanted for entry", q.LengthDim, 0, 5e-3, 1),
				kernel.Takes("lost", "that the hub cools between trying and fitting", q.ChangeDim, 0, 300, 1), kernel.Takes("hub_expansion", "mean", q.ExpansionDim, 0, 100e-6, 1),
				kernel.Takes("shaft_expansion", "mean", q.ExpansionDim, 0, 100e-6, 0), kernel.Takes("shaft_warmer", "than the room; below 0 out of the cold", q.ChangeDim, -250, 300, 1),
				kernel.Takes("plug_expansion", "mean", q.ExpansionDim, 0, 100e-6, 0), kernel.Takes("plug_warmer", "than the room when it is tried", q.ChangeDim, -50, 300, -1),
			}, Source: "linear expansion; worked out", Grade: basis.Derived,
		}, "plug = (d·(1 + αs·Ts) + gap + αh·d·lost)/(1 + αp·Tp)",
			enters(1, func(x []float64) float64 { return hotGoGauge(x[0], x[1], x[2], x[3], x[4]*x[5], x[6]*x[7]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(HotGoGauge(GoGauge{
					Shaft: q.Length(x[0]), Gap: q.Length(x[1]), Lost: q.TemperatureChange(x[2]), HubExpands: q.Expansion(x[3]),
					Shafts: q.Expansion(x[4]), ShaftWarmer: q.TemperatureChange(x[5]), Plugs: q.Expansion(x[6]), PlugWarmer: q.TemperatureChange(x[7]),
				}))
			}),
	}
}
