package joints_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/joints"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, joints.Kernels()) }

// The filler maker's two examples: a flat lap and a tube in a socket.
func TestLapsAgreeWithTheHandbook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "F01")
	b := joints.Braze{Tensile: q.Stress(r.In(t, "T")), Shear: q.Stress(r.In(t, "L_shear")), Sound: r.In(t, "C")}
	flat, notes, err := joints.FlatLap(q.Length(r.In(t, "W")), b)
	kerneltest.Fine(t, err)
	r.Want(t, "lap", float64(flat.Length()))
	if len(notes) != 1 {
		t.Errorf("notes %v, want one", notes)
	}
	r = outside.Get(t, outside.Read(t, "shop.json"), "F02-tube")
	b = joints.Braze{Tensile: q.Stress(r.In(t, "T")), Shear: q.Stress(r.In(t, "L_shear")), Sound: r.In(t, "C")}
	tube, _, err := joints.TubeLap(q.Length(r.In(t, "D")), q.Length(r.In(t, "W")), b)
	kerneltest.Fine(t, err)
	r.Want(t, "lap", float64(tube.Balance))
}

// Second route: pull and shear of the whole lap balance. A tube of thin wall is a
// flat strip rolled up.
func TestLapsBalance(t *testing.T) {
	b := joints.Braze{Tensile: 300e6, Shear: 150e6, Sound: 0.8}
	tube, _, err := joints.TubeLap(0.025, 0.002, b)
	kerneltest.Fine(t, err)
	pull := 300e6 * math.Pi / 4 * (0.025*0.025 - 0.021*0.021)
	hold, err := joints.SleeveThrust(joints.Sleeve{Joint: 0.025, Length: tube.Balance, Shear: 150e6, Sound: 0.8})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "hold", float64(hold), pull, 1e-12)
	thin, _, err := joints.TubeLap(1, 1e-6, b)
	kerneltest.Fine(t, err)
	flat, _, err := joints.FlatLap(1e-6, b)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "thin tube", float64(thin.Balance), float64(flat.Balance), 1e-5)
}

// A weak member needs less, but never under three times its thickness; voids need more.
func TestLapDirections(t *testing.T) {
	weak, notes, err := joints.FlatLap(0.002, joints.Braze{Tensile: 100e6, Shear: 172e6, Sound: 0.8})
	kerneltest.Fine(t, err)
	if weak.Length() != 0.006 || !(weak.Balance < weak.Rule) || len(notes) != 1 {
		t.Errorf("%+v, %v", weak, notes)
	}
	full, _, err := joints.FlatLap(0.002, joints.Braze{Tensile: 700e6, Shear: 172e6, Sound: 1})
	kerneltest.Fine(t, err)
	holed, _, err := joints.FlatLap(0.002, joints.Braze{Tensile: 700e6, Shear: 172e6, Sound: 0.8})
	kerneltest.Fine(t, err)
	if !(holed.Length() > full.Length() && full.Length() > full.Rule) {
		t.Errorf("sound %+v, with voids %+v", full, holed)
	}
}

// Torque by thrust at the rim; a thrust and a torque that would each use 0.6 and
// 0.8 use the whole between them.
func TestSleevesBySums(t *testing.T) {
	s := joints.Sleeve{Joint: 0.03, Length: 0.025, Shear: 40e6, Sound: 0.8}
	f, err := joints.SleeveThrust(s)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "thrust", float64(f), 0.8*40e6*2*math.Pi*0.015*0.025, 1e-12)
	torque, err := joints.SleeveTorque(s)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "torque", float64(torque), float64(f)*0.015, 1e-12)
	use, err := joints.SleeveUse(s, 0.6*torque, -0.8*q.Force(f))
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "use", use, 1, 1e-12)
}

// A bronze bush in a steel bore loses its gap when hot, in iron with a cold core it
// gains; as hot and of one metal it only grows with the parts' difference: not at all.
func TestHotGap(t *testing.T) {
	g := joints.Gap{Cold: 0.15e-3, Joint: 0.040, Outer: 12e-6, Inner: 18e-6, OuterRise: 680, InnerRise: 680}
	hot, notes, err := joints.HotGap(g)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "bronze in steel", float64(hot), 0.15e-3-6e-6*0.040*680, 1e-12)
	if !(hot < 0) || len(notes) != 1 || notes[0].Grade != basis.Page {
		t.Errorf("%v with notes %v, want below 0 and one note", hot, notes)
	}
	// second route: the two hot diameters
	kerneltest.Near(t, "by sizes", float64(hot), (0.040+0.15e-3+0.040*12e-6*680)-0.040*(1+18e-6*680), 1e-9)
	g.Inner = 12e-6
	if same, notes, err := joints.HotGap(g); err != nil || math.Abs(float64(same)-0.15e-3) > 1e-18 || len(notes) > 0 {
		t.Errorf("one metal: %v, %v, %v", same, notes, err)
	}
	for _, cold := range []q.Length{0.02e-3, 0.4e-3} {
		g.Cold = cold
		if _, notes, err := joints.HotGap(g); err != nil || len(notes) != 1 {
			t.Errorf("%v: notes %v, %v; want one", cold, notes, err)
		}
	}
}

