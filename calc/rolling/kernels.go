package rolling

import (
	"math"
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// Kernels offers the single numbers of this package to rules and formulas.
func Kernels() []kernel.Kernel {
	out := append(ringKernels(), tableKernels()...)
	return append(out, working())
}

func bore(trend int8) kernel.Arg {
	return kernel.Takes("bore", "nominal bore of the bearing", q.LengthDim, 0.01, 0.1, trend)
}

func outside(trend int8) kernel.Arg {
	return kernel.Takes("outside", "nominal outside of the bearing", q.LengthDim, 0.026, 0.25, trend)
}

func tight(name, says string, trend int8) kernel.Arg {
	return kernel.Takes(name, says+", after smoothing; less than 0 is loose", q.LengthDim, -1e-3, 1e-3, trend)
}

func give(name string, lo float64, trend int8) kernel.Arg {
	return kernel.Takes(name, "growth per diameter and pressure", q.PerStressDim, lo, 1e-9, trend)
}

// rung gives NaN for a bearing whose bore x[0] leaves no rings inside x[1].
func rung(value func(x []float64) float64) func(x []float64) float64 {
	return func(x []float64) float64 {
		if !(x[0] < x[1]) {
			return math.NaN()
		}
		return value(x)
	}
}

// thin is a give that is surely allowed, for a kernel that does not ask for it.
const thin = 1e-11 // 1/Pa: our choice

func ringKernels() []kernel.Kernel {
	const lame = "Lamé's thick ring, any strength text; races estimated from the outer sizes"
	of := func(s Seats, pick func(Left) q.Length) (float64, []basis.Note, error) {
		l, _, err := Working(s)
		return float64(pick(l)), nil, err
	}
	at := func(x []float64) Seats {
		return Seats{Bore: q.Length(x[0]), Outside: q.Length(x[1]), Internal: 1, ShaftGive: thin, HousingGive: thin}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "smoothed_interference", Says: "interference of a bearing seat after its roughness is pressed flat", Result: q.LengthDim,
			Args: []kernel.Arg{
				kernel.Takes("seat", "diameter of the seat", q.LengthDim, 5e-3, 0.5, 1), kernel.Takes("interference", "as gauged", q.LengthDim, 0, 1e-3, 1),
				kernel.Takes("smoothing", "2 mm ground, 3 mm turned", q.LengthDim, 0, 0.01, -1),
			}, Source: "bearing handbooks, from memory", Grade: basis.Memory,
		}, "δeff = δ·d/(d + smoothing)",
			func(x []float64) float64 { return smoothed(x[0], x[1], x[2]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Smoothed(q.Length(x[0]), q.Length(x[1]), q.Length(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "inner_race_growth", Says: "how much the inner raceway grows on its shaft", Result: q.LengthDim,
			Args:   []kernel.Arg{bore(1), outside(-1), tight("interference", "on the shaft", 1), give("shaft_give", 1e-12, -1)},
			Source: lame, Grade: basis.Memory,
		}, "2·δ·s/((k+1) − (k−1)·s²), s = bore/race, k = E·shaft_give + ν",
			rung(func(x []float64) float64 { return innerGrows(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) {
				s := at(x)
				s.OnShaft, s.ShaftGive = q.Length(x[2]), interference.Give(x[3])
				return of(s, func(l Left) q.Length { return l.InnerGrows })
			}),
		kernel.Make(kernel.Kernel{
			Name: "outer_race_shrinkage", Says: "how much the outer raceway shrinks in its housing", Result: q.LengthDim,
			Args:   []kernel.Arg{bore(1), outside(-1), tight("interference", "in the housing", 1), give("housing_give", leastGive, -1)},
			Source: lame, Grade: basis.Memory,
		}, "2·δ·s/((k+1) − (k−1)·s²), s = race/outside, k = E·housing_give − ν",
			rung(func(x []float64) float64 { return outerShrinks(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) {
				s := at(x)
				s.InHousing, s.HousingGive = q.Length(x[2]), interference.Give(x[3])
				return of(s, func(l Left) q.Length { return l.OuterShrinks })
			}),
		kernel.Make(kernel.Kernel{
			Name: "race_heat_loss", Says: "clearance taken by an inner ring and balls hotter than the outer ring", Result: q.LengthDim,
			Args:   []kernel.Arg{bore(1), outside(1), kernel.Takes("inner_hotter", "inner ring over outer ring", q.ChangeDim, 0, 200, 1)},
			Source: "a bearing maker's catalogue; race estimated from the outer sizes", Grade: basis.Secondary,
		}, "α·T·(4·outside + bore)/5",
			rung(func(x []float64) float64 { return heat(x[0], x[1], x[2]) }),
			func(x []float64) (float64, []basis.Note, error) {
				s := at(x)
				s.InnerHotter = q.TemperatureChange(x[2])
				return of(s, func(l Left) q.Length { return l.Heat })
			}),
	}
}

// working is what is left of them all. A larger outside shields the races from
// the seats but grows more when hot, so it has no trend and is enclosed by parts.
func working() kernel.Kernel {
	k := kernel.Make(kernel.Kernel{
		Name: "working_clearance", Says: "internal clearance a bearing runs with; less than 0 is preload", Result: q.LengthDim,
		Args: []kernel.Arg{
			bore(-1), outside(0), kernel.Takes("clearance", "radial internal clearance before mounting", q.LengthDim, 0, 1e-3, 1),
			tight("shaft_interference", "on the shaft", -1), give("shaft_give", 1e-12, 1),
			tight("housing_interference", "in the housing", -1), give("housing_give", leastGive, 1),
			kernel.Takes("inner_hotter", "inner ring over outer ring", q.ChangeDim, 0, 200, -1),
		},
		Source: "Lamé's thick ring, any strength text; heat by a bearing maker's catalogue; races estimated", Grade: basis.Memory,
	}, "clearance − inner_race_growth − outer_race_shrinkage − race_heat_loss",
		rung(func(x []float64) float64 {
			return x[2] - innerGrows(x[0], x[1], x[3], x[4]) - outerShrinks(x[0], x[1], x[5], x[6]) - heat(x[0], x[1], x[7])
		}),
		func(x []float64) (float64, []basis.Note, error) {
			l, notes, err := Working(Seats{
				Bore: q.Length(x[0]), Outside: q.Length(x[1]), Internal: q.Length(x[2]), OnShaft: q.Length(x[3]), ShaftGive: interference.Give(x[4]),
				InHousing: q.Length(x[5]), HousingGive: interference.Give(x[6]), InnerHotter: q.TemperatureChange(x[7]),
			})
			return float64(l.Clearance), notes, err
		})
	k.Enclose = encloseWorking
	return k
}

// encloseWorking takes each part at its own corners. Growth and shrinkage rise
// with the bore and fall with the outside; where the two cross, a ring of no
// height passes on all.
func encloseWorking(x []interval.I) interval.I {
	corner := func(f func(bore, outside, interference, give float64) float64, tight, give interval.I) interval.I {
		low := f(x[0].Lo, x[1].Hi, tight.Lo, give.Hi)
		high := f(min(x[0].Hi, x[1].Lo), x[1].Lo, tight.Hi, give.Lo)
		return interval.Of(low, high).Mul(interval.Of(1-1e-12, 1+1e-12))
	}
	hot := interval.Of(heat(x[0].Lo, x[1].Lo, x[7].Lo), heat(x[0].Hi, x[1].Hi, x[7].Hi)).Mul(interval.Of(1-1e-12, 1+1e-12))
	return x[2].Sub(corner(innerGrows, x[3], x[4])).Sub(corner(outerShrinks, x[5], x[6])).Sub(hot)
}

// tableKernels never rise or never fall with the size, which is all an enclosure needs.
func tableKernels() []kernel.Kernel {
	stepped := func(name, says string, a kernel.Arg, grade basis.Grade, source string, table []step, key string, of func(step) float64, worked func(q.Length) (q.Length, error)) kernel.Kernel {
		return kernel.Make(kernel.Kernel{Name: name, Says: says, Result: q.LengthDim, Args: []kernel.Arg{a}, Source: source, Grade: grade},
			"the row of the table that holds the size",
			func(x []float64) float64 {
				if s, ok := at(table, key, x[0]); ok {
					return of(s)
				}
				return math.NaN()
			},
			func(x []float64) (float64, []basis.Note, error) { return kernel.Plain(worked(q.Length(x[0]))) })
	}
	low := func(s step) float64 { return s.low }
	out := []kernel.Kernel{
		stepped("bearing_bore_lower", "lower deviation of a bearing's bore, normal class; the upper is 0", bore(-1), basis.Secondary, "ISO 492, through calc/rolling/SOURCES.md", tolerances(), "inner", low, BoreLower),
		stepped("bearing_outside_lower", "lower deviation of a bearing's outside, normal class; the upper is 0", outside(-1), basis.Secondary, "ISO 492, through calc/rolling/SOURCES.md", tolerances(), "outer", low, OutsideLower),
	}
	for _, g := range []Group{C2, CN, C3} {
		name := strings.ToLower(string(g)) + "_clearance_"
		out = append(out,
			stepped(name+"least", "least internal clearance of group "+string(g)+" before mounting", bore(1), basis.Secondary, "ISO 5753-1, through calc/rolling/SOURCES.md", clearances(), string(g), low,
				func(d q.Length) (q.Length, error) { l, _, err := InternalClearance(d, g); return l, err }),
			stepped(name+"most", "most internal clearance of group "+string(g)+" before mounting", bore(1), basis.Secondary, "ISO 5753-1, through calc/rolling/SOURCES.md", clearances(), string(g), func(s step) float64 { return s.top },
				func(d q.Length) (q.Length, error) { _, m, err := InternalClearance(d, g); return m, err }))
	}
	return out
}
