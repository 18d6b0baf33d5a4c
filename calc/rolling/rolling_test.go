package rolling_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
	"wornfit/calc/rolling"
)

const mm, um = 1e-3, 1e-6

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, rolling.Kernels()) }

var steel = interference.Elastic{E: 206e9, Nu: 0.3, Alpha: 12e-6}

// seatsOf is a bearing on a shaft with a hole, in a housing, both of steel if not said otherwise.
func seatsOf(t *testing.T, bore, outside, hole, housing q.Length, housingMetal interference.Elastic) rolling.Seats {
	t.Helper()
	shaft, err := interference.ShaftGive(interference.Ring{Bore: hole, Outside: bore, Elastic: steel})
	kerneltest.Fine(t, err)
	hub, err := interference.HubGive(interference.Ring{Bore: outside, Outside: housing, Elastic: housingMetal})
	kerneltest.Fine(t, err)
	return rolling.Seats{Bore: bore, Outside: outside, Internal: 20 * um, ShaftGive: shaft, HousingGive: hub}
}

// Sizes, tolerances and clearances as sellers and makers print them: the rows are
// in testdata/published/mechanics, the program does not read them.
func TestTablesAgreeWithPrintedRows(t *testing.T) {
	n := 0
	for id, r := range outside.Read(t, "bearings.json") {
		if !strings.HasPrefix(id, "T") {
			continue
		}
		n++
		b, _, err := rolling.Of(strings.TrimPrefix(id, "T"))
		kerneltest.Fine(t, err)
		r.Want(t, "d", float64(b.Bore))
		r.Want(t, "D", float64(b.Outside))
		r.Want(t, "B", float64(b.Width))
		low, err := rolling.BoreLower(b.Bore)
		kerneltest.Fine(t, err)
		r.Want(t, "bore_lower", float64(low))
		low, err = rolling.OutsideLower(b.Outside)
		kerneltest.Fine(t, err)
		r.Want(t, "outside_lower", float64(low))
		for _, g := range []rolling.Group{rolling.C2, rolling.CN, rolling.C3} {
			least, most, err := rolling.InternalClearance(b.Bore, g)
			kerneltest.Fine(t, err)
			r.Want(t, string(g)+"_least", float64(least))
			r.Want(t, string(g)+"_most", float64(most))
		}
	}
	if n < 6 {
		t.Errorf("%d bearings tried, want 6", n)
	}
}

// The share that reaches the race, as bearing handbooks give it: about 80 % for a
// bore of 30; and the heat as a maker's catalogue works it out.
func TestSharesAndHeatOfTheHandbooks(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "bearings.json"), "S6206")
	s := seatsOf(t, 30*mm, 62*mm, 0, 620*mm, steel)
	s.OnShaft, s.InnerHotter = q.Length(r.In(t, "interference")), q.TemperatureChange(r.In(t, "hotter"))
	left, _, err := rolling.Working(s)
	kerneltest.Fine(t, err)
	r.Want(t, "taken", float64(left.InnerGrows))
	r.Want(t, "heat", float64(left.Heat))
	inner, outer, err := rolling.Races(30*mm, 62*mm)
	kerneltest.Fine(t, err)
	r.Want(t, "inner_race", float64(inner))
	r.Want(t, "outer_race", float64(outer))
}

// The short forms for rings and mates of one metal, solid or hollow, from memory
// of bearing handbooks.
func TestOneMetalIsTheShortForm(t *testing.T) {
	for _, hole := range []q.Length{0, 10 * mm, 20 * mm} {
		s := seatsOf(t, 30*mm, 62*mm, hole, 90*mm, steel)
		s.OnShaft, s.InHousing = 12*um, 9*um
		left, _, err := rolling.Working(s)
		kerneltest.Fine(t, err)
		di, de, err := rolling.Races(s.Bore, s.Outside)
		kerneltest.Fine(t, err)
		sq := func(a, b q.Length) float64 { return float64(a*a) / float64(b*b) }
		kerneltest.Near(t, "inner", float64(left.InnerGrows), 12*um*float64(s.Bore/di)*(1-sq(hole, s.Bore))/(1-sq(hole, di)), 1e-12)
		kerneltest.Near(t, "outer", float64(left.OuterShrinks), 9*um*float64(de/s.Outside)*(1-sq(s.Outside, 90*mm))/(1-sq(de, 90*mm)), 1e-12)
	}
}

