package fits

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

//go:embed process_grades.csv
var processCSV string

// Process is a way of cutting and the grades that charts give it. Charts speak of
// ordinary production; a worn machine holds less, a careful hand more.
type Process struct {
	Name             string
	Usual            int // the finest grade every chart grants
	Finest, Coarsest int // of all charts
}

var processes = sync.OnceValue(func() []Process {
	var names []string
	finest := map[string]map[string]int{} // by process, by source
	coarsest := map[string]int{}
	for _, r := range rows(processCSV) {
		name, low := r["process"], gradeOf(r["low"])
		if finest[name] == nil {
			names, finest[name] = append(names, name), map[string]int{}
		}
		if was, ok := finest[name][r["source"]]; !ok || low < was {
			finest[name][r["source"]] = low
		}
		coarsest[name] = max(coarsest[name], gradeOf(r["high"]))
	}
	var out []Process
	for _, name := range names {
		p := Process{Name: name, Coarsest: coarsest[name]}
		for _, low := range finest[name] {
			p.Usual = max(p.Usual, low)
			if p.Finest == 0 || low < p.Finest {
				p.Finest = low
			}
		}
		out = append(out, p)
	}
	return out
})

// Processes are the ways of cutting the charts name.
func Processes() []Process { return slices.Clone(processes()) }

// ProcessNamed returns the grades charts give a way of cutting.
//
//   - Holds for: lapping, honing, cylindrical grinding, reaming, turning, boring, drilling in ordinary production.
//   - Beyond: refused; where the charts disagree a note says so.
//   - Source: production charts named in SOURCES.md.
func ProcessNamed(name string) (Process, []basis.Note, error) {
	var known []string
	for _, p := range processes() {
		known = append(known, p.Name)
		if p.Name != name {
			continue
		}
		if p.Usual == p.Finest {
			return p, nil, nil
		}
		return p, []basis.Note{{
			Says:   fmt.Sprintf("%s: one chart begins at IT%d, another at IT%d", name, p.Finest, p.Usual),
			Source: processSource, Grade: basis.Secondary,
		}}, nil
	}
	return Process{}, nil, refuse("process", quote(name), "one of "+strings.Join(known, ", "))
}

const processSource = "production charts through calc/fits/SOURCES.md"

// ProcessesFor returns which ways of cutting hold a grade: those every chart
// grants it, and those that hold it only by one of them. Holes are not turned,
// shafts not bored, reamed, drilled or, in a repair shop, honed.
func ProcessesFor(c Class) (usual, atBest []string) {
	for _, p := range processes() {
		switch {
		case !cuts(p.Name, c.Hole()) || c.Grade < p.Finest:
		case c.Grade < p.Usual:
			atBest = append(atBest, p.Name)
		default:
			usual = append(usual, p.Name)
		}
	}
	return usual, atBest
}

func cuts(process string, hole bool) bool {
	switch process {
	case "turning":
		return !hole
	case "boring", "reaming", "drilling", "honing":
		return hole
	}
	return true
}

// sameWidth is how near two widths count as the same, as a share: our choice, far
// under a nanometre, far over what a float loses.
const sameWidth = 1e-9

// HeldGrade returns the finest grade a machine holds whose sizes scatter over a
// width: the finest whose tolerance is no less.
//
//	IT(n) >= width > IT(n-1)
//
// The width is all of it, from the smallest to the largest piece of a batch.
//
//   - Holds for: sizes over 0 to 500 mm, widths up to IT13 at that size.
//   - Beyond: refused; a width under IT4, the finest tabled, gives 4 with a note.
//   - Source: ISO 286-1:2010 table 1, through the publications named in SOURCES.md.
func HeldGrade(size, width q.Length) (int, []basis.Note, error) {
	at := sizeMM(size)
	if !(at > 0 && at <= 500) {
		return 0, nil, refuse("nominal size", showMM(size), "over 0 to 500 mm, the range of the tables")
	}
	if !(width > 0) {
		return 0, nil, refuse("width", showMM(width), "above 0")
	}
	t := tables()
	for n := firstGrade; n <= lastGrade; n++ {
		it, _ := t.width(n, at)
		if float64(width) > it*um*(1+sameWidth) {
			continue
		}
		if finest, _ := t.width(firstGrade, at); n == firstGrade && float64(width) < finest*um*(1-sameWidth) {
			return n, []basis.Note{{Says: "closer than IT4, the finest tabled", Source: source, Grade: basis.Secondary}}, nil
		}
		return n, nil, nil
	}
	widest, _ := t.width(lastGrade, at)
	return 0, nil, refuse("width", showMM(width), fmt.Sprintf("%g mm at most, which is IT13 at this size", widest*um/mm))
}
