package cleanup_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/cleanup"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
)

const mm = 1e-3

type point = cleanup.Point

type circle struct {
	Centre    [2]float64 `json:"centre"`
	Diameter  float64    `json:"diameter"`
	Roundness float64    `json:"roundness"`
}

// reference is one profile of testdata/published/roundness: circles found by brute force,
// closed forms where the shape has one.
type reference struct {
	Name    string       `json:"name"`
	Points  [][2]float64 `json:"points_xy_mm"`
	Results struct {
		MCC, MIC, LSC circle
		About         struct {
			Shaft float64 `json:"cleanup_shaft_dia"`
			Bore  float64 `json:"cleanup_bore_dia"`
			TIR   float64
		} `json:"about_axis"`
	}
	Closed map[string]any `json:"closed_form"`
}

func (r reference) profile() []point {
	var out []point
	for _, p := range r.Points {
		out = append(out, point{X: q.Length(p[0] * mm), Y: q.Length(p[1] * mm)})
	}
	return out
}

func references(t *testing.T) map[string]reference {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/roundness/roundness_reference.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []reference
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	out := map[string]reference{}
	for _, r := range all {
		out[r.Name] = r
	}
	if len(out) != 3 {
		t.Fatalf("%d reference profiles, want 3", len(out))
	}
	return out
}

func near(t *testing.T, what string, got q.Length, wantMM, tolMM float64, from string) {
	t.Helper()
	if !(math.Abs(float64(got)/mm-wantMM) <= tolMM) {
		t.Errorf("%s: %.7f mm, want %.7f ± %g (%s)", what, float64(got)/mm, wantMM, tolMM, from)
	}
}

func must[T any](t *testing.T) func(T, []basis.Note, error) T {
	return func(x T, _ []basis.Note, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
}

// Points and results of the reference are rounded to 1e-6 mm each, so a size may
// differ by 2e-6 mm.
func TestReferenceProfiles(t *testing.T) {
	const tol = 2e-6
	for name, r := range references(t) {
		p := r.profile()
		from := "brute force, testdata/published/roundness, " + name
		near(t, "inscribed", must[cleanup.Circle](t)(cleanup.Inscribed(p)).Diameter, r.Results.MIC.Diameter, tol, from)
		out := must[cleanup.Circle](t)(cleanup.Circumscribed(p))
		near(t, "circumscribed", out.Diameter, r.Results.MCC.Diameter, tol, from)
		near(t, "circumscribed centre x", out.Centre.X, r.Results.MCC.Centre[0], 1e-5, from)
		near(t, "circumscribed centre y", out.Centre.Y, r.Results.MCC.Centre[1], 1e-5, from)
		fit, round, _, err := cleanup.LeastSquares(p)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "least squares", fit.Diameter, r.Results.LSC.Diameter, tol, from)
		near(t, "least squares centre x", fit.Centre.X, r.Results.LSC.Centre[0], tol, from)
		near(t, "roundness", round, r.Results.LSC.Roundness, tol, from)
		near(t, "shaft about the axis", must[q.Length](t)(cleanup.ShaftAbout(p, point{})), r.Results.About.Shaft, tol, from)
		near(t, "bore about the axis", must[q.Length](t)(cleanup.BoreAbout(p, point{})), r.Results.About.Bore, tol, from)
		near(t, "run-out", must[q.Length](t)(cleanup.RunOutAbout(p, point{})), r.Results.About.TIR, tol, from)
	}
}

