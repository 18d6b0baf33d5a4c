package rotating

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	arg := func(name, says string, dim q.Dim, lo, hi float64) kernel.Arg {
		return kernel.Arg{Name: name, Says: says, Dim: dim, Range: interval.Of(lo, hi), Trend: 1}
	}
	mass := arg("mass", "of the part that turns", q.MassDim, 1e-3, 1e5)
	swing := arg("swing", "greatest diameter", q.LengthDim, 1e-3, 10)
	turns := arg("turns", "speed of rotation", q.RotationDim, 0, 2000)
	part := func(x []float64) Part { return Part{q.Mass(x[0]), q.Length(x[1]), q.Rotation(x[2])} }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "disc_energy", Says: "energy of a part that turns, as a disc of even thickness", Result: q.EnergyDim,
			Args: []kernel.Arg{mass, swing, turns}, Source: "moment of inertia of a disc, any mechanics text", Grade: basis.Derived,
		}, "E = m·(π·D·n)²/4",
			func(x []float64) float64 { return rim(x[0], x[1], x[2]) / 2 },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(DiscEnergy(part(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "rim_energy", Says: "energy of a part that turns, all its mass at the rim: the most there can be", Result: q.EnergyDim,
			Args: []kernel.Arg{mass, swing, turns}, Source: "moment of inertia of a ring, any mechanics text", Grade: basis.Derived,
		}, "E = m·(π·D·n)²/2",
			func(x []float64) float64 { return rim(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(RimEnergy(part(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "rim_speed", Says: "how fast the surface at a diameter runs", Result: q.SpeedDim,
			Args: []kernel.Arg{swing, turns}, Source: "geometry", Grade: basis.Derived,
		}, "v = π·D·n",
			func(x []float64) float64 { return rimSpeed(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(RimSpeed(q.Length(x[0]), q.Rotation(x[1])))
			}),
	}
}
