package rules

import (
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

var (
	strengthWords = []string{"must", "should", "prefer"}
	groundWords   = []string{"physics", "geometry", "function", "safety", "standard", "practice", "shop", "wish"}
	ruleKeys      = []string{"id", "must", "should", "prefer", "when", "ground", "why", "remedy", "from"}
)

// StrengthWord and GroundWord are how strengths and grounds are written.
func StrengthWord(s link.Strength) string { return strengthWords[s] }
func GroundWord(g link.Ground) string     { return groundWords[g] }

// need reads a need: a yes-no of facts.
func (l *loader) need(sc *scope, n yamldoc.Node) {
	if !n.Keys(ruleKeys...) {
		return
	}
	r, is := l.rule(sc, n)
	if r.Test = sc.expr(is, yesNo); r.Test == nil {
		return
	}
	l.beforeSizes(sc, r.Test, is, "a need")
	l.becomes(&r)
	sc.d.part.Needs = append(sc.d.part.Needs, r)
}

// limit reads a limit: exactly one <= or >= between numbers.
func (l *loader) limit(sc *scope, n yamldoc.Node) {
	if !n.Keys(append(slices.Clone(ruleKeys), "after", "carried")...) {
		return
	}
	r, is := l.rule(sc, n)
	if c := n.Get("carried"); c.Present() && sc.d.part.Side != link.Hold {
		c.Fault("a lock takes a limit off a hold, and this file is none", "take carried out")
	} else {
		r.Carried = c.Word(pulls...)
	}
	r.After, _ = n.Get("after").YesNo()
	src := l.parse(is)
	if src == nil {
		return
	}
	within := *sc
	within.after = r.After
	if !l.quietly(func() (faults fault.List) { r.Left, r.Right, r.Sense, faults = src.CheckLimit(&within); return faults }) {
		return
	}
	l.becomes(&r)
	sc.d.part.Limits = append(sc.d.part.Limits, r)
}

// rule reads what needs and limits share, and gives the node of what it asks.
func (l *loader) rule(sc *scope, n yamldoc.Node) (r link.Rule, is yamldoc.Node) {
	r.At = n.At()
	l.told(sc, n, &r)
	r.From, r.Grade = l.from(n)
	found := 0
	for i, w := range strengthWords {
		if e := n.Get(w); e.Present() {
			if found++; found == 1 {
				r.Strength, is = link.Strength(i), e
			}
		}
	}
	switch {
	case found == 0:
		n.Fault("the rule "+r.ID+" demands nothing", "write must:, should: or prefer: with an expression")
	case found > 1:
		n.Fault("the rule "+r.ID+" demands more than one thing", "keep one of must, should and prefer, or make two rules of it")
	}
	if r.Strength == link.Must && found > 0 && (r.Ground == link.Practice || r.Ground == link.Wish) {
		n.Get("ground").Fault("a must rests on "+groundWords[r.Ground], "write should: a must rests on physics, geometry, function, safety, standard or shop")
	}
	if w := n.Get("when"); w.Present() {
		r.When = sc.expr(w, yesNo)
		l.beforeSizes(sc, r.When, w, "a `when`")
	}
	return r, is
}

// told reads id, ground, why and remedy: what is said when the rule bites.
func (l *loader) told(sc *scope, n yamldoc.Node, r *link.Rule) {
	r.ID = l.id(sc, n)
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
}

// id reads an id, unlike any other in the base.
func (l *loader) id(sc *scope, n yamldoc.Node) string {
	prefix := sc.d.part.ID
	v := n.Need("id", "give it an id that begins with "+prefix+"-")
	id := word(v)
	if id == "" {
		return ""
	}
	if had, again := l.ids[id]; again {
		f := twice(id, v.At(), had)
		f.Key = v.Key
		l.faults = append(l.faults, f)
	} else {
		l.ids[id] = v.At()
	}
	if !strings.HasPrefix(id, prefix+"-") {
		v.Fault("the id "+id+" does not begin with that of its file", "write "+prefix+"-"+strings.TrimPrefix(id, prefix))
	}
	return id
}

// beforeSizes tells a need, a `when` or a pick that hangs on a size: those are
// settled before any size is known.
func (l *loader) beforeSizes(sc *scope, e *lang.Expr, n yamldoc.Node, what string) {
	if e == nil {
		return
	}
	if size := sc.sizeIn(e, map[string]bool{}); size != "" {
		n.Fault(what+" hangs on "+size+", which is not known before the sizes are", "make it a limit, or ask about what is given")
	}
}

// sizeIn names the first size that an expression rests on, or "".
func (s *scope) sizeIn(e *lang.Expr, seen map[string]bool) (size string) {
	e.Names(func(name string, of lang.Type) {
		if size != "" || seen[name] {
			return
		}
		seen[name] = true
		d := s.d.defines[name]
		switch {
		case s.d.dims[name]:
			size = name
		case d != nil && d.expr != nil:
			size = s.sizeIn(d.expr, seen)
		case d == nil && of.Kind == lang.NumberKind && s.worked(name):
			size = name
		}
	})
	return size
}

// worked reports a number that another file works out from sizes.
func (s *scope) worked(name string) bool {
	if _, ok := s.acrossSeam(name); ok {
		return true
	}
	_, ok := s.ofJoint(name)
	return ok
}
