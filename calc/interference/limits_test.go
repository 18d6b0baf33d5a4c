package interference_test

import (
	"fmt"
	"strings"
	"testing"

	"wornfit/calc/interference"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

// Boresi and Schmidt, Example 11.1: a cylinder 20 by 100 under 300 MPa from inside.
func TestStressesInsideARingAgreeWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "A04")
	bore, around, p := q.Length(2*r.In(t, "a")), q.Length(2*r.In(t, "b")), q.Stress(r.In(t, "p_internal"))
	at := func(x q.Length) (radial, hoop float64) {
		a, b, err := interference.RingStress(bore, around, p, 0, x)
		fine(t, err)
		return float64(a), float64(b)
	}
	radial, hoop := at(bore)
	r.Want(t, "hoop_r10", hoop)
	near(t, "radial at the bore", radial, -float64(p), 1e-12)
	radial, hoop = at(0.050)
	r.Want(t, "hoop_r25", hoop)
	r.Want(t, "radial_r25", radial)
	radial, hoop = at(around)
	r.Want(t, "hoop_r50", hoop)
	near(t, "radial outside", radial+1, 1, 1e-6) // nothing presses there
	if one, err := interference.HubHoop(bore, around, p); err != nil || one != 325e6 {
		t.Errorf("the closed form says %v, %v", one, err)
	}
	_, _, err := interference.RingStress(bore, around, p, 0, 0.2)
	refused(t, "outside the ring", err, "diameter looked at")
	_, _, err = interference.RingStress(bore, around, p, -1, bore)
	refused(t, "suction", err, "pressure from outside")
}

// Even pressure all round a ring with no pressure in it squeezes its bore twice.
func TestPressureFromOutsideAsABush(t *testing.T) {
	_, hoop, err := interference.RingStress(0.02, 0.03, 0, 10e6, 0.02)
	fine(t, err)
	want, err := interference.BushHoop(0.02, 0.03, 10e6)
	fine(t, err)
	near(t, "hoop", float64(hoop), float64(want), 1e-12)
}

// Boresi and Schmidt, Example 11.8: a steel disc 200 by 600.
func TestADiscYieldsAndBurstsAtTheSpeedsOfTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "A10")
	bore, around := q.Length(2*r.In(t, "a")), q.Length(2*r.In(t, "b"))
	density, yield := q.Density(r.In(t, "density")), q.Stress(r.In(t, "yield_"))
	n, err := interference.DiscYieldSpeed(bore, around, r.In(t, "nu"), density, yield)
	fine(t, err)
	r.Want(t, "omega_yield", float64(n))
	hoop, err := interference.DiscHoop(bore, around, r.In(t, "nu"), density, n)
	fine(t, err)
	near(t, "hoop at that speed", float64(hoop), float64(yield), 1e-12)
	bursts, err := interference.DiscBurstSpeed(bore, around, density, yield)
	fine(t, err)
	r.Want(t, "omega_fully_plastic", float64(bursts))
	_, err = interference.DiscHoop(bore, around, 0.3, density, -1)
	refused(t, "backwards", err, "speed")
	_, err = interference.DiscHoop(around, bore, 0.3, density, 1)
	refused(t, "no wall", err, "bore")
	_, err = interference.DiscYieldSpeed(bore, around, 0.3, 0, yield)
	refused(t, "no mass", err, "density")
	_, err = interference.DiscYieldSpeed(bore, around, 0.7, density, yield)
	refused(t, "Poisson", err, "Poisson's number")
	_, err = interference.DiscBurstSpeed(bore, around, density, 0)
	refused(t, "no strength", err, "yield strength")
}

// A very thin ring bursts and yields at one speed: all of it is stressed alike.
func TestAThinRingYieldsAllAtOnce(t *testing.T) {
	yields, err := interference.DiscYieldSpeed(0.2, 0.2001, 0.3, 7850, 300e6)
	fine(t, err)
	bursts, err := interference.DiscBurstSpeed(0.2, 0.2001, 7850, 300e6)
	fine(t, err)
	near(t, "speeds", float64(yields), float64(bursts), 1e-3)
}

