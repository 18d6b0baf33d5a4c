package render

import (
	"strings"

	"wornfit/calc/quantity"
)

// FormulaRun is a calculation that was worked: the result, what went in, notes.
func FormulaRun(l Look, r Ran, v Voice) string {
	p := NewPage(l)
	k := r.Kernel
	p.Title(k.Says)
	p.Para(indent, Dashed(k.Name)+" = "+v.Said(r.Result, ResultKind(k), k.Result))
	p.Head("Put in")
	t := Table{Columns: []Column{{Head: "argument"}, {Head: "value", Right: true}, {Head: "what it is"}}, Title: 1}
	for _, a := range r.Puts {
		row := Row{Cells: []string{Dashed(a.Arg.Name), v.put(a), a.Arg.Says}}
		if a.Metal != "" {
			row.Under = []string{v.fromMetal(a)}
		}
		t.Rows = append(t.Rows, row)
	}
	p.Table(t)
	if r.ShowSteps {
		p.working(r, v)
	}
	if len(r.Notes) > 0 {
		p.Head("Mind")
		for _, n := range r.Notes {
			p.Item(indent, "-", upperFirst(n.Says)+source(n.Source, n.Grade.String()))
		}
	}
	p.holds(k, r.Told)
	if r.Grade != k.Grade {
		p.Para(indent, "The result is no better than the weakest number or note above: "+r.Grade.String()+".")
	}
	return p.String()
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

// working shows the steps, in SI, and what the ranges were.
func (p *Page) working(r Ran, v Voice) {
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
