package render

import (
	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// scores shows what each criterion gave and what it is made of: no score
// without its parts.
func (p *Page) scores(a *answer.Answer, o *answer.Option, v Voice) {
	if len(o.Scores) == 0 || !counted(o) {
		return
	}
	p.Head("Its points")
	t := Table{Title: 1, Columns: []Column{{Head: "criterion"}, {Head: "came to", Right: true}, {Head: "points of 100", Right: true}, {Head: "weight", Right: true}}}
	for _, c := range a.Criteria {
		s, ok := o.Scores[c.ID]
		if !ok {
			continue
		}
		r := Row{Cells: []string{c.ID, v.Share(s.Value, s.Dim), Points(s.Points), Points(100*c.Weight) + " %"}}
		r.Under = append(r.Under, sentence(c.Says))
		for _, x := range s.Parts {
			r.Under = append(r.Under, "- "+x.Says+": "+v.Share(x.Value, x.Dim))
		}
		t.Rows = append(t.Rows, r)
	}
	p.Table(t)
	p.Blank()
	text := "In all " + Points(o.Points) + " points"
	if o.Broken > 0 {
		text += ", " + Points(o.Broken) + " of them taken off for rules that should be kept and are not"
	}
	p.Para(indent, sentence(text))
}

// risks are the named contributions to the chance of spoiling a part.
func (p *Page) risks(o *answer.Option) {
	for _, x := range o.Scores["risk"].Parts {
		if x.Value > 0 {
			p.Item(indent, "-", "Risk "+quantity.Figures(100*x.Value)+" %: "+x.Says+".")
		}
	}
}

// weights says how much each criterion counts.
func (p *Page) weights(a *answer.Answer) {
	if len(a.Criteria) == 0 {
		return
	}
	p.Head("How the points are counted")
	var names, texts []string
	for _, c := range a.Criteria {
		names, texts = append(names, c.ID), append(texts, Points(100*c.Weight)+" %: "+c.Says)
	}
	p.Pairs(indent, names, texts)
}
