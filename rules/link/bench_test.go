package link

import (
	"slices"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// A sheet is a part file as a test writes it: expressions as text, kinds as the
// vocabulary's words. Numbers of all sheets are invented.
type sheet struct {
	id       string
	side     Side
	metal    Metal
	finishes string
	static   bool
	fitOnly  bool
	numbers  []Number
	picks    []pickText
	dims     []dimText
	joints   []jointText
	defines  []defineText
	needs    []ruleText
	limits   []ruleText
	aims     []aimText
	scores   []scoreText
	features []Feature
	steps    []stepText
}

type (
	pickText   struct{ id, from, where, best, how string } // how: all, most, first
	dimText    struct{ id, by, low, high, suits string }
	jointText  struct{ name, fields, rows string } // "length: fit.length; ..."
	defineText struct{ id, kind, is string }       // kind row: is names the row
	ruleText   struct{ id, is, when, why string }
	aimText    struct{ how, is string }
	scoreText  struct{ id, criterion, is string }
	stepText   struct{ id, says, hours, on, needs, gives, when string }
)

// bench turns sheets into parts with the real parser and checker.
type bench struct {
	t  *testing.T
	in Input
}

func newBench(t *testing.T) *bench {
	t.Helper()
	b := &bench{t: t}
	b.in.Given = map[string]lang.Type{}
	b.in.Tables = map[string][]Column{
		"materials": columns("E stress; nu number; expansion expansion; yield stress; bush yes-no; density density; hardness hardness-hb"),
		"machines":  columns("turns yes-no; bores yes-no; tolerance length; swing length"),
		"datums":    columns("offset length; true_axis yes-no"),
	}
	for _, n := range strings.Split("hub.smallest hub.largest hub.outside hub.swing shaft.smallest shaft.largest shaft.swing fit.nominal fit.length duty.thrust:force "+
		"duty.torque:torque duty.load:force hub.near_keyway:yes-no hub.near_spline:yes-no shaft.near_keyway:yes-no shaft.near_spline:yes-no hub.comes_off:yes-no wishes.interchange:yes-no", " ") {
		name, k, _ := strings.Cut(n, ":")
		if k == "" {
			k = "length"
		}
		b.in.Given[name] = kind(k)
	}
	for _, row := range []string{"hub.material", "shaft.material"} {
		b.in.Given[row] = lang.Type{Kind: lang.Row, Table: "materials"}
	}
	b.word("option.shaft", "leave", "true-up", "sleeve")
	b.word("option.hub", "leave", "true-up", "bush")
	b.word("option.purpose", "running", "press-fit")
	for _, j := range []string{"fit", "bush", "sleeve"} {
		b.word("option."+j, "press", "slip", "none")
	}
	b.in.Seam = Seam{
		Shaft:   seam("shaft_large length; shaft_small length; shaft_face row; shaft_give per-stress; shaft_hoop number; shaft_expansion expansion"),
		Hub:     seam("bore_small length; bore_large length; bore_face row; bore_give per-stress; bore_hoop number; bore_expansion expansion"),
		Hold:    seam("pressure stress; grip_torque torque; grip_thrust force"),
		Purpose: seam("seat_torque torque; seat_thrust force; seat_length length"),
		Joint: seam("inner_size length; outer_size length; inner_large length; inner_small length; outer_large length; outer_small length; " +
			"inner_give per-stress; outer_give per-stress; inner_hoop number; outer_hoop number; inner_material row; outer_material row; " +
			"inner_expansion expansion; outer_expansion expansion; length length; torque torque; thrust force"),
	}
	return b
}

func (b *bench) word(name string, list ...string) {
	b.in.Given[name] = lang.Type{Kind: lang.Word, Words: &lang.Words{Name: name, List: list}}
}

func kind(word string) lang.Type {
	switch word {
	case "yes-no":
		return lang.Type{Kind: lang.YesNo}
	case "row":
		return lang.Type{Kind: lang.Row, Table: "materials"}
	}
	d, ok := quantity.Kinds[word]
	if !ok {
		panic("no kind of quantity is called " + word)
	}
	return lang.Type{Dim: d}
}

func columns(text string) []Column {
	var out []Column
	for _, item := range strings.Split(text, ";") {
		f := strings.Fields(item)
		out = append(out, Column{f[0], kind(f[1])})
	}
	return out
}

func seam(text string) []SeamName {
	var out []SeamName
	for _, c := range columns(text) {
		out = append(out, SeamName{Name: c.Name, Type: c.Type})
	}
	return out
}

// scope is what the names in one sheet may mean, as package rules would say it.
type scope struct {
	b   *bench
	s   *sheet
	its string // table of the row a pick tries
}

func (sc scope) Func(string) (*lang.Func, bool) { return nil, false }
func (sc scope) Near() []string                 { return nil }

func (sc scope) Name(name string) (lang.Type, bool) {
	if t, ok := sc.own(name); ok {
		return t, true
	}
	for _, list := range [][]SeamName{sc.b.in.Seam.Shaft, sc.b.in.Seam.Hub, sc.b.in.Seam.Purpose} {
		if t, ok := typeIn(list, name); ok {
			return t, true
		}
	}
	if t, ok := sc.b.in.Given[name]; ok {
		return t, true
	}
	base, col, dotted := cut(name)
	if !dotted {
		return lang.Type{}, false
	}
	switch {
	case base == "joint":
		return typeIn(sc.b.in.Seam.Joint, col)
	case base == "total" && col == "hours":
		return kind("time"), true
	case base == "total":
		return kind("money"), true
	case base == "joined":
		return kind("number"), true
	case base == "it":
		return sc.column(sc.its, col)
	}
	if t, ok := typeIn(sc.b.in.Seam.Hold, col); ok && (base == Fit || base == "bush" || base == "sleeve") {
		return t, true
	}
	if t, ok := sc.Name(base); ok && t.Kind == lang.Row {
		return sc.column(t.Table, col)
	}
	return lang.Type{}, false
}

func (sc scope) column(table, col string) (lang.Type, bool) {
	c, ok := sc.b.in.column(table, col)
	return c.Type, ok
}

func typeIn(list []SeamName, name string) (lang.Type, bool) {
	for _, n := range list {
		if n.Name == name {
			return n.Type, true
		}
	}
	return lang.Type{}, false
}

func (sc scope) own(name string) (lang.Type, bool) {
	for _, n := range sc.s.numbers {
		if n.ID == name && n.Low != n.High {
			return lang.Type{Kind: lang.RangeKind, Dim: n.Dim}, true
		} else if n.ID == name {
			return lang.Type{Dim: n.Dim}, true
		}
	}
	for _, d := range sc.s.dims {
		if d.id == name {
			return kind("length"), true
		}
	}
	for _, d := range sc.s.defines {
		if d.id == name {
			return kind(d.kind), true
		}
	}
	for _, p := range sc.s.picks {
		if p.id == name {
			return lang.Type{Kind: lang.Row, Table: tableOf(p.from)}, true
		}
	}
	return lang.Type{}, false
}

func num(id, kindWord string, low, high float64) Number {
	return Number{ID: id, Dim: kind(kindWord).Dim, Low: low, High: high, DoubtLow: low, DoubtHi: high, From: "invented", Grade: basis.Practice}
}

// part reads a sheet.
func (b *bench) part(s sheet) *Part {
	b.t.Helper()
	p := &Part{ID: s.id, File: s.side.String() + "/" + s.id + ".yaml", Side: s.side, Metal: s.metal, Finishes: s.finishes, Static: s.static, FitOnly: s.fitOnly,
		Numbers: s.numbers, Features: s.features, Types: map[string]lang.Type{}}
	sc := scope{b: b, s: &s}
	x := func(text string, want ...string) *lang.Expr { return b.expr(p, sc, text, want...) }
	for _, d := range s.defines {
		p.Types[d.id] = kind(d.kind)
		if d.kind == "row" {
			p.Defines = append(p.Defines, Define{ID: d.id, Row: d.is, At: b.at(p, d.id)})
			continue
		}
		p.Defines = append(p.Defines, Define{ID: d.id, Says: "the " + d.id, Is: x(d.is, d.kind), At: b.at(p, d.id)})
	}
	for _, d := range s.dims {
		p.Choose = append(p.Choose, Dimension{ID: d.id, Part: s.side.String(), By: d.by, Low: x(d.low), High: x(d.high), Suits: d.suits, At: b.at(p, d.id)})
	}
	for _, k := range s.picks {
		its := sc
		its.its = tableOf(k.from)
		p.Picks = append(p.Picks, Pick{ID: k.id, From: k.from, Where: b.expr(p, its, k.where), Best: b.expr(p, its, k.best), Most: k.how == "most",
			All: k.how == "all", First: k.how == "first", Missing: Rule{ID: s.id + "-" + k.id, Ground: Shop, Why: "there is none"}, At: b.at(p, k.id)})
	}
	for _, r := range s.needs {
		p.Needs = append(p.Needs, Rule{ID: r.id, Test: x(r.is, "yes-no"), When: x(r.when), Why: r.why, WhyPieces: b.pieces(p, sc, r.why)})
	}
	for _, r := range s.limits {
		p.Limits = append(p.Limits, b.limit(p, sc, r))
	}
	for _, j := range s.joints {
		p.Joints = append(p.Joints, b.joint(p, sc, j))
	}
	for _, a := range s.aims {
		aim := Aim{}
		*map[string]**lang.Expr{"least": &aim.Least, "most": &aim.Most, "middle": &aim.Middle}[a.how] = x(a.is)
		p.Aims = append(p.Aims, aim)
	}
	for _, c := range s.scores {
		p.Scores = append(p.Scores, Score{ID: c.id, Criterion: c.criterion, Is: x(c.is)})
	}
	for _, st := range s.steps {
		step := Step{ID: st.id, Says: st.says, SaysPieces: b.pieces(p, sc, st.says), Hours: x(st.hours), On: st.on, When: x(st.when), At: b.at(p, st.id),
			Needs: list(st.needs), Gives: list(st.gives)}
		if name, ok := strings.CutPrefix(st.id, "common:"); ok {
			step.ID, step.Common = name, true
		}
		p.Steps = append(p.Steps, step)
	}
	return p
}

func (b *bench) at(p *Part, id string) fault.Place {
	return fault.Place{File: p.File, Line: 1 + len(id), Column: 1}
}

func list(text string) []string {
	var out []string
	for _, s := range strings.Split(text, ",") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

func (b *bench) expr(p *Part, sc scope, text string, want ...string) *lang.Expr {
	b.t.Helper()
	if text == "" {
		return nil
	}
	src, faults := lang.Parse(lang.Text{Source: text, At: b.at(p, text)})
	var e *lang.Expr
	if faults == nil && len(want) > 0 {
		e, faults = src.Check(sc, kind(want[0]))
	} else if faults == nil {
		e, faults = src.Infer(sc)
	}
	if faults != nil || e == nil {
		b.t.Fatalf("%s: %q: %v", p.File, text, faults)
	}
	return e
}

func (b *bench) limit(p *Part, sc scope, r ruleText) Rule {
	b.t.Helper()
	src, faults := lang.Parse(lang.Text{Source: r.is, At: b.at(p, r.id)})
	out := Rule{ID: r.id, When: b.expr(p, sc, r.when), Why: r.why, WhyPieces: b.pieces(p, sc, r.why), At: b.at(p, r.id)}
	var more fault.List
	out.Left, out.Right, out.Sense, more = src.CheckLimit(sc)
	if faults = append(faults, more...); faults != nil {
		b.t.Fatalf("%s: %q: %v", p.File, r.is, faults)
	}
	return out
}

func (b *bench) joint(p *Part, sc scope, j jointText) Joint {
	b.t.Helper()
	out := Joint{Name: j.name, Fields: map[string]*lang.Expr{}, Rows: map[string]string{}, At: b.at(p, j.name)}
	for _, f := range strings.Split(j.fields, ";") {
		name, is, _ := strings.Cut(f, ":")
		out.Fields[strings.TrimSpace(name)] = b.expr(p, sc, strings.TrimSpace(is))
	}
	for _, f := range strings.Split(j.rows, ";") {
		name, is, _ := strings.Cut(f, ":")
		out.Rows[strings.TrimSpace(name)] = strings.TrimSpace(is)
	}
	return out
}

// pieces cuts a sentence at its {values}; {datum.id} names a row.
func (b *bench) pieces(p *Part, sc scope, text string) []Piece {
	b.t.Helper()
	var out []Piece
	for text != "" {
		before, rest, found := strings.Cut(text, "{")
		if before != "" {
			out = append(out, Piece{Text: before})
		}
		if !found {
			break
		}
		value, after, _ := strings.Cut(rest, "}")
		if r, ok := strings.CutSuffix(value, ".id"); ok {
			out = append(out, Piece{Row: r})
		} else {
			out = append(out, Piece{Value: b.expr(p, sc, value)})
		}
		text = after
	}
	return out
}

// link links or stops the test.
func (b *bench) link(shaft, hub, purpose *Part, holds map[string]*Part) *Option {
	b.t.Helper()
	o, err := Link(b.in, shaft, hub, holds, purpose)
	if err != nil {
		b.t.Fatalf("%v", err)
	}
	return o
}

// check finds a need or limit.
func check(t *testing.T, o *Option, id string) Check {
	t.Helper()
	i := slices.IndexFunc(o.Checks, func(c Check) bool { return c.FullID == id })
	if i < 0 {
		t.Fatalf("%s has no rule %s", o.ID, id)
	}
	return o.Checks[i]
}
