package rules

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// Entry is one name of the vocabulary, or one column of a table. It alone
// feeds unit and word checks, lints, the case file's keys and their ranges,
// questions and the wording of reasons.
type Entry struct {
	Name, Says string
	Role       string // given | reading | shop | wish | column
	Type       lang.Type
	Kind       string            // the kind of quantity as its file names it: length, angle; "" when it is none
	WordSays   map[string]string // of a word: what each means
	Range      interval.I        // SI; outside it a case's value is a fault
	Usual      *Usual            // what an unknown stands for; nil: the whole range, every word, every row
	Changeable string            // "" no; else at what price
	Ask, With  string
	Example    string
	At         fault.Place
	bad        bool // its type could not be read
}

// Usual is what an unknown stands for when it is not the whole range.
type Usual struct {
	Range interval.I // SI; a word's or yes-no's code
	From  string
	Grade basis.Grade
}

// Dim returns the entry's kind of quantity.
func (e *Entry) Dim() quantity.Dim { return e.Type.Dim }

// Vocabulary is every name a rule may use outside its own file.
type Vocabulary struct {
	byName map[string]*Entry
	order  []string
	Tables map[string][]*Entry // columns of each table, in order

	countsAs map[string]string // table -> the table whose columns it has all of
}

// CountsAs reports whether rows of a table may stand where those of another are
// wanted: they have all its columns.
func (v *Vocabulary) CountsAs(table, other string) bool {
	return table == other || v.countsAs[table] == other
}

// Entry returns a name's entry.
func (v *Vocabulary) Entry(name string) (*Entry, bool) {
	e, ok := v.byName[name]
	return e, ok
}

// Names returns every name in the order of the files.
func (v *Vocabulary) Names() []string { return v.order }

// Under returns the entries one level below a dotted prefix: Under("hub") has
// hub.outside.
func (v *Vocabulary) Under(prefix string) []*Entry {
	var out []*Entry
	for _, n := range v.order {
		if len(n) > len(prefix)+1 && n[:len(prefix)+1] == prefix+"." {
			out = append(out, v.byName[n])
		}
	}
	return out
}
