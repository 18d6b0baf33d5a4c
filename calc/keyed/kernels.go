package keyed

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
	return slices.Concat(keyKernels(), pinKernels(), crossPinKernels(), woodruffKernels(), drivenKernels(), sharedKernels(), recutKernels())
}

func size(name, says string, trend int8) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.LengthDim, Range: interval.Of(1e-3, 1), Trend: trend}
}

func stress(name, says string) kernel.Arg {
	return kernel.Arg{Name: name, Says: says, Dim: q.StressDim, Range: interval.Of(1e5, 3e9), Trend: 1}
}

// within gives NaN unless x[small] is less than x[large].
func within(small, large int, value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		if !(x[small] < x[large]) {
			return math.NaN()
		}
		return value(x)
	}
}

const statics = "statics, any machine-element text"

func keyKernels() []kernel.Kernel {
	shaft, width := size("shaft", "diameter of the shaft", 1), size("width", "of the key", 1)
	depth, length := size("key_depth", "height of key that bears in the shallower keyway, half its height by the books", 1), size("length", "of the key", 1)
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "key_shear_torque", Says: "torque at which a parallel key shears", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, width, length, stress("shear", "that the key stands")}, Source: statics, Grade: basis.Derived,
		}, "T = shear·width·length·shaft/2",
			within(1, 0, func(x []float64) float64 { return shearTorque(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ShearTorque(Key{Shaft: q.Length(x[0]), Width: q.Length(x[1]), Depth: 1, Length: q.Length(x[2])}, q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "key_crush_torque", Says: "torque at which a parallel key or its keyway is crushed", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, depth, length, stress("crush", "that the weakest of key, shaft and hub stands")}, Source: statics, Grade: basis.Derived,
		}, "T = crush·key_depth·length·shaft/2",
			func(x []float64) float64 {
				if !(x[1] < x[0]/2) {
					return math.NaN()
				}
				return shearTorque(x[0], x[1], x[2], x[3])
			},
			func(x []float64) (float64, []basis.Note, error) {
				d := q.Length(x[0])
				return kernel.Plain(CrushTorque(Key{Shaft: d, Width: d / 4, Depth: q.Length(x[1]), Length: q.Length(x[2])}, q.Stress(x[3])))
			}),
	}
}

// A number of pins that is not whole is taken down to the whole one.
func pinKernels() []kernel.Kernel {
	args := func(s kernel.Arg) []kernel.Arg {
		return []kernel.Arg{
			size("joint", "diameter of the joint", 1), size("pin", "diameter of a pin", 1), size("length", "of a pin", 1),
			{Name: "pins", Says: "their number, whole; a broken one is taken down", Dim: q.Number, Range: interval.Of(1, 12), Trend: 1}, s,
		}
	}
	pins := func(x []float64) RoundPins {
		return RoundPins{Joint: q.Length(x[0]), Pin: q.Length(x[1]), Length: q.Length(x[2]), Count: int(x[3])}
	}
	const source = "statics; the sharing of several pins from memory of machine-element texts"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "pin_shear_torque", Says: "torque at which round pins half in each part shear", Result: q.TorqueDim,
			Args: args(stress("shear", "that the pin stands")), Source: source, Grade: basis.Memory,
		}, "T = max(1, 0.75·pins)·shear·pin·length·joint/2",
			within(1, 0, func(x []float64) float64 {
				return bearing(math.Floor(x[3])) * shearTorque(x[0], x[1], x[2], x[4])
			}),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(PinShearTorque(pins(x), q.Stress(x[4])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "pin_crush_torque", Says: "torque at which the holes of round pins half in each part are crushed", Result: q.TorqueDim,
			Args: args(stress("crush", "that the weakest of shaft, hub and pin stands")), Source: source, Grade: basis.Memory,
		}, "T = max(1, 0.75·pins)·crush·(pin/2)·length·joint/2",
			within(1, 0, func(x []float64) float64 {
				return bearing(math.Floor(x[3])) * shearTorque(x[0], x[1]/2, x[2], x[4])
			}),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(PinCrushTorque(pins(x), q.Stress(x[4])))
			}),
	}
}

func crossPinKernels() []kernel.Kernel {
	shaft, pin := size("shaft", "diameter of the shaft", 1), size("pin", "diameter of the pin", 1)
	const any = 1.0 // stands in where the torque asked for does not rest on it: our choice
	holds := func(c CrossPin, shear, crushShaft, crushHub float64, pick func(CrossPinTorque) q.Torque) (float64, []basis.Note, error) {
		t, notes, err := CrossPinHolds(c, q.Stress(shear), q.Stress(crushShaft), q.Stress(crushHub))
		return float64(pick(t)), notes, err
	}
	through := func(x []float64) CrossPin {
		return CrossPin{Shaft: q.Length(x[0]), Hub: 2 * q.Length(x[0]), Pin: q.Length(x[1])}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "cross_pin_shear_torque", Says: "torque at which a cross pin shears at both ends", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, pin, stress("shear", "that the pin stands")}, Source: statics, Grade: basis.Derived,
		}, "T = shear·π·pin²·shaft/4",
			within(1, 0, func(x []float64) float64 { return crossShear(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return holds(through(x), x[2], any, any, func(t CrossPinTorque) q.Torque { return t.Shear })
			}),
		kernel.Make(kernel.Kernel{
			Name: "cross_pin_shaft_torque", Says: "torque at which a cross pin crushes its hole in the shaft", Result: q.TorqueDim,
			Args: []kernel.Arg{shaft, pin, stress("crush", "that the weaker of shaft and pin stands")}, Source: statics, Grade: basis.Derived,
		}, "T = crush·pin·shaft²/6",
			within(1, 0, func(x []float64) float64 { return crossShaft(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return holds(through(x), any, x[2], any, func(t CrossPinTorque) q.Torque { return t.Shaft })
			}),
		kernel.Make(kernel.Kernel{
			Name: "cross_pin_hub_torque", Says: "torque at which a cross pin crushes its hole in the hub", Result: q.TorqueDim,
			Args:   []kernel.Arg{size("shaft", "diameter of the shaft", -1), size("outside", "outside of the hub", 1), pin, stress("crush", "that the weaker of hub and pin stands")},
			Source: statics, Grade: basis.Derived,
		}, "T = crush·pin·(outside² − shaft²)/4",
			within(2, 0, within(0, 1, func(x []float64) float64 { return crossHub(x[0], x[1], x[2], x[3]) })),
			func(x []float64) (float64, []basis.Note, error) {
				c := CrossPin{Shaft: q.Length(x[0]), Hub: q.Length(x[1]), Pin: q.Length(x[2])}
				return holds(c, any, any, x[3], func(t CrossPinTorque) q.Torque { return t.Hub })
			}),
	}
}
