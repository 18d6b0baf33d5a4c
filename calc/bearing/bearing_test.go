package bearing_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wornfit/calc/bearing"
	"wornfit/calc/interference"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, bearing.Kernels()) }

func TestPressureAndSpeedAgreeWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "C09")
	load, bore, speed := q.Force(r.In(t, "F")), q.Length(r.In(t, "D")), q.Rotation(r.In(t, "n"))
	p, err := bearing.Pressure(load, bore, q.Length(r.In(t, "chosen_L")))
	kerneltest.Fine(t, err)
	r.Want(t, "P", float64(p))
	v, err := bearing.SlidingSpeed(bore, speed)
	kerneltest.Fine(t, err)
	r.Want(t, "V", float64(v))
	// the length at which pv just meets the limit
	atOne, err := bearing.Pressure(load, bore, 1)
	kerneltest.Fine(t, err)
	pv, err := bearing.PressureSpeed(atOne, v)
	kerneltest.Fine(t, err)
	r.Want(t, "min_length", float64(pv)/r.In(t, "PV"))
}

func TestPressureAndDutyOfABrassBush(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "C11")
	p, err := bearing.Pressure(q.Force(r.In(t, "F")), q.Length(r.In(t, "D")), q.Length(r.In(t, "L")))
	kerneltest.Fine(t, err)
	r.Want(t, "Pmax", float64(p)*4/math.Pi) // the book spreads the load as a cosine
	pv, err := bearing.PressureSpeed(p, q.Speed(r.In(t, "V")))
	kerneltest.Fine(t, err)
	r.Want(t, "PV", float64(pv))
}

// Swinging half a turn to either side covers two turns a cycle.
func TestSwingingHalfATurnEachWayIsTwoTurns(t *testing.T) {
	swing, err := bearing.SwingSpeed(0.025, math.Pi, 3)
	kerneltest.Fine(t, err)
	turn, err := bearing.SlidingSpeed(0.025, 6)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "speed", float64(swing), float64(turn), 1e-12)
}

func bushedOf(t *testing.T, r outside.Row, press q.Length) bearing.Bushed {
	t.Helper()
	metal := func(n string) interference.Elastic {
		return interference.Elastic{E: q.Stress(r.In(t, "E"+n)), Nu: r.In(t, "nu"+n), Alpha: q.Expansion(r.In(t, "alpha"+n))}
	}
	return bearing.Bushed{
		Shaft: q.Length(r.In(t, "shaft")), Clearance: q.Length(r.In(t, "cold")), Press: press,
		Bush:    interference.Ring{Bore: q.Length(r.In(t, "d0")), Outside: q.Length(r.In(t, "d1")), Elastic: metal("1")},
		Housing: q.Length(r.In(t, "d2")), HousingMetal: metal("2"), ShaftExpands: q.Expansion(r.In(t, "alpha_shaft")),
		BushWarmer: q.TemperatureChange(r.In(t, "bush_warmer")), HousingWarmer: q.TemperatureChange(r.In(t, "housing_warmer")), ShaftWarmer: q.TemperatureChange(r.In(t, "shaft_warmer")),
	}
}

// Bronze bush 25 × 32 in steel, aluminium and a thin iron boss, warmed evenly
// and not. While it presses, how hard it was pressed does not matter.
func TestHotClearanceAgreesWithASecondRoute(t *testing.T) {
	n := 0
	for id, r := range outside.Read(t, "reference.json") {
		if !strings.HasPrefix(id, "R5") {
			continue
		}
		n++
		for _, press := range []q.Length{20e-6, 50e-6} {
			got, notes, err := bearing.HotClearance(bushedOf(t, r, press))
			kerneltest.Fine(t, err)
			if len(notes) > 0 {
				t.Errorf("%s: notes %v, want none", id, notes)
			}
			r.Want(t, "bore_grows", float64(got.BoreGrows))
			r.Want(t, "shaft_grows", float64(got.ShaftGrows))
			r.Want(t, "hot", float64(got.Clearance))
			r.Want(t, "pressure_change", float64(got.Press-got.PressCold))
		}
		stiff, _, err := bearing.StiffBoreGrowth(stiffOf(t, r))
		kerneltest.Fine(t, err)
		r.Want(t, "stiff_bore_grows", float64(stiff))
	}
	if n < 6 {
		t.Errorf("%d bearings tried, want 6", n)
	}
}

