package keyed

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
	"sync"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

//go:embed woodruff.csv
var woodruffCSV string

type numbered struct {
	number int
	Woodruff
	grade basis.Grade
}

// woodruffs reads the embedded copy once. It is ours: a fault in it is a bug and
// panics; a test reads every row.
var woodruffs = sync.OnceValue(func() []numbered {
	all, err := csv.NewReader(strings.NewReader(woodruffCSV)).ReadAll()
	if err != nil {
		panic("keyed: embedded Woodruff keys: " + err.Error())
	}
	out := make([]numbered, 0, len(all))
	for _, c := range all[1:] {
		at := func(i int) float64 {
			x, err := strconv.ParseFloat(c[i], 64)
			if err != nil {
				panic("keyed: embedded Woodruff keys: " + err.Error())
			}
			return x
		}
		const inch = 0.0254 // exact by definition
		width := q.Length(at(1) / 32 * inch)
		out = append(out, numbered{
			number:   int(at(0)),
			Woodruff: Woodruff{Width: width, Disc: q.Length(at(2) / 8 * inch), Height: q.Length(at(3) * inch), Stands: width / 2},
			grade:    grades[c[5]],
		})
	}
	return out
})

func itoa(n int) string { return strconv.Itoa(n) }
