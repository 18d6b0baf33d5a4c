package render

import (
	"strings"

	"wornfit/advisor/answer"
)

// Advise is the whole answer to one fit.
func Advise(l Look, a *answer.Answer, v Voice, all bool) string {
	p := NewPage(l)
	if p.stopped(a) {
		return p.String()
	}
	p.top(a)
	p.found(a, v)
	if a.Stop != nil {
		p.unanswered(a.Stop)
		p.notes(a)
		return p.String()
	}
	p.howBad(a, v)
	p.cause(a)
	p.methods(a, v)
	p.options(a, v, all)
	p.first(a, v, all)
	if len(a.Buying) > 0 {
		p.Head("Repair or buy")
	}
	for _, b := range a.Buying {
		p.Para(indent, sentence(b.Text))
	}
	if a.TwoSteps != nil {
		p.Head("When time rules")
		p.Para(indent, sentence(a.TwoSteps.Text))
	}
	p.notes(a)
	p.foot(a)
	return p.String()
}

// Compare sets options side by side.
func Compare(l Look, a *answer.Answer, list []*answer.Option, v Voice) string {
	p := NewPage(l)
	if p.halted(a) {
		return p.String()
	}
	p.top(a)
	p.sides(a, list, v)
	for _, o := range list {
		p.Head(o.ID + ": " + verdict(o.Verdict, o.Kind))
		p.Para(indent, sentence(o.Says))
		for _, s := range against(o) {
			p.Item(indent, "-", s)
		}
		for _, m := range o.Missing {
			p.Item(indent, "-", "To be found out: "+sentence(m.Ask))
		}
		if counted(o) {
			p.risks(o)
		}
	}
	p.weights(a)
	p.foot(a)
	return p.String()
}

// Size shows every dimension of an option.
func Size(l Look, a *answer.Answer, o *answer.Option, v Voice, worked bool) string {
	p := NewPage(l)
	if p.halted(a) {
		return p.String()
	}
	p.top(a)
	p.heading(o)
	if len(o.Dimensions) == 0 {
		p.Blank()
		p.Para(indent, noSizes(o))
		for _, s := range against(o) {
			p.Item(indent, "-", s)
		}
		p.missing("What would settle it", o.Missing)
	}
	p.picks(o)
	p.Blank()
	p.sizes(o, v)
	p.edges(o)
	p.margins(o, v)
	if worked {
		p.worked(o, v)
	}
	p.foot(a)
	return p.String()
}

// noSizes says why an option has none.
func noSizes(o *answer.Option) string {
	if uncut(o) {
		return "Nothing is cut, so there is no size to cut to."
	}
	return "There is no size to give while this stands:"
}

// uncut reports whether an option leaves both parts as they are.
func uncut(o *answer.Option) bool { return o.Shaft == "leave" && o.Hub == "leave" }

// Why tells every reason for and against an option.
func Why(l Look, a *answer.Answer, o *answer.Option, v Voice) string {
	p := NewPage(l)
	if p.halted(a) {
		return p.String()
	}
	p.top(a)
	p.heading(o)
	p.reasons(o, v)
	p.conflict(o)
	p.missing("What would settle it", o.Missing)
	p.neighbours(o)
	p.scores(a, o, v)
	p.foot(a)
	return p.String()
}

// Cannot says why a trade name cannot serve the fit at all.
func Cannot(l Look, a *answer.Answer, m *answer.Method) string {
	p := NewPage(l)
	if p.halted(a) {
		return p.String()
	}
	p.top(a)
	p.Head(m.Name + ": " + verdict(m.Verdict, m.Kind))
	p.Para(indent, sentence(m.Says))
	p.Para(indent, sentence(m.Why))
	p.foot(a)
	return p.String()
}

func (p *Page) top(a *answer.Answer) {
	c := a.Case
	p.Title(c.Title)
	p.Para(0, "Fit "+c.Fit+": "+c.Shaft+" in "+c.Hub+", "+strings.ReplaceAll(c.Purpose, "-", " ")+". Sizes are diameters.")
}

func (p *Page) heading(o *answer.Option) {
	p.Head(called(o) + ": " + verdict(o.Verdict, o.Kind))
	p.Para(indent, sentence(o.Says))
}

func called(o *answer.Option) string {
	if o.Name != nil {
		return *o.Name + " (" + o.ID + ")"
	}
	return o.ID
}

// first sizes the best option and tells how it is done.
func (p *Page) first(a *answer.Answer, v Voice, all bool) {
	if len(a.Options) == 0 {
		return
	}
	o := &a.Options[0]
	switch o.Verdict {
	case answer.RuledOut:
		p.Head("No option can be advised")
		p.Para(indent, "None of the "+count(max(len(a.IDs), len(a.Options)), "option", "options")+" works; wornfit why CASE OPTION tells every reason, and --all lists them. "+nearest(a))
		return
	case answer.CantTell:
		p.missing("Nothing can be advised until this is known", o.Missing)
		return
	}
	p.Head("The best: " + called(o))
	p.Para(indent, sentence(o.Says))
	p.picks(o)
	p.Blank()
	p.sizes(o, v)
	p.edges(o)
	p.comesTo(o, v)
	p.steps(o)
	p.neighbours(o)
	p.mistakes(o, all)
	p.missing("What is not known yet", o.Missing)
}

// nearest names the ways that only this shop or a wish rules out; else the
// first of all.
func nearest(a *answer.Answer) string {
	var here []string
	for _, m := range a.Methods {
		if m.Kind == answer.NotHere || m.Kind == answer.NotWished {
			here = append(here, m.Name)
		}
	}
	switch {
	case len(here) > 0:
		return "Nearest to working: " + strings.Join(here, ", ") + "."
	case len(a.Methods) > 0:
		return "Nearest to working: " + a.Methods[0].Name + "."
	}
	return ""
}

func (p *Page) foot(a *answer.Answer) {
	k := a.Knowledge
	p.Blank()
	text := "Knowledge " + k.Version + ", hash " + k.Hash
	if len(k.Layers) > 1 {
		text += ", with " + strings.Join(k.Layers[1:], " and ") + " laid over it"
	}
	p.Para(0, sentence(text))
}
