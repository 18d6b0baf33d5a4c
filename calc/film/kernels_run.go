package film

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// bareOf reads the six arguments every running bearing has.
func bareOf(x []float64) bare {
	return bare{load: x[0], diameter: x[1], length: x[2], clearance: x[3], speed: x[4], viscosity: x[5]}
}

func journalOf(x []float64) Journal {
	return Journal{
		Load: q.Force(x[0]), Diameter: q.Length(x[1]), Length: q.Length(x[2]), Clearance: q.Length(x[3]),
		Speed: q.Rotation(x[4]), Viscosity: q.Viscosity(x[5]),
	}
}

// slowest is under any shaft's speed, so that a film can be asked for: our choice.
const slowest = 1e-3 // turns a second

func runKernels() []kernel.Kernel {
	one := func(name, says string, dim q.Dim, args []kernel.Arg, formula string, enclose func([]interval.I) interval.I, of func(running) float64) kernel.Kernel {
		return kernel.Make(kernel.Kernel{Name: name, Says: says, Result: dim, Args: args, Enclose: enclose, Source: tableSource, Grade: basis.Derived}, formula,
			func(x []float64) float64 {
				b := bareOf(x)
				if !gap(b.diameter, b.clearance) {
					return math.NaN()
				}
				if r, ok := b.run(); ok {
					return of(r)
				}
				return math.NaN()
			},
			func(x []float64) (float64, []basis.Note, error) {
				_, notes, err := Run(journalOf(x))
				if err != nil {
					return 0, nil, err
				}
				r, _ := bareOf(x).run()
				return of(r), notes, nil
			})
	}
	args := func(load_, diameter_, length_, clearance_, speed_, viscosity_ int8) []kernel.Arg {
		return []kernel.Arg{load(load_), diameter(diameter_), length(length_), clearance(clearance_), speed(slowest, speed_), viscosity(viscosity_)}
	}
	return []kernel.Kernel{
		viscosityForFilm(),
		kernel.Make(kernel.Kernel{
			Name: "sommerfeld_number", Says: "how light, fast and thickly oiled a bearing runs", Result: q.Number, Args: args(-1, 1, 1, -1, 1, 1),
			Source: "definition, any machine-element text", Grade: basis.Derived,
		}, "S = (d/C)²·μ·n·d·L/F",
			func(x []float64) float64 {
				if !gap(x[1], x[3]) {
					return math.NaN()
				}
				return sommerfeld(bareOf(x))
			},
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(SommerfeldNumber(journalOf(x))) }),
		one("least_film", "narrowest gap of a bearing that runs on oil", q.LengthDim, args(-1, 0, 1, 0, 1, 1), "C/2·(1 − ε)", encloseFilm,
			func(r running) float64 { return r.least }),
		one("film_friction", "coefficient of friction of a bearing that runs on oil", q.Number, args(-1, 0, 0, 0, 1, 1), "f = (f·r/c)·C/d", encloseFriction,
			func(r running) float64 { return r.coefficient }),
		one("film_torque", "to turn a bearing that runs on oil", q.TorqueDim, args(1, 1, 1, -1, 1, 1), "f·F·d/2", nil,
			func(r running) float64 { return r.torque }),
		one("film_power", "turned into heat by a bearing that runs on oil", q.PowerDim, args(1, 1, 1, -1, 1, 1), "2π·n·f·F·d/2", nil,
			func(r running) float64 { return r.power }),
		one("film_flow", "oil a bearing draws in", q.FlowDim, args(0, 1, 1, 1, 1, 0), "Q'·(d/2)·(C/2)·n·L", nil,
			func(r running) float64 { return r.flow }),
		one("film_leakage", "oil that leaves a bearing at its sides and must be made up", q.FlowDim, args(1, 0, 0, 1, 0, -1), "its part of the flow", nil,
			func(r running) float64 { return r.leakage }),
		one("film_peak", "highest pressure in the oil", q.StressDim, args(1, 0, 0, 0, 0, 0), "F/(d·L) over the mean's part of the peak", nil,
			func(r running) float64 { return r.peak }),
	}
}

