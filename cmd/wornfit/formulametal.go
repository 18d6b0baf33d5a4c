package main

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/link"
)

// metalColumns are the words at the end of an argument's name that a row of the
// materials table fills, the column it is in there, its kind, and about what steel
// has: an argument that would not take that, such as the density of an oil, is no
// metal's.
var metalColumns = map[string]struct {
	column string
	dim    quantity.Dim
	steel  float64
}{
	"modulus":   {"E", quantity.StressDim, 200e9},
	"poisson":   {"nu", quantity.Number, 0.3},
	"expansion": {"expansion", quantity.ExpansionDim, 11e-6},
	"yield":     {"yield", quantity.StressDim, 300e6},
	"tensile":   {"tensile", quantity.StressDim, 500e6},
	"density":   {"density", quantity.DensityDim, 7850},
	"hardness":  {"hardness", quantity.HardnessHB, 200},
}

// onlySide is the side of a calculation that asks about one metal without
// saying whose.
const onlySide = "material"

// onlySteel is the side of a calculation that holds for steel alone.
const onlySteel = "steel"

// partWords are the parts that may stand for it where the calculation's name
// says so: hub=steel-1045 for the give of a hub.
var partWords = []string{"shaft", "hub", "bush", "sleeve", "pin", "key", "ring", "housing", "gear", "bolt", "screw", "filler", "part"}

// fill is an argument that a metal fills, and from which column.
type fill struct {
	arg    int
	column string
}

// sides are the words of a calculation that take a metal: the word before _ in
// arguments such as hub_modulus, or onlySide where nothing stands before it.
func sides(k kernel.Kernel) map[string][]fill {
	out := map[string][]fill{}
	for i, a := range k.Args {
		side, word := "", a.Name
		if at := strings.LastIndex(a.Name, "_"); at >= 0 {
			side, word = a.Name[:at], a.Name[at+1:]
		}
		c, ok := metalColumns[word]
		if !ok || c.dim != a.Dim || !a.Range.Has(c.steel) {
			continue
		}
		if side == "" {
			side = onlySide
		}
		out[side] = append(out[side], fill{i, c.column})
	}
	if only, ok := out[onlySide]; ok && len(out) == 1 {
		if part := namedPart(k); part != "" {
			out[part] = only
		}
	}
	return out
}

// namedPart is the one part a calculation's name names, if no argument is about
// that part apart from the others.
func namedPart(k kernel.Kernel) string {
	part := ""
	for _, word := range strings.Split(k.Name, "_") {
		if !slices.Contains(partWords, word) {
			continue
		}
		if part != "" {
			return "" // of two nobody can tell which
		}
		part = word
	}
	for _, a := range k.Args {
		if part != "" && (a.Name == part || strings.HasPrefix(a.Name, part+"_")) {
			return ""
		}
	}
	return part
}

func sideNames(s map[string][]fill) []string { return slices.Sorted(maps.Keys(s)) }

// usualMetal is a metal to show with a side.
func usualMetal(side string) string {
	switch side {
	case "hub", "housing":
		return "grey-iron-30"
	case "bush":
		return "bronze-660"
	}
	return "steel-1045"
}

// metalTable is the materials of the rule base.
type metalTable struct {
	base *rules.Base
}

func (f *flags) metalTable(w world) (metalTable, error) {
	base, err := f.load(w)
	return metalTable{base}, err
}

// metals reads the materials once, and only when a metal is asked for.
type metals struct {
	load  func() (metalTable, error)
	table metalTable
	read  bool
	err   error
}

func (m *metals) base() (*rules.Base, error) {
	if !m.read {
		m.table, m.err = m.load()
		m.read = true
	}
	return m.table.base, m.err
}

// has reports whether a word is the name of a metal, or of a kind of metal.
func (m *metals) has(id string) bool {
	base, err := m.base()
	return err == nil && len(metalRows(base, id)) > 0
}

