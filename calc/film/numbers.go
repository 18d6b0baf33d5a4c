package film

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
)

// Least and most of the table: length over diameter and eccentricity, span of the table.
const (
	leastRatio, mostRatio = 0.2, 2.0   // span of the table
	leastTabled, mostBent = 0.05, 0.95 // span of the table
)

// Numbers are what all bearings of one length ratio and eccentricity have alike,
// without units. c is half the clearance on diameter, r half the diameter, N in
// turns a second, P the load over d·L.
type Numbers struct {
	Sommerfeld   float64 // (r/c)²·μ·N/P
	Attitude     float64 // angle between the load and the narrowest gap, in radians
	Friction     float64 // coefficient of friction times r/c
	Flow         float64 // oil drawn in, over r·c·N·L
	Leak         float64 // part of that flow that leaves at the sides
	MeanOverPeak float64 // P over the highest pressure
}

// At returns the numbers of a bearing that runs at a known eccentricity: 0 is in
// the middle, 1 touches.
//
//	log S = log S short + table(ε, log L/D)
//	f·r/c = 2π²·S/√(1 − ε²) + ε/2·sin φ
//
// The table holds the finite bearing over the very short one.
//
//   - Holds for: a full bearing, oiled all along, steady load, even temperature, laminar flow; L/D 0.2 to 2, ε 0.05 to 0.95. Off the table's own points all are within 0.4 %, the angle within 0.05° (a solver run in the tests). At them, against 23 Raimondi-Boyd rows from memory: S 0.8 %, friction 0.9 %, flow 0.2 %, leakage 0.6 %, the angle 0.4°, pressure 2.7 %.
//   - Beyond: under ε 0.05 the table is carried on and noted, S within 1 %; over 0.95 and off the length ratios refused. Grooves across the loaded side, tilt and sag of the shaft thin the film.
//   - Source: own table, derived, calc/film/SOURCES.md; friction by the full gap's shear, worked out.
func At(eccentricity, lengthRatio float64) (Numbers, []basis.Note, error) {
	if err := checkRatio(lengthRatio); err != nil {
		return Numbers{}, nil, err
	}
	if !(eccentricity > 0 && eccentricity <= mostBent) {
		return Numbers{}, nil, refuse("eccentricity", fmt.Sprintf("%.4g of the gap", eccentricity), "more than 0 and up to 0.95, where the table ends")
	}
	return numbersAt(eccentricity, lengthRatio), lightNote(eccentricity), nil
}

// Eccentricity returns how far off the middle a bearing of a known Sommerfeld
// number runs: 0 is in the middle, 1 touches. It is At backwards.
//
//	S(ε, L/D) = S, found by a safe secant
//
// It meets S to a thousand-millionth.
//
//   - Holds for: as At.
//   - Beyond: as At; a number under the table's last is refused, for there the film is thinner than the table reaches.
//   - Source: own table, derived, calc/film/SOURCES.md.
func Eccentricity(sommerfeld, lengthRatio float64) (float64, []basis.Note, error) {
	if err := checkRatio(lengthRatio); err != nil {
		return 0, nil, err
	}
	if !(sommerfeld > 0 && sommerfeld < mostSommerfeld) {
		return 0, nil, refuse("Sommerfeld number", fmt.Sprintf("%.4g", sommerfeld), "more than 0 and less than a million million")
	}
	e := eccentricityOf(sommerfeld, lengthRatio)
	if math.IsNaN(e) {
		return 0, nil, refuse("Sommerfeld number", fmt.Sprintf("%.4g", sommerfeld),
			fmt.Sprintf("%.3g or more for this length; under it the film is less than a twentieth of the gap and the table ends. Thicker oil, more length or less load raise it", leastSommerfeld(lengthRatio)))
	}
	return e, lightNote(e), nil
}

// mostSommerfeld is where a journal is in the middle for all that can be told; our choice.
const mostSommerfeld = 1e12

