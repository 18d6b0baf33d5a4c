package render

import (
	"math"
	"strconv"
	"strings"

	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
)

// ResultKind is the word of quantity.Kinds a result is said in. Some kinds share
// their dimension with a plainer one; there the name tells.
func ResultKind(k kernel.Kernel) string {
	if k.Result == quantity.Number && isAngle(k.Name, k.Says) {
		return "angle"
	}
	return kind(k.Name, k.Result)
}

// ArgKind is the word an argument is typed in. An angle that goes to a whole turn
// at the most is in radians and typed with deg or rad; one that goes further is a
// plain number of degrees.
func ArgKind(a kernel.Arg) string {
	if a.Dim == quantity.Number && isAngle(a.Name, a.Says) && a.Range.Hi <= 2*math.Pi {
		return "angle"
	}
	return kind(a.Name, a.Dim)
}

func isAngle(name, says string) bool {
	return strings.HasSuffix(name, "angle") || strings.HasPrefix(strings.ToLower(says), "angle ")
}

func kind(name string, d quantity.Dim) string {
	words := strings.Split(name, "_")
	last := words[len(words)-1]
	switch {
	case d == quantity.EnergyDim && last == "energy":
		return "energy"
	case d == quantity.LineHeatDim && strings.HasSuffix(name, "line_heat"):
		return "line-heat"
	case d == quantity.SpecificWearDim && words[0] == "wear":
		return "specific-wear"
	case d == quantity.WearRateDim && strings.HasSuffix(name, "wear_rate"):
		return "wear-rate"
	}
	return d.String()
}

// kindWord is a kind in print; one without a name stands beside its unit anyhow.
func kindWord(kind string) string {
	if _, known := quantity.Kinds[kind]; !known {
		return "other"
	}
	return kind
}

// Said is a value of a kind; running time stays in hours, as it was typed. A kind
// that package quantity has no words for is said in SI.
func (v Voice) Said(x float64, kind string, d quantity.Dim) string {
	return say(v.Speech, x, kind, d)
}

// SaidArg is Said of an argument.
func (v Voice) SaidArg(x float64, a kernel.Arg) string { return v.Said(x, ArgKind(a), a.Dim) }

func say(s quantity.Speech, x float64, kind string, d quantity.Dim) string {
	if _, known := quantity.Kinds[kind]; !known {
		return s.Say(x, quantity.Number) + " " + kernel.SIUnit(d)
	}
	return s.SayKind(x, kind)
}

// SayArg says a value of an argument so that it can be typed again.
func SayArg(s quantity.Speech, x float64, a kernel.Arg) string { return say(s, x, ArgKind(a), a.Dim) }

// ReadArg reads a typed value of an argument: one number with its unit. Of a kind
// that package quantity has no units for it is the SI unit, however it is joined.
func ReadArg(text string, a kernel.Arg) (quantity.Typed, error) {
	if strings.Contains(a.Says, "per cent") { // 0.6% of carbon is 0.6 there, not 0.006
		text = strings.TrimSuffix(strings.TrimSpace(text), "%")
	}
	if _, known := quantity.Kinds[ArgKind(a)]; known {
		t, err := quantity.ParseKind(text, ArgKind(a))
		if err == nil {
			err = t.Is(quantity.Plain)
		}
		return t, err
	}
	unit := kernel.SIUnit(a.Dim)
	text = strings.TrimSpace(text)
	at := strings.LastIndexAny(text, "0123456789.")
	for at >= 0 && unparted(text[at+1:]) != unparted(unit) { // a unit may hold figures, as m2 does
		at = strings.LastIndexAny(text[:at], "0123456789.")
	}
	if at < 0 {
		return quantity.Typed{}, &quantity.Refusal{Text: text, Says: strconv.Quote(text) + " is no number of " + unit, Remedy: "write the number and its unit, such as 50 " + unit}
	}
	t, err := quantity.Parse(text[:at+1], quantity.Number)
	if err == nil {
		err = t.Is(quantity.Plain)
	}
	t.Unit.Name = unit
	return t, err
}

// unparted is a unit without what only parts it.
func unparted(unit string) string {
	return strings.NewReplacer(" ", "", "(", "", ")", "", "·", "", "*", "", "^", "", "²", "2", "³", "3").Replace(unit)
}

// Range is an argument's range as it is said: both ends, read back, lie within it.
func (v Voice) Range(a kernel.Arg) (low, high string) {
	var lows, highs []string
	for _, s := range v.systems() {
		lows = append(lows, inward(s, a, a.Range.Lo, 1))
		highs = append(highs, inward(s, a, a.Range.Hi, -1))
	}
	return once(lows), once(highs)
}

func once(texts []string) string {
	if len(texts) == 2 && texts[0] == texts[1] {
		return texts[0]
	}
	return both(texts)
}

// inward says an end of a range, moved inward by as little as will do until
// what is said lies within; what is too small to be said so is written out.
func inward(s quantity.Speech, a kernel.Arg, end, to float64) string {
	text := SayArg(s, end, a)
	if within(text, a) {
		return text
	}
	for move := 1e-6; move < 0.1; move *= 2 {
		if said := SayArg(s, end+to*move*math.Abs(end), a); within(said, a) {
			return said
		}
	}
	if t, err := ReadArg(text, a); err == nil {
		for figures := 1; figures < 17; figures++ {
			x, _ := strconv.ParseFloat(strconv.FormatFloat(t.Unit.From(end), 'g', figures, 64), 64)
			said := strings.TrimSpace(strconv.FormatFloat(x, 'f', -1, 64) + " " + t.Unit.Name)
			if within(said, a) {
				return said
			}
		}
	}
	return text
}

func within(said string, a kernel.Arg) bool {
	t, err := ReadArg(said, a)
	return err == nil && a.Range.Has(t.Best)
}