func stiffOf(t *testing.T, r outside.Row) bearing.Stiff {
	return bearing.Stiff{
		Bore: q.Length(r.In(t, "d0")), Outside: q.Length(r.In(t, "d1")), Nu: r.In(t, "nu1"),
		BushExpands: q.Expansion(r.In(t, "alpha1")), BushWarmer: q.TemperatureChange(r.In(t, "bush_warmer")),
		HousingGrows: q.Expansion(r.In(t, "alpha2")), HousingsWarmer: q.TemperatureChange(r.In(t, "housing_warmer")),
	}
}

// The layer solver with temperatures must say the same, pressed and come loose.
func TestHotClearanceAgreesWithTheLayers(t *testing.T) {
	bronze := interference.Elastic{E: 100e9, Nu: 0.34, Alpha: 18e-6}
	for _, c := range []struct {
		what    string
		housing interference.Elastic
		press   q.Length
		warmer  q.TemperatureChange
	}{
		{"bronze in steel, warm", interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 11.7e-6}, 30e-6, 80},
		{"bronze in steel, in frost", interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 11.7e-6}, 30e-6, -60},
		{"bronze in aluminium, warm and loose", interference.Elastic{E: 70e9, Nu: 0.33, Alpha: 23e-6}, 5e-6, 100},
	} {
		got, notes, err := bearing.HotClearance(bearing.Bushed{
			Shaft: 0.025, Clearance: 60e-6, Press: c.press, Bush: interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: bronze},
			Housing: 0.060, HousingMetal: c.housing, BushWarmer: c.warmer, HousingWarmer: c.warmer,
		})
		kerneltest.Fine(t, err)
		stack := interference.Stack{
			Bore:         0.025,
			Parts:        []interference.Part{{Outside: 0.032, Elastic: bronze}, {Outside: 0.060, Elastic: c.housing}},
			Interference: []q.Length{c.press},
		}
		cold, _, err := interference.Press(stack)
		kerneltest.Fine(t, err)
		stack.Parts[0].Warmer, stack.Parts[1].Warmer = c.warmer, c.warmer
		hot, open, err := interference.Press(stack)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, c.what+", bore", float64(got.BoreGrows), float64(hot.BoreGrows[0]-cold.BoreGrows[0]), 1e-9)
		kerneltest.Near(t, c.what+", clearance", float64(got.Clearance-60e-6), float64(got.BoreGrows), 1e-9)
		if math.Abs(float64(got.Press-hot.Pressure[0])) > 1e-3 || len(notes) != len(open) {
			t.Errorf("%s: press %v, notes %v; layers %v, %v", c.what, got.Press, notes, hot.Pressure[0], open)
		}
	}
}

// A free bronze bush would gain clearance over a steel shaft on warming; held in
// steel it loses some.
func TestABushHeldInSteelLosesClearance(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "reference.json"), "R50-60/60/60")
	b := bushedOf(t, r, 30e-6)
	got, _, err := bearing.HotClearance(b)
	kerneltest.Fine(t, err)
	r.Want(t, "free_bush_grows", float64(b.Bush.Bore)*float64(b.Bush.Alpha)*float64(b.BushWarmer))
	free, _, err := bearing.PlainHotClearance(bearing.Plain{
		Shaft: b.Shaft, Clearance: b.Clearance, HubGrows: b.Bush.Alpha, HubsWarmer: b.BushWarmer, ShaftExpands: b.ShaftExpands, ShaftWarmer: b.ShaftWarmer,
	})
	kerneltest.Fine(t, err)
	if !(got.Clearance < b.Clearance && free > b.Clearance) {
		t.Errorf("held %v, free %v, cold %v; want the cold one between", got.Clearance, free, b.Clearance)
	}
}

