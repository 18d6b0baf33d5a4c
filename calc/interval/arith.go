package interval

// Add returns a range that holds x+y for every x in a and y in b.
func (a I) Add(b I) I {
	if a.Empty() || b.Empty() {
		return None()
	}
	return I{down(a.Lo + b.Lo), up(a.Hi + b.Hi)}
}

// Sub returns a range that holds x-y for every x in a and y in b.
func (a I) Sub(b I) I { return a.Add(b.Neg()) }

// Neg returns the range of -x, exactly.
func (a I) Neg() I { return I{-a.Hi, -a.Lo} }

// Mul returns a range that holds x*y for every x in a and y in b.
func (a I) Mul(b I) I {
	if a.Empty() || b.Empty() {
		return None()
	}
	p, q, r, s := times(a.Lo, b.Lo), times(a.Lo, b.Hi), times(a.Hi, b.Lo), times(a.Hi, b.Hi)
	return I{down(min(p, q, r, s)), up(max(p, q, r, s))}
}

// Div returns a range that holds x/y for every x in a and every y in b but 0.
//
// A divisor that reaches 0 from one side gives a half-line, or the whole line
// if a has both signs; one with 0 inside gives the whole line. So does 0 alone,
// which has no quotient: nothing may be concluded from it.
func (a I) Div(b I) I {
	switch {
	case a.Empty() || b.Empty():
		return None()
	case b.Lo > 0 || b.Hi < 0:
		p, q, r, s := over(a.Lo, b.Lo), over(a.Lo, b.Hi), over(a.Hi, b.Lo), over(a.Hi, b.Hi)
		return I{down(min(p, q, r, s)), up(max(p, q, r, s))}
	case b.Lo == 0 && b.Hi > 0:
		return a.overPositive(b.Hi)
	case b.Hi == 0 && b.Lo < 0:
		return a.Neg().overPositive(-b.Lo)
	}
	return Whole()
}

// overPositive divides by the range above 0 up to top.
func (a I) overPositive(top float64) I {
	switch {
	case a.Lo >= 0:
		return AtLeast(down(over(a.Lo, top)))
	case a.Hi <= 0:
		return AtMost(up(over(a.Hi, top)))
	}
	return Whole()
}

// Abs returns the range of |x|, exactly.
func (a I) Abs() I {
	switch {
	case a.Empty():
		return None()
	case a.Lo >= 0:
		return a
	case a.Hi <= 0:
		return a.Neg()
	}
	return I{0, max(-a.Lo, a.Hi)}
}

// Min returns the range of the smaller of x and y, exactly.
func (a I) Min(b I) I {
	if a.Empty() || b.Empty() {
		return None()
	}
	return I{min(a.Lo, b.Lo), min(a.Hi, b.Hi)}
}

// Max returns the range of the larger of x and y, exactly.
func (a I) Max(b I) I {
	if a.Empty() || b.Empty() {
		return None()
	}
	return I{max(a.Lo, b.Lo), max(a.Hi, b.Hi)}
}
