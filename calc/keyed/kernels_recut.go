package keyed

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// recutKernels say less than Recut: each asks only for what its number rests on,
// the rest stands in as a joint that surely goes together.
func recutKernels() []kernel.Kernel {
	width := func(trend int8) kernel.Arg { return size("width", "of the key", trend) }
	less := func(name, says string, trend int8) kernel.Arg {
		return kernel.Arg{Name: name, Says: says, Dim: q.LengthDim, Range: interval.Of(0, 0.02), Trend: trend}
	}
	keyway := func(name, says string, trend int8) kernel.Arg {
		return kernel.Arg{Name: name, Says: says, Dim: q.LengthDim, Range: interval.Of(1e-3, 0.1), Trend: trend}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "key_chord_drop", Says: "how far the edge of a keyway lies below the middle of its round", Result: q.LengthDim,
			Args: []kernel.Arg{size("round", "diameter the keyway is cut in", -1), width(1)}, Source: geometry, Grade: basis.Derived,
		}, "f = round/2 − √(round² − width²)/2",
			within(1, 0, func(x []float64) float64 { return chordDrop(x[0], x[1]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ChordDrop(q.Length(x[0]), q.Length(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "key_wall_in_shaft", Says: "height of the keyway's wall left in a shaft turned down", Result: q.LengthDim,
			Args: []kernel.Arg{size("shaft", "its diameter when the keyway was cut", 1), less("turned_off", "its diameter since", -1), width(-1),
				keyway("shaft_keyway", "its depth as cut, at the middle", 1)}, Source: geometry, Grade: basis.Derived,
		}, "shaft_keyway − turned_off/2 − the drop of the chord at the new size",
			within(2, 0, within(1, 0, func(x []float64) float64 {
				now := x[0] - x[1]
				if !(x[2] < now && x[3] < x[0]/2) {
					return math.NaN()
				}
				return positive(inShaft(x[0], now, x[2], x[3]))
			})),
			func(x []float64) (float64, []basis.Note, error) {
				d, w, t := q.Length(x[0]), q.Length(x[2]), q.Length(x[3])
				l, _, err := Recut(Keyed{Shaft: d, Bore: d, Width: w, Height: 2 * d, ShaftKeyway: t, HubKeyway: 2 * d}, q.Length(x[0]-x[1]), d)
				return float64(l.InShaft), nil, err
			}),
		kernel.Make(kernel.Kernel{
			Name: "key_wall_in_hub", Says: "height of the keyway's wall that bears in a bore opened out", Result: q.LengthDim,
			Args: []kernel.Arg{size("bore", "its diameter when the keyway was cut", -1), less("opened", "its diameter since", -1), width(1),
				keyway("hub_keyway", "its depth as cut, at the middle", 1), keyway("key_over", "height of the key over the shaft as cut", 1)}, Source: geometry, Grade: basis.Derived,
		}, "the smaller of key_over and hub_keyway − opened/2 + the drop of the chord at the new size",
			within(2, 0, func(x []float64) float64 {
				return positive(inHub(hubOf(x), x[0]+x[1]))
			}),
			func(x []float64) (float64, []basis.Note, error) {
				l, _, err := Recut(hubOf(x), q.Length(x[0]), q.Length(x[0]+x[1]))
				return float64(l.InHub), nil, err
			}),
	}
}

// hubOf is a shaft that fits the bore, with a keyway so deep that any key keeps
// some wall in it, a billionth short of the middle: our choice.
func hubOf(x []float64) Keyed {
	in := q.Length(x[0]/2) * (1 - 1e-9)
	return Keyed{Shaft: q.Length(x[0]), Bore: q.Length(x[0]), Width: q.Length(x[2]), Height: in + q.Length(x[4]), ShaftKeyway: in, HubKeyway: q.Length(x[3])}
}

func positive(x float64) float64 {
	if !(x > 0) {
		return math.NaN()
	}
	return x
}
