package condition

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/cleanup"
)

// unseenOval remembers a part of which a station was read at fewer than three
// angles.
func (c *Condition) unseenOval(s *Surface, sizes []size) {
	for _, st := range byStation(sizes) {
		if _, err := cleanup.OvalThrough(inDirection(st)); err != nil {
			c.few = append(c.few, s.Part.Called)
			return
		}
	}
}

// inDirection are the readings of a station as the clean-up takes them.
func inDirection(st []size) (out []cleanup.Reading) {
	for _, z := range st {
		out = append(out, z.reading())
	}
	return out
}

// hiding tells once, for both parts, that an oval may lie between the angles.
func (c *Condition) hiding() {
	if len(c.few) == 0 {
		return
	}
	c.note("geometry: three angles fix an oval, two do not", basis.Extrapolated,
		"%s: read at fewer than three angles somewhere, an oval may hide between them; 0, 60 and 120 degrees at each station would show it", strings.Join(c.few, " and "))
}