// Second route: the layer solver, with an iron and an aluminium housing.
func TestRacesMoveAsTheLayersSay(t *testing.T) {
	for _, metal := range []interference.Elastic{{E: 110e9, Nu: 0.26}, {E: 70e9, Nu: 0.33}} {
		s := seatsOf(t, 45*mm, 85*mm, 15*mm, 120*mm, metal)
		s.OnShaft, s.InHousing = 20*um, 15*um
		left, _, err := rolling.Working(s)
		kerneltest.Fine(t, err)
		di, de, err := rolling.Races(s.Bore, s.Outside)
		kerneltest.Fine(t, err)
		in, _, err := interference.Press(interference.Stack{
			Bore: 15 * mm, Parts: []interference.Part{{Outside: 45 * mm, Elastic: steel}, {Outside: di, Elastic: steel}}, Interference: []q.Length{20 * um},
		})
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "inner race", float64(left.InnerGrows), float64(in.OutsideGrows[1]), 1e-9)
		out, _, err := interference.Press(interference.Stack{
			Bore: de, Parts: []interference.Part{{Outside: 85 * mm, Elastic: steel}, {Outside: 120 * mm, Elastic: metal}}, Interference: []q.Length{15 * um},
		})
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "outer race", float64(left.OuterShrinks), -float64(out.BoreGrows[0]), 1e-9)
	}
}

// Loose on both seats and evenly warm, a bearing keeps what it had; tighter or
// hotter it has less, and squeezed balls are noted.
func TestWhatALooseBearingKeeps(t *testing.T) {
	s := seatsOf(t, 30*mm, 62*mm, 0, 90*mm, steel)
	s.OnShaft, s.InHousing = -5*um, -20*um
	left, notes, err := rolling.Working(s)
	if err != nil || left.Clearance != s.Internal || len(notes) > 0 {
		t.Errorf("loose: %+v, %v, %v; want the clearance untouched", left, notes, err)
	}
	s.OnShaft = 25 * um
	tight, notes, err := rolling.Working(s)
	if err != nil || !(tight.Clearance < left.Clearance) || len(notes) != 1 || !strings.Contains(notes[0].Says, "squeezed") {
		t.Errorf("25 µm tight in 20: %+v, %v, %v; want a note", tight, notes, err)
	}
	s.OnShaft, s.InnerHotter = 0, 10
	hot, _, err := rolling.Working(s)
	kerneltest.Fine(t, err)
	if !(hot.Clearance < left.Clearance) {
		t.Errorf("hotter leaves %v of %v", hot.Clearance, left.Clearance)
	}
}

func TestSmoothing(t *testing.T) {
	ground, err := rolling.Smoothed(30*mm, 16*um, rolling.Ground)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "ground", float64(ground), 15*um, 1e-12) // 30/32
	turned, err := rolling.Smoothed(30*mm, 16*um, rolling.Turned)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "turned", float64(turned), 16*um*30/33, 1e-12)
	for _, loose := range []q.Length{0, -8 * um} {
		if got, err := rolling.Smoothed(30*mm, loose, rolling.Turned); err != nil || got != loose {
			t.Errorf("loose by %v: %v, %v", loose, got, err)
		}
	}
}

func TestRead(t *testing.T) {
	for text, want := range map[string]string{
		"6206": "6206", " 6206 ": "6206", "6206-2RS": "6206-2RS", "6206 C3": "6206 C3", "6206-2rs c3": "6206-2RS C3", "6206ZZ": "6206-ZZ",
		"6206-2Z/C3": "6206-2Z C3", "6206/C2": "6206 C2", "6206 CN": "6206", "6206C0": "6206", "6000-Z": "6000-Z", "6320": "6320", "6206 C3 2RS": "6206-2RS C3",
	} {
		d, err := rolling.Read(text)
		if err != nil || d.String() != want {
			t.Errorf("%q is read as %v, %v; want %s", text, d, err, want)
		}
	}
}

func TestWhatIsNotRead(t *testing.T) {
	for text, blame := range map[string]string{
		"": "bearing", "NU206": "bearing", "bearing": "bearing", "62": "number of the bearing", "16006": "number of the bearing", "62 06": "number of the bearing",
		"6806": "series of 6806", "7206": "series of 7206", "6221": "bore figures of 6221", "6206 C4": "clearance group of '6206 C4'",
		"6206-K": "suffix of '6206-K'", "6206 P5": "suffix of '6206 P5'", "6206-2RS ZZ": "suffix of '6206-2RS ZZ'", "6206 C2 C3": "suffix of '6206 C2 C3'", "6206-2RSC3": "suffix of '6206-2RSC3'",
	} {
		_, err := rolling.Read(text)
		var refusal *basis.Refusal
		if !errors.As(err, &refusal) || refusal.Name != blame || refusal.Want == "" {
			t.Errorf("%q: %v, want %s blamed", text, err, blame)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"6206", "6206-2RS C3", "", "6206//C3", "62-06"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, err := rolling.Read(s)
		if err != nil {
			return
		}
		again, err := rolling.Read(d.String())
		if err != nil || again != d {
			t.Errorf("%q is read as %v, which reads as %v, %v", s, d, again, err)
		}
	})
}

