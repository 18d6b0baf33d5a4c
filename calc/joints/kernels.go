package joints

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
	return slices.Concat(brazeKernels(), gapKernels(), sleeveKernels(), bondKernels(), sprayKernels())
}

func size(name, says string, trend int8) kernel.Arg {
	return kernel.Takes(name, says, q.LengthDim, 1e-3, 2, trend)
}

func stress(name, says string, trend int8) kernel.Arg {
	return kernel.Takes(name, says, q.StressDim, 1e5, 3e9, trend)
}

func sound(trend int8) kernel.Arg {
	return kernel.Takes("sound", "part of the joint that is filled, 0.8 as a rule", q.Number, 0.05, 1, trend)
}

func brazeKernels() []kernel.Kernel {
	const source = "a brazing filler maker's handbook, read as an extract; a balance of forces"
	tensile, shear := stress("tensile", "strength of the weaker member after the heat", 1), stress("shear", "ultimate, of the filler", -1)
	of := func(tensile, shear, sound float64) Braze {
		return Braze{Tensile: q.Stress(tensile), Shear: q.Stress(shear), Sound: sound}
	}
	worked := func(l Lap, notes []basis.Note, err error) (float64, []basis.Note, error) {
		return float64(l.Length()), notes, err
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "braze_lap_flat", Says: "overlap to make of a brazed flat lap", Result: q.LengthDim,
			Args:   []kernel.Arg{kernel.Takes("thickness", "of the thinner member", q.LengthDim, 1e-4, 0.05, 1), tensile, shear, sound(-1)},
			Source: source, Grade: basis.Page,
		}, "X = max(tensile·thickness/(sound·shear), 3·thickness)",
			func(x []float64) float64 { return max(flatLap(x[0], x[1], x[2], x[3]), three*x[0]) },
			func(x []float64) (float64, []basis.Note, error) {
				return worked(FlatLap(q.Length(x[0]), of(x[1], x[2], x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "braze_lap_tube", Says: "overlap to make of a brazed tube in a socket", Result: q.LengthDim,
			Args:   []kernel.Arg{size("outside", "outside diameter of the lap", 1), kernel.Takes("wall", "of the thinner member", q.LengthDim, 1e-4, 0.5, 1), tensile, shear, sound(-1)},
			Source: source, Grade: basis.Page,
		}, "X = max(wall·(outside − wall)·tensile/(sound·shear·outside), 3·wall)",
			func(x []float64) float64 {
				if !(x[1] <= x[0]/2) {
					return math.NaN()
				}
				return max(tubeLap(x[0], x[1], x[2], x[3], x[4]), three*x[1])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return worked(TubeLap(q.Length(x[0]), q.Length(x[1]), of(x[2], x[3], x[4])))
			}),
	}
}

func gapKernels() []kernel.Kernel {
	expansion := func(name, says string, trend int8) kernel.Arg {
		return kernel.Takes(name, says, q.ExpansionDim, 0, 4e-5, trend)
	}
	rise := func(name, says string, trend int8) kernel.Arg {
		return kernel.Takes(name, says, q.ChangeDim, 0, 1500, trend)
	}
	return []kernel.Kernel{kernel.Make(kernel.Kernel{
		Name: "braze_hot_gap", Says: "gap on the diameter at brazing heat; below 0 the parts bind", Result: q.LengthDim,
		Args: []kernel.Arg{kernel.Takes("gap", "on the diameter, cold", q.LengthDim, -1e-3, 2e-3, 1), kernel.Takes("joint", "its diameter", q.LengthDim, 1e-3, 1, 0),
			expansion("outer_expansion", "mean, of the outer part", 1), expansion("inner_expansion", "mean, of the inner part", -1),
			rise("outer_rise", "warming of the outer part", 1), rise("inner_rise", "warming of the inner part", -1)},
		Enclose: encloseGap, Source: "geometry", Grade: basis.Derived,
	}, "c' = gap + (outer_expansion·outer_rise − inner_expansion·inner_rise)·joint",
		func(x []float64) float64 { return hotGap(x[0], x[1], x[2], x[3], x[4], x[5]) },
		func(x []float64) (float64, []basis.Note, error) {
			return kernel.Noted(HotGap(Gap{Cold: q.Length(x[0]), Joint: q.Length(x[1]), Outer: q.Expansion(x[2]), Inner: q.Expansion(x[3]),
				OuterRise: q.TemperatureChange(x[4]), InnerRise: q.TemperatureChange(x[5])}))
		})}
}

// encloseGap is there because the joint's diameter may open the gap or close it.
func encloseGap(x []interval.I) interval.I {
	return x[0].Add(x[2].Mul(x[4]).Sub(x[3].Mul(x[5])).Mul(x[1]))
}

func sleeveKernels() []kernel.Kernel {
	joint, length, shear := size("joint", "its diameter", 1), size("length", "of the joint", 1), stress("shear", "that braze or compound is allowed", 1)
	of := func(x []float64) Sleeve {
		return Sleeve{Joint: q.Length(x[0]), Length: q.Length(x[1]), Shear: q.Stress(x[2]), Sound: x[3]}
	}
	const statics = "statics"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "sleeve_torque", Says: "torque a brazed or bonded sleeve carries", Result: q.TorqueDim,
			Args: []kernel.Arg{joint, length, shear, sound(1)}, Source: statics, Grade: basis.Derived,
		}, "T = sound·shear·π·joint²·length/2",
			func(x []float64) float64 { return sleeveForce(x[0], x[1], x[2], x[3]) * x[0] / 2 },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(SleeveTorque(of(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "sleeve_thrust", Says: "thrust a brazed or bonded sleeve carries", Result: q.ForceDim,
			Args: []kernel.Arg{joint, length, shear, sound(1)}, Source: statics, Grade: basis.Derived,
		}, "F = sound·shear·π·joint·length",
			func(x []float64) float64 { return sleeveForce(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(SleeveThrust(of(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "sleeve_use", Says: "part of its strength a sleeve needs for torque and thrust at once", Result: q.Number,
			Args: []kernel.Arg{
				size("joint", "its diameter", -1), size("length", "of the joint", -1), stress("shear", "that braze or compound is allowed", -1), sound(-1),
				kernel.Takes("torque", "it carries", q.TorqueDim, 0, 1e6, 1), kernel.Takes("thrust", "it carries", q.ForceDim, 0, 1e7, 1),
			}, Source: statics, Grade: basis.Derived,
		}, "u = √((2·torque/joint)² + thrust²)/(sound·shear·π·joint·length)",
			func(x []float64) float64 {
				return math.Hypot(2*x[4]/x[0], x[5]) / sleeveForce(x[0], x[1], x[2], x[3])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(SleeveUse(of(x), q.Torque(x[4]), q.Force(x[5])))
			}),
	}
}

// bondKernels are for steel of a usual finish and an ordinary grade: a rule that
// knows more multiplies by what it knows.
func bondKernels() []kernel.Kernel {
	args := []kernel.Arg{
		kernel.Takes("gap", "on the diameter", q.LengthDim, 0, 0.25e-3, -1),
		kernel.Takes("warmth", "hottest in service", q.TemperatureDim, 218.15, 423.15, -1),
		kernel.Takes("slenderness", "length of the joint over its diameter", q.Number, 0.05, 4, -1),
	}
	value := func(x []float64, pick func(Share) float64) float64 {
		gap, ok1 := along(byGap, x[0])
		warmth, ok2 := along(byWarmth, x[1])
		slender, ok3 := along(bySlenderness, x[2])
		finish, ok4 := along(byRoughness, usualFinish)
		if !(ok1 && ok2 && ok3 && ok4) {
			return math.NaN()
		}
		return pick(gap.times(finish).times(warmth).times(slender))
	}
	worked := func(x []float64, pick func(Share) float64) (float64, []basis.Note, error) {
		// a diameter of 1 m keeps the slenderness as it is given
		b, notes, err := BondHolds(Bond{Joint: 1, Length: q.Length(x[2]), Gap: q.Length(x[0]), Roughness: usualFinish,
			Outer: Steel, Inner: Steel, Strength: 1, Warmth: q.Temperature(x[1])})
		return pick(b.Share), notes, err
	}
	least, most := func(s Share) float64 { return s.Least }, func(s Share) float64 { return s.Most }
	const source = "makers' design guides for retaining compounds, from memory"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "bond_share_least", Says: "part of its printed shear strength a compound surely has between steel faces", Result: q.Number,
			Args: args, Source: source, Grade: basis.Memory,
		}, "the least ends of the shares of gap, finish, warmth and slenderness, multiplied",
			func(x []float64) float64 { return value(x, least) },
			func(x []float64) (float64, []basis.Note, error) { return worked(x, least) }),
		kernel.Make(kernel.Kernel{
			Name: "bond_share_most", Says: "part of its printed shear strength a compound may have between steel faces", Result: q.Number,
			Args: args, Source: source, Grade: basis.Memory,
		}, "the most ends of the shares of gap, finish, warmth and slenderness, multiplied",
			func(x []float64) float64 { return value(x, most) },
			func(x []float64) (float64, []basis.Note, error) { return worked(x, most) }),
	}
}

// usualFinish is Ra 1.6 µm, as turned: common practice, no source.
const usualFinish = 1.6e-6

func sprayKernels() []kernel.Kernel {
	of := func(copper bool, name, says string, flat float64) kernel.Kernel {
		return kernel.Make(kernel.Kernel{
			Name: name, Says: says, Result: q.LengthDim, Args: []kernel.Arg{size("round", "diameter of the place", 1)},
			Source: "a bond-coat maker's sheet, read in extract; by size from memory of a metallising handbook", Grade: basis.Memory,
		}, "the larger of the maker's least and the old rule by size",
			func(x []float64) float64 { return max(flat, sprayBySize(x[0])) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(SprayLeast(q.Length(x[0]), copper))
			})
	}
	return []kernel.Kernel{
		of(false, "spray_least_steel", "least undercut a side for a sprayed coat on steel or iron", leastSteel),
		of(true, "spray_least_copper", "least undercut a side for a sprayed coat on a copper alloy", leastCopper),
	}
}
