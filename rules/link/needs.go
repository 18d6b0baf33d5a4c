package link

import (
	"slices"

	"wornfit/rules/tape"
)

// Needs links no more of a combination than its needs that rest on no pick and
// no size: what may rule it out before anything is worked out.
func (c Combination) Needs(in Input) (*Option, error) {
	return link(in, c, (*linker).lowerNeeds, false)
}

func (l *linker) lowerNeeds() {
	lw := newLowering(l, nil)
	l.dims(lw)
	for _, e := range l.envs() {
		for i := range e.part.Needs {
			l.check(lw, e, &e.part.Needs[i])
		}
		l.features(lw, e)
	}
	l.finish()
	l.opt.Dims, l.opt.Slots, l.opt.Lowered = nil, lw.inputs(), lw.lowered
	l.opt.Program = lw.built()
	l.opt.Checks = slices.DeleteFunc(l.opt.Checks, func(c Check) bool {
		return l.opt.asksMore(c.Margin) || c.When != 0 && l.opt.asksMore(c.When)
	})
}

// asksMore reports whether a node rests on more than what is given.
func (o *Option) asksMore(n tape.Node) bool {
	return slices.ContainsFunc(o.Uses(n), func(s Slot) bool { return s.Kind != GivenSlot && s.Kind != NumberSlot })
}
