package interference

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

func pressureKernels() []kernel.Kernel {
	tight := kernel.Arg{Name: "interference", Says: "on diameter", Dim: q.LengthDim, Range: interval.Of(0, 1e-2), Trend: 1}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "joint_pressure", Says: "pressure in a joint from its interference and the give of both sides", Result: q.StressDim,
			Args:   []kernel.Arg{diameter("seat", "diameter of the joint", 1e-4, -1), tight, giveArg("inner_give", "give of the inner side", -1), giveArg("outer_give", "give of the outer side", -1)},
			Source: lame, Grade: basis.Derived,
		}, "p = δ/(d·(inner + outer))",
			func(x []float64) float64 {
				if !(x[1] < x[0]) {
					return math.NaN()
				}
				return jointPressure(x[0], x[1], x[2], x[3])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(JointPressure(q.Length(x[0]), q.Length(x[1]), Give(x[2]), Give(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "contact_pressure", Says: "pressure between a shaft and a hub", Result: q.StressDim,
			Args: []kernel.Arg{
				shaftBore(-1), diameter("seat", "diameter of the joint", 1e-4, 0), diameter("hub_outside", "outside of the hub", 1e-4, 1), tight,
				modulus("shaft_modulus", 1), poisson("shaft_poisson", 1), modulus("hub_modulus", 1), poisson("hub_poisson", -1),
			},
			Source: lame, Grade: basis.Derived, Enclose: encloseContact,
		}, "p = δ/{d·[((D²+d²)/(D²−d²) + νo)/Eo + ((d²+b²)/(d²−b²) − νi)/Ei]}",
			func(x []float64) float64 {
				if !(x[0] < x[1] && x[1] < x[2] && x[3] < x[1]) {
					return math.NaN()
				}
				return jointPressure(x[1], x[3], shaftGive(thick(x[0], x[1]), x[5], x[4]), hubGive(thick(x[1], x[2]), x[7], x[6]))
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ContactPressure(Pair{
					Bore: q.Length(x[0]), Seat: q.Length(x[1]), Outside: q.Length(x[2]),
					Shaft: Elastic{E: q.Stress(x[4]), Nu: x[5]}, Hub: Elastic{E: q.Stress(x[6]), Nu: x[7]},
				}, q.Length(x[3])))
			}),
	}
}

// encloseContact takes every trend at its corner and lets the seat, which has
// none, run through the hub's and the shaft's give apart.
func encloseContact(x []interval.I) interval.I {
	one := interval.Point(1)
	k := func(bore, outside interval.I) interval.I {
		ratio := bore.Div(outside).Sqr()
		return one.Add(interval.Point(2).Mul(ratio).Div(one.Sub(ratio.Meet(interval.Of(0, 1)))))
	}
	shaft := k(x[0], x[1]).Sub(x[5]).Div(x[4])
	hub := k(x[1], x[2]).Add(x[7]).Div(x[6])
	return x[3].Div(x[1].Mul(shaft.Add(hub)))
}

func sizeAndStressKernels() []kernel.Kernel {
	bore, outside := diameter("bore", "bore of the ring", 1e-4, 1), diameter("outside", "outside diameter", 1e-4, -1)
	yield := kernel.Arg{Name: "yield", Says: "yield strength", Dim: q.StressDim, Range: interval.Of(1e6, 3e9), Trend: 1}
	falling, hole := bore, diameter("bore", "hole, 0 if solid", 0, -1)
	falling.Trend = -1
	rising := outside
	rising.Trend = 1
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "bore_close_in", Says: "by how much the bore of a pressed bush gets smaller", Result: q.LengthDim,
			Args: []kernel.Arg{bore, outside, modulus("modulus", -1), pressureArg("on the outside of the bush")}, Source: lame, Grade: basis.Derived,
		}, "close-in = 2·p·d·D²/(E·(D²−d²))",
			ringed(func(x []float64) float64 { return closeIn(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(CloseIn(ring(x[0], x[1], x[2], 0), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "sleeve_growth", Says: "by how much the outside of a sleeve or hub gets larger", Result: q.LengthDim,
			Args: []kernel.Arg{bore, outside, modulus("modulus", -1), pressureArg("in the bore")}, Source: lame, Grade: basis.Derived,
		}, "growth = 2·p·D·d²/(E·(D²−d²))",
			ringed(func(x []float64) float64 { return growth(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(SleeveGrowth(ring(x[0], x[1], x[2], 0), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "hub_hoop", Says: "stress round the bore of a hub", Result: q.StressDim,
			Args: []kernel.Arg{bore, outside, pressureArg("in the bore")}, Source: lame, Grade: basis.Derived,
		}, "σ = p·(D²+d²)/(D²−d²)",
			ringed(func(x []float64) float64 { return x[2] * thick(x[0], x[1]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(HubHoop(q.Length(x[0]), q.Length(x[1]), q.Stress(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "bush_squeeze", Says: "squeezing stress round the bore of a bush, without its sign", Result: q.StressDim,
			Args: []kernel.Arg{bore, outside, pressureArg("on the outside of the bush")}, Source: lame, Grade: basis.Derived,
		}, "σ = 2·p·D²/(D²−d²)",
			ringed(func(x []float64) float64 { return x[2] * (1 + thick(x[0], x[1])) }),
			func(x []float64) (float64, []basis.Note, error) {
				s, err := BushHoop(q.Length(x[0]), q.Length(x[1]), q.Stress(x[2]))
				return kernel.Plain(-s, err)
			}),
		kernel.Make(kernel.Kernel{
			Name: "hub_yield_pressure", Says: "pressure in its bore at which a hub first yields", Result: q.StressDim,
			Args: []kernel.Arg{falling, rising, yield}, Source: "Lamé's stresses at the bore put into von Mises; worked out", Grade: basis.Derived,
		}, "p = Re·(1−Q²)/√(3+Q⁴), Q = d/D",
			ringed(func(x []float64) float64 { return hubYield(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(HubYieldPressure(q.Length(x[0]), q.Length(x[1]), q.Stress(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "bush_yield_pressure", Says: "pressure on its outside at which a bush or shaft first yields", Result: q.StressDim,
			Args: []kernel.Arg{hole, rising, yield}, Source: "Lamé's stresses at the hole put into von Mises; worked out", Grade: basis.Derived,
		}, "p = Re·(1−q²)/2, q = b/d; solid: p = Re",
			ringed(func(x []float64) float64 { return bushYield(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(BushYieldPressure(q.Length(x[0]), q.Length(x[1]), q.Stress(x[2])))
			}),
	}
}
