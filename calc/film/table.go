package film

import (
	_ "embed"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"sync"
)

//go:embed film.csv
var filmCSV string

const (
	ratios = 8  // length ratios tabled; span of the table
	places = 12 // eccentricities tabled; span of the table
	kinds  = 5  // what is tabled of each: our choice
)

// What is tabled, each over its value in a very short bearing, whose solution is
// a formula: so divided it hardly changes from row to row and interpolates well.
const (
	loading  = iota // logarithm of the Sommerfeld number
	attitude        // angle from the load to the narrowest gap
	flow            // oil drawn in
	leak            // part of it that leaves at the sides
	peak            // mean pressure over the highest; not divided
)

type grid struct {
	logRatio     [ratios]float64
	eccentricity [places]float64
	logShort     [places]float64
	gap          [places]float64 // what is interpolated over: −log(1−ε), even where the film gets thin
	value        [kinds][ratios][places]float64
}

// The table is read once. It is ours: a fault in it is a bug and panics; the tests
// read every row.
var table = sync.OnceValue(func() *grid {
	rows, err := csv.NewReader(strings.NewReader(filmCSV)).ReadAll()
	if err != nil || len(rows) != 1+ratios*places {
		panic("film: embedded table is not whole")
	}
	g := new(grid)
	for n, row := range rows[1:] {
		i, j := n/places, n%places
		var v [7]float64
		for k := range v {
			if v[k], err = strconv.ParseFloat(row[k], 64); err != nil {
				panic("film: embedded table: " + err.Error())
			}
		}
		ratio, e := v[0], v[1]
		g.logRatio[i], g.eccentricity[j], g.logShort[j], g.gap[j] = math.Log(ratio), e, logShort(e), -math.Log1p(-e)
		g.value[loading][i][j] = math.Log(v[2]*ratio*ratio) - logShort(e)
		g.value[attitude][i][j] = v[3] * math.Pi / 180 / shortAttitude(e)
		g.value[flow][i][j] = v[4] / shortFlow(e)
		g.value[leak][i][j] = v[5] / shortLeak(e)
		g.value[peak][i][j] = v[6]
	}
	return g
})

// logShort is the logarithm of S·(L/D)² of a very short bearing: Ocvirk's
// solution, worked out from Reynolds' equation without flow round the journal.
func logShort(e float64) float64 {
	u := 1 - e*e
	return math.Log(u * u / (math.Pi * e * math.Sqrt(math.Pi*math.Pi*u+16*e*e)))
}

func shortAttitude(e float64) float64 { return math.Atan2(math.Pi*math.Sqrt(1-e*e), 4*e) }

func shortFlow(e float64) float64 { return math.Pi * (1 + e) }

func shortLeak(e float64) float64 { return 2 * e / (1 + e) }

// at is the stencil of an eccentricity.
func (g *grid) at(e float64) stencil { return between(g.gap[:], -math.Log1p(-e)) }

// stencil is how four rows of a table weigh at a place between the middle two.
type stencil struct {
	first  int
	weight [4]float64
}

// between gives the weights of a cubic that meets the nodes and has at each the
// slope of the parabola through it and its neighbours. Before the first and
// behind the last node it is that parabola.
func between(nodes []float64, x float64) stencil {
	i := 0
	for i < len(nodes)-2 && x >= nodes[i+1] {
		i++
	}
	s := stencil{first: min(max(i-1, 0), len(nodes)-4)}
	h := nodes[i+1] - nodes[i]
	t := (x - nodes[i]) / h
	s.weight[i-s.first] += (1 + 2*t) * (1 - t) * (1 - t)
	s.weight[i+1-s.first] += t * t * (3 - 2*t)
	s.slope(nodes, i, h*t*(1-t)*(1-t))
	s.slope(nodes, i+1, h*t*t*(t-1))
	return s
}

// slope adds part times the slope at a node.
func (s *stencil) slope(nodes []float64, at int, part float64) {
	first := min(max(at-1, 0), len(nodes)-3)
	a, b, c, x := nodes[first], nodes[first+1], nodes[first+2], nodes[at]
	w := s.weight[first-s.first:]
	w[0] += part * (2*x - b - c) / ((a - b) * (a - c))
	w[1] += part * (2*x - a - c) / ((b - a) * (b - c))
	w[2] += part * (2*x - a - b) / ((c - a) * (c - b))
}

// over is a tabled value where two stencils cross.
func (g *grid) over(kind int, ratio, place stencil) float64 {
	sum := 0.0
	for i, wi := range ratio.weight {
		for j, wj := range place.weight {
			sum += wi * wj * g.value[kind][ratio.first+i][place.first+j]
		}
	}
	return sum
}
