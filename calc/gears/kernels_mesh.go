package gears

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const involute = "geometry of the involute, worked out"

func shiftArg(trend int8) kernel.Arg {
	return kernel.Takes("centre_shift", "how far the axes have moved apart; below 0 if closer", q.LengthDim, -2e-3, 20e-3, trend)
}

func pairArgs(pinion, wheel int8) []kernel.Arg {
	return []kernel.Arg{module(0), teethOf("pinion_teeth", "teeth of the pinion", fewest, pinion), teethOf("wheel_teeth", "teeth of the wheel", fewest, wheel)}
}

// pairOf reads the module, the teeth and the pressure angle that pair kernels begin with.
func pairOf(x []float64) Pair {
	return Pair{Module: q.Length(x[0]), Pinion: int(x[1]), Wheel: int(x[2]), Pressure: x[3]}
}

// shifted gives NaN for a shift that leaves no mesh; shift is x[at].
func shifted(at int, value func(x []float64, a0 float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		a0 := centre(x[0], math.Floor(x[1]), math.Floor(x[2]))
		if !(x[at] < reach*x[0] && x[at] > -a0*(1-math.Cos(x[3]))) {
			return math.NaN()
		}
		return value(x, a0)
	}
}

func meshKernels() []kernel.Kernel {
	pitches := pairArgs(1, 1)
	pitches[0].Trend = 1
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "gear_centre", Says: "distance of the axes at which the pitch circles of two gears touch", Result: q.LengthDim,
			Args: pitches, Source: gear, Grade: basis.Derived,
		}, "a0 = module·(pinion_teeth + wheel_teeth)/2",
			func(x []float64) float64 { return centre(x[0], math.Floor(x[1]), math.Floor(x[2])) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(CentreDistance(Pair{Module: q.Length(x[0]), Pinion: int(x[1]), Wheel: int(x[2]), Pressure: leastPressure}))
			}),
		kernel.Make(kernel.Kernel{
			Name: "working_pressure_angle", Says: "pressure angle at which gears run when their axes have moved apart", Result: q.Number,
			Args: append(pairArgs(0, 0), pressureAngle(0), shiftArg(1)), Source: involute, Grade: basis.Derived,
		}, "φ' = acos(a0·cos(pressure_angle)/(a0 + centre_shift)), a0 = module·(pinion_teeth + wheel_teeth)/2",
			shifted(4, func(x []float64, a0 float64) float64 { return working(a0, x[3], x[4]) }),
			func(x []float64) (float64, []basis.Note, error) {
				b, notes, err := BacklashAt(pairOf(x), 0, q.Length(x[4]))
				return b.Working, notes, err
			}),
		backlashKernel("backlash_circular", "backlash of gears along the circle on which they roll, once their axes have moved", q.LengthDim,
			"jt = jn/cos(φ')", func(_ []float64, w, jn float64) float64 { return jn / math.Cos(w) },
			func(b Backlash) float64 { return float64(b.Circular) }),
		backlashKernel("backlash_normal", "backlash of gears square to the tooth, once their axes have moved", q.LengthDim,
			"jn = cos(φ)·(before + 2·a0·(inv(φ') − inv(φ)))", func(_ []float64, _, jn float64) float64 { return jn },
			func(b Backlash) float64 { return float64(b.Normal) }),
		backlashKernel("backlash_rock", "angle by which a pinion can be rocked, the wheel held, once their axes have moved", q.Number,
			"j = jn/(base radius of the pinion)",
			func(x []float64, _, jn float64) float64 { return jn / (x[0] / 2 * math.Cos(x[3]) * math.Floor(x[1])) },
			func(b Backlash) float64 { return b.PinionTurns }),
		kernel.Make(kernel.Kernel{
			Name: "backlash_change", Says: "growth of the circular backlash of gears when their axes move apart", Result: q.LengthDim,
			Args: append(pairArgs(0, 0), pressureAngle(0), shiftArg(1)), Source: involute, Grade: basis.Derived,
		}, "j = 2·a'·(inv(φ') − inv(φ)), a' = a0 + centre_shift",
			shifted(4, func(x []float64, a0 float64) float64 {
				return normalBacklash(a0, x[3], 0, x[4]) / math.Cos(working(a0, x[3], x[4]))
			}),
			func(x []float64) (float64, []basis.Note, error) {
				b, notes, err := BacklashAt(pairOf(x), 0, q.Length(x[4]))
				return float64(b.Circular), notes, err
			}),
		kernel.Make(kernel.Kernel{
			Name: "backlash_by_rule", Says: "growth of the circular backlash when axes move apart a little, by the rule of thumb", Result: q.LengthDim,
			Args: []kernel.Arg{pressureAngle(0), shiftArg(1)}, Source: "from memory of Machinery's Handbook; worked out as a limit", Grade: basis.Derived,
		}, "j = 2·tan(pressure_angle)·centre_shift",
			func(x []float64) float64 { return byRule(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(BacklashByRule(x[0], q.Length(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "centre_shift_of_wear", Says: "how far two axes move apart when one sinks into its bearing", Result: q.LengthDim,
			Args: []kernel.Arg{
				kernel.Takes("moved", "how far the one axis has moved", q.LengthDim, 0, 20e-3, 0),
				kernel.Takes("load_angle", "from the line of centres, away from the mate, to the way it moved", q.Number, 0, math.Pi, -1),
			}, Source: gear, Grade: basis.Derived,
		}, "Δa = moved·cos(load_angle)",
			func(x []float64) float64 { return x[0] * math.Cos(x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(CentreShift(q.Length(x[0]), x[1]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "contact_ratio", Says: "pairs of standard teeth in mesh on the average, once the axes have moved", Result: q.Number,
			Args: append(pairArgs(0, 0), pressureAngle(0), shiftArg(-1)), Source: involute, Grade: basis.Derived,
		}, "ε = (√(ra1² − rb1²) + √(ra2² − rb2²) − a'·sin(φ'))/(π·module·cos(φ))",
			shifted(4, func(x []float64, a0 float64) float64 {
				ε := contactRatio(x[0], math.Floor(x[1]), math.Floor(x[2]), x[3], lineOfAction(a0, x[3], x[4]))
				if !(ε > 0) {
					return math.NaN()
				}
				return ε
			}),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(ContactRatio(pairOf(x), q.Length(x[4])))
			}),
	}
}

// contactRatio is that of standard teeth.
func contactRatio(m, z1, z2, φ, line float64) float64 {
	return (tipReach(m, z1, φ, m*(z1+2)) + tipReach(m, z2, φ, m*(z2+2)) - line) / basePitch(m, φ)
}

func backlashKernel(name, says string, result q.Dim, formula string, value func(x []float64, w, jn float64) float64, pick func(Backlash) float64) kernel.Kernel {
	args := append(pairArgs(0, 0), pressureAngle(0), kernel.Takes("backlash_before", "circular, at the distance of the pitch circles", q.LengthDim, 0, 5e-3, 1), shiftArg(1))
	return kernel.Make(kernel.Kernel{Name: name, Says: says, Result: result, Args: args, Source: involute, Grade: basis.Derived}, formula,
		shifted(5, func(x []float64, a0 float64) float64 {
			return value(x, working(a0, x[3], x[5]), normalBacklash(a0, x[3], x[4], x[5]))
		}),
		func(x []float64) (float64, []basis.Note, error) {
			b, notes, err := BacklashAt(pairOf(x), q.Length(x[4]), q.Length(x[5]))
			return pick(b), notes, err
		})
}
