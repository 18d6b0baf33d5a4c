package gears

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	return append(trainKernels(), append(meshKernels(), toothKernels()...)...)
}

// teethOf is a number of teeth; one that is not whole is taken down.
func teethOf(name, says string, least float64, trend int8) kernel.Arg {
	return kernel.Takes(name, says+", whole; a broken number is taken down", q.Number, least, 300, trend)
}

func module(trend int8) kernel.Arg {
	return kernel.Takes("module", "of the teeth; 25.4 mm over the diametral pitch", q.LengthDim, 0.3e-3, 30e-3, trend)
}

func pressureAngle(trend int8) kernel.Arg {
	return kernel.Takes("pressure_angle", "of the cutter", q.Number, leastPressure, mostPressure, trend)
}

const (
	power = "power is kept but for the losses; any mechanics text"
	gear  = "geometry"
)

func trainKernels() []kernel.Kernel {
	turns := func(trend int8) kernel.Arg {
		return kernel.Takes("turns", "speed of the first shaft", q.RotationDim, 1e-3, 1e3, trend)
	}
	ratio := func(trend int8) kernel.Arg {
		return kernel.Takes("ratio", "turns of the first shaft for one of the last: teeth driven over teeth driving", q.Number, 1e-3, 1e3, trend)
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "train_turns", Says: "speed of the last shaft of a gear train", Result: q.RotationDim,
			Args: []kernel.Arg{turns(1), ratio(-1)}, Source: gear, Grade: basis.Derived,
		}, "n2 = turns/ratio",
			func(x []float64) float64 { return x[0] / x[1] },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(TrainTurns(q.Rotation(x[0]), x[1]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "train_torque", Says: "torque on the last shaft of a gear train", Result: q.TorqueDim,
			Args: []kernel.Arg{
				kernel.Takes("power", "that drives the first shaft", q.PowerDim, 1, 1e6, 1), turns(-1), ratio(1),
				kernel.Takes("efficiency", "of one mesh with its bearings", q.Number, 0.3, 1, 1),
				kernel.Takes("meshes", "their number, whole; a broken one is taken down", q.Number, 1, 12, -1),
			}, Source: power, Grade: basis.Derived,
		}, "T = power/(2π·turns)·ratio·efficiency^meshes",
			func(x []float64) float64 { return trainTorque(x[0], x[1], x[2], x[3], math.Floor(x[4])) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(TrainTorque(q.Power(x[0]), q.Rotation(x[1]), x[2], x[3], int(x[4])))
			}),
		forceKernel("tooth_tangential", "force between two gears along the pitch circle", "Ft = 2·torque/pitch_diameter", 0,
			func(t, _ float64) float64 { return t }, func(f Forces) q.Force { return f.Tangential }),
		forceKernel("tooth_radial", "force that pushes the axes of two gears apart", "Fr = 2·torque/pitch_diameter·tan(pressure_angle)", 1,
			func(t, φ float64) float64 { return t * math.Tan(φ) }, func(f Forces) q.Force { return f.Radial }),
		forceKernel("tooth_total", "whole force between two gears, square to the tooth", "F = 2·torque/pitch_diameter/cos(pressure_angle)", 1,
			func(t, φ float64) float64 { return t / math.Cos(φ) }, func(f Forces) q.Force { return f.Total }),
		idlerKernel("idler_load", "load of the teeth on the stud of an idler", "F = 2·tangential_force/cos(pressure_angle)·|sin(between/2 − pressure_angle)|", q.ForceDim,
			kernel.Takes("tangential_force", "on the idler's teeth", q.ForceDim, 1e-3, 1e7, 1),
			func(x []float64) float64 { return idlerLoad(x[0], x[1], x[2]) },
			func(l StudLoad, _ float64) float64 { return float64(l.Force) }),
		idlerKernel("idler_shift", "how far an idler moves away from both its mates when its stud wears along the load", "Δa = −moved·cos(between/2); moved·cos(between/2) if between is under 2·pressure_angle", q.LengthDim,
			kernel.Takes("moved", "how far the one axis has moved", q.LengthDim, 1e-9, 20e-3, 0),
			func(x []float64) float64 { return x[0] * idlerOpens(x[1], x[2]) },
			func(l StudLoad, moved float64) float64 { return moved * l.Opens }),
	}
}

// idlerKernel is over a first argument, which is the force if that is asked for.
func idlerKernel(name, says, formula string, result q.Dim, first kernel.Arg, value func(x []float64) float64, pick func(l StudLoad, first float64) float64) kernel.Kernel {
	return kernel.Make(kernel.Kernel{
		Name: name, Says: says, Result: result, Source: "statics, worked out", Grade: basis.Derived,
		Args: []kernel.Arg{first, pressureAngle(0), kernel.Takes("between", "angle from the line to the driving mate to that of the driven one, the way the idler turns", q.Number, 0.01, 6.27, 0)},
	}, formula, value,
		func(x []float64) (float64, []basis.Note, error) {
			l, notes, err := IdlerLoad(q.Force(x[0]), x[1], x[2])
			return pick(l, x[0]), notes, err
		})
}

func forceKernel(name, says, formula string, trend int8, value func(t, φ float64) float64, pick func(Forces) q.Force) kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("torque", "on one of the two gears", q.TorqueDim, 1e-3, 1e6, 1),
		kernel.Takes("pitch_diameter", "of that gear", q.LengthDim, 2e-3, 5, -1),
	}
	if trend != 0 { // the force along the pitch circle does not ask for the angle
		args = append(args, pressureAngle(trend))
	}
	angle := func(x []float64) float64 {
		if trend == 0 {
			return leastPressure
		}
		return x[2]
	}
	return kernel.Make(kernel.Kernel{
		Name: name, Says: says, Result: q.ForceDim, Args: args, Source: "statics, any machine-element text", Grade: basis.Derived,
	}, formula,
		func(x []float64) float64 { return value(tangential(x[0], x[1]), angle(x)) },
		func(x []float64) (float64, []basis.Note, error) {
			f, err := ToothForces(q.Torque(x[0]), q.Length(x[1]), angle(x))
			return float64(pick(f)), nil, err
		})
}
