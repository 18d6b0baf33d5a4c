package interval

import "math"

// What a float64 is, exact by IEEE 754: the step above 1 and the least above 0.
const (
	ulp  = 0x1p-52
	tiny = math.SmallestNonzeroFloat64
)

// down returns a number below x by one or two units in the last place. Exact
// zeros stay: a sum that gives 0 is exact and times and over never give a false
// one. What is no number (Inf-Inf) has no lower bound.
func down(x float64) float64 {
	switch {
	case x == 0:
		return x
	case x <= math.MaxFloat64:
		return x - (math.Abs(x)*ulp + tiny)
	case x > 0:
		return math.MaxFloat64
	}
	return math.Inf(-1)
}

// up mirrors down.
func up(x float64) float64 { return -down(-x) }

// times is x*y where 0 times infinity is 0, and a product too small to be
// written keeps its sign.
func times(x, y float64) float64 {
	if x == 0 || y == 0 {
		return 0
	}
	p := x * y
	if p == 0 {
		return math.Copysign(tiny, p)
	}
	return p
}

// over is x/y, y not 0, with the same care; infinity over infinity adds nothing
// to the other corners, which are 0 and infinity.
func over(x, y float64) float64 {
	if x == 0 || math.IsInf(y, 0) {
		return 0
	}
	q := x / y
	if q == 0 {
		return math.Copysign(tiny, q)
	}
	return q
}
