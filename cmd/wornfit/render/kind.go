package render

import (
	"math"
	"strconv"
	"strings"

	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
)

// Kind is the word of quantity.Kinds a number is typed and said in. Some kinds
// share their dimension with a plainer one; there the name tells.
func Kind(name string, d quantity.Dim) string {
	words := strings.Split(name, "_")
	last := words[len(words)-1]
	switch {
	case d == quantity.EnergyDim && last == "energy":
		return "energy"
	case d == quantity.SpecificWearDim && words[0] == "wear":
		return "specific-wear"
	case d == quantity.WearRateDim && strings.HasSuffix(name, "wear_rate"):
		return "wear-rate"
	}
	return d.String()
}

// ArgKind is Kind of an argument. An angle that goes to a whole turn at the most
// is in radians and typed with deg or rad; one that goes further is a plain
// number of degrees.
func ArgKind(a kernel.Arg) string {
	if a.Dim == quantity.Number && strings.HasSuffix(a.Name, "angle") && a.Range.Hi <= 2*math.Pi {
		return "angle"
	}
	return Kind(a.Name, a.Dim)
}

// Said is a value of a kind, a time in the unit people think of it in.
func (v Voice) Said(x float64, kind string) string {
	if kind == "time" {
		return quantity.Span(x)
	}
	return v.SayKind(x, kind)
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
	kind := ArgKind(a)
	text := s.SayKind(end, kind)
	if within(text, kind, a) {
		return text
	}
	for move := 1e-6; move < 0.1; move *= 2 {
		if said := s.SayKind(end+to*move*math.Abs(end), kind); within(said, kind, a) {
			return said
		}
	}
	if t, err := quantity.ParseKind(text, kind); err == nil {
		for figures := 1; figures < 17; figures++ {
			x, _ := strconv.ParseFloat(strconv.FormatFloat(t.Unit.From(end), 'g', figures, 64), 64)
			said := strings.TrimSpace(strconv.FormatFloat(x, 'f', -1, 64) + " " + t.Unit.Name)
			if within(said, kind, a) {
				return said
			}
		}
	}
	return text
}

func within(said, kind string, a kernel.Arg) bool {
	t, err := quantity.ParseKind(said, kind)
	return err == nil && a.Range.Has(t.Best)
}
