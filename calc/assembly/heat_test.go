package assembly_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, assembly.Kernels()) }

func TestHubTemperatureAgreesWithASecondRoute(t *testing.T) {
	rows := outside.Read(t, "reference.json")
	for _, id := range []string{"R40", "R42"} {
		r := outside.Get(t, rows, id)
		e := assembly.Entry{Seat: q.Length(r.In(t, "d")), Interference: q.Length(r.In(t, "delta")), Hub: q.Expansion(r.In(t, "alpha")), Room: q.Temperature(r.In(t, "room"))}
		got, notes, err := assembly.HubTemperature(e, q.Length(r.In(t, "gap")), e.Room)
		if err != nil || len(notes) > 0 != (got > 473.15) { // above 200 °C the temper is spoken of
			t.Fatal(notes, err)
		}
		r.Want(t, "hub", float64(got))
	}
}

// R44: the shaft has been in dry ice; its mean expansion in the cold is 9.9, not 11.7.
func TestAShaftFromDryIceSparesTheHub(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "reference.json"), "R44")
	e := assembly.Entry{
		Seat: q.Length(r.In(t, "d")), Interference: q.Length(r.In(t, "delta")),
		Hub: q.Expansion(r.In(t, "alpha")), Shaft: q.Expansion(r.In(t, "alpha_shaft")), Room: q.Temperature(r.In(t, "room")),
	}
	gap, cold := q.Length(r.In(t, "gap")), q.Temperature(r.In(t, "shaft"))
	got, _, err := assembly.HubTemperature(e, gap, cold)
	if err != nil {
		t.Fatal(err)
	}
	r.Want(t, "hub", float64(got))
	with, _, err := assembly.EntryGap(e, e.Room, cold)
	if err != nil {
		t.Fatal(err)
	}
	r.Want(t, "shaft_grows", -float64(with+e.Interference))
}

// Wentzell heats a 5 in stud until it is 0.01204 in longer: the same sum.
func TestTemperatureRiseOfAStud(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "B01")
	e := assembly.Entry{Seat: q.Length(r.In(t, "length")), Interference: q.Length(r.In(t, "growth")), Hub: q.Expansion(r.In(t, "alpha")), Room: 293.15}
	got, _, err := assembly.HubTemperature(e, 0, e.Room)
	if err != nil {
		t.Fatal(err)
	}
	r.Want(t, "temperature_rise", float64(got-e.Room))
}

var entry = assembly.Entry{Seat: 0.025, Interference: 40e-6, Hub: 11.7e-6, Shaft: 9.9e-6, Room: 293.15}

// What HubTemperature asks for, EntryGap finds, and so for the cold shaft.
func TestGapAtTheTemperatureAskedFor(t *testing.T) {
	const want = 25e-6
	hub, _, err := assembly.HubTemperature(entry, want, 195.15)
	if err != nil {
		t.Fatal(err)
	}
	got, _, err := assembly.EntryGap(entry, hub, 195.15)
	if err != nil || math.Abs(float64(got)-want) > 1e-12 {
		t.Errorf("gap %v, %v; want %v", got, err, want)
	}
	small := entry
	small.Interference = 10e-6
	cold, _, err := assembly.ShaftTemperature(small, 5e-6)
	if err != nil {
		t.Fatal(err)
	}
	got, _, err = assembly.EntryGap(small, small.Room, cold)
	if err != nil || math.Abs(float64(got)-5e-6) > 1e-12 {
		t.Errorf("gap %v, %v; want 5e-6", got, err)
	}
}

func TestNothingToOvercomeNeedsNoHeat(t *testing.T) {
	loose := entry
	loose.Interference = 0
	got, notes, err := assembly.HubTemperature(loose, 0, loose.Room)
	if err != nil || got != loose.Room || len(notes) != 1 {
		t.Errorf("got %v, notes %v, %v; want room temperature and a note", got, notes, err)
	}
}

func TestALargerSeatNeedsLessHeat(t *testing.T) {
	last := q.Temperature(math.Inf(1))
	for _, seat := range []q.Length{0.01, 0.02, 0.05, 0.2} {
		e := entry
		e.Seat = seat
		got, _, err := assembly.HubTemperature(e, 25e-6, e.Room)
		if err != nil || got >= last {
			t.Errorf("seat %v needs %v, a smaller one %v (%v)", seat, got, last, err)
		}
		last = got
	}
}

func TestAShaftThatDoesNotEnterIsNoted(t *testing.T) {
	gap, notes, err := assembly.EntryGap(entry, entry.Room, entry.Room)
	if err != nil || gap != -entry.Interference || len(notes) != 1 || !strings.Contains(notes[0].Says, "0.04 mm too large") {
		t.Errorf("gap %v, notes %v, %v; want the interference as less than 0 and a note", gap, notes, err)
	}
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		what, blame string
		spoil       func(e *assembly.Entry, gap *q.Length, shaft *q.Temperature)
	}{
		{"no seat", "seat", func(e *assembly.Entry, _ *q.Length, _ *q.Temperature) { e.Seat = 0 }},
		{"unknown interference", "interference", func(e *assembly.Entry, _ *q.Length, _ *q.Temperature) { e.Interference = q.Length(nan) }},
		{"a gap below nothing", "clearance wanted", func(_ *assembly.Entry, gap *q.Length, _ *q.Temperature) { *gap = -1e-6 }},
		{"a hub that does not grow", "expansion of the hub", func(e *assembly.Entry, _ *q.Length, _ *q.Temperature) { e.Hub = 0 }},
		{"Celsius for kelvin", "room temperature", func(e *assembly.Entry, _ *q.Length, _ *q.Temperature) { e.Room = -5 }},
		{"a shaft below zero", "temperature of the shaft", func(_ *assembly.Entry, _ *q.Length, s *q.Temperature) { *s = -78 }},
		{"a cold shaft of unknown expansion", "expansion of the shaft", func(e *assembly.Entry, _ *q.Length, s *q.Temperature) { e.Shaft, *s = 0, 195 }},
	} {
		e, gap, shaft := entry, q.Length(25e-6), entry.Room
		c.spoil(&e, &gap, &shaft)
		_, _, err := assembly.HubTemperature(e, gap, shaft)
		kerneltest.Blames(t, c.what, err, c.blame)
	}
	_, _, err := assembly.EntryGap(entry, 0, entry.Room)
	kerneltest.Blames(t, "a hub at absolute zero", err, "temperature of the hub")
	big := entry
	big.Interference = 200e-6
	_, _, err = assembly.ShaftTemperature(big, 25e-6)
	kerneltest.Blames(t, "more than any cold gives", err, "interference and clearance together")
	big.Shaft = q.Expansion(nan)
	_, _, err = assembly.ShaftTemperature(big, 25e-6)
	kerneltest.Blames(t, "unknown expansion", err, "expansion of the shaft")
}

func ExampleHubTemperature() {
	// A steel hub of bore 25, 40 µm tight, to go on with 25 µm to spare.
	hot, _, err := assembly.HubTemperature(assembly.Entry{Seat: 0.025, Interference: 40e-6, Hub: 11.7e-6, Room: 293.15}, 25e-6, 293.15)
	fmt.Printf("%.0f °C %v\n", hot-273.15, err)
	// Output: 242 °C <nil>
}

func ExampleEntryGap() {
	gap, _, err := assembly.EntryGap(assembly.Entry{Seat: 0.025, Interference: 40e-6, Hub: 11.7e-6, Room: 293.15}, 573.15, 293.15)
	fmt.Printf("%.0f µm %v\n", 1e6*gap, err)
	// Output: 42 µm <nil>
}
