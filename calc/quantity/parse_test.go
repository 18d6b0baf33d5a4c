package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// The sizes a fitter writes, and what they are worked out by hand from the
// exact inch of 25.4 mm and the exact pound-force of 4.4482216152605 N. SI.
var accepted = []struct {
	text            string
	low, best, high float64
	form            Form
	places          int
}{
	{"1-3/16 in", 0.0301625, 0.0301625, 0.0301625, Plain, -1}, // 19/16 x 25.4
	{`1 3/16"`, 0.0301625, 0.0301625, 0.0301625, Plain, -1},
	{`1-3/16”`, 0.0301625, 0.0301625, 0.0301625, Plain, -1},
	{"1 3/16″", 0.0301625, 0.0301625, 0.0301625, Plain, -1},
	{"1⅜ in", 0.034925, 0.034925, 0.034925, Plain, -1},
	{"1-⅜ in", 0.034925, 0.034925, 0.034925, Plain, -1},
	{"1 3⁄8 in", 0.034925, 0.034925, 0.034925, Plain, -1},
	{"⅞ in", 0.022225, 0.022225, 0.022225, Plain, -1},
	{"7/8 in", 0.022225, 0.022225, 0.022225, Plain, -1},
	{"19/16 in", 0.0301625, 0.0301625, 0.0301625, Plain, -1},
	{".9265 in", 0.0235331, 0.0235331, 0.0235331, Plain, 4},
	{"1.2500 inch", 0.03175, 0.03175, 0.03175, Plain, 4},
	{"23.48 mm", 0.02348, 0.02348, 0.02348, Plain, 2},
	{"23.48mm", 0.02348, 0.02348, 0.02348, Plain, 2},
	{"25,4 mm", 0.0254, 0.0254, 0.0254, Plain, 1},
	{"0,125 in", 0.003175, 0.003175, 0.003175, Plain, 3},
	{"⌀25.4 mm", 0.0254, 0.0254, 0.0254, Plain, 1},
	{"Ø 25.4 mm", 0.0254, 0.0254, 0.0254, Plain, 1},
	{"25.4\u00a0mm", 0.0254, 0.0254, 0.0254, Plain, 1},
	{"2 thou", 50.8e-6, 50.8e-6, 50.8e-6, Plain, 0},
	{"3 tenths", 7.62e-6, 7.62e-6, 7.62e-6, Plain, 0},
	{"15 µm", 15e-6, 15e-6, 15e-6, Plain, 0}, // U+00B5
	{"15 μm", 15e-6, 15e-6, 15e-6, Plain, 0}, // U+03BC
	{"15 um", 15e-6, 15e-6, 15e-6, Plain, 0},
	{"-0.02 mm", -20e-6, -20e-6, -20e-6, Plain, 2},
	{"±0.05 mm", -50e-6, 0, 50e-6, Departure, 2},
	{"+/-.0005 in", -12.7e-6, 0, 12.7e-6, Departure, 4},
	{"+0.02/-0.01 mm", -10e-6, 5e-6, 20e-6, Departure, 2},
	{"25 ±0.05 mm", 0.02495, 0.025, 0.02505, PlusMinus, 2},
	{"1.250 in ±2 thou", 0.0316992, 0.03175, 0.0318008, PlusMinus, 3},
	{"1.000 +.0005/-.0000 in", 0.0254, 0.02540635, 0.0254127, Deviations, 4},
	{"1.000 in +.0005/-.0000", 0.0254, 0.02540635, 0.0254127, Deviations, 4},
	{"1.000 +.0005 -.0000 in", 0.0254, 0.02540635, 0.0254127, Deviations, 4},
	{"1.2500 in +3/-2 tenths", 0.03174492, 0.03175127, 0.03175762, Deviations, 4},
	{"1-1/2 +.001/-.000 in", 0.0381, 0.0381127, 0.0381254, Deviations, 3},
	{"30 +0.035/+0.022 mm", 0.030022, 0.0300285, 0.030035, Deviations, 3},
	{"25 -0.020/-0.041 mm", 0.024959, 0.0249695, 0.02498, Deviations, 3},
	{"-5 +0.02/-0.01 mm", -0.00501, -0.004995, -0.00498, Deviations, 2},
	{"25 0/-0.013 mm", 0.024987, 0.0249935, 0.025, Deviations, 3},
	{"25 +0.013/0 mm", 0.025, 0.0250065, 0.025013, Deviations, 3},
	{"24.98-25.00 mm", 0.02498, 0.02499, 0.025, Range, 2},
	{"24.98 – 25.00 mm", 0.02498, 0.02499, 0.025, Range, 2},
	{"24.98 mm - 25.00 mm", 0.02498, 0.02499, 0.025, Range, 2},
	{"0.8 mm to 1.5 mm", 0.0008, 0.00115, 0.0015, Range, 1},
	{"0.8 to 1.5 mm", 0.0008, 0.00115, 0.0015, Range, 1},
	{"3 mm to 2 m", 0.003, 1.0015, 2, Range, 0},
	{"1-3/16 to 1-1/4 in", 0.0301625, 0.03095625, 0.03175, Range, -1},
	{"25 H7", 0.025, 0.025, 0.025, Class, 0},
	{"25H7/p6", 0.025, 0.025, 0.025, Class, 0},
	{"1.250 in RC4", 0.03175, 0.03175, 0.03175, Class, 3},
	{"350 lbf", 1556.877565341175, 1556.877565341175, 1556.877565341175, Plain, 0},
	{"12 short-ton-force", 106757.318766252, 106757.318766252, 106757.318766252, Plain, 0},
	{"600 °F", 588.7055555555555, 588.7055555555555, 588.7055555555555, Plain, 0}, // (600 + 459.67) x 5/9
	{"600 degF", 588.7055555555555, 588.7055555555555, 588.7055555555555, Plain, 0},
	{"-20 °C", 253.15, 253.15, 253.15, Plain, 0},
	{"−20 to 40 °C", 253.15, 283.15, 313.15, Range, 0},
	{"20 ±2 °C", 291.15, 293.15, 295.15, PlusMinus, 0},
	{"20 C", 293.15, 293.15, 293.15, Plain, 0},
	{"20 HRC", 20, 20, 20, Plain, 0},
	{"180 HB", 180, 180, 180, Plain, 0},
	{"140-190 HB", 140, 165, 190, Range, 0},
	{"120 rpm", 2, 2, 2, Plain, 0},
	{"120 1/min", 2, 2, 2, Plain, 0},
	{"30 strokes/min", 0.5, 0.5, 0.5, Plain, 0},
	{"3 N·m", 3, 3, 3, Plain, 0},
	{"207 N/mm²", 207e6, 207e6, 207e6, Plain, 0},
	{"11.5 um/m/K", 11.5e-6, 11.5e-6, 11.5e-6, Plain, 1},
	{"10 uin/in/°F", 18e-6, 18e-6, 18e-6, Plain, 0},
	{"140 EUR", 140, 140, 140, Plain, 0},
	{"36 EUR/h", 0.01, 0.01, 0.01, Plain, 0},
	{"12 EUR/kg", 12, 12, 12, Plain, 0},
	{"5 days", 432000, 432000, 432000, Plain, 0},
}

