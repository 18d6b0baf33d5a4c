package render

import (
	"math"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// group is a heading over the reasons it takes; a reason goes to the first.
type group struct {
	head  string
	takes func(answer.Reason) bool
	brief bool // told in a line each
}

func kept(r answer.Reason) bool   { return r.Holds != nil && *r.Holds }
func broken(r answer.Reason) bool { return r.Holds != nil && !*r.Holds }

var groups = []group{
	{"In the way", func(r answer.Reason) bool { return broken(r) && r.Strength == "must" }, false},
	{"Cannot be told from what is known", func(r answer.Reason) bool { return r.Holds == nil }, false},
	{"Speaks against it", broken, false},
	{"Kept, but only as far as a weak number can be trusted", func(r answer.Reason) bool { return kept(r) && len(r.Weak) > 0 }, false},
	{"Kept, and by how much", func(r answer.Reason) bool { return r.What == "limit" }, true},
	{"Asked too", func(answer.Reason) bool { return true }, true},
}

// reasons tells every need and limit of an option, the ones that decide first.
func (p *Page) reasons(o *answer.Option, v Voice) {
	by := make([][]answer.Reason, len(groups))
	for _, r := range o.Reasons {
		for i, g := range groups {
			if g.takes(r) {
				by[i] = append(by[i], r)
				break
			}
		}
	}
	for i, list := range by {
		if len(list) == 0 {
			continue
		}
		p.Head(groups[i].head)
		for _, r := range list {
			p.reason(r, v, groups[i].brief)
		}
	}
}

func (p *Page) reason(r answer.Reason, v Voice, brief bool) {
	text := sentence(named(r))
	if r.After {
		text += " Asked of these sizes only: searched, not proved."
	}
	if brief {
		p.Item(indent, "-", text+spare(r, v)+" ("+r.Rule+")"+source(r.Source, r.Grade))
		return
	}
	p.Item(indent, "-", text+spare(r, v))
	if r.Remedy != "" && !kept(r) {
		p.Para(2*indent, "What would help: "+r.Remedy+".")
	}
	if len(r.Weak) > 0 {
		p.Para(2*indent, "Would turn if this were a little worse: "+strings.Join(r.Weak, ", ")+".")
	}
	p.Para(2*indent, "Rule "+r.Rule+" ("+r.Strength+", "+r.Ground+")"+source(r.Source, r.Grade))
}

// named is a reason's text, which begins with the rule in words where it would
// begin with a bare number, and says so where nobody knows.
func named(r answer.Reason) string {
	if r.Holds == nil {
		return doubted(r)
	}
	if r.Text != "" && strings.ContainsRune("0123456789.-", rune(r.Text[0])) {
		return ruleName(r.Rule) + ": " + r.Text
	}
	return r.Text
}

// doubted words a rule of which it is not known whether it is kept: a need's
// text is the trouble there may be, a limit's is its two sides.
func doubted(r answer.Reason) string {
	switch text := strings.TrimSuffix(r.Text, "."); {
	case strings.HasPrefix(strings.ToLower(text), "not known whether "):
		return text
	case r.What == "need":
		return "not known whether " + text
	default:
		return "not known whether this is kept: " + text
	}
}

// untellable is a length no gauge in a shop can tell, m.
const untellable = 0.05e-6

// spare says the margin of a limit.
func spare(r answer.Reason, v Voice) string {
	if r.Margin == nil || math.IsNaN(*r.Margin) || math.Abs(*r.Margin) >= uncounted {
		return ""
	}
	text := v.margin(math.Abs(*r.Margin), r.Dim)
	switch {
	case r.Holds == nil:
		return ""
	case *r.Holds:
		if r.Dim == quantity.LengthDim && math.Abs(*r.Margin) < untellable {
			return " Nothing to spare at the worst."
		}
		return " To spare at the worst: " + text + "."
	}
	return " Short by " + text + "."
}

// margin says a difference: of temperatures it is a change.
func (v Voice) margin(x float64, d quantity.Dim) string {
	if d == quantity.TemperatureDim {
		d = quantity.ChangeDim
	}
	return v.Value(x, d)
}

// conflict tells the rules that cannot be kept together and what would open it.
func (p *Page) conflict(o *answer.Option) {
	if len(o.Conflict) > 0 {
		p.Head("These cannot be kept together")
		for _, c := range o.Conflict {
			p.Item(indent, "-", sentence(c))
		}
	}
	if len(o.Changes) > 0 {
		p.Head("The smallest change that would open it")
		for _, c := range o.Changes {
			p.Item(indent, "-", sentence(c))
		}
	}
}
