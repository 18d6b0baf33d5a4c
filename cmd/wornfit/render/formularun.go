package render

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// FormulaRun is a calculation that was worked: the result, what went in, notes.
func FormulaRun(l Look, r Ran, v Voice) string {
	p := NewPage(l)
	k := r.Kernel
	p.Title(k.Says)
	p.Para(indent, Dashed(k.Name)+" = "+v.Said(r.Result, ResultKind(k), k.Result))
	if r.Sister {
		p.working(r, v)
		p.mind(r.Notes)
		return p.String()
	}
	p.Head("Put in")
	t := Table{Columns: []Column{{Head: "argument"}, {Head: "value", Right: true}, {Head: "what it is"}}, Title: 1}
	for _, a := range r.Puts {
		row := Row{Cells: []string{Dashed(a.Arg.Name), v.put(a), a.Arg.Says}}
		switch {
		case a.Metal != "":
			row.Under = []string{v.fromMetal(a)}
		case a.Unsaid != "":
			row.Under = []string{"not said: " + a.Unsaid}
		}
		t.Rows = append(t.Rows, row)
	}
	p.Table(t)
	p.working(r, v)
	p.mind(r.Notes)
	p.holds(k, r.Told)
	if r.Grade != k.Grade {
		p.Para(indent, "The result is no better than the weakest number or note above: "+r.Grade.String()+".")
	}
	return p.String()
}

func (p *Page) mind(notes []basis.Note) {
	if len(notes) == 0 {
		return
	}
	p.Head("Mind")
	for _, n := range notes {
		p.Item(indent, "-", upperFirst(n.Says)+source(n.Source, n.Grade.String()))
	}
}

// put says what was put in as it was typed, and where it was typed in other
// units than are spoken, in those too.
func (v Voice) put(a Put) string {
	said := v.SaidArg(a.Value, a.Arg)
	switch {
	case a.Tidy == "" || v.Units == quantity.Both:
		return said
	case unitWord(a.Tidy) == unitWord(said) || a.Value == 0:
		return a.Tidy
	}
	return a.Tidy + " = " + said
}

func unitWord(text string) string {
	_, unit, _ := strings.Cut(text, " ")
	return unit
}

// fromMetal says where a metal's number is from, and that it is a middle.
func (v Voice) fromMetal(a Put) string {
	text := a.Metal
	if a.Low < a.High {
		text += ", the middle of " + v.SaidArg(a.Low, a.Arg) + " to " + v.SaidArg(a.High, a.Arg)
	}
	return text + source(a.From, a.Grade.String())
}

// working shows the steps, in SI, and what the ranges were, if they are wanted.
func (p *Page) working(r Ran, v Voice) {
	if !r.ShowSteps {
		return
	}
	p.Head("Worked")
	if len(r.Steps) == 0 {
		p.Para(indent, "This calculation shows no steps: what went in stands above, what came out at the top.")
	}
	for _, s := range r.Steps {
		p.sum(indent, "-", s)
	}
	p.Head("Ranges")
	var names, texts []string
	for _, a := range r.Puts {
		low, high := v.Range(a.Arg)
		names, texts = append(names, Dashed(a.Arg.Name)), append(texts, low+" to "+high)
	}
	p.Pairs(indent, names, texts)
}