func TestWhatAFitterWrites(t *testing.T) {
	for _, c := range accepted {
		got, err := ParseAny(c.text)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if got.Low != c.low || got.Best != c.best || got.High != c.high {
			t.Errorf("%q: %v %v %v, want %v %v %v", c.text, got.Low, got.Best, got.High, c.low, c.best, c.high)
		}
		if got.Form != c.form || got.Places != c.places {
			t.Errorf("%q: %v with %d places, want %v with %d", c.text, got.Form, got.Places, c.form, c.places)
		}
		again, err := ParseAny(got.String())
		if err != nil || again.Low != got.Low || again.Best != got.Best || again.High != got.High || again.Form != got.Form || again.Class != got.Class {
			t.Errorf("%q written again as %q reads %v to %v, %v", c.text, got, again.Low, again.High, err)
		}
	}
}

// Each refusal must name what is wrong and what to write; the words are those
// a fitter needs to see, whatever the rest of the sentence.
var refused = []struct {
	text         string
	want         Dim
	says, remedy string
}{
	{"25.4", LengthDim, "no unit", "25.4 mm or 25.4 in"},
	{"24.98-25.00", LengthDim, "no unit", "24.98-25.00 mm"},
	{"350", ForceDim, "no unit", "350 N or 350 lbf"},
	{"5 mil", LengthDim, "millimetre", "thou or mm"},
	{"12 ton", ForceDim, "metric ton", "short-ton-force"},
	{"2 t", MassDim, "tonne", "kg"},
	{"300 lb", ForceDim, "mass", "lbf"},
	{"300 kg", ForceDim, "mass", "kgf"},
	{"30 ft lb", TorqueDim, "mass", "lbf ft"},
	{"1,234 mm", LengthDim, "thousands or decimals", "1.234 for decimals or 1234 for thousands"},
	{"1,234.5 mm", LengthDim, "more than one point or comma", "1234.5"},
	{"1.234.5 mm", LengthDim, "more than one point", "1234.5"},
	{"1-3 in", LengthDim, "fraction or limits", "1 to 3 for limits"},
	{"1-3", LengthDim, "fraction or limits", "1 to 3 for limits"},
	{"1/2-3/4 in", LengthDim, "fraction or limits", "1/2 to 3/4"},
	{"1e3 mm", LengthDim, "power of ten", "1000 mm"},
	{"NaN mm", LengthDim, "no number", "25.4 mm"},
	{"inf mm", LengthDim, "no number", "25.4 mm"},
	{"unknown", LengthDim, "no number", "leave the line out"},
	{"1/0 in", LengthDim, "divides by nought", "1/16"},
	{"1-17/16 in", LengthDim, "not smaller than one", "1-3/16"},
	{"010 mm", LengthDim, "nought too many", "write 10"},
	{"1-03/16 in", LengthDim, "nought", "3/16"},
	{"1_000 mm", LengthDim, "underscore", "1000"},
	{"1 000 mm", LengthDim, "second number", "without spaces"},
	{"0.8 mm to 1.5 N", LengthDim, "force", "mm or in"},
	{"0.8 mm to 1.5", LengthDim, "first number alone", "after the last number"},
	{"1.5 to 0.8 mm", LengthDim, "low limit above", "low one first"},
	{"25.02-25.00 mm", LengthDim, "low limit above", "low one first"},
	{"25 -0.041/-0.020 mm", LengthDim, "low limit above", "-0.020/-0.041"},
	{"25 +0.02 mm", LengthDim, "one deviation", "+0.02/-0 mm"},
	{"25 -0.02 mm", LengthDim, "low limit above", "+0/-0.02"},
	{"1.2500 ±3 tenths", LengthDim, "deviation alone", "1.2500 in ±3 tenths"},
	{"25.0000000000001 mm", LengthDim, "15 digits", "at most 12"},
	{"1-3/16384 in", LengthDim, "more than 4 digits", "decimal"},
	{"25 mm.", LengthDim, "not known", "mm or in"},
	{"25 inchs", LengthDim, "not known", "write inch"},
	{"25 mm foo", LengthDim, "not known", `without "foo"`},
	{"5 ft 3 in", LengthDim, "second number", "inches alone"},
	{"5'", LengthDim, "feet or minutes", "ft, in or deg"},
	{"5 N", LengthDim, "force, length is wanted", "mm or in"},
	{"5 mm", TemperatureDim, "length, temperature is wanted", "°C or °F"},
	{"25 H7", ForceDim, "class", "N or lbf"},
	{"25 Q7", LengthDim, "not known", "mm or in"},
	{"20 HRB", HardnessHRC, "scale", "HRC"},
	{"20 HRC", HardnessHB, "hardness-hrc, hardness-hb is wanted", "HB"},
	{"HRC 20", HardnessHRC, "no number", "number first"},
	{"120 RPM", RotationDim, "not known", "rpm"},
	{"207 MPA", StressDim, "not known", "MPa"},
	{"54 °F change", TemperatureDim, "temperature-change, temperature is wanted", "°C or °F"},
	{"±2 °C", TemperatureDim, "is a change", "20 ±2 °C"},
	{"-300 °C", TemperatureDim, "absolute zero", "-273.15"},
	{"140 €", MoneyDim, "not read", "EUR"},
	{"140 $", MoneyDim, "several currencies", "USD"},
	{"100 EUR to 140 USD", MoneyDim, "mixes EUR with USD", "one currency"},
	{"140", MoneyDim, "no unit", "140 EUR"},
	{"2 months", TimeDim, "no fixed length", "weeks"},
	{"⌀5 N", ForceDim, "diameter mark", "length"},
	{"25. mm", LengthDim, "ends a number with a point", "25.0"},
	{"", LengthDim, "nothing", "25.4 mm"},
	{"25 to", LengthDim, "ends where a number", "25.4 mm"},
	{"25\nmm", LengthDim, "cannot be seen", "one line"},
	{"25\u200bmm", LengthDim, "cannot be seen", "one line"},
	{"\xff5 mm", LengthDim, "not readable", "plain letters"},
	{strings.Repeat("9", 70) + " mm", LengthDim, "longer than 64", "unit only"},
	{"٢٥ mm", LengthDim, "no number", "number first"}, // digits that are not 0 to 9
}

