package quantity

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// 25.040 to 25.061 mm is .98583 to .98665 in; to the nearest .9858 and .9867
// are both outside. Rule: ANSI/IEEE 268, where the original limits may not be
// passed, as told in tec-ease tip 65.
func TestLimitsAreRoundedInward(t *testing.T) {
	inch, metric := Speech{Units: Inch}, Speech{Units: Metric}
	for _, c := range []struct {
		low, high         float64
		speech            Speech
		places            Places
		wantLow, wantHigh string
	}{
		{0.025040, 0.025061, inch, ByTenth, ".9859 in", ".9866 in"},
		{0.025040, 0.025061, metric, ByTenth, "25.040 mm", "25.061 mm"},
		{0.025040, 0.025061, metric, Places{3, 2}, "25.04 mm", "25.06 mm"},
		// 1.0003 and 1.0005 in are 25.40762 and 25.4127 mm
		{1.0003 * 0.0254, 1.0005 * 0.0254, metric, ByTenth, "25.408 mm", "25.412 mm"},
		{1.0003 * 0.0254, 1.0005 * 0.0254, inch, ByTenth, "1.0003 in", "1.0005 in"},
		{-25e-6, 25e-6, inch, ByTenth, "-.0009 in", ".0009 in"}, // .000984 in
		// one micrometre between, at .98425 in: 4 places leave no step between
		{0.025, 0.025001, inch, ByTenth, ".98426 in", ".98429 in"},
		{0.025, 0.025, inch, ByTenth, ".9843 in", ".9843 in"}, // no room: nearest
		{0.025061, 0.025040, inch, ByTenth, ".9867 in", ".9858 in"},
	} {
		low, high := c.speech.Limits(c.low, c.high, c.places)
		if low != c.wantLow || high != c.wantHigh {
			t.Errorf("%v to %v: %s to %s, want %s to %s", c.low, c.high, low, high, c.wantLow, c.wantHigh)
		}
	}
}

// A size that stands exactly on a step stays there, whatever the last bit of
// its float64 says; and no printed limit passes the true one by more than the
// noise allowed.
func TestInwardKeepsExactSizes(t *testing.T) {
	in, mm := must("in", LengthDim), must("mm", LengthDim)
	for tenths := 1; tenths < 200_000; tenths += 7 {
		want := float64(tenths) / 1e4
		for _, si := range []float64{want * 0.0254, math.Nextafter(want*0.0254, 0), math.Nextafter(want*0.0254, 9), in.SI(want)} {
			if got := in.From(InwardLow(si, in, 4)); math.Abs(got-want) > 1e-12 {
				t.Fatalf("low limit %v in became %v", want, got)
			}
			if got := in.From(InwardHigh(si, in, 4)); math.Abs(got-want) > 1e-12 {
				t.Fatalf("high limit %v in became %v", want, got)
			}
		}
	}
	r := rand.New(rand.NewPCG(1, 2))
	for range 20_000 {
		low := r.Float64() * 0.5
		high := low + r.Float64()*1e-4
		if got := InwardLow(low, mm, 3); got < low-1e-12 || got > low+1e-6+1e-12 {
			t.Fatalf("low limit %v became %v", low, got)
		}
		if got := InwardHigh(high, mm, 3); got > high+1e-12 || got < high-1e-6-1e-12 {
			t.Fatalf("high limit %v became %v", high, got)
		}
	}
}

