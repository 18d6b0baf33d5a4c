package rules

import (
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// scope is what the names in one file mean: its own, the seam's, the
// vocabulary's, and in a pick the columns of the row tried.
type scope struct {
	l     *loader
	d     *draft
	it    string // inside a pick: the table whose row is tried
	extra map[string]lang.Type
}

// Name is the type of a dotted name.
func (s *scope) Name(n string) (lang.Type, bool) {
	for _, look := range []func(string) (lang.Type, bool){s.tried, s.own, s.acrossSeam, s.ofJoint, s.known, s.column} {
		if t, ok := look(n); ok {
			return t, true
		}
	}
	return lang.Type{}, false
}

// Func is a calculation or the lookup of pairs.
func (s *scope) Func(name string) (*lang.Func, bool) {
	if s.l.pair != nil && name == s.l.pair.Kernel.Name {
		return s.l.pair, true
	}
	k, ok := s.l.calc[name]
	if !ok || k.Slow {
		return nil, false
	}
	f := &lang.Func{Kernel: k, Result: lang.Type{Kind: lang.NumberKind, Dim: k.Result}}
	for _, a := range k.Args {
		f.Args = append(f.Args, lang.FuncArg{Type: lang.Type{Kind: lang.NumberKind, Dim: a.Dim}})
	}
	return f, true
}

// Near lists every name there is.
func (s *scope) Near() []string {
	var out []string
	if s.d != nil {
		for n := range s.d.numbers {
			out = append(out, n)
		}
		for n := range s.d.dims {
			out = append(out, n)
		}
		for n := range s.d.defines {
			out = append(out, n)
		}
		for n, from := range s.d.picks {
			out = append(out, s.columnsOf(n, tableOf(from))...)
		}
	}
	if s.it != "" {
		out = append(out, s.columnsOf("it", s.it)...)
	}
	seam := &s.l.base.Input.Seam
	for _, list := range [][]link.SeamName{seam.Shaft, seam.Hub, seam.Purpose} {
		for _, n := range list {
			out = append(out, n.Name)
		}
	}
	for n := range s.extra {
		out = append(out, n)
	}
	out = append(out, s.l.base.Vocabulary.order...)
	for n := range s.l.words {
		out = append(out, n)
	}
	for n := range s.l.calc {
		out = append(out, n)
	}
	return sorted(out)
}

func (s *scope) columnsOf(name, table string) []string {
	var out []string
	for _, c := range s.l.base.Vocabulary.Tables[table] {
		out = append(out, name+"."+c.Name)
	}
	return out
}

func (s *scope) tried(n string) (lang.Type, bool) {
	if t, ok := s.extra[n]; ok {
		return t, true
	}
	col, ok := strings.CutPrefix(n, "it.")
	if !ok || s.it == "" {
		return lang.Type{}, false
	}
	return s.columnType(s.it, col)
}

func (s *scope) own(n string) (lang.Type, bool) {
	if s.d == nil {
		return lang.Type{}, false
	}
	if x, ok := s.d.numbers[n]; ok {
		return numberType(x), true
	}
	if s.d.dims[n] {
		return lang.Type{Kind: lang.NumberKind, Dim: quantity.LengthDim}, true
	}
	if from, ok := s.d.picks[n]; ok {
		return lang.Type{Kind: lang.Row, Table: tableOf(from)}, true
	}
	if def, ok := s.d.defines[n]; ok {
		return s.typeOf(def)
	}
	if s.d.bad[n] {
		s.l.shaky = true
	}
	return lang.Type{}, false
}

func (s *scope) acrossSeam(n string) (lang.Type, bool) {
	seam := &s.l.base.Input.Seam
	for _, list := range [][]link.SeamName{seam.Shaft, seam.Hub, seam.Purpose} {
		if i := slices.IndexFunc(list, func(x link.SeamName) bool { return x.Name == n }); i >= 0 {
			return list[i].Type, true
		}
	}
	return lang.Type{}, false
}

// ofJoint is joint.X in a hold, and what a hold tells of a joint: bush.pressure.
func (s *scope) ofJoint(n string) (lang.Type, bool) {
	base, field, ok := strings.Cut(n, ".")
	if !ok || s.d == nil {
		return lang.Type{}, false
	}
	seam := &s.l.base.Input.Seam
	list := seam.Hold
	switch {
	case base == "joint" && s.d.part.Side == link.Hold:
		list = seam.Joint
	case base == link.Fit || s.d.joints[base]:
	default:
		return lang.Type{}, false
	}
	if i := slices.IndexFunc(list, func(x link.SeamName) bool { return x.Name == field }); i >= 0 {
		return list[i].Type, true
	}
	return lang.Type{}, false
}

func (s *scope) known(n string) (lang.Type, bool) {
	if e, ok := s.l.base.Vocabulary.byName[n]; ok {
		s.l.shaky = s.l.shaky || e.bad
		return e.Type, true
	}
	if w, ok := s.l.words[n]; ok {
		return lang.Type{Kind: lang.Word, Words: w}, true
	}
	return lang.Type{}, false
}

// column is a column of anything that is a row.
func (s *scope) column(n string) (lang.Type, bool) {
	i := strings.LastIndexByte(n, '.')
	if i < 0 {
		return lang.Type{}, false
	}
	t, ok := s.Name(n[:i])
	if !ok || t.Kind != lang.Row {
		return lang.Type{}, false
	}
	return s.columnType(t.Table, n[i+1:])
}

func (s *scope) columnType(table, col string) (lang.Type, bool) {
	for _, c := range s.l.base.Vocabulary.Tables[table] {
		if c.Name == col && c.Type.Kind != textKind {
			s.l.shaky = s.l.shaky || c.bad
			return c.Type, true
		}
	}
	return lang.Type{}, false
}
