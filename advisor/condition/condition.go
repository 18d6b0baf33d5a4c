// Package condition answers: what state is the fit in? It turns the readings
// of a case into sizes with their doubt, the wear, the present clearance, and
// the sizes at which each part would clean up on each axis it can be set on.
//
// Start with Find. Only what was read or stated leaves with a range, by
// Known and Rows; what is worked out from several of them (clearance, clean-up)
// is for the eye, because the rules must work it out themselves so that what
// moves together stays together.
//
// It judges nothing: whether a wear is too much is the rules' business.
package condition

import (
	"fmt"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/rules/fault"
)

// Condition is the state of one fit.
type Condition struct {
	Case       *casefile.Case
	Fit        *casefile.Fit
	Hub, Shaft Surface
	Clearance  Clearance
	WearRate   Figure // of the two surfaces together, m/s, over the hours run; diameters
	Energy     Figure // J stored in the turning part, when its speed, mass and swing are known
	Notes      []basis.Note

	asked map[*casefile.Part]bool // the temperature was asked for
	few   []string                // the parts read at fewer than three angles somewhere
}

// Expansion gives the linear expansion of a material, 1/K, as a range; ok is
// false when the material is not known.
type Expansion func(material string) (perKelvin interval.I, ok bool)

// Find works out the condition of a fit of a case that was read without
// faults. The list holds what must be solved before the figures can be
// trusted: repeats of one place, or two ways of measuring, that contradict each
// other.
func Find(c *casefile.Case, f *casefile.Fit, expansion Expansion) (*Condition, fault.List) {
	found := &Condition{Case: c, Fit: f, asked: map[*casefile.Part]bool{}}
	found.Hub = found.surface(casefile.Hub, expansion)
	found.Shaft = found.surface(casefile.Shaft, expansion)
	found.hiding()
	var solve fault.List
	found.repeats(&solve)
	found.clearance(&solve)
	found.wearRate()
	found.energy()
	found.Hub.CleanUps = found.cleanUps(&found.Hub)
	found.Shaft.CleanUps = found.cleanUps(&found.Shaft)
	return found, solve
}

// Surface returns one of the two surfaces.
func (c *Condition) Surface(s casefile.Side) *Surface {
	if s == casefile.Hub {
		return &c.Hub
	}
	return &c.Shaft
}

func (c *Condition) note(source string, grade basis.Grade, format string, args ...any) {
	n := basis.Note{Says: fmt.Sprintf(format, args...), Source: source, Grade: grade}
	for _, had := range c.Notes {
		if had == n {
			return
		}
	}
	c.Notes = append(c.Notes, n)
}
