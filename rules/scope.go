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
	after bool // inside an `after` limit, where slow calculations may stand
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
	if !ok || k.Slow && !s.after {
		return nil, false
	}
	f := &lang.Func{Kernel: k, Result: lang.Type{Kind: lang.NumberKind, Dim: k.Result}}
	for _, a := range k.Args {
		f.Args = append(f.Args, lang.FuncArg{Type: lang.Type{Kind: lang.NumberKind, Dim: a.Dim}})
	}
	return f, true
}

// Slow reports a calculation that may stand in `after` limits only.
func (s *scope) Slow(name string) bool { return s.l.calc[name].Slow && !s.after }

// Near lists every name there is, rows with their columns.
func (s *scope) Near() []string {
	var out []string
	add := func(name string) {
		out = append(out, name)
		if t, ok := s.Name(name); ok && t.Kind == lang.Row {
			out = append(out, s.columnsOf(name, t.Table)...)
		}
	}
	defer func(shaky bool) { s.l.shaky = shaky }(s.l.shaky) // a name at fault may be listed
	if s.d != nil {
		s.nearOwn(add)
		for n, def := range s.d.defines {
			if out = append(out, n); def.state == sound { // else looking at it now might find a circle that is none
				add(n)
			}
		}
	}
	if s.it != "" {
		out = append(out, s.columnsOf("it", s.it)...)
	}
	seam := &s.l.base.Input.Seam
	for _, list := range [][]link.SeamName{seam.Shaft, seam.Hub, seam.Purpose} {
		for _, n := range list {
			add(n.Name)
		}
	}
	for n := range s.extra {
		add(n)
	}
	for _, n := range s.l.base.Vocabulary.order {
		add(n)
	}
	for n := range s.l.words {
		add(n)
	}
	for n := range s.l.calc {
		out = append(out, n)
	}
	return slices.Compact(sorted(out))
}

// nearOwn lists the names of the file itself, of its joints and its joint.
func (s *scope) nearOwn(add func(string)) {
	for n := range s.d.numbers {
		add(n)
	}
	for n := range s.d.dims {
		add(n)
	}
	for n := range s.d.picks {
		add(n)
	}
	seam := &s.l.base.Input.Seam
	for j := range s.d.joints {
		for _, f := range seam.Hold {
			add(j + "." + f.Name)
		}
	}
	if s.d.part.Side == link.Hold || s.d.part.Side == link.Lock {
		for _, f := range seam.Joint {
			add("joint." + f.Name)
		}
	}
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
	case base == "joint" && (s.d.part.Side == link.Hold || s.d.part.Side == link.Lock):
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
