package link

import (
	"slices"

	"wornfit/rules/tape"
)

// Unsettled are the needs of each part that Alone could not judge. Of a part that
// it does not list, that is all of them.
type Unsettled map[*Part][]*Rule

// Needs links no more of a combination than its needs that rest on no pick and
// no size, and of those only what is unsettled: what may rule it out before
// anything is worked out. Only all of them have their words.
func (c Combination) Needs(in Input, open Unsettled) (*Option, error) {
	return link(in, c, func(l *linker) { l.lowerNeeds(open) }, open != nil)
}

func (l *linker) lowerNeeds(open Unsettled) {
	lw := newLowering(l, nil)
	l.dims(lw)
	for _, e := range l.envs() {
		needs, looked := open[e.part]
		for i := range e.part.Needs {
			if r := &e.part.Needs[i]; !looked || slices.Contains(needs, r) {
				l.check(lw, e, r)
			}
		}
		if !looked || e.part.Side != Shaft && e.part.Side != Hub {
			l.features(lw, e)
		}
	}
	l.finish()
	l.opt.Dims, l.opt.Slots, l.opt.Lowered = nil, lw.inputs(), lw.lowered
	l.opt.PickSlots, l.opt.Program = picked(l.opt.Slots), lw.built()
	l.opt.Checks = slices.DeleteFunc(l.opt.Checks, func(c Check) bool {
		return l.opt.asksMore(c.Margin) || c.When != 0 && l.opt.asksMore(c.When)
	})
}

// asksMore reports whether a node rests on more than what is given.
func (o *Option) asksMore(n tape.Node) bool {
	return slices.ContainsFunc(o.Uses(n), func(s Slot) bool { return s.Kind != GivenSlot && s.Kind != NumberSlot })
}
