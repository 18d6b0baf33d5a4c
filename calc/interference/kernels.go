package interference

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const lame = "Lamé's thick ring in plane stress, any strength text; worked out"

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	return append(giveKernels(), append(pressureKernels(), append(sizeAndStressKernels(), append(gripKernels(), turningKernels()...)...)...)...)
}

func diameter(name, says string, least float64, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.LengthDim, Range: interval.Of(least, 2), Trend: trend}
}

// shaftBore is the hole along a shaft; nobody speaks of the one that is not there.
func shaftBore(trend int8) kernel.Arg {
	a := diameter("shaft_bore", "the shaft's own hole, 0 if solid", 0, trend)
	a.Unsaid = &kernel.Unsaid{Value: 0, Says: "solid"}
	return a
}

func modulus(name string, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: "Young's modulus", Dim: q.StressDim, Range: interval.Of(1e9, 500e9), Trend: trend}
}

func poisson(name string, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: "Poisson's number", Dim: q.Number, Range: interval.Of(0, 0.5), Trend: trend}
}

func giveArg(name, says string, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.PerStressDim, Range: interval.Of(1e-13, 1e-7), Trend: trend}
}

func pressureArg(says string) kernel.Arg {
	return kernel.Arg{Name: "pressure", Says: says, Dim: q.StressDim, Range: interval.Of(0, 2e9), Trend: 1}
}

func ring(bore, outside, e, nu float64) Ring {
	return Ring{q.Length(bore), q.Length(outside), Elastic{E: q.Stress(e), Nu: nu}}
}

// ringed gives NaN for a ring without a bore or without a wall.
func ringed(value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		if !(x[0] < x[1]) {
			return math.NaN()
		}
		return value(x)
	}
}

func giveKernels() []kernel.Kernel {
	const least = 1e-4 // m: thinner parts are not repaired; our choice
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "hub_give", Says: "growth of a hub's bore per diameter and pressure", Result: q.PerStressDim,
			Args:   []kernel.Arg{diameter("bore", "bore of the hub", least, 1), diameter("outside", "outside diameter", least, -1), modulus("modulus", -1), poisson("poisson", 1)},
			Source: lame, Grade: basis.Derived,
		}, "g = (k + ν)/E, k = (D²+d²)/(D²−d²)",
			ringed(func(x []float64) float64 { return hubGive(thick(x[0], x[1]), x[3], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(HubGive(ring(x[0], x[1], x[2], x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "shaft_give", Says: "shrinking of a solid or hollow shaft per diameter and pressure", Result: q.PerStressDim,
			Args:   []kernel.Arg{diameter("bore", "the shaft's own hole, 0 if solid", 0, 1), diameter("outside", "outside diameter", least, -1), modulus("modulus", -1), poisson("poisson", -1)},
			Source: lame, Grade: basis.Derived,
		}, "g = (k − ν)/E, k = (d²+b²)/(d²−b²), 1 if solid",
			ringed(func(x []float64) float64 { return shaftGive(thick(x[0], x[1]), x[3], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ShaftGive(ring(x[0], x[1], x[2], x[3])))
			}),
		backed("backed_bush_give", "growth of the bore of a bush held by a hub, per diameter and pressure", "bush", "hub_give", q.PerStressDim,
			"g = (k + ν − (k²−1)/(E·hub + k − ν))/E, k = (b²+a²)/(b²−a²)",
			backedBushGive, func(r Ring, g Give) (float64, []basis.Note, error) { return kernel.Plain(BackedBushGive(r, g)) }, -1, 1),
		backed("sleeve_give", "shrinking of the outside of a sleeve on its shaft, per diameter and pressure", "sleeve", "shaft_give", q.PerStressDim,
			"g = (k − ν − (k²−1)/(E·shaft + k + ν))/E, k = (b²+a²)/(b²−a²)",
			sleeveGive, func(r Ring, g Give) (float64, []basis.Note, error) { return kernel.Plain(SleeveGive(r, g)) }, -1, 1),
		backed("bush_passes_on", "part of a pressure in the bush's bore that arrives at its joint with the hub", "bush", "hub_give", q.Number,
			"q/p = (k − 1)/(E·hub + k − ν), k = (b²+a²)/(b²−a²)",
			bushPassesOn, func(r Ring, g Give) (float64, []basis.Note, error) { return kernel.Plain(BushPassesOn(r, g)) }, -1, -1),
		backed("sleeve_passes_on", "part of a pressure on the sleeve's outside that arrives at its joint with the shaft", "sleeve", "shaft_give", q.Number,
			"q/p = (k + 1)/(E·shaft + k + ν), k = (b²+a²)/(b²−a²)",
			sleevePassesOn, func(r Ring, g Give) (float64, []basis.Note, error) { return kernel.Plain(SleevePassesOn(r, g)) }, -1, -1),
	}
}

// backed is a kernel over a ring and the give of what backs it.
func backed(name, says, part, backing string, result q.Dim, formula string,
	value func(k, nu, e, g float64) float64, worked func(Ring, Give) (float64, []basis.Note, error), e, g int8) kernel.Kernel {
	return kernel.Make(kernel.Kernel{
		Name: name, Says: says, Result: result,
		Args: []kernel.Arg{
			diameter("bore", "bore of the "+part, 1e-4, 0), diameter("outside", "outside of the "+part, 1e-4, 0),
			modulus("modulus", e), poisson("poisson", 0), giveArg(backing, "give of what the "+part+" sits against", g),
		},
		Source: lame, Grade: basis.Derived,
	}, formula,
		ringed(func(x []float64) float64 { return value(thick(x[0], x[1]), x[3], x[2], x[4]) }),
		func(x []float64) (float64, []basis.Note, error) {
			return worked(ring(x[0], x[1], x[2], x[3]), Give(x[4]))
		})
}
