package rules

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/rules/fault"
	"wornfit/rules/link"
)

// Base is a rule base, read and checked.
type Base struct {
	Vocabulary *Vocabulary
	Kinds      []string // of neighbours: keyway, oil-hole ...
	Input      link.Input
	Names      []TradeName
	Patterns   []Pattern // of wear, the more telling first
	Sources    map[string]Source
	OffShould  float64 // points off for each should that is broken
	MostEnergy float64 // stored in the turning part, J, beyond which no home work is advised
	Numbers    Tally   // how many stand at each grade
	Hash       string  // of every file of every layer
	Layers     []string
	tables     map[string]*table
}

// Source is what a source key stands for.
type Source struct {
	Key, What, How, Prints string
}

// TradeName is a name of the trade over options: patterns over what is done.
type TradeName struct {
	ID, Says             string
	Shaft, Hub, Any, Fit []string
	Cannot               map[string]string // by purpose: why it cannot serve it at all
	At                   fault.Place
}

// Matches reports whether the name is that of an option made of these parts.
// fit is the hold of the finished fit, "" when it has none.
func (n *TradeName) Matches(shaft, hub, fit string) bool {
	among := func(list []string, id string) bool {
		if len(list) == 0 {
			return true
		}
		for _, w := range list {
			if w == id {
				return true
			}
		}
		return false
	}
	if len(n.Any) > 0 && !among(n.Any, shaft) && !among(n.Any, hub) {
		return false
	}
	return among(n.Shaft, shaft) && among(n.Hub, hub) && among(n.Fit, fit)
}

// NameOf returns the trade name of a combination; nil when none matches.
func (b *Base) NameOf(c link.Combination) *TradeName {
	fit := ""
	if h := c.Holds[link.Fit]; h != nil {
		fit = h.ID
	}
	for i := range b.Names {
		if b.Names[i].Matches(c.Shaft.ID, c.Hub.ID, fit) {
			return &b.Names[i]
		}
	}
	return nil
}

// Purpose returns a purpose by its id.
func (b *Base) Purpose(id string) *link.Part {
	for _, p := range b.Input.Parts {
		if p.Side == link.Purpose && p.ID == id {
			return p
		}
	}
	return nil
}

// Cite says in print what a `from` stands for: its sources spelt out, the place
// in them kept, and honestly how well it is known.
func (b *Base) Cite(from string, grade basis.Grade) string {
	if from == noSource {
		return from
	}
	keys, place := splitFrom(from)
	var texts []string
	for _, key := range keys {
		s, ok := b.Sources[key]
		switch {
		case !ok:
			return from
		case s.Prints != "":
			texts = append(texts, s.Prints)
		default:
			texts = append(texts, s.What)
		}
		grade = basis.Worse(grade, s.Grade())
	}
	text := strings.Join(texts, " and ")
	if place != "" {
		text += ", " + place
	}
	if grade == basis.Memory {
		text = byMemory + text
	}
	return text
}
