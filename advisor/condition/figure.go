package condition

import (
	"math"

	"wornfit/advisor/casefile"
	"wornfit/calc/cleanup"
	"wornfit/calc/interval"
	"wornfit/calc/uncertainty"

	q "wornfit/calc/quantity"
)

// Figure is a size or a difference of sizes: what was read, and where the true
// one lies. The zero Figure is not known.
type Figure struct {
	Is    bool
	Best  float64
	Range interval.I // reading ± U, and what the gauge cannot see, to the side it lies
	U     float64    // k = 2: the doubt of gauge, repeats and temperature alone
}

// about is a figure with U to both sides.
func about(best, u float64) Figure {
	return Figure{Is: true, Best: best, Range: interval.I{Lo: best - u, Hi: best + u}, U: u}
}

// from widens a figure to both sides by what is not seen.
func (f Figure) widened(below, above float64) Figure {
	f.Range.Lo -= below
	f.Range.Hi += above
	return f
}

// Doubt is the ± to show beside Best: the wider side of Range, which also
// holds what the gauge cannot see and what the size before the wear may have
// been; never less than U.
func (f Figure) Doubt() float64 {
	return max(f.U, f.Range.Hi-f.Best, f.Best-f.Range.Lo)
}

// atLeastNothing is for what cannot be negative.
func (f Figure) atLeastNothing() Figure {
	f.Best = max(0, f.Best)
	f.Range = interval.I{Lo: max(0, f.Range.Lo), Hi: max(0, f.Range.Hi)}
	return f
}

// stated is a figure the case gives.
func stated(v casefile.Value) Figure {
	if !v.Known {
		return Figure{}
	}
	return Figure{Is: true, Best: v.Mid(), Range: interval.I{Lo: v.Lo, Hi: v.Hi}, U: (v.Hi - v.Lo) / 2}
}

// sigma95 is the chance that k = 2 stands for.
const sigma95 = 0.9544997361036416

// size is one reading of the case, at 20 °C.
type size struct {
	at, toward       float64
	placed, directed bool // at and toward are stated
	value            float64
	gauge            *casefile.Gauge
	n                int                 // repeats
	parts            []uncertainty.Input // beside the gauge: repeats, temperature
	round            bool
}

// reading is the size as the clean-up takes it.
func (s size) reading() cleanup.Reading {
	return cleanup.Reading{Station: q.Length(s.at), Angle: s.toward, Size: q.Length(s.value)}
}

// split is a gauge's doubt in two: what is the same in all its readings and
// what is new in each. Where the case does not say how it repeats nothing is
// taken to cancel in a difference, and nothing to average out in a mean.
func split(g *casefile.Gauge) (both uncertainty.Gauge, told bool) {
	if g == nil || !g.Within.Known {
		return uncertainty.Gauge{}, false
	}
	all := g.Within.Hi / 2
	if !g.Repeats.Known {
		return uncertainty.Gauge{Reading: q.Length(all)}, true
	}
	each := min(g.Repeats.Hi/2, all)
	return uncertainty.Gauge{Common: q.Length(math.Sqrt(all*all - each*each)), Reading: q.Length(each)}, true
}

// expanded combines standard uncertainties to U. With few repeats k grows
// beyond 2, as Student's t.
func expanded(inputs ...uncertainty.Input) float64 {
	u, freedom, err := uncertainty.Combine(inputs)
	if err != nil || u == 0 {
		return 0
	}
	U, err := uncertainty.Expand(u, max(1, freedom), sigma95)
	if err != nil {
		return 2 * u
	}
	return U
}

// u is the doubt of the size by itself: the whole gauge, repeats, temperature.
func (s size) u() float64 { return expanded(s.inputs()...) }

func (s size) inputs() []uncertainty.Input {
	return append([]uncertainty.Input{{Name: "gauge", U: gaugeU(s.gauge), By: 1, Freedom: uncertainty.Known}}, s.parts...)
}

func gaugeU(g *casefile.Gauge) float64 {
	if g == nil || !g.Within.Known {
		return 0
	}
	return g.Within.Hi / 2
}

// meanU is the doubt of the mean of sizes: the gauge counts whole, because what
// it is out by is the same in all of them.
func meanU(sizes []size) float64 {
	worst := 0.0
	for _, s := range sizes {
		worst = max(worst, gaugeU(s.gauge))
	}
	in := []uncertainty.Input{{Name: "gauge", U: worst, By: 1, Freedom: uncertainty.Known}}
	for _, s := range sizes {
		for _, p := range s.parts {
			p.By /= float64(len(sizes))
			in = append(in, p)
		}
	}
	return expanded(in...)
}

// apartU is the doubt of the difference between two means of sizes. The common
// part of one gauge drops out.
func apartU(a, b []size) float64 {
	in := []uncertainty.Input{}
	var shared q.Length
	ga, toldA := split(a[0].gauge)
	gb, toldB := split(b[0].gauge)
	if a[0].gauge == b[0].gauge {
		shared = ga.Common
	}
	if toldA && toldB {
		d, err := uncertainty.Two{A: ga, B: gb, NA: counted(a), NB: counted(b), Shared: shared}.Difference()
		if err == nil {
			in = append(in, uncertainty.Input{Name: "gauges", U: float64(d), By: 1, Freedom: uncertainty.Known})
		}
	}
	for _, part := range [][]size{a, b} {
		for _, s := range part {
			for _, p := range s.parts {
				p.By /= float64(len(part))
				in = append(in, p)
			}
		}
	}
	if len(in) == 0 {
		return 0
	}
	return expanded(in...)
}

// counted is how many readings average: one where the gauge does not say how
// it repeats.
func counted(sizes []size) int {
	if g := sizes[0].gauge; g == nil || !g.Repeats.Known {
		return 1
	}
	n := 0
	for _, s := range sizes {
		n += max(1, s.n)
	}
	return n
}