func TestBrazeRefusals(t *testing.T) {
	sound := joints.Braze{Tensile: 1, Shear: 1, Sound: 1}
	nan := math.NaN()
	flat := func(w q.Length, b joints.Braze) func() error {
		return func() error { _, _, err := joints.FlatLap(w, b); return err }
	}
	gap := func(g joints.Gap) func() error {
		return func() error { _, _, err := joints.HotGap(g); return err }
	}
	sleeve := func(s joints.Sleeve, torque q.Torque, thrust q.Force) func() error {
		return func() error { _, err := joints.SleeveUse(s, torque, thrust); return err }
	}
	whole := joints.Sleeve{Joint: 1, Length: 1, Shear: 1, Sound: 1}
	blamed(t, []blame{
		{"no member", "thickness of the thinner member", flat(0, sound)},
		{"no tensile", "tensile strength of the member", flat(1, joints.Braze{Shear: 1, Sound: 1})},
		{"no filler", "shear strength of the filler", flat(1, joints.Braze{Tensile: 1, Shear: q.Stress(nan), Sound: 1})},
		{"per cent", "sound part of the lap", flat(1, joints.Braze{Tensile: 1, Shear: 1, Sound: 80})},
		{"no tube", "outside diameter of the lap", func() error { _, _, err := joints.TubeLap(0, 1, sound); return err }},
		{"more wall than tube", "wall of the thinner member", func() error { _, _, err := joints.TubeLap(1, 0.6, sound); return err }},
		{"no gap known", "gap when cold", gap(joints.Gap{Cold: q.Length(nan), Joint: 1})},
		{"no joint", "diameter of the joint", gap(joints.Gap{})},
		{"micrometres for metres", "expansion of the outer part", gap(joints.Gap{Joint: 1, Outer: 12})},
		{"shrinking metal", "expansion of the inner part", gap(joints.Gap{Joint: 1, Inner: -1e-6})},
		{"hotter than fire", "warming of the outer part", gap(joints.Gap{Joint: 1, OuterRise: 5000})},
		{"unknown heat", "warming of the inner part", gap(joints.Gap{Joint: 1, InnerRise: q.TemperatureChange(nan)})},
		{"no diameter", "diameter of the joint", sleeve(joints.Sleeve{}, 1, 1)},
		{"no length", "length of the joint", sleeve(joints.Sleeve{Joint: 1, Shear: 1, Sound: 1}, 1, 1)},
		{"no shear", "shear stress", sleeve(joints.Sleeve{Joint: 1, Length: 1, Sound: 1}, 1, 1)},
		{"nothing sound", "sound part of the joint", sleeve(joints.Sleeve{Joint: 1, Length: 1, Shear: 1}, 1, 1)},
		{"unknown torque", "torque", sleeve(whole, q.Torque(nan), 1)},
		{"unknown thrust", "thrust", sleeve(whole, 1, q.Force(math.Inf(1)))},
		{"torque of nothing", "diameter of the joint", func() error { _, err := joints.SleeveTorque(joints.Sleeve{}); return err }},
		{"thrust of nothing", "diameter of the joint", func() error { _, err := joints.SleeveThrust(joints.Sleeve{}); return err }},
	})
}

type blame struct {
	what, blame string
	call        func() error
}

func blamed(t *testing.T, all []blame) {
	t.Helper()
	for _, c := range all {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleHotGap() {
	// A bronze bush, 0.15 mm loose in a 40 mm steel bore, both brought to 700 °C.
	hot, notes, err := joints.HotGap(joints.Gap{Cold: 0.15e-3, Joint: 0.040, Outer: 14e-6, Inner: 19e-6, OuterRise: 680, InnerRise: 680})
	fmt.Printf("%.3f mm, %s %v\n", 1e3*hot, notes[0].Says, err)
	// Output: 0.014 mm, under 0.05 mm on the diameter the braze does not run through <nil>
}

func ExampleSleeveTorque() {
	// A sleeve silver-brazed on a 30 mm shaft over 25 mm, four fifths sound, a quarter of 172 MPa allowed.
	t, err := joints.SleeveTorque(joints.Sleeve{Joint: 0.030, Length: 0.025, Shear: 43e6, Sound: 0.8})
	fmt.Printf("%.0f N m %v\n", t, err)
	// Output: 1216 N m <nil>
}

func BenchmarkKernels(b *testing.B) {
	b.ReportAllocs()
	type call struct {
		value func([]float64) float64
		x     []float64
	}
	var calls []call
	for _, k := range joints.Kernels() {
		x := make([]float64, len(k.Args))
		for i, a := range k.Args {
			x[i] = a.Range.Mid()
		}
		calls = append(calls, call{k.Value, x})
	}
	for b.Loop() {
		for _, c := range calls {
			c.value(c.x)
		}
	}
}
