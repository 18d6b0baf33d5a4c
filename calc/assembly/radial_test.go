package assembly

import (
	"math"
	"testing"

	q "wornfit/calc/quantity"
)

func closed(film float64) *Joining {
	steel := Metal{46, 7850, 510, 12.2e-6}
	return &Joining{
		Seat: 0.04, Outside: 0.08, Width: 0.04, Interference: 40e-6, Rough: Peaks, Hub: steel, Shaft: steel,
		Film: q.Film(film), HubAt: 573.15, ShaftAt: 293.15, Room: 293.15,
	}
}

// Without losses no heat is lost in any step, and hub and shaft end alike at the
// temperature of the heat they had; two days of it in long steps leave the last to
// rounding.
func TestHeatIsKept(t *testing.T) {
	j := closed(0)
	rings, rod := newRadial(j, Bare), newRod(j, Bare)
	for what, c := range map[string]struct {
		course course
		heat   []float64
		// The rod's half joint is 20 mm of width, the rings are one metre of it.
		hub, shaft float64
	}{
		"rings": {course{ring: &rings}, rings.heat[:], math.Pi * (0.04*0.04 - 0.02*0.02) * 7850 * 510, math.Pi * 0.02 * 0.02 * 7850 * 510},
		"rod":   {course{rod: &rod}, rod.heat[:], math.Pi * (0.04*0.04 - 0.02*0.02) * 0.02 * 7850 * 510, 0},
	} {
		var now field
		for i := range now {
			now[i] = float64(j.ShaftAt)
		}
		if c.course.rod != nil {
			now[disks] = float64(j.HubAt)
		} else {
			rings.start(&now)
		}
		held := func() (sum, over float64) {
			for i, h := range c.heat {
				sum, over = sum+h*now[i], over+h
			}
			return sum, over
		}
		before, over := held()
		if c.shaft > 0 && math.Abs(over/(c.hub+c.shaft)-1) > 1e-12 {
			t.Errorf("%s hold %v for each kelvin, want %v", what, over, c.hub+c.shaft)
		}
		for range 200 {
			c.course.step(&now, 0.5)
		}
		if after, _ := held(); math.Abs(after/before-1) > 1e-12 {
			t.Errorf("%s: heat %v after 100 s, at first %v", what, after, before)
		}
		for range 1000 {
			c.course.step(&now, 200)
		}
		for i, x := range now {
			if math.Abs(x-before/over) > 1e-6*x {
				t.Errorf("%s: place %d ends at %v K, want %v as everywhere", what, i, x, before/over)
				break
			}
		}
	}
}

// What is lost to the air in a short while is film, surface and difference.
func TestLossesAreFilmAndSurface(t *testing.T) {
	j := closed(25)
	r := newRadial(j, Centred)
	sum := 0.0
	for _, l := range r.loss {
		sum += l
	}
	want := 25 * (2*math.Pi*(0.04*0.04-0.02*0.02)/0.04 + 2*math.Pi*0.04)
	if math.Abs(sum/want-1) > 1e-12 {
		t.Errorf("the rings lose %v W/K for each metre, want %v", sum, want)
	}
	if rod := newRod(j, Centred); math.Abs(rod.losses/(want*0.02)-1) > 1e-12 {
		t.Errorf("half the hub on the rod loses %v W/K, want %v", rod.losses, want*0.02)
	}
}

// The lag of a thin wall is that of a plate fed on one face, a third of its
// thickness over its conductivity, from inside as from outside; that of a solid
// shaft is a/4k.
func TestLagsInTheLimit(t *testing.T) {
	for what, c := range map[string]struct{ got, want float64 }{
		"thin hub":   {lag(1, 1.001, 46), 0.001 / 3 / 46},
		"thin tube":  {lag(1, 0.999, 46), 0.001 / 3 / 46},
		"solid":      {lag(0.02, 0, 46), 0.02 / 4 / 46},
		"almost so":  {lag(0.02, 1e-6, 46), 0.02 / 4 / 46},
		"second way": {lag(0.0125, 0.03, 46), byRings(0.0125, 0.03)},
	} {
		if math.Abs(c.got/c.want-1) > 2e-3 { // thin walls are not quite plates
			t.Errorf("%s: %v, want %v", what, c.got, c.want)
		}
	}
}

// byRings adds the temperature up over a thousand rings that all warm alike.
func byRings(a, b float64) float64 {
	const n = 1000
	step, at, sum := (b-a)/n, 0.0, 0.0
	for i := range n {
		r := a + (float64(i)+0.5)*step
		// Heat through radius r is that of the rings beyond it.
		at += step * a / r * (b*b - r*r) / (b*b - a*a) / 46
		sum += at * 2 * r * step / (b*b - a*a)
	}
	return sum
}
