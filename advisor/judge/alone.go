package judge

import (
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
}

// Alone judges each part of a purpose by itself, before options are made of them:
// what one part cannot bear rules out every option with it.
func (b *Bench) Alone(purpose *link.Part) {
	b.parts, b.unsettled, b.sketches = map[*link.Part]verdictAlone{}, link.Unsettled{}, &sync.Map{}
	for _, p := range b.Base.Input.Parts {
		if p.Side == link.Lock || p.Side == link.Purpose && p != purpose {
			continue
		}
		o, open := link.Alone(b.Base.Input, p, purpose)
		b.unsettled[p] = open
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
		b.solve(j, solve.Glance)
		j.Model.Shared.Rest()
		b.parts[p] = verdictAlone{!j.Open(), j.Kind, j.broken()}
	}
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
