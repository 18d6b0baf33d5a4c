package condition

import (
	"math"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/uncertainty"

	q "wornfit/calc/quantity"
)

const (
	reference      = 293.15  // 20 °C, at which sizes hold: ISO 1
	steelExpansion = 11.5e-6 // 1/K, what gauges and setting rings are made of: ISO 3650 gives it for gauge blocks, from memory of it
)

// anyMetal is the expansion of a part whose material is not known: from cast
// iron to aluminium.
var anyMetal = interval.I{Lo: 10e-6, Hi: 24e-6}

// expansionOf is the range over all candidates of a part's material.
func expansionOf(p *casefile.Part, of Expansion) interval.I {
	all := interval.None()
	for _, m := range p.Materials {
		if of == nil {
			return anyMetal
		}
		e, ok := of(m)
		if !ok {
			return anyMetal
		}
		all = all.Join(e)
	}
	if all.Empty() {
		return anyMetal
	}
	return all
}

// sizes turns readings into sizes at 20 °C; a reading without a size is left out.
func (c *Condition) sizes(readings []casefile.Reading, p *casefile.Part, of Expansion) []size {
	var out []size
	metal := expansionOf(p, of)
	for _, r := range readings {
		var values []float64
		for _, v := range r.Sizes {
			if v.Known {
				values = append(values, v.Lo)
			}
		}
		if len(values) == 0 {
			continue
		}
		s := size{at: r.At.Lo, placed: r.At.Known, toward: r.Toward.Lo, directed: r.Toward.Known,
			gauge: r.Gauge, n: len(values), round: r.Round, value: values[0]}
		if mean, u, freedom, err := uncertainty.Repeats(values); err == nil {
			s.value = mean
			s.parts = append(s.parts, uncertainty.Input{Name: "repeats", U: u, By: 1, Freedom: freedom})
			c.spread(r, p)
		}
		if s.n > 1 {
			c.fewRepeats(s, r, p)
		}
		c.warm(&s, r, metal, p)
		out = append(out, s)
	}
	return out
}

// spread notes repeats that differ by more than the gauge is said to.
func (c *Condition) spread(r casefile.Reading, p *casefile.Part) {
	low, high := reach(r)
	if r.Gauge != nil && r.Gauge.Within.Known && high-low > 2*r.Gauge.Within.Hi {
		c.note("the readings", basis.Page, "%s: repeats of %s spread more than the %s is said to: feel, rocking, a burr, dirt", r.Place, p.Called, r.Gauge.Called)
	}
}

// warm brings a size to 20 °C, or says what ten degrees would do to it.
func (c *Condition) warm(s *size, r casefile.Reading, metal interval.I, p *casefile.Part) {
	if !r.PartAt.Known || !r.GaugeAt.Known {
		if c.asked[p] {
			return
		}
		c.asked[p] = true
		ten := s.value * metal.Hi * 10
		c.note("ISO 1", basis.Page, "the temperature of %s or of the gauge when it was read is not stated: ten degrees between them change the size by up to %s",
			p.Called, c.Case.Speech().Say(ten, q.LengthDim))
		return
	}
	mid := metal.Mid()
	at20, notes, err := uncertainty.SizeAt20(uncertainty.Warm{
		Reading: q.Length(s.value),
		Part:    q.Temperature(r.PartAt.Mid()), Gauge: q.Temperature(r.GaugeAt.Mid()),
		PartExpansion: q.Expansion(mid), GaugeExpansion: q.Expansion(steelExpansion),
	})
	if err != nil {
		c.note("ISO 1", basis.Page, "%s: the size could not be brought to 20 °C: %v", r.Place, err)
		return
	}
	c.Notes = append(c.Notes, notes...)
	away := math.Abs(r.PartAt.Mid() - reference)
	if u, err := uncertainty.Rectangular(s.value * metal.Width() / 2 * away); err == nil && u > 0 {
		s.parts = append(s.parts, uncertainty.Input{Name: "expansion", U: u, By: 1, Freedom: uncertainty.Known})
	}
	for _, t := range []struct {
		v   casefile.Value
		per float64
	}{{r.PartAt, mid}, {r.GaugeAt, steelExpansion}} {
		if u, err := uncertainty.Rectangular(s.value * t.per * (t.v.Hi - t.v.Lo) / 2); err == nil && u > 0 {
			s.parts = append(s.parts, uncertainty.Input{Name: "temperature", U: u, By: 1, Freedom: uncertainty.Known})
		}
	}
	s.value = float64(at20)
}
