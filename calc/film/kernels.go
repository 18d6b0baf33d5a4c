package film

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	out := append(lightKernels(), numberKernels()...)
	out = append(out, runKernels()...)
	out = append(out, thicknessKernels()...)
	return append(out, warmKernels()...)
}

func diameter(trend int8) kernel.Arg {
	return kernel.Takes("diameter", "of the journal", q.LengthDim, 5e-3, 1, trend)
}

func length(trend int8) kernel.Arg {
	return kernel.Takes("length", "of the bearing", q.LengthDim, 5e-3, 1, trend)
}

func clearance(trend int8) kernel.Arg {
	return kernel.Takes("clearance", "on diameter, warm", q.LengthDim, 1e-6, 2e-3, trend)
}

func load(trend int8) kernel.Arg {
	return kernel.Takes("load", "steady, square to the axis", q.ForceDim, 1, 1e6, trend)
}

func speed(lo float64, trend int8) kernel.Arg {
	return kernel.Takes("speed", "turns in a time", q.RotationDim, lo, 500, trend)
}

func viscosity(trend int8) kernel.Arg {
	return kernel.Takes("viscosity", "of the oil as warm as it runs", q.ViscosityDim, 1e-3, 10, trend)
}

func lengthRatio(trend int8) kernel.Arg {
	return kernel.Takes("length_ratio", "length over diameter", q.Number, leastRatio, mostRatio, trend)
}

// gap is false where a clearance is no bearing's.
func gap(diameter, clearance float64) bool { return clearance < diameter/10 }

func lightKernels() []kernel.Kernel {
	args := []kernel.Arg{diameter(1), length(1), clearance(-1), speed(0, 1), viscosity(1)}
	bareOf := func(x []float64) bare {
		return bare{diameter: x[0], length: x[1], clearance: x[2], speed: x[3], viscosity: x[4]}
	}
	one := func(name, says string, dim q.Dim, formula string, of func(b bare) float64, pick func(Rubbing) float64) kernel.Kernel {
		return kernel.Make(kernel.Kernel{
			Name: name, Says: says, Result: dim, Args: args,
			Source: "Petroff's law, any machine-element text; worked out", Grade: basis.Derived,
		}, formula,
			func(x []float64) float64 {
				if !gap(x[0], x[2]) {
					return math.NaN()
				}
				return of(bareOf(x))
			},
			func(x []float64) (float64, []basis.Note, error) {
				r, notes, err := Petroff(Journal{
					Diameter: q.Length(x[0]), Length: q.Length(x[1]), Clearance: q.Length(x[2]), Speed: q.Rotation(x[3]), Viscosity: q.Viscosity(x[4]),
				})
				return pick(r), notes, err
			})
	}
	return []kernel.Kernel{
		one("petroff_torque", "to turn a journal that carries little", q.TorqueDim, "T = π²·μ·d³·L·n/C", petroff,
			func(r Rubbing) float64 { return float64(r.Torque) }),
		one("petroff_power", "to turn a journal that carries little", q.PowerDim, "2π·n·T, T = π²·μ·d³·L·n/C",
			func(b bare) float64 { return 2 * math.Pi * b.speed * petroff(b) }, func(r Rubbing) float64 { return float64(r.Power) }),
	}
}

func numberKernels() []kernel.Kernel {
	ecc := func(trend int8) kernel.Arg {
		return kernel.Takes("eccentricity", "how far off the middle, over half the clearance", q.Number, 1e-3, mostBent, trend)
	}
	one := func(name, says string, args []kernel.Arg, pick func(Numbers) float64) kernel.Kernel {
		return kernel.Make(kernel.Kernel{Name: name, Says: says, Result: q.Number, Args: args, Source: tableSource, Grade: basis.Derived},
			"the table at ε and L/D",
			func(x []float64) float64 { return pick(numbersAt(x[0], x[1])) },
			func(x []float64) (float64, []basis.Note, error) {
				n, notes, err := At(x[0], x[1])
				return pick(n), notes, err
			})
	}
	return []kernel.Kernel{
		one("sommerfeld_at", "Sommerfeld number at which a bearing runs so far off the middle", []kernel.Arg{ecc(-1), lengthRatio(-1)},
			func(n Numbers) float64 { return n.Sommerfeld }),
		one("film_attitude", "angle from the load to the narrowest gap, in radians", []kernel.Arg{ecc(-1), lengthRatio(0)},
			func(n Numbers) float64 { return n.Attitude }),
		kernel.Make(kernel.Kernel{
			Name: "film_eccentricity", Says: "how far off the middle a bearing runs, over half the clearance", Result: q.Number,
			Args:   []kernel.Arg{kernel.Takes("sommerfeld", "number (r/c)²·μ·n/P", q.Number, 5e-3, 1e4, -1), lengthRatio(-1)},
			Source: tableSource, Grade: basis.Derived,
		}, "ε of S(ε, L/D) = S",
			func(x []float64) float64 { return eccentricityOf(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(Eccentricity(x[0], x[1])) }),
	}
}
