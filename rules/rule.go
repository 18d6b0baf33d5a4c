package rules

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

var (
	strengthWords = []string{"must", "should", "prefer"}
	groundWords   = []string{"physics", "geometry", "function", "safety", "standard", "practice", "shop", "wish"}
)

// StrengthWord and GroundWord are how strengths and grounds are written.
func StrengthWord(s link.Strength) string { return strengthWords[s] }
func GroundWord(g link.Ground) string     { return groundWords[g] }

// need reads a need: a yes-no of facts.
func (l *loader) need(sc *scope, n yamldoc.Node) {
	if !n.Keys("id", "must", "should", "prefer", "when", "ground", "why", "remedy", "from") {
		return
	}
	r, test := l.rule(sc, n)
	if test == nil {
		return
	}
	e, faults := test.Check(sc, lang.Type{Kind: lang.YesNo})
	l.faults = append(l.faults, faults...)
	if e == nil {
		return
	}
	l.factsOnly(sc, e, n, "a need")
	r.Test = e
	sc.d.part.Needs = append(sc.d.part.Needs, r)
}

// limit reads a limit: exactly one <= or >= between numbers.
func (l *loader) limit(sc *scope, n yamldoc.Node) {
	if !n.Keys("id", "must", "should", "prefer", "when", "ground", "why", "remedy", "from") {
		return
	}
	r, src := l.rule(sc, n)
	if src == nil {
		return
	}
	left, right, sense, faults := src.CheckLimit(sc)
	l.faults = append(l.faults, faults...)
	if left == nil || right == nil {
		return
	}
	r.Left, r.Right, r.Sense = left, right, sense
	sc.d.part.Limits = append(sc.d.part.Limits, r)
}

// rule reads what needs and limits share; the expression comes back unchecked.
func (l *loader) rule(sc *scope, n yamldoc.Node) (link.Rule, *lang.Source) {
	r := link.Rule{At: n.At()}
	l.told(sc, n, &r)
	var src *lang.Source
	found := 0
	for i, w := range strengthWords {
		if e := n.Get(w); e.Present() {
			found++
			r.Strength = link.Strength(i)
			src = l.parse(e)
		}
	}
	switch {
	case found == 0:
		n.Fault("the rule "+r.ID+" demands nothing", "write must:, should: or prefer: with an expression")
	case found > 1:
		n.Fault("the rule "+r.ID+" demands more than one thing", "keep one of must, should and prefer; make two rules of it")
	}
	if r.Strength == link.Must && (r.Ground == link.Practice || r.Ground == link.Wish) {
		n.Get("ground").Fault("a must rests on "+groundWords[r.Ground], "write should: a must rests on physics, geometry, function, safety, standard or shop")
	}
	if w := n.Get("when"); w.Present() {
		if s := l.parse(w); s != nil {
			e, faults := s.Check(sc, lang.Type{Kind: lang.YesNo})
			l.faults = append(l.faults, faults...)
			r.When = e
			l.factsOnly(sc, e, w, "`when`")
		}
	}
	return r, src
}

// told reads id, ground, why, remedy and from: what is said when it bites.
func (l *loader) told(sc *scope, n yamldoc.Node, r *link.Rule) {
	r.ID = l.id(sc, n)
	r.Ground = link.Physics
	w := n.Need("ground", "write one of "+strings.Join(groundWords, ", ")).Word(groundWords...)
	for i, g := range groundWords {
		if g == w {
			r.Ground = link.Ground(i)
		}
	}
	why := n.Need("why", "say in shop words what is wrong when it is broken")
	remedy := n.Need("remedy", "say what would mend it")
	r.Why, r.Remedy = why.Text(), remedy.Text()
	r.WhyPieces, r.RemedyPieces = l.pieces(sc, why), l.pieces(sc, remedy)
	r.From = l.from(n)
	r.Grade = basis.Page
	if key, _ := splitFrom(r.From); key != "" {
		if g, ok := basis.ReadGrade(l.base.Sources[key].How); ok {
			r.Grade = g
		} else {
			r.Grade = basis.Practice
		}
	}
}