// The closed forms of the three shapes. Sampled points touch the oval and the
// lobes at their extremes; between them, 10° and 6° apart, the circle may gain
// what the profile turns in half a step: under 5e-6 mm for these heights. The
// flat is sampled every 5° on its chord, where every point lies on the line.
func TestClosedFormsOfTheProfiles(t *testing.T) {
	r := references(t)
	in := func(name string) q.Length {
		return must[cleanup.Circle](t)(cleanup.Inscribed(r[name].profile())).Diameter
	}
	round := func(name string) q.Length {
		return must[cleanup.Circle](t)(cleanup.Circumscribed(r[name].profile())).Diameter
	}
	want := func(name, key string) float64 { return r[name].Closed[key].(float64) }
	near(t, "oval inscribed", in("oval_shaft"), want("oval_shaft", "mic_diameter"), 5e-6, "small axis of the oval")
	near(t, "oval circumscribed", round("oval_shaft"), want("oval_shaft", "mcc_diameter"), 5e-6, "large axis of the oval")
	near(t, "flat inscribed", in("one_sided_flat_shaft"), want("one_sided_flat_shaft", "mic_diameter"), 5e-6, "D - w")
	near(t, "lobes inscribed", in("three_lobe"), want("three_lobe", "mic_diameter"), 5e-6, "D - 2a")
	near(t, "lobes circumscribed", round("three_lobe"), want("three_lobe", "mcc_diameter"), 5e-6, "D + 2a")
	flat := cleanup.OneSided{Size: 25 * mm, Wear: 0.3 * mm}
	near(t, "flat, axis kept", must[q.Length](t)(cleanup.ShaftKeepingAxis(flat)), want("one_sided_flat_shaft", "fixed_axis_shaft"), 1e-9, "D - 2w")
	near(t, "flat, from worn", must[q.Length](t)(cleanup.ShaftFromWorn(flat)), want("one_sided_flat_shaft", "mic_diameter"), 1e-9, "D - w")
}

// worn is a profile of radius(θ) about the axis, n points.
func worn(n int, radiusMM func(θ float64) float64) []point {
	var rs []cleanup.Radial
	for i := range n {
		θ := 2 * math.Pi * float64(i) / float64(n)
		rs = append(rs, cleanup.Radial{Angle: θ, Radius: q.Length(radiusMM(θ) * mm)})
	}
	return cleanup.Profile(rs)
}

// Second route: a bore of 40 worn by its own shaft is two circles 0.2 apart; a
// finely sampled profile and the closed forms must agree. 720 points leave
// (2π/720)²/8·R = 0.0002 mm of R unseen at worst, but only over a 0.2 mm step: 1e-5.
func TestBoreWornByItsShaft(t *testing.T) {
	const D, w = 40.0, 0.2
	p := worn(720, func(θ float64) float64 {
		shifted := w*math.Cos(θ) + math.Sqrt(D*D/4-w*w*math.Sin(θ)*math.Sin(θ))
		return max(D/2, shifted)
	})
	o := cleanup.OneSided{Size: D * mm, Wear: w * mm}
	c := must[cleanup.Circle](t)(cleanup.Circumscribed(p))
	near(t, "from worn", c.Diameter, D+w, 1e-5, "two circles w apart")
	near(t, "from worn, closed form", must[q.Length](t)(cleanup.BoreFromWorn(o)), D+w, 1e-12, "D + w")
	shift, err := cleanup.AxisShift(o.Wear)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "axis shift", c.Centre.X, float64(shift)/mm, 1e-4, "w/2 toward the wear")
	near(t, "axis kept", must[q.Length](t)(cleanup.BoreAbout(p, point{})), D+2*w, 1e-9, "2·max r")
	near(t, "axis kept, closed form", must[q.Length](t)(cleanup.BoreKeepingAxis(o)), D+2*w, 1e-12, "D + 2w")
}