func TestStiffHousingIsAShortcutForThinWalls(t *testing.T) {
	steel := interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 11.7e-6}
	bronze := interference.Elastic{E: 100e9, Nu: 0.34, Alpha: 18e-6}
	for _, c := range []struct {
		outside q.Length
		within  float64
		noted   bool
	}{
		{0.0255, 0.015, false}, {0.027, 0.05, false}, {0.032, 0.18, true},
	} {
		full, _, err := bearing.HotClearance(bearing.Bushed{
			Shaft: 0.025, Press: 20e-6, Bush: interference.Ring{Bore: 0.025, Outside: c.outside, Elastic: bronze},
			Housing: 2 * c.outside, HousingMetal: steel, BushWarmer: 60, HousingWarmer: 60,
		})
		kerneltest.Fine(t, err)
		short, notes, err := bearing.StiffBoreGrowth(bearing.Stiff{
			Bore: 0.025, Outside: c.outside, Nu: 0.34, BushExpands: 18e-6, HousingGrows: 11.7e-6, BushWarmer: 60, HousingsWarmer: 60,
		})
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "short against full", float64(short), float64(full.BoreGrows), c.within)
		if (len(notes) > 0) != c.noted {
			t.Errorf("bush of outside %v: notes %v", c.outside, notes)
		}
	}
}

