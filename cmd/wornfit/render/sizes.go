package render

import (
	"strings"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// sizes shows what to cut to, and under each size the window it lies in.
func (p *Page) sizes(o *answer.Option, v Voice) {
	if len(o.Dimensions) == 0 {
		return
	}
	t := Table{Title: 1, Columns: []Column{{Head: "cut in this order"}, {Head: "low limit", Right: true}, {Head: "target", Right: true},
		{Head: "high limit", Right: true}, {Head: "cut on"}}}
	for i := range o.Dimensions {
		t.Rows = append(t.Rows, v.size(o, &o.Dimensions[i]))
	}
	p.Table(t)
}

func (v Voice) size(o *answer.Option, d *answer.Dimension) Row {
	low, target, high := v.Limits(d.Lower, d.Target, d.Upper)
	from, _, to := v.Limits(d.Low.Value, d.Target, d.High.Value)
	r := Row{Cells: []string{d.Name, low, target, high, d.On}}
	if d.On == "" {
		r.Cells[4] = nothing
	}
	if d.Made {
		r.Under = append(r.Under, "Made already; everything not yet cut is worked out from it.")
	}
	if d.Suits != "" && !d.Made {
		r.Under = append(r.Under, "Cut it to suit the "+strings.ReplaceAll(d.Suits, "_", " ")+" as made.")
	}
	r.Under = append(r.Under, "May lie from "+from+edge(d.Low)+" to "+to+edge(d.High)+".")
	return r
}

// edge says in words which rules end a window.
func edge(e answer.Edge) string {
	if len(e.By) == 0 {
		return ""
	}
	var by []string
	for _, id := range e.By {
		by = append(by, ruleName(id))
	}
	return " (" + strings.Join(by, "; ") + ")"
}

// ruleName turns a rule's id into words: bush.press-holds-torque is `bush,
// press holds torque`.
func ruleName(id string) string {
	id = strings.ReplaceAll(id, "-", " ")
	return strings.ReplaceAll(id, ".", ", ")
}

// edges tells each rule that ends a window once, in its own sentence.
func (p *Page) edges(o *answer.Option) {
	told := map[string]bool{}
	for _, d := range o.Dimensions {
		for _, id := range append(append([]string{}, d.Low.By...), d.High.By...) {
			if r := reason(o, id); r != nil && !told[id] {
				if len(told) == 0 {
					p.Blank()
					p.Para(indent, "The rules that end these ranges, at the target sizes:")
				}
				told[id] = true
				p.Item(indent, "-", ruleName(id)+": "+strings.TrimPrefix(named(*r), ruleName(id)+": ")+" ("+r.Strength+", "+r.Ground+")")
			}
		}
	}
}

func reason(o *answer.Option, id string) *answer.Reason {
	for i := range o.Reasons {
		if o.Reasons[i].Rule == id {
			return &o.Reasons[i]
		}
	}
	return nil
}

// margins says how far each target stands from the ends of its window, and
// what its machine and gauge leave of that.
func (p *Page) margins(o *answer.Option, v Voice) {
	if len(o.Dimensions) == 0 {
		return
	}
	t := Table{Title: 1, Columns: []Column{{}, {Head: "down to the end", Right: true}, {Head: "up to the end", Right: true},
		{Head: "limits apart", Right: true}, {Head: "machine holds", Right: true}, {Head: "gauged within", Right: true}}}
	gap := func(l float64) string { return v.Gap(l, quantity.ByTenth) }
	for _, d := range o.Dimensions {
		within := nothing
		if d.Gauge > 0 {
			within = "±" + gap(d.Gauge)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{d.Name, gap(d.Target - d.Low.Value), gap(d.High.Value - d.Target), gap(d.Upper - d.Lower), gap(d.Holds), within}})
	}
	p.Head("What there is to spare, from the target to the ends of its range")
	p.Table(t)
}

// comesTo shows what the fit comes to as the rule base picks it.
func (p *Page) comesTo(o *answer.Option, v Voice) {
	first := true
	for _, x := range o.Values {
		if !x.Told {
			continue
		}
		if first {
			p.Head(comesTo(o))
			first = false
		}
		p.Item(indent, "-", v.worked(x))
	}
}

func comesTo(o *answer.Option) string {
	if len(o.Dimensions) == 0 {
		return "What it comes to"
	}
	return "What it comes to at the target sizes"
}

func (v Voice) worked(x answer.Value) string {
	says := x.Says
	if x.Joint != "" && x.Joint != "fit" {
		says += " (" + x.Joint + ")" // each joint has its own
	}
	return sentence(says + ": " + v.Value(x.Value, x.Dim))
}

// worked shows the numbers behind the sizes: name, formula, result.
func (p *Page) worked(o *answer.Option, v Voice) {
	if len(o.Values) == 0 {
		return
	}
	p.Head("The numbers worked")
	for _, x := range o.Values {
		p.Para(indent, v.worked(x))
		if x.Formula != "" {
			p.Para(2*indent, x.Name+" = "+x.Formula)
		}
	}
}
