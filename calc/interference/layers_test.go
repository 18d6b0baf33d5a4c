package interference_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wornfit/calc/interference"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func stackOf(t *testing.T, r outside.Row) interference.Stack {
	t.Helper()
	s := interference.Stack{Bore: q.Length(r.In(t, "d0"))}
	for i := 1; ; i++ {
		n := fmt.Sprint(i)
		if _, ok := r.Inputs["d"+n]; !ok {
			return s
		}
		s.Parts = append(s.Parts, interference.Part{
			Outside: q.Length(r.In(t, "d"+n)),
			Elastic: interference.Elastic{E: q.Stress(r.In(t, "E"+n)), Nu: r.In(t, "nu"+n)},
		})
		if _, ok := r.Inputs["delta"+n]; ok {
			s.Interference = append(s.Interference, q.Length(r.In(t, "delta"+n)))
		}
	}
}

func TestThreeLayersAgreeWithASecondRoute(t *testing.T) {
	rows := outside.Read(t, "reference.json")
	for _, id := range []string{"R01-stress", "R03-stress"} {
		r := outside.Get(t, rows, id)
		got, notes, err := interference.Press(stackOf(t, r))
		fine(t, err)
		if len(notes) > 0 {
			t.Errorf("%s: notes %v, want none", id, notes)
		}
		for i := range got.Pressure {
			r.Want(t, fmt.Sprintf("p%d", i+1), float64(got.Pressure[i]))
		}
		for i := range got.HoopAtBore {
			r.Want(t, fmt.Sprintf("hoop_bore%d", i+1), float64(got.HoopAtBore[i]))
			r.Want(t, fmt.Sprintf("hoop_outside%d", i+1), float64(got.HoopAtOutside[i]))
		}
		if r.Has("bore_grows") {
			r.Want(t, "bore_grows", float64(got.BoreGrows[0]))
		}
		r.Want(t, "outside_grows", float64(got.OutsideGrows[len(got.OutsideGrows)-1]))
	}
}

// The finite elements have free ends, and some of the inner parts stand out;
// plane stress knows neither. The ranges are our pressure over theirs.
func TestPressAgreesWithFiniteElements(t *testing.T) {
	rows := outside.Read(t, "fe_press.json")
	for _, c := range []struct {
		id     string
		lo, hi float64
		why    string
	}{
		{"F1-frictionless", 0.9993, 1.0007, "equal lengths: plane stress is right, their mesh is good to 0.06 %"},
		{"F3-frictionless", 0.9993, 1.0007, "equal lengths"},
		{"F5-frictionless", 0.9993, 1.0007, "equal lengths, three layers"},
		{"F1-sticking", 0.97, 1, "sticking faces also hold each other endwise: up to 8 % more pressure"},
		{"F3-sticking", 0.92, 1, "sticking faces"},
		{"F5-sticking", 0.97, 1, "sticking faces"},
		{"F4-frictionless", 0.92, 0.95, "the bush stands 5 mm proud each end and is stiffer for it"},
		{"F7-frictionless", 0.97, 0.99, "the shaft runs on past a joint one diameter long"},
		{"F8-frictionless", 0.88, 0.91, "6 mm plate on a long 25 mm shaft"},
		{"F4-sticking", 0.91, 0.94, "proud ends, and sticking faces"},
		{"F7-sticking", 0.96, 0.98, "the shaft runs on, and sticking faces"},
		{"F8-sticking", 0.88, 0.91, "so short that the faces do not hold each other"},
	} {
		r := outside.Get(t, rows, c.id)
		got, _, err := interference.Press(stackOf(t, r))
		fine(t, err)
		for i := range got.Pressure {
			r.WantWithin(t, fmt.Sprintf("p%d", i+1), float64(got.Pressure[i]), c.lo, c.hi)
		}
	}
}

func TestHoopStressAgreesWithFiniteElements(t *testing.T) {
	rows := outside.Read(t, "fe_press.json")
	for id, within := range map[string]float64{
		"F1-frictionless": 1.0015, // their stress at mid length is good to 0.15 %
		"F3-frictionless": 1.0015,
		"F5-frictionless": 1.0015,
		"F4-frictionless": 1.015, // pressure is higher, but spread by the proud ends
		"F7-frictionless": 1.02,  // shaft standing out
		"F8-frictionless": 1.19,  // thin plate on a long shaft: 18 % more than plane stress
	} {
		r := outside.Get(t, rows, id)
		got, _, err := interference.Press(stackOf(t, r))
		fine(t, err)
		r.WantWithin(t, "hoop_bore", float64(got.HoopAtBore[len(got.HoopAtBore)-1]), 1/within, within)
	}
}

func TestPressedBushClosesInAsFiniteElementsSay(t *testing.T) {
	rows := outside.Read(t, "fe_press.json")
	for id, within := range map[string]float64{
		"F3-frictionless": 1.0005, // even housing, equal lengths
		"F4-frictionless": 1.06,   // proud ends: middle closes more, mean less
		"F7-frictionless": 1.13,   // mean over the joint falls off towards the free ends
	} {
		r := outside.Get(t, rows, id)
		got, _, err := interference.Press(stackOf(t, r))
		fine(t, err)
		r.WantWithin(t, "bore_grows_mid", float64(got.BoreGrows[0]), 1/within, within)
		r.WantWithin(t, "bore_grows_mean", float64(got.BoreGrows[0]), 1/within, within)
	}
}

