// Package bushes answers which bushes can be bought: sintered, wrapped and solid
// copper alloy, by bore and outside.
//
// Start with ByBore for the sizes next under and over a bore that is wanted, and
// ByOutside for a housing that is already bored. Sizes are nominal, in the
// metric sizes of the standards, most of them from memory: check the maker's
// list before cutting anything to suit. Lengths are not answered here.
package bushes

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Kind is how a bought bush is made.
type Kind string

// The kinds of the table.
const (
	Sintered Kind = "sintered"
	Wrapped  Kind = "wrapped"
	Solid    Kind = "solid" // turned copper alloy
)

// Kinds lists the kinds of the table.
func Kinds() []Kind { return []Kind{Sintered, Wrapped, Solid} }

// Bush is one size of the table. Classes are ISO 286, empty where the standard
// states none.
type Bush struct {
	Kind                    Kind
	Bore, Outside, Wall     q.Length
	BoreClass, OutsideClass string // as delivered
	Housing, BoreInPlace    string // the housing it is made for, and its bore once pressed in
	Source                  string
	Grade                   basis.Grade
}

// MayBeBored reports whether the bore may be cut after pressing: not the thin
// lining of a wrapped bush, nor the pores of a sintered one.
func (k Kind) MayBeBored() bool { return k == Solid }

//go:embed bushes.csv
var bushesCSV string

// table reads the embedded copy once, sorted by kind, bore and outside. It is
// ours: a fault in it is a bug and panics; a test reads every row.
var table = sync.OnceValue(func() []Bush {
	all, err := csv.NewReader(strings.NewReader(bushesCSV)).ReadAll()
	if err != nil {
		panic("bushes: embedded table: " + err.Error())
	}
	out := make([]Bush, 0, len(all))
	for _, c := range all[1:] {
		grade, marked := basis.ReadGrade(c[9])
		if !marked {
			panic("bushes: embedded table: mark " + c[9])
		}
		out = append(out, Bush{
			Kind: Kind(c[0]), Bore: metres(c[1]), Outside: metres(c[2]), Wall: metres(c[3]),
			BoreClass: c[4], OutsideClass: c[5], Housing: c[6], BoreInPlace: c[7], Source: c[8], Grade: grade,
		})
	}
	return out
})

func metres(mm string) q.Length {
	x, err := strconv.ParseFloat(mm, 64)
	if err != nil {
		panic("bushes: embedded table: " + err.Error())
	}
	return q.Length(x / 1000)
}

// Of lists the bushes of a kind by rising bore.
func Of(k Kind) []Bush {
	return slices.DeleteFunc(slices.Clone(table()), func(b Bush) bool { return b.Kind != k })
}

// ByBore returns the bushes of the nearest bore at or under a size, and of the
// nearest at or over it; there may be several outsides to a bore. Where the table
// has none on one side that list is empty.
//
//   - Holds for: nominal sizes; pressed in place they close in to the class given for that. The table is a selection: makers list more.
//   - Beyond: refused where the table has no bore on either side, or the kind is not one of the three.
//   - Source: ISO 2795, ISO 3547-1, ISO 4379 as each row says, mostly from memory, which is noted.
func ByBore(k Kind, bore q.Length) (under, over []Bush, notes []basis.Note, err error) {
	return nearest(k, "bore", bore, func(b Bush) q.Length { return b.Bore })
}

// ByOutside returns the bushes of the nearest outside at or under the bore of a
// housing, and of the nearest at or over it.
//
//   - Holds for: nominal sizes, the housing bored to the class given for it. The table is a selection: makers list more.
//   - Beyond: refused where the table has no outside on either side, or the kind is not one of the three.
//   - Source: ISO 2795, ISO 3547-1, ISO 4379 as each row says, mostly from memory, which is noted.
func ByOutside(k Kind, housing q.Length) (under, over []Bush, notes []basis.Note, err error) {
	return nearest(k, "bore of the housing", housing, func(b Bush) q.Length { return b.Outside })
}

func nearest(k Kind, what string, size q.Length, of func(Bush) q.Length) (under, over []Bush, notes []basis.Note, err error) {
	list := Of(k)
	switch {
	case len(list) == 0:
		return nil, nil, nil, refuse("kind of bush", "'"+string(k)+"'", "sintered, wrapped or solid")
	case !(size > 0):
		return nil, nil, nil, refuse(what, mm(size), "more than 0")
	}
	below, above := next(list, size, of)
	for _, b := range list {
		if of(b) == below {
			under = append(under, b)
		}
		if of(b) == above {
			over = append(over, b)
		}
	}
	for _, b := range append(slices.Clone(under), over...) {
		if b.Grade.Weak() {
			notes = []basis.Note{{Says: "the sizes of " + string(k) + " bushes are not read but remembered: check the maker's list", Source: b.Source, Grade: b.Grade}}
		}
	}
	return under, over, notes, nil
}

// slip is a tenth of a micrometre, so that a size made of fractions counts as
// the nominal size it stands for: our choice.
const slip = 1e-7

// next is the nearest size of a list at or under, and at or over; 0 if none.
func next(list []Bush, size q.Length, of func(Bush) q.Length) (under, over q.Length) {
	for _, b := range list {
		s := of(b)
		if s <= size+slip && s > under {
			under = s
		}
		if s >= size-slip && (over == 0 || s < over) {
			over = s
		}
	}
	return under, over
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }
