package film_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/film"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

const zero = 273.15 // K

// vg68 is a common bearing oil (invented readings of the usual size).
var vg68 = film.Oil{
	Cool: film.Reading{At: zero + 40, Viscosity: 68e-6}, Warm: film.Reading{At: zero + 100, Viscosity: 8.7e-6}, Density: 880,
}

var ringOiled = film.Journal{Diameter: 0.05, Length: 0.05, Clearance: 60e-6, Load: 3000, Speed: 12}

// Walther's law against a law of another form through the same two readings.
func TestAnOilAgreesWithAnotherLaw(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "bearing_film.json"), "F-oil-30")
	oil := film.Oil{
		Cool: film.Reading{At: zero + 40, Viscosity: q.Kinematic(r.In(t, "at_40"))}, Warm: film.Reading{At: zero + 100, Viscosity: q.Kinematic(r.In(t, "at_100"))},
		Density: q.Density(r.In(t, "density")),
	}
	for _, c := range []struct {
		name string
		at   q.Temperature
	}{{"at_50", zero + 50}, {"at_70", zero + 70}, {"at_90", zero + 90}} {
		μ, notes, err := oil.ViscosityAt(c.at)
		kerneltest.Fine(t, err)
		if len(notes) > 0 {
			t.Errorf("%s: notes %v, want none", c.name, notes)
		}
		r.Want(t, c.name, float64(μ))
	}
}

// At its own readings the law gives them back, times the density there.
func TestAnOilMeetsItsReadings(t *testing.T) {
	for _, r := range []film.Reading{vg68.Cool, vg68.Warm} {
		μ, _, err := vg68.ViscosityAt(r.At)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "viscosity", float64(μ), float64(r.Viscosity)*880*(1-0.00065*(float64(r.At)-zero-15)), 1e-9)
	}
}

func TestAThinOilIsNoted(t *testing.T) {
	thin := film.Oil{Cool: film.Reading{At: zero + 40, Viscosity: 5e-6}, Warm: film.Reading{At: zero + 100, Viscosity: 1.7e-6}, Density: 850}
	_, notes, err := thin.ViscosityAt(zero + 95)
	kerneltest.Fine(t, err)
	if len(notes) != 1 || notes[0].Grade != basis.Extrapolated {
		t.Errorf("notes %v, want one", notes)
	}
}

// The rise over the pressure in MPa, times 0.120, is f·r/c over Q'(1 − leak/2) when
// the oil's heat is that of the American texts.
func TestRiseAgreesWithThePublishedCurve(t *testing.T) {
	rows := outside.Read(t, "bearing_film.json")
	for _, id := range []string{"F-rise-1-0.121", "F-rise-1-0.631"} {
		r := outside.Get(t, rows, id)
		// any bearing of L/D 1 with this S; here P is 1 MPa, (r/c)² a million
		f, _, err := film.Run(film.Journal{
			Diameter: 0.1, Length: 0.1, Clearance: 100e-6, Load: 1e4, Speed: 10, Viscosity: q.Viscosity(r.In(t, "S") / 10),
		})
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "S", f.Sommerfeld, r.In(t, "S"), 1e-9)
		rise, err := film.OilRise(f.Power, f.Flow, f.Leakage)
		kerneltest.Fine(t, err)
		r.Want(t, "rise", 0.120*float64(rise))
	}
}

// What is found must balance by the public functions, worked forwards.
func TestRunningTemperaturesBalance(t *testing.T) {
	for _, load := range []q.Force{100, 3000, 8000} {
		j := ringOiled
		j.Load = load
		housed, _, err := film.HousedTemperature(j, vg68, zero+20, 1.5)
		kerneltest.Fine(t, err)
		j.Viscosity, _, err = vg68.ViscosityAt(housed.Temperature)
		kerneltest.Fine(t, err)
		f, _, err := film.Run(j)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "heat shed", 1.5*float64(housed.Temperature-zero-20), float64(f.Power), 1e-7)

		fed, _, err := film.FedTemperature(j, vg68, zero+35)
		kerneltest.Fine(t, err)
		j.Viscosity, _, err = vg68.ViscosityAt(fed.Temperature)
		kerneltest.Fine(t, err)
		f, _, err = film.Run(j)
		kerneltest.Fine(t, err)
		rise, err := film.OilRise(f.Power, f.Flow, f.Leakage)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "rise of the oil", float64(fed.Leaving-zero-35), float64(rise), 1e-7)
		kerneltest.Near(t, "half the rise", float64(fed.Temperature-zero-35), float64(rise)/2, 1e-7)
	}
}

func TestBoundlessCoolingLeavesTheAir(t *testing.T) {
	w, _, err := film.HousedTemperature(ringOiled, vg68, zero+20, 1e9)
	kerneltest.Fine(t, err)
	if over := w.Temperature - (zero + 20); !(over >= 0 && over < 1e-5) {
		t.Errorf("%v K over the air, want none", over)
	}
}

