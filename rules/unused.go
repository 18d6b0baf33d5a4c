package rules

import (
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// used is every name that a file speaks of, each with all its first parts, so
// that turner.tolerance counts for turner.
func used(p *link.Part) map[string]bool {
	out := map[string]bool{}
	note := func(name string) {
		for name != "" {
			out[name] = true
			name = name[:max(0, strings.LastIndexByte(name, '.'))]
		}
	}
	expressions(p, func(e *lang.Expr) { e.Names(func(n string, _ lang.Type) { note(n) }) })
	rowNames(p, note)
	note(p.Finishes)
	return out
}

// unused tells the numbers, picks and defines of a file that nothing in it
// speaks of. A define that crosses the seam, or says what it is, is read
// elsewhere.
func (b *Base) unused(p *link.Part, faults *fault.List) {
	names := used(p)
	crosses := map[string]bool{}
	seam := &b.Input.Seam
	for _, list := range [][]link.SeamName{seam.Shaft, seam.Hub, seam.Hold, seam.Purpose} {
		for _, s := range list {
			crosses[s.Name] = true
		}
	}
	tell := func(at fault.Place, key, id string) {
		if !names[id] {
			faults.Add(at, key+"."+id, id+" is used nowhere", "use it, or take it out")
		}
	}
	for i := range p.Numbers {
		tell(p.Numbers[i].At, "numbers", p.Numbers[i].ID)
	}
	for i := range p.Picks {
		if !strings.Contains(p.Picks[i].From, ".") { // a machine or an axis must be there even if nothing is read off it
			tell(p.Picks[i].At, "pick", p.Picks[i].ID)
		}
	}
	for i := range p.Defines {
		if d := &p.Defines[i]; d.Says == "" && !crosses[d.ID] {
			tell(d.At, "define", d.ID)
		}
	}
}

// unsaid tells the numbers of a pattern of wear that neither its expressions nor
// its sentences speak of.
func (p *Pattern) unsaid(faults *fault.List) {
	names := used(p.Part)
	for _, text := range []string{p.Says, p.Cause, p.Cure, p.Repair, p.Again} {
		for _, b := range inBraces.FindAllString(text, -1) {
			names[strings.Trim(b, "{}")] = true
		}
	}
	for i := range p.Part.Numbers {
		if n := &p.Part.Numbers[i]; !names[n.ID] {
			faults.Add(n.At, "numbers."+n.ID, n.ID+" is used nowhere", "use it, or take it out")
		}
	}
}

// unspoken tells the names of the vocabulary that no rule uses. Readings are
// left out: the condition of the parts is told from them. A kind of neighbour
// is asked for by its features.
func (b *Base) unspoken(faults *fault.List) {
	all := map[string]bool{}
	parts := b.Input.Parts
	for _, p := range []*link.Part{b.Input.Common, b.Input.Scoring} {
		if p != nil {
			parts = append(parts[:len(parts):len(parts)], p)
		}
	}
	for i := range b.Patterns {
		parts = append(parts[:len(parts):len(parts)], b.Patterns[i].Part)
	}
	for _, p := range parts {
		for n := range used(p) {
			all[n] = true
		}
	}
	for i := range b.Input.Criteria {
		if e := b.Input.Criteria[i].Is; e != nil {
			e.Names(func(n string, _ lang.Type) { all[n] = true })
		}
	}
	for _, n := range b.Vocabulary.Names() {
		e, _ := b.Vocabulary.Entry(n)
		if all[n] || e.Role == "reading" || strings.Contains(n, ".near_") {
			continue
		}
		faults.Add(e.At, n, n+" is used by no rule", "use it in a rule; else it is asked for in vain, unless the condition or the answer reads it")
	}
}
