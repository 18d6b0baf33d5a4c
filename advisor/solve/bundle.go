package solve

import "slices"

// bundle keeps lines of rows that have a kink between two places. A row is the
// least over its corners; a line drawn at one place knows one corner, and a
// climb along the ridge between two would go back and forth for ever if it
// forgot the other.
type bundle struct {
	m   []float64
	g   [][]float64
	of  []int // which line of the active rows it belongs to
	age []int
	all [][]float64 // the lines here and the cuts, while they are solved
}

const (
	mostCuts = 24
	oldest   = 8    // steps a cut is remembered
	kink     = 1e-3 // widths by which a line must have been wrong
)

// solve solves the linear program of the lines here and the cuts.
func (b *bundle) solve(lp *maximin, here *straight, reach []float64) float64 {
	rows := len(here.m)
	here.m = append(here.m, b.m...)
	b.all = append(append(b.all[:0], here.g[:rows]...), b.g...)
	s := lp.solve(here.m, b.all, reach)
	here.m = here.m[:rows]
	return s
}

// missed learns from a step d that failed: the lines there of every row that
// came out less than the line here promised. A line that is below the row here
// tells of a bend the other way and is of no use. It says how far to shrink.
func (b *bundle) missed(here, there *straight, d []float64) float64 {
	b.grow()
	learnt := false
	for i := range here.m {
		if there.m[i] >= here.m[i]+dot(here.g[i], d)-kink {
			continue
		}
		if m := there.m[i] - dot(there.g[i], d); m >= here.m[i] {
			b.add(i, m, there.g[i])
			learnt = true
		}
	}
	if learnt {
		return 0.4
	}
	return 0.2
}

// moved carries the cuts to where a step d led, and keeps the lines left behind
// of every row that turned on the way.
func (b *bundle) moved(here, there *straight, d []float64) {
	b.grow()
	kept := 0
	for i := range b.m {
		if m := b.m[i] + dot(b.g[i], d); m >= there.m[b.of[i]] {
			b.m[kept], b.g[kept], b.of[kept], b.age[kept] = m, b.g[i], b.of[i], b.age[i]
			kept++
		}
	}
	b.m, b.g, b.of, b.age = b.m[:kept], b.g[:kept], b.of[:kept], b.age[:kept]
	for i := range here.m {
		if p := here.m[i] + dot(here.g[i], d); there.m[i] < p-kink {
			b.add(i, p, here.g[i])
		}
	}
}

// forget empties the bundle for another climb.
func (b *bundle) forget() { b.m, b.g, b.of, b.age = b.m[:0], b.g[:0], b.of[:0], b.age[:0] }

func (b *bundle) add(of int, m float64, g []float64) {
	b.m, b.of, b.age = append(b.m, m), append(b.of, of), append(b.age, 0)
	b.g = append(b.g, append([]float64(nil), g...))
}

// grow ages the cuts and drops the oldest.
func (b *bundle) grow() {
	drop := max(0, len(b.m)-mostCuts)
	for i := range b.age {
		b.age[i]++
		if b.age[i] > oldest {
			drop = max(drop, i+1)
		}
	}
	b.m, b.g = slices.Delete(b.m, 0, drop), slices.Delete(b.g, 0, drop)
	b.of, b.age = slices.Delete(b.of, 0, drop), slices.Delete(b.age, 0, drop)
}

func dot(a, b []float64) (sum float64) {
	for k := range a {
		sum += a[k] * b[k]
	}
	return sum
}
