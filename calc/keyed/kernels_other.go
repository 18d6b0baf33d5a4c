package keyed

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const geometry = "geometry of a chord; worked out"

func number(name, says string, lo, hi float64, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.Number, Range: interval.Of(lo, hi), Trend: trend}
}

func woodruffKernels() []kernel.Kernel {
	disc, height := size("disc", "diameter of the disc a Woodruff key is cut from", 1), size("key_height", "of the key, at most half its disc", 1)
	stands := func(trend int8) kernel.Arg {
		return kernel.Arg{Name: "stands_out", Says: "of the key over the shaft, at its middle", Dim: q.LengthDim, Range: interval.Of(1e-4, 0.1), Trend: trend}
	}
	const any = 1.0 // stands in where the torque asked for does not rest on it: our choice
	// formed gives NaN unless disc, height and what stands out, from at on, make a key.
	formed := func(at int, value func(x []float64) float64) func(x []float64) float64 {
		return func(x []float64) float64 {
			if !(x[at+1] <= x[at]/2 && x[at+2] < x[at+1]) {
				return math.NaN()
			}
			return value(x)
		}
	}
	key := func(shaft, width, disc, height, out float64) Woodruff {
		return Woodruff{q.Length(shaft), q.Length(width), q.Length(disc), q.Length(height), q.Length(out)}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "woodruff_length", Says: "length of a Woodruff key where it passes from shaft to hub", Result: q.LengthDim,
			Args: []kernel.Arg{disc, height, stands(-1)}, Source: geometry, Grade: basis.Derived,
		}, "L = 2·√(a·(disc − a)), a = key_height − stands_out",
			formed(0, func(x []float64) float64 { return chord(x[0], x[1]-x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(WoodruffLength(key(1, any, x[0], x[1], x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "woodruff_shear_torque", Says: "torque at which a Woodruff key shears", Result: q.TorqueDim,
			Args:   []kernel.Arg{size("shaft", "diameter of the shaft", 1), size("width", "of the key", 1), disc, height, stands(-1), stress("shear", "that the key stands")},
			Source: statics, Grade: basis.Derived,
		}, "T = shear·width·L·shaft/2, L the chord at the joint",
			within(1, 0, formed(2, func(x []float64) float64 { return shearTorque(x[0], x[1], chord(x[2], x[3]-x[4]), x[5]) })),
			func(x []float64) (float64, []basis.Note, error) {
				t, err := WoodruffHolds(key(x[0], x[1], x[2], x[3], x[4]), q.Stress(x[5]), any, any)
				return float64(t.Shear), nil, err
			}),
		kernel.Make(kernel.Kernel{
			Name: "woodruff_hub_torque", Says: "torque at which a Woodruff key crushes the keyway of its hub", Result: q.TorqueDim,
			Args:   []kernel.Arg{size("shaft", "diameter of the shaft", 1), disc, height, stands(1), stress("crush", "that the weaker of key and hub stands")},
			Source: statics, Grade: basis.Derived,
		}, "T = crush·A·shaft/2, A the part of the disc's segment that stands out",
			formed(1, func(x []float64) float64 {
				return x[4] * (segment(x[1], x[2]) - segment(x[1], x[2]-x[3])) * x[0] / 2
			}),
			func(x []float64) (float64, []basis.Note, error) {
				t, err := WoodruffHolds(key(x[0], x[0]/4, x[1], x[2], x[3]), any, q.Stress(x[4]), any)
				return float64(t.Hub), nil, err
			}),
	}
}

func drivenKernels() []kernel.Kernel {
	shaft, width, length := size("shaft", "diameter of the shaft", 1), size("width", "side of the key", 1), size("length", "of the key", 1)
	pressure := stress("pressure", "on the top of the key as driven")
	friction := number("friction", "between key and keyway, hub and shaft", 0.02, 0.5, 1)
	kennedyOf := func(x []float64) Kennedy {
		return Kennedy{Shaft: q.Length(x[0]), Width: q.Length(x[1]), Length: q.Length(x[2])}
	}
	const source = "statics; Jindal, Machine Design"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "kennedy_shear_torque", Says: "torque at which two Kennedy keys shear", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, width, length, stress("shear", "that the keys stand")}, Source: source, Grade: basis.Memory,
		}, "T = √2·shear·width·length·shaft",
			within(1, 0, func(x []float64) float64 { return kennedy(x[0], x[1], x[2], x[3], math.Sqrt2) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(KennedyShearTorque(kennedyOf(x), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "kennedy_crush_torque", Says: "torque at which two Kennedy keys or their keyways are crushed", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, width, length, stress("crush", "that the weakest of key, shaft and hub stands")}, Source: source, Grade: basis.Memory,
		}, "T = crush·width·length·shaft/√2",
			within(1, 0, func(x []float64) float64 { return kennedy(x[0], x[1], x[2], x[3], 1/math.Sqrt2) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(KennedyCrushTorque(kennedyOf(x), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "taper_key_torque", Says: "torque a driven taper key carries by friction", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, width, length,
				{Name: "seat_depth", Says: "of the key's bottom below the shaft's surface, 0 for a saddle key", Dim: q.LengthDim, Range: interval.Of(0, 0.1), Trend: -1},
				pressure, friction},
			Source: "statics; the form from memory of machine-element texts", Grade: basis.Memory,
		}, "T = friction·pressure·width·length·(shaft − seat_depth)",
			within(1, 0, func(x []float64) float64 {
				if !(x[3] < x[0]/2) {
					return math.NaN()
				}
				return taperTorque(x[0], x[1], x[2], x[3], x[4], x[5])
			}),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(TaperKeyTorque(Taper{q.Length(x[0]), q.Length(x[1]), q.Length(x[2]), q.Length(x[3])}, q.Stress(x[4]), x[5]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "taper_key_drive", Says: "force that drives a taper key to a pressure", Result: q.ForceDim,
			Args:   []kernel.Arg{width, length, pressure, number("slope", "taper of the key, 0.01 for 1 in 100", 0.001, 0.04, 1), friction},
			Source: "statics of a wedge", Grade: basis.Derived,
		}, "F = pressure·width·length·((slope + friction)/(1 − slope·friction) + friction)",
			func(x []float64) float64 {
				if !(math.Atan(x[3]) <= 2*math.Atan(x[4])) {
					return math.NaN()
				}
				return x[2] * (x[0] * x[1]) * wedge(x[3], x[4])
			},
			func(x []float64) (float64, []basis.Note, error) {
				k := Taper{Shaft: q.Length(2 * x[0]), Width: q.Length(x[0]), Length: q.Length(x[1])}
				return kernel.Plain(TaperKeyDrive(k, q.Stress(x[2]), x[3], x[4]))
			}),
	}
}

func sharedKernels() []kernel.Kernel {
	screw := kernel.Arg{Name: "screw", Says: "diameter of its thread", Dim: q.LengthDim, Range: interval.Of(0.00285, 0.01905), Trend: 1} // span of the table
	const source = "Shigley, from memory; a fastener seller's chart"
	holds := func(x []float64, pick func(Holding) q.Force) (float64, []basis.Note, error) {
		h, notes, err := SetScrewHolds(SetScrews{Shaft: 1, Screw: q.Length(x[0]), Point: Cup, Count: 1})
		return float64(pick(h)), notes, err
	}
	list := screws()
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "shared_torque", Says: "torque several like keys, pins or screws carry together", Result: q.TorqueDim,
			Args: []kernel.Arg{
				{Name: "torque_of_one", Says: "that one alone carries", Dim: q.TorqueDim, Range: interval.Of(1e-3, 1e6), Trend: 1},
				number("pins", "their number, whole; a broken one is taken down", 1, 12, 1),
			}, Source: "machine-element texts, from memory", Grade: basis.Memory,
		}, "T = torque_of_one·max(1, 0.75·pins)",
			func(x []float64) float64 { return x[0] * bearing(math.Floor(x[1])) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(SharedTorque(q.Torque(x[0]), int(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "set_screw_least", Says: "force one set screw with a cup point surely holds", Result: q.ForceDim,
			Args: []kernel.Arg{screw}, Source: source, Grade: basis.Memory,
		}, "the lower end of the table, at the next size down",
			func(x []float64) float64 { return list[screwRow(list, x[0])].least },
			func(x []float64) (float64, []basis.Note, error) {
				return holds(x, func(h Holding) q.Force { return h.Least })
			}),
		kernel.Make(kernel.Kernel{
			Name: "set_screw_most", Says: "force one set screw with a cup point may hold", Result: q.ForceDim,
			Args: []kernel.Arg{screw}, Source: source, Grade: basis.Memory,
		}, "the upper end of the table, at the next size down",
			func(x []float64) float64 { return list[screwRow(list, x[0])].most },
			func(x []float64) (float64, []basis.Note, error) {
				return holds(x, func(h Holding) q.Force { return h.Most })
			}),
	}
}
