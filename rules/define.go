package rules

import (
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// define is a named value, or another name for a row. Its type is what its
// expression comes to, found when it is first asked for.
type define struct {
	id    string
	at    fault.Place
	node  yamldoc.Node
	want  *lang.Type // of a name that crosses the seam
	row   string
	expr  *lang.Expr
	typ   lang.Type
	state defineState
}

type defineState uint8

const (
	unread defineState = iota
	reading
	sound
	atFault
)

func (l *loader) defined(d *draft, e yamldoc.Entry) *define {
	out := &define{id: e.Name, at: e.KeyAt, node: e.Value}
	if !e.Value.Keys("is", "says", "row", "tell") {
		out.state = atFault
		return out
	}
	if i := slices.IndexFunc(l.crossing(d), func(s link.SeamName) bool { return s.Name == e.Name }); i >= 0 {
		out.want = &l.crossing(d)[i].Type
	}
	is, row := e.Value.Get("is"), e.Value.Get("row")
	switch {
	case is.Present() == row.Present():
		e.Value.Fault(e.Name+" says neither or both of is and row", "write is: with an expression, or row: with the name of a row")
		out.state = atFault
	case row.Present():
		out.row = row.Text()
	}
	return out
}

// crossing is what the seam asks a file to define.
func (l *loader) crossing(d *draft) []link.SeamName {
	seam := &l.base.Input.Seam
	switch d.part.Side {
	case link.Shaft:
		return seam.Shaft
	case link.Hub:
		return seam.Hub
	case link.Hold:
		return seam.Hold
	case link.Purpose:
		return seam.Purpose
	}
	return nil
}

// typeOf reads a define when it is first asked for.
func (s *scope) typeOf(def *define) (lang.Type, bool) {
	l := s.l
	switch def.state {
	case reading:
		from := slices.Index(l.chain, def)
		var ids []string
		for _, d := range l.chain[max(from, 0):] {
			ids = append(ids, d.id)
			d.state = atFault
		}
		l.faults.Add(def.at, "define."+def.id, def.id+" is worked out from itself: "+strings.Join(append(ids, def.id), " <- "),
			"break the circle: each value must rest on values known before it")
	case unread:
		def.state = reading
		l.chain = append(l.chain, def)
		s.read(def)
		l.chain = l.chain[:len(l.chain)-1]
	}
	if def.state != sound {
		l.shaky = true
		return lang.Type{}, false
	}
	return def.typ, true
}

func (s *scope) read(def *define) {
	good := false
	whole := &scope{l: s.l, d: s.d} // a define has no row being tried, wherever it is asked for
	if def.row != "" {
		def.typ, good = whole.row(def.node.Get("row"), def.want)
	} else {
		if def.want != nil && def.want.Kind != lang.Row {
			def.expr = whole.expr(def.node.Get("is"), *def.want)
		} else if def.want == nil {
			def.expr = whole.infer(def.node.Get("is"))
		} else {
			def.node.Fault(def.id+" is the name of a row", "write row: with the name of a pick, or of a row such as hub.material")
		}
		if good = def.expr != nil; good {
			def.typ = def.expr.Type
		}
	}
	if def.state == reading { // else it was found to rest on itself
		def.state = atFault
		if good {
			def.state = sound
		}
	}
}

// row reads the name of a row.
func (s *scope) row(n yamldoc.Node, want *lang.Type) (t lang.Type, ok bool) {
	name := n.Text()
	ok = s.l.quietly(func() (faults fault.List) {
		var known bool
		t, known = s.Name(name)
		switch {
		case !known:
			faults.Add(n.TextAt(), n.Key, "the name "+name+" is unknown here", fault.DidYouMean(name, s.rows()))
		case t.Kind != lang.Row:
			faults.Add(n.TextAt(), n.Key, name+" is no row of a table", fault.DidYouMean(name, s.rows()))
		case want != nil && !s.l.base.Vocabulary.CountsAs(t.Table, want.Table):
			faults.Add(n.TextAt(), n.Key, name+" is a row of "+t.Table+", and a row of "+want.Table+" is wanted here", "name a row of "+want.Table)
		}
		return faults
	})
	return t, ok
}

// rows lists the names known here that stand for rows.
func (s *scope) rows() []string {
	var out []string
	for n := range s.d.picks {
		out = append(out, n)
	}
	for _, n := range s.l.base.Vocabulary.order {
		if e := s.l.base.Vocabulary.byName[n]; e.Type.Kind == lang.Row {
			out = append(out, n)
		}
	}
	return sorted(out)
}

// keep puts a define that is sound into the part.
func (s *scope) keep(def *define) {
	t, ok := s.typeOf(def)
	if !ok {
		return
	}
	s.d.part.Types[def.id] = t
	told, _ := def.node.Get("tell").YesNo()
	says := def.node.Get("says").Text()
	if told && says == "" {
		def.node.Fault(def.id+" is to be told and has no words", "write says: with what a fitter calls it")
	}
	s.d.part.Defines = append(s.d.part.Defines, link.Define{ID: def.id, Says: says, Told: told, Is: def.expr, Row: def.row, At: def.at})
}

// seamKept tells what a file does not define that the seam asks of it.
func (l *loader) seamKept(d *draft) {
	at := d.doc.Root.Get("define")
	for _, s := range l.crossing(d) {
		if d.defines[s.Name] == nil && !d.bad[s.Name] {
			at.Fault(s.Name+" is not defined, and seam.yaml asks it of every "+d.side+" file", "define it")
		}
	}
}