func TestWhatIsRefused(t *testing.T) {
	for _, c := range refused {
		got, err := Parse(c.text, c.want)
		if err == nil {
			t.Errorf("%q was read as %v", c.text, got)
			continue
		}
		var r *Refusal
		if !errors.As(err, &r) || !strings.Contains(r.Says, c.says) || !strings.Contains(r.Remedy, c.remedy) {
			t.Errorf("%q: %v\n\twant it to tell %q and advise %q", c.text, err, c.says, c.remedy)
		}
	}
}

// The same words mean a temperature or a change by where they stand.
func TestPlaceDecidesDegrees(t *testing.T) {
	for _, c := range []struct {
		text string
		want Dim
		si   float64
	}{
		{"54 °F", ChangeDim, 30},
		{"54 °F change", ChangeDim, 30},
		{"54 degF-change", ChangeDim, 30},
		{"30 K", ChangeDim, 30},
		{"30 °C", ChangeDim, 30},
		{"54 °F", TemperatureDim, 285.3722222222222},
		{"300 K", TemperatureDim, 300},
	} {
		got, err := Parse(c.text, c.want)
		if err != nil || got.Best != c.si {
			t.Errorf("%q as a %v: %v, %v; want %v", c.text, c.want, got.Best, err, c.si)
		}
	}
	if got, err := ParseAny("30 K"); err != nil || got.Dim != ChangeDim {
		t.Errorf("30 K alone is a %v, %v; want a change", got.Dim, err)
	}
}

