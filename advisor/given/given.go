// Package given answers: what value has each input of an option's program? It
// lays what the case says and reads over what the vocabulary lets an unknown
// stand for, and hands out the rows of tables.
//
// Start with New. It judges nothing.
package given

import (
	"slices"
	"strings"

	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// Usual is said of what the vocabulary lets stand for what is not stated.
const Usual = "not stated; usual"

// Source is what is known for one fit.
type Source struct {
	base  *rules.Base
	cond  *condition.Condition
	known map[string]link.Known
	rows  map[string][]link.RowValues
}

// New gathers what is known of a fit.
func New(base *rules.Base, cond *condition.Condition) *Source {
	s := &Source{base: base, cond: cond, known: cond.Known(), rows: map[string][]link.RowValues{}}
	for _, side := range casefile.Sides {
		row := string(side) + ".material"
		s.rows[row] = s.candidates(cond.Materials(side))
		if c := cond.Materials(side); len(c) == 1 {
			s.material(row, c[0])
		}
	}
	s.rows[boreRow] = s.bore()
	for _, table := range stated {
		s.rows[table] = s.listed(table)
	}
	return s
}

// stated are the tables that the case fills.
var stated = []string{"shop.machines", "shaft.datums", "hub.datums"}

// boreRow is the metal of the bore itself.
const boreRow = "hub.bush_material"

// bore lists what the bore may be of: the bush that is said, any metal of bushes
// when one is in and nobody says of what, else the hub.
func (s *Source) bore() []link.RowValues {
	if said := s.cond.Fit.Hub.BushMaterials; len(said) > 0 {
		return s.candidates(said)
	}
	if !s.word("hub.earlier_repair", "bushed") {
		return s.rows["hub.material"]
	}
	return slices.DeleteFunc(slices.Clone(s.base.Rows("materials")), func(r link.RowValues) bool { return r.Columns["bush"].Best != 1 })
}

// word reports that a vocabulary name is known to be that word.
func (s *Source) word(name, word string) bool {
	e, ok := s.base.Vocabulary.Entry(name)
	k, known := s.known[name]
	return ok && known && k.Is && k.Value == interval.Point(float64(slices.Index(e.Type.Words.List, word)))
}

// material lets the part's hardness stand at what its material usually has
// when the case gives none.
func (s *Source) material(row, id string) {
	side := strings.TrimSuffix(row, ".material")
	if _, said := s.known[side+".hardness"]; said {
		return
	}
	for _, r := range s.rows[row] {
		if h, ok := r.Columns["hardness"]; ok && r.ID == id {
			h.Says = "usual for " + id
			s.known[side+".hardness"] = h
		}
	}
}

func (s *Source) candidates(ids []string) []link.RowValues {
	all := s.base.Rows("materials")
	if len(ids) == 0 {
		return all
	}
	var out []link.RowValues
	for _, r := range all {
		for _, id := range ids {
			if r.ID == id {
				out = append(out, r)
			}
		}
	}
	return out
}

// Value is what is known under a vocabulary name; when nothing is, what the
// vocabulary lets it stand for.
func (s *Source) Value(name string) (link.Known, bool) {
	if k, ok := s.known[name]; ok {
		return k, true
	}
	e, ok := s.base.Vocabulary.Entry(name)
	if !ok {
		return link.Known{}, false
	}
	return unknown(e), true
}

// unknown is an entry's usual value, taken as known to that range, or its
// whole range, which is not known at all.
func unknown(e *rules.Entry) link.Known {
	if u := e.Usual; u != nil {
		return link.Known{Value: u.Range, Best: u.Range.Mid(), Is: true, Grade: u.Grade, Says: Usual}
	}
	whole := e.Range
	switch e.Type.Kind {
	case lang.YesNo:
		whole = interval.I{Lo: 0, Hi: 1}
	case lang.Word:
		whole = interval.I{Lo: 0, Hi: float64(len(e.Type.Words.List) - 1)}
	}
	best := whole.Mid()
	if e.Type.Kind != lang.NumberKind {
		best = whole.Lo
	}
	return link.Known{Value: whole, Best: best, Says: "not known"}
}

// Knows is what the case, the vocabulary or the files settle of an input: of any
// but targets, cuts, gauges and columns of picked rows.
func (s *Source) Knows(slot *link.Slot) (link.Known, bool) {
	switch {
	case slot.Kind == link.NumberSlot:
		return number(slot), true
	case slot.Kind != link.GivenSlot:
		return link.Known{}, false
	case slot.Row != "":
		return s.column(slot), true
	}
	return s.Value(slot.Name)
}

// Fill is what is known of each input of an option, nothing of those that Knows
// tells nothing of.
func (s *Source) Fill(slots []link.Slot) []link.Known {
	out := make([]link.Known, len(slots))
	for i := range slots {
		out[i], _ = s.Knows(&slots[i])
	}
	return out
}

func number(slot *link.Slot) link.Known {
	at := slot.Number.Low
	if strings.HasPrefix(slot.Name, "high(") {
		at = slot.Number.High
	}
	return link.Known{Value: interval.Point(at), Best: at, Is: true, Grade: slot.Number.Grade, Says: slot.Number.From}
}

// column is a column of a row of the case: over every candidate it may be.
func (s *Source) column(slot *link.Slot) link.Known {
	rows := s.rows[slot.Row]
	out := link.Known{Value: interval.None(), Is: len(rows) > 0, Says: "material"}
	best := 0.0
	for _, r := range rows {
		k, ok := r.Columns[slot.Column]
		if !ok {
			return s.whole(slot)
		}
		out.Value = out.Value.Join(k.Value)
		best += k.Best / float64(len(rows))
		out.Grade = max(out.Grade, k.Grade)
		out.Is = out.Is && k.Is
	}
	if len(rows) == 1 {
		k := rows[0].Columns[slot.Column]
		// a material's scatter is drawn in the ranking, not held against the option
		return link.Known{Value: interval.Point(k.Best), Best: k.Best, Is: k.Is, Grade: k.Grade, Says: rows[0].ID}
	}
	out.Best, out.Is = best, false
	if len(slot.Words) > 0 || slot.YesNo {
		out.Best = out.Value.Lo
	}
	if out.Value.Lo == out.Value.Hi {
		out.Is = true
	}
	return out
}

// whole is a column nobody states, over the range its table allows.
func (s *Source) whole(slot *link.Slot) link.Known {
	for _, e := range s.base.Vocabulary.Tables[slot.Table] {
		if e.Name == slot.Column {
			return unknown(e)
		}
	}
	return link.Known{Value: interval.Whole()}
}

// Rows are the rows of a table: the shop's machines, the axes of a part, or
// those of the rule base. They are shared: read them only.
func (s *Source) Rows(table string) []link.RowValues {
	if slices.Contains(stated, table) {
		return s.rows[table]
	}
	return s.base.Rows(table)
}

// listed are the rows of a table as the case states them, with what it leaves out
// filled in.
func (s *Source) listed(table string) []link.RowValues {
	var out []link.RowValues
	for _, r := range s.cond.Rows(table) {
		if k := r.Columns[link.SentOut]; table == "shop.machines" && k.Best == 1 {
			if s.firm(r.Columns) {
				r.Called += " (price, days or tolerance assumed)"
			}
		}
		s.classed(table, r)
		out = append(out, link.RowValues{ID: r.ID, Says: r.Called, Columns: r.Columns})
	}
	return out
}

// classed fills in what a case leaves to the class of a machine, and then what
// the vocabulary lets a column stand for: a lathe of which no heat is said makes none.
func (s *Source) classed(table string, r condition.Row) {
	defer s.usual(table, r)
	if r.Class == "" {
		return
	}
	for _, m := range s.base.Rows(lastWord(table)) {
		for col, k := range m.Columns {
			if _, said := r.Columns[col]; m.ID == r.Class && !said {
				r.Columns[col] = k
			}
		}
	}
}

func (s *Source) usual(table string, r condition.Row) {
	for _, e := range s.base.Vocabulary.Tables[lastWord(table)] {
		if _, said := r.Columns[lastWord(e.Name)]; !said && e.Usual != nil {
			r.Columns[lastWord(e.Name)] = unknown(e)
		}
	}
}

// firm fills in what a case need not say of a firm: it works as the finest
// machine of the rule base that does the same, takes any part it is asked for,
// and its price and time are what the vocabulary lets them stand for. It reports
// whether any of price, time and tolerance was taken so.
func (s *Source) firm(row map[string]link.Known) (assumed bool) {
	columns := s.base.Vocabulary.Tables["machines"]
	var like map[string]link.Known
	for _, m := range s.base.Rows("machines") {
		same := true
		for _, e := range columns {
			if col := lastWord(e.Name); e.Type.Kind == lang.YesNo && col != link.SentOut {
				same = same && (row[col].Best == 0 || m.Columns[col].Best == 1)
			}
		}
		if same && (like == nil || m.Columns["tolerance"].Best < like["tolerance"].Best) {
			like = m.Columns
		}
	}
	for _, e := range columns {
		col := lastWord(e.Name)
		if _, said := row[col]; said {
			continue
		}
		k, ok := like[col]
		switch {
		case ok:
		case e.Usual != nil:
			k = unknown(e)
		case col == "swing" || col == "between":
			k = link.Known{Value: interval.Point(e.Range.Hi), Best: e.Range.Hi, Is: true, Says: "asked of the firm"}
		default:
			continue
		}
		row[col] = k
		assumed = assumed || col == "price" || col == "days" || col == "tolerance"
	}
	return assumed
}

func lastWord(name string) string { return name[strings.LastIndex(name, ".")+1:] }

// Missing gives the vocabulary's question for a slot that is not known.
func (s *Source) Missing(slot string) (name, ask, with string) {
	name = slot
	if strings.Contains(slot, ".datum.") {
		side, _, _ := strings.Cut(slot, "/")
		return side + ".datums", "On which axis can it be set up true (centres, far bore, register, pitch circle), and how far from that axis does the worn middle lie?", "indicator"
	}
	for _, row := range []string{"hub.material", "shaft.material", boreRow} {
		if strings.HasPrefix(slot, row+".") {
			name = row
		}
	}
	if name == boreRow && !s.word("hub.earlier_repair", "bushed") {
		name = "hub.material"
	}
	if e, ok := s.base.Vocabulary.Entry(name); ok {
		if e.Ask == "" {
			return name, e.Says, e.With
		}
		return name, e.Ask, e.With
	}
	return name, "", ""
}

// Whole is what a slot may be when nothing states it.
func (s *Source) Whole(slot *link.Slot) link.Known { return s.whole(slot) }

// Material is what a part is made of, in words.
func (s *Source) Material(side string) string {
	ids := s.cond.Materials(casefile.Side(side))
	if len(ids) == 0 {
		return "metal not known"
	}
	var says []string
	for _, id := range ids {
		says = append(says, s.base.Says("materials", id))
	}
	return strings.Join(says, " or ")
}

// Dim is the kind of quantity a vocabulary name has.
func (s *Source) Dim(name string) quantity.Dim {
	if e, ok := s.base.Vocabulary.Entry(name); ok {
		return e.Type.Dim
	}
	return quantity.Number
}
