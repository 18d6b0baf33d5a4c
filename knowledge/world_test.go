package knowledge_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// world is what a line makes of the base: the same option at the same sizes,
// something about it changed.
type world struct {
	*ruleBench
	known   map[string]link.Known
	columns map[string]link.Known // of picked rows, said outright
	wanted  map[string]string     // rows of picks
	tables  map[string][]link.RowValues
	sizes   map[string]float64
	unasked bool // a change may be one that nothing asks about: the line says that it breaks nothing
}

func (b *ruleBench) world(sizes map[string]float64) *world {
	w := &world{ruleBench: b, known: maps.Clone(b.known), columns: map[string]link.Known{},
		wanted: map[string]string{}, tables: map[string][]link.RowValues{}, sizes: sizes}
	maps.Copy(w.wanted, b.picks)
	for _, p := range b.opt.Picks {
		w.tables[p.From] = b.src.Rows(p.From)
	}
	return w
}

// change makes changes, each under one of these names:
//
//	duty.load: 900 N                      a name of the vocabulary
//	hub.material: grey-iron-30            a row of the case
//	shaft.material.yield: 200 MPa         a column of it
//	hub/bush.least_cut: 0.1 mm            a number of a file
//	hub/bush.bush_material: bronze-954    the row of a pick
//	hub/bush.datum.offset: 0.2 mm         a column of the picked row
//	shop.machines.lathe.swing: 90 mm      a column of a row to pick from
//	shop.machines: none                   a table without rows
func (w *world) change(changes map[string]string) error {
	for _, name := range slices.Sorted(maps.Keys(changes)) {
		if err := w.changeOne(name, changes[name]); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

func (w *world) changeOne(name, text string) error {
	if rows, ok := w.tables[name]; ok && text == "none" {
		if len(rows) == 0 {
			return fmt.Errorf("the table has no rows as it is")
		}
		w.tables[name] = nil
		return nil
	}
	for _, p := range w.opt.Picks {
		if p.Full == name {
			w.wanted[name] = text
			return nil
		}
	}
	if slots := w.columnsOf(name); len(slots) > 0 {
		return w.changeRow(slots, text)
	}
	for table, rows := range w.tables {
		if rest, ok := strings.CutPrefix(name, table+"."); ok {
			return w.changeCell(table, rows, rest, text)
		}
	}
	bore, of := strings.CutPrefix(name, "hub.material.")
	if b, ok := w.slot("hub.bush_material." + bore); ok && of {
		k, err := read(b, text)
		if err != nil {
			return err
		}
		w.known[b.Name] = k
		if _, asked := w.slot(name); !asked {
			return nil
		}
	}
	s, ok := w.slot(name)
	if !ok && w.unasked {
		if e, known := w.base.Vocabulary.Entry(name); known {
			_, err := read(slotOf(e), text)
			return err
		}
	}
	if !ok {
		return fmt.Errorf("nothing in %s asks for it; %s", w.opt.ID, fault.DidYouMean(name, w.names()))
	}
	k, err := read(s, text)
	if err != nil {
		return err
	}
	if s.Kind == link.PickSlot {
		w.columns[name] = k
	} else {
		w.known[name] = k
	}
	return nil
}

// slotOf is a name of the vocabulary as an input.
func slotOf(e *rules.Entry) link.Slot {
	s := link.Slot{Ask: &link.Ask{Name: e.Name, Dim: e.Type.Dim, YesNo: e.Type.Kind == lang.YesNo}}
	if e.Type.Words != nil {
		s.Words = e.Type.Words.List
	}
	return s
}

// slot finds an input of the option or of one of its picks.
func (w *world) slot(name string) (link.Slot, bool) {
	if s, ok := w.opt.Slot(name); ok {
		return s, true
	}
	for _, s := range w.opt.Asks() {
		if s.Name == name {
			return s, true
		}
	}
	return link.Slot{}, false
}

func (w *world) names() []string {
	var out []string
	for _, s := range append(slices.Clone(w.opt.Slots), w.opt.Asks()...) {
		out = append(out, s.Name)
	}
	return out
}

// columnsOf are the inputs that are columns of a row of the case. What the hub is
// of, its bore is of: no case of the tests leaves an old bush in.
func (w *world) columnsOf(row string) []link.Slot {
	var out []link.Slot
	for _, s := range append(slices.Clone(w.opt.Slots), w.opt.Asks()...) {
		if s.Row == row || row == "hub.material" && s.Row == "hub.bush_material" {
			out = append(out, s)
		}
	}
	return out
}

func (w *world) changeRow(slots []link.Slot, id string) error {
	rows := w.base.Rows(slots[0].Table)
	at := slices.IndexFunc(rows, func(r link.RowValues) bool { return r.ID == id })
	if at < 0 {
		return fmt.Errorf("%s has no row %s; %s", slots[0].Table, id, fault.DidYouMean(id, w.base.IDs(slots[0].Table)))
	}
	for _, s := range slots {
		k, ok := rows[at].Columns[s.Column]
		if !ok {
			return fmt.Errorf("%s has no %s", id, s.Column)
		}
		w.known[s.Name] = k
	}
	return nil
}

// changeCell changes one column of a row to pick from. The column's kind is
// that of the value that stands there.
func (w *world) changeCell(table string, rows []link.RowValues, rest, text string) error {
	id, col, _ := strings.Cut(rest, ".")
	at := slices.IndexFunc(rows, func(r link.RowValues) bool { return r.ID == id })
	if at < 0 {
		return fmt.Errorf("%s has no row %s", table, id)
	}
	k, err := w.cell(table, col, text)
	if err != nil {
		return err
	}
	rows = slices.Clone(rows)
	rows[at].Columns = maps.Clone(rows[at].Columns)
	rows[at].Columns[col] = k
	w.tables[table] = rows
	return nil
}

func (w *world) cell(table, col, text string) (link.Known, error) {
	for _, p := range w.opt.Picks {
		if p.From != table {
			continue
		}
		for _, s := range p.Slots {
			if s.Pick == "it" && s.Column == col {
				return read(s, text)
			}
		}
	}
	return link.Known{}, fmt.Errorf("no pick from %s asks about %s", table, col)
}

// read reads a value of the kind a slot is: point-sure, as a changed world is.
func read(s link.Slot, text string) (link.Known, error) {
	v := 0.0
	switch {
	case s.YesNo && (text == "yes" || text == "no"):
		if text == "yes" {
			v = 1
		}
	case s.YesNo:
		return link.Known{}, fmt.Errorf("%q is neither yes nor no", text)
	case s.Words != nil:
		v = float64(slices.Index(s.Words, text))
		if v < 0 {
			return link.Known{}, fmt.Errorf("%q is no word of %s; %s", text, s.Name, fault.DidYouMean(text, s.Words))
		}
	default:
		t, err := quantity.Parse(text, s.Dim)
		if err != nil {
			return link.Known{}, err
		}
		v = t.Best
	}
	return link.Known{Value: interval.Point(v), Best: v, Is: true, Says: "changed"}, nil
}

// pick makes the picks anew. Of several ways it takes the one with the rows
// wanted, and tells a row wanted that it cannot have.
func (w *world) pick() (*link.PickSet, error) {
	sets, _, cut := w.opt.PickSets(link.ByName(w.known), func(table string) []link.RowValues { return w.tables[table] }, 4096)
	if cut {
		return nil, fmt.Errorf("there are too many ways to pick")
	}
	var best *link.PickSet
	most := -1
	for i := range sets {
		n := 0
		for pick, row := range w.wanted {
			if sets[i].Row(pick) == row {
				n++
			}
		}
		if n > most {
			best, most = &sets[i], n
		}
	}
	if len(best.Unsure) > 0 && len(best.Failed) == 0 { // with no row, what another pick asks of it is open
		return nil, fmt.Errorf("it is not sure what %v takes; state what it asks", best.Unsure)
	}
	for pick, row := range w.wanted {
		if got := best.Row(pick); got != "" && got != row {
			return nil, fmt.Errorf("%s takes %s and cannot take %s", pick, got, row)
		}
	}
	return best, nil
}
