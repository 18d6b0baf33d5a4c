package keyed_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/keyed"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, keyed.Kernels()) }

// Shigley's square key (from memory) and Wentzell's: the length at which a key
// just carries the torque is the torque over that of a unit length.
func TestKeysAgreeWithTheBooks(t *testing.T) {
	for _, c := range []struct{ id, d, shear, crush string }{{"E01", "d", "Sy", "Sy"}, {"E02", "D", "Ss", "Sc"}} {
		r := outside.Get(t, outside.Read(t, "shop.json"), c.id)
		torque := r.In(t, "power") / (2 * math.Pi * r.In(t, "n"))
		side := q.Length(r.In(t, "key"))
		k := keyed.Key{Shaft: q.Length(r.In(t, c.d)), Width: side, Depth: side / 2, Length: 1}
		shear, crush := r.In(t, c.shear)/r.In(t, "factor"), r.In(t, c.crush)/r.In(t, "factor")
		if c.id == "E01" {
			shear *= 0.577 // the book's share of the yield
			r.Want(t, "F", 2*torque/float64(k.Shaft))
		} else {
			r.Want(t, "torque", torque)
		}
		byShear, err := keyed.ShearTorque(k, q.Stress(shear))
		kerneltest.Fine(t, err)
		r.Want(t, "length_shear", torque/float64(byShear))
		byCrush, err := keyed.CrushTorque(k, q.Stress(crush))
		kerneltest.Fine(t, err)
		r.Want(t, "length_crush", torque/float64(byCrush))
	}
}

// A key of the printed height crushes when it shears, and the printed length
// carries what the shaft carries.
func TestAKeyAsStrongAsItsShaft(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "shop.json"), "E04")
	d, tau := r.In(t, "d"), r.In(t, "tau")
	k := keyed.Key{Shaft: q.Length(d), Width: q.Length(r.In(t, "b")), Depth: 1, Length: 1}
	shear, err := keyed.ShearTorque(k, q.Stress(tau))
	kerneltest.Fine(t, err)
	k.Depth = k.Width / 2
	crush, err := keyed.CrushTorque(k, q.Stress(r.In(t, "sigma_c")))
	kerneltest.Fine(t, err)
	r.Want(t, "t_equal_strength", 2*float64(k.Depth)*float64(shear/crush))
	r.Want(t, "length", tau*math.Pi*d*d*d/16/float64(shear))
}

func TestRoundPinsAgreeWithStatics(t *testing.T) {
	for _, id := range []string{"E07", "R60-19.05", "R60-25"} {
		r := outside.Get(t, outside.Read(t, "shop.json"), id)
		p := keyed.RoundPins{Joint: q.Length(r.In(t, "D")), Pin: q.Length(r.In(t, "d")), Length: q.Length(r.In(t, "l")), Count: 1}
		shear, notes, err := keyed.PinShearTorque(p, q.Stress(r.In(t, "tau")))
		kerneltest.Fine(t, err)
		r.Want(t, "T", float64(shear))
		if len(notes) > 0 {
			t.Errorf("%s: notes %v, want none", id, notes)
		}
		crush, _, err := keyed.PinCrushTorque(p, q.Stress(r.In(t, "p")))
		kerneltest.Fine(t, err)
		r.Want(t, "T", float64(crush))
	}
}

// Second route: the cross pin's pressure summed strip by strip, rising from the
// middle of the shaft and even on the hub's two walls.
func TestCrossPinByStrips(t *testing.T) {
	const shaft, hub, pin, tau, p = 0.030, 0.055, 0.008, 80e6, 120e6
	got, notes, err := keyed.CrossPinHolds(keyed.CrossPin{Shaft: shaft, Hub: hub, Pin: pin}, tau, p, p)
	kerneltest.Fine(t, err)
	const n = 100000
	var inShaft, inHub float64
	for i := range n {
		at := (float64(i) + 0.5) / n
		r := at * shaft / 2
		inShaft += 2 * p * (r / (shaft / 2)) * pin * r * (shaft / 2 / n)
		r = shaft/2 + at*(hub-shaft)/2
		inHub += 2 * p * pin * r * ((hub - shaft) / 2 / n)
	}
	kerneltest.Near(t, "shaft", float64(got.Shaft), inShaft, 1e-9)
	kerneltest.Near(t, "hub", float64(got.Hub), inHub, 1e-9)
	kerneltest.Near(t, "shear", float64(got.Shear), 2*tau*math.Pi*pin*pin/4*shaft/2, 1e-12) // two faces at half the shaft
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
}

// Two pins count for one and a half; a stout pin and a cross pin over a third are noted.
func TestSharingAndNotes(t *testing.T) {
	p := keyed.RoundPins{Joint: 0.025, Pin: 0.005, Length: 0.02, Count: 1}
	one, _, err := keyed.PinShearTorque(p, 1e8)
	kerneltest.Fine(t, err)
	p.Count = 2
	two, notes, err := keyed.PinShearTorque(p, 1e8)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "two pins", float64(two), 1.5*float64(one), 1e-12)
	if len(notes) != 1 || notes[0].Grade != basis.Memory {
		t.Errorf("notes %v, want one from memory", notes)
	}
	p.Count, p.Pin = 1, 0.007
	_, notes, err = keyed.PinCrushTorque(p, 1e8)
	if err != nil || len(notes) != 1 || notes[0].Grade != basis.Practice {
		t.Errorf("a stout pin: %v, %v; want one note", notes, err)
	}
	_, notes, err = keyed.CrossPinHolds(keyed.CrossPin{Shaft: 0.02, Hub: 0.04, Pin: 0.008}, 1, 1, 1)
	if err != nil || len(notes) != 1 {
		t.Errorf("a stout cross pin: %v, %v; want one note", notes, err)
	}
}

// As the hub's wall goes, so does what it holds.
func TestAHubOfNoWallHoldsNothing(t *testing.T) {
	thin, _, err := keyed.CrossPinHolds(keyed.CrossPin{Shaft: 0.03, Hub: 0.03 * (1 + 1e-9), Pin: 0.008}, 1e8, 1e8, 1e8)
	kerneltest.Fine(t, err)
	if !(thin.Hub < 1e-5) {
		t.Errorf("a hub of no wall holds %v N m", thin.Hub)
	}
}

// Rows of the two standards as the trade knows them; the steps end with their size.
func TestKeyFor(t *testing.T) {
	const inch, mm = 0.0254, 1e-3
	for _, c := range []struct {
		shaft         q.Length
		system        keyed.System
		width, height float64
		grade         basis.Grade
	}{
		{1.25 * inch, keyed.Inch, 0.25 * inch, 0.25 * inch, basis.Page}, {1.2501 * inch, keyed.Inch, 0.3125 * inch, 0.3125 * inch, basis.Page},
		{30 * mm, keyed.Metric, 8 * mm, 7 * mm, basis.Memory}, {30.01 * mm, keyed.Metric, 10 * mm, 8 * mm, basis.Memory},
	} {
		k, notes, err := keyed.KeyFor(c.shaft, c.system)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "width", float64(k.Width), c.width, 1e-12)
		kerneltest.Near(t, "height", float64(k.Height), c.height, 1e-12)
		if k.Grade != c.grade || (len(notes) > 0) != c.grade.Weak() || k.Source == "" {
			t.Errorf("%v: grade %v, notes %v, source %q", c.shaft, k.Grade, notes, k.Source)
		}
	}
}

// Every row is a key that fits its shaft, and no shaft falls between two rows.
func TestEveryKeyOfTheTable(t *testing.T) {
	for _, s := range []keyed.System{keyed.Metric, keyed.Inch} {
		list := keyed.Keys(s)
		if len(list) < 13 {
			t.Fatalf("%d %s keys", len(list), s)
		}
		for i, k := range list {
			if i > 0 && math.Abs(float64(k.Over-list[i-1].To)) > 1e-12 {
				t.Errorf("%s: a gap from %v to %v", s, list[i-1].To, k.Over)
			}
			room := k.ShaftKeyway + k.HubKeyway - k.Height
			if !(k.Width < k.Over && k.HubDepth() > 0.3*k.Height && k.HubDepth() <= k.Height/2+1e-12 && room > -1e-12 && room < 0.5e-3) {
				t.Errorf("%s over %v: key %v x %v in %v and %v", s, k.Over, k.Width, k.Height, k.ShaftKeyway, k.HubKeyway)
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	key := func(spoil func(*keyed.Key)) func() error {
		return func() error {
			k := keyed.Key{Shaft: 0.03, Width: 0.008, Depth: 0.0035, Length: 0.04}
			spoil(&k)
			_, err := keyed.ShearTorque(k, 1e8)
			return err
		}
	}
	pin := func(spoil func(*keyed.RoundPins)) func() error {
		return func() error {
			p := keyed.RoundPins{Joint: 0.03, Pin: 0.006, Length: 0.03, Count: 1}
			spoil(&p)
			_, _, err := keyed.PinCrushTorque(p, 1e8)
			return err
		}
	}
	cross := func(c keyed.CrossPin, shear, shaft, hub q.Stress) func() error {
		return func() error { _, _, err := keyed.CrossPinHolds(c, shear, shaft, hub); return err }
	}
	sound := keyed.CrossPin{Shaft: 0.03, Hub: 0.06, Pin: 0.008}
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"no shaft", "shaft diameter", key(func(k *keyed.Key) { k.Shaft = 0 })},
		{"a key wider than its shaft", "width of the key", key(func(k *keyed.Key) { k.Width = 0.03 })},
		{"nothing bears", "depth that bears", key(func(k *keyed.Key) { k.Depth = q.Length(nan) })},
		{"no key", "length of the key", key(func(k *keyed.Key) { k.Length = 0 })},
		{"no strength", "shear stress", func() error {
			_, err := keyed.ShearTorque(keyed.Key{Shaft: 1, Width: .1, Depth: 1, Length: 1}, 0)
			return err
		}},
		{"no crushing strength", "crushing stress", func() error {
			_, err := keyed.CrushTorque(keyed.Key{Shaft: 1, Width: .1, Depth: .1, Length: 1}, -1)
			return err
		}},
		{"a key down to the middle", "depth that bears", func() error {
			_, err := keyed.CrushTorque(keyed.Key{Shaft: 1, Width: .1, Depth: .5, Length: 1}, 1)
			return err
		}},
		{"no joint", "diameter of the joint", pin(func(p *keyed.RoundPins) { p.Joint = 0 })},
		{"a pin as thick as the joint", "diameter of the pin", pin(func(p *keyed.RoundPins) { p.Pin = p.Joint })},
		{"a pin of no length", "length of the pin", pin(func(p *keyed.RoundPins) { p.Length = -1 })},
		{"no pins", "number of pins", pin(func(p *keyed.RoundPins) { p.Count = 0 })},
		{"unknown strength", "shear stress", func() error {
			_, _, err := keyed.PinShearTorque(keyed.RoundPins{Joint: 1, Pin: .2, Length: 1, Count: 1}, q.Stress(nan))
			return err
		}},
		{"no cross shaft", "shaft diameter", cross(keyed.CrossPin{}, 1, 1, 1)},
		{"no pin", "diameter of the pin", cross(keyed.CrossPin{Shaft: 1, Hub: 2}, 1, 1, 1)},
		{"no hub", "outside of the hub", cross(keyed.CrossPin{Shaft: 1, Hub: 1, Pin: .2}, 1, 1, 1)},
		{"no shear", "shear stress", cross(sound, 0, 1, 1)},
		{"no shaft strength", "crushing stress of the shaft", cross(sound, 1, 0, 1)},
		{"no hub strength", "crushing stress of the hub", cross(sound, 1, 1, q.Stress(nan))},
		{"a shaft too thin for the table", "shaft diameter", func() error { _, _, err := keyed.KeyFor(0.006, keyed.Metric); return err }},
		{"a shaft too thick for the table", "shaft diameter", func() error { _, _, err := keyed.KeyFor(0.2, keyed.Inch); return err }},
		{"an unknown shaft", "shaft diameter", func() error { _, _, err := keyed.KeyFor(q.Length(nan), keyed.Inch); return err }},
		{"another system", "system of keys", func() error { _, _, err := keyed.KeyFor(0.03, "whitworth"); return err }},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleKeyFor() {
	k, _, err := keyed.KeyFor(0.0254*1.125, keyed.Inch)
	fmt.Printf("%.3f in wide, %.4f in of it in the hub, %v\n", k.Width/0.0254, k.HubDepth()/0.0254, err)
	// Output: 0.250 in wide, 0.1250 in of it in the hub, <nil>
}

func ExamplePinCrushTorque() {
	// A 6 mm pin half in a 25 mm joint, 25 long, an iron hub that stands 64 MPa.
	t, _, err := keyed.PinCrushTorque(keyed.RoundPins{Joint: 0.025, Pin: 0.006, Length: 0.025, Count: 1}, 64e6)
	fmt.Printf("%.0f N m %v\n", t, err)
	// Output: 60 N m <nil>
}
