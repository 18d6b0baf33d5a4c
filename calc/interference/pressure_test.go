package interference_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

var steel = interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 11.7e-6}
var bronze = interference.Elastic{E: 100e9, Nu: 0.34, Alpha: 18e-6}
var iron = interference.Elastic{E: 110e9, Nu: 0.26, Alpha: 10.8e-6}

// The books give interference now on the radius, now on the diameter; here it is
// on diameter, so radial ones are doubled.
func TestContactPressureAgreesWithTheBooks(t *testing.T) {
	rows := outside.Read(t, "worked.json")
	a := outside.Get(t, rows, "A01")
	alike := func(row outside.Row, bore, seat, out float64, e string) interference.Pair {
		m := interference.Elastic{E: q.Stress(row.In(t, e)), Nu: 0.3} // alike on both sides, so ν drops out
		return interference.Pair{Bore: q.Length(bore), Seat: q.Length(seat), Outside: q.Length(out), Shaft: m, Hub: m}
	}
	p, err := interference.ContactPressure(alike(a, 2*a.In(t, "inner_radius"), 2*a.In(t, "interface_radius"), 2*a.In(t, "outer_radius"), "E"), q.Length(2*a.In(t, "radial_interference")))
	fine(t, err)
	a.Want(t, "interface_pressure", float64(p))

	a = outside.Get(t, rows, "A02")
	p, err = interference.ContactPressure(alike(a, 2*a.In(t, "a"), 2*a.In(t, "b"), 2*a.In(t, "c"), "E"), q.Length(2*a.In(t, "radial_interference")))
	fine(t, err)
	a.Want(t, "contact_pressure", float64(p))

	a = outside.Get(t, rows, "A08")
	p, err = interference.ContactPressure(alike(a, a.In(t, "bore_dia"), a.In(t, "joint_dia"), a.In(t, "outer_dia"), "E"), q.Length(a.In(t, "diametral_interference")))
	fine(t, err)
	a.Want(t, "radial_pressure", float64(p))

	a = outside.Get(t, rows, "A07")
	δ, err := interference.InterferenceFor(alike(a, a.In(t, "inner_bore_dia"), a.In(t, "joint_dia"), a.In(t, "outer_dia"), "E"), q.Stress(a.In(t, "radial_pressure")))
	fine(t, err)
	a.Want(t, "radial_interference", float64(δ)/2)
}

func TestHollowSteelShaftInIronDisc(t *testing.T) {
	a := outside.Get(t, outside.Read(t, "worked.json"), "A12")
	seat, out := q.Length(2*a.In(t, "b")), q.Length(2*a.In(t, "c"))
	pair := interference.Pair{
		Bore: q.Length(2 * a.In(t, "a")), Seat: seat, Outside: out,
		Shaft: interference.Elastic{E: q.Stress(a.In(t, "Es")), Nu: a.In(t, "nus")},
		Hub:   interference.Elastic{E: q.Stress(a.In(t, "Eh")), Nu: a.In(t, "nuh")},
	}
	perPressure, err := interference.HubHoop(seat, out, 1)
	fine(t, err)
	p := q.Stress(a.In(t, "max_hub_hoop")) / perPressure
	a.Want(t, "pressure", float64(p))
	δ, err := interference.InterferenceFor(pair, p)
	fine(t, err)
	a.Want(t, "radial_interference", float64(δ)/2)
	length := q.Length(a.In(t, "L"))
	f, err := interference.PressForce(interference.Stroke{Seat: seat, SeatLength: length, HubLength: length, Travel: length}, p, a.In(t, "f"))
	fine(t, err)
	a.Want(t, "press_force", float64(f))
	torque, err := interference.GripTorque(seat, length, p, a.In(t, "f"))
	fine(t, err)
	a.Want(t, "torque", float64(torque))
}