// Pressing the hub on raises the pressure below the sleeve as well.
func TestJointsActOnEachOther(t *testing.T) {
	s := interference.Stack{
		Parts:        []interference.Part{{Outside: 0.025, Elastic: steel}, {Outside: 0.032, Elastic: steel}, {Outside: 0.064, Elastic: iron}},
		Interference: []q.Length{20e-6, 0},
	}
	slack, _, err := interference.Press(s)
	fine(t, err)
	s.Interference[1] = 30e-6
	tight, _, err := interference.Press(s)
	fine(t, err)
	if !(tight.Pressure[0] > slack.Pressure[0]) {
		t.Errorf("sleeve sits with %v Pa after the hub is on, %v before; want more", tight.Pressure[0], slack.Pressure[0])
	}
}

// A shaft with running clearance in a bush pressed into a hub: the shaft joint
// stays open, and what is left of its clearance is what the close-in leaves.
func TestAnOpenJointIsNotedAndCarriesNothing(t *testing.T) {
	s := interference.Stack{
		Parts:        []interference.Part{{Outside: 0.025, Elastic: steel}, {Outside: 0.032, Elastic: bronze}, {Outside: 0.064, Elastic: steel}},
		Interference: []q.Length{-50e-6, 30e-6},
	}
	got, notes, err := interference.Press(s)
	fine(t, err)
	if got.Pressure[0] != 0 || len(notes) != 1 || !strings.Contains(notes[0].Says, "joint 1") {
		t.Fatalf("pressure %v, notes %v; want 0 and a note on joint 1", got.Pressure[0], notes)
	}
	closed, err := interference.CloseIn(interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: bronze}, got.Pressure[1])
	fine(t, err)
	near(t, "clearance left", float64(got.Gap[0]), 50e-6-float64(closed), 1e-12)
	s.Interference[0] = -20e-6 // less than the bore closes in: now the bush grips the shaft
	got, notes, err = interference.Press(s)
	fine(t, err)
	if !(got.Pressure[0] > 0) || len(notes) > 0 {
		t.Errorf("pressure %v, notes %v; want the bush to grip the shaft", got.Pressure[0], notes)
	}
}

// Whatever the materials, heating parts that expand alike changes no pressure.
func TestEvenHeatInLikeMaterialsChangesSizesOnly(t *testing.T) {
	s := interference.Stack{
		Bore:         0.012,
		Parts:        []interference.Part{{Outside: 0.025, Elastic: steel}, {Outside: 0.05, Elastic: steel}},
		Interference: []q.Length{20e-6},
	}
	cold, _, err := interference.Press(s)
	fine(t, err)
	s.Parts[0].Warmer, s.Parts[1].Warmer = 80, 80
	hot, _, err := interference.Press(s)
	fine(t, err)
	near(t, "pressure", float64(hot.Pressure[0]), float64(cold.Pressure[0]), 1e-12)
	near(t, "bore", float64(hot.BoreGrows[0]-cold.BoreGrows[0]), 0.012*11.7e-6*80, 1e-9)
}

func TestPressRefuses(t *testing.T) {
	for _, c := range []struct {
		what, blame string
		spoil       func(s *interference.Stack)
	}{
		{"one part", "number of parts", func(s *interference.Stack) { s.Parts = s.Parts[:1] }},
		{"a forgotten interference", "number of interferences", func(s *interference.Stack) { s.Interference = nil }},
		{"parts in the wrong order", "bore of the part 2 from the middle", func(s *interference.Stack) { s.Parts[1].Outside = 0.02 }},
		{"radius of a mile", "interference of joint 1 from the middle", func(s *interference.Stack) { s.Interference[0] = 0.02 }},
		{"an unknown interference", "interference of joint 1 from the middle", func(s *interference.Stack) { s.Interference[0] = q.Length(math.NaN()) }},
		{"an unknown temperature", "heat growth of part 2 from the middle", func(s *interference.Stack) { s.Parts[1].Warmer = q.TemperatureChange(math.NaN()) }},
	} {
		s := interference.Stack{
			Parts:        []interference.Part{{Outside: 0.025, Elastic: steel}, {Outside: 0.05, Elastic: steel}},
			Interference: []q.Length{20e-6},
		}
		c.spoil(&s)
		_, _, err := interference.Press(s)
		refused(t, c.what, err, c.blame)
	}
}

func ExamplePress() {
	// A bronze bush 25 × 32 pressed 30 µm into a steel housing of 64 mm.
	p, notes, err := interference.Press(interference.Stack{
		Bore: 0.025,
		Parts: []interference.Part{
			{Outside: 0.032, Elastic: interference.Elastic{E: 100e9, Nu: 0.34}},
			{Outside: 0.064, Elastic: interference.Elastic{E: 206e9, Nu: 0.3}},
		},
		Interference: []q.Length{30e-6},
	})
	fmt.Printf("%.2f MPa, bore closes in %.1f µm %v %v\n", p.Pressure[0]/1e6, -1e6*p.BoreGrows[0], notes, err)
	// Output: 19.75 MPa, bore closes in 25.3 µm [] <nil>
}
