package kerneltest

import (
	"math"

	"wornfit/calc/kernel"
)

// sample returns the same points every time: the corners of the ranges (the
// first 1024 of them), then Tries points spread evenly, half of them by ratio
// where a range spans decades.
func sample(args []kernel.Arg) [][]float64 {
	var points [][]float64
	for corner := range 1 << min(len(args), 10) {
		x := make([]float64, len(args))
		for i, a := range args {
			x[i] = a.Range.Lo
			if corner>>i&1 == 1 {
				x[i] = a.Range.Hi
			}
		}
		points = append(points, x)
	}
	d := drawing(len(args))
	for n := range Tries {
		x := make([]float64, len(args))
		for i, u := range d.next() {
			x[i] = at(args[i], u, n%2 == 1)
		}
		points = append(points, x)
	}
	return points
}

// at is the place a fraction u of the way through a range.
func at(a kernel.Arg, u float64, byRatio bool) float64 {
	lo, hi := a.Range.Lo, a.Range.Hi
	x := lo + u*(hi-lo)
	if byRatio && lo > 0 {
		x = lo * math.Pow(hi/lo, u)
	}
	return min(max(x, lo), hi)
}

// additive is the sequence n·φ⁻ⁱ mod 1, spread more evenly than random numbers
// (Roberts 2018, from memory).
type additive struct{ place, step []float64 }

func drawing(n int) *additive {
	g := 1.5
	for range 60 { // the root of g^(n+1) = g + 1
		g = math.Pow(1+g, 1/float64(n+1))
	}
	d := &additive{make([]float64, n), make([]float64, n)}
	for i := range n {
		d.place[i], d.step[i] = 0.5, math.Mod(math.Pow(1/g, float64(i+1)), 1)
	}
	return d
}

func (d *additive) next() []float64 {
	for i := range d.place {
		d.place[i] = math.Mod(d.place[i]+d.step[i], 1)
	}
	return d.place
}

func with(x []float64, i int, v float64) []float64 {
	y := append([]float64(nil), x...)
	y[i] = v
	return y
}

// answeredPoint is the last sampled point with an answer, so that what makes
// its neighbour NaN is the one number changed; the middle if there is none.
func answeredPoint(k kernel.Kernel, points [][]float64) []float64 {
	for i := len(points) - 1; i >= 0; i-- {
		if !math.IsNaN(k.Value(points[i])) {
			return points[i]
		}
	}
	return points[len(points)/2]
}
