package judge

import (
	"slices"
	"sync"

	"wornfit/advisor/answer"
	"wornfit/advisor/solve"
	"wornfit/rules/link"
)

// verdictAlone is what a part comes to whatever it is joined with.
type verdictAlone struct {
	out    bool
	kind   string
	broken int
	open   []*link.Rule // needs that rest on other parts
}

// Alone judges each part of a purpose by itself, before options are made of them:
// what one part cannot bear rules out every option with it.
func (b *Bench) Alone(purpose *link.Part) error {
	b.parts, b.unsettled, b.sketches = map[*link.Part]verdictAlone{}, link.Unsettled{}, &sync.Map{}
	parts := slices.DeleteFunc(slices.Clone(b.Base.Input.Parts), func(p *link.Part) bool {
		return p.Side == link.Lock || p.Side == link.Purpose && p != purpose
	})
	found, err := Each(parts, func(p *link.Part) (verdictAlone, error) { return b.alone(p, purpose), nil })
	for i, v := range found {
		b.parts[parts[i]], b.unsettled[parts[i]] = v, v.open
	}
	return err
}

func (b *Bench) alone(p, purpose *link.Part) verdictAlone {
	o, open := link.Alone(b.Base.Input, p, purpose)
	j := &Judged{Option: o, bench: b}
	sets, _, cut := o.PickSets(b.Given.Knows, b.Given.Rows, mostSets)
	if j.Cut = cut; len(sets) > 0 {
		j.Set = sets[0]
	}
	j.Model = b.model(o, b.Given.Fill(o.Slots), j.Set)
	if len(sets) > 1 {
		b.joined(j, sets)
	}
	j.Model.Shared = solve.NewShared()
	defer j.Model.Shared.Rest()
	b.solve(j, solve.Glance)
	return verdictAlone{!j.Open(), j.Kind, j.broken(), open}
}

// aloneOut is what the parts of a combination that are out by themselves come to
// together: the hardest of their kinds, and all that is broken.
func (b *Bench) aloneOut(c link.Combination) (all verdictAlone) {
	parts := []*link.Part{c.Shaft, c.Hub, c.Purpose}
	for _, h := range c.Holds {
		parts = append(parts, h)
	}
	for _, p := range parts {
		v := b.parts[p]
		if !v.out {
			continue
		}
		all.broken += v.broken
		if !all.out || hardness[v.kind] > hardness[all.kind] {
			all.kind = v.kind
		}
		all.out = true
	}
	return all
}

// hardness orders the kinds of ruled out.
var hardness = map[string]int{answer.NotWished: 1, answer.NotHere: 2, answer.Never: 3}