// A set-up that runs out of centre by e costs 2e, in the closed forms and on a
// round profile (hand working: 30 mm shaft, 0.05 off, reads 0.10, cleans at 29.90).
func TestOffsetCostsTwice(t *testing.T) {
	round := worn(360, func(float64) float64 { return 15 })
	at := point{X: 0.05 * mm}
	near(t, "shaft", must[q.Length](t)(cleanup.ShaftAbout(round, at)), 29.90, 1e-9, "30 - 2·0.05")
	near(t, "bore", must[q.Length](t)(cleanup.BoreAbout(round, at)), 30.10, 1e-9, "30 + 2·0.05")
	tir := must[q.Length](t)(cleanup.RunOutAbout(round, at))
	near(t, "indicator", tir, 0.10, 1e-9, "TIR = 2e")
	e, err := cleanup.OffsetFromRunOut(tir)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shaft, closed form", must[q.Length](t)(cleanup.ShaftOffset(30*mm, e)), 29.90, 1e-9, "Dw - 2e")
	near(t, "bore, closed form", must[q.Length](t)(cleanup.BoreOffset(30*mm, e)), 30.10, 1e-9, "Dw + 2e")
	with := cleanup.OneSided{Size: 30 * mm, Wear: 0.1 * mm, Offset: 0.05 * mm}
	near(t, "worn and off", must[q.Length](t)(cleanup.ShaftKeepingAxis(with)), 29.70, 1e-9, "30 - 0.2 - 0.1")
}

// A bent shaft that reads 0.16 costs 0.16; straightened to 0.03 it costs 0.03.
func TestStraightenedFirst(t *testing.T) {
	cost := func(tir q.Length) q.Length {
		e, err := cleanup.OffsetFromRunOut(tir)
		if err != nil {
			t.Fatal(err)
		}
		return 25*mm - must[q.Length](t)(cleanup.ShaftOffset(25*mm, e))
	}
	near(t, "bent", cost(0.16*mm), 0.16, 1e-12, "arithmetic: TIR off the diameter")
	near(t, "straightened", cost(0.03*mm), 0.03, 1e-12, "arithmetic: TIR off the diameter")
}

// One score 0.25 deep over a twentieth of the turn: cleaned fully the 25 shaft
// goes to 24.50; with a tenth allowed to stay it is left at 25.
func TestWitnessAllowed(t *testing.T) {
	scored := worn(200, func(θ float64) float64 {
		if θ < 2*math.Pi/20-1e-9 {
			return 12.25
		}
		return 12.5
	})
	clean := func(share float64) q.Length {
		return must[q.Length](t)(cleanup.ShaftAboutLeaving(scored, point{}, share))
	}
	near(t, "no witness", clean(0), 24.5, 1e-9, "2·min r")
	near(t, "a fortieth", clean(0.025), 24.5, 1e-9, "half of the score must go, so all of its depth")
	near(t, "a tenth", clean(0.10), 25, 1e-9, "the score may stay")
	pitted := worn(200, func(θ float64) float64 {
		if θ < 2*math.Pi/20-1e-9 {
			return 12.75
		}
		return 12.5
	})
	near(t, "bore, no witness", must[q.Length](t)(cleanup.BoreAboutLeaving(pitted, point{}, 0)), 25.5, 1e-9, "2·max r")
	near(t, "bore, a tenth", must[q.Length](t)(cleanup.BoreAboutLeaving(pitted, point{}, 0.1)), 25, 1e-9, "the pit may stay")
	last := q.Length(0)
	for share := 0.0; share < 1; share += 0.01 {
		if s := clean(share); s < last {
			t.Errorf("allowing more witness, %.2f, leaves a smaller shaft", share)
		} else {
			last = s
		}
	}
}