// Drawings leave out the nought before an inch size, sentences keep it.
func TestSizesAsSpoken(t *testing.T) {
	inch, metric, both := Speech{Units: Inch}, Speech{Units: Metric}, Speech{Units: Both}
	for _, c := range []struct{ got, want string }{
		{inch.Size(0.0235331, ByTenth), ".9265 in"},
		{inch.Size(0.0254, ByTenth), "1.0000 in"},
		{metric.Size(0.02348, Places{4, 2}), "23.48 mm"},
		{metric.Size(0.0005, ByTenth), "0.500 mm"},
		{both.Size(0.0235331, ByTenth), ".9265 in (23.533 mm)"},
		{inch.Gap(38.1e-6, ByTenth), "0.0015 in"},
		{metric.Gap(38e-6, ByTenth), "0.038 mm"},
		{inch.Gap(-38.1e-6, ByTenth), "-0.0015 in"},
		{inch.Gap(-1e-9, ByTenth), "0.0000 in"},
		{inch.Size(1.00005*0.0254, ByTenth), "1.0001 in"}, // a tie goes away from nought
		{inch.Size(1.00015*0.0254, ByTenth), "1.0002 in"},
	} {
		if c.got != c.want {
			t.Errorf("said %q, want %q", c.got, c.want)
		}
	}
}

// A gauge earns the digit that is worth no more than its uncertainty.
func TestDigitsEarned(t *testing.T) {
	for _, c := range []struct {
		u    float64
		want Places
	}{
		{0.0001 * 0.0254, Places{4, 3}}, // a tenth micrometer
		{0.001 * 0.0254, Places{3, 2}},  // a thou caliper
		{0.01e-3, Places{4, 2}},
		{0.001e-3, Places{5, 3}},
		{0.02e-3, Places{4, 2}},
		{0, ByTenth},
		{math.NaN(), ByTenth},
	} {
		if got := Earned(c.u); got != c.want {
			t.Errorf("±%v m earns %v, want %v", c.u, got, c.want)
		}
	}
	for text, want := range map[string]Places{".9265 in": {4, 3}, "23.48 mm": {4, 2}, "1-3/16 in": ByTenth, "2 thou": {3, 2}} {
		if got, err := ParseAny(text); err != nil || got.Earned() != want {
			t.Errorf("%s earns %v, %v; want %v", text, got.Earned(), err, want)
		}
	}
}

func TestSaid(t *testing.T) {
	for _, c := range []struct {
		kind         string
		v            float64
		metric, inch string
	}{
		{"length", 0.0254, "25.4 mm", "1.0000 in"},
		{"length", 38.1e-6, "0.038 mm", "0.0015 in"},
		{"length", 1.6e-6, "0.0016 mm", "0.000063 in"},
		{"length", 0, "0 mm", "0.0000 in"},
		{"speed", 0, "0 m/s", "0 ft/min"}, // and not a wear rate
		{"force", 12345, "12.3 kN", "2775 lbf"},
		{"force", 100, "100 N", "22.5 lbf"},
		{"stress", 207e6, "207 MPa", "30020 psi"},
		{"stress", 1.0e11, "100 GPa", "14.5 Mpsi"},
		{"temperature", 449.81666666666666, "177 °C", "350 °F"},
		{"temperature", 293.15, "20 °C", "68 °F"},
		{"temperature-change", 30, "30 K", "54 °F change"},
		{"torque", 12, "12 N m", "8.85 lbf ft"},
		{"time", 9000, "2.5 h", "2.5 h"},
		{"time", 45, "45 s", "45 s"},
		{"time", 1.8e7, "5000 h", "5000 h"},
		{"rotation", 2, "120 rpm", "120 rpm"},
		{"money", 140, "140 EUR", "140 EUR"},
		{"money", 12.5, "12.50 EUR", "12.50 EUR"},
		{"rate", 0.01, "36 EUR/h", "36 EUR/h"},
		{"price-by-mass", 12.5, "12.50 EUR/kg", "5.67 EUR/lb"},
		{"angle", math.Pi / 4, "45 deg", "45 deg"},
		{"energy", 50, "50 J", "50 J"},
		{"number", 0.15, "0.15", "0.15"},
		{"number", 0, "0", "0"},
		{"hardness-hrc", 58, "58 HRC", "58 HRC"},
		{"expansion", 11.5e-6, "11.5 um/m/K", "6.39 uin/in/°F"},
		{"viscosity", 0.046, "46 mPa s", "46 mPa s"},
		{"kinematic-viscosity", 68e-6, "68 mm2/s", "68 mm2/s"},
		{"flow", 1e-5, "0.6 L/min", "36.6 in3/min"},
		{"heat-capacity", 4.4e6, "4.4 MJ/(m3 K)", "4.4 MJ/(m3 K)"},
		{"line-heat", 720e3, "720 J/mm", "18.3 kJ/in"},
		{"cooling", 1.5, "1.5 W/K", "1.5 W/K"},
		{"number", math.NaN(), "not known", "not known"},
		{"force", math.Inf(1), "without limit", "without limit"},
	} {
		if got := (Speech{Metric, "EUR"}).SayKind(c.v, c.kind); got != c.metric {
			t.Errorf("%s %v in metric: %q, want %q", c.kind, c.v, got, c.metric)
		}
		if got := (Speech{Inch, "EUR"}).SayKind(c.v, c.kind); got != c.inch {
			t.Errorf("%s %v in inch: %q, want %q", c.kind, c.v, got, c.inch)
		}
	}
	if got := (Speech{Units: Both}).Say(30, ChangeDim); got != "54 °F change (30 K)" {
		t.Errorf("both: %q", got)
	}
	if got := (Speech{Units: Both}).Say(2, RotationDim); got != "120 rpm" {
		t.Errorf("both, alike: %q", got)
	}
}