func TestSolidShaftOfTheHubsMaterialHasTheShortFormula(t *testing.T) {
	const d, D, δ = 0.025, 0.060, 20e-6
	p, err := interference.ContactPressure(interference.Pair{Seat: d, Outside: D, Shaft: steel, Hub: steel}, δ)
	fine(t, err)
	want := float64(steel.E) * δ * (D*D - d*d) / (2 * d * D * D)
	near(t, "pressure", float64(p), want, 1e-12)
}

func TestNoInterferenceNoPressure(t *testing.T) {
	p, err := interference.ContactPressure(interference.Pair{Seat: 0.025, Outside: 0.060, Shaft: steel, Hub: steel}, 0)
	if err != nil || p != 0 {
		t.Errorf("got %v, %v; want 0", p, err)
	}
}

func TestAThickerHubGripsHarder(t *testing.T) {
	var last q.Stress
	for _, outside := range []q.Length{0.028, 0.035, 0.05, 0.1, 1} {
		p, err := interference.ContactPressure(interference.Pair{Seat: 0.025, Outside: outside, Shaft: steel, Hub: iron}, 20e-6)
		fine(t, err)
		if p <= last {
			t.Errorf("hub of %v m grips with %v Pa, a thinner one with %v", outside, p, last)
		}
		last = p
	}
}

func TestInterferenceForUndoesContactPressure(t *testing.T) {
	pair := interference.Pair{Bore: 0.010, Seat: 0.025, Outside: 0.045, Shaft: steel, Hub: bronze}
	p, err := interference.ContactPressure(pair, 33e-6)
	fine(t, err)
	δ, err := interference.InterferenceFor(pair, p)
	fine(t, err)
	near(t, "interference", float64(δ), 33e-6, 1e-12)
}

func TestContactPressureRefuses(t *testing.T) {
	sound := interference.Pair{Seat: 0.025, Outside: 0.060, Shaft: steel, Hub: steel}
	nan := q.Length(math.NaN())
	for _, c := range []struct {
		what  string
		spoil func(p *interference.Pair, δ *q.Length)
		blame string
	}{
		{"a hub without wall", func(p *interference.Pair, _ *q.Length) { p.Outside = p.Seat }, "bore of the hub"},
		{"a shaft all hole", func(p *interference.Pair, _ *q.Length) { p.Bore = p.Seat }, "bore of the shaft"},
		{"a hole of less than nothing", func(p *interference.Pair, _ *q.Length) { p.Bore = -0.001 }, "bore of the shaft"},
		{"an unknown seat", func(p *interference.Pair, _ *q.Length) { p.Seat = nan }, "bore of the shaft"},
		{"a shaft without stiffness", func(p *interference.Pair, _ *q.Length) { p.Shaft.E = 0 }, "Young's modulus of the shaft"},
		{"a swelling hub", func(p *interference.Pair, _ *q.Length) { p.Hub.Nu = 0.6 }, "Poisson's number of the hub"},
		{"a clearance", func(_ *interference.Pair, δ *q.Length) { *δ = -1e-6 }, "interference"},
		{"an unknown interference", func(_ *interference.Pair, δ *q.Length) { *δ = nan }, "interference"},
	} {
		pair, δ := sound, q.Length(20e-6)
		c.spoil(&pair, &δ)
		_, err := interference.ContactPressure(pair, δ)
		refused(t, c.what, err, c.blame)
	}
}

func ExampleContactPressure() {
	// A 25 mm steel stud pressed 20 µm into an iron lever eye of 50 mm.
	p, err := interference.ContactPressure(interference.Pair{
		Seat: 0.025, Outside: 0.050,
		Shaft: interference.Elastic{E: 206e9, Nu: 0.3},
		Hub:   interference.Elastic{E: 110e9, Nu: 0.26},
	}, 20e-6)
	fmt.Printf("%.1f MPa %v\n", p/1e6, err)
	// Output: 38.3 MPa <nil>
}

func fine(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g within %g of it", what, got, want, rel)
	}
}

func refused(t *testing.T, what string, err error, blame string) {
	t.Helper()
	var refusal *basis.Refusal
	if !errors.As(err, &refusal) || refusal.Name != blame {
		t.Errorf("%s: err = %v, want %s blamed", what, err, blame)
	}
}
