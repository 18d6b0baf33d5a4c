package rotating_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
	"wornfit/calc/rotating"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, rotating.Kernels()) }

func partOf(t *testing.T, r outside.Row) rotating.Part {
	t.Helper()
	return rotating.Part{Mass: q.Mass(r.In(t, "m")), Swing: q.Length(r.In(t, "D")), Turns: q.Rotation(r.In(t, "n"))}
}

func TestEnergyAgreesWithOutsideExamples(t *testing.T) {
	rows := outside.Read(t, "shop.json")
	for _, id := range []string{"K01", "K02", "K04"} {
		r := outside.Get(t, rows, id)
		e, err := rotating.DiscEnergy(partOf(t, r))
		kerneltest.Fine(t, err)
		r.Want(t, "disc", float64(e))
	}
	r := outside.Get(t, rows, "K03")
	e, err := rotating.RimEnergy(partOf(t, r))
	kerneltest.Fine(t, err)
	r.Want(t, "rim", float64(e))
}

// Second route: the disc cut into thin rings, each at its own speed.
func TestADiscIsASumOfRings(t *testing.T) {
	const n = 20000
	p := rotating.Part{Mass: 18, Swing: 0.3, Turns: 20}
	var sum float64
	for i := range n {
		inner, outer := float64(i)/n, float64(i+1)/n
		e, err := rotating.RimEnergy(rotating.Part{
			Mass: p.Mass * q.Mass(outer*outer-inner*inner), Swing: p.Swing * q.Length((inner+outer)/2), Turns: p.Turns,
		})
		kerneltest.Fine(t, err)
		sum += float64(e)
	}
	disc, err := rotating.DiscEnergy(p)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "energy", sum, float64(disc), 1e-8)
}

// A part at rest stores nothing; twice the speed, four times the energy.
func TestEnergyGoesWithTheSquareOfSpeed(t *testing.T) {
	p := rotating.Part{Mass: 5, Swing: 0.2}
	if e, err := rotating.RimEnergy(p); err != nil || e != 0 {
		t.Errorf("at rest: %v J, %v", e, err)
	}
	p.Turns = 10
	slow, err := rotating.DiscEnergy(p)
	kerneltest.Fine(t, err)
	p.Turns = 20
	fast, err := rotating.DiscEnergy(p)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "energy", float64(fast), 4*float64(slow), 1e-12)
}

// A 1 m wheel at 60 rpm lays π metres a second.
func TestRimSpeedIsTheWayRound(t *testing.T) {
	v, err := rotating.RimSpeed(1, 1)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "speed", float64(v), 3.14159265358979, 1e-14)
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"no weight", "mass", func() error { _, err := rotating.DiscEnergy(rotating.Part{Swing: 1}); return err }},
		{"unknown weight", "mass", func() error { _, err := rotating.RimEnergy(rotating.Part{Mass: q.Mass(nan), Swing: 1}); return err }},
		{"no size", "greatest diameter", func() error { _, err := rotating.RimEnergy(rotating.Part{Mass: 1}); return err }},
		{"backwards", "speed of rotation", func() error { _, err := rotating.DiscEnergy(rotating.Part{Mass: 1, Swing: 1, Turns: -1}); return err }},
		{"no wheel", "greatest diameter", func() error { _, err := rotating.RimSpeed(0, 1); return err }},
		{"unknown speed", "speed of rotation", func() error { _, err := rotating.RimSpeed(1, q.Rotation(nan)); return err }},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleDiscEnergy() {
	e, err := rotating.DiscEnergy(rotating.Part{Mass: 18, Swing: 0.300, Turns: 20})
	fmt.Printf("%.0f J %v\n", e, err)
	// Output: 1599 J <nil>
}

func ExampleRimSpeed() {
	v, err := rotating.RimSpeed(0.500, 1450./60)
	fmt.Printf("%.1f m/s %v\n", v, err)
	// Output: 38.0 m/s <nil>
}
