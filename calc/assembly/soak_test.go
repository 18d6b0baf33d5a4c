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

// soakOf reads a row that states the diffusivity instead of density and heat.
func soakOf(t *testing.T, r outside.Row, half float64) assembly.Soak {
	k := r.In(t, "k")
	return assembly.Soak{
		Metal: assembly.Metal{Conductivity: q.Conductivity(k), Density: q.Density(k / r.In(t, "alpha") / 1000), SpecificHeat: 1000},
		Half:  q.Length(half), Film: q.Film(r.In(t, "h")), From: q.Temperature(r.In(t, "Ti")), Around: q.Temperature(r.In(t, "Tinf")),
	}
}

// Holman reads charts; the tolerances are his print's.
func TestHolmansLongCylinder(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "B06")
	s := soakOf(t, r, r.In(t, "d")/2)
	got, err := assembly.CylinderSoak(s, q.Length(r.In(t, "r")), q.Time(r.In(t, "time")))
	kerneltest.Fine(t, err)
	r.Want(t, "T", float64(got.There))
	r.Want(t, "Q_over_Q0", float64((s.From-got.Mean)/(s.From-s.Around)))
}

// A pipe wall, its inside filled with warm oil and its outside insulated: half a plate.
func TestIncroperasPipeWall(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "B07")
	s := soakOf(t, r, r.In(t, "L"))
	bi, err := assembly.Biot(assembly.Body{Metal: s.Metal, Depth: s.Half, Film: s.Film})
	kerneltest.Fine(t, err)
	r.Want(t, "Bi", bi)
	middle, err := assembly.PlateSoak(s, 0, q.Time(r.In(t, "time")))
	kerneltest.Fine(t, err)
	r.Want(t, "T_insulated_face", float64(middle.There))
	face, err := assembly.PlateSoak(s, s.Half, q.Time(r.In(t, "time")))
	kerneltest.Fine(t, err)
	r.Want(t, "flux", float64(s.Film)*float64(face.There-s.Around))
}

func TestCengelsBrassPlates(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "B09")
	s := soakOf(t, r, r.In(t, "half_thickness"))
	got, err := assembly.PlateSoak(s, s.Half, q.Time(r.In(t, "time")))
	kerneltest.Fine(t, err)
	r.Want(t, "T_surface", float64(got.There))
}

// The reference's 60 terms of the Bessel series, printed to 1e-5.
func TestCylinderAgreesWithTheReferenceSeries(t *testing.T) {
	tried := 0
	for _, v := range grabFile(t).Verification {
		if v.Test != "solid cylinder, convection" {
			continue
		}
		tried++
		const half, apart = 0.02, 100
		s := assembly.Soak{Metal: steel, Half: half, Film: q.Film(v.Bi * 46 / half), From: 300 + apart, Around: 300}
		got, err := assembly.CylinderSoak(s, 0, q.Time(v.Fo*half*half*7850*510/46))
		kerneltest.Fine(t, err)
		if c, m := float64(got.There-300)/apart, float64(got.Mean-300)/apart; math.Abs(c-v.Centre) > 6e-6 || math.Abs(m-v.Mean) > 6e-6 {
			t.Errorf("Bi %g Fo %g: middle %.6f, mean %.6f; want %.5f and %.5f", v.Bi, v.Fo, c, m, v.Centre, v.Mean)
		}
	}
	if tried != 9 {
		t.Errorf("%d cylinders tried, want 9", tried)
	}
}

// With a weak film a part is one lump; soon after the start it has hardly changed;
// the skin is always ahead of the middle.
func TestSoakInTheLimits(t *testing.T) {
	s := assembly.Soak{Metal: steel, Half: 0.01, Film: 1, From: 573.15, Around: 293.15}
	for what, c := range map[string]struct {
		soak  func(assembly.Soak, q.Length, q.Time) (assembly.Soaked, error)
		depth q.Length
	}{"bar": {assembly.CylinderSoak, assembly.BarDepth(0.02)}, "plate": {assembly.PlateSoak, assembly.PlateDepth(0.02)}} {
		lump, _, err := assembly.Carried(assembly.Body{Metal: steel, Depth: c.depth, Film: 1}, s.From, s.Around, 5000)
		kerneltest.Fine(t, err)
		got, err := c.soak(s, 0, 5000)
		kerneltest.Fine(t, err)
		// The lag of the middle is of the order of the Biot number, 0.0002.
		kerneltest.Near(t, what+" as a lump", float64(got.Mean-s.Around), float64(lump-s.Around), 1e-4)
		quenched := s
		quenched.Film = 5000
		early, err := c.soak(quenched, 0, 0.05)
		kerneltest.Fine(t, err)
		// The series leaves up to a part in a thousand at the shortest time.
		kerneltest.Near(t, what+" at first", float64(early.There-s.Around), float64(s.From-s.Around), 1e-3)
		last := early.There
		for _, at := range []q.Length{0.005, 0.009, 0.01} {
			next, err := c.soak(quenched, at, 1)
			kerneltest.Fine(t, err)
			if next.There >= last {
				t.Errorf("%s: %v at %v from the middle, %v nearer to it", what, next.There, at, last)
			}
			last = next.There
		}
	}
}

func TestSoakRefusals(t *testing.T) {
	good := assembly.Soak{Metal: steel, Half: 0.02, Film: 100, From: 573, Around: 293}
	_, err := assembly.CylinderSoak(good, 0.03, 60)
	kerneltest.Blames(t, "outside of the bar", err, "distance from the middle")
	_, err = assembly.PlateSoak(good, 0, 1e-6)
	kerneltest.Blames(t, "no time at all", err, "time")
	_, err = assembly.PlateSoak(good, 0, q.Time(math.NaN()))
	kerneltest.Blames(t, "unknown time", err, "time")
	good.Film = 0
	_, err = assembly.PlateSoak(good, 0, 60)
	kerneltest.Blames(t, "no film", err, "film")
}

func ExampleCylinderSoak() {
	// A bar of 100 mm put in an oven at 260 °C with a fan: how far after an hour?
	bar := assembly.Soak{Metal: assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510}, Half: 0.050, Film: 40, From: 293.15, Around: 533.15}
	got, err := assembly.CylinderSoak(bar, 0, 3600)
	fmt.Printf("middle %.0f °C, mean %.0f °C %v\n", got.There-273.15, got.Mean-273.15, err)
	// Output: middle 202 °C, mean 202 °C <nil>
}
