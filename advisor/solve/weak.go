package solve

import (
	"math"

	"wornfit/rules/link"
)

// weak tries every number that rests on memory or practice at the ends of its
// doubt: where no design near this one bears that, the number decides, and the
// musts it breaks say so.
func (q *problem) weak(states []State, kept []bool, span []float64, a against) {
	musts := make([]bool, len(q.rows))
	for i := range q.rows {
		musts[i] = kept[i] && q.rows[i].must
	}
	at := q.coordinates()
	for i := range q.m.Option.Slots {
		s := &q.m.Option.Slots[i]
		if s.Kind != link.NumberSlot || !s.Number.Grade.Weak() {
			continue
		}
		was := q.reg[s.Node]
		for _, v := range [2]float64{was - (s.Number.Low - s.Number.DoubtLow), was + (s.Number.DoubtHi - s.Number.High)} {
			if v == was {
				continue
			}
			q.reg[s.Node] = v
			q.changed++
			if low, _ := q.truly(musts, a); low < 0 && q.climb(musts, span, a, 30, 0) < 0 {
				if low, row := q.truly(musts, a); low < 0 && q.rows[row].check >= 0 {
					st := &states[q.rows[row].check]
					st.Weak = append(st.Weak, s.Name)
				}
			}
			q.place(at)
		}
		q.reg[s.Node] = was
		q.changed++
	}
	q.prog.Run(q.reg)
}

// coordsOf is the first step of a search near the design.
func coordsOf(q *problem) []float64 {
	span := make([]float64, len(q.free))
	for k, i := range q.free {
		span[k] = math.Max(50*q.unit[i], 1e-4)
	}
	return span
}
