package fits

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// The systems a standard fit belongs to.
const (
	HoleBasis  = "ISO hole basis"
	ShaftBasis = "ISO shaft basis"
	Inch       = "ANSI B4.1"
)

// Candidate is a standard fit held against what is wanted.
type Candidate struct {
	System, Name string // ISO hole basis, H7/p6
	Fit
	Off   q.Length // the farthest a pair made to it can lie from what is wanted
	Notes []basis.Note
}

// pairs are the fits the standards recommend, as far as their letters are
// confirmed: the figures of recommended fits of ISO 286-1:2010, hole basis and shaft
// basis, and the preferred fits of ANSI B4.2; from memory of both. H with h, which
// is of either basis, stands with the hole basis.
var pairs = []struct{ system, of, with string }{
	{HoleBasis, "H6", "g5 h5 js5 k5 m5 n5 p5"},
	{HoleBasis, "H7", "f6 g6 h6 js6 k6 m6 n6 p6 r6 s6 u6"},
	{HoleBasis, "H8", "d8 e7 e8 f7 f8 h7 h8 h9 js7 k7 m7 s7 u7"},
	{HoleBasis, "H9", "d8 d9 e8 f8 h8 h9"},
	{HoleBasis, "H10", "c9 d9 e9 h9"},
	{HoleBasis, "H11", "c11 d10 h10 h11"},
	{ShaftBasis, "h5", "G6 JS6 K6 M6 N6 P6"},
	{ShaftBasis, "h6", "F7 G7 JS7 K7 M7 N7 P7 R7 S7 U7"},
	{ShaftBasis, "h7", "E8 F8"},
	{ShaftBasis, "h8", "D9 E9 F9"},
	{ShaftBasis, "h9", "C10 D9 D10 E8 E9 F8 F9"},
	{ShaftBasis, "h11", "C11"},
}

// Near returns the standard fits at a size, the nearest to what is wanted first.
// Clearances are positive, interference negative.
//
//	off = max(0, least - fit's least, fit's most - most)
//
// is the farthest a pair made to the fit can lie from what is wanted: a fit that
// never leaves the range is off by nothing; one clearance alone (least = most) is
// missed by every fit. Of fits equally far off the one with more width comes first,
// as it is easier to make; of equals of one width the hole basis. B4.1 joins in to
// its own largest size.
//
//   - Holds for: sizes over 0 to 500 mm; wanted clearances smaller than the size; the recommended pairs of ISO 286, and B4.1.
//   - Beyond: refused. How far off is for the reader to judge: something is always nearest.
//   - Source: ISO 286-1:2010 and ANSI B4.1-1967 through SOURCES.md; which pairs are recommended from memory.
func Near(nominal, least, most q.Length) ([]Candidate, error) {
	size := sizeMM(nominal)
	switch {
	case !(size > 0 && size <= 500):
		return nil, refuse("nominal size", showMM(nominal), "over 0 to 500 mm, the range of the tables")
	case !(least <= most):
		return nil, refuse("least clearance", showMM(least), "no more than the most, "+showMM(most))
	case !(max(-least, most) < nominal):
		return nil, refuse("clearance", showMM(q.Length(math.Max(float64(-least), float64(most)))), "less than the size itself, "+showMM(nominal))
	}
	out, err := isoPairs(nominal)
	if err != nil {
		return nil, err
	}
	for _, name := range B41Names() {
		if f, notes, err := B41(nominal, name); err == nil { // beyond its sizes a class is no candidate
			out = append(out, Candidate{System: Inch, Name: name, Fit: f.Fit, Notes: notes})
		}
	}
	for i := range out {
		out[i].Off = off(out[i].Fit, least, most)
	}
	slices.SortStableFunc(out, func(a, b Candidate) int {
		if d := a.Off - b.Off; math.Abs(float64(d)) > alike {
			return cmp.Compare(d, 0)
		}
		if d := widths(b.Fit) - widths(a.Fit); math.Abs(float64(d)) > alike {
			return cmp.Compare(d, 0)
		}
		return 0
	})
	return out, nil
}

// alike is how near two lengths count as the same: a picometre, our choice.
const alike = 1e-12

func isoPairs(nominal q.Length) ([]Candidate, error) {
	var out []Candidate
	for _, p := range pairs {
		of, err := ReadClass(p.of)
		if err != nil {
			return nil, err
		}
		for _, word := range strings.Fields(p.with) {
			with, err := ReadClass(word)
			if err != nil {
				return nil, err
			}
			hole, shaft := of, with
			if p.system == ShaftBasis {
				hole, shaft = with, of
			}
			f, notes, err := Pair(nominal, hole, shaft)
			if err != nil {
				return nil, err
			}
			out = append(out, Candidate{System: p.system, Name: hole.String() + "/" + shaft.String(), Fit: f, Notes: notes})
		}
	}
	return out, nil
}

func off(f Fit, least, most q.Length) q.Length {
	return max(0, least-f.LeastClearance(), f.MostClearance()-most)
}

// widths is the widths of hole and shaft together.
func widths(f Fit) q.Length { return f.MostClearance() - f.LeastClearance() }
