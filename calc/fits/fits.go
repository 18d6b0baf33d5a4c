// Package fits answers: between which sizes must a hole or a shaft of an ISO 286
// class or an ANSI B4.1 fit lie, and how tight or loose is the pair?
//
// Start with Of for one class at one size, with Pair for a fit, with Read for
// text such as "25 H7/p6", with B41 for an inch fit such as RC4, with Near for the
// standard fit nearest to a clearance; HeldGrade and ProcessesFor say what a machine
// holds. Rules ask by number, see Kernels. Sizes to 500 mm, grades IT4 to IT13, the
// letters of the embedded tables (a to h, j, js, k to u and x, and their holes; cd,
// ef, fg, v and y on are not there); every other class is refused by name. Which clearance to choose is not answered here.
package fits

import (
	"fmt"
	"strconv"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Class is a tolerance class such as H7: a capital letter is a hole.
type Class struct {
	Letter string
	Grade  int
}

// Hole reports whether the class belongs to a hole (capital letter).
func (c Class) Hole() bool { return c.Letter != "" && c.Letter[0] >= 'A' && c.Letter[0] <= 'Z' }

func (c Class) String() string { return c.Letter + strconv.Itoa(c.Grade) }

// Limits are the two sizes between which a part of a class must lie, as
// deviations from the nominal size.
type Limits struct {
	Nominal      q.Length
	Class        Class
	Upper, Lower q.Length // signed deviations: 25 k6 is +15 and +2 µm
	Grade        basis.Grade
}

// Largest is the high limit.
func (l Limits) Largest() q.Length { return l.Nominal + l.Upper }

// Smallest is the low limit.
func (l Limits) Smallest() q.Length { return l.Nominal + l.Lower }

// Tolerance is the full width, high limit less low limit.
func (l Limits) Tolerance() q.Length { return l.Upper - l.Lower }

// Fit is a hole and a shaft of one nominal size.
type Fit struct{ Hole, Shaft Limits }

// LeastClearance is the clearance of the smallest hole on the largest shaft;
// negative is interference.
func (f Fit) LeastClearance() q.Length { return f.Hole.Lower - f.Shaft.Upper }

// MostClearance is the clearance of the largest hole on the smallest shaft;
// negative is interference.
func (f Fit) MostClearance() q.Length { return f.Hole.Upper - f.Shaft.Lower }

// Kind is "clearance", "interference" or "transition" (either may come out).
func (f Fit) Kind() string {
	switch {
	case f.LeastClearance() >= 0:
		return "clearance"
	case f.MostClearance() <= 0:
		return "interference"
	}
	return "transition"
}

const um, mm = 1e-6, 1e-3 // m: by definition

// Of returns the limits of a class at a nominal size.
//
//	hole A to H:  EI = -es of the same shaft letter,      ES = EI + IT
//	hole J to X:  ES = table + Δ (K M N to IT8, P on to IT7), EI = ES - IT
//	shaft a to h: es = table, ei = es - IT;  j to x: ei = table, es = ei + IT
//	js and JS:    ± IT/2, not rounded
//
// with Δ = ITn - IT(n-1) over 3 mm, and M6 over 250 to 315 mm as the standard
// prints it (ES = -9 µm). A step "over A to B" takes in B.
//
//   - Holds for: nominal sizes over 0 to 500 mm, IT4 to IT13, the letters of the tables.
//   - Beyond: refused; a value that only one source carries comes with a note.
//   - Source: ISO 286-1:2010 tables 1 to 5, through the publications named in SOURCES.md.
func Of(nominal q.Length, c Class) (Limits, []basis.Note, error) {
	size := sizeMM(nominal)
	if !(size > 0 && size <= 500) {
		return Limits{}, nil, refuse("nominal size", showMM(nominal), "over 0 to 500 mm, the range of the tables")
	}
	t := tables()
	it, ok := t.width(c.Grade, size)
	if !ok {
		return Limits{}, nil, refuse("tolerance grade of "+c.String(), "IT"+strconv.Itoa(c.Grade), "IT4 to IT13")
	}
	edge, err := t.edge(size, c, it)
	if err != nil {
		return Limits{}, nil, err
	}
	l := Limits{Nominal: nominal, Class: c, Grade: basis.Secondary}
	l.Upper, l.Lower = q.Length(edge.upper*um), q.Length(edge.lower*um)
	notes := edge.notes(c)
	for _, n := range notes {
		l.Grade = basis.Worse(l.Grade, n.Grade)
	}
	return l, notes, nil
}

// Pair returns the limits of a hole and a shaft of one nominal size.
//
//   - Holds for: what Of holds for, the hole a capital letter, the shaft a small one.
//   - Beyond: refused.
//   - Source: ISO 286-1:2010, through the publications named in SOURCES.md.
func Pair(nominal q.Length, hole, shaft Class) (Fit, []basis.Note, error) {
	switch {
	case !hole.Hole():
		return Fit{}, nil, refuse("hole class", hole.String(), "a capital letter and a grade, such as H7")
	case shaft.Hole():
		return Fit{}, nil, refuse("shaft class", shaft.String(), "a small letter and a grade, such as p6")
	}
	h, notes, err := Of(nominal, hole)
	if err != nil {
		return Fit{}, nil, err
	}
	s, more, err := Of(nominal, shaft)
	if err != nil {
		return Fit{}, nil, err
	}
	return Fit{h, s}, append(notes, more...), nil
}

// refuse gives the error of every refusal in this package.
func refuse(name, value, want string) *basis.Refusal {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func showMM(x q.Length) string { return fmt.Sprintf("%.7g mm", float64(x)/mm) }
