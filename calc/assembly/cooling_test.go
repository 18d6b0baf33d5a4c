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

// A thermocouple bead: the diameter that answers in a second, and the time to come
// within a degree. The book's print of 5.2 s is 5.165.
func TestBeadOfIncropera(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "B02")
	metal := assembly.Metal{Conductivity: q.Conductivity(r.In(t, "k")), Density: q.Density(r.In(t, "rho")), SpecificHeat: q.SpecificHeat(r.In(t, "c"))}
	bead := assembly.Body{Metal: metal, Depth: assembly.BallDepth(1e-3), Film: q.Film(r.In(t, "h"))}
	tau, notes, err := assembly.TimeConstant(bead)
	kerneltest.Fine(t, err)
	if len(notes) != 0 {
		t.Errorf("noted %v; a bead is of one temperature", notes)
	}
	d := 1e-3 * r.In(t, "time_constant") / float64(tau) // the time grows with the diameter
	r.Want(t, "diameter", d)
	bead.Depth = assembly.BallDepth(q.Length(d))
	time, _, err := assembly.CoolingTime(bead, q.Temperature(r.In(t, "Ti")), q.Temperature(r.In(t, "T")), q.Temperature(r.In(t, "Tinf")))
	kerneltest.Fine(t, err)
	r.Want(t, "time", float64(time))
}

// The conductivity is not asked for by B03 and B04: any does that makes the body one lump.
func TestBallsOfCengelAndHolman(t *testing.T) {
	rows := outside.Read(t, "worked.json")
	r := outside.Get(t, rows, "B03")
	bead := assembly.Body{
		Metal: assembly.Metal{Conductivity: 35, Density: q.Density(r.In(t, "rho")), SpecificHeat: q.SpecificHeat(r.In(t, "cp"))},
		Depth: assembly.BallDepth(q.Length(r.In(t, "D"))), Film: q.Film(r.In(t, "h")),
	}
	const around, apart = 300, 100
	time, _, err := assembly.CoolingTime(bead, around+apart, around+q.Temperature(apart*r.In(t, "fraction")), around)
	kerneltest.Fine(t, err)
	r.Want(t, "time", float64(time))

	r = outside.Get(t, rows, "B04")
	ball := assembly.Body{
		Metal: assembly.Metal{Conductivity: 35, Density: q.Density(r.In(t, "rho")), SpecificHeat: q.SpecificHeat(r.In(t, "c"))},
		Depth: assembly.BallDepth(q.Length(r.In(t, "d"))), Film: q.Film(r.In(t, "h")),
	}
	time, _, err = assembly.CoolingTime(ball, q.Temperature(r.In(t, "To")), q.Temperature(r.In(t, "T")), q.Temperature(r.In(t, "Tinf")))
	kerneltest.Fine(t, err)
	r.Want(t, "time", float64(time))
}

// Cooling for the time that CoolingTime gives comes back to the temperature, cold
// parts warm as hot ones cool, and at first a plate loses heat at 2h/(ρct).
func TestCoolingTwoWays(t *testing.T) {
	plate := assembly.Body{Metal: steel, Depth: assembly.PlateDepth(6e-3), Film: assembly.StillAir}
	for _, from := range []q.Temperature{573.15, 93.15} {
		to := 293.15 + 0.6*(from-293.15)
		time, _, err := assembly.CoolingTime(plate, from, to, 293.15)
		kerneltest.Fine(t, err)
		got, _, err := assembly.Carried(plate, from, 293.15, time)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "temperature again", float64(got), float64(to), 1e-12)
	}
	after, _, err := assembly.Carried(plate, 573.15, 293.15, 1)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "lost in a second", 573.15-float64(after), 2*25*280/(7850*510*6e-3), 2e-3)
	if now, _, err := assembly.Carried(plate, 573.15, 293.15, 0); err != nil || now != 573.15 {
		t.Errorf("with no wait %v, %v; want the temperature at first", now, err)
	}
}

