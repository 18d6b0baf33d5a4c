package keyed_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/keyed"
	q "wornfit/calc/quantity"
)

const inch = 0.0254

// A 1/4 in square key in a 1 1/4 in shaft, half in each, with 0.005 in over it.
func quarter() keyed.Keyed {
	return keyed.Keyed{Shaft: 1.25 * inch, Bore: 1.25 * inch, Width: inch / 4, Height: inch / 4, ShaftKeyway: inch / 8, HubKeyway: 0.130 * inch}
}

// A fitter's sums: 1.250 trued by 0.060 leaves a keyway of 0.125 only 0.095 deep,
// and the key stands out 0.155 instead of 0.125.
func TestAShaftTurnedDownSixtyThou(t *testing.T) {
	l, notes, err := keyed.Recut(quarter(), 1.19*inch, 1.25*inch)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "depth", float64(l.ShaftDepth), 0.095*inch, 1e-9)
	kerneltest.Near(t, "stands out", float64(l.StandsOut), 0.155*inch, 1e-9)
	kerneltest.Near(t, "room", float64(l.Room), 0.005*inch, 1e-9)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
}

// Second route: points on the keyway. The wall's top is where the round meets the
// side of the key, found by halving.
func TestWallsByHalving(t *testing.T) {
	k := quarter()
	const shaft, bore = 1.2 * inch, 1.28 * inch
	l, _, err := keyed.Recut(k, shaft, bore)
	kerneltest.Fine(t, err)
	edge := func(round float64) float64 {
		lo, hi := 0.0, round/2
		for range 200 {
			if y := (lo + hi) / 2; y*y+float64(k.Width*k.Width)/4 < round*round/4 {
				lo = y
			} else {
				hi = y
			}
		}
		return lo
	}
	bottom := float64(k.Shaft/2 - k.ShaftKeyway)
	kerneltest.Near(t, "in shaft", float64(l.InShaft), edge(shaft)-bottom, 1e-9)
	kerneltest.Near(t, "in hub", float64(l.InHub), bottom+float64(k.Height)-edge(bore), 1e-9)
}

// Nothing recut and a narrow key on a thick shaft: what is left is what was cut.
func TestNothingRecutNothingLost(t *testing.T) {
	k := keyed.Keyed{Shaft: 1, Bore: 1, Width: 1e-4, Height: 0.02, ShaftKeyway: 0.01, HubKeyway: 0.0105}
	l, _, err := keyed.Recut(k, 1, 1)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "in shaft", float64(l.InShaft), 0.01, 1e-6)
	kerneltest.Near(t, "in hub", float64(l.InHub), 0.01, 1e-6)
	torque, _, err := keyed.RecutTorque(k, 1, 1, 0.05, 1e8, 1e8)
	kerneltest.Fine(t, err)
	book, err := keyed.CrushTorque(keyed.Key{Shaft: 1, Width: 1e-4, Depth: 0.01, Length: 0.05}, 1e8)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "as the books", float64(torque), float64(book), 1e-6)
}

// The more is turned off or opened out, the less is carried; a bigger round bends
// its keyway's edges down less.
func TestRecutDirections(t *testing.T) {
	last := math.Inf(1)
	for _, off := range []float64{0, 0.02, 0.05, 0.08} {
		got, _, err := keyed.RecutTorque(quarter(), q.Length(1.25-off)*inch, q.Length(1.25+off/4)*inch, 0.04, 2e8, 1e8)
		kerneltest.Fine(t, err)
		if !(float64(got) < last) {
			t.Errorf("%v off: %v, before %v", off, got, last)
		}
		last = float64(got)
	}
	small, err := keyed.ChordDrop(0.02, 0.006)
	kerneltest.Fine(t, err)
	large, err := keyed.ChordDrop(0.08, 0.006)
	kerneltest.Fine(t, err)
	if !(small > large) {
		t.Errorf("drops %v and %v", small, large)
	}
	kerneltest.Near(t, "3-4-5", float64(small), 0.01-math.Sqrt(0.01*0.01-0.003*0.003), 1e-12)
}

// The weaker wall decides: each metal made soft in turn takes the torque down with it.
func TestTheWeakerWallDecides(t *testing.T) {
	k := quarter()
	l, _, err := keyed.Recut(k, k.Shaft, k.Bore)
	kerneltest.Fine(t, err)
	const length = 0.04
	for _, c := range []struct {
		shaft, hub q.Stress
		wall       q.Length
	}{{1e8, 9e8, l.InShaft}, {9e8, 1e8, l.InHub}} {
		got, _, err := keyed.RecutTorque(k, k.Shaft, k.Bore, length, c.shaft, c.hub)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "torque", float64(got), 1e8*float64(c.wall)*length*float64(k.Shaft)/2, 1e-12)
	}
}

