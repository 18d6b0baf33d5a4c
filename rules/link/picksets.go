package link

import (
	"encoding/binary"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/tape"
)

// RowValues is a row of a table as known: its id and a value for each column.
// A column left out is unknown.
type RowValues struct {
	ID, Says string
	Columns  map[string]Known
}

// PickSet is one way to make all the picks of an option.
type PickSet struct {
	Unsure []string // picks whose row may fit or not: something it asks about is unknown
	Failed []*Check // rules of picks that no row fits; their columns stay unknown
	rank   int
	row    []*RowValues // by index of Option.Picks; nil: no row fits
	picks  []LinkedPick
}

// Row is the id of a picked row by the pick's full name, "" when none fits.
func (s *PickSet) Row(pick string) string {
	for i := range s.picks {
		if s.picks[i].Full == pick && s.row[i] != nil {
			return s.row[i].ID
		}
	}
	return ""
}

// Column is what is known of a column of a picked row, by the pick's full name.
func (s *PickSet) Column(pick, column string) (Known, bool) {
	for i := range s.picks {
		if s.picks[i].Full == pick && s.row[i] != nil {
			k, ok := s.row[i].Columns[column]
			return k, ok
		}
	}
	return Known{}, false
}

// mostTried bounds the sets made before the best are kept.
const mostTried = 4096

// Knows tells what is known of an input that is given: not of one that is picked
// or cut.
type Knows func(*Slot) (Known, bool)

// ByName knows inputs by their names.
func ByName(known map[string]Known) Knows {
	return func(s *Slot) (Known, bool) {
		k, ok := known[s.Name]
		return k, ok
	}
}

// PickSets gives the ways to make the picks from what is known of the givens
// and numbers (a number not known stands at its own value) and the rows of each table (by the pick's From: shop.machines, materials).
//
// `best` takes one row; when a better row may or may not fit, a second set
// tries it and says Unsure. `all` makes a set for each row that fits or may fit.
// Sets come in the order in which few picks are unsure, then near the head of
// their tables; more than limit are cut off, and cut says so.
//
// When some pick has no row in every set, the sets are those with the fewest
// such picks, and missing is the rules that fail in the first of them.
func (o *Option) PickSets(known Knows, rows func(table string) []RowValues, limit int) (sets []PickSet, missing []Check, cut bool) {
	c := &choosing{o: o, known: known, rows: map[string][]RowValues{}, tried: map[string][]candidate{}, at: make([]int, len(o.Picks))}
	for i := range o.Picks {
		from := o.Picks[i].From
		if _, ok := c.rows[from]; !ok {
			c.rows[from] = rows(from)
		}
	}
	c.unsure = make([]bool, len(o.Picks))
	c.from(0, 0)
	sets = c.sets
	fewest := len(o.Picks)
	for i := range sets {
		fewest = min(fewest, len(sets[i].Failed))
	}
	sets = slices.DeleteFunc(sets, func(s PickSet) bool { return len(s.Failed) > fewest })
	slices.SortStableFunc(sets, func(a, b PickSet) int {
		if d := len(a.Unsure) - len(b.Unsure); d != 0 {
			return d
		}
		return a.rank - b.rank
	})
	if len(sets) > limit {
		sets, c.cut = sets[:limit], true
	}
	if len(sets) > 0 {
		for _, f := range sets[0].Failed {
			missing = append(missing, *f)
		}
	}
	return sets, missing, c.cut
}

// choosing is one run of PickSets.
type choosing struct {
	o      *Option
	known  Knows
	rows   map[string][]RowValues
	tried  map[string][]candidate // by pick and the rows of the picks it rests on
	at     []int                  // row of each pick so far; noRow: none fits
	unsure []bool
	sets   []PickSet
	cut    bool
}

type candidate struct {
	row    int
	unsure bool
}

const noRow = -1

// from makes the picks from the nth on.
func (c *choosing) from(n, rank int) {
	if len(c.sets) >= mostTried {
		c.cut = true
		return
	}
	if n == len(c.at) {
		c.keep(rank)
		return
	}
	candidates := c.candidates(n)
	if len(candidates) == 0 {
		c.at[n], c.unsure[n] = noRow, false
		c.from(n+1, rank)
		return
	}
	for i, can := range candidates {
		c.at[n], c.unsure[n] = can.row, can.unsure
		c.from(n+1, rank+i)
	}
}

