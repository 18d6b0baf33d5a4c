package judge

import (
	"maps"
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/solve"
	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// sketch is an option linked, with what may be picked for it.
type sketch struct {
	option *link.Option
	known  []link.Known // of its inputs, but of what is picked
	sets   []link.PickSet
	cut    bool // not every set
	shared *solve.Shared
	out    bool         // ruled out whichever set is taken, as far as looked
	box    []interval.I // where every design must lie whichever set is taken; nil: one set, or not looked
}

// open sketches an option, unless needs alone rule it out. What Rough has
// sketched is not sketched again.
func (b *Bench) open(c link.Combination) (*sketch, *Judged, error) {
	if b.sketches != nil {
		if was, ok := b.sketches.LoadAndDelete(sketchKey(c)); ok {
			return was.(*sketch), nil, nil
		}
	}
	s, out, err := b.sketch(c)
	if s != nil && len(s.sets) > 1 {
		s.out = !b.over(c, s).Open()
	}
	return s, out, err
}

// keep keeps the sketch of what is left open until it is judged. Locks that are
// only tried are left out: few of them are ever judged.
func (b *Bench) keep(c link.Combination, s *sketch) {
	if b.sketches != nil && (len(c.Locks) == 0 || len(c.Purpose.Locks) > 0) {
		b.sketches.Store(sketchKey(c), s)
	}
}

// sketchKey tells combinations apart, by their locks too.
func sketchKey(c link.Combination) string {
	key := c.ID
	for _, joint := range slices.Sorted(maps.Keys(c.Locks)) {
		key += "+" + joint + ":" + c.Locks[joint].ID
	}
	return key
}

func (b *Bench) sketch(c link.Combination) (*sketch, *Judged, error) {
	if out, err := b.screen(c); out != nil || err != nil {
		return nil, out, err
	}
	o, err := c.Sketch(b.Base.Input)
	if err != nil {
		return nil, nil, err
	}
	s := &sketch{option: o, known: b.Given.Fill(o.Slots), shared: solve.NewShared()}
	s.sets, _, s.cut = o.PickSets(b.Given.Knows, b.Given.Rows, mostSets)
	return s, nil, nil
}

// over glances at all sets of picks at once: the glances at each need not find
// again where a design must lie.
func (b *Bench) over(c link.Combination, s *sketch) *Judged {
	j := &Judged{Combination: c, Option: s.option, trade: b.Base.NameOf(c), bench: b}
	j.Model = b.model(s.option, s.known, s.sets[0])
	j.Model.Shared = s.shared
	if len(s.sets) > 1 {
		b.joined(j, s.sets)
	}
	if b.glance(j); len(s.sets) > 1 {
		s.box = j.Found.Box
	}
	return j
}

// screen rules out by needs alone, before the option is linked; nil: it may be
// open, or is to be told in full. What is ruled out tells all its needs.
func (b *Bench) screen(c link.Combination) (*Judged, error) {
	trade := b.Base.NameOf(c)
	if slices.Contains(b.Asked, c.ID) || trade != nil && slices.Contains(b.Asked, trade.ID) {
		return nil, nil
	}
	if !b.aloneOut(c).out {
		if j, err := b.needs(c, b.unsettled); j == nil || err != nil {
			return nil, err
		}
	}
	return b.needs(c, nil)
}

// needs judges the needs of an option that are open; nil: they do not rule it out.
func (b *Bench) needs(c link.Combination, open link.Unsettled) (*Judged, error) {
	o, err := c.Needs(b.Base.Input, open)
	if err != nil || len(o.Checks) == 0 {
		return nil, err
	}
	j := &Judged{Combination: c, Option: o, trade: b.Base.NameOf(c), bench: b}
	j.Model = b.model(o, b.Given.Fill(o.Slots), link.PickSet{})
	j.Model.Shared = solve.NewShared()
	defer j.Model.Shared.Rest()
	if b.solve(j, solve.Glance); j.Verdict != answer.RuledOut {
		return nil, nil
	}
	return j, nil
}
