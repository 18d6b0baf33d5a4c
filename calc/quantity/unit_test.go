package quantity

import (
	"math"
	"strings"
	"testing"
)

// Factors as published, to the digits published. Forces: a table of unit
// conversions by a textbook's units package (tn3wman/qnty, data/out_tables/
// force.md, read). The others: NIST SP 811 (2008), appendix B.8, from memory.
func TestFactorsArePublished(t *testing.T) {
	for _, c := range []struct {
		unit string
		dim  Dim
		si   float64
		tol  float64 // half of the last digit published
	}{
		{"lbf", ForceDim, 4.4482216, 5e-8},
		{"kgf", ForceDim, 9.80665, 0},
		{"short-ton-force", ForceDim, 8896.44, 5e-3},
		{"long-ton-force", ForceDim, 9964.016, 5e-4},
		{"tonne-force", ForceDim, 9806.65, 0},
		{"lbf ft", TorqueDim, 1.355818, 5e-7},
		{"lbf in", TorqueDim, 0.1129848, 5e-8},
		{"psi", StressDim, 6894.757, 5e-4},
		{"ksi", StressDim, 6894757, 0.5},
		{"hp", PowerDim, 745.6999, 5e-5},
		{"lb", MassDim, 0.45359237, 0},
		{"lb/in3", DensityDim, 27679.90, 5e-3},
		{"ft/min", SpeedDim, 0.00508, 0},
		{"deg", Number, 0.01745329, 5e-9},
		{"in", LengthDim, 0.0254, 0},
		{"thou", LengthDim, 25.4e-6, 0},
		{"tenths", LengthDim, 2.54e-6, 0},
	} {
		u, err := UnitNamed(c.unit, c.dim)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := u.Factor(); math.Abs(got-c.si) > c.tol*(1+1e-9) {
			t.Errorf("%s is %v, published %v", c.unit, got, c.si)
		}
	}
}

// Fixed points of the two scales, by definition: ice at 32 °F, steam at 212 °F,
// alike at -40; a rise of 180 °F is one of 100 K.
func TestTwoTemperatureScales(t *testing.T) {
	f, c := must("°F", TemperatureDim), must("°C", TemperatureDim)
	for fahr, cels := range map[float64]float64{32: 0, 212: 100, -40: -40} {
		if f.SI(fahr) != c.SI(cels) {
			t.Errorf("%v °F is %v K, %v °C is %v K", fahr, f.SI(fahr), cels, c.SI(cels))
		}
		if got := c.From(f.SI(fahr)); math.Abs(got-cels) > 1e-12 {
			t.Errorf("%v °F comes back as %v °C", fahr, got)
		}
	}
	if rise := must("°F change", ChangeDim); rise.SI(180) != 100 {
		t.Errorf("a rise of 180 °F is %v K", rise.SI(180))
	}
}

// A wrong Dim or factor in a row shows here: every spelling finds a row, its
// own name reads back, one of it in SI comes back as one.
func TestEveryUnitReadsBack(t *testing.T) {
	for i := range units {
		r := &units[i]
		for _, s := range append([]string{r.name}, r.spelled...) {
			got, err := Parse("1 "+s, r.dim)
			if err != nil {
				t.Errorf("1 %s: %v", s, err)
				continue
			}
			if got.Unit.Name != r.name || got.Dim != r.dim {
				t.Errorf("1 %s is read in %s, a %v; want %s", s, got.Unit.Name, got.Dim, r.name)
			}
			if back := got.Unit.From(got.Best); math.Abs(back-1) > 1e-9 {
				t.Errorf("1 %s comes back as %v", s, back)
			}
		}
		if len(examples[r.unit().kind()]) == 0 {
			t.Errorf("no example unit for %s, the kind of %s", r.unit().kind(), r.name)
		}
	}
	for kind := range Kinds {
		for _, u := range examples[kind] {
			if kind == "number" && strings.Contains(u, " ") {
				continue // advice in words
			}
			if _, err := ParseKind("5 "+u, kind); err != nil {
				t.Errorf("advice for %s does not read: %v", kind, err)
			}
		}
	}
}

// No spelling may stand for two units of one kind.
func TestSpellingsAreOne(t *testing.T) {
	for s, rows := range bySpelling {
		seen := map[Dim]string{}
		for _, r := range rows {
			if other, twice := seen[r.dim]; twice {
				t.Errorf("%q means %s and %s", s, other, r.name)
			}
			seen[r.dim] = r.name
		}
		if _, bad := unclear[s]; bad {
			t.Errorf("%q is both a unit and refused as unclear", s)
		}
	}
}

func TestAUnitAlone(t *testing.T) {
	if u, err := AnyUnit("K"); err != nil || u.Dim != ChangeDim {
		t.Errorf("K alone: %v, %v", u.Dim, err)
	}
	if u, err := UnitNamed("degF", ChangeDim); err != nil || u.SI(9) != 5 {
		t.Errorf("degF as a change: %v, %v", u, err)
	}
	for name, says := range map[string]string{"mil": "thou or mm", "furlong": "not known", "": "nothing"} {
		if _, err := AnyUnit(name); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("unit %q: %v, want %q", name, err, says)
		}
	}
}
