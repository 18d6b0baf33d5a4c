package buildup_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/buildup"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, buildup.Kernels()) }

func TestFillerOfAJointAgreesWithASecondRoute(t *testing.T) {
	for _, id := range []string{"R70-25", "R70-50"} {
		r := outside.Get(t, outside.Read(t, "shop.json"), id)
		v, err := buildup.ShaftCoat(buildup.Coat{From: q.Length(r.In(t, "d")), As: q.Length(r.In(t, "d") + r.In(t, "gap")), Length: q.Length(r.In(t, "L"))})
		kerneltest.Fine(t, err)
		r.Want(t, "volume", float64(v))
		m, err := buildup.Filler(v, q.Density(r.In(t, "density")), r.In(t, "efficiency"))
		kerneltest.Fine(t, err)
		r.Want(t, "mass", float64(m))
	}
}

func TestBuildUpOfAShaftAgreesWithASecondRoute(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "shop.json"), "R71-50")
	v, err := buildup.ShaftCoat(buildup.Coat{From: q.Length(r.In(t, "d")), As: q.Length(r.In(t, "as")), Length: q.Length(r.In(t, "L"))})
	kerneltest.Fine(t, err)
	r.Want(t, "volume", float64(v))
	m, err := buildup.Filler(v, q.Density(r.In(t, "density")), 1)
	kerneltest.Fine(t, err)
	r.Want(t, "mass", float64(m))
}

func TestFillerAgreesWithTheHandbooks(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "shop.json"), "H01")
	m, err := buildup.Filler(q.Volume(r.In(t, "volume")), q.Density(r.In(t, "density")), r.In(t, "efficiency"))
	kerneltest.Fine(t, err)
	r.Want(t, "mass", float64(m))
	r = outside.Get(t, outside.Read(t, "shop.json"), "H02")
	m, err = buildup.Filler(q.Volume(r.In(t, "deposit")/r.In(t, "density")), q.Density(r.In(t, "density")), r.In(t, "efficiency"))
	kerneltest.Fine(t, err)
	r.Want(t, "mass", float64(m))
}

// A thin coat is its skin times its thickness: π·D·t·L.
func TestAThinCoatIsAreaTimesThickness(t *testing.T) {
	const thickness = 1e-7 // per side
	v, err := buildup.ShaftCoat(buildup.Coat{From: 0.050, As: 0.050 + 2*thickness, Length: 0.040})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "volume", float64(v), math.Pi*0.050*thickness*0.040, 3e-6) // the coat itself makes 2e-6
}

// What is run out past the worn length is metal of the same ring.
func TestRunOutCountsAtBothEnds(t *testing.T) {
	with, err := buildup.BoreCoat(buildup.Coat{From: 0.044, As: 0.040, Length: 0.030, RunOut: 0.013})
	kerneltest.Fine(t, err)
	long, err := buildup.BoreCoat(buildup.Coat{From: 0.044, As: 0.040, Length: 0.056})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "volume", float64(with), float64(long), 1e-12)
}

// Laid on and turned off again to the undercut: nothing is won or lost.
func TestWhatIsLaidOnCanBeTurnedOff(t *testing.T) {
	on, err := buildup.ShaftCoat(buildup.Coat{From: 0.0484, As: 0.052, Length: 0.030})
	kerneltest.Fine(t, err)
	rough, err := buildup.TurnedOff(0.052, 0.050, 0.030)
	kerneltest.Fine(t, err)
	rest, err := buildup.TurnedOff(0.050, 0.0484, 0.030)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "off", float64(rough+rest), float64(on), 1e-12)
	in, err := buildup.BoreCoat(buildup.Coat{From: 0.044, As: 0.040, Length: 0.030})
	kerneltest.Fine(t, err)
	out, err := buildup.BoredOut(0.040, 0.044, 0.030)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "out", float64(out), float64(in), 1e-12)
}

func TestNothingTurnedIsNothing(t *testing.T) {
	if v, err := buildup.TurnedOff(0.05, 0.05, 0.03); err != nil || v != 0 {
		t.Errorf("a cut of no depth takes %v, %v", v, err)
	}
}