// Less cooling, more speed, thicker oil run warmer; more clearance cooler.
func TestWhatWarmsABearing(t *testing.T) {
	at := func(j film.Journal, oil film.Oil, cooling q.Cooling) q.Temperature {
		w, _, err := film.HousedTemperature(j, oil, zero+20, cooling)
		kerneltest.Fine(t, err)
		return w.Temperature
	}
	base := at(ringOiled, vg68, 1.5)
	fast, wide, thick := ringOiled, ringOiled, vg68
	fast.Speed *= 1.5
	wide.Clearance *= 1.5
	thick.Cool.Viscosity *= 1.5
	thick.Warm.Viscosity *= 1.5
	for what, over := range map[string]q.Temperature{
		"less cooling": at(ringOiled, vg68, 1) - base, "faster": at(fast, vg68, 1.5) - base,
		"thicker": at(ringOiled, thick, 1.5) - base, "wider": base - at(wide, vg68, 1.5),
	} {
		if !(over > 0) {
			t.Errorf("%s: %v K", what, over)
		}
	}
}

func TestWarmRefusals(t *testing.T) {
	nan := math.NaN()
	oil := func(spoil func(*film.Oil)) func() error {
		return func() error { o := vg68; spoil(&o); _, _, err := o.ViscosityAt(zero + 50); return err }
	}
	housed := func(spoil func(*film.Journal), air q.Temperature, cooling q.Cooling) func() error {
		return func() error {
			j := ringOiled
			spoil(&j)
			_, _, err := film.HousedTemperature(j, vg68, air, cooling)
			return err
		}
	}
	keep := func(*film.Journal) {}
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"frozen reading", "temperature of the cool reading", oil(func(o *film.Oil) { o.Cool.At = 40 })},
		{"readings at one temperature", "temperature of the warm reading", oil(func(o *film.Oil) { o.Warm.At = o.Cool.At })},
		{"petrol", "viscosity of the warm reading", oil(func(o *film.Oil) { o.Warm.Viscosity = 0.5e-6 })},
		{"thicker when warm", "viscosity of the warm reading", oil(func(o *film.Oil) { o.Warm.Viscosity = 70e-6 })},
		{"unknown density", "density of the oil", oil(func(o *film.Oil) { o.Density = q.Density(nan) })},
		{"unknown temperature", "temperature", func() error { _, _, err := vg68.ViscosityAt(q.Temperature(nan)); return err }},
		{"Celsius for kelvin", "temperature", func() error { _, _, err := vg68.ViscosityAt(50); return err }},
		{"stiff oil", "temperature", func() error {
			o := vg68
			o.Cool.Viscosity, o.Warm.Viscosity = 1500e-6, 20e-6
			_, _, err := o.ViscosityAt(zero - 39)
			return err
		}},
		{"unknown power", "power", func() error { _, err := film.OilRise(q.Power(nan), 1, 0); return err }},
		{"no flow", "flow", func() error { _, err := film.OilRise(1, 0, 0); return err }},
		{"leaks more than it draws", "leakage", func() error { _, err := film.OilRise(1, 1, 2); return err }},
		{"no cooling", "cooling", housed(keep, zero+20, 0)},
		{"unknown air", "temperature of the air", housed(keep, q.Temperature(nan), 1)},
		{"stands", "speed", housed(func(j *film.Journal) { j.Speed = 0 }, zero+20, 1)},
		{"too heavy from the start", "Sommerfeld number", housed(func(j *film.Journal) { j.Load = 1e6 }, zero+20, 1)},
		{"runs hot until the film is gone", "heat", housed(func(j *film.Journal) { j.Load, j.Speed = 2e4, 50 }, zero+20, 0.5)},
		{"unknown oil fed", "temperature of the oil fed", func() error { _, _, err := film.FedTemperature(ringOiled, vg68, 40); return err }},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleHousedTemperature() {
	// A ring-oiled bearing of 50 mm, 3 kN, 720 rpm, a tenth of a square metre of housing in still air of 20 °C.
	oil := film.Oil{
		Cool: film.Reading{At: 313.15, Viscosity: 68e-6}, Warm: film.Reading{At: 373.15, Viscosity: 8.7e-6}, Density: 880,
	}
	w, _, err := film.HousedTemperature(film.Journal{Diameter: 0.05, Length: 0.05, Clearance: 60e-6, Load: 3000, Speed: 12}, oil, 293.15, 1.5)
	fmt.Printf("%.0f °C, film %.0f µm, %.0f W, %v\n", w.Temperature-273.15, 1e6*w.Film.Least, w.Film.Power, err)
	// Output: 48 °C, film 19 µm, 42 W, <nil>
}
