package solve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// Both ends of every window keep every rule, and 0.1 µm beyond either breaks the
// rule that is named.
func TestSliceWindows(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		h := randomOption(r, 3, 7)
		h.o.Program = h.b.Build()
		a := Search{}.Design(h.m, Thorough)
		if a.Works != Yes {
			continue
		}
		q := newProblem(h.m)
		for i := range q.dims {
			q.reg[q.dims[i].Target] = a.Windows[i].Target
			q.width[i] = a.Windows[i].Width
		}
		musts, all := q.sets()
		kept := append([]bool(nil), musts...)
		for i := range q.rows {
			if c := q.rows[i].check; all[i] && c >= 0 && a.States[c].Holds == Yes {
				kept[i] = true
			}
		}
		y := q.coordinates()
		for k, i := range q.free {
			w := a.Windows[i]
			q.width[i] = 0
			q.spread()
			for _, end := range []struct{ at, way float64 }{{w.Low, -1}, {w.High, 1}} {
				by := w.LowBy
				if end.way > 0 {
					by = w.HighBy
				}
				move := append([]float64(nil), y...)
				move[k] = y[k] + end.at - w.Target
				q.place(move)
				if got := short(q, kept, -5e-9); got != "" {
					t.Fatalf("%s at its end %.6f breaks %v", w.ID, end.at/mm, got)
				}
				move[k] += end.way * 0.1e-6
				q.place(move)
				broken := short(q, kept, 0)
				if broken == "" || len(by) != 1 || !strings.Contains(broken, by[0]) {
					t.Errorf("%s beyond %.6f breaks %q, named is %v", w.ID, end.at/mm, broken, by)
				}
			}
			q.place(y)
			q.width[i] = w.Width
			q.spread()
		}
	}
}

// short names the rows that fall short, counting a micrometre of every size as one.
func short(q *problem, kept []bool, by float64) (names string) {
	for j := range q.rows {
		r := &q.rows[j]
		if !kept[j] {
			continue
		}
		v, slope := q.corner(r, forAll), 0.0
		for _, d := range q.dims {
			slope += math.Abs(q.adj[d.Target])
		}
		if v < by*max(slope, 1) {
			names += fmt.Sprint(q.named(j))
		}
	}
	return names
}

// randomOption is a chain of dimensions with limits that are straight or bent.
func randomOption(r *rand.Rand, dims, limits int) *hand {
	h := byHand()
	var v []tape.Node
	for i := range dims {
		suits := ""
		if i > 0 && r.IntN(2) == 0 {
			suits = h.o.Dims[r.IntN(i)].ID
		}
		v = append(v, h.dim(fmt.Sprintf("d%d", i), suits, 20, 30, 0.01+0.03*r.Float64(), 0.001+0.004*r.Float64()))
	}
	x := h.given("reading", 24.99*mm, 25.01*mm, true)
	for i := range limits {
		a, b := v[r.IntN(dims)], v[r.IntN(dims)]
		var m tape.Node
		switch r.IntN(4) {
		case 0:
			m = h.over(h.sub(a, b), 3*r.Float64()-2)
		case 1:
			m = h.under(h.sub(a, x), 4*r.Float64()-3)
		case 2: // the sum of squares stays under a circle
			m = h.sub(h.b.Const(2*(26+3*r.Float64())*(26+3*r.Float64())*mm*mm), h.add(h.mul(a, a), h.mul(b, b)))
		default: // a ratio
			m = h.sub(h.b.Apply(lang.Div, a, b), h.b.Const(0.9+0.15*r.Float64()))
		}
		if r.IntN(3) == 0 {
			h.should(fmt.Sprintf("l%d", i), m)
		} else {
			h.must(fmt.Sprintf("l%d", i), m)
		}
	}
	return h
}

// No option is called impossible when a design was planted in it: every limit
// is shifted so that the planted sizes keep it at every corner.
func TestProofOfTheImpossible(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	no, planted := 0, 0
	for range 400 {
		h := randomOption(r, 1+r.IntN(4), 3+r.IntN(8))
		h.o.Program = h.b.Build()
		b := Budget{Points: 64, Ascent: 24, Boxes: 128}
		if a := (Search{}).Design(h.m, b); a.Works == No {
			no++
			// no sizes drawn at random keep it, with every cut exact and the reading at any value
			if y := drawn(h, r, 3000); y != nil {
				t.Fatalf("called impossible, but %v keeps every must", y)
			}
		}
		plant(h, r)
		a := Search{}.Design(h.m, b)
		if a.Works == No {
			t.Fatal("a planted design was called impossible")
		}
		if a.Works == Yes {
			planted++
		}
	}
	if no < 20 || planted < 380 {
		t.Errorf("%d called impossible, %d of 400 planted designs found: too few to tell", no, planted)
	}
}

// plant shifts every limit so that one design, cut as close as gauges tell,
// keeps it by a little.
func plant(h *hand, r *rand.Rand) {
	q := newProblem(h.m)
	q.tightest()
	for _, i := range q.free {
		q.reg[q.dims[i].Target] = (21 + 8*r.Float64()) * mm
	}
	for i := range q.rows {
		if c := q.rows[i].check; c >= 0 {
			short := q.corner(&q.rows[i], forAll)
			if short < 0 {
				margin := h.o.Checks[c].Margin
				h.o.Checks[c].Margin = h.sub(margin, h.b.Const(short*1.01-1e-9))
			}
		}
	}
	h.o.Program = h.b.Build()
}

// drawn looks for sizes that keep every must with exact cuts.
func drawn(h *hand, r *rand.Rand, n int) []float64 {
	q := newProblem(h.m)
	for i := range q.width {
		q.width[i] = 0
	}
	q.spread()
	musts, _ := q.sets()
	for range n {
		var y []float64
		for _, i := range q.free {
			v := (20 + 10*r.Float64()) * mm
			q.reg[q.dims[i].Target] = v
			y = append(y, v/mm)
		}
		// kept at the corner that is worst for the gauges, as a design must
		if v, _ := q.truly(musts, forAll); v >= 0 {
			return y
		}
	}
	return nil
}
