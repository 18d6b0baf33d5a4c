package condition

import (
	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/rolling"
	"wornfit/rules/link"

	q "wornfit/calc/quantity"
)

// ring takes the size of a rolling bearing's ring from its designation: its bore
// on a shaft, its outside in a housing. What was gauged goes before the list.
func (s *Surface) ring(c *Condition) {
	b, ok := s.Part.Rolling()
	if !ok {
		return
	}
	size, lower, err := b.Bore, q.Length(0), error(nil)
	if s.Side == casefile.Hub {
		lower, err = rolling.BoreLower(b.Bore)
	} else {
		size = b.Outside
		lower, err = rolling.OutsideLower(b.Outside)
	}
	if err != nil {
		c.note("ISO 492", basis.Memory, "%s: %v; gauge it", s.Part.Called, err)
		return
	}
	s.Before, s.BeforeFrom = about(float64(size), 0), "bearing "+b.Designation.String()
	if s.Largest.Is {
		return
	}
	of := Figure{Is: true, Best: float64(size + lower/2), Range: interval.I{Lo: float64(size + lower), Hi: float64(size)}, U: float64(-lower / 2)}
	s.Largest, s.Smallest, s.Mean = of, of, of
	s.OutOfRound, s.Wear = about(0, 0), about(0, 0)
	c.note("ISO 492, from memory", basis.Memory, "%s was not gauged: its size is that of a new %s of normal class", s.Part.Called, b.Designation)
}

// rolling puts what a bearing's designation says: its races, its clearance, and
// the size and length of its seat where the case leaves them to it.
func (c *Condition) rolling(out map[string]link.Known) {
	for _, side := range casefile.Sides {
		p := c.Fit.Part(side)
		b, ok := p.Rolling()
		if !ok {
			continue
		}
		inner, outer, err := rolling.Races(b.Bore, b.Outside)
		if err != nil {
			continue // no such ring: refused when the case was read
		}
		race, size := inner, b.Bore
		if side == casefile.Shaft {
			race, size = outer, b.Outside
		}
		put := func(name string, v q.Length, g basis.Grade) {
			if _, said := out[name]; !said {
				out[name] = link.Known{Value: interval.Point(float64(v)), Best: float64(v), Is: true, Grade: g, Says: "bearing " + b.Designation.String()}
			}
		}
		put("fit.raceway", race, basis.Memory)
		put("fit.outer_raceway", outer, basis.Memory)
		put("fit.nominal", size, b.Grade)
		put("fit.length", b.Width, b.Grade)
		if side == casefile.Hub {
			put("hub.outside", race, basis.Memory) // the ring is thinnest under its race
		} else {
			put("shaft.bore", race, basis.Memory)
		}
		if least, most, err := rolling.InternalClearance(b.Bore, b.Group); err == nil {
			put("fit.play_least", least, basis.Memory)
			put("fit.play_most", most, basis.Memory)
		}
	}
}
