package assembly

import (
	"cmp"
	"slices"
	"strings"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Contraction is the mean expansion of a metal between room temperature, 20 °C,
// and the cold, with the range its sources and grades leave open.
type Contraction struct {
	Mean, Low, High q.Expansion
	Source          string
	Grade           basis.Grade
}

// Shrinks is how much of its size a metal loses from 20 °C to t.
func (c Contraction) Shrinks(t q.Temperature) float64 { return float64(c.Mean) * float64(room20-t) }

const room20 = 293.15 // K: 20 °C, exact by definition; NIST says 293 K

// coldest and nearRoom are where a contraction is given: boiling nitrogen with a
// degree to spare, and 50 K below room, nearer than which the fit's own error is
// a large part of the answer. Our choice.
const (
	coldest  = 76
	nearRoom = 243.15
)

// fitted is a change of length since 293 K in 1e-5, as a polynomial of the
// temperature in kelvin; within is the error of the fit, as a part.
type fitted struct {
	of     [5]float64
	within float64
}

// NIST cryogenic material property correlations, read in several programs that
// carry them, not on NIST's own page.
var fits = map[string]fitted{
	"aluminium 6061": {[5]float64{-4.1277e2, -3.0389e-1, 8.7696e-3, -9.9821e-6, 0}, 0.04},         // NIST, quoted; the fit within 4 %
	"stainless 304":  {[5]float64{-2.9554e2, -3.9811e-1, 9.2683e-3, -2.0261e-5, 1.7127e-8}, 0.05}, // NIST, quoted; the fit within 5 %
}

// shrunk are parts of the size lost from 20 °C to dry ice, -78 °C, and to liquid
// nitrogen, -196 °C: the middle and what is left open. From memory of tables of
// low-temperature properties; cast iron and the bronzes differ by grade.
var shrunk = map[string][2][3]float64{
	"steel":     {{0.97e-3, 0.90e-3, 1.05e-3}, {1.95e-3, 1.80e-3, 2.05e-3}}, // from memory; a note on fitting with nitrogen has 1.9 to 2.0
	"cast iron": {{0.90e-3, 0.80e-3, 1.00e-3}, {1.75e-3, 1.55e-3, 1.95e-3}}, // from memory
	"bronze":    {{1.65e-3, 1.50e-3, 1.75e-3}, {3.1e-3, 2.8e-3, 3.5e-3}},    // from memory; tables differ between 2.9 and 3.4
	"brass":     {{1.70e-3, 1.55e-3, 1.85e-3}, {3.5e-3, 3.2e-3, 3.8e-3}},    // from memory
}

const (
	dryIce   = 194.65 // K: sublimes at -78.5 °C, from memory of any handbook
	nitrogen = 77.35  // K: boils at -195.8 °C, from memory of any handbook
)

// ColdMetals lists the metals MeanContraction knows.
func ColdMetals() []string {
	var names []string
	for name := range fits {
		names = append(names, name)
	}
	for name := range shrunk {
		names = append(names, name)
	}
	slices.SortFunc(names, cmp.Compare)
	return names
}

// MeanContraction returns the mean expansion of a metal between 20 °C and a deep
// cold, as EntryGap and ShaftTemperature want it. It is clearly less than the
// handbook value for warm metal: 18 for 23 in aluminium, 13 for 17 in stainless.
//
//	α = (size lost, as a part) / (20 °C − T)
//
// Between dry ice and nitrogen, and from dry ice up to -30 °C, the mean goes in a
// straight line with the temperature where no fit is at hand.
//
//   - Holds for: steel, cast iron, bronze, brass, aluminium 6061, stainless 304, from liquid nitrogen, -196 °C, to -30 °C.
//   - Beyond: refused. A part out of dry ice lags behind it, and one out of nitrogen warms by some degrees on the way.
//   - Source: NIST cryogenic correlations for 6061 and 304 (quoted); the others from memory, with their range.
func MeanContraction(metal string, t q.Temperature) (Contraction, []basis.Note, error) {
	if !(t >= coldest && t <= nearRoom) {
		return Contraction{}, nil, refuse("temperature", celsius(t), "from "+celsius(coldest)+" to "+celsius(nearRoom))
	}
	if f, ok := fits[metal]; ok {
		mean := f.mean(float64(t))
		return Contraction{
			Mean: q.Expansion(mean), Low: q.Expansion(mean * (1 - f.within)), High: q.Expansion(mean * (1 + f.within)),
			Source: "NIST cryogenic material property correlations", Grade: basis.Secondary,
		}, nil, nil
	}
	s, ok := shrunk[metal]
	if !ok {
		return Contraction{}, nil, refuse("metal", `"`+metal+`"`, "one of "+strings.Join(ColdMetals(), ", "))
	}
	var at [3]q.Expansion
	for i := range at {
		at[i] = q.Expansion(between(s[0][i], s[1][i], float64(t)))
	}
	const source = "tables of low-temperature properties, from memory"
	notes := []basis.Note{{Says: "the contraction of " + metal + " is from memory; use its range", Source: source, Grade: basis.Memory}}
	return Contraction{Mean: at[0], Low: at[1], High: at[2], Source: source, Grade: basis.Memory}, notes, nil
}

// between is the mean expansion in a straight line through those to dry ice and to
// nitrogen, of which the parts lost are given.
func between(dry, deep, t float64) float64 {
	warm, cold := dry/(room20-dryIce), deep/(room20-nitrogen)
	return cold + (warm-cold)*(t-nitrogen)/(dryIce-nitrogen)
}

func (f fitted) mean(t float64) float64 { return f.shrinks(t) / (room20 - t) }

func (f fitted) shrinks(t float64) float64 {
	sum := 0.0
	for i := len(f.of) - 1; i >= 0; i-- {
		sum = sum*t + f.of[i]
	}
	return -1e-5 * sum
}
