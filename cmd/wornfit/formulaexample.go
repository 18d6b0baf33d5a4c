package main

import (
	"math"
	"strconv"
	"strings"

	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
)

// usualNumbers are ordinary values, SI, of arguments by their name, for examples
// only; usualOfKind those of any other of a kind. Common sizes of shop work.
var usualNumbers = map[string]float64{
	"bore": 0.030, "seat": 0.050, "outside": 0.080, "interference": 50e-6, "length": 0.040, "friction": 0.12,
	"poisson": 0.29, "modulus": 207e9, "yield": 300e6, "pressure": 20e6, "room": 293.15, "gap": 50e-6,
	"was": 0.050, "now": 0.048, "size": 0.025, "wear": 0.2e-3, "clearance": 50e-6, "grade": 7, "letter": 8, "u": 2e-6, "swing": 0.3, "width": 0.012, "shaft": 0.025, "housing": 0.100, "press": 50e-6,
	"module": 0.003, "teeth": 30, "angle": 20 * math.Pi / 180, "viscosity": 0.05, "film": 25,
}

var usualOfKind = map[quantity.Dim]float64{
	quantity.LengthDim: 0.025, quantity.StressDim: 100e6, quantity.ForceDim: 2000, quantity.TorqueDim: 100,
	quantity.TemperatureDim: 293.15, quantity.ChangeDim: 40, quantity.ExpansionDim: 11.5e-6, quantity.TimeDim: 2000 * 3600,
	quantity.RotationDim: 5, quantity.SpeedDim: 0.5, quantity.MassDim: 5, quantity.DensityDim: 7850, quantity.PowerDim: 2000,
	quantity.PerStressDim: 1e-11, quantity.PVDim: 1e6, quantity.Number: 1, quantity.HardnessHB: 200,
}

// usualValue is an ordinary value of an argument, within its range.
func usualValue(a kernel.Arg) float64 {
	v, ok := usualNumbers[a.Name]
	if !ok {
		v, ok = usualNumbers[a.Name[strings.LastIndex(a.Name, "_")+1:]]
	}
	if !ok || !a.Range.Has(v) {
		v, ok = usualOfKind[a.Dim]
	}
	if !ok || !a.Range.Has(v) {
		v = partWay(a, 0.5)
	}
	return v
}

// partWay is the place a part of the way through a range, by ratio where it can be.
func partWay(a kernel.Arg, part float64) float64 {
	lo, hi := a.Range.Lo, a.Range.Hi
	if lo > 0 {
		return lo * math.Pow(hi/lo, part)
	}
	return lo + part*(hi-lo)
}

// example is a call of a calculation that has an answer: usual values, moved
// further and further until the calculation takes them. Metals stand for the
// numbers they fill. "" when none was found.
func example(k kernel.Kernel, s quantity.Speech, m *metals) []string {
	const tries = 5000 // a kernel promises an answer at one point of twenty
	place := 0.0
	for try := range tries {
		far := min(float64(try)/1000, 1)
		var words []string
		filled := map[int]bool{}
		done := map[int]bool{}
		for _, side := range sideNames(sides(k)) {
			if first := sides(k)[side][0].arg; !done[first] && try%2 == 0 {
				done[first] = true
				words = append(words, side+"="+usualMetal(side))
				for _, f := range sides(k)[side] {
					filled[f.arg] = true
				}
			}
		}
		var numbers []string
		for i, a := range k.Args {
			if filled[i] {
				continue
			}
			place = math.Mod(place+math.Phi-1, 1)
			v := usualValue(a) + far*(partWay(a, place)-usualValue(a))
			if try/2%2 == 1 && usualValue(a) > 0 && partWay(a, place) > 0 {
				v = usualValue(a) * math.Pow(partWay(a, place)/usualValue(a), far)
			}
			numbers = append(numbers, render.Dashed(a.Name)+"="+compact(v, a, s))
		}
		words = append(numbers, words...)
		if puts, _, err := readArguments(k, unquoted(words), m); err == nil {
			if _, err := work(k, puts); err == nil {
				return words
			}
		}
	}
	return nil
}

// unquoted is how a shell hands words on.
func unquoted(words []string) []string {
	out := make([]string, len(words))
	for i, word := range words {
		out[i] = strings.ReplaceAll(word, `"`, "")
	}
	return out
}

// compact writes a value in two figures and its unit without a blank between, so
// that it needs no quotes, and within the argument's range.
func compact(v float64, a kernel.Arg, s quantity.Speech) string {
	if s.Units == quantity.Both {
		s.Units = quantity.Inch
	}
	v = min(max(v, a.Range.Lo), a.Range.Hi)
	t, err := render.ReadArg(render.SayArg(s, v, a), a)
	if err != nil {
		return render.SayArg(s, v, a)
	}
	n := t.Unit.From(v)
	for figures := 2; figures < 8; figures++ {
		text := rounded(n, figures)
		if back, err := strconv.ParseFloat(text, 64); err == nil && a.Range.Has(t.Unit.SI(back)) {
			return joined(text, t.Unit.Name)
		}
	}
	return joined(strconv.FormatFloat(n, 'f', -1, 64), t.Unit.Name)
}

func rounded(n float64, figures int) string {
	if n == 0 {
		return "0"
	}
	places := figures - 1 - int(math.Floor(math.Log10(math.Abs(n))))
	scale := math.Pow(10, float64(places))
	return strconv.FormatFloat(math.Round(n*scale)/scale, 'f', -1, 64)
}

// joined is a number with its unit typed as any keyboard can.
func joined(number, unit string) string {
	unit = strings.NewReplacer("²", "2", "³", "3", "°", "deg", " change", "", "N m", "Nm", "lbf in", "lbf-in", "lbf ft", "lbf-ft").Replace(unit)
	if strings.Contains(unit, "(") { // SI, read however it is joined
		unit = strings.NewReplacer(" ", "", "(", "", ")", "").Replace(unit)
	}
	if strings.Contains(unit, " ") {
		return `"` + number + " " + unit + `"`
	}
	return number + unit
}