// A keyway cut shallow in the hub bears no further than its bottom, however high the key.
func TestAShallowHubKeyway(t *testing.T) {
	k := quarter()
	k.HubKeyway = 0.080 * inch
	l, notes, err := keyed.Recut(k, k.Shaft, k.Bore)
	kerneltest.Fine(t, err)
	drop, err := keyed.ChordDrop(k.Bore, k.Width)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "in hub", float64(l.InHub), 0.080*inch+float64(drop), 1e-9)
	if len(notes) != 1 {
		t.Errorf("notes %v, want one: the key stands too high", notes)
	}
}

func TestAKeyTooHighHoldsTheHubOff(t *testing.T) {
	k := quarter()
	k.Height += 0.010 * inch
	l, notes, err := keyed.Recut(k, k.Shaft, k.Bore)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "room", float64(l.Room), -0.005*inch, 1e-9)
	if len(notes) != 1 {
		t.Errorf("notes %v, want one", notes)
	}
}

func TestRecutRefusals(t *testing.T) {
	recut := func(spoil func(*keyed.Keyed), shaft, bore q.Length) func() error {
		return func() error {
			k := quarter()
			spoil(&k)
			_, _, err := keyed.Recut(k, shaft*inch, bore*inch)
			return err
		}
	}
	torque := func(length q.Length, shaft, hub q.Stress) func() error {
		return func() error {
			_, _, err := keyed.RecutTorque(quarter(), 1.25*inch, 1.25*inch, length, shaft, hub)
			return err
		}
	}
	sound := func(*keyed.Keyed) {}
	blamed(t, []blame{
		{"no round", "diameter of the round", func() error { _, err := keyed.ChordDrop(0, 1); return err }},
		{"wider than its round", "width of the key", func() error { _, err := keyed.ChordDrop(1, 1); return err }},
		{"no shaft", "shaft diameter", recut(func(k *keyed.Keyed) { k.Shaft = 0 }, 1.2, 1.25)},
		{"no bore", "bore", recut(func(k *keyed.Keyed) { k.Bore = 0 }, 1.2, 1.25)},
		{"no keyway", "depth of the shaft's keyway", recut(func(k *keyed.Keyed) { k.ShaftKeyway = 0 }, 1.2, 1.25)},
		{"a key sunk in", "height of the key", recut(func(k *keyed.Keyed) { k.Height = inch / 8 }, 1.2, 1.25)},
		{"no keyway in the hub", "depth of the hub's keyway", recut(func(k *keyed.Keyed) { k.HubKeyway = 0 }, 1.2, 1.25)},
		{"a shaft grown", "size turned to", recut(sound, 1.26, 1.25)},
		{"turned through the keyway", "size turned to", recut(sound, 1.0, 1.25)},
		{"a bore shrunk", "bore opened to", recut(sound, 1.25, 1.24)},
		{"opened through the keyway", "bore opened to", recut(sound, 1.25, 1.6)},
		{"no key", "length of the key", torque(0, 1, 1)},
		{"no strength", "crushing stress of the shaft", torque(1, 0, 1)},
		{"no strength in the hub", "crushing stress of the hub", torque(1, 1, q.Stress(math.NaN()))},
	})
}

func ExampleRecut() {
	// A 1 1/4 in shaft with a 1/4 in key, turned down 0.060 in.
	l, _, err := keyed.Recut(quarter(), 1.19*inch, 1.25*inch)
	fmt.Printf("%.4f in bears in the shaft, %.4f in in the hub %v\n", l.InShaft/inch, l.InHub/inch, err)
	// Output: 0.0817 in bears in the shaft, 0.1376 in in the hub <nil>
}

func BenchmarkKernels(b *testing.B) {
	b.ReportAllocs()
	type call struct {
		value func([]float64) float64
		x     []float64
	}
	var calls []call
	for _, k := range keyed.Kernels() {
		x := make([]float64, len(k.Args))
		for i, a := range k.Args {
			x[i] = a.Range.Lo + (a.Range.Hi-a.Range.Lo)*float64(i+1)/float64(len(x)+1)
		}
		calls = append(calls, call{k.Value, x})
	}
	for b.Loop() {
		for _, c := range calls {
			c.value(c.x)
		}
	}
}
