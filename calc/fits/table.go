package fits

import (
	_ "embed"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	q "wornfit/calc/quantity"
)

//go:embed iso286_it.csv
var itCSV string

//go:embed iso286_deviations.csv
var deviationsCSV string

type step struct{ over, to float64 } // mm; "over A to B" takes in B

func (s step) has(size float64) bool { return s.over < size && size <= s.to }

type width struct {
	step
	grade int
	um    float64
}

type deviation struct {
	step
	letter    string
	grades    func(int) bool
	which     string  // es ei ES EI, or both for js
	value     float64 // µm
	addDelta  bool
	confirmed bool
	memory    bool // no publication at all carries it
}

type table struct {
	widths, deltas []width
	deviations     map[string][]deviation // by letter
	letters        []string               // in the order of the file
}

// tables reads the embedded copies once. They are ours: a fault in them is a
// bug and panics; the tests read every row.
var tables = sync.OnceValue(func() *table {
	t := &table{deviations: map[string][]deviation{}}
	for _, r := range rows(itCSV) {
		t.widths = append(t.widths, width{stepOf(r), gradeOf(r["grade"]), number(r["it_um"])})
	}
	for _, r := range rows(deviationsCSV) {
		if r["kind"] == "delta" {
			t.deltas = append(t.deltas, width{stepOf(r), gradeOf(r["grades"]), number(r["deviation_um"])})
			continue
		}
		d := deviation{
			step: stepOf(r), letter: r["letter"], grades: gradeTests[r["grades"]], which: r["which"],
			addDelta: r["add_delta"] == "yes", confirmed: r["confirmed"] == "yes", memory: r["source"] == "M",
		}
		if r["deviation_um"] != "IT/2" {
			d.value = number(r["deviation_um"])
		}
		if t.deviations[d.letter] == nil {
			t.letters = append(t.letters, d.letter)
		}
		t.deviations[d.letter] = append(t.deviations[d.letter], d)
	}
	return t
})

// gradeTests are the words of the `grades` column.
var gradeTests = map[string]func(int) bool{
	"all":         func(int) bool { return true },
	"4-7":         func(n int) bool { return n >= 4 && n <= 7 },
	"5-6":         func(n int) bool { return n == 5 || n == 6 },
	"6":           func(n int) bool { return n == 6 },
	"7":           func(n int) bool { return n == 7 },
	"8":           func(n int) bool { return n == 8 },
	"<=3 and >=8": func(n int) bool { return n <= 3 || n >= 8 },
	"<=7":         func(n int) bool { return n <= 7 },
	">7":          func(n int) bool { return n > 7 },
	"<=8":         func(n int) bool { return n <= 8 },
	">8":          func(n int) bool { return n > 8 },
}

func (t *table) width(grade int, size float64) (float64, bool) { return find(t.widths, grade, size) }
func (t *table) delta(grade int, size float64) (float64, bool) { return find(t.deltas, grade, size) }

func find(in []width, grade int, size float64) (float64, bool) {
	for _, w := range in {
		if w.grade == grade && w.has(size) {
			return w.um, true
		}
	}
	return 0, false
}

func (t *table) deviation(letter string, grade int, size float64) (deviation, bool) {
	for _, d := range t.deviations[letter] {
		if d.has(size) && d.grades(grade) {
			return d, true
		}
	}
	return deviation{}, false
}

// known lists what the tables know, holes with the mirrored ones.
func (t *table) known(hole bool) string {
	var out []string
	for _, l := range t.letters {
		if hole && l < "f" && l >= "a" { // C, D, E come from their shafts
			l = strings.ToUpper(l)
		}
		if (Class{Letter: l}).Hole() == hole && !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	slices.Sort(out)
	return strings.Join(out, " ")
}

// sizeMM is the size in mm, rounded to a picometre so that 30 mm made of
// fractions still belongs to the step that ends at 30.
func sizeMM(x q.Length) float64 { return math.Round(float64(x)/mm*1e9) / 1e9 }

func rows(text string) []map[string]string {
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("fits: embedded table: " + err.Error())
	}
	out := make([]map[string]string, 0, len(all))
	for _, cells := range all[1:] {
		row := make(map[string]string, len(cells))
		for i, head := range all[0] {
			row[head] = cells[i]
		}
		out = append(out, row)
	}
	return out
}

func stepOf(r map[string]string) step { return step{number(r["over_mm"]), number(r["to_mm"])} }

func gradeOf(s string) int { return int(number(strings.TrimPrefix(s, "IT"))) }

func number(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("fits: embedded table: " + err.Error())
	}
	return x
}