func (c *choosing) keep(rank int) {
	s := PickSet{rank: rank, picks: c.o.Picks, row: make([]*RowValues, len(c.at))}
	for i := range c.at {
		p := &c.o.Picks[i]
		switch {
		case c.at[i] == noRow:
			s.Failed = append(s.Failed, &p.Failed)
			continue
		case c.unsure[i]:
			s.Unsure = append(s.Unsure, p.Full)
		}
		s.row[i] = &c.rows[p.From][c.at[i]]
	}
	c.sets = append(c.sets, s)
}

// candidates are the rows a pick may take, given those before it.
func (c *choosing) candidates(n int) []candidate {
	p := &c.o.Picks[n]
	key := binary.AppendVarint(make([]byte, 0, 32), int64(n))
	for _, r := range p.rests {
		key = binary.AppendVarint(key, int64(c.at[r]))
	}
	if got, ok := c.tried[string(key)]; ok {
		return got
	}
	got := c.fitting(p)
	c.tried[string(key)] = got
	return got
}

// fitting tries every row of a pick's table.
func (c *choosing) fitting(p *LinkedPick) []candidate {
	reg := make([]interval.I, p.Program.Len())
	p.Program.StartI(reg)
	for i := range p.Slots {
		if s := &p.Slots[i]; s.Pick != "it" {
			reg[s.Node] = c.value(s).Value
		}
	}
	var fit []candidate
	best := map[int]interval.I{}
	for i, r := range c.rows[p.From] {
		for _, s := range p.Slots {
			if s.Pick == "it" {
				reg[s.Node] = orWhole(r.Columns[s.Column], s).Value
			}
		}
		p.Program.Enclose(reg)
		if p.Where != 0 && tape.No(reg[p.Where]) {
			continue
		}
		fit = append(fit, candidate{row: i, unsure: p.Where != 0 && !tape.Yes(reg[p.Where])})
		if p.Best != 0 {
			best[i] = reg[p.Best]
		}
	}
	here, out := orSent(c.rows[p.From], fit)
	if p.All {
		slices.SortStableFunc(here, func(a, b candidate) int { return order(a.unsure) - order(b.unsure) })
		return append(here, out...)
	}
	return append(bestOf(p, here, best), out...)
}

func order(unsure bool) int {
	if unsure {
		return 1
	}
	return 0
}

// bestOf is the best row that surely fits, then the best of those that may, if
// it is better still.
func bestOf(p *LinkedPick, fit []candidate, value map[int]interval.I) []candidate {
	better := func(a, b candidate) bool { // a beats b; else the one that stands first does
		if p.Best == 0 {
			return a.row < b.row
		}
		x, y := value[a.row].Mid(), value[b.row].Mid()
		if p.Most {
			return x > y
		}
		return x < y
	}
	var sure, maybe []candidate
	for _, c := range fit {
		list := &sure
		if c.unsure {
			list = &maybe
		}
		switch {
		case len(*list) == 0:
			*list = []candidate{c}
		case better(c, (*list)[0]):
			(*list)[0] = c
		}
	}
	if len(sure) > 0 && len(maybe) > 0 && !better(maybe[0], sure[0]) {
		maybe = nil
	}
	return append(sure, maybe...)
}

// value is what is known of a slot that is no column of the row tried.
func (c *choosing) value(s *Slot) Known {
	if s.Kind == PickSlot {
		i := slices.IndexFunc(c.o.Picks, func(p LinkedPick) bool { return p.Full == s.Pick })
		if i < 0 || c.at[i] == noRow {
			return orWhole(Known{}, *s)
		}
		return orWhole(c.rows[c.o.Picks[i].From][c.at[i]].Columns[s.Column], *s)
	}
	k, ok := c.known(s)
	if !ok && s.Kind == NumberSlot {
		return numberKnown(*s)
	}
	return orWhole(k, *s)
}

// numberKnown is a number of a file at its stated value.
func numberKnown(s Slot) Known {
	at := s.Number.Low
	if len(s.Name) > 5 && s.Name[:5] == "high(" {
		at = s.Number.High
	}
	return Known{Value: interval.Point(at), Best: at, Is: true, Grade: s.Number.Grade}
}

// orWhole is a value, or all a slot may hold when nothing is known of it. A
// range given for an unknown stands.
func orWhole(k Known, s Slot) Known {
	if k.Is || k.Value != (interval.I{}) {
		return k
	}
	switch {
	case s.YesNo:
		k.Value = interval.Of(0, 1)
	case s.Words != nil:
		k.Value = interval.Of(0, float64(len(s.Words)-1))
	default:
		k.Value = interval.Whole()
	}
	return k
}
