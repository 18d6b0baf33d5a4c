package buildup

import (
	"math"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	return slices.Concat(coatKernels(), cutKernels(), fillerKernels(), heatKernels(), preheatKernels())
}

func size(name, says string, trend int8) kernel.Arg {
	return kernel.Takes(name, says, q.LengthDim, 1e-3, 2, trend)
}

// above gives NaN unless x[large] is over x[small]; equal passes where it may.
func above(large, small int, equal bool, value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		if !(x[large] > x[small] || equal && x[large] == x[small]) {
			return math.NaN()
		}
		return value(x)
	}
}

func coatKernels() []kernel.Kernel {
	length := kernel.Takes("length", "worn length", q.LengthDim, 1e-3, 5, 1)
	runOut := kernel.Takes("run_out", "past the worn length at each end", q.LengthDim, 0, 0.1, 1)
	of := func(x []float64) Coat {
		return Coat{From: q.Length(x[0]), As: q.Length(x[1]), Length: q.Length(x[2]), RunOut: q.Length(x[3])}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "shaft_coat_volume", Says: "metal of a coat on a shaft", Result: q.VolumeDim,
			Args:   []kernel.Arg{size("undercut", "size the coat is laid on", -1), size("deposited", "size as deposited", 1), length, runOut},
			Source: "geometry", Grade: basis.Derived,
		}, "V = π/4·(deposited² − undercut²)·(length + 2·run_out)",
			above(1, 0, false, func(x []float64) float64 { return coat(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(ShaftCoat(of(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "bore_coat_volume", Says: "metal of a coat that builds a bore up inwards", Result: q.VolumeDim,
			Args:   []kernel.Arg{size("bored_to", "size the coat is laid in", 1), size("deposited", "size as deposited", -1), length, runOut},
			Source: "geometry", Grade: basis.Derived,
		}, "V = π/4·(bored_to² − deposited²)·(length + 2·run_out)",
			above(0, 1, false, func(x []float64) float64 { return coat(x[1], x[0], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(BoreCoat(of(x))) }),
	}
}

func cutKernels() []kernel.Kernel {
	length := kernel.Takes("length", "of the cut", q.LengthDim, 1e-3, 5, 1)
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "turned_off_volume", Says: "metal a cut takes off a shaft", Result: q.VolumeDim,
			Args:   []kernel.Arg{size("size_before", "diameter before the cut", 1), size("size_after", "diameter after the cut", -1), length},
			Source: "geometry", Grade: basis.Derived,
		}, "V = π/4·(size_before² − size_after²)·length",
			above(0, 1, true, func(x []float64) float64 { return ring(x[1], x[0], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(TurnedOff(q.Length(x[0]), q.Length(x[1]), q.Length(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "bored_out_volume", Says: "metal a cut takes out of a bore", Result: q.VolumeDim,
			Args:   []kernel.Arg{size("size_before", "diameter before the cut", -1), size("size_after", "diameter after the cut", 1), length},
			Source: "geometry", Grade: basis.Derived,
		}, "V = π/4·(size_after² − size_before²)·length",
			above(1, 0, true, func(x []float64) float64 { return ring(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(BoredOut(q.Length(x[0]), q.Length(x[1]), q.Length(x[2])))
			}),
	}
}

func fillerKernels() []kernel.Kernel {
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "filler_mass", Says: "rod, wire or powder that leaves a volume of metal in place", Result: q.MassDim,
			Args: []kernel.Arg{
				kernel.Takes("metal", "volume left in place", q.VolumeDim, 0, 1, 1), kernel.Takes("density", "of the filler", q.DensityDim, 500, 25000, 1),
				kernel.Takes("efficiency", "part of what is fed that stays", q.Number, 0.05, 1, -1),
			}, Source: "arithmetic; welders' handbooks", Grade: basis.Derived,
		}, "m = density·metal/efficiency",
			func(x []float64) float64 { return filler(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Filler(q.Volume(x[0]), q.Density(x[1]), x[2]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "coat_layers", Says: "layers that make a coat", Result: q.Number,
			Args:   []kernel.Arg{kernel.Takes("coat", "thickness per side", q.LengthDim, 0, 0.03, 1), kernel.Takes("layer", "thickness of one layer, per side", q.LengthDim, 1e-4, 0.01, -1)},
			Source: "arithmetic", Grade: basis.Derived,
		}, "coat/layer, rounded up",
			func(x []float64) float64 { return layers(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				n, err := Layers(q.Length(x[0]), q.Length(x[1]))
				return float64(n), nil, err
			}),
	}
}