// 5 m3 is a shaft of class m3 where a length is wanted, else a volume.
func TestClassOrVolume(t *testing.T) {
	if got, err := Parse("5 m3", LengthDim); err != nil || got.Class != "m3" || !got.Assumed || got.Best != 0.005 {
		t.Errorf("as a length: %v %q, %v", got.Best, got.Class, err)
	}
	if got, err := ParseAny("5 m3"); err != nil || got.Dim != VolumeDim {
		t.Errorf("alone: %v, %v", got.Dim, err)
	}
}

// A readings block states its unit once; departures from a set size may be in
// tenths.
func TestBlockThatStatedItsUnit(t *testing.T) {
	in, err := UnitNamed("in", LengthDim)
	if err != nil {
		t.Fatal(err)
	}
	tenths, err := UnitNamed("tenths", LengthDim)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		text    string
		unit    Unit
		best    float64
		assumed bool
	}{
		{".9265", in, 0.0235331, true},
		{"1-3/16", in, 0.0301625, true},
		{"1-3/16 in", in, 0.0301625, false},
		{"23.48 mm", in, 0.02348, false},
		{"-3", tenths, -7.62e-6, true},
		{"+2.5", tenths, 6.35e-6, true},
		{"0", tenths, 0, true},
	} {
		got, err := ParseIn(c.text, c.unit)
		if err != nil || got.Best != c.best || got.Assumed != c.assumed {
			t.Errorf("%q in %s: %v assumed %v, %v; want %v", c.text, c.unit.Name, got.Best, got.Assumed, err, c.best)
		}
	}
	for text, says := range map[string]string{"5 N": "force", "010": "nought", "1-3": "fraction or limits", "1,234": "thousands"} {
		if _, err := ParseIn(text, in); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q in a block of inches: %v, want %q told", text, err, says)
		}
	}
}

// Angle and number, torque and energy share their units of SI; the word of the
// kind tells them apart.
func TestKindsThatShareADim(t *testing.T) {
	for _, c := range []struct {
		text, kind string
		want       float64 // NaN: refused
	}{
		{"180 deg", "angle", math.Pi},
		{"90°", "angle", math.Pi / 2},
		{"45", "angle", math.NaN()},
		{"45 deg", "number", math.NaN()},
		{"0.15", "number", 0.15},
		{"15 %", "number", 0.15},
		{"2/3", "number", 2.0 / 3},
		{"5 J", "torque", math.NaN()},
		{"5 J", "energy", 5},
		{"5 N m", "torque", 5},
		{"0.3 m/s", "speed", 0.3},
		{"3.6 um/h", "wear-rate", 1e-9},
		{"5 mm", "weight", math.NaN()},
	} {
		got, err := ParseKind(c.text, c.kind)
		if math.IsNaN(c.want) != (err != nil) || err == nil && got.Best != c.want {
			t.Errorf("%q as %s: %v, %v; want %v", c.text, c.kind, got.Best, err, c.want)
		}
	}
}

func TestFormWanted(t *testing.T) {
	got, err := Parse("±0.05 mm", LengthDim)
	if err != nil {
		t.Fatal(err)
	}
	if err := got.Is(Departure, Plain); err != nil {
		t.Error(err)
	}
	err = got.Is(Plain, Range)
	if err == nil || !strings.Contains(err.Error(), "departure") || !strings.Contains(err.Error(), "one number or a range") {
		t.Errorf("a departure where a size is wanted: %v", err)
	}
}