// Setting by the worn surface never costs more than keeping the axis, and no
// circle inside is larger than one outside, whatever the profile.
func TestFreeAxisNeverCostsMore(t *testing.T) {
	for n := 4; n < 100; n += 7 {
		for lobes := 1.0; lobes < 6; lobes++ {
			p := worn(n, func(θ float64) float64 {
				return 12.5 + 0.05*math.Sin(lobes*θ+lobes) - 0.1*max(0, math.Cos(θ-1))
			})
			in, out := must[cleanup.Circle](t)(cleanup.Inscribed(p)), must[cleanup.Circle](t)(cleanup.Circumscribed(p))
			fit, _, _, err := cleanup.LeastSquares(p)
			if err != nil {
				t.Fatal(err)
			}
			const slack = 1e-12
			for _, axis := range []point{{}, fit.Centre, {X: 0.03 * mm, Y: -0.02 * mm}} {
				if s := must[q.Length](t)(cleanup.ShaftAbout(p, axis)); s > in.Diameter+slack {
					t.Errorf("%d points, %g lobes: about %v the shaft keeps %g, free only %g", n, lobes, axis, s, in.Diameter)
				}
				if b := must[q.Length](t)(cleanup.BoreAbout(p, axis)); b < out.Diameter-slack {
					t.Errorf("%d points, %g lobes: about %v the bore opens to %g, free to %g", n, lobes, axis, b, out.Diameter)
				}
			}
			if in.Diameter > out.Diameter {
				t.Errorf("%d points: inscribed %g, circumscribed %g", n, in.Diameter, out.Diameter)
			}
			// the circles are what they claim: no point inside, none outside
			near(t, "touches", must[q.Length](t)(cleanup.ShaftAbout(p, in.Centre)), float64(in.Diameter)/mm, 1e-9, "2·min r from its own centre")
			near(t, "touches", must[q.Length](t)(cleanup.BoreAbout(p, out.Centre)), float64(out.Diameter)/mm, 1e-9, "2·max r from its own centre")
		}
	}
}

