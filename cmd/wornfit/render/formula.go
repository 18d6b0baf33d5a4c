package render

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/catalogue"
	"wornfit/calc/kernel"
)

// Formula is a calculation, and what its page needs besides.
type Formula struct {
	Kernel  kernel.Kernel
	Topic   string
	Told    catalogue.Doc // empty where nothing is told
	Example []string      // the words of a call, after the name
}

// Put is an argument with the number put in.
type Put struct {
	Arg     kernel.Arg
	Value   float64 // NaN: not yet known
	Typed   string  // as typed; "" when a metal gave it
	Tidy    string  // the same in one way of writing
	Metal   string  // the row of materials it is from, "" when typed
	Low     float64 // a metal's number, from and to; Value is the middle
	High    float64
	From    string
	Grade   basis.Grade
	Brittle bool   // a yield strength of a metal that has none
	Unsaid  string // what it means that it was left out; "" when it was not
}

// Ran is a calculation that was worked.
type Ran struct {
	Sister    bool // of a family, after the first: what went in is told above
	Kernel    kernel.Kernel
	Topic     string
	Told      catalogue.Doc
	Puts      []Put
	Result    float64
	Steps     []string
	Notes     []basis.Note
	Grade     basis.Grade // the worst that went into it
	ShowSteps bool
}

// Dashed is a calculation's or argument's name as it is typed.
func Dashed(name string) string { return strings.ReplaceAll(name, "_", "-") }

// FormulaList names calculations with what each answers.
func FormulaList(l Look, list []catalogue.Topic) string {
	p := NewPage(l)
	for _, t := range list {
		p.Head(upperFirst(t.Name))
		var names, texts []string
		for _, k := range t.Kernels {
			names, texts = append(names, Dashed(k.Name)), append(texts, k.Says)
		}
		p.Pairs(indent, names, texts)
	}
	return p.String()
}

// FormulaShow is all there is to know of a calculation before it is run.
func FormulaShow(l Look, f Formula, v Voice) string {
	p := NewPage(l)
	k := f.Kernel
	p.Title(k.Says)
	p.Para(indent, Dashed(k.Name)+" gives "+resultWord(k)+". Topic: "+f.Topic+".")
	p.Head("It wants")
	t := Table{Columns: []Column{{Head: "argument"}, {Head: "kind"}, {Head: "from"}, {Head: "to"}, {Head: "as it grows, the result"}}, Title: 1}
	for _, a := range k.Args {
		low, high := v.Range(a)
		t.Rows = append(t.Rows, Row{Cells: []string{Dashed(a.Name), kindWord(ArgKind(a)), low, high, moves(a.Trend)}, Under: []string{upperFirst(a.Says) + "."}})
	}
	p.Table(t)
	if f.Told.Formula != "" {
		p.Head("Formula")
		for _, line := range strings.Split(f.Told.Formula, "\n") {
			p.sum(indent, "", line)
		}
	}
	p.holds(k, f.Told)
	if k.Slow {
		p.Para(indent, "It is worked by trial, step by step, and never stands in a search.")
	}
	if len(f.Example) > 0 {
		p.Head("For example")
		p.command(append([]string{"wornfit", "formula", "run", Dashed(k.Name)}, f.Example...))
	}
	return p.String()
}

// resultWord says what a result is.
func resultWord(k kernel.Kernel) string {
	kind := ResultKind(k)
	word := strings.ReplaceAll(kindWord(kind), "-", " ")
	switch {
	case word == "other":
		return "a number in " + kernel.SIUnit(k.Result)
	case word == "number":
		return "a plain number"
	case strings.ContainsRune("aeiou", rune(word[0])):
		return "an " + word
	}
	return "a " + word
}

func moves(trend int8) string {
	switch {
	case trend > 0:
		return "rises"
	case trend < 0:
		return "falls"
	}
	return "may do either"
}

// holds says what a calculation holds for and how well it is known.
func (p *Page) holds(k kernel.Kernel, told catalogue.Doc) {
	if told.Holds != "" {
		p.Head("Holds for")
		p.Para(indent, upperFirst(told.Holds))
	}
	if told.Beyond != "" {
		p.Head("Beyond that")
		p.Para(indent, upperFirst(told.Beyond))
	}
	from := told.Source
	if from == "" {
		from = k.Source
	}
	p.Head("How well it is known")
	p.Para(indent, stated(strings.TrimSuffix(from, "."), k.Grade))
}

// stated is where a formula is from and how it was come by.
func stated(from string, grade basis.Grade) string {
	if grade.Weak() && !strings.Contains(from, grade.String()) {
		from += ", from " + grade.String()
	}
	return upperFirst(strings.Trim(source(from, grade.String()), " []")) + "."
}

// command writes a command to copy, its words kept whole, a line going on in
// the next behind a backslash.
func (p *Page) command(words []string) {
	line, at, next := p.plain(words[0]), indent, 2*indent
	if p.Width < TableFrom {
		next = indent
	}
	for _, w := range words[1:] {
		w = p.plain(w)
		if at+width(line)+1+width(w)+2 > p.prose() {
			p.line(at, line+` \`)
			line, at = w, next
			continue
		}
		line += " " + w
	}
	p.line(at, line)
}
