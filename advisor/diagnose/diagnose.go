// Package diagnose answers: why did it wear? It holds each pattern of the rule
// base against what was read and seen, and tells those that surely fit.
//
// Start with Find. The patterns are knowledge/diagnosis; nothing is judged here.
package diagnose

import (
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/given"
	"wornfit/calc/interval"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// Found is what the signs say.
type Found struct {
	Findings []answer.Finding
	Look     []string // names of signs nobody looked at that would settle a pattern
}

// Find tells the patterns that fit, in the order of their files.
func Find(base *rules.Base, src *given.Source) (Found, error) {
	out := Found{Findings: []answer.Finding{}}
	for i := range base.Patterns {
		p := &base.Patterns[i]
		fact, err := link.Facts(base.Input, p.Part)
		if err != nil {
			return out, err
		}
		switch is := holds(fact, src); {
		case tape.Yes(is):
			r := &p.Part.Needs[0]
			out.Findings = append(out.Findings, answer.Finding{Rule: p.ID, Says: p.Says, Cause: p.Cause, Cure: p.Cure, Repair: p.Repair, Again: p.Again,
				Source: base.Cite(r.From, r.Grade), Grade: r.Grade.String()})
		case !tape.No(is):
			out.look(fact, src)
		}
	}
	return out, nil
}

// look notes the signs a pattern waits for.
func (f *Found) look(fact *link.Fact, src *given.Source) {
	for _, s := range fact.Slots {
		if k, ok := src.Value(s.Name); ok && !k.Is && !slices.Contains(f.Look, s.Name) {
			f.Look = append(f.Look, s.Name)
		}
	}
}

func holds(fact *link.Fact, src *given.Source) interval.I {
	known := src.Fill(&link.Option{Slots: fact.Slots})
	reg := make([]interval.I, fact.Program.Len())
	fact.Program.StartI(reg)
	for _, s := range fact.Slots {
		reg[s.Node] = known[s.Name].Value
	}
	fact.Program.Enclose(reg)
	return reg[fact.Is[0]]
}