func TestLayersAreWhole(t *testing.T) {
	for _, c := range []struct {
		coat, layer q.Length
		want        int
	}{{0.6e-3, 0.2e-3, 3}, {0.61e-3, 0.2e-3, 4}, {0, 1e-3, 0}, {2e-3, 3e-3, 1}} {
		if n, err := buildup.Layers(c.coat, c.layer); err != nil || n != c.want {
			t.Errorf("%v in layers of %v: %d, %v; want %d", c.coat, c.layer, n, err, c.want)
		}
	}
}

// A welder who loses more buys more; a thicker layer needs fewer.
func TestDirections(t *testing.T) {
	some, err := buildup.Filler(1e-5, 7850, 0.95)
	kerneltest.Fine(t, err)
	more, err := buildup.Filler(1e-5, 7850, 0.65)
	kerneltest.Fine(t, err)
	if !(more > some) {
		t.Errorf("at 65 %% %v kg, at 95 %% %v kg", more, some)
	}
}

func TestRefusals(t *testing.T) {
	nan := q.Length(math.NaN())
	shaft := func(c buildup.Coat) func() error {
		return func() error { _, err := buildup.ShaftCoat(c); return err }
	}
	bore := func(c buildup.Coat) func() error {
		return func() error { _, err := buildup.BoreCoat(c); return err }
	}
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"no shaft", "undercut size", shaft(buildup.Coat{As: 1, Length: 1})},
		{"a coat that adds nothing", "size as deposited", shaft(buildup.Coat{From: 1, As: 1, Length: 1})},
		{"no length", "worn length", shaft(buildup.Coat{From: 1, As: 2})},
		{"run-out short of the end", "run-out past each end", shaft(buildup.Coat{From: 1, As: 2, Length: 1, RunOut: -1})},
		{"unknown run-out", "run-out past each end", shaft(buildup.Coat{From: 1, As: 2, Length: 1, RunOut: nan})},
		{"no bore", "size bored out to", bore(buildup.Coat{As: 1, Length: 1})},
		{"a bore grown by its coat", "size as deposited", bore(buildup.Coat{From: 1, As: 1.1, Length: 1})},
		{"a bore filled up", "size as deposited", bore(buildup.Coat{From: 1, Length: 1})},
		{"turned to nothing", "size after turning", func() error { _, err := buildup.TurnedOff(1, 0, 1); return err }},
		{"grown by turning", "size before turning", func() error { _, err := buildup.TurnedOff(1, 2, 1); return err }},
		{"no cut", "length of cut", func() error { _, err := buildup.TurnedOff(2, 1, nan); return err }},
		{"no hole", "size before boring", func() error { _, err := buildup.BoredOut(0, 1, 1); return err }},
		{"shrunk by boring", "size after boring", func() error { _, err := buildup.BoredOut(2, 1, 1); return err }},
		{"no cut in the bore", "length of cut", func() error { _, err := buildup.BoredOut(1, 2, 0); return err }},
		{"unknown metal", "volume of metal", func() error { _, err := buildup.Filler(q.Volume(nan), 1, 1); return err }},
		{"no weight", "density", func() error { _, err := buildup.Filler(1, 0, 1); return err }},
		{"all lost", "deposit efficiency", func() error { _, err := buildup.Filler(1, 1, 0); return err }},
		{"per cent for a part", "deposit efficiency", func() error { _, err := buildup.Filler(1, 1, 65); return err }},
		{"less than no coat", "coat per side", func() error { _, err := buildup.Layers(-1, 1); return err }},
		{"layers of nothing", "thickness of a layer", func() error { _, err := buildup.Layers(1, 0); return err }},
		{"metres for millimetres", "thickness of a layer", func() error { _, err := buildup.Layers(2, 1e-3); return err }},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleShaftCoat() {
	// A 50 mm seat 30 long, undercut to 48.4, laid on to 52, 5 mm past each end.
	v, err := buildup.ShaftCoat(buildup.Coat{From: 0.0484, As: 0.052, Length: 0.030, RunOut: 0.005})
	fmt.Printf("%.1f cm³ %v\n", 1e6*v, err)
	// Output: 11.4 cm³ <nil>
}

func ExampleFiller() {
	m, err := buildup.Filler(11.4e-6, 7850, 0.65)
	fmt.Printf("%.0f g of electrode %v\n", 1e3*m, err)
	// Output: 138 g of electrode <nil>
}
