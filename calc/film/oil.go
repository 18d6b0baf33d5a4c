package film

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Reading is how thick an oil is at one temperature, as its data sheet says.
type Reading struct {
	At        q.Temperature
	Viscosity q.Kinematic
}

// Oil is a mineral oil by two readings, commonly at 40 °C and 100 °C.
type Oil struct {
	Cool, Warm Reading
	Density    q.Density // at 15 °C
}

// ViscosityAt returns how thick an oil is at a temperature.
//
//	log log(ν + 0.7) = A − B·log T, μ = ν·ρ, ρ = ρ₁₅·(1 − 0.00065·(T − 15 °C))
//
// ν in mm²/s, T in kelvin, logarithms to ten; A and B from the two readings.
//
//   - Holds for: mineral oils of 2 mm²/s and more between or near the readings. Held to an SAE 30 curve of another form it is within 3 % from 40 to 100 °C.
//   - Beyond: thinner than 2 mm²/s is noted; near its pour point an oil is thicker than told. Greases and thickened oils in a fast gap do not follow it.
//   - Source: Walther's law, ASTM D341, from memory; the density's change from memory of mineral oils.
func (o Oil) ViscosityAt(t q.Temperature) (q.Viscosity, []basis.Note, error) {
	w, err := o.law()
	if err != nil {
		return 0, nil, err
	}
	if !(t >= coldest && t <= hottest) {
		return 0, nil, refuse("temperature", celsius(t), "from "+celsius(coldest)+" to "+celsius(hottest))
	}
	μ := w.viscosity(float64(t))
	if math.IsNaN(μ) {
		return 0, nil, refuse("temperature", celsius(t), "higher; there this oil does not flow")
	}
	return q.Viscosity(μ), o.thinNote(w, t), nil
}

// The span asked about: from memory of mineral oils, which hardly flow under it
// and crack over it.
const (
	coldest q.Temperature = 233.15 // from memory of mineral oils
	hottest q.Temperature = 473.15 // from memory of mineral oils
)

// What ASTM D341 and mineral oils are known by, in mm²/s, 1/K and K.
const (
	walther   = 0.7     // from memory of ASTM D341
	thinnest  = 2.0     // from memory of ASTM D341: under it 0.7 is not enough
	thickest  = 1e6     // our choice: it does not flow
	swelling  = 0.00065 // from memory of mineral oils, 0.0006 to 0.0007
	densityAt = 288.15  // 15 °C, by definition
	mm2       = 1e-6    // m²/s in a mm²/s, exact
)

// law is Walther's line in bare numbers, with what makes a dynamic viscosity of it.
type law struct{ a, b, density float64 }

func lawOf(t1, ν1, t2, ν2, density float64) law {
	y1, y2 := math.Log10(math.Log10(ν1/mm2+walther)), math.Log10(math.Log10(ν2/mm2+walther))
	x1, x2 := math.Log10(t1), math.Log10(t2)
	b := (y1 - y2) / (x2 - x1)
	return law{y1 + b*x1, b, density}
}

// kinematic is in mm²/s.
func (w law) kinematic(t float64) float64 {
	return math.Pow(10, math.Pow(10, w.a-w.b*math.Log10(t))) - walther
}

// viscosity is NaN where the oil does not flow.
func (w law) viscosity(t float64) float64 {
	ν := w.kinematic(t)
	if !(ν <= thickest) {
		return math.NaN()
	}
	return ν * mm2 * w.density * (1 - swelling*(t-densityAt))
}

func (o Oil) law() (law, error) {
	for _, r := range []struct {
		name string
		at   Reading
	}{{"cool", o.Cool}, {"warm", o.Warm}} {
		if !(r.at.At >= coldest && r.at.At <= hottest) {
			return law{}, refuse("temperature of the "+r.name+" reading", celsius(r.at.At), "from "+celsius(coldest)+" to "+celsius(hottest))
		}
		if ν := r.at.Viscosity / mm2; !(ν >= 1 && ν <= thickest) {
			return law{}, refuse("viscosity of the "+r.name+" reading", centistokes(r.at.Viscosity), "from 1 to a million mm²/s")
		}
	}
	if !(o.Warm.At-o.Cool.At >= 10) {
		return law{}, refuse("temperature of the warm reading", celsius(o.Warm.At), "10 K or more over the cool one, "+celsius(o.Cool.At))
	}
	if !(o.Warm.Viscosity < o.Cool.Viscosity) {
		return law{}, refuse("viscosity of the warm reading", centistokes(o.Warm.Viscosity), "less than that of the cool one, "+centistokes(o.Cool.Viscosity))
	}
	if !(o.Density >= 700 && o.Density <= 1200) {
		return law{}, refuse("density of the oil", fmt.Sprintf("%.4g kg/m³", float64(o.Density)), "from 700 to 1200 kg/m³")
	}
	return lawOf(float64(o.Cool.At), float64(o.Cool.Viscosity), float64(o.Warm.At), float64(o.Warm.Viscosity), float64(o.Density)), nil
}

func (o Oil) thinNote(w law, t q.Temperature) []basis.Note {
	ν := w.kinematic(float64(t))
	if ν >= thinnest {
		return nil
	}
	return []basis.Note{{
		Says:   fmt.Sprintf("at %s the oil is as thin as %.2g mm²/s, where the law of its thickness no longer holds well", celsius(t), ν),
		Source: "ASTM D341, from memory", Grade: basis.Extrapolated,
	}}
}

func celsius(t q.Temperature) string { return fmt.Sprintf("%.4g °C", float64(t)-273.15) }

func centistokes(ν q.Kinematic) string { return fmt.Sprintf("%.4g mm²/s", 1e6*float64(ν)) }

func degrees(rad float64) string { return fmt.Sprintf("%.4g°", rad*180/math.Pi) }
