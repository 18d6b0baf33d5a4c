package buildup

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

func lineHeatArg(trend int8) kernel.Arg {
	return kernel.Takes("line_heat", "heat per length of bead", q.LineHeatDim, 1e4, 1e7, trend)
}

func capacityArg(trend int8) kernel.Arg {
	return kernel.Takes("heat_capacity", "heat per volume and warming; 4.4 MJ/(m3 K) for steel", q.HeatCapacityDim, 1e6, 6e6, trend)
}

func heatKernels() []kernel.Kernel {
	distance := kernel.Takes("distance", "from the middle of the bead or land", q.LengthDim, 1e-3, 2, -1)
	thickness := kernel.Takes("thickness", "of the plate", q.LengthDim, 5e-4, 0.2, -1)
	start := kernel.Takes("start", "temperature before the bead", q.TemperatureDim, 250, 700, 1)
	peak := func(x []float64, pick func(Peak) q.Temperature) (float64, []basis.Note, error) {
		p, notes, err := PlatePeak(LineHeat(x[0]), q.Length(x[1]), Plate{q.Length(x[2]), HeatCapacity(x[3]), q.Temperature(x[4])})
		return float64(pick(p)), notes, err
	}
	const rosenthal = "Rosenthal, from memory of welding texts; the bounds worked out"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "arc_line_heat", Says: "heat an arc puts in per length of bead", Result: q.LineHeatDim,
			Args: []kernel.Arg{kernel.Takes("arc_power", "volts times amperes", q.PowerDim, 100, 50000, 1), kernel.Takes("travel", "speed along the bead", q.SpeedDim, 1e-4, 0.1, -1),
				kernel.Takes("arc_efficiency", "part that goes in, 0.6 TIG, 0.8 rods and wire", q.Number, 0.2, 1, 1)},
			Source: "arithmetic; EN 1011-1, read in a table of it", Grade: basis.Derived,
		}, "H = arc_efficiency·arc_power/travel",
			func(x []float64) float64 { return arcHeat(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ArcHeat(q.Power(x[0]), q.Speed(x[1]), x[2]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "plate_peak_least", Says: "least that a place beside a bead warms up to", Result: q.TemperatureDim,
			Args: []kernel.Arg{lineHeatArg(1), distance, thickness, capacityArg(-1), start}, Source: rosenthal, Grade: basis.Memory,
		}, "T = start + max(line_heat/(√(2πe)·heat_capacity·thickness·distance), 2·line_heat/(π·e·heat_capacity·distance²))",
			func(x []float64) float64 {
				return x[4] + max(thinRise(x[0], x[1], x[2], x[3]), thickRise(x[0], x[1], x[3]))
			},
			func(x []float64) (float64, []basis.Note, error) {
				return peak(x, func(p Peak) q.Temperature { return p.Least })
			}),
		kernel.Make(kernel.Kernel{
			Name: "plate_peak_most", Says: "most that a place beside a bead warms up to", Result: q.TemperatureDim,
			Args: []kernel.Arg{lineHeatArg(1), distance, thickness, capacityArg(-1), start}, Source: rosenthal, Grade: basis.Memory,
		}, "T = start + line_heat/(√(2πe)·heat_capacity·thickness·distance) + 2·line_heat/(π·e·heat_capacity·distance²)",
			func(x []float64) float64 {
				return x[4] + (thinRise(x[0], x[1], x[2], x[3]) + thickRise(x[0], x[1], x[3]))
			},
			func(x []float64) (float64, []basis.Note, error) {
				return peak(x, func(p Peak) q.Temperature { return p.Most })
			}),
		kernel.Make(kernel.Kernel{
			Name: "weld_reach", Says: "how far from the fused edge a thin plate reaches a temperature", Result: q.LengthDim,
			Args: []kernel.Arg{lineHeatArg(1), kernel.Takes("reached", "temperature asked for", q.TemperatureDim, 300, 2000, -1), kernel.Takes("melting", "melting temperature", q.TemperatureDim, 800, 2000, 1),
				thickness, capacityArg(-1), start}, Source: "welding handbooks, a worked example read on a page", Grade: basis.Secondary,
		}, "y = line_heat/(√(2πe)·heat_capacity·thickness)·(1/(reached − start) − 1/(melting − start))",
			func(x []float64) float64 {
				if !(x[1] > x[5] && x[1] <= x[2]) {
					return math.NaN()
				}
				return reach(x[0], x[1], x[2], x[3], x[4], x[5])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Reach(LineHeat(x[0]), q.Temperature(x[1]), q.Temperature(x[2]), Plate{q.Length(x[3]), HeatCapacity(x[4]), q.Temperature(x[5])}))
			}),
		kernel.Make(kernel.Kernel{
			Name: "bar_peak", Says: "most that a place on a shaft warms up to when a land on it is built up", Result: q.TemperatureDim,
			Args:   []kernel.Arg{kernel.Takes("heat", "of the whole land", q.EnergyDim, 1e3, 1e8, 1), distance, kernel.Takes("round", "diameter of the shaft", q.LengthDim, 5e-3, 1, -1), capacityArg(-1), start},
			Source: "conduction along a rod, worked out", Grade: basis.Derived,
		}, "T = start + heat/(√(2πe)·heat_capacity·π/4·round²·distance)",
			func(x []float64) float64 { return x[4] + barRise(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(BarPeak(q.Energy(x[0]), q.Length(x[1]), Bar{Round: q.Length(x[2]), Capacity: HeatCapacity(x[3]), Start: q.Temperature(x[4])}))
			}),
	}
}

