// Package diagnose answers: why did it wear? It holds each pattern of the rule
// base against what was read and seen, and tells those that surely fit.
//
// Start with Find. The patterns are knowledge/diagnosis; nothing is judged here.
package diagnose

import (
	"wornfit/advisor/answer"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// Held is the vocabulary name that says whether the fit is one in which
// nothing should move: a purpose that holds its finished fit.
const Held = "fit.held"

// Known is what the case says and reads, as package given lays it out.
type Known interface {
	Fill(slots []link.Slot) []link.Known
	Missing(slot string) (name, ask, with string)
}

// Found is what the signs say.
type Found struct {
	Findings []answer.Finding
	Look     []answer.Missing // what would tell, the most telling first; empty when something fits
}

// Find tells the patterns that fit, in the order of the rule base.
func Find(base *rules.Base, src Known, purpose *link.Part, speech quantity.Speech) (Found, error) {
	out := Found{Findings: []answer.Finding{}, Look: []answer.Missing{}}
	var open looks
	for i := range base.Patterns {
		p := &base.Patterns[i]
		fact, err := link.Facts(base.Input, p.Part, purpose)
		if err != nil {
			return out, err
		}
		switch is := holds(fact, src, purpose); {
		case tape.Yes(is):
			r := &p.Part.Needs[0]
			say := func(text string) string { return p.Speak(text, speech) }
			out.Findings = append(out.Findings, answer.Finding{Rule: p.ID, Says: say(p.Says), Cause: say(p.Cause), Cure: say(p.Cure), Repair: say(p.Repair), Again: say(p.Again),
				Source: base.Cite(r.From, r.Grade), Grade: r.Grade.String()})
		case !tape.No(is):
			open.add(fact, src)
		}
	}
	if len(out.Findings) == 0 {
		out.Look = append(out.Look, open.asked(src)...)
	}
	return out, nil
}

// holds is what a pattern comes to over all that its inputs may be.
func holds(fact *link.Fact, src Known, purpose *link.Part) interval.I {
	known := src.Fill(fact.Slots)
	reg := make([]interval.I, fact.Program.Len())
	fact.Program.StartI(reg)
	for i, s := range fact.Slots {
		reg[s.Node] = known[i].Value
		if s.Name == Held {
			reg[s.Node] = interval.Point(held(purpose))
		}
	}
	fact.Program.Enclose(reg)
	return reg[fact.Is[0]]
}

func held(purpose *link.Part) float64 {
	if purpose.Static {
		return 1
	}
	return 0
}
