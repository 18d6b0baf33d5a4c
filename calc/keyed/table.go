package keyed

import (
	_ "embed"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"sync"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

//go:embed keys.csv
var keysCSV string

// System is the family of keys a shaft is cut for.
type System string

// The two systems of the table.
const (
	Metric System = "metric"
	Inch   System = "inch"
)

// Standard is the key of a shaft size by its standard. Depths are those of the
// keyway from the surface, at the middle of the key.
type Standard struct {
	Over, To               q.Length // shaft sizes it belongs to: over, up to and with
	Width, Height          q.Length
	ShaftKeyway, HubKeyway q.Length
	Name                   string // of the standard
	Source                 string
	Grade                  basis.Grade
	system                 System
}

// HubDepth is the height of key that bears in the hub: what stands out of the
// shaft, or the hub's keyway where that is less.
func (s Standard) HubDepth() q.Length { return min(s.Height-s.ShaftKeyway, s.HubKeyway) }

// units of the table in metres: exact by definition.
var units = map[string]float64{"mm": 1e-3, "in": 0.0254}

// grades of the trade marks: A read, B read in what quotes the standard, M from memory of it.
var grades = map[string]basis.Grade{"A": basis.Page, "B": basis.Secondary, "M": basis.Memory}

// keys reads the embedded copy once. It is ours: a fault in it is a bug and
// panics; a test reads every row.
var keys = sync.OnceValue(func() []Standard {
	all, err := csv.NewReader(strings.NewReader(keysCSV)).ReadAll()
	if err != nil {
		panic("keyed: embedded table: " + err.Error())
	}
	out := make([]Standard, 0, len(all))
	for _, c := range all[1:] {
		unit, known := units[c[8]]
		grade, marked := grades[c[10]]
		if !known || !marked {
			panic("keyed: embedded table: unit " + c[8] + ", mark " + c[10])
		}
		at := func(i int) q.Length {
			x, err := strconv.ParseFloat(c[i], 64)
			if err != nil {
				panic("keyed: embedded table: " + err.Error())
			}
			return q.Length(x * unit)
		}
		out = append(out, Standard{
			Over: at(2), To: at(3), Width: at(4), Height: at(5), ShaftKeyway: at(6), HubKeyway: at(7),
			Name: c[1], Source: c[9], Grade: grade, system: System(c[0]),
		})
	}
	return out
})

// Keys returns the keys of a system by rising shaft size.
func Keys(s System) []Standard {
	return slices.DeleteFunc(slices.Clone(keys()), func(k Standard) bool { return k.system != s })
}

// KeyFor returns the standard key of a shaft. A step "over A to B" takes in B.
//
//   - Holds for: shafts over 5/16 to 6 1/2 in, square keys; over 6 to 85 mm, parallel keys.
//   - Beyond: refused. A shaft turned down keeps the key it was cut for.
//   - Source: ANSI B17.1 as printed in a shop reference; ISO/R 773 from memory, with a note.
func KeyFor(shaft q.Length, s System) (Standard, []basis.Note, error) {
	list := Keys(s)
	if len(list) == 0 {
		return Standard{}, nil, refuse("system of keys", "'"+string(s)+"'", "metric or inch")
	}
	const slip = 1e-12 // a picometre, so that a size made of fractions belongs to its own step: our choice
	for _, k := range list {
		if shaft > k.Over+slip && shaft <= k.To+slip {
			return k, k.notes(), nil
		}
	}
	return Standard{}, nil, refuse("shaft diameter", mm(shaft), "over "+mm(list[0].Over)+" and up to "+mm(list[len(list)-1].To)+", the "+string(s)+" table")
}

func (s Standard) notes() []basis.Note {
	if !s.Grade.Weak() {
		return nil
	}
	return []basis.Note{{Says: "the key sizes are from memory; measure the keyway", Source: s.Source, Grade: s.Grade}}
}