func preheatKernels() []kernel.Kernel {
	percent := func(name string, most float64) kernel.Arg {
		return kernel.Takes(name, "per cent by mass", q.Number, 0, most, 1)
	}
	steel := func(x []float64) Steel { return Steel{x[0], x[1], x[2], x[3], x[4], x[5], x[6]} }
	equivalence := kernel.Takes("carbon_equivalent", "of the steel, per cent", q.Number, 0, 1, 1)
	const handbook = "an electrode maker's handbook, from memory; welding pages, read"
	of := func(name, says string, thick bool, pick func(Preheating) q.Temperature, column func(band) float64) kernel.Kernel {
		return kernel.Make(kernel.Kernel{
			Name: name, Says: says, Result: q.TemperatureDim, Args: []kernel.Arg{equivalence}, Source: handbook, Grade: basis.Memory,
		}, "by the table of preheats",
			func(x []float64) float64 { return float64(kelvin(column(bands[bandOf(x[0])]))) },
			func(x []float64) (float64, []basis.Note, error) {
				p, notes, err := Preheat(x[0], thick)
				return float64(pick(p)), notes, err
			})
	}
	least, most := func(p Preheating) q.Temperature { return p.Least }, func(p Preheating) q.Temperature { return p.Most }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "carbon_equivalent", Says: "how hardenable a steel is beside a weld, per cent", Result: q.Number,
			Args: []kernel.Arg{percent("carbon", 2), percent("manganese", 20), percent("chromium", 10.5), percent("molybdenum", 5),
				percent("vanadium", 2), percent("nickel", 10), percent("copper", 3)},
			Source: "the IIW formula, read on several pages", Grade: basis.Secondary,
		}, "CE = carbon + manganese/6 + (chromium + molybdenum + vanadium)/5 + (nickel + copper)/15",
			func(x []float64) float64 { return equivalent(steel(x)) },
			func(x []float64) (float64, []basis.Note, error) { return CarbonEquivalent(steel(x)) }),
		of("preheat_least", "least preheat of a steel for welding", false, least, func(b band) float64 { return b.least }),
		of("preheat_most", "most preheat of a steel for welding", false, most, func(b band) float64 { return b.most }),
		of("preheat_thick_least", "least preheat of a thick or held steel", true, least, func(b band) float64 { return b.thickLeast }),
		of("preheat_thick_most", "most preheat of a thick or held steel", true, most, func(b band) float64 { return b.thickMost }),
	}
}