func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	open := worn(36, func(float64) float64 { return 12.5 })[:15]
	square := worn(4, func(float64) float64 { return 12.5 })
	errOf := func(_ any, _ []basis.Note, err error) error { return err }
	for what, c := range map[string]struct {
		err   error
		blame string
	}{
		"two points":        {errOf(cleanup.Inscribed(square[:2])), "worn profile"},
		"open profile":      {errOf(cleanup.Circumscribed(open)), "worn profile"},
		"axis outside":      {errOf(cleanup.ShaftAbout(square, point{X: 1})), "worn profile"},
		"NaN in a profile":  {errOf(cleanup.BoreAbout(append(square, point{X: q.Length(nan)}), point{})), "worn profile"},
		"NaN axis":          {errOf(cleanup.RunOutAbout(square, point{Y: q.Length(nan)})), "worn profile"},
		"in one line":       {errOf(cleanup.Circumscribed([]point{{}, {X: 1}, {X: 2}})), "worn profile"},
		"all one point":     {errOf(cleanup.Inscribed(make([]point, 5))), "worn profile"},
		"share of one":      {errOf(cleanup.ShaftAboutLeaving(square, point{}, 1)), "share left untouched"},
		"share NaN":         {errOf(cleanup.BoreAboutLeaving(square, point{}, nan)), "share left untouched"},
		"no size":           {errOf(cleanup.ShaftFromWorn(cleanup.OneSided{})), "size before wear"},
		"size NaN":          {errOf(cleanup.ShaftFromWorn(cleanup.OneSided{Size: q.Length(nan)})), "size before wear"},
		"size without end":  {errOf(cleanup.BoreFromWorn(cleanup.OneSided{Size: q.Length(inf)})), "size before wear"},
		"negative wear":     {errOf(cleanup.BoreKeepingAxis(cleanup.OneSided{Size: 1, Wear: -1})), "wear depth"},
		"worn through":      {errOf(cleanup.ShaftKeepingAxis(cleanup.OneSided{Size: 1, Wear: .5})), "wear depth"},
		"offset too much":   {errOf(cleanup.ShaftKeepingAxis(cleanup.OneSided{Size: 1, Wear: .4, Offset: .1})), "set-up offset"},
		"offset NaN":        {errOf(cleanup.ShaftOffset(1, q.Length(nan))), "set-up offset"},
		"no readings":       {errOf(cleanup.TwoPoint{}.ShaftFree()), "readings"},
		"reading 0":         {errOf(cleanup.TwoPoint{Readings: []cleanup.Reading{{}}}.BoreFree()), "reading"},
		"negative allowed":  {errOf(cleanup.TwoPoint{Readings: across(25), Unseen: -1}.BoreFree()), "allowance for unseen lobes"},
		"shaft has grown":   {errOf(cleanup.TwoPoint{Readings: across(25), Unworn: 24.9 * mm}.ShaftFixed()), "unworn shaft size"},
		"bore has shrunk":   {errOf(cleanup.TwoPoint{Readings: across(25), Unworn: 25.1 * mm}.BoreFixed()), "unworn bore size"},
		"unworn not stated": {errOf(cleanup.TwoPoint{Readings: across(25)}.BoreFixed()), "unworn bore size"},
	} {
		var r *basis.Refusal
		if !errors.As(c.err, &r) || r.Name != c.blame {
			t.Errorf("%s: %v, want a refusal that blames %s", what, c.err, c.blame)
		}
	}
	for what, err := range map[string]error{
		"shift":   second(cleanup.AxisShift(-1)),
		"run-out": second(cleanup.OffsetFromRunOut(q.Length(nan))),
	} {
		var r *basis.Refusal
		if !errors.As(err, &r) {
			t.Errorf("%s: %v is no refusal", what, err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// Coarse profiles and deep wear are answered with a note.
func TestNotes(t *testing.T) {
	for what, c := range map[string]struct {
		notes []basis.Note
		want  int
	}{
		"36 points": {notesOf(cleanup.Inscribed(worn(36, func(float64) float64 { return 10 }))), 0},
		"5 points":  {notesOf(cleanup.Inscribed(worn(5, func(float64) float64 { return 10 }))), 1},
		"shallow":   {notesOf(cleanup.BoreFromWorn(cleanup.OneSided{Size: 25 * mm, Wear: 2 * mm})), 0},
		"deep":      {notesOf(cleanup.BoreFromWorn(cleanup.OneSided{Size: 25 * mm, Wear: 3 * mm})), 1},
	} {
		if len(c.notes) != c.want {
			t.Errorf("%s: notes %v, want %d", what, c.notes, c.want)
		}
	}
}

func notesOf[T any](_ T, notes []basis.Note, _ error) []basis.Note { return notes }

func TestKernels(t *testing.T) { kerneltest.Check(t, cleanup.Kernels()) }

func BenchmarkInscribed360(b *testing.B) {
	p := worn(360, func(θ float64) float64 { return 12.5 - 0.1*max(0, math.Cos(θ)) + 0.01*math.Sin(5*θ) })
	for b.Loop() {
		if _, _, err := cleanup.Inscribed(p); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleShaftKeepingAxis() {
	pin := cleanup.OneSided{Size: 25.4 * mm, Wear: 0.3 * mm, Offset: 0.02 * mm}
	kept, _, _ := cleanup.ShaftKeepingAxis(pin)
	worn, _, _ := cleanup.ShaftFromWorn(pin)
	fmt.Printf("axis kept %.2f mm, set by the worn surface %.2f mm\n", kept/mm, worn/mm)
	// Output: axis kept 24.76 mm, set by the worn surface 25.06 mm
}

func ExampleInscribed() {
	var readings []cleanup.Radial
	for deg := 0; deg < 360; deg += 10 { // a flat 0.3 deep toward 0°
		θ := float64(deg) * math.Pi / 180
		r := 12.5
		if math.Cos(θ) > 0 {
			r = min(12.5, 12.2/math.Cos(θ))
		}
		readings = append(readings, cleanup.Radial{Angle: θ, Radius: q.Length(r * mm)})
	}
	c, _, err := cleanup.Inscribed(cleanup.Profile(readings))
	fmt.Printf("%.2f mm, axis moved %.2f mm, %v\n", c.Diameter/mm, -c.Centre.X/mm, err)
	// Output: 24.70 mm, axis moved 0.15 mm, <nil>
}
