package interval

import "math"

// Sqr returns a range that holds x*x for every x in a: never below 0, which
// a.Mul(a) can not know.
func (a I) Sqr() I {
	a = a.Abs()
	if a.Empty() {
		return None()
	}
	return I{down(times(a.Lo, a.Lo)), up(times(a.Hi, a.Hi))}
}

// Sqrt returns a range that holds the root of every x in a that has one; empty
// if all of a is negative.
func (a I) Sqrt() I {
	if a = a.Meet(AtLeast(0)); a.Empty() {
		return None()
	}
	return I{down(math.Sqrt(a.Lo)), up(math.Sqrt(a.Hi))}
}

// PowInt returns a range that holds x to the power n for every x in a. A
// negative n divides, with Div's rule for ranges that hold 0.
func (a I) PowInt(n int) I {
	switch {
	case a.Empty():
		return None()
	case n < 0:
		return Point(1).Div(a.powUint(-uint(n)))
	}
	return a.powUint(uint(n))
}

func (a I) powUint(n uint) I {
	if n%2 == 0 {
		a = a.Abs()
	}
	return I{raise(a.Lo, n).Lo, raise(a.Hi, n).Hi}
}

// raise multiplies x up by squaring, carrying the rounding along.
func raise(x float64, n uint) I {
	switch n {
	case 0:
		return Point(1)
	case 1:
		return Point(x)
	}
	half := raise(x, n/2)
	if n%2 == 0 {
		return half.Sqr()
	}
	return half.Sqr().Mul(Point(x))
}

// Pow returns a range that holds x to the power y for every x in a that is not
// negative, and not 0 if y is below 0; empty if a has no such x.
func (a I) Pow(y float64) I {
	if a = a.Meet(AtLeast(0)); a.Empty() || math.IsNaN(y) || y < 0 && a.Hi == 0 {
		return None()
	}
	lo, hi := power(a.Lo, y), power(a.Hi, y)
	if y < 0 {
		lo, hi = hi, lo
	}
	return I{lo.Lo, hi.Hi}
}

// power widens math.Pow by more than its error: the whole part of y is
// multiplied up, the rest goes through the logarithm of x.
func power(x, y float64) I {
	p := math.Pow(x, y)
	if y == 0 || x == 0 || math.IsInf(x, 0) {
		return Point(p)
	}
	_, e := math.Frexp(x)
	ulps := 4 + math.Abs(y) + math.Abs(float64(e))
	switch {
	case p == 0:
		return I{0, tiny}
	case math.IsInf(p, 0):
		return I{down(p), p}
	}
	return I{max(0, down(p-p*ulps*ulp)), up(p + p*ulps*ulp)}
}
