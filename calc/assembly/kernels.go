package assembly

import (
	"math"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const expands = "linear expansion with the mean coefficient"

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	return slices.Concat(entryKernels(), coldKernels(), coolingKernels(), soakKernels(), grabKernels())
}

func entryKernels() []kernel.Kernel {
	seat := func(trend int8) kernel.Arg {
		return kernel.Arg{Name: "seat", Says: "diameter of the joint", Dim: q.LengthDim, Range: interval.Of(1e-3, 2), Trend: trend}
	}
	tight := func(trend int8) kernel.Arg {
		return kernel.Arg{Name: "interference", Says: "on diameter, at room temperature", Dim: q.LengthDim, Range: interval.Of(0, 1e-2), Trend: trend}
	}
	gap := func(trend int8) kernel.Arg {
		return kernel.Arg{Name: "gap", Says: "clearance wanted for entry", Dim: q.LengthDim, Range: interval.Of(0, 5e-3), Trend: trend}
	}
	alpha := func(name string, trend int8) kernel.Arg {
		return kernel.Arg{Name: name, Says: "mean expansion", Dim: q.ExpansionDim, Range: interval.Of(1e-6, 100e-6), Trend: trend}
	}
	at := func(name string, lo, hi float64, trend int8) kernel.Arg {
		return kernel.Arg{Name: name, Says: "temperature", Dim: q.TemperatureDim, Range: interval.Of(lo, hi), Trend: trend}
	}
	room := func(trend int8) kernel.Arg { return at("room", 223.15, 333.15, trend) }
	const coldest = 70.0 // K: a little below boiling nitrogen, 77 K; our choice
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "hub_temperature", Says: "how hot the hub must be, shaft at room temperature", Result: q.TemperatureDim,
			Args: []kernel.Arg{seat(-1), tight(1), gap(1), alpha("hub_expansion", -1), room(1)}, Source: expands, Grade: basis.Derived,
		}, "T = room + (δ + gap)/(αh·d)",
			enters(2, func(x []float64) float64 { return hubTemperature(x[0], x[1], x[2], x[3], 0, x[4], x[4]) }),
			func(x []float64) (float64, []basis.Note, error) {
				e := Entry{Seat: q.Length(x[0]), Interference: q.Length(x[1]), Hub: q.Expansion(x[3]), Room: q.Temperature(x[4])}
				return kernel.Noted(HubTemperature(e, q.Length(x[2]), e.Room))
			}),
		kernel.Make(kernel.Kernel{
			Name: "hub_temperature_cold_shaft", Says: "how hot the hub must be when the shaft is not at room temperature", Result: q.TemperatureDim,
			Args:   []kernel.Arg{seat(-1), tight(1), gap(1), alpha("hub_expansion", 0), alpha("shaft_expansion", 0), room(0), at("shaft_at", coldest, 500, 1)},
			Source: expands, Grade: basis.Derived,
			Enclose: func(x []interval.I) interval.I {
				grow := x[1].Add(x[2]).Div(x[0]).Add(x[4].Mul(x[6].Sub(x[5])))
				return x[5].Add(grow.Div(x[3]))
			},
		}, "T = room + (δ + gap + αs·d·(shaft − room))/(αh·d)",
			enters(2, func(x []float64) float64 { return hubTemperature(x[0], x[1], x[2], x[3], x[4], x[5], x[6]) }),
			func(x []float64) (float64, []basis.Note, error) {
				e := Entry{Seat: q.Length(x[0]), Interference: q.Length(x[1]), Hub: q.Expansion(x[3]), Shaft: q.Expansion(x[4]), Room: q.Temperature(x[5])}
				return kernel.Noted(HubTemperature(e, q.Length(x[2]), q.Temperature(x[6])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "entry_gap", Says: "clearance with hub and shaft at given temperatures; less than 0 does not enter", Result: q.LengthDim,
			Args:   []kernel.Arg{seat(0), tight(-1), alpha("hub_expansion", 0), alpha("shaft_expansion", 0), room(0), at("hub_at", 223.15, 1200, 1), at("shaft_at", coldest, 500, -1)},
			Source: expands, Grade: basis.Derived,
			Enclose: func(x []interval.I) interval.I {
				return x[0].Mul(x[2].Mul(x[5].Sub(x[4])).Sub(x[3].Mul(x[6].Sub(x[4])))).Sub(x[1])
			},
		}, "gap = αh·d·(hub − room) − αs·d·(shaft − room) − δ",
			enters(1, func(x []float64) float64 { return entryGap(x[0], x[1], x[2], x[3], x[4], x[5], x[6]) }),
			func(x []float64) (float64, []basis.Note, error) {
				e := Entry{Seat: q.Length(x[0]), Interference: q.Length(x[1]), Hub: q.Expansion(x[2]), Shaft: q.Expansion(x[3]), Room: q.Temperature(x[4])}
				return kernel.Noted(EntryGap(e, q.Temperature(x[5]), q.Temperature(x[6])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "shaft_temperature", Says: "how cold the shaft must be, hub at room temperature", Result: q.TemperatureDim,
			Args:   []kernel.Arg{seat(1), tight(-1), gap(-1), alpha("shaft_expansion", 1), room(1)},
			Source: expands, Grade: basis.Derived,
		}, "T = room − (δ + gap)/(αs·d)",
			enters(2, func(x []float64) float64 {
				if t := shaftTemperature(x[0], x[1], x[2], x[3], x[4]); t > 0 {
					return t
				}
				return math.NaN()
			}),
			func(x []float64) (float64, []basis.Note, error) {
				e := Entry{Seat: q.Length(x[0]), Interference: q.Length(x[1]), Hub: 1e-5, Shaft: q.Expansion(x[3]), Room: q.Temperature(x[4])}
				return kernel.Noted(ShaftTemperature(e, q.Length(x[2])))
			}),
	}
}

// enters gives NaN where the seat x[0] is not ten times each of the lengths
// x[1] to x[last].
func enters(last int, value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		for _, l := range x[1 : last+1] {
			if !(l < x[0]/10) {
				return math.NaN()
			}
		}
		return value(x)
	}
}