// The iron hub breaks where the steel one of the same figures still bears.
func TestHubsAreJudgedByTheirOwnCriterion(t *testing.T) {
	strength := interference.Strength{Yield: 250e6, Tensile: 250e6}
	steel, notes, err := interference.HubSafety(0.025, 0.05, 100e6, strength)
	fine(t, err)
	strength.Brittle = true
	iron, more, err := interference.HubSafety(0.025, 0.05, 100e6, strength)
	fine(t, err)
	// by hand: Q 0.5; ductile 250·0.75/(100·√3.0625) = 1.0714; brittle 250·0.75/(100·1.25) = 1.5
	near(t, "ductile", steel, 1.0714286, 1e-6)
	near(t, "brittle", iron, 1.5, 1e-9)
	if len(notes)+len(more) != 0 {
		t.Errorf("notes %v %v, want none", notes, more)
	}
	n, notes, err := interference.HubSafety(0.025, 0.05, 150e6, interference.Strength{Yield: 250e6})
	if err != nil || n >= 1 || len(notes) != 1 || !strings.Contains(notes[0].Says, "yields") {
		t.Errorf("past yield: %v, %v, %v; want a note", n, notes, err)
	}
	n, notes, err = interference.HubSafety(0.025, 0.05, 200e6, strength)
	if err != nil || n >= 1 || len(notes) != 1 || !strings.Contains(notes[0].Says, "bursts") {
		t.Errorf("past its tensile strength: %v, %v, %v; want a note", n, notes, err)
	}
	_, _, err = interference.HubSafety(0.025, 0.05, 0, strength)
	refused(t, "no pressure", err, "pressure")
	_, _, err = interference.HubSafety(0.025, 0.05, 1e6, interference.Strength{Brittle: true})
	refused(t, "no tensile", err, "tensile strength")
	_, _, err = interference.HubSafety(0.025, 0.05, 1e6, interference.Strength{})
	refused(t, "no yield", err, "yield strength")
}

// The window of a press grows with the stroke, and at its ends is the press force.
func TestThePressHasALowerStopToo(t *testing.T) {
	s := interference.Stroke{Seat: 0.025, SeatLength: 0.03, HubLength: 0.03, Travel: 0.015}
	half, notes, err := interference.StopForces(s, 40e6, 70e6, 0.08, 0.15)
	fine(t, err)
	s.Travel = 0.03
	home, _, err := interference.StopForces(s, 40e6, 70e6, 0.08, 0.15)
	fine(t, err)
	if len(notes) != 0 || !(half.Least < half.Most) {
		t.Errorf("%v, %v", half, notes)
	}
	near(t, "least", float64(home.Least), 2*float64(half.Least), 1e-12)
	most, err := interference.PressForce(s, 70e6, 0.15)
	fine(t, err)
	near(t, "most", float64(home.Most), float64(most), 1e-12)
	loose, notes, err := interference.StopForces(s, -1, 70e6, 0.08, 0.15)
	if err != nil || loose.Least != 0 || len(notes) != 1 {
		t.Errorf("a joint that may hang loose: %v, %v, %v; want a note", loose, notes, err)
	}
	_, _, err = interference.StopForces(s, 40e6, 70e6, 0.2, 0.1)
	refused(t, "frictions crossed", err, "lowest friction")
	_, _, err = interference.StopForces(s, 80e6, 70e6, 0.1, 0.2)
	refused(t, "pressures crossed", err, "least pressure")
	s.Travel = 1
	_, _, err = interference.StopForces(s, 40e6, 70e6, 0.1, 0.2)
	refused(t, "past the end", err, "travel")
}

func ExampleStopForces() {
	// A 25 mm stud half way into a 30 mm hub: 40 MPa at its loosest, 70 at its tightest, oiled.
	got, _, err := interference.StopForces(interference.Stroke{Seat: 0.025, SeatLength: 0.03, HubLength: 0.03, Travel: 0.015}, 40e6, 70e6, 0.08, 0.15)
	fmt.Printf("%.1f to %.1f kN, %v\n", got.Least/1e3, got.Most/1e3, err)
	// Output: 3.8 to 12.4 kN, <nil>
}

func ExampleHubSafety() {
	// An iron lever eye 25 by 50 under 45 MPa.
	n, _, err := interference.HubSafety(0.025, 0.05, 45e6, interference.Strength{Tensile: 200e6, Brittle: true})
	fmt.Printf("%.2f, %v\n", n, err)
	// Output: 2.67, <nil>
}

func ExampleDiscYieldSpeed() {
	// A cast gear blank 60 by 400.
	n, err := interference.DiscYieldSpeed(0.060, 0.400, 0.26, 7200, 200e6)
	fmt.Printf("%.0f rpm, %v\n", 60*float64(n), err)
	// Output: 8792 rpm, <nil>
}
