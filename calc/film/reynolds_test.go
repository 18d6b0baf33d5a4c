package film_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wornfit/calc/film"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
)

// pressures solves the pressure of a full bearing by differences on a grid of θ
// from the widest gap and z from mid length to the end, by over-relaxation; where
// the pressure would be less than nought the film has ended. It shares nothing
// with the table or with what made it.
//
//	∂θ(h³·∂θ p) + (D/L)²·∂z(h³·∂z p) = ∂θ h, h = 1 + ε·cos θ
func pressures(eccentricity, lengthRatio float64, n, m int) [][]float64 {
	dθ, dz := 2*math.Pi/float64(n), 1/float64(m)
	h3 := func(θ float64) float64 { return math.Pow(1+eccentricity*math.Cos(θ), 3) }
	side := dθ * dθ / dz / dz / lengthRatio / lengthRatio
	p := make([][]float64, n+1)
	for i := range p {
		p[i] = make([]float64, m+1) // p[.][m] is the end, at nought
	}
	relax := 2 / (1 + math.Pi*math.Sqrt((4/float64(n*n)+side/4/float64(m*m))/(1+side))) // about the best there is
	type coefficients struct{ back, front, across, source float64 }
	round := make([]coefficients, n)
	for i := range round {
		θ := dθ * float64(i)
		round[i] = coefficients{h3(θ - dθ/2), h3(θ + dθ/2), side * h3(θ), dθ * eccentricity * (math.Cos(θ+dθ/2) - math.Cos(θ-dθ/2))}
	}
	for range 4000 {
		change, most := 0.0, 0.0
		for i := 1; i < n; i++ {
			c := round[i]
			for k := range m {
				inner := p[i][1]
				if k > 0 {
					inner = p[i][k-1]
				}
				better := (c.back*p[i-1][k] + c.front*p[i+1][k] + c.across*(inner+p[i][k+1]) - c.source) / (c.back + c.front + 2*c.across)
				now := max(0, p[i][k]+relax*(better-p[i][k]))
				change, most = max(change, math.Abs(now-p[i][k])), max(most, now)
				p[i][k] = now
			}
		}
		if change < 1e-7*most {
			break
		}
	}
	if math.IsInf(lengthRatio, 1) { // an endless bearing has no end
		for i := range p {
			p[i][m] = p[i][m-1]
		}
	}
	return p
}

// reynolds is what the pressures come to.
func reynolds(eccentricity, lengthRatio float64, n, m int) film.Numbers {
	p := pressures(eccentricity, lengthRatio, n, m)
	dθ, dz := 2*math.Pi/float64(n), 1/float64(m)
	h3 := func(θ float64) float64 { return math.Pow(1+eccentricity*math.Cos(θ), 3) }
	var toward, across, top, in, out float64
	for i := range n {
		θ := dθ * float64(i)
		for k := range m + 1 {
			part := 2 * dθ * dz // both halves
			if k == 0 || k == m {
				part /= 2
			}
			toward -= part * p[i][k] * math.Cos(θ)
			across += part * p[i][k] * math.Sin(θ)
			top = max(top, p[i][k])
		}
		out += dθ * h3(θ) * (4*p[i][m-1] - p[i][m-2]) / 2 / dz // slope at the end, three points
	}
	for k := range m + 1 {
		part := dz
		if k == 0 || k == m {
			part /= 2
		}
		in += part * (1 + eccentricity - h3(0)*(4*p[1][k]-p[2][k])/2/dθ)
	}
	load := math.Hypot(toward, across)
	r := film.Numbers{Sommerfeld: 1 / (3 * math.Pi * load), Attitude: math.Atan2(across, toward), Flow: math.Pi * in, MeanOverPeak: load / 4 / top}
	r.Leak = math.Pi * out / lengthRatio / lengthRatio / r.Flow
	r.Friction = 2*math.Pi*math.Pi*r.Sommerfeld/math.Sqrt(1-eccentricity*eccentricity) + eccentricity/2*math.Sin(r.Attitude)
	return r
}

// Between its points the table is only as good as its interpolation: the solver
// tries it there. Tolerances are those the doc comment of At states; 0.2 % of them
// is the solver's own coarseness along the length.
func TestTheTableBetweenItsPoints(t *testing.T) {
	for _, c := range []struct{ e, ratio float64 }{
		{0.15, 0.3}, {0.45, 0.42}, {0.65, 0.6}, {0.75, 0.85}, {0.55, 1.2}, {0.875, 0.6}, {0.92, 1.7}, {0.35, 1.75},
		{0.93, 0.22}, {0.08, 0.9}, {0.93, 1.2}, {0.875, 1.75}, {0.25, 0.22}, {0.93, 0.42},
	} {
		got, notes, err := film.At(c.e, c.ratio)
		kerneltest.Fine(t, err)
		if len(notes) > 0 {
			t.Errorf("%v: notes %v, want none", c, notes)
		}
		solved(t, c.e, c.ratio, got, 0.003)
	}
}

