package judge

import (
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/solve"
	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// sketch is an option linked, with what may be picked for it.
type sketch struct {
	option *link.Option
	known  map[string]link.Known
	sets   []link.PickSet
	cut    bool // not every set
	shared *solve.Shared
	box    []interval.I // where every design must lie whichever set is taken; nil: one set, or not looked
}

// open sketches an option, unless needs alone rule it out. What Rough has
// sketched is not sketched again.
func (b *Bench) open(c link.Combination) (*sketch, *Judged, error) {
	if b.sketches != nil && len(c.Locks) == 0 {
		if was, ok := b.sketches.LoadAndDelete(c.ID); ok {
			return was.(*sketch), nil, nil
		}
	}
	s, out, err := b.sketch(c)
	if s != nil && len(s.sets) > 1 {
		b.over(c, s)
	}
	return s, out, err
}

func (b *Bench) sketch(c link.Combination) (*sketch, *Judged, error) {
	if out, err := b.screen(c); out != nil || err != nil {
		return nil, out, err
	}
	o, err := c.Sketch(b.Base.Input)
	if err != nil {
		return nil, nil, err
	}
	s := &sketch{option: o, known: b.Given.Fill(o), shared: solve.NewShared()}
	s.sets, _, s.cut = o.PickSets(s.known, b.Given.Rows, mostSets)
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
// open, or is to be told in full.
func (b *Bench) screen(c link.Combination) (*Judged, error) {
	trade := b.Base.NameOf(c)
	if slices.Contains(b.Asked, c.ID) || trade != nil && slices.Contains(b.Asked, trade.ID) {
		return nil, nil
	}
	o, err := c.Needs(b.Base.Input)
	if err != nil {
		return nil, err
	}
	j := &Judged{Combination: c, Option: o, trade: trade, bench: b}
	j.Model = b.model(o, b.Given.Fill(o), link.PickSet{})
	if b.solve(j, solve.Glance); j.Verdict != answer.RuledOut {
		return nil, nil
	}
	return j, nil
}
