package assembly

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// grabKernels are the seconds before a hot hub grabs: solved, along the shaft, and
// estimated; each touching and centred.
func grabKernels() []kernel.Kernel {
	var out []kernel.Kernel
	for _, k := range []struct {
		name, says, formula string
		slow                bool
		tighter             int8
		value               func(j Joining, lie Lie) float64
		worked              func(j Joining, lie Lie) (q.Time, []basis.Note, error)
	}{
		{"grab_time", "seconds before a hot hub grabs a cold shaft", "heat conduction in rings through the closing gap", true, 0,
			func(j Joining, lie Lie) float64 { r := newRadial(&j, lie); return r.closes() }, GrabTime},
		{"grab_time_along", "seconds before a hot hub grabs a long cold shaft that carries heat away", "heat conduction along a rod through the closing gap", true, 0,
			func(j Joining, lie Lie) float64 { r := newRod(&j, lie); return r.closes() }, GrabTimeAlong},
		{"grab_estimate", "about how many seconds before a hot hub grabs a cold shaft", "t = M·∫ (R + 1/h)/Δ dΔ", false, -1,
			func(j Joining, lie Lie) float64 { return j.estimate(lie) }, GrabEstimate},
	} {
		for _, l := range []struct {
			name string
			lie  Lie
		}{{"touching", Touching}, {"centred", Centred}} {
			out = append(out, kernel.Make(kernel.Kernel{
				Name: k.name + "_" + l.name, Says: k.says + ", " + l.name, Result: q.TimeDim,
				Args: joiningArgs(k.tighter), Slow: k.slow, Source: grabs, Grade: basis.Derived,
			}, k.formula,
				func(x []float64) float64 {
					j := joiningOf(x)
					if !j.related() {
						return math.NaN()
					}
					return k.value(j, l.lie)
				},
				func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(k.worked(joiningOf(x), l.lie)) }))
		}
	}
	return out
}

// joiningArgs promise that a tighter joint has less time only where the answer is
// one formula: a march leaves noise in the fourth digit.
func joiningArgs(tighter int8) []kernel.Arg {
	args := []kernel.Arg{
		kernel.Takes("seat", "diameter of the joint", q.LengthDim, 5e-3, 0.3, 0),
		kernel.Takes("shaft_bore", "0 for a solid shaft", q.LengthDim, 0, 0.1, 0),
		kernel.Takes("outside", "of the hub", q.LengthDim, 10e-3, 1, 0),
		kernel.Takes("width", "of the hub, along the shaft", q.LengthDim, 2e-3, 0.5, 0),
		kernel.Takes("interference", "on diameter, at room temperature", q.LengthDim, 1e-6, 300e-6, tighter),
		kernel.Takes("peaks", "gap left by roughness where the parts touch, about 3 µm", q.LengthDim, 1e-6, 10e-6, 0),
		kernel.Takes("film", "what the hub loses to the air, about 25 W/(m² K)", q.FilmDim, 0, 50, 0),
		kernel.Takes("hub_at", "temperature", q.TemperatureDim, 373.15, 773.15, 0),
		kernel.Takes("shaft_at", "temperature", q.TemperatureDim, 70, 313.15, 0),
		kernel.Takes("room", "temperature", q.TemperatureDim, 273.15, 313.15, 0),
	}
	for _, whose := range []string{"hub", "shaft"} {
		args = append(args,
			kernel.Takes(whose+"_conductivity", "mean", q.ConductivityDim, 10, 400, 0),
			kernel.Takes(whose+"_density", "", q.DensityDim, 2500, 9500, 0),
			kernel.Takes(whose+"_specific_heat", "mean", q.SpecificHeatDim, 250, 1000, 0),
			kernel.Takes(whose+"_expansion", "mean", q.ExpansionDim, 9e-6, 26e-6, 0))
		args[len(args)-3].Says = "of the " + whose
	}
	return args
}

func joiningOf(x []float64) Joining {
	metal := func(x []float64) Metal {
		return Metal{q.Conductivity(x[0]), q.Density(x[1]), q.SpecificHeat(x[2]), q.Expansion(x[3])}
	}
	return Joining{
		Seat: q.Length(x[0]), ShaftBore: q.Length(x[1]), Outside: q.Length(x[2]), Width: q.Length(x[3]),
		Interference: q.Length(x[4]), Rough: q.Length(x[5]), Film: q.Film(x[6]),
		HubAt: q.Temperature(x[7]), ShaftAt: q.Temperature(x[8]), Room: q.Temperature(x[9]),
		Hub: metal(x[10:14]), Shaft: metal(x[14:18]),
	}
}

// related is what check asks of the sizes and temperatures together, for numbers
// that each lie in their range.
func (j *Joining) related() bool {
	return j.ShaftBore <= j.Seat*9/10 && j.Outside >= j.Seat*11/10 && j.Interference < j.Seat/10 && j.Rough < j.Seat/100 &&
		j.HubAt > j.ShaftAt && j.gap(float64(j.HubAt), float64(j.ShaftAt)) > 0
}
