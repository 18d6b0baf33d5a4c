package rules

import (
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// expressions calls f for every expression of a part file, those put into its
// sentences too. What could not be read is left out.
func expressions(p *link.Part, f func(*lang.Expr)) {
	visit := func(list ...*lang.Expr) {
		for _, e := range list {
			if e != nil {
				f(e)
			}
		}
	}
	pieces := func(list ...[]link.Piece) {
		for _, l := range list {
			for _, p := range l {
				visit(p.Value)
			}
		}
	}
	rules := func(list []link.Rule) {
		for i := range list {
			r := &list[i]
			visit(r.Test, r.Left, r.Right, r.When)
			pieces(r.WhyPieces, r.RemedyPieces)
		}
	}
	rules(p.Needs)
	rules(p.Limits)
	for i := range p.Picks {
		k := &p.Picks[i]
		visit(k.Where, k.Best)
		rules([]link.Rule{k.Missing})
	}
	for _, d := range p.Choose {
		visit(d.Low, d.High)
	}
	for _, j := range p.Joints {
		for _, e := range j.Fields {
			visit(e)
		}
	}
	for _, d := range p.Defines {
		visit(d.Is)
	}
	for _, a := range p.Aims {
		visit(a.Least, a.Most, a.Middle, a.Of)
	}
	for _, s := range p.Scores {
		visit(s.Is)
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		visit(s.Hours, s.Wait, s.Costs, s.When)
		pieces(s.SaysPieces)
	}
}

// rowNames calls f for every name that stands for a row, or for a pick or a
// size by itself, outside an expression.
func rowNames(p *link.Part, f func(string)) {
	pieces := func(list ...[]link.Piece) {
		for _, l := range list {
			for _, p := range l {
				if p.Row != "" {
					f(p.Row)
				}
			}
		}
	}
	rules := func(list []link.Rule) {
		for i := range list {
			pieces(list[i].WhyPieces, list[i].RemedyPieces)
		}
	}
	rules(p.Needs)
	rules(p.Limits)
	for _, d := range p.Choose {
		f(d.By)
		f(d.Suits)
	}
	for _, j := range p.Joints {
		for _, r := range j.Rows {
			f(r)
		}
	}
	for _, d := range p.Defines {
		f(d.Row)
	}
	for i := range p.Steps {
		f(p.Steps[i].On)
		pieces(p.Steps[i].SaysPieces)
	}
}
