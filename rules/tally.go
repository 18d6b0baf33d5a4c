package rules

import (
	"fmt"
	"strings"

	"wornfit/calc/basis"
)

// Tally is how many numbers stand at each grade, as the loader met them: those
// of part files and steps, the cells of tables, what an unknown usually is, and
// the criteria (a criterion, its weight and curve together, is one). A number
// that a later layer replaced counts at its new grade. Words, yes and no are no
// numbers; ranges and examples of the vocabulary decide nothing and are not
// counted.
type Tally [basis.Practice + 1]int

// Total is all of them.
func (t Tally) Total() int {
	total := 0
	for _, n := range t {
		total += n
	}
	return total
}

// String is "812: 140 page, 60 derived, ...", best first, a grade with none left out.
func (t Tally) String() string {
	var parts []string
	for g, n := range t {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, basis.Grade(g)))
		}
	}
	if len(parts) == 0 {
		return "0"
	}
	return fmt.Sprintf("%d: %s", t.Total(), strings.Join(parts, ", "))
}

// ByGrade gives the same by word.
func (t Tally) ByGrade() map[string]int {
	out := map[string]int{}
	for g, n := range t {
		if n > 0 {
			out[basis.Grade(g).String()] = n
		}
	}
	return out
}