func TestASeizedShaftIsNoted(t *testing.T) {
	p := bearing.Plain{Shaft: 0.025, Clearance: 10e-6, HubGrows: 11.7e-6, ShaftExpands: 11.7e-6, HubsWarmer: 20, ShaftWarmer: 80}
	hot, notes, err := bearing.PlainHotClearance(p)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "hot", float64(hot), 10e-6-0.025*11.7e-6*60, 1e-12)
	if len(notes) != 1 || !strings.Contains(notes[0].Says, "no clearance left") {
		t.Errorf("notes %v, want one", notes)
	}
	p.ShaftWarmer = p.HubsWarmer
	hot, notes, err = bearing.PlainHotClearance(p)
	if err != nil || len(notes) > 0 || math.Abs(float64(hot)-10e-6) > 1e-15 {
		t.Errorf("all equally warm: %v, %v, %v; want the cold clearance", hot, notes, err)
	}
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	sound := bearing.Bushed{
		Shaft: 0.025, Clearance: 30e-6, Press: 20e-6, Housing: 0.06,
		Bush:         interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: interference.Elastic{E: 100e9, Nu: 0.34, Alpha: 18e-6}},
		HousingMetal: interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 11.7e-6}, ShaftExpands: 11.7e-6,
	}
	hot := func(spoil func(b *bearing.Bushed)) func() error {
		return func() error {
			b := sound
			spoil(&b)
			_, _, err := bearing.HotClearance(b)
			return err
		}
	}
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"unknown load", "load", func() error { _, err := bearing.Pressure(q.Force(nan), 1, 1); return err }},
		{"no diameter", "diameter", func() error { _, err := bearing.Pressure(1, 0, 1); return err }},
		{"no length", "length", func() error { _, err := bearing.Pressure(1, 1, 0); return err }},
		{"unknown diameter", "diameter", func() error { _, err := bearing.SlidingSpeed(q.Length(nan), 1); return err }},
		{"backwards", "speed", func() error { _, err := bearing.SlidingSpeed(1, -1); return err }},
		{"degrees for radians", "half swing", func() error { _, err := bearing.SwingSpeed(1, 45, 1); return err }},
		{"no pin", "diameter", func() error { _, err := bearing.SwingSpeed(0, 1, 1); return err }},
		{"unknown cycles", "cycles", func() error { _, err := bearing.SwingSpeed(1, 1, q.Rotation(nan)); return err }},
		{"suction", "pressure", func() error { _, err := bearing.PressureSpeed(-1, 1); return err }},
		{"backwards", "sliding speed", func() error { _, err := bearing.PressureSpeed(1, -1); return err }},
		{"no shaft", "shaft", hot(func(b *bearing.Bushed) { b.Shaft = 0 })},
		{"interference for clearance", "cold clearance", hot(func(b *bearing.Bushed) { b.Clearance = -1e-6 })},
		{"loose bush", "interference of the bush", hot(func(b *bearing.Bushed) { b.Press = -1e-6 })},
		{"no bore", "bore of the bush", hot(func(b *bearing.Bushed) { b.Bush.Bore = 0 })},
		{"no wall", "bore of the shaft", hot(func(b *bearing.Bushed) { b.Bush.Bore = b.Bush.Outside })},
		{"no housing", "bore of the hub", hot(func(b *bearing.Bushed) { b.Housing = 0.03 })},
		{"shrinks when warm", "expansion of the shaft", hot(func(b *bearing.Bushed) { b.ShaftExpands = -1 })},
		{"unknown warmth", "heat growth of the bush", hot(func(b *bearing.Bushed) { b.BushWarmer = q.TemperatureChange(nan) })},
		{"no plain shaft", "shaft", func() error { _, _, err := bearing.PlainHotClearance(bearing.Plain{}); return err }},
		{"unknown clearance", "cold clearance", func() error {
			_, _, err := bearing.PlainHotClearance(bearing.Plain{Shaft: 0.025, Clearance: q.Length(nan)})
			return err
		}},
		{"no stiff wall", "bore of the bush", func() error { _, _, err := bearing.StiffBoreGrowth(bearing.Stiff{Bore: 1, Outside: 1}); return err }},
		{"rubber that swells", "Poisson's number of the bush", func() error {
			_, _, err := bearing.StiffBoreGrowth(bearing.Stiff{Bore: 1, Outside: 2, Nu: 0.6})
			return err
		}},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExamplePressure() {
	p, err := bearing.Pressure(1000, 0.025, 0.040)
	fmt.Printf("%.1f MPa %v\n", p/1e6, err)
	// Output: 1.0 MPa <nil>
}

func ExampleSwingSpeed() {
	// A 30 mm pin swings 15° to either side, 20 times a minute.
	v, err := bearing.SwingSpeed(0.030, 15*math.Pi/180, 20./60)
	fmt.Printf("%.2f mm/s %v\n", 1e3*v, err)
	// Output: 5.24 mm/s <nil>
}

func ExampleHotClearance() {
	r, _, err := bearing.HotClearance(bearing.Bushed{
		Shaft: 0.025, Clearance: 30e-6, Press: 30e-6,
		Bush:    interference.Ring{Bore: 0.02503, Outside: 0.032, Elastic: interference.Elastic{E: 100e9, Nu: 0.34, Alpha: 18e-6}},
		Housing: 0.064, HousingMetal: interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 11.7e-6}, ShaftExpands: 11.7e-6,
		BushWarmer: 80, HousingWarmer: 40, ShaftWarmer: 90,
	})
	fmt.Printf("%.0f µm %v\n", 1e6*r.Clearance, err)
	// Output: 13 µm <nil>
}

func ExamplePlainHotClearance() {
	hot, _, err := bearing.PlainHotClearance(bearing.Plain{
		Shaft: 0.025, Clearance: 30e-6, HubGrows: 10.8e-6, HubsWarmer: 45, ShaftExpands: 11.7e-6, ShaftWarmer: 60,
	})
	fmt.Printf("%.1f µm %v\n", 1e6*hot, err)
	// Output: 24.6 µm <nil>
}
