package film_test

import (
	"errors"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/film"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
)

var plain = film.Journal{Diameter: 0.05, Length: 0.05, Clearance: 50e-6, Load: 2000, Speed: 10, Viscosity: 0.04}

// A groove all round a bearing of one diameter: the film is less than half as
// thick, as two short bearings of the short-bearing formula say too, whose load
// goes with the cube of the length.
func TestAGrooveAllRoundThinsTheFilm(t *testing.T) {
	whole, _, err := film.Run(plain)
	kerneltest.Fine(t, err)
	half, err := film.HalfOf(plain, 0.006)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "length", float64(half.Length), 0.022, 1e-12)
	kerneltest.Near(t, "load", float64(half.Load), 1000, 1e-12)
	split, _, err := film.Run(half)
	kerneltest.Fine(t, err)
	if !(split.Least < 0.6*whole.Least) {
		t.Errorf("film %v with a groove, %v without: it should be thinner by far", split.Least, whole.Least)
	}
	// second route: the load number S·(L/d)² at which a short bearing runs is the same
	// for equal eccentricity, whatever its length (Ocvirk)
	s, err := film.SommerfeldNumber(half)
	kerneltest.Fine(t, err)
	e, _, err := film.Eccentricity(s, 0.44)
	kerneltest.Fine(t, err)
	ocvirk := (1 - e*e) * (1 - e*e) / (math.Pi * e * math.Sqrt(math.Pi*math.Pi*(1-e*e)+16*e*e))
	kerneltest.Near(t, "S·(L/d)²", s*0.44*0.44, ocvirk, 0.25) // at L/d 0.44 the short-bearing formula is this rough
}

func TestAHairOfAGrooveHalvesTheBearing(t *testing.T) {
	half, err := film.HalfOf(plain, 1e-9)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "length", float64(half.Length), 0.025, 1e-6)
}

func TestAHoleBelongsOppositeTheLoad(t *testing.T) {
	for degrees, want := range map[float64]bool{180: false, -180: false, -90: false, -59: true, 0: true, 89: true, 91: false, 120: false} {
		carries, notes, err := film.HoleLies(degrees * math.Pi / 180)
		kerneltest.Fine(t, err)
		if carries != want || (len(notes) == 1) != want {
			t.Errorf("%v°: carries %v, notes %v; want %v", degrees, carries, notes, want)
		}
	}
}

func TestGroovesRefuse(t *testing.T) {
	for what, call := range map[string]func() error{
		"width of the groove":  func() error { _, err := film.HalfOf(plain, 0.05); return err },
		"angle from the load":  func() error { _, _, err := film.HoleLies(4); return err },
		"width of the groove ": func() error { _, err := film.HalfOf(plain, q.Length(math.NaN())); return err },
	} {
		var refusal *basis.Refusal
		if err := call(); !errors.As(err, &refusal) || refusal.Want == "" {
			t.Errorf("%s: %v", what, err)
		}
	}
}
