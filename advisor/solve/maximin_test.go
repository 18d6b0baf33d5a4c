package solve

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// outside solves the same program with another library: s and d split into
// parts that are not negative, rows with slacks.
func outside(m []float64, g [][]float64, span []float64) float64 {
	n, rows := len(span), len(m)
	// x = [s+ s- u(n)] with d = u - span, u <= 2 span: minimise s- - s+
	g0, h0 := mat.NewDense(rows+n, 2+n, nil), make([]float64, rows+n)
	c := make([]float64, 2+n)
	c[0], c[1] = -1, 1
	for i := range m {
		g0.Set(i, 0, 1)
		g0.Set(i, 1, -1)
		h0[i] = m[i]
		for k := range n {
			g0.Set(i, 2+k, -g[i][k])
			h0[i] -= g[i][k] * span[k]
		}
	}
	for k := range n {
		g0.Set(rows+k, 2+k, 1)
		h0[rows+k] = 2 * span[k]
	}
	cn, an, bn := positive(c, g0, h0)
	opt, _, err := lp.Simplex(cn, an, bn, 1e-11, nil)
	if err != nil {
		return math.NaN() // it gives up on some that are degenerate
	}
	return -opt
}

// positive adds slacks: all variables are already 0 or more.
func positive(c []float64, g *mat.Dense, h []float64) ([]float64, *mat.Dense, []float64) {
	rows, cols := g.Dims()
	a := mat.NewDense(rows, cols+rows, nil)
	for i := range rows {
		for k := range cols {
			a.Set(i, k, g.At(i, k))
		}
		a.Set(i, cols+i, 1)
	}
	return append(append([]float64(nil), c...), make([]float64, rows)...), a, h
}

// program makes a random small program; every third one degenerate: rows twice,
// level rows, slopes of nought, all margins alike.
func program(r *rand.Rand, i int) (m []float64, g [][]float64, span []float64) {
	rows, n := 1+r.IntN(24), 1+r.IntN(5)
	for range n {
		span = append(span, math.Exp(4*r.NormFloat64()))
	}
	for range rows {
		m = append(m, 10*r.NormFloat64())
		row := make([]float64, n)
		for k := range row {
			row[k] = r.NormFloat64() / span[k] * 10
		}
		g = append(g, row)
	}
	if i%3 > 0 {
		return m, g, span
	}
	for j := range m {
		switch r.IntN(4) {
		case 0:
			m[j], g[j] = m[0], g[0]
		case 1:
			m[j] = 1
		case 2:
			clear(g[j])
		case 3:
			g[j][r.IntN(n)] = 0
		}
	}
	return m, g, span
}

// The step it gives and the shares of the rows prove each other right: the step
// reaches s, and the rows mixed by their shares reach no more anywhere in the
// box. Another library agrees.
func TestTheSmallLinearProgram(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	var p maximin
	agreed := 0
	const programs = 3000
	for i := range programs {
		m, g, span := program(r, i)
		s := p.solve(m, g, span)
		reached, most, shares := math.Inf(1), 0.0, 0.0
		mix := make([]float64, len(span))
		for j := range m {
			reached = min(reached, m[j]+dot(g[j], p.y[1:]))
			most += p.share(j) * m[j]
			shares += p.share(j)
			for k := range mix {
				mix[k] += p.share(j) * g[j][k]
			}
		}
		for k := range mix {
			most += math.Abs(mix[k]) * span[k]
			if math.Abs(p.y[1+k]) > span[k]*(1+1e-9) {
				t.Fatalf("program %d: step %v leaves the box %v", i, p.y[1:], span)
			}
		}
		const close = 1e-7
		if math.Abs(s-reached) > close || math.Abs(s-most) > close || math.Abs(shares-1) > 1e-9 {
			t.Fatalf("program %d: says %v, the step reaches %v, the shares (sum %v) allow %v", i, s, reached, shares, most)
		}
		if i%10 == 0 {
			if out := outside(m, g, span); math.Abs(out-s) < 1e-6 {
				agreed++
			} else if !math.IsNaN(out) {
				t.Errorf("program %d: %v, gonum %v", i, s, out)
			}
		}
	}
	if agreed < programs/10*8/10 {
		t.Errorf("gonum answered only %d of %d", agreed, programs/10)
	}
}

func TestTheSmallLinearProgramAtItsEnds(t *testing.T) {
	var p maximin
	if s := p.solve(nil, nil, []float64{1, 2}); !math.IsInf(s, 1) {
		t.Errorf("no row holds it down: %v", s)
	}
	if s := p.solve([]float64{3, -1, 2}, [][]float64{{}, {}, {}}, nil); s != -1 || p.share(1) != 1 {
		t.Errorf("nothing to move: the least margin is -1, got %v", s)
	}
}