// id reads an id, unlike any other in the base.
func (l *loader) id(sc *scope, n yamldoc.Node) string {
	v := n.Need("id", "give it an id that begins with "+sc.d.prefix())
	id := v.Text()
	if id == "" {
		return ""
	}
	if had, again := l.ids[id]; again {
		v.Fault("the id "+id+" stands at "+had.String()+" already", "choose another; ids are never used twice")
	}
	l.ids[id] = v.At()
	if yamlWord(id) || lang.Reserved(id) || strings.ContainsAny(id, " ._") {
		v.Fault("the id "+id+" cannot be used", "use small letters, digits and -")
	}
	if p := sc.d.prefix(); p != "" && !strings.HasPrefix(id, p) {
		v.Fault("the id "+id+" does not begin with that of its file", "write "+p+"-...")
	}
	return id
}

// prefix is what the ids of a file begin with: its own id, or its first letters
// for a purpose's rules, which read better short.
func (d *draft) prefix() string {
	if p := d.doc.Root.Get("ids").Text(); p != "" {
		return p
	}
	return d.part.ID
}

// pieces parts a sentence into words and {values}.
func (l *loader) pieces(sc *scope, n yamldoc.Node) []link.Piece {
	var out []link.Piece
	text := n.Text()
	col := n.At().Column
	if n.Quoted() {
		col++
	}
	for text != "" {
		i := strings.IndexByte(text, '{')
		if i < 0 {
			return append(out, link.Piece{Text: text})
		}
		j := strings.IndexByte(text[i:], '}')
		if j < 0 {
			n.Fault("a { is not closed", "write {name}")
			return out
		}
		if i > 0 {
			out = append(out, link.Piece{Text: text[:i]})
		}
		inner := text[i+1 : i+j]
		at := n.At()
		at.Column = col + len([]rune(text[:i+1]))
		if row, ok := strings.CutSuffix(inner, ".id"); ok {
			if t, known := sc.Name(row); known && t.Kind == lang.Row {
				out = append(out, link.Piece{Row: row})
			} else {
				l.faults.Add(at, n.Key, row+" is no row of a table", "name a pick, or a row of the case")
			}
		} else if src, faults := lang.Parse(lang.Text{Source: inner, At: at, Key: n.Key}); len(faults) > 0 {
			l.faults = append(l.faults, faults...)
		} else if e, faults := src.Infer(sc); len(faults) > 0 {
			l.faults = append(l.faults, faults...)
		} else if e != nil {
			out = append(out, link.Piece{Value: e})
		}
		col += len([]rune(text[:i+j+1]))
		text = text[i+j+1:]
	}
	return out
}

// factsOnly tells a need or a `when` that hangs on a size: those are settled
// before any size is known.
func (l *loader) factsOnly(sc *scope, e *lang.Expr, n yamldoc.Node, what string) {
	if e == nil {
		return
	}
	seen := map[string]bool{}
	var look func(*lang.Expr)
	look = func(x *lang.Expr) {
		x.Names(func(name string, _ lang.Type) {
			if seen[name] {
				return
			}
			seen[name] = true
			if sc.d.dims[name] {
				l.faults.Add(n.At(), n.Key, what+" hangs on the size "+name, "make it a limit")
			}
			if d := sc.d.defines[name]; d != nil && d.expr != nil {
				look(d.expr)
			}
		})
	}
	look(e)
}

// caution reads the id of a caution that must be there.
func (l *loader) caution(n yamldoc.Node) string {
	id := n.Text()
	if id != "" && !l.base.Has("cautions", id) {
		n.Fault("there is no caution "+id, fault.DidYouMean(id, l.base.IDs("cautions")))
	}
	return id
}