func checkRatio(ratio float64) error {
	if !(ratio >= leastRatio && ratio <= mostRatio) {
		return refuse("length over diameter", fmt.Sprintf("%.4g", ratio), "from 0.2 to 2, the span of the table")
	}
	return nil
}

func lightNote(eccentricity float64) []basis.Note {
	if eccentricity >= leastTabled {
		return nil
	}
	return []basis.Note{{
		Says:   "the load is so light that the journal runs nearer the middle than the table begins (0.05); it is carried on from there",
		Source: tableSource, Grade: basis.Extrapolated,
	}}
}

const tableSource = "own table of Reynolds' equation, calc/film/SOURCES.md"

func numbersAt(e, ratio float64) Numbers {
	g := table()
	x := math.Log(ratio)
	along, across := between(g.logRatio[:], x), g.at(e)
	n := Numbers{
		Sommerfeld:   math.Exp(logShort(e) - 2*x + g.over(loading, along, across)),
		Attitude:     shortAttitude(e) * g.over(attitude, along, across),
		Flow:         shortFlow(e) * g.over(flow, along, across),
		Leak:         shortLeak(e) * g.over(leak, along, across),
		MeanOverPeak: g.over(peak, along, across),
	}
	n.Friction = 2*math.Pi*math.Pi*n.Sommerfeld/math.Sqrt(1-e*e) + e/2*math.Sin(n.Attitude)
	return n
}

func leastSommerfeld(ratio float64) float64 { return numbersAt(mostBent, ratio).Sommerfeld }

// eccentricityOf is At backwards; NaN for loads heavier than the table's.
func eccentricityOf(sommerfeld, ratio float64) float64 {
	g := table()
	x := math.Log(ratio)
	c := curve{want: math.Log(sommerfeld) + 2*x}
	along := between(g.logRatio[:], x)
	for j := range c.value {
		for i, w := range along.weight {
			c.value[j] += w * g.value[loading][along.first+i][j]
		}
	}
	at := func(j int) float64 { return g.logShort[j] + c.value[j] - c.want }
	if at(places-1) > 1e-12 { // so that the table's last number is found again
		return math.NaN()
	}
	first := g.eccentricity[0]
	if at(0) < 0 { // lighter: S·ε stays nearly the same
		guess := first * math.Exp(at(0))
		return c.secant(g, guess/2, min(2*guess, first))
	}
	lo := 0
	for lo < places-2 && at(lo+1) > 0 {
		lo++
	}
	return c.secant(g, g.eccentricity[lo], g.eccentricity[lo+1])
}

// curve is the table at one length ratio, and the logarithm of S·(L/D)² wanted of it.
type curve struct {
	value [places]float64
	want  float64
}

// over is how far the logarithm lies over the wanted one.
func (c *curve) over(g *grid, e float64) float64 {
	s := g.at(e)
	v := c.value[s.first:]
	return logShort(e) + s.weight[0]*v[0] + s.weight[1]*v[1] + s.weight[2]*v[2] + s.weight[3]*v[3] - c.want
}

// secant finds where the falling curve meets what is wanted, between a and b:
// false position, with the value at an end that stays halved each time (worked out).
func (c *curve) secant(g *grid, a, b float64) float64 {
	fa, fb := c.over(g, a), c.over(g, b)
	stayed := 0 // which end stayed last
	for range 60 {
		if math.Abs(fa-fb) < 1e-13 {
			break
		}
		e := min(max(b-fb*(b-a)/(fb-fa), a), b)
		f := c.over(g, e)
		if math.Abs(f) < 1e-13 {
			return e
		}
		if f > 0 {
			a, fa = e, f
			if stayed == 1 {
				fb /= 2
			}
			stayed = 1
		} else {
			b, fb = e, f
			if stayed == -1 {
				fa /= 2
			}
			stayed = -1
		}
	}
	return (a + b) / 2
}
