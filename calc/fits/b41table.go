package fits

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

//go:embed b41_grades.csv
var b41GradesCSV string

//go:embed b41_deviations.csv
var b41DeviationsCSV string

//go:embed b41_classes.csv
var b41ClassesCSV string

//go:embed b41_exceptions.csv
var b41ExceptionsCSV string

// inchStep is a step of sizes in inches; "over A to B" takes in B.
type inchStep = step

type b41Class struct {
	name, letter string
	hole         int // grade of the H hole
	shaft        Class
	confirmed    bool
}

type b41Width struct {
	inchStep
	grade int
	thou  float64
}

type b41Deviation struct {
	inchStep
	which     string // es or ei
	thou      float64
	confirmed bool
}

// b41Exception is a width the class table prints where the rule gives another.
type b41Exception struct {
	inchStep
	class, side string
	thou        float64
}

type b41Table struct {
	classes    map[string]b41Class
	names      []string // in the order of the standard
	widths     []b41Width
	deviations map[string][]b41Deviation
	exceptions []b41Exception
}

// b41Tables reads the embedded copies once, as tables does.
var b41Tables = sync.OnceValue(func() *b41Table {
	t := &b41Table{classes: map[string]b41Class{}, deviations: map[string][]b41Deviation{}}
	inches := func(r map[string]string) inchStep { return inchStep{number(r["over_in"]), number(r["to_in"])} }
	for _, r := range rows(b41ClassesCSV) {
		c := b41Class{name: r["class"], letter: r["shaft_letter"], hole: gradeOf(r["hole_grade"]), confirmed: r["confirmed"] == "yes"}
		c.shaft = Class{c.letter, gradeOf(r["shaft_grade"])}
		t.classes[c.name] = c
		t.names = append(t.names, c.name)
	}
	for _, r := range rows(b41GradesCSV) {
		t.widths = append(t.widths, b41Width{inches(r), gradeOf(r["grade"]), number(r["width_thou"])})
	}
	for _, r := range rows(b41DeviationsCSV) {
		t.deviations[r["letter"]] = append(t.deviations[r["letter"]],
			b41Deviation{inches(r), r["which"], number(r["deviation_thou"]), r["confirmed"] == "yes"})
	}
	for _, r := range rows(b41ExceptionsCSV) {
		t.exceptions = append(t.exceptions, b41Exception{inches(r), r["class"], r["side"], number(r["width_thou"])})
	}
	return t
})

// width is that of a grade, unless the class table prints its own.
func (t *b41Table) width(c b41Class, side string, grade int, size float64) (float64, bool) {
	for _, e := range t.exceptions {
		if e.class == c.name && e.side == side && e.has(size) {
			return e.thou, true
		}
	}
	for _, w := range t.widths {
		if w.grade == grade && w.has(size) {
			return w.thou, true
		}
	}
	return 0, false
}

// at is the deviation of a class's shaft: h begins at the basic size, js lies
// either side of it.
func (t *b41Table) at(c b41Class, size float64) (d b41Deviation, confirmed, ok bool) {
	if c.letter == "h" || c.letter == "js" {
		return b41Deviation{which: "es"}, true, true
	}
	for _, d := range t.deviations[c.letter] {
		if d.has(size) {
			return d, d.confirmed, true
		}
	}
	return b41Deviation{}, false, false
}

// span says over which sizes a class is tabled.
func (t *b41Table) span(c b41Class) string {
	list := t.deviations[c.letter]
	if list == nil { // h and js have none of their own
		return fmt.Sprintf("over 0 to %g in", b41Most)
	}
	return fmt.Sprintf("over %g to %g in", list[0].over, list[len(list)-1].to)
}

// b41Known lists the fits in the order of the standard.
func b41Known() string { return strings.Join(b41Tables().names, " ") }

// B41Names are the fits of ANSI B4.1 that B41 knows, in the order of the standard.
func B41Names() []string { return slices.Clone(b41Tables().names) }