// Every row of the table, so that none is mistyped: on a grid so coarse the solver
// is good to 2 %.
func TestEveryRowOfTheTable(t *testing.T) {
	for _, ratio := range []float64{0.2, 0.25, 0.35, 0.5, 0.75, 1, 1.5, 2} {
		for _, e := range []float64{0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95} {
			want := reynolds(e, ratio, 240, 12)
			got, _, err := film.At(e, ratio)
			kerneltest.Fine(t, err)
			at := fmt.Sprintf("ε %g, L/D %g: ", e, ratio)
			kerneltest.Near(t, at+"S", got.Sommerfeld, want.Sommerfeld, 0.02)
			kerneltest.Near(t, at+"attitude", got.Attitude, want.Attitude, 0.02)
			kerneltest.Near(t, at+"flow", got.Flow, want.Flow, 0.02)
			kerneltest.Near(t, at+"leak", got.Leak, want.Leak, 0.02)
			kerneltest.Near(t, at+"mean over peak", got.MeanOverPeak, want.MeanOverPeak, 0.02)
		}
	}
}

// Nearer the middle than the table begins it is carried on, with a note.
func TestTheTableIsCarriedOnToTheMiddle(t *testing.T) {
	for _, ratio := range []float64{0.3, 1, 2} {
		got, notes, err := film.At(0.02, ratio)
		kerneltest.Fine(t, err)
		if len(notes) != 1 {
			t.Errorf("L/D %v: notes %v, want one", ratio, notes)
		}
		solved(t, 0.02, ratio, got, 0.004)
	}
}

func solved(t *testing.T, e, ratio float64, got film.Numbers, rel float64) {
	t.Helper()
	want := reynolds(e, ratio, 480, 24)
	at := fmt.Sprintf("ε %g, L/D %g: ", e, ratio)
	kerneltest.Near(t, at+"S", got.Sommerfeld, want.Sommerfeld, rel)
	kerneltest.Near(t, at+"friction", got.Friction, want.Friction, rel)
	kerneltest.Near(t, at+"flow", got.Flow, want.Flow, rel)
	kerneltest.Near(t, at+"leak", got.Leak, want.Leak, rel+0.0005/want.Leak) // three places in the table
	kerneltest.Near(t, at+"mean over peak", got.MeanOverPeak, want.MeanOverPeak, 0.004)
	if off := math.Abs(got.Attitude-want.Attitude) * 180 / math.Pi; off > 0.05 {
		t.Errorf("%sattitude is %.3f° off", at, off)
	}
}

// The solver itself against the published rows that lie beyond the table: heavy
// ones and the endless bearing. They say that the theory is
// the published one where the table cannot be asked. At ε 0.97 the published load is
// 2 to 3 % off, there and at 0.8 the peak too: 1958's grid was coarse. Friction
// follows the load; the flow of the endless bearing is off by 3 % where it is small.
func TestTheSolverBeyondTheTable(t *testing.T) {
	rows := outside.Read(t, "bearing_film.json")
	for _, id := range []string{"F-0.5-0.97", "F-0.25-0.97", "F-inf-0.1", "F-inf-0.4", "F-inf-0.6", "F-inf-0.8"} {
		r := outside.Get(t, rows, id)
		ratio := math.Inf(1)
		if !strings.Contains(id, "inf") {
			ratio = r.In(t, "L_over_D")
			if _, _, err := film.At(r.In(t, "eccentricity_ratio"), ratio); err == nil {
				t.Errorf("%s: the table answers beyond its end", id)
			}
		}
		n := reynolds(r.In(t, "eccentricity_ratio"), ratio, 480, 24)
		r.WantWithin(t, "S", n.Sommerfeld, 0.98, 1.035)
		r.Want(t, "phi", n.Attitude)
		r.WantWithin(t, "f_r_over_c", n.Friction, 0.985, 1.035)
		r.WantWithin(t, "Q", n.Flow, 0.995, 1.035)
		if r.Has("Qs_over_Q") {
			r.Want(t, "Qs_over_Q", n.Leak)
		}
		r.WantWithin(t, "P_over_pmax", n.MeanOverPeak, 0.985, 1.065)
	}
}
