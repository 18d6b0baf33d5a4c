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

// Ugural and Fenster: the interference that a steel disc just loses at 6900 rpm.
func TestADiscLoosensAtTheSpeedOfTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "A03")
	m := interference.Elastic{E: q.Stress(r.In(t, "E")), Nu: r.In(t, "nu")}
	s := interference.Spin{
		Pair:         interference.Pair{Seat: q.Length(r.In(t, "bore_dia")), Outside: q.Length(r.In(t, "outer_dia")), Shaft: m, Hub: m},
		Interference: 1e-4, ShaftDensity: q.Density(r.In(t, "density")), HubDensity: q.Density(r.In(t, "density")),
	}
	n, err := interference.LooseningSpeed(s)
	fine(t, err)
	ratio := q.Length(r.In(t, "speed")) / q.Length(n) // interference goes as the square of the speed
	s.Interference *= ratio * ratio
	r.Want(t, "radial_interference_to_just_loosen", float64(s.Interference)/2)
	rest, err := interference.ContactPressure(s.Pair, s.Interference)
	fine(t, err)
	r.Want(t, "pressure_at_rest", float64(rest))
	hoop, err := interference.HubHoop(s.Seat, s.Outside, rest)
	fine(t, err)
	r.Want(t, "hoop_at_rest", float64(hoop))
}

func TestSpinningPressureAgreesWithASecondRoute(t *testing.T) {
	rows := outside.Read(t, "reference.json")
	for _, id := range []string{"R30", "R32"} {
		r := outside.Get(t, rows, id)
		metal := func(n string) interference.Elastic {
			return interference.Elastic{E: q.Stress(r.In(t, "E"+n)), Nu: r.In(t, "nu"+n)}
		}
		s := interference.Spin{
			Pair: interference.Pair{
				Bore: q.Length(r.In(t, "d0")), Seat: q.Length(r.In(t, "d1")), Outside: q.Length(r.In(t, "d2")), Shaft: metal("1"), Hub: metal("2"),
			},
			Interference: q.Length(r.In(t, "delta1")), ShaftDensity: q.Density(r.In(t, "rho1")), HubDensity: q.Density(r.In(t, "rho2")),
		}
		loose, err := interference.LooseningSpeed(s)
		fine(t, err)
		r.Want(t, "n_zero", float64(loose))
		rest, _, err := interference.SpinningPressure(s, 0)
		fine(t, err)
		r.Want(t, "p_rest", float64(rest))
		half, _, err := interference.SpinningPressure(s, loose/2)
		fine(t, err)
		r.Want(t, "p_half", float64(half))
		past, notes, err := interference.SpinningPressure(s, 1.1*loose)
		if err != nil || past != 0 || len(notes) != 1 || !strings.Contains(notes[0].Says, "nothing presses") {
			t.Errorf("%s past its speed: %v, %v, %v; want 0 and a note", id, past, notes, err)
		}
	}
}

// A thick cylinder with pressure on both faces is the sum of two: the book's
// hoop stress at the bore.
func TestPressureOnBothFacesAdds(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "A11")
	bore, out := q.Length(2*r.In(t, "ri")), q.Length(2*r.In(t, "ro"))
	in, err := interference.HubHoop(bore, out, q.Stress(r.In(t, "p_in")))
	fine(t, err)
	over, err := interference.BushHoop(bore, out, q.Stress(r.In(t, "p_out")))
	fine(t, err)
	r.Want(t, "hoop_inside", float64(in+over))
}

func TestSpinRefuses(t *testing.T) {
	sound := interference.Spin{
		Pair: interference.Pair{Seat: 0.025, Outside: 0.1, Shaft: steel, Hub: steel}, Interference: 20e-6, ShaftDensity: 7850, HubDensity: 7850,
	}
	_, _, err := interference.SpinningPressure(sound, q.Rotation(math.NaN()))
	refused(t, "unknown speed", err, "speed")
	s := sound
	s.HubDensity = 0
	_, err = interference.LooseningSpeed(s)
	refused(t, "a hub without mass", err, "density of the hub")
	s = sound
	s.ShaftDensity = q.Density(math.NaN())
	_, _, err = interference.SpinningPressure(s, 10)
	refused(t, "a shaft of unknown mass", err, "density of the shaft")
	s = sound
	s.Shaft.E, s.Outside = 1e9, 0.03 // a soft heavy shaft spreads into its hub
	_, err = interference.LooseningSpeed(s)
	refused(t, "a shaft that outgrows its hub", err, "growth of the hub over the shaft")
}

func ExampleLooseningSpeed() {
	steel := interference.Elastic{E: 206e9, Nu: 0.3}
	n, err := interference.LooseningSpeed(interference.Spin{
		Pair: interference.Pair{Seat: 0.025, Outside: 0.100, Shaft: steel, Hub: steel}, Interference: 20e-6, ShaftDensity: 7850, HubDensity: 7850,
	})
	fmt.Printf("%.0f rpm %v\n", 60*n, err)
	// Output: 30466 rpm <nil>
}
