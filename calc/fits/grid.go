package fits

import (
	"math"
	"slices"
	"strings"
	"sync"
)

// The classes a number can name. A letter is its place in the alphabet; js and JS
// stand at j, so j and J themselves have no number. The span is that of the tables.
const (
	firstLetter, lastLetter = 1, 24 // a to x: the span of the tables
	firstGrade, lastGrade   = 4, 13 // IT4 to IT13: the span of the tables
)

// cell is a class over one step: its two deviations and its width, in metres. NaN
// where the tables have none.
type cell struct{ upper, lower float64 }

// grid is the tables worked out for every class and step, so that one look-up is
// enough. Between two neighbouring edges nothing changes.
type grid struct {
	edges  []float64 // mm, rising; step i is over edges[i] to edges[i+1]
	shafts []cell    // by step, letter, grade
	holes  []cell
	widths []float64 // m, by step, grade
}

const (
	letters = lastLetter - firstLetter + 1 // derived: a count of the above
	grades  = lastGrade - firstGrade + 1   // derived: a count of the above
)

var grids = sync.OnceValue(func() *grid {
	t := tables()
	g := &grid{edges: t.edges()}
	for i := range len(g.edges) - 1 {
		size := g.edges[i+1] // the step takes in its end
		for n := range grades {
			it, _ := t.width(firstGrade+n, size)
			g.widths = append(g.widths, it*um)
		}
		for l := range letters {
			small := letterOf(firstLetter+l, false)
			for n := range grades {
				g.shafts = append(g.shafts, t.cell(size, Class{small, firstGrade + n}))
				g.holes = append(g.holes, t.cell(size, Class{strings.ToUpper(small), firstGrade + n}))
			}
		}
	}
	return g
})

// edges are all sizes at which anything changes.
func (t *table) edges() []float64 {
	out := []float64{0}
	for _, w := range t.widths {
		out = append(out, w.to)
	}
	for _, list := range t.deviations {
		for _, d := range list {
			out = append(out, d.over, d.to)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func (t *table) cell(size float64, c Class) cell {
	if t.deviations[c.Letter] == nil && t.deviations[strings.ToLower(c.Letter)] == nil {
		return cell{math.NaN(), math.NaN()}
	}
	it, _ := t.width(c.Grade, size)
	e, err := t.edge(size, c, it)
	if err != nil {
		return cell{math.NaN(), math.NaN()}
	}
	return cell{e.upper * um, e.lower * um}
}

// letterOf is the letter at a place of the alphabet: j is js, which the tables hold.
func letterOf(place int, hole bool) string {
	l := string(rune('a' + place - 1))
	if l == "j" {
		l = "js"
	}
	if hole {
		return strings.ToUpper(l)
	}
	return l
}

// step is the number of the step a size lies in.
func (g *grid) step(size float64) int {
	i, exact := slices.BinarySearch(g.edges, size)
	if exact || i == 0 {
		return max(i-1, 0)
	}
	return i - 1
}

func (g *grid) class(of []cell, step, letter, grade int) cell {
	return of[(step*letters+letter-firstLetter)*grades+grade-firstGrade]
}