// What is said is never a power of ten and reads back to three digits, for
// every kind over twelve decades about its usual unit.
func TestSaidReadsBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for kind, dim := range Kinds {
		unit := 1.0
		if one, err := ParseKind("1 "+examples[kind][0], kind); err == nil {
			unit = one.Unit.Factor()
		}
		for range 500 {
			v := unit * math.Pow(10, r.Float64()*12-6)
			if dim == TemperatureDim {
				v = r.Float64() * 1500
			}
			for _, sys := range []System{Metric, Inch} {
				said := Speech{sys, "EUR"}.SayKind(v, kind)
				got, err := ParseKind(said, kind)
				if err != nil || strings.ContainsAny(said, "eE") && strings.ContainsAny(strings.Fields(said)[0], "eE") {
					t.Fatalf("%s %v is said %q: %v", kind, v, said, err)
				}
				grain := got.Unit.Factor() * grainOf(dim) // a nought where the unit is far too big
				allowed := 0.0051*v + grain
				if dim == LengthDim { // half of the last place, two digits at the least
					step := map[string]float64{"in": 1e-4, "mm": 1e-3, "m": 1e-3}[got.Unit.Name]
					allowed = min(0.051*v, 0.51*step*got.Unit.Factor()) + grain + 1e-12*v
				}
				if math.Abs(got.Best-v) > allowed {
					t.Fatalf("%s %v is said %q, which is %v", kind, v, said, got.Best)
				}
			}
		}
	}
}

// grainOf is what may be lost besides the third digit: money is said to the
// hundredth, a temperature to half a degree, nothing under a billionth.
func grainOf(d Dim) float64 {
	switch d {
	case MoneyDim, RateDim, PriceByMassDim, TemperatureDim:
		return 0.51
	}
	return 1e-9
}

func TestWhoSpeaksWhat(t *testing.T) {
	for text, want := range map[string]System{"1-3/16 in": Inch, "2 thou": Inch, "23 mm": Metric, "15 um": Metric} {
		got, err := ParseAny(text)
		if err != nil {
			t.Fatal(err)
		}
		if sys, ok := got.Speaks(); !ok || sys != want {
			t.Errorf("%s speaks %v, %v", text, sys, ok)
		}
	}
	if s, ok := SystemNamed("both"); !ok || s != Both {
		t.Errorf("both is %v, %v", s, ok)
	}
	if _, ok := SystemNamed("cubits"); ok {
		t.Error("cubits are a system")
	}
}
