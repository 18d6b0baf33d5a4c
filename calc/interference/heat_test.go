package interference_test

import (
	"math"
	"testing"

	"wornfit/calc/interference"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

// Bronze in steel tightens on warming and its bore grows less than a free one.
func TestWarmLayersAgreeWithASecondRoute(t *testing.T) {
	rows := outside.Read(t, "reference.json")
	for _, id := range []string{"R50-60/60/60", "R50-80/40/90", "R51-80/40/90", "R52-60/60/60"} {
		r := outside.Get(t, rows, id)
		s := stackOf(t, r)
		s.Interference = []q.Length{40e-6} // any that keeps it pressing
		cold, _, err := interference.Press(s)
		fine(t, err)
		s.Parts[0].Alpha, s.Parts[0].Warmer = q.Expansion(r.In(t, "alpha1")), q.TemperatureChange(r.In(t, "bush_warmer"))
		s.Parts[1].Alpha, s.Parts[1].Warmer = q.Expansion(r.In(t, "alpha2")), q.TemperatureChange(r.In(t, "housing_warmer"))
		hot, _, err := interference.Press(s)
		fine(t, err)
		r.Want(t, "bore_grows", float64(hot.BoreGrows[0]-cold.BoreGrows[0]))
		r.Want(t, "pressure_change", float64(hot.Pressure[0]-cold.Pressure[0]))
	}
}

// Put together, every bore and what sits in it are of one size, or differ by
// the gap: five parts, warm and cold, pressing and not.
func TestPartsMeetAfterPressing(t *testing.T) {
	for _, tight := range [][]q.Length{
		{20e-6, 30e-6, 10e-6, 40e-6}, {20e-6, -200e-6, 10e-6, 40e-6}, {-30e-6, 30e-6, -10e-6, 0},
	} {
		s := interference.Stack{
			Bore: 0.008,
			Parts: []interference.Part{
				{Outside: 0.020, Elastic: steel, Warmer: 90}, {Outside: 0.025, Elastic: bronze, Warmer: 70}, {Outside: 0.032, Elastic: iron, Warmer: 40},
				{Outside: 0.040, Elastic: bronze, Warmer: -30}, {Outside: 0.060, Elastic: steel, Warmer: 10},
			},
			Interference: tight,
		}
		got, notes, err := interference.Press(s)
		fine(t, err)
		open := 0
		for j := range tight {
			meets := got.BoreGrows[j+1] - got.OutsideGrows[j] - tight[j]
			if math.Abs(float64(meets-got.Gap[j])) > 1e-15 {
				t.Errorf("%v: joint %d differs by %v, gap %v", tight, j+1, meets, got.Gap[j])
			}
			if got.Pressure[j] < 0 || got.Gap[j] < 0 || got.Pressure[j] > 0 && got.Gap[j] > 0 {
				t.Errorf("%v: joint %d has pressure %v and gap %v", tight, j+1, got.Pressure[j], got.Gap[j])
			}
			if got.Pressure[j] == 0 {
				open++
			}
		}
		if open != len(notes) {
			t.Errorf("%v: %d open joints, notes %v", tight, open, notes)
		}
	}
}