// metalRows are the rows of a metal, or of all metals of a kind: steel is
// steel-1018, steel-1045 and the rest.
func metalRows(base *rules.Base, id string) []link.RowValues {
	var kind []link.RowValues
	for _, r := range base.Rows("materials") {
		if r.ID == id {
			return []link.RowValues{r}
		}
		if strings.HasPrefix(r.ID, id+"-") {
			kind = append(kind, r)
		}
	}
	return kind
}

// kindSpread is how far apart the metals of a kind may have a number for it to
// be taken of the kind: our choice.
const kindSpread = 0.1

// column is what the rows have in a column, over all of them; ok is false where
// one has none.
func column(rows []link.RowValues, name string) (k link.Known, ok bool) {
	for i, r := range rows {
		one, has := r.Columns[name]
		if !has || !one.Is {
			return link.Known{}, false
		}
		if i == 0 {
			k = one
			continue
		}
		k.Value, k.Grade = k.Value.Join(one.Value), basis.Worse(k.Grade, one.Grade)
		k.Best = k.Value.Mid()
	}
	return k, true
}

// givenMetal is a metal typed for a side.
type givenMetal struct{ side, id string }

// metal keeps what was typed for a side until all words are read.
func (r *reading) metal(side, id string) error {
	base, err := r.metals.base()
	if err != nil {
		return err
	}
	if len(metalRows(base, id)) == 0 {
		hint := "a metal is a row of the materials table, such as " + usualMetal(side)
		if near := fault.Nearest(strings.ToLower(id), base.IDs("materials")); near != "" {
			hint = "did you mean " + near + "?"
		}
		return notUnderstood(hint, "there is no metal %s for %s", asWord(id), side)
	}
	if side == onlySteel && !strings.HasPrefix(id, onlySteel) {
		return notUnderstood("give a steel, such as steel-1045; the formula is for steel alone", "%s is no steel", asWord(id))
	}
	for _, g := range r.given {
		if g.side == side || r.sides[g.side][0] == r.sides[side][0] {
			return notUnderstood("give it once", "a metal is given twice: %s=%s and %s=%s", g.side, g.id, side, id)
		}
	}
	r.given = append(r.given, givenMetal{side, id})
	return nil
}

// fill puts the metals' numbers where nothing was typed.
func (r *reading) fill() error {
	for _, g := range r.given {
		base, err := r.metals.base()
		if err != nil {
			return err
		}
		rows := metalRows(base, g.id)
		brittle := rows[0].Columns["brittle"]
		for _, f := range r.sides[g.side] {
			p := &r.puts[f.arg]
			known, ok := column(rows, f.column)
			if p.Typed != "" || !ok {
				continue
			}
			if len(rows) > 1 && known.Value.Width() > kindSpread*known.Best {
				return notUnderstood("name the metal, such as "+rows[0].ID+", or give "+render.Dashed(p.Arg.Name), "%s=%s leaves %s open: metals of that kind differ", g.side, g.id, render.Dashed(p.Arg.Name))
			}
			p.Value, p.Metal, p.Grade = known.Best, g.id, known.Grade
			p.Low, p.High = known.Value.Lo, known.Value.Hi
			p.From = base.Cite(known.Says, known.Grade)
			p.Brittle = f.column == "yield" && brittle.Is && brittle.Best == 1
		}
	}
	return nil
}

// brittleNotes warns where a yield strength stands for a metal that has none.
func brittleNotes(puts []render.Put) []basis.Note {
	var out []basis.Note
	for _, p := range puts {
		if p.Brittle && !math.IsNaN(p.Value) {
			out = append(out, basis.Note{
				Says:   fmt.Sprintf("the metal %s cracks before it yields; its %s is only a stand-in: judge it by its tensile strength", p.Metal, render.Dashed(p.Arg.Name)),
				Source: p.From, Grade: p.Grade,
			})
		}
	}
	return out
}
