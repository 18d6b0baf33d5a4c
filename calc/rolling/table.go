package rolling

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

//go:embed dimensions.csv
var dimensionsCSV string

//go:embed tolerances.csv
var tolerancesCSV string

//go:embed clearances.csv
var clearancesCSV string

// step is a row that holds over a range of sizes: over A to B takes in B.
type step struct {
	key      string  // ring or group
	over, to float64 // m
	low, top float64 // m
	source   string
	grade    basis.Grade
}

// The tables are read once. They are ours: a fault in one is a bug and panics;
// the tests read every row.
var dimensions = sync.OnceValue(func() []Bearing {
	var out []Bearing
	for _, c := range rows(dimensionsCSV) {
		out = append(out, Bearing{
			Designation: Designation{Series: c[0], Code: c[1], Group: CN},
			Bore:        q.Length(number(c[2]) / 1e3), Outside: q.Length(number(c[3]) / 1e3), Width: q.Length(number(c[4]) / 1e3),
			Source: c[5], Grade: grade(c[6]),
		})
	}
	return out
})

var tolerances = sync.OnceValue(func() []step {
	var out []step
	for _, c := range rows(tolerancesCSV) {
		out = append(out, step{key: c[0], over: number(c[1]) / 1e3, to: number(c[2]) / 1e3, low: number(c[3]) / 1e6, source: c[4], grade: grade(c[5])})
	}
	return out
})

var clearances = sync.OnceValue(func() []step {
	var out []step
	for _, c := range rows(clearancesCSV) {
		out = append(out, step{
			key: c[2], over: number(c[0]) / 1e3, to: number(c[1]) / 1e3, low: number(c[3]) / 1e6, top: number(c[4]) / 1e6,
			source: c[5], grade: grade(c[6]),
		})
	}
	return out
})

// at finds the row of a size; a size made of fractions counts to a picometre,
// which is our choice.
func at(table []step, key string, size float64) (step, bool) {
	size = math.Round(size*1e12) / 1e12
	for _, s := range table {
		if s.key == key && s.over < size && size <= s.to {
			return s, true
		}
	}
	return step{}, false
}

// span is the range of sizes a key is tabled for.
func span(table []step, key string) (over, to float64) {
	over = math.Inf(1)
	for _, s := range table {
		if s.key == key {
			over, to = min(over, s.over), max(to, s.to)
		}
	}
	return over, to
}

// BoreLower returns the lower deviation of a bearing's mean bore; the upper is 0.
//
//   - Holds for: radial bearings of the normal class, bore over 2.5 to 120 mm; the mean of the bore in one plane.
//   - Beyond: refused. A ring that was heated or spun on its shaft is gauged, not looked up.
//   - Source: ISO 492, through calc/rolling/SOURCES.md.
func BoreLower(bore q.Length) (q.Length, error) { return lower("inner", "bore of the bearing", bore) }

// OutsideLower returns the lower deviation of a bearing's mean outside diameter;
// the upper is 0.
//
//   - Holds for: radial bearings of the normal class, outside over 18 to 250 mm; the mean in one plane.
//   - Beyond: refused.
//   - Source: ISO 492, through calc/rolling/SOURCES.md.
func OutsideLower(outside q.Length) (q.Length, error) {
	return lower("outer", "outside of the bearing", outside)
}

func lower(ring, name string, size q.Length) (q.Length, error) {
	if s, ok := at(tolerances(), ring, float64(size)); ok {
		return q.Length(s.low), nil
	}
	over, to := span(tolerances(), ring)
	return 0, refuse(name, mm(size), "over "+mm(q.Length(over))+" and up to "+mm(q.Length(to)))
}

// InternalClearance returns the least and the most radial internal clearance of a
// bearing that is not yet mounted.
//
//   - Holds for: deep groove ball bearings with a cylindrical bore over 6 to 100 mm, groups C2, CN and C3.
//   - Beyond: refused. It is what the clearance is without load; a worn bearing has more.
//   - Source: ISO 5753-1, through calc/rolling/SOURCES.md.
func InternalClearance(bore q.Length, g Group) (least, most q.Length, err error) {
	s, ok := at(clearances(), string(g), float64(bore))
	if ok {
		return q.Length(s.low), q.Length(s.top), nil
	}
	over, to := span(clearances(), string(g))
	if to == 0 {
		return 0, 0, refuse("clearance group", quote(string(g)), "C2, CN or C3")
	}
	return 0, 0, refuse("bore of the bearing", mm(bore), "over "+mm(q.Length(over))+" and up to "+mm(q.Length(to)))
}

func rows(text string) [][]string {
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("rolling: embedded table: " + err.Error())
	}
	return all[1:]
}

func number(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("rolling: embedded table: " + err.Error())
	}
	return x
}

func grade(s string) basis.Grade {
	g, ok := basis.ReadGrade(s)
	if !ok {
		panic("rolling: embedded table: mark " + s)
	}
	return g
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }
