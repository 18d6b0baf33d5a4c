package judge

import (
	"slices"

	"wornfit/advisor/solve"
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// Made is a size that came off the machine, by stations, with the doubt of its
// gauge. It belongs to a surface: an option that has the dimension holds it
// there, in any other it is what the surface now reads.
type Made struct {
	Dimension, Surface string // hub_bore, hub
	Sizes              []float64
	U                  float64
}

// hold lays the made sizes over a model.
func (b *Bench) hold(m *solve.Model) {
	for _, made := range b.Made {
		if len(made.Sizes) == 0 {
			continue
		}
		low, high := slices.Min(made.Sizes), slices.Max(made.Sizes)
		mid := low + (high-low)/2
		at := slices.IndexFunc(m.Option.Dims, func(d link.Dim) bool { return d.ID == made.Dimension })
		if at >= 0 {
			if m.Held == nil {
				m.Held = map[string]float64{}
			}
			m.Held[made.Dimension] = mid
			m.Gauge[made.Dimension] = made.U + (high-low)/2 // taper and oval of what was made count as doubt
			continue
		}
		for name, v := range map[string]float64{".largest": high, ".smallest": low, ".mean": mid} {
			if s, asked := m.Option.Slot(made.Surface + name); asked {
				at := slices.IndexFunc(m.Option.Slots, func(o link.Slot) bool { return o.Node == s.Node })
				m.Known = slices.Clone(m.Known) // the next model has the reading
				m.Known[at] = link.Known{Value: interval.I{Lo: v - made.U, Hi: v + made.U}, Best: v, Is: true, Grade: basis.Page, Says: "made size"}
			}
		}
	}
}
