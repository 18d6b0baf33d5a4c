package assembly_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func TestContractionToNitrogen(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "B10")
	at := q.Temperature(r.In(t, "T"))
	for metal, want := range map[string]string{"aluminium 6061": "dL_L_6061", "stainless 304": "dL_L_304"} {
		c, notes, err := assembly.MeanContraction(metal, at)
		kerneltest.Fine(t, err)
		if len(notes) != 0 {
			t.Errorf("%s: noted %v", metal, notes)
		}
		r.Want(t, want, -c.Shrinks(at))
	}
}

// The deeper the cold, the less each further degree shrinks; the range holds the
// mean; what is from memory says so.
func TestContractionFallsOffInTheCold(t *testing.T) {
	for _, metal := range assembly.ColdMetals() {
		last := assembly.Contraction{}
		for _, at := range []q.Temperature{77, 120, 160, 195, 240} {
			c, notes, err := assembly.MeanContraction(metal, at)
			kerneltest.Fine(t, err)
			if !(c.Mean > last.Mean && c.Low < c.Mean && c.Mean < c.High) {
				t.Errorf("%s at %v K: %v, colder %v", metal, at, c, last)
			}
			if weak := c.Grade.Weak(); weak != (len(notes) == 1) {
				t.Errorf("%s: grade %v with notes %v", metal, c.Grade, notes)
			}
			last = c
		}
	}
	if n := len(assembly.ColdMetals()); n != 6 {
		t.Errorf("%d metals, want 6", n)
	}
}

// R44 takes 9.9 for steel from 20 to -78 °C.
func TestSteelInDryIce(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "reference.json"), "R44")
	c, _, err := assembly.MeanContraction("steel", q.Temperature(r.In(t, "shaft")))
	kerneltest.Fine(t, err)
	if want := q.Expansion(r.In(t, "alpha_shaft")); !(c.Low <= want && want <= c.High) || math.Abs(float64(c.Mean/want-1)) > 0.01 {
		t.Errorf("%v to %v, mean %v; want %v in it", c.Low, c.High, c.Mean, want)
	}
}

func TestContractionRefusals(t *testing.T) {
	_, _, err := assembly.MeanContraction("unobtainium", 100)
	kerneltest.Blames(t, "unknown metal", err, "metal")
	for _, at := range []q.Temperature{20, 280, q.Temperature(math.NaN())} {
		_, _, err = assembly.MeanContraction("steel", at)
		kerneltest.Blames(t, "too cold, too warm, unknown", err, "temperature")
	}
}

func ExampleMeanContraction() {
	// A bronze bush of 30 mm out of liquid nitrogen.
	c, _, err := assembly.MeanContraction("bronze", 77.35)
	shrinks := func(a q.Expansion) float64 { return 1e3 * 30 * float64(a) * (293.15 - 77.35) }
	fmt.Printf("%.0f µm smaller, %.0f to %.0f %v\n", shrinks(c.Mean), shrinks(c.Low), shrinks(c.High), err)
	// Output: 93 µm smaller, 84 to 105 <nil>
}
