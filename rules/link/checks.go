package link

import (
	"fmt"
	"slices"
	"strings"

	"wornfit/calc/basis"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// checks lowers the needs and limits of one file. A rule whose `when` is no for
// this option whatever the case says is left out.
func (l *linker) checks(lw *lowering, e *env) {
	for i := range e.part.Needs {
		l.check(lw, e, &e.part.Needs[i])
	}
	l.features(lw, e)
	for i := range e.part.Limits {
		l.check(lw, e, &e.part.Limits[i])
	}
}

func (l *linker) check(lw *lowering, e *env, r *Rule) {
	if l.locked(e, r) {
		return
	}
	when, never := l.when(lw, e, r.When)
	if never {
		return
	}
	c := ruled(e, r)
	c.When = when
	if r.Test != nil {
		c.Need = true
		c.Margin = lw.expr(e, r.Test)
	} else {
		c.Left, c.Right = lw.expr(e, r.Left), lw.expr(e, r.Right)
		c.Dim = r.Left.Type.Dim
		if c.Left != 0 && c.Right != 0 {
			c.Margin = margin(lw.b, r.Sense, c.Left, c.Right)
		}
	}
	l.opt.Checks = append(l.opt.Checks, c)
	at := len(l.opt.Checks) - 1
	l.last(func() { l.wording(lw, e, &l.opt.Checks[at]) })
}

// margin is what a limit has in hand: not negative when it is kept.
func margin(b *tape.Builder, s Sense, left, right tape.Node) tape.Node {
	if s == AtLeast {
		return b.Apply(lang.Sub, left, right)
	}
	return b.Apply(lang.Sub, right, left)
}

// when lowers a condition; never means that it is no in this option anyway, and
// node 0 that it is always yes.
func (l *linker) when(lw *lowering, e *env, x *lang.Expr) (n tape.Node, never bool) {
	n = lw.expr(e, x)
	switch n {
	case lw.b.YesNo(false):
		return 0, true
	case lw.b.YesNo(true):
		return 0, false
	}
	return n, false
}

// ruled is a rule under its full id.
func ruled(e *env, r *Rule) Check {
	return Check{Rule: r, Of: e.part, Joint: e.jointName(), FullID: e.said(r.ID)}
}

// wording gives a rule its words.
func (l *linker) wording(lw *lowering, e *env, c *Check) {
	c.Why = l.words(lw, e, c.Rule.Why, c.WhyPieces)
	c.Remedy = l.words(lw, e, c.Rule.Remedy, c.RemedyPieces)
}

func (l *linker) words(lw *lowering, e *env, text string, pieces []Piece) []WordPiece {
	if len(pieces) == 0 && text != "" {
		return []WordPiece{{Text: text}}
	}
	var out []WordPiece
	for _, p := range pieces {
		w := WordPiece{Text: p.Text}
		switch {
		case p.Row != "":
			w = WordPiece{Row: l.rowName(lw, e, p.Row)}
		case p.Value != nil:
			t := p.Value.Type
			w = WordPiece{Node: lw.expr(e, p.Value), Dim: t.Dim, YesNo: t.Kind == lang.YesNo}
			if t.Words != nil {
				w.Words = t.Words.List
			}
		}
		out = append(out, w)
	}
	return out
}

// rowName is the full name of the row a name stands for.
func (l *linker) rowName(lw *lowering, e *env, name string) string {
	r, ok, err := lw.row(e, name, 0)
	if err == nil && !ok {
		err = fmt.Errorf("%s is no row known in %s", name, fileName(e.part))
	}
	if err != nil {
		l.tell(err, e.at())
		return ""
	}
	return r.name
}

// features makes a need of each kind of neighbour that a file cannot live with.
// A hold on a joint of a part answers for that part, a hold of the finished fit
// and a purpose for both.
func (l *linker) features(lw *lowering, e *env) {
	bars, sides := e.part.bars, l.sidesOf(e)
	if bars == nil {
		bars = e.part.barred()
	}
	for i := range bars { // of each neighbour, that of the shaft and that of the hub
		if slices.Contains(sides, bars[i].side) {
			l.check(lw, e, &bars[i].Rule)
		}
	}
}

// bar is the need that a kind of neighbour is not there on one side.
type bar struct {
	Rule
	side Side
}

// barred makes the bars of a part.
func (p *Part) barred() []bar {
	out := []bar{}
	for _, f := range p.Features {
		if f.Answer != "ruled out" {
			continue
		}
		for _, side := range []Side{Hub, Shaft} {
			name := side.String() + ".near_" + strings.ReplaceAll(f.Kind, "-", "_")
			out = append(out, bar{side: side, Rule: Rule{
				ID:       fmt.Sprintf("%s-%s-near-%s", p.ID, side, f.Kind),
				Test:     &lang.Expr{Op: lang.Not, Type: yesNo, At: f.At, Args: []*lang.Expr{{Op: lang.Name, Name: name, Type: yesNo, At: f.At}}},
				Strength: Must, Ground: Geometry, Why: f.Why,
				Remedy: "a repair that leaves the " + strings.ReplaceAll(f.Kind, "-", " ") + " alone",
				From:   "geometry", Grade: basis.Derived, At: f.At,
			}})
		}
	}
	return out
}

var yesNo = lang.Type{Kind: lang.YesNo}

func (l *linker) sidesOf(e *env) []Side {
	switch {
	case e.part.Side == Shaft || e.part.Side == Hub:
		return []Side{e.part.Side}
	case e.joint != nil && e.joint.owner != nil:
		return []Side{e.joint.owner.part.Side}
	}
	return []Side{Hub, Shaft}
}
