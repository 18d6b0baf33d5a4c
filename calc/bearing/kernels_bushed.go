package bearing

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// bushedKernel is HotClearance, number by number.
func bushedKernel() kernel.Kernel {
	k := kernel.Kernel{
		Name: "hot_clearance_bushed", Says: "clearance of a shaft in a pressed bush, all warm", Result: q.LengthDim,
		Args: []kernel.Arg{
			kernel.Takes("clearance", "cold, on diameter", q.LengthDim, 0, 1e-2, 1), size("shaft", "diameter", 0),
			size("bore", "of the bush", 0), size("outside", "of the bush", 0), size("housing", "outside diameter of the housing", 0),
			kernel.Takes("press", "interference of bush in housing", q.LengthDim, 0, 1e-2, 0),
			kernel.Takes("bush_modulus", "Young's modulus", q.StressDim, 1e9, 500e9, 0), kernel.Takes("bush_poisson", "Poisson's number", q.Number, 0, 0.5, 0),
			kernel.Takes("housing_modulus", "Young's modulus", q.StressDim, 1e9, 500e9, 0), kernel.Takes("housing_poisson", "Poisson's number", q.Number, 0, 0.5, 0),
			expansion("bush_expansion", 0), expansion("housing_expansion", 0), expansion("shaft_expansion", 0),
			warmer("bush_warmer", 0), warmer("housing_warmer", 1), warmer("shaft_warmer", -1),
		},
		Source: "Lamé's thick ring with heat; worked out", Grade: basis.Derived,
		Enclose: encloseBushed,
	}
	return kernel.Make(k, "hot = cold + bore·[αb·Tb − (p hot − p cold)·(k+1)/Eb] − αs·shaft·Ts",
		func(x []float64) float64 {
			if !(x[0] < x[1]/10 && x[2] < x[3] && x[3] < x[4] && x[5] < x[3]/10) {
				return math.NaN()
			}
			r, err := bushed(x).run()
			if err != nil {
				return math.NaN()
			}
			return float64(r.Clearance)
		},
		func(x []float64) (float64, []basis.Note, error) {
			r, notes, err := HotClearance(bushed(x))
			return float64(r.Clearance), notes, err
		})
}

func bushed(x []float64) Bushed {
	return Bushed{
		Clearance: q.Length(x[0]), Shaft: q.Length(x[1]), Housing: q.Length(x[4]), Press: q.Length(x[5]),
		Bush: interference.Ring{
			Bore: q.Length(x[2]), Outside: q.Length(x[3]),
			Elastic: interference.Elastic{E: q.Stress(x[6]), Nu: x[7], Alpha: q.Expansion(x[10])},
		},
		HousingMetal: interference.Elastic{E: q.Stress(x[8]), Nu: x[9], Alpha: q.Expansion(x[11])},
		ShaftExpands: q.Expansion(x[12]),
		BushWarmer:   q.TemperatureChange(x[13]), HousingWarmer: q.TemperatureChange(x[14]), ShaftWarmer: q.TemperatureChange(x[15]),
	}
}

// encloseBushed is the formula in ranges. The change of pressure is taken as one
// thing, so that a press that only has a range does not widen it; where the warm
// bush may come loose it lies between that and losing all of its pressure.
func encloseBushed(x []interval.I) interval.I {
	one, two, positive := interval.Point(1), interval.Point(2), interval.AtLeast(0)
	thin := func(bore, outside interval.I) interval.I { // 2/(1−w²), which is k+1
		return two.Div(one.Sub(bore.Div(outside).Sqr()).Meet(positive))
	}
	bush, housing := thin(x[2], x[3]), thin(x[3], x[4])
	gives := bush.Sub(one).Sub(x[7]).Div(x[6]).Add(housing.Sub(one).Add(x[9]).Div(x[8])).Meet(positive)
	free := x[10].Mul(x[13])
	cold := x[5].Div(x[3]).Div(gives)
	change := free.Sub(x[11].Mul(x[14])).Div(gives)
	change = change.Max(cold.Neg())
	grows := x[2].Mul(free.Sub(change.Mul(bush).Div(x[6])))
	return x[0].Add(grows).Sub(x[1].Mul(x[12].Mul(x[15])))
}
