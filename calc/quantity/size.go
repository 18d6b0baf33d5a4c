package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Places is how many decimals a size is printed with in each system.
type Places struct{ Inch, MM int }

// ByTenth is the usual grain of a fit: 0.0001 in, 0.001 mm (common practice, no
// source).
var ByTenth = Places{Inch: 4, MM: 3}

// Earned is the decimals a gauge earns: the last digit is worth no more than
// its uncertainty u (m), in each system. u not above 0 is not known: ByTenth.
func Earned(u float64) Places {
	if !(u > 0) {
		return ByTenth
	}
	places := func(unit float64) int {
		return min(max(int(math.Ceil(-math.Log10(u/unit)-1e-9)), 0), 6)
	}
	return Places{Inch: places(0.0254), MM: places(0.001)}
}

// Earned is the decimals that say what was typed without loss of its digits:
// the last digit is worth no more than the last one typed. A fraction, which
// states no grain, is said ByTenth.
func (t Typed) Earned() Places {
	if t.Places < 0 || t.Dim != LengthDim {
		return ByTenth
	}
	return Earned(t.Unit.Factor() * math.Pow10(-t.Places))
}

// Speaks is the system whose unit was typed; ok only for lengths.
func (t Typed) Speaks() (sys System, ok bool) {
	if t.Unit.row != nil && t.Unit.row.inches {
		return Inch, t.Dim == LengthDim
	}
	return Metric, t.Dim == LengthDim
}

// Size prints a diameter or other dimension (m) as drawings do: .9859 in, no
// nought before the point; 25.042 mm.
func (s Speech) Size(l float64, p Places) string {
	return s.both(func(sys System) string { return sizeText(sys, l, p, nearestStep) + " " + sys.small() })
}

// Gap prints a clearance, a wear, a wall (m) as sentences do: 0.0015 in,
// 0.038 mm.
func (s Speech) Gap(l float64, p Places) string {
	return s.both(func(sys System) string {
		n := sys.places(p)
		return fixed(snap(sys.lengthUnit().From(l), n, nearestStep), n) + " " + sys.small()
	})
}

// Limits prints a low and a high limit (m), each rounded inward: the low one
// up, the high one down, so that no printed size breaks the limits it stands
// for. Source: ANSI/IEEE 268, where the original limits may not be passed, as
// told in tec-ease tip 65. Limits closer than a step get up to three places
// more; limits that still leave no step between them, or cross, are printed to
// the nearest. ISO 370:1975 (withdrawn) would let them be passed by 2 %.
func (s Speech) Limits(low, high float64, p Places) (lowText, highText string) {
	lowText = s.both(func(sys System) string {
		n, how := sys.inward(low, high, p)
		return sizeText(sys, low, n, how[0]) + " " + sys.small()
	})
	highText = s.both(func(sys System) string {
		n, how := sys.inward(low, high, p)
		return sizeText(sys, high, n, how[1]) + " " + sys.small()
	})
	return lowText, highText
}

// inward finds the places at which both limits can be rounded inward.
func (s System) inward(low, high float64, p Places) (Places, [2]rounding) {
	u := s.lengthUnit()
	for more := 0; more <= 3; more++ {
		n := s.places(p) + more
		if snap(u.From(low), n, upStep) <= snap(u.From(high), n, downStep) {
			return Places{n, n}, [2]rounding{upStep, downStep}
		}
	}
	return p, [2]rounding{nearestStep, nearestStep}
}

// InwardLow is a lower limit (SI) rounded up to places decimals of a unit, in SI.
func InwardLow(limit float64, u Unit, places int) float64 {
	return u.SI(snap(u.From(limit), places, upStep))
}

// InwardHigh is an upper limit (SI) rounded down to places decimals of a unit,
// in SI.
func InwardHigh(limit float64, u Unit, places int) float64 {
	return u.SI(snap(u.From(limit), places, downStep))
}

func (s System) small() string {
	if s == Inch {
		return "in"
	}
	return "mm"
}

func (s System) lengthUnit() Unit { return must(s.small(), LengthDim) }

func (s System) places(p Places) int {
	if s == Inch {
		return p.Inch
	}
	return p.MM
}

func sizeText(sys System, l float64, p Places, how rounding) string {
	n := sys.places(p)
	text := fixed(snap(sys.lengthUnit().From(l), n, how), n)
	if sys == Inch && n > 0 {
		sign, digits := "", text
		if strings.HasPrefix(text, "-") {
			sign, digits = "-", text[1:]
		}
		if rest, ok := strings.CutPrefix(digits, "0."); ok {
			return sign + "." + rest
		}
	}
	return text
}

// rounding picks a whole number of steps.
type rounding uint8

const (
	nearestStep rounding = iota // half away from zero
	upStep
	downStep
)

// noise is how near, in steps, a value must lie to a step or a half step to
// count as being on it. A float64 length in metres told in inches or
// millimetres is off by some 1e-16 of itself, up to 1e-9 of a step at the
// places in use; so a limit of exactly .9859 in stays .9859 and is not moved a
// whole step, and a printed limit passes the true one by at most a millionth
// of its last digit. Worked out from the 53 bits of a float64.
const noise = 1e-6

// snap is x on the grid of 10^-places.
func snap(x float64, places int, how rounding) float64 {
	scale := math.Pow10(places)
	y := x * scale
	if math.IsNaN(y) || math.Abs(y) >= 1<<53 {
		return x
	}
	n := math.Round(y)
	if math.Abs(y-n) > noise {
		switch how {
		case upStep:
			n = math.Ceil(y)
		case downStep:
			n = math.Floor(y)
		default:
			n = math.Round(y + math.Copysign(noise, y))
		}
	}
	return n / scale
}

// fixed writes x with exactly these decimals, without the sign of nothing.
func fixed(x float64, places int) string {
	text := strconv.FormatFloat(x, 'f', max(places, 0), 64)
	if strings.HasPrefix(text, "-") && strings.Trim(text, "-0.") == "" {
		return text[1:]
	}
	return text
}