// A ring without a bore's worth of hole or end is a plate, a bar, or thin tube.
func TestDepthsMeetInTheLimit(t *testing.T) {
	kerneltest.Near(t, "wide ring, thin", float64(assembly.RingDepth(0.1, 1000, 6e-3)), float64(assembly.PlateDepth(6e-3)), 1e-4)
	kerneltest.Near(t, "long thin tube", float64(assembly.RingDepth(0.1, 0.104, 1e3)), 0.001, 1e-4)
	a, b, w := 12.5e-3, 30e-3, 6e-3
	volume, surface := math.Pi*(b*b-a*a)*w, 2*math.Pi*(b*b-a*a)+2*math.Pi*(a+b)*w
	kerneltest.Near(t, "plate", float64(assembly.RingDepth(25e-3, 60e-3, 6e-3)), volume/surface, 1e-12)
}

func TestAThickPartIsNoted(t *testing.T) {
	block := assembly.Body{Metal: steel, Depth: 0.2, Film: 25}
	bi, err := assembly.Biot(block)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "Biot", bi, 25*0.2/46, 1e-12)
	if _, notes, err := assembly.TimeConstant(block); err != nil || len(notes) != 1 {
		t.Errorf("notes %v, %v; want one of its Biot number", notes, err)
	}
}

func TestCoolingRefusals(t *testing.T) {
	good := assembly.Body{Metal: steel, Depth: 3e-3, Film: 25}
	for _, c := range []struct {
		blame string
		spoil func(b *assembly.Body)
	}{
		{"conductivity of the part", func(b *assembly.Body) { b.Metal.Conductivity = 0 }},
		{"density of the part", func(b *assembly.Body) { b.Metal.Density = -1 }},
		{"specific heat of the part", func(b *assembly.Body) { b.Metal.SpecificHeat = q.SpecificHeat(math.NaN()) }},
		{"volume over surface", func(b *assembly.Body) { b.Depth = 0 }},
		{"film", func(b *assembly.Body) { b.Film = 0 }},
	} {
		b := good
		c.spoil(&b)
		_, _, err := assembly.TimeConstant(b)
		kerneltest.Blames(t, c.blame, err, c.blame)
		_, err = assembly.Biot(b)
		kerneltest.Blames(t, c.blame, err, c.blame)
	}
	_, _, err := assembly.CoolingTime(good, 573, 280, 293)
	kerneltest.Blames(t, "colder than the air", err, "temperature reached")
	_, _, err = assembly.CoolingTime(good, 573, 600, 293)
	kerneltest.Blames(t, "hotter than at first", err, "temperature reached")
	_, _, err = assembly.CoolingTime(good, -5, 280, 293)
	kerneltest.Blames(t, "below zero", err, "temperature at first")
	_, _, err = assembly.Carried(good, 573, 293, -1)
	kerneltest.Blames(t, "before the start", err, "wait")
}

func ExampleCarried() {
	// A 6 mm plate out of the oven at 300 °C, carried for 15 seconds.
	plate := assembly.Body{Metal: assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510}, Depth: assembly.PlateDepth(0.006), Film: assembly.StillAir}
	left, _, err := assembly.Carried(plate, 573.15, 293.15, 15)
	fmt.Printf("%.0f °C %v\n", left-273.15, err)
	// Output: 291 °C <nil>
}

func ExampleCoolingTime() {
	// A hub 80 by 40 bore, 40 wide, to warm from 20 to 240 °C in an oven at 260.
	hub := assembly.Body{Metal: assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510}, Depth: assembly.RingDepth(0.040, 0.080, 0.040), Film: 25}
	t, _, err := assembly.CoolingTime(hub, 293.15, 513.15, 533.15)
	fmt.Printf("%.0f min %v\n", t/60, err)
	// Output: 44 min <nil>
}
