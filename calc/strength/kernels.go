package strength

import (
	"math"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	return slices.Concat(nominalKernels(), turnedKernels(), filletKernels(), grooveKernels(),
		notchKernels(), enduranceKernels(), safetyKernels(), seatKernels(), repairKernels())
}

func diameter(name, says string, least float64, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.LengthDim, Range: interval.Of(least, 2), Trend: trend}
}

func nominalKernels() []kernel.Kernel {
	hole, outside := diameter("bore", "the shaft's own hole, 0 if solid", 0, 1), diameter("outside", "outside diameter", 1e-3, -1)
	load := func(name string) kernel.Arg {
		return kernel.Arg{Name: name, Says: "at the section", Dim: q.TorqueDim, Range: interval.Of(0, 1e6), Trend: 1}
	}
	stress := func(name string) kernel.Arg {
		return kernel.Arg{Name: name, Says: "at the same place and time", Dim: q.StressDim, Range: interval.Of(0, 3e9), Trend: 1}
	}
	section := func(x []float64) Section { return Section{q.Length(x[0]), q.Length(x[1])} }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "bending_stress", Says: "nominal bending stress of a shaft", Result: q.StressDim,
			Args: []kernel.Arg{hole, outside, load("moment")}, Source: "beam theory, any strength text", Grade: basis.Derived,
		}, "σ = 32·M·d/(π·(d⁴−b⁴))",
			walled(func(x []float64) float64 { return bending(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Bending(section(x), q.Torque(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "twisting_stress", Says: "nominal shear stress of a shaft under torque", Result: q.StressDim,
			Args: []kernel.Arg{hole, outside, load("torque")}, Source: "torsion of a round bar, any strength text", Grade: basis.Derived,
		}, "τ = 16·T·d/(π·(d⁴−b⁴))",
			walled(func(x []float64) float64 { return bending(x[0], x[1], x[2]) / 2 }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Twisting(section(x), q.Torque(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "von_mises", Says: "one stress that bending and shear together are worth", Result: q.StressDim,
			Args: []kernel.Arg{stress("bending"), stress("shear")}, Source: "von Mises' yield condition, any strength text", Grade: basis.Derived,
		}, "σv = √(σ² + 3τ²)",
			func(x []float64) float64 { return vonMises(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(VonMises(q.Stress(x[0]), q.Stress(x[1])))
			}),
	}
}

// walled gives NaN for a section whose bore x[0] leaves no wall inside x[1].
func walled(value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		if !(x[0] < x[1]) {
			return math.NaN()
		}
		return value(x)
	}
}

func turnedKernels() []kernel.Kernel {
	args := []kernel.Arg{
		diameter("bore", "the shaft's own hole, 0 if solid", 0, -1),
		diameter("now", "diameter after turning down", 1e-3, 1),
		diameter("was", "diameter before", 1e-3, -1),
	}
	down := func(value func(bore, was, now float64) float64) func(x []float64) float64 {
		return walled(func(x []float64) float64 {
			if !(x[1] <= x[2]) {
				return math.NaN()
			}
			return value(x[0], x[2], x[1])
		})
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "strength_left", Says: "part of its strength a shaft keeps after turning down", Result: q.Number,
			Args: args, Source: "section modulus of a round bar, any strength text", Grade: basis.Derived,
		}, "left = (now⁴−b⁴)/now · was/(was⁴−b⁴)",
			down(strengthLeft),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(StrengthLeft(q.Length(x[0]), q.Length(x[2]), q.Length(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "stiffness_left", Says: "part of its stiffness a shaft keeps where it is turned down", Result: q.Number,
			Args: args, Source: "second moment of area of a round bar, any strength text", Grade: basis.Derived,
		}, "left = (now⁴−b⁴)/(was⁴−b⁴)",
			down(stiffnessLeft),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(StiffnessLeft(q.Length(x[0]), q.Length(x[2]), q.Length(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "hub_wall", Says: "metal left on each side of a bore", Result: q.LengthDim,
			Args: []kernel.Arg{diameter("bore", "bore of the hub", 1e-3, -1), diameter("outside", "outside diameter, or the bottom of what is cut into it", 1e-3, 1)}, Source: "geometry", Grade: basis.Derived,
		}, "wall = (D−d)/2",
			walled(func(x []float64) float64 { return (x[1] - x[0]) / 2 }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(HubWall(q.Length(x[0]), q.Length(x[1])))
			}),
	}
}

// filletKernels take the two ratios, so that their ranges are those the source
// states.
func filletKernels() []kernel.Kernel {
	args := []kernel.Arg{
		{Name: "large_over_small", Says: "D/d of the shoulder", Dim: q.Number, Range: interval.Of(leastStep, mostStep), Trend: 1},
		{Name: "radius_over_small", Says: "r/d of the fillet", Dim: q.Number, Range: interval.Of(leastRadius, mostRadius), Trend: -1},
	}
	shoulder := func(x []float64) Shoulder { return Shoulder{Large: q.Length(x[0]), Small: 1, Radius: q.Length(x[1])} }
	const tipton = "Tipton, Sorem and Rolovic, J. Mech. Design 118 (1996), from memory, confirmed by own finite elements"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "fillet_bending", Says: "by how much a shoulder raises the bending stress", Result: q.Number,
			Args: args, Source: tipton, Grade: basis.Memory,
		}, "K = 0.632 + 0.377/k^4.4 + q^−0.5·√[(−0.14−0.363k²+0.503k⁴)/(1−2.39k²+3.368k⁴)]",
			func(x []float64) float64 { return filletBending(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(FilletBending(shoulder(x)))
			}),
		kernel.Make(kernel.Kernel{
			Name: "fillet_twisting", Says: "by how much a shoulder raises the shear stress under torque", Result: q.Number,
			Args: args, Source: tipton, Grade: basis.Memory,
		}, "K = 0.78 + 0.2/k^10 + q^−0.46·√[(0.002−0.125k²+0.123k⁴)/(1−2.75k²+2.55k⁴)]",
			func(x []float64) float64 { return filletTwisting(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(FilletTwisting(shoulder(x)))
			}),
	}
}
