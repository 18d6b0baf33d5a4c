package render

import (
	"math"
	"strconv"
	"strings"

	"wornfit/calc/quantity"
)

// Voice says numbers as the person at the bench does.
type Voice struct{ quantity.Speech }

// each says something in the units spoken: in one, or in inch with mm after it.
func (v Voice) each(say func(one quantity.Speech) string) string {
	if v.Units != quantity.Both {
		return say(v.Speech)
	}
	inch, mm := v.Speech, v.Speech
	inch.Units, mm.Units = quantity.Inch, quantity.Metric
	return say(inch) + " (" + say(mm) + ")"
}

// Measured says a length and its doubt either way, such as 25.420 ±0.005 mm.
// Size writes it as drawings write a diameter, else as sentences write a gap.
// The doubt is rounded up.
func (v Voice) Measured(l, u float64, size bool) string {
	return v.each(func(one quantity.Speech) string {
		p := grain(u)
		say := one.Gap
		if size {
			say = one.Size
		}
		text := say(l, p)
		if !(u > 0) {
			return text
		}
		number, unit, _ := strings.Cut(text, " ")
		doubt, _, _ := strings.Cut(say(roundUp(u, one.Units, p), p), " ")
		return number + " ±" + doubt + " " + unit
	})
}

// grain is the decimals a doubt earns, never finer than the usual grain of a fit.
func grain(u float64) quantity.Places {
	p := quantity.Earned(u)
	return quantity.Places{Inch: min(p.Inch, quantity.ByTenth.Inch), MM: min(p.MM, quantity.ByTenth.MM)}
}

func roundUp(u float64, s quantity.System, p quantity.Places) float64 {
	unit, places := 0.001, p.MM
	if s == quantity.Inch {
		unit, places = 0.0254, p.Inch
	}
	step := unit * math.Pow10(-places)
	return math.Ceil(u/step-1e-6) * step
}

// Free says a clearance: 0.002 in free, or 0.0015 in tight when it is under
// nought, with its doubt.
func (v Voice) Free(l, u float64) string {
	word := " free"
	if l < 0 {
		word = " tight"
	}
	return v.Measured(math.Abs(l), u, false) + word
}

// Limits says a low limit, a target and a high limit to the same place, the
// limits rounded inward.
func (v Voice) Limits(low, target, high float64) (l, t, h string) {
	parts := [3][]string{}
	for _, one := range v.systems() {
		a, b := one.Limits(low, high, quantity.ByTenth)
		_, decimals, _ := strings.Cut(strings.Fields(a)[0], ".")
		n := len(decimals)
		parts[0] = append(parts[0], a)
		parts[1] = append(parts[1], one.Size(target, quantity.Places{Inch: n, MM: n}))
		parts[2] = append(parts[2], b)
	}
	return both(parts[0]), both(parts[1]), both(parts[2])
}

func (v Voice) systems() []quantity.Speech {
	if v.Units != quantity.Both {
		return []quantity.Speech{v.Speech}
	}
	inch, mm := v.Speech, v.Speech
	inch.Units, mm.Units = quantity.Inch, quantity.Metric
	return []quantity.Speech{inch, mm}
}

func both(texts []string) string {
	if len(texts) == 2 {
		return texts[0] + " (" + texts[1] + ")"
	}
	return texts[0]
}

// Value says any number; one too large to count is without limit.
func (v Voice) Value(x float64, d quantity.Dim) string {
	if math.Abs(x) >= uncounted {
		x = math.Inf(int(math.Copysign(1, x)))
	}
	if d == quantity.TimeDim {
		return quantity.Span(x)
	}
	text := v.Say(x, d)
	if v.Money == "" { // no currency is stated: the number alone
		text = noCurrency.Replace(text)
	}
	return text
}

// noCurrency takes out the word that stands for a currency nobody stated.
var noCurrency = strings.NewReplacer(" money/", " per ", " money", "")

// Share says a score: a plain number up to 1 in per cent.
func (v Voice) Share(x float64, d quantity.Dim) string {
	if d == quantity.Number && math.Abs(x) <= 1 {
		return quantity.Figures(100*x) + " %"
	}
	return v.Value(x, d)
}

// Points says points out of 100.
func Points(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }
