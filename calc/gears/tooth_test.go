package gears_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/gears"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
	"wornfit/calc/rotating"
)

// Shigley's 16-tooth cut gear, from memory; the form factor is the row's and the
// table's alike.
func TestToothLoadAgreesWithTheBookInInches(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "G01")
	module := q.Length(1 / r.In(t, "P"))
	v, err := rotating.RimSpeed(q.Length(r.In(t, "N"))*module, q.Rotation(r.In(t, "n")))
	kerneltest.Fine(t, err)
	r.Want(t, "V", float64(v))
	kv, notes, err := gears.VelocityFactor(gears.Cut, v)
	kerneltest.Fine(t, err)
	r.Want(t, "Kv", kv)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
	y, _, err := gears.FormFactor(teeth(t, r, "N"))
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "form factor", y, r.In(t, "Y"), 1e-12)
	load, err := gears.ToothLoad(gears.Tooth{Module: module, Face: q.Length(r.In(t, "F")), Form: y}, q.Stress(r.In(t, "sigma")), kv)
	kerneltest.Fine(t, err)
	r.Want(t, "Wt", float64(load))
	r.Want(t, "power", float64(load)*float64(v))
}

// Jindal takes a third of the tensile strength for the tooth, a service factor and
// a factor of safety, and 3/(3+v).
func TestToothLoadAgreesWithTheBookInMillimetres(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "G04")
	tooth := gears.Tooth{Module: q.Length(r.In(t, "m")), Face: q.Length(r.In(t, "b")), Form: r.In(t, "Y")}
	allowed := q.Stress(r.In(t, "Sut") / 3) // the book's
	beam, err := gears.ToothLoad(tooth, allowed, 1)
	kerneltest.Fine(t, err)
	r.Want(t, "beam_strength", float64(beam))
	table, _, err := gears.FormFactor(teeth(t, r, "z"))
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "form factor", table, tooth.Form, 0.003) // two books' tables differ by one in the last place
	v, err := rotating.RimSpeed(tooth.Module*q.Length(r.In(t, "z")), q.Rotation(r.In(t, "n")))
	kerneltest.Fine(t, err)
	kv, _, err := gears.VelocityFactor(gears.OrdinaryMetric, v)
	kerneltest.Fine(t, err)
	load, err := gears.ToothLoad(tooth, allowed, kv)
	kerneltest.Fine(t, err)
	r.Want(t, "power", float64(load)*float64(v)/(r.In(t, "Cs")*r.In(t, "FOS")))
	back, err := gears.ToothStress(tooth, load, kv)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "stress of that load", float64(back), float64(allowed), 1e-13)
}

func TestRimFactorAgreesWithTheStandard(t *testing.T) {
	rows := outside.Read(t, "worked.json")
	for _, id := range []string{"G10-1.2", "G10-1", "G10-0.5"} {
		r := outside.Get(t, rows, id)
		kb, _, err := gears.RimFactor(q.Length(r.In(t, "mB"))*4.5e-3, 4.5e-3)
		kerneltest.Fine(t, err)
		r.Want(t, "KB", kb)
	}
}

func standardRack(t *testing.T, r outside.Row) gears.Rack {
	t.Helper()
	return gears.Rack{Pressure: r.In(t, "phi"), Addendum: r.In(t, "addendum"), Dedendum: r.In(t, "dedendum"), TipRadius: r.In(t, "tip_radius")}
}

// Thirteen gears by a second route, and the table of the books beside them; the
// table reads higher by what the doc comment of FormFactor says.
func TestFormFactorsAgreeWithASecondRoute(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "reference.json"), "R81")
	tried := 0
	for name := range r.Expected {
		number, own := strings.CutPrefix(name, "own_")
		if !own {
			continue
		}
		tried++
		z, err := strconv.Atoi(number)
		kerneltest.Fine(t, err)
		cut, notes, err := gears.GeneratedFormFactor(standardRack(t, r), z)
		kerneltest.Fine(t, err)
		r.Want(t, name, cut)
		if (len(notes) > 0) != (z > 150) {
			t.Errorf("%d teeth: notes %v", z, notes)
		}
		table, notes, err := gears.FormFactor(z)
		kerneltest.Fine(t, err)
		r.Want(t, "table_"+number, table)
		if len(notes) != 1 || notes[0].Grade != basis.Memory {
			t.Errorf("%d teeth: notes %v, want one from memory", z, notes)
		}
		if over := table/cut - 1; !(over > 0.009 && over < 0.09) {
			t.Errorf("%d teeth: the table reads %.3f over the cut tooth, want 0.01 to 0.09", z, over)
		}
	}
	if tried != 13 {
		t.Errorf("%d gears tried, want 13", tried)
	}
}

// Third route, with no formula for fillet or flank: the rack rolls past a blank in
// small steps, a point is metal if no position covers it, and the beam is
// weakest at one of many sections. It also tells where the flank is weaker.
func TestFormFactorByCutting(t *testing.T) {
	r := gears.Rack{Pressure: 20 * math.Pi / 180, Addendum: 1, Dedendum: 1.25, TipRadius: 0.3}
	for _, c := range []struct {
		teeth    int
		dedendum float64
		lo, hi   float64
	}{
		{10, 1.25, 0.997, 1.003}, {12, 1.25, 0.997, 1.003}, {20, 1.25, 0.997, 1.003}, {50, 1.25, 0.997, 1.003}, {20, 1.4, 0.997, 1.003}, {150, 1.25, 0.997, 1.003},
		{180, 1.25, 0.992, 1.001}, {300, 1.25, 0.985, 0.991}, // on the flank: 1.2 % less, as the doc comment says
	} {
		r.Dedendum = c.dedendum
		got, notes, err := gears.GeneratedFormFactor(r, c.teeth)
		kerneltest.Fine(t, err)
		if (len(notes) > 0) != (c.teeth > 150) {
			t.Errorf("%d teeth: notes %v", c.teeth, notes)
		}
		if ratio := formByCutting(r, float64(c.teeth)) / got; !(ratio > c.lo && ratio < c.hi) {
			t.Errorf("%d teeth, %v deep: cutting gives %.4f of %.5f, want %v to %v", c.teeth, c.dedendum, ratio, got, c.lo, c.hi)
		}
	}
}

func formByCutting(r gears.Rack, z float64) float64 {
	const rolls, sections = 1200, 100
	R := z / 2
	deep, tan := r.Dedendum-r.TipRadius, math.Tan(r.Pressure)
	corner := math.Pi/4 - deep*tan - r.TipRadius/math.Cos(r.Pressure)
	inside := func(x, d float64) bool { // of one rack tooth, x from its middle, d below the pitch line
		x = math.Abs(x)
		if x > math.Pi/4-d*tan || d > r.Dedendum {
			return false
		}
		dx, dd := x-corner, d-deep
		outsideCorner := dx > 0 && dd > dx*tan && math.Hypot(dx, dd) > r.TipRadius
		return !outsideCorner
	}
	cut := func(x, y float64) bool { // tooth's middle on the y axis; the space to its left, one half pitch away
		for i := range rolls + 1 {
			turn := (float64(i)/rolls - 0.5) * min(1.6, 8/R) // half a pitch and what the line of action needs
			s, c := math.Sincos(turn + math.Pi/z)
			px, py := x*c+y*s, y*c-x*s
			if inside(px-R*turn, R-py) {
				return true
			}
		}
		return false
	}
	half := func(y float64) float64 {
		lo, hi := 0., 2.5
		for range 24 {
			if mid := (lo + hi) / 2; cut(-mid, y) {
				hi = mid
			} else {
				lo = mid
			}
		}
		return lo
	}
	base := R * math.Cos(r.Pressure)
	at := math.Acos(base / (R + r.Addendum))
	tip := math.Pi/(2*z) + math.Tan(r.Pressure) - r.Pressure - math.Tan(at) + at
	apex, least := base/math.Cos(at-tip), math.Inf(1)
	for i := range sections {
		y := R - r.Dedendum + (apex-R+r.Dedendum)*(float64(i)+0.5)/sections*0.8
		h := half(y)
		least = min(least, h*h/(apex-y))
	}
	return 2 * least / 3
}

// The table between its rows, at its ends and far beyond.
func TestFormTable(t *testing.T) {
	for _, c := range []struct {
		teeth  int
		lo, hi float64
	}{{12, 0.245, 0.245}, {25, 0.337, 0.346}, {300, 0.472, 0.472}, {301, 0.472, 0.4721}, {1e9, 0.48499, 0.485}} {
		y, _, err := gears.FormFactor(c.teeth)
		kerneltest.Fine(t, err)
		if !(y >= c.lo-1e-12 && y <= c.hi+1e-12) {
			t.Errorf("%d teeth: %v, want %v to %v", c.teeth, y, c.lo, c.hi)
		}
	}
}

// Standing still adds nothing; at its own speed a quality doubles; better teeth
// suffer less; too fast is noted.
func TestVelocityFactor(t *testing.T) {
	for _, k := range []gears.Quality{gears.Ordinary, gears.Cut, gears.OrdinaryMetric} {
		still, _, err := gears.VelocityFactor(k, 0)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, k.Name+" at rest", still, 1, 1e-15)
		double, notes, err := gears.VelocityFactor(k, k.Barth)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, k.Name+" at its speed", double, 2, 1e-15)
		if len(notes) > 0 {
			t.Errorf("%s: notes %v, want none", k.Name, notes)
		}
		if _, notes, err = gears.VelocityFactor(k, k.Most); err != nil || len(notes) > 0 {
			t.Errorf("%s at its most: notes %v, %v; want none", k.Name, notes, err)
		}
		if _, notes, err = gears.VelocityFactor(k, k.Most*1.01); err != nil || len(notes) != 1 {
			t.Errorf("%s too fast: notes %v, %v; want one", k.Name, notes, err)
		}
	}
	rough, _, err := gears.VelocityFactor(gears.Ordinary, 5)
	kerneltest.Fine(t, err)
	fine, _, err := gears.VelocityFactor(gears.Cut, 5)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "600 against 1200 ft/min", (rough-1)/(fine-1), 2, 1e-13)
}

// A gear of 40 teeth of 2 bored to 50 with a keyway of 3.3: hand arithmetic. The
// factor is 1 for a thick rim and meets the curve where it begins.
func TestRim(t *testing.T) {
	root, err := gears.RootCircle(2e-3, 40)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "root circle", float64(root), 75e-3, 1e-13)
	rim, err := gears.Rim(root, 50e-3, 3.3e-3)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "rim", float64(rim), 9.2e-3, 1e-13)
	for _, c := range []struct {
		rim, want, tol float64
		grade          basis.Grade
		noted          int
	}{{10, 1, 0, 0, 0}, {1.2 - 1e-9, 1, 1e-3, basis.Memory, 1}, {0.4, 1.6 * math.Log(2.242/0.4), 1e-12, basis.Extrapolated, 1}} {
		kb, notes, err := gears.RimFactor(q.Length(c.rim), 1)
		kerneltest.Fine(t, err)
		if math.Abs(kb-c.want) > c.tol || len(notes) != c.noted || c.noted > 0 && notes[0].Grade != c.grade {
			t.Errorf("rim %v: %v, notes %v; want %v", c.rim, kb, notes, c.want)
		}
	}
}

func TestToothRefusals(t *testing.T) {
	load := func(tooth gears.Tooth, σ q.Stress, kv float64) func() error {
		return func() error { _, err := gears.ToothLoad(tooth, σ, kv); return err }
	}
	cut := func(teeth int, spoil func(*gears.Rack)) func() error {
		return func() error {
			r := gears.Rack{Pressure: 0.35, Addendum: 1, Dedendum: 1.25, TipRadius: 0.3}
			spoil(&r)
			_, _, err := gears.GeneratedFormFactor(r, teeth)
			return err
		}
	}
	rim := func(root, bore, keyway q.Length) func() error {
		return func() error { _, err := gears.Rim(root, bore, keyway); return err }
	}
	as, sound := func(*gears.Rack) {}, gears.Tooth{Module: 2e-3, Face: 20e-3, Form: 0.3}
	checkRefusals(t, []refused{
		{"no module", "module", load(gears.Tooth{Face: 1, Form: 1}, 1, 1)},
		{"no face", "width of the face", load(gears.Tooth{Module: 1, Form: 1}, 1, 1)},
		{"no form", "form factor", load(gears.Tooth{Module: 1, Face: 1}, 1, 1)},
		{"no stress", "bending stress", load(sound, 0, 1)},
		{"the inverse of the factor", "velocity factor", load(sound, 1e8, 0.65)},
		{"a negative load", "tangential force", func() error { _, err := gears.ToothStress(sound, -1, 1); return err }},
		{"an unknown factor", "velocity factor", func() error { _, err := gears.ToothStress(sound, 1, nan); return err }},
		{"no quality", "speed of the quality", func() error { _, _, err := gears.VelocityFactor(gears.Quality{}, 1); return err }},
		{"backwards", "speed of the pitch line", func() error { _, _, err := gears.VelocityFactor(gears.Cut, -1); return err }},
		{"off the table", "number of teeth", func() error { _, _, err := gears.FormFactor(11); return err }},
		{"too few teeth to cut", "number of teeth", cut(9, as)},
		{"degrees", "pressure angle", cut(20, func(r *gears.Rack) { r.Pressure = 20 })},
		{"no addendum", "addendum", cut(20, func(r *gears.Rack) { r.Addendum = 0 })},
		{"pointed teeth", "addendum", cut(12, func(r *gears.Rack) { r.Addendum = 2 })},
		{"no depth", "dedendum", cut(20, func(r *gears.Rack) { r.Dedendum = nan })},
		{"a corner wider than the tool", "corner radius of the tool", cut(20, func(r *gears.Rack) { r.TipRadius = 0.6 })},
		{"a sharp corner turned inside out", "corner radius of the tool", cut(20, func(r *gears.Rack) { r.TipRadius = -0.1 })},
		{"no root", "root circle", rim(0, 0, 0)},
		{"bored away", "bore", rim(50e-3, 50e-3, 0)},
		{"a keyway through", "depth of the keyway", rim(50e-3, 40e-3, 5.1e-3)},
		{"a root of no gear", "number of teeth", func() error { _, err := gears.RootCircle(1e-3, 3); return err }},
		{"no rim", "rim", func() error { _, _, err := gears.RimFactor(0, 1); return err }},
		{"no teeth", "depth of the teeth", func() error { _, _, err := gears.RimFactor(1, q.Length(nan)); return err }},
	})
}

func ExampleToothStress() {
	// 20 teeth of module 2, face 20, that pass on 20 N m at 1.5 m/s.
	forces, _ := gears.ToothForces(20, 40e-3, 20*math.Pi/180)
	y, _, _ := gears.GeneratedFormFactor(gears.Rack{Pressure: 20 * math.Pi / 180, Addendum: 1, Dedendum: 1.25, TipRadius: 0.3}, 20)
	kv, _, _ := gears.VelocityFactor(gears.Ordinary, 1.5)
	σ, err := gears.ToothStress(gears.Tooth{Module: 2e-3, Face: 20e-3, Form: y}, forces.Tangential, kv)
	fmt.Printf("Y %.3f, %.0f MPa, %v\n", y, σ/1e6, err)
	// Output: Y 0.308, 121 MPa, <nil>
}