// encloseFilm bounds C/2·(1 − ε): ε falls as S and L/D grow, and where the table
// ends it is 0.95 at the most.
func encloseFilm(x []interval.I) interval.I {
	s, ratio := lightness(x)
	if ratio.Empty() {
		return ratio
	}
	ecc := interval.Of(0, mostBent)
	if e := eccentricityOf(s.Hi, ratio.Hi); e > 0 {
		ecc.Lo = e * (1 - 1e-9)
	}
	if e := eccentricityOf(s.Lo, ratio.Lo); e > 0 {
		ecc.Hi = min(mostBent, e*(1+1e-9))
	}
	return x[3].Div(interval.Point(2)).Mul(interval.Point(1).Sub(ecc)).Mul(rounding)
}

// encloseFriction bounds (f·r/c)·C/d: f·r/c grows with S and falls as L/D grows.
// Where the table ends it is that of its end, the least of any.
func encloseFriction(x []interval.I) interval.I {
	s, ratio := lightness(x)
	if ratio.Empty() {
		return ratio
	}
	at := func(s, ratio float64) float64 {
		e := eccentricityOf(min(s, mostSommerfeld), ratio)
		if !(e > 0) {
			e = mostBent
		}
		return numbersAt(e, ratio).Friction
	}
	low, high := at(s.Lo, ratio.Hi)*(1-1e-9), at(s.Hi, ratio.Lo)*(1+1e-9)
	return interval.Of(low, max(low, high)).Mul(x[3].Div(x[1])).Mul(rounding)
}

// rounding is what the last digits may stray: our choice.
var rounding = interval.Of(1-1e-12, 1+1e-12)

// lightness is the Sommerfeld numbers and the length ratios of a box of bearings.
func lightness(x []interval.I) (s, ratio interval.I) {
	ratio = x[2].Div(x[1]).Meet(interval.Of(leastRatio, mostRatio))
	return x[1].Div(x[3]).Sqr().Mul(x[5]).Mul(x[4]).Mul(x[1]).Mul(x[2]).Div(x[0]), ratio
}

// viscosityForFilm asks the table backwards, in a bearing of the six arguments less
// the viscosity.
func viscosityForFilm() kernel.Kernel {
	return kernel.Make(kernel.Kernel{
		Name: "viscosity_for_film", Says: "how thick the oil must be, as warm as it runs, for a least film", Result: q.ViscosityDim,
		Args: []kernel.Arg{
			load(1), diameter(-1), length(-1), clearance(0), speed(slowest, -1), kernel.Takes("least_film", "narrowest gap", q.LengthDim, 1e-7, 1e-3, 1),
		}, Source: tableSource, Grade: basis.Derived,
	}, "μ = S(1 − 2·h/C, L/D)·F·(C/d)²/(n·d·L)",
		func(x []float64) float64 {
			e, ratio := 1-2*x[5]/x[3], x[2]/x[1]
			if !(gap(x[1], x[3]) && e > 0 && e <= mostBent && ratio >= leastRatio && ratio <= mostRatio) {
				return math.NaN()
			}
			b := bareOf(x)
			b.viscosity = 1
			return numbersAt(e, ratio).Sommerfeld / sommerfeld(b)
		},
		func(x []float64) (float64, []basis.Note, error) {
			return kernel.Noted(ViscosityFor(q.Length(x[5]), journalOf(x)))
		})
}

func thicknessKernels() []kernel.Kernel {
	const memory = "tribology texts, from memory"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "film_ratio", Says: "least film over the roughness of both faces; over 3 it carries all", Result: q.Number,
			Args: []kernel.Arg{
				kernel.Takes("least_film", "narrowest gap", q.LengthDim, 0, 1e-3, 1), kernel.Takes("shaft_rq", "root mean square roughness, 1.25 times Ra", q.LengthDim, 1e-9, 1e-4, -1),
				kernel.Takes("bore_rq", "root mean square roughness, 1.25 times Ra", q.LengthDim, 1e-9, 1e-4, -1),
			}, Source: memory, Grade: basis.Memory,
		}, "h/√(Rq₁² + Rq₂²)",
			func(x []float64) float64 { return filmRatio(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(FilmRatio(q.Length(x[0]), q.Length(x[1]), q.Length(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "trumpler_film", Says: "least film a designer allows for a ground journal", Result: q.LengthDim,
			Args: []kernel.Arg{diameter(1)}, Source: trumplerSource, Grade: basis.Memory,
		}, "5 µm + 0.00004·d",
			func(x []float64) float64 { return trumpler(x[0]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(TrumplerFilm(q.Length(x[0]))) }),
	}
}
