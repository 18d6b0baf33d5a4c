package strength

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

func part(name, says string, least, most float64, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.Number, Range: interval.Of(least, most), Trend: trend}
}

func strengthArg(name, says string, least, most float64, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.StressDim, Range: interval.Of(least, most), Trend: trend}
}

func notchKernels() []kernel.Kernel {
	radius := kernel.Arg{Name: "radius", Says: "radius of the notch", Dim: q.LengthDim, Range: interval.Of(1e-5, 0.1), Trend: 1}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "notch_sensitivity", Says: "how much of a notch's factor fatigue feels in bending", Result: q.Number,
			Args:   []kernel.Arg{radius, strengthArg("steel_tensile", "tensile strength of the steel", softestNotch, hardestBending, 1)},
			Source: shigley, Grade: basis.Memory,
		}, "q = 1/(1 + √a/√r), √a = 0.246 − 3.08e−3·S + 1.51e−5·S² − 2.67e−8·S³ (S kpsi, √a √in)",
			func(x []float64) float64 { return notchSensitivity(x[1], x[0]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(NotchSensitivity(q.Stress(x[1]), q.Length(x[0])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "notch_sensitivity_twisting", Says: "how much of a notch's factor fatigue feels in torsion", Result: q.Number,
			Args:   []kernel.Arg{radius, strengthArg("steel_tensile", "tensile strength of the steel", softestNotch, hardestTwisting, 1)},
			Source: shigley, Grade: basis.Memory,
		}, "q = 1/(1 + √a/√r), √a = 0.190 − 2.51e−3·S + 1.35e−5·S² − 2.67e−8·S³ (S kpsi, √a √in)",
			func(x []float64) float64 { return notchSensitivityTwisting(x[1], x[0]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(NotchSensitivityTwisting(q.Stress(x[1]), q.Length(x[0])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "fatigue_factor", Says: "by how much a notch raises the stress that fatigue feels", Result: q.Number,
			Args:   []kernel.Arg{part("kt", "factor of the notch's shape", 1, 20, 1), part("sensitivity", "notch sensitivity", 0, 1, 1)},
			Source: "Peterson's definition of notch sensitivity, any strength text", Grade: basis.Derived,
		}, "Kf = 1 + q·(Kt − 1)",
			func(x []float64) float64 { return fatigueFactor(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(FatigueFactor(x[0], x[1])) }),
	}
}

func enduranceKernels() []kernel.Kernel {
	whole := func(name, says string) kernel.Arg { return part(name, says, 0.05, 1, 1) }
	return []kernel.Kernel{
		surfaceKernel(Ground, "surface_ground"), surfaceKernel(Machined, "surface_machined"),
		surfaceKernel(HotRolled, "surface_hot_rolled"), surfaceKernel(Forged, "surface_forged"),
		kernel.Make(kernel.Kernel{
			Name: "size_factor", Says: "part of the endurance limit a rotating shaft of that diameter has", Result: q.Number,
			Args:   []kernel.Arg{{Name: "diameter", Says: "of the shaft", Dim: q.LengthDim, Range: interval.Of(1e-3, largestSized), Trend: -1}},
			Source: shigley, Grade: basis.Memory,
		}, "kb = 1, 0.879·d^−0.107 or 0.91·d^−0.157, the least (d in inches)",
			func(x []float64) float64 { return sizeFactor(x[0]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(SizeFactor(q.Length(x[0]))) }),
		kernel.Make(kernel.Kernel{
			Name: "reliability_factor", Says: "part of the mean endurance limit that so many of all shafts stand", Result: q.Number,
			Args:   []kernel.Arg{part("reliability", "part of all shafts that must last", 0.5, 0.999999, -1)},
			Source: shigley, Grade: basis.Memory,
		}, "ke = 1 − 0.08·z",
			func(x []float64) float64 { return reliabilityFactor(x[0]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(ReliabilityFactor(x[0])) }),
		kernel.Make(kernel.Kernel{
			Name: "endurance_limit", Says: "stress amplitude a steel shaft stands for ever", Result: q.StressDim,
			Args: []kernel.Arg{
				strengthArg("steel_tensile", "tensile strength of the steel", 1e8, 2.5e9, 1),
				whole("surface_part", "surface factor"), whole("size_part", "size factor"), whole("load_part", "load factor"),
				whole("reliable_part", "reliability factor"), whole("kept_part", "part kept by a treatment, 1 for none"),
			},
			Source: "Marin's form, " + shigley, Grade: basis.Memory,
		}, "Se = ka·kb·kc·ke·kept·min(0.5·Su, 700 MPa)",
			func(x []float64) float64 { return unnotchedLimit(x[0]) * x[1] * x[2] * x[3] * x[4] * x[5] },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(EnduranceLimit(q.Stress(x[0]), Factors{Surface: x[1], Size: x[2], Load: x[3], Reliability: x[4], Kept: x[5]}))
			}),
	}
}

func surfaceKernel(f Finish, name string) kernel.Kernel {
	p := finishes[f]
	return kernel.Make(kernel.Kernel{
		Name: name, Says: "part of the endurance limit a " + string(f) + " surface leaves", Result: q.Number,
		Args:   []kernel.Arg{strengthArg("steel_tensile", "tensile strength of the steel", softestSurface, hardestSurface, -1)},
		Source: shigley, Grade: basis.Memory,
	}, "ka = "+number(p.a)+"·Su^"+number(p.b)+", no more than 1 (Su in MPa)",
		func(x []float64) float64 { return p.at(x[0]) },
		func(x []float64) (float64, []basis.Note, error) {
			return kernel.Noted(SurfaceFactor(f, q.Stress(x[0])))
		})
}

func safetyKernels() []kernel.Kernel {
	args := func(name, says string) []kernel.Arg {
		return []kernel.Arg{
			strengthArg("amplitude", "half the swing of the von Mises stress, notch factor in it", 1e3, 2e9, -1),
			strengthArg("mean", "the von Mises stress it swings about", 0, 2e9, -1),
			strengthArg("limit", "the shaft's endurance limit", 1e6, 1e9, 1),
			strengthArg(name, says, 1e7, 2.5e9, 1),
		}
	}
	line := func(x []float64) float64 { return lineSafety(x[0], x[1], x[2], x[3]) }
	swing := func(x []float64) Swing { return Swing{q.Stress(x[0]), q.Stress(x[1])} }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "goodman_safety", Says: "how many times a swinging stress could grow before fatigue breaks the shaft", Result: q.Number,
			Args: args("tensile", "tensile strength"), Source: "Goodman's line, any strength text", Grade: basis.Derived,
		}, "1/n = σa/Se + σm/Su", line,
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(GoodmanSafety(swing(x), q.Stress(x[2]), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "soderberg_safety", Says: "how many times a swinging stress could grow before fatigue or yielding", Result: q.Number,
			Args: args("yield", "yield strength"), Source: "Soderberg's line, any strength text", Grade: basis.Derived,
		}, "1/n = σa/Se + σm/Sy", line,
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(SoderbergSafety(swing(x), q.Stress(x[2]), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "gerber_safety", Says: "how many times a swinging stress could grow on the middle of tests", Result: q.Number,
			Args: args("tensile", "tensile strength"), Source: "Gerber's parabola, any strength text", Grade: basis.Derived,
		}, "n·σa/Se + (n·σm/Su)² = 1",
			func(x []float64) float64 { return gerberSafety(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(GerberSafety(swing(x), q.Stress(x[2]), q.Stress(x[3])))
			}),
	}
}
