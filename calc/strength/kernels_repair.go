package strength

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

func seatKernels() []kernel.Kernel {
	tensile := []kernel.Arg{strengthArg("steel_tensile", "tensile strength of the steel", softestSeat, hardestSeat, 1)}
	seat := func(name, says, formula string, value func(tensile float64) float64, worked func(q.Stress) (EdgeFactors, []basis.Note, error), pick func(EdgeFactors) float64) kernel.Kernel {
		return kernel.Make(kernel.Kernel{
			Name: name, Says: says, Result: q.Number, Args: tensile, Source: din743, Grade: basis.Memory,
		}, formula,
			func(x []float64) float64 { return value(x[0]) },
			func(x []float64) (float64, []basis.Note, error) {
				f, notes, err := worked(q.Stress(x[0]))
				return pick(f), notes, err
			})
	}
	bending := func(f EdgeFactors) float64 { return f.Bending }
	twisting := func(f EdgeFactors) float64 { return f.Twisting }
	return []kernel.Kernel{
		seat("pressed_edge_bending", "fatigue factor in bending at the edge of a pressed-on hub",
			"Kf = 2.7·(Su/1000 MPa)^0.43", pressedEdge, PressedEdge, bending),
		seat("pressed_edge_twisting", "fatigue factor in torsion at the edge of a pressed-on hub",
			"Kf = 0.65·2.7·(Su/1000 MPa)^0.43", func(s float64) float64 { return pressedTwist(pressedEdge(s)) }, PressedEdge, twisting),
		seat("keyed_hub_bending", "fatigue factor in bending under a hub with a parallel key",
			"Kf = 3·(Su/1000 MPa)^0.38", keyedHub, KeyedHub, bending),
		seat("keyed_hub_twisting", "fatigue factor in torsion under a hub with a parallel key",
			"Kf = 0.56·3·(Su/1000 MPa)^0.38 + 0.1", func(s float64) float64 { return keyedTwist(keyedHub(s)) }, KeyedHub, twisting),
	}
}

func repairKernels() []kernel.Kernel {
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "fatigue_left", Says: "part of its strength against fatigue a shaft keeps after a repair", Result: q.Number,
			Args: []kernel.Arg{
				diameter("bore", "the shaft's own hole, 0 if solid", 0, -1),
				diameter("now", "diameter after the repair", 1e-3, 1),
				diameter("was", "diameter before", 1e-3, -1),
				part("factor_now", "fatigue factor of the notch after", 1, 20, -1),
				part("factor_was", "fatigue factor of the notch before", 1, 20, 1),
				part("kept_now", "part of the limit a treatment leaves, 1 for none", 0.05, 1, 1),
				part("kept_was", "the same before", 0.05, 1, -1),
			},
			Source: "nominal stress, fatigue factor and limit in one ratio, any strength text", Grade: basis.Derived,
		}, "left = (now⁴−b⁴)/now · was/(was⁴−b⁴) · factor_was/factor_now · kept_now/kept_was",
			walled(func(x []float64) float64 {
				if !(x[1] <= x[2]) {
					return math.NaN()
				}
				return strengthLeft(x[0], x[2], x[1]) * x[4] / x[3] * x[5] / x[6]
			}),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(FatigueLeft(q.Length(x[0]), Journal{q.Length(x[2]), x[4], x[6]}, Journal{q.Length(x[1]), x[3], x[5]}))
			}),
		kernel.Make(kernel.Kernel{
			Name: "keyway_strength_left", Says: "part of its strength against yielding a shaft keeps with a keyway in it", Result: q.Number,
			Args: []kernel.Arg{
				diameter("diameter", "of the shaft", 1e-3, 1),
				{Name: "width", Says: "of the keyway", Dim: q.LengthDim, Range: interval.Of(0, 0.5), Trend: -1},
				{Name: "depth", Says: "of the keyway from the surface", Dim: q.LengthDim, Range: interval.Of(0, 0.3), Trend: -1},
			},
			Source: moore, Grade: basis.Memory,
		}, "left = 1 − 0.2·w/d − 1.1·h/d",
			func(x []float64) float64 {
				if !(x[1] <= widestKeyway*x[0] && x[2] <= refusedKeyway*x[0]) {
					return math.NaN()
				}
				return keywayLeft(x[0], x[1], x[2])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(KeywayStrengthLeft(Keyway{q.Length(x[0]), q.Length(x[1]), q.Length(x[2])}))
			}),
	}
}
