package rules

import (
	"strings"

	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// pick reads a discrete choice: a row of a table, or of what the shop has. Its
// `from` is the table, so the source of the rule that fails when no row is left
// is called `source`.
func (l *loader) pick(sc *scope, e yamldoc.Entry) {
	n := e.Value
	if !n.Keys("from", "where", "best", "all", "id", "ground", "why", "remedy", "source") {
		return
	}
	p := link.Pick{ID: e.Name, From: sc.d.picks[e.Name], At: e.KeyAt}
	in := &scope{l: l, d: sc.d, it: tableOf(p.From)}
	p.Where = in.expr(n.Get("where"), yesNo)
	l.beforeSizes(in, p.Where, n.Get("where"), "a pick")
	p.All, _ = n.Get("all").YesNo()
	best := n.Get("best")
	if best.Present() {
		l.best(in, &p, best)
	}
	if p.All == best.Present() {
		n.Fault("the pick "+e.Name+" says neither or both of all and best", "write all: yes, or best: {least: ...}")
	}
	p.Missing = link.Rule{At: e.KeyAt, Strength: link.Must}
	l.told(sc, n, &p.Missing)
	p.Missing.From = "what is listed under " + p.From
	if s := n.Get("source"); s.Present() {
		p.Missing.From = l.source(s, &p.Missing.Grade)
	}
	if p.Missing.Ground == link.Practice || p.Missing.Ground == link.Wish {
		p.Missing.Strength = link.Should
	}
	sc.d.part.Picks = append(sc.d.part.Picks, p)
}

// best reads which of the rows that fit is taken.
func (l *loader) best(in *scope, p *link.Pick, n yamldoc.Node) {
	if !n.Keys("least", "most", "first") {
		return
	}
	if len(n.Entries()) != 1 {
		n.Fault("best says more or less than one thing", "write one of {least: EXPRESSION}, {most: EXPRESSION}, {first: row}")
		return
	}
	switch by := n.Entries()[0]; by.Name {
	case "first":
		p.First = by.Value.Word("row") == "row"
	default:
		p.Most = by.Name == "most"
		if p.Best = in.infer(by.Value); p.Best != nil && p.Best.Type.Kind != lang.NumberKind {
			by.Value.Fault("the rows are put in order by "+by.Value.Text()+", which is no number", "name a column that is a number, such as it."+in.firstNumber())
			p.Best = nil
		}
		l.beforeSizes(in, p.Best, by.Value, "a pick")
	}
}

func (s *scope) firstNumber() string {
	for _, c := range s.l.base.Vocabulary.Tables[s.it] {
		if c.Type.Kind == lang.NumberKind {
			return c.Name
		}
	}
	return strings.TrimSuffix(s.it, "s")
}