// Every row of a series is larger than the one before, and the three series of one
// bore stand in their order; what is remembered is noted.
func TestEveryBearing(t *testing.T) {
	n := 0
	for code := range 21 {
		var last q.Length
		for _, series := range []string{"60", "62", "63"} {
			text := fmt.Sprintf("%s%02d", series, code)
			b, notes, err := rolling.Of(text)
			kerneltest.Fine(t, err)
			n++
			if !(b.Outside > last && b.Width < b.Outside-b.Bore && b.Width > (b.Outside-b.Bore)/5) || b.Source == "" {
				t.Errorf("%s: %v x %v x %v", text, b.Bore, b.Outside, b.Width)
			}
			if code > 3 && math.Abs(float64(b.Bore)-float64(code)*5*mm) > 1e-12 {
				t.Errorf("%s has a bore of %v", text, b.Bore)
			}
			if (len(notes) > 0) != (series == "63") {
				t.Errorf("%s: notes %v", text, notes)
			}
			last = b.Outside
		}
	}
	if n != 63 {
		t.Errorf("%d bearings, want 63", n)
	}
}

func TestRefusals(t *testing.T) {
	nan := q.Length(math.NaN())
	work := func(spoil func(*rolling.Seats)) func() error {
		return func() error {
			s := rolling.Seats{Bore: 30 * mm, Outside: 62 * mm, Internal: 10 * um, ShaftGive: 3.4e-12, HousingGive: 1e-11}
			spoil(&s)
			_, _, err := rolling.Working(s)
			return err
		}
	}
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"no bore", "bore of the bearing", work(func(s *rolling.Seats) { s.Bore = 0 })},
		{"no rings", "outside of the bearing", work(func(s *rolling.Seats) { s.Outside = s.Bore })},
		{"preloaded before mounting", "internal clearance", work(func(s *rolling.Seats) { s.Internal = -1 })},
		{"metres for millimetres", "interference on the shaft", work(func(s *rolling.Seats) { s.OnShaft = 1 })},
		{"unknown housing fit", "interference in the housing", work(func(s *rolling.Seats) { s.InHousing = nan })},
		{"no shaft", "give of the shaft", work(func(s *rolling.Seats) { s.ShaftGive = 0 })},
		{"a housing of diamond", "give of the housing", work(func(s *rolling.Seats) { s.HousingGive = 1e-13 })},
		{"unknown heat", "inner ring hotter by", work(func(s *rolling.Seats) { s.InnerHotter = q.TemperatureChange(nan) })},
		{"no seat", "diameter of the seat", func() error { _, err := rolling.Smoothed(0, 1e-6, 0); return err }},
		{"unknown interference", "interference", func() error { _, err := rolling.Smoothed(1, nan, 0); return err }},
		{"rougher than rough", "smoothing", func() error { _, err := rolling.Smoothed(1, 0, -1); return err }},
		{"no ring", "outside of the bearing", func() error { _, _, err := rolling.Races(1, 1); return err }},
		{"too small", "bore of the bearing", func() error { _, err := rolling.BoreLower(2.5 * mm); return err }},
		{"too large", "outside of the bearing", func() error { _, err := rolling.OutsideLower(300 * mm); return err }},
		{"bore off the clearance table", "bore of the bearing", func() error { _, _, err := rolling.InternalClearance(120*mm, rolling.CN); return err }},
		{"a group not tabled", "clearance group", func() error { _, _, err := rolling.InternalClearance(30*mm, "C5"); return err }},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleOf() {
	b, _, err := rolling.Of("6206-2RS C3")
	fmt.Printf("%s: %.0f x %.0f x %.0f mm %v\n", b, b.Bore/mm, b.Outside/mm, b.Width/mm, err)
	// Output: 6206-2RS C3: 30 x 62 x 16 mm <nil>
}

func ExampleWorking() {
	// 6206 CN at its least, 12 µm tight on a solid steel shaft, loose in the housing, 5 K hotter inside.
	least, _, _ := rolling.InternalClearance(0.030, rolling.CN)
	tight, _ := rolling.Smoothed(0.030, 12e-6, rolling.Ground)
	left, notes, err := rolling.Working(rolling.Seats{
		Bore: 0.030, Outside: 0.062, Internal: least, OnShaft: tight, InHousing: -10e-6, ShaftGive: 0.7 / 206e9, HousingGive: 1e-11, InnerHotter: 5,
	})
	fmt.Printf("%.1f µm, %d note, %v\n", left.Clearance/um, len(notes), err)
	// Output: -7.7 µm, 1 note, <nil>
}
