package render

import (
	"slices"
	"strconv"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// best is how many options, and mistakes, advise shows unless all are asked for.
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
	return quantity.Span(s.Value)
}

func work(o *answer.Option) string {
	if len(o.Steps) == 0 {
		return nothing
	}
	return quantity.Span(hours(o))
}

// open reports whether a verdict leaves an option in the running.
func open(verdict string) bool { return verdict != answer.RuledOut }

// counted reports whether the figures of an option were worked out at sizes
// that can be: of one that is ruled out without a size they say nothing.
func counted(o *answer.Option) bool { return open(o.Verdict) || len(o.Dimensions) > 0 || uncut(o) }

// methods is one row a trade name, with the one reason that decides.
func (p *Page) methods(a *answer.Answer, v Voice) {
	if len(a.Methods) == 0 {
		return
	}
	t := Table{Title: 2, Columns: append([]Column{{Head: "no.", Right: true}, {Head: "way"}}, figureHeads...)}
	n := 0
	var bests []*answer.Option
	for _, m := range a.Methods {
		bests = append(bests, byID(a, m.Best))
	}
	told := shared(bests)
	for _, m := range a.Methods {
		number := nothing
		if open(m.Verdict) {
			n++
			number = strconv.Itoa(n)
		}
		t.Rows = append(t.Rows, v.method(byID(a, m.Best), m, number, told))
	}
	head := "Ways to put it right, best first"
	if n == 0 {
		head, t = "Ways to put it right: none works, the nearest to working first", t.only(1, 3)
	}
	p.Head(head)
	p.toldOnce(told)
	p.Table(t)
}

// only is a table with the columns from one up to another, the first its title.
func (t Table) only(from, to int) Table {
	t.Title, t.Columns = 1, t.Columns[from:to]
	for i := range t.Rows {
		t.Rows[i].Cells = t.Rows[i].Cells[from:to]
	}
	return t
}

// figureHeads head what is told of a way and of an option alike.
var figureHeads = []Column{{Head: "verdict"}, {Head: "points", Right: true}, {Head: "work", Right: true}, {Head: "cost", Right: true},
	{Head: "out of service", Right: true}}

// cells are the figures of an option; one that is ruled out has none, as no
// size was found to count them at.
func (v Voice) cells(o *answer.Option, number, name, verdict string) []string {
	if o == nil || !open(verdict) {
		return []string{nothing, name, verdict, nothing, nothing, nothing, nothing}
	}
	return []string{number, name, verdict, Points(o.Points), work(o), v.price(o), away(o)}
}

func (v Voice) method(o *answer.Option, m answer.Method, number string, told []string) Row {
	why := sentence(m.Why)
	switch {
	case o != nil && open(m.Verdict) && len(against(o)) > 0:
		why = ""
		if list := own(o, told); len(list) > 0 {
			why = list[0]
		}
	case m.Why != "" && m.Kind != "":
		why = upperFirst(m.Kind) + ": " + m.Why + "."
	}
	if m.Others > 0 && !open(m.Verdict) {
		why += " And " + count(m.Others, "other way", "other ways") + " of doing it."
	}
	return Row{Cells: v.cells(o, number, m.Name, m.Verdict), Under: []string{sentence(m.Says) + " " + why}}
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

// options lists options by rank with what decides about each: the best of
// those not ruled out, or all.
func (p *Page) options(a *answer.Answer, v Voice, all bool) {
	list, head := listed(a, all)
	if len(list) == 0 {
		return
	}
	t := Table{Title: 2, Columns: append([]Column{{Head: "rank", Right: true}, {Head: "option"}}, figureHeads...)}
	told := shared(list)
	for _, o := range list {
		t.Rows = append(t.Rows, Row{Cells: v.cells(o, strconv.Itoa(o.Rank), o.ID, o.Verdict), Under: own(o, told)})
	}
	p.Head(head)
	p.toldOnce(told)
	p.Table(t)
}

// listed are the options to list, under their heading.
func listed(a *answer.Answer, all bool) (list []*answer.Option, head string) {
	for i := range a.Options {
		if o := &a.Options[i]; all || open(o.Verdict) {
			list = append(list, o)
		}
	}
	judged := ", of " + strconv.Itoa(max(len(a.IDs), len(a.Options))) + " judged"
	switch n := len(list); {
	case all:
		return list, "All options"
	case n > best || n == best && len(a.IDs) > len(a.Options):
		return list[:best], "The best five options" + judged
	default:
		return list, "The " + count(n, "option", "options") + " not ruled out" + judged
	}
}

// against is what speaks against an option: the rules in its way, else those
// that should be kept and are not, then those of which it is not known.
func against(o *answer.Option) []string {
	var in, unknown, should, open []string
	for _, r := range o.Reasons {
		switch {
		case r.Holds == nil && r.Strength == "must":
			open = append(open, sentence(named(r)))
		case broken(r) && r.Strength == "must":
			in = append(in, upperFirst(o.Kind)+": "+strings.TrimSuffix(named(r), ".")+".")
		case broken(r) && r.Strength == "should":
			should = append(should, sentence(named(r)))
		case r.Holds == nil && r.Strength == "should":
			unknown = append(unknown, sentence(named(r)))
		}
	}
	switch {
	case o.Verdict == answer.RuledOut && len(in) > 0:
		return in[:1]
	case o.Verdict == answer.CantTell && len(open) > 0:
		return open[:1]
	}
	for _, c := range o.Care {
		unknown = append(unknown, sentence(c))
	}
	return slices.Compact(append(should, unknown...))
}

// shared is what speaks against every one of a list that works: it is told once
// over them all.
func shared(list []*answer.Option) []string {
	list = slices.DeleteFunc(slices.Clone(list), func(o *answer.Option) bool { return !works(o) })
	if len(list) < 2 {
		return nil
	}
	in := against(list[0])
	for _, o := range list[1:] {
		also := against(o)
		in = slices.DeleteFunc(in, func(r string) bool { return !slices.Contains(also, r) })
	}
	return in
}

func works(o *answer.Option) bool {
	return o != nil && (o.Verdict == answer.Works || o.Verdict == answer.WithCare)
}

// own is what speaks against an option and is not told over all.
func own(o *answer.Option, told []string) []string {
	list := against(o)
	if !works(o) {
		return list
	}
	list = slices.DeleteFunc(list, func(r string) bool { return slices.Contains(told, r) })
	if firms := sentTo(o); firms != "" {
		list = append(list, "Sent out: "+firms+".")
	}
	return list
}

// sentTo names the firms that do part of an option.
func sentTo(o *answer.Option) string {
	var list []string
	for _, s := range o.Steps {
		if s.SentOut && !slices.Contains(list, s.On) {
			list = append(list, s.On)
		}
	}
	return strings.Join(list, ", ")
}

func (p *Page) toldOnce(list []string) {
	for _, r := range list {
		p.Para(indent, "Against every one that works: "+r)
	}
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
