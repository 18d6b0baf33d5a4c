package rules

import (
	"fmt"
	"strings"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// bounds lowers expressions of one file by itself: what stands in the file is
// followed, whatever comes from elsewhere is a slot that may have any value its
// vocabulary entry allows. It is what the lints judge by.
type bounds struct {
	base  *Base
	part  *link.Part
	b     *tape.Builder
	prog  *tape.Program // once built
	slots map[tape.Node]interval.I
	kinds map[tape.Node]lang.Kind
	defs  map[string]tape.Node // 0: being worked out
	depth int                  // of ranges that rest on other sizes
}

func newBounds(base *Base, p *link.Part) *bounds {
	return &bounds{base: base, part: p, b: tape.NewBuilder(), slots: map[tape.Node]interval.I{}, kinds: map[tape.Node]lang.Kind{}, defs: map[string]tape.Node{}}
}

// lower gives the node of an expression; 0 when it is absent or cannot be run.
func (x *bounds) lower(e *lang.Expr) tape.Node {
	if e == nil {
		return 0
	}
	n, err := x.b.Lower(e, x.name)
	if err != nil {
		return 0
	}
	return n
}

// build ends lowering.
func (x *bounds) build() { x.prog = x.b.Build() }

// start gives the registers with every slot at its range.
func (x *bounds) start() []interval.I {
	reg := make([]interval.I, x.prog.Len())
	x.prog.StartI(reg)
	for n, r := range x.slots {
		reg[n] = r
	}
	return reg
}

// enclose gives the range of an expression over all that it may rest on.
func (x *bounds) enclose(e *lang.Expr) interval.I {
	n := x.lower(e)
	if n == 0 {
		return interval.Whole()
	}
	x.build()
	reg := x.start()
	x.prog.Enclose(reg)
	return reg[n]
}

// value is the range of a node, narrowed by its slopes; reg comes from Enclose.
func (x *bounds) value(reg []interval.I, n tape.Node) interval.I {
	mid, slopes := make([]interval.I, x.prog.Len()), make([]interval.I, x.prog.Len())
	x.prog.Middle(reg, mid)
	return x.prog.MeanValue(reg, mid, slopes, n)
}

// mostCases is how many ways words and facts may fall before they are taken
// together.
const mostCases = 1024

// each calls f with registers for every way in which the words and facts that
// the nodes rest on can fall.
func (x *bounds) each(nodes []tape.Node, f func(reg []interval.I)) {
	var split []tape.Node
	cases, met := 1, map[tape.Node]bool{}
	for _, n := range nodes {
		if n == 0 {
			continue
		}
		for _, s := range x.prog.Uses(n) {
			if k := x.kinds[s]; !met[s] && (k == lang.YesNo || k == lang.Word) && x.slots[s].Width() < mostCases {
				met[s] = true
				if cases *= int(x.slots[s].Width()) + 1; cases > mostCases {
					f(x.start())
					return
				}
				split = append(split, s)
			}
		}
	}
	reg := x.start()
	var fall func(i int)
	fall = func(i int) {
		if i == len(split) {
			f(reg)
			return
		}
		for code := x.slots[split[i]].Lo; code <= x.slots[split[i]].Hi; code++ {
			reg[split[i]] = interval.Point(code)
			fall(i + 1)
		}
	}
	fall(0)
}

func (x *bounds) slot(name string, r interval.I, k lang.Kind) (tape.Node, error) {
	n := x.b.Slot(name)
	x.b.Mark(n, k)
	x.slots[n], x.kinds[n] = r, k
	return n, nil
}

// name is what a name may stand for in the file.
func (x *bounds) name(name string) (tape.Node, error) {
	end, rest, ends := strings.Cut(name, "(")
	if !ends {
		rest = name
	}
	rest = strings.TrimSuffix(rest, ")")
	for i := range x.part.Numbers {
		if n := &x.part.Numbers[i]; n.ID == rest {
			return x.slot(name, numberRange(n, end, ends), lang.NumberKind)
		}
	}
	for i := range x.part.Choose {
		if d := &x.part.Choose[i]; d.ID == name {
			return x.slot(name, x.size(d), lang.NumberKind)
		}
	}
	for i := range x.part.Defines {
		if d := &x.part.Defines[i]; d.ID == name && d.Is != nil {
			return x.define(d)
		}
	}
	if t, r, ok := x.foreign(name); ok {
		return x.slot(name, r, t.Kind)
	}
	return 0, fmt.Errorf("%s is not known", name)
}

// numberRange is a number over its doubt, or one end of one written as a range.
func numberRange(n *link.Number, end string, ends bool) interval.I {
	whole := interval.I{Lo: n.DoubtLow, Hi: n.DoubtHi}
	switch {
	case !ends || n.Low == n.High:
		return whole
	case end == "low":
		return interval.I{Lo: n.DoubtLow, Hi: n.Low}
	}
	return interval.I{Lo: n.High, Hi: n.DoubtHi}
}

// deepest is how many sizes may be chosen within the range of one another.
const deepest = 8

func (x *bounds) size(d *link.Dimension) interval.I {
	if x.depth >= deepest {
		return interval.Whole()
	}
	of := newBounds(x.base, x.part)
	of.depth = x.depth + 1
	r := interval.I{Lo: of.enclose(d.Low).Lo, Hi: of.enclose(d.High).Hi}
	if r.Empty() {
		return interval.Whole()
	}
	return r
}

func (x *bounds) define(d *link.Define) (tape.Node, error) {
	n, met := x.defs[d.ID]
	switch {
	case met && n == 0:
		return 0, fmt.Errorf("%s is worked out from itself", d.ID)
	case met:
		return n, nil
	}
	x.defs[d.ID] = 0
	n, err := x.b.Lower(d.Is, x.name)
	if err != nil {
		return 0, err
	}
	x.defs[d.ID] = n
	return n, nil
}

// foreign is the type and range of a name that the file does not define: of
// the vocabulary, a column of a row, or what another file gives.
func (x *bounds) foreign(name string) (lang.Type, interval.I, bool) {
	if e, ok := x.base.Vocabulary.Entry(name); ok {
		return e.Type, e.Range, true
	}
	if t, ok := x.base.Input.Given[name]; ok {
		return t, wordRange(t), true
	}
	if i := strings.LastIndexByte(name, '.'); i > 0 {
		if table := x.table(name[:i], 0); table != "" {
			for _, c := range x.base.Vocabulary.Tables[table] {
				if c.Name == name[i+1:] {
					return c.Type, c.Range, true
				}
			}
		}
	}
	return lang.Type{}, interval.Whole(), true // another file's: it may be anything
}

func wordRange(t lang.Type) interval.I {
	if t.Words == nil {
		return interval.Whole()
	}
	return interval.I{Lo: 0, Hi: float64(len(t.Words.List) - 1)}
}

// table is the table of the row a name stands for, "" when it is no row.
func (x *bounds) table(row string, depth int) string {
	if depth > deepest {
		return ""
	}
	for i := range x.part.Picks {
		if p := &x.part.Picks[i]; p.ID == row {
			return tableOf(p.From)
		}
	}
	for i := range x.part.Defines {
		if d := &x.part.Defines[i]; d.ID == row && d.Row != "" {
			return x.table(d.Row, depth+1)
		}
	}
	if e, ok := x.base.Vocabulary.Entry(row); ok {
		return e.Type.Table
	}
	seam := &x.base.Input.Seam
	list := seam.Joint
	rest, joint := strings.CutPrefix(row, "joint.")
	if !joint {
		list = append(append(append([]link.SeamName{}, seam.Shaft...), seam.Hub...), seam.Purpose...)
	}
	for _, s := range list {
		if s.Name == rest {
			return s.Type.Table
		}
	}
	return ""
}
