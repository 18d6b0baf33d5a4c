package render

import (
	"slices"
	"strconv"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// best is how many options advise shows unless all are asked for.
const best = 5

// hours are the hours of work of an option, over its steps.
func hours(o *answer.Option) float64 {
	sum := 0.0
	for _, s := range o.Steps {
		sum += s.Hours
	}
	return sum
}

// price is what an option costs; nothing when it is not counted.
func (v Voice) price(o *answer.Option) string {
	s, ok := o.Scores["cost"]
	if !ok {
		return nothing
	}
	return v.Value(s.Value, quantity.MoneyDim)
}

func away(o *answer.Option) string {
	s, ok := o.Scores["out-of-service"]
	if !ok {
		return nothing
	}
	return Span(s.Value)
}

func work(o *answer.Option) string {
	if len(o.Steps) == 0 {
		return nothing
	}
	return Span(hours(o))
}

// open reports whether a verdict leaves an option in the running.
func open(verdict string) bool { return verdict != answer.RuledOut }

// methods is one row a trade name, with the one reason that decides.
func (p *Page) methods(a *answer.Answer, v Voice) {
	if len(a.Methods) == 0 {
		return
	}
	t := Table{Title: 2, Columns: []Column{{Head: "rank", Right: true}, {Head: "way"}, {Head: "verdict"},
		{Head: "points", Right: true}, {Head: "work", Right: true}, {Head: "cost", Right: true}, {Head: "out of service", Right: true}}}
	for _, m := range a.Methods {
		t.Rows = append(t.Rows, p.method(a, v, m))
	}
	p.Head("Ways to put it right, best first (rank among " + count(len(a.Options), "option", "options") + ")")
	p.Table(t)
}

func (p *Page) method(a *answer.Answer, v Voice, m answer.Method) Row {
	cells := []string{nothing, m.Name, m.Verdict, nothing, nothing, nothing, nothing}
	if o := byID(a, m.Best); o != nil && open(m.Verdict) {
		cells = []string{strconv.Itoa(m.Rank), m.Name, m.Verdict, Points(m.Points), work(o), v.price(o), away(o)}
	}
	why := sentence(m.Why)
	switch o := byID(a, m.Best); {
	case m.Why == "" && o != nil && len(against(o)) > 0:
		why = against(o)[0]
	case m.Why != "" && m.Kind != "":
		why = upperFirst(m.Kind) + ": " + m.Why + "."
	}
	if m.Others > 0 && !open(m.Verdict) {
		why += " And " + count(m.Others, "other way", "other ways") + " of doing it."
	}
	return Row{Cells: cells, Under: []string{sentence(m.Says) + " " + why}}
}

func byID(a *answer.Answer, id *string) *answer.Option {
	if id == nil {
		return nil
	}
	for i := range a.Options {
		if a.Options[i].ID == *id {
			return &a.Options[i]
		}
	}
	return nil
}

// options lists options by rank with what decides about each.
func (p *Page) options(a *answer.Answer, v Voice, all bool) {
	list := a.Options
	head := "All options"
	if !all && len(list) > best {
		list, head = list[:best], "The best five options of "+strconv.Itoa(len(list))
	}
	if len(list) == 0 {
		return
	}
	t := Table{Title: 2, Columns: []Column{{Head: "rank", Right: true}, {Head: "option"}, {Head: "verdict"},
		{Head: "points", Right: true}, {Head: "work", Right: true}, {Head: "cost", Right: true}, {Head: "out of service", Right: true}}}
	for i := range list {
		o := &list[i]
		cells := []string{strconv.Itoa(o.Rank), o.ID, o.Verdict, nothing, work(o), v.price(o), away(o)}
		if open(o.Verdict) {
			cells[3] = Points(o.Points)
		}
		t.Rows = append(t.Rows, Row{Cells: cells, Under: against(o)})
	}
	p.Head(head)
	p.Table(t)
}

// against is what speaks against an option: the rules in its way, else those
// that should be kept and are not.
func against(o *answer.Option) []string {
	var in, should, open []string
	for _, r := range o.Reasons {
		switch {
		case r.Holds == nil && r.Strength == "must":
			open = append(open, "Not known yet: "+r.Text+".")
		case r.Holds != nil && !*r.Holds && r.Strength == "must":
			in = append(in, sentence(named(r)))
		case (r.Holds == nil || !*r.Holds) && r.Strength == "should":
			should = append(should, sentence(named(r)))
		}
	}
	switch {
	case o.Verdict == answer.RuledOut && len(in) > 0:
		return []string{upperFirst(o.Kind) + ": " + in[0]}
	case o.Verdict == answer.CantTell && len(open) > 0:
		return open[:1]
	}
	return slices.Compact(should)
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
