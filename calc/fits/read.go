package fits

import (
	"regexp"
	"strconv"
	"strings"

	q "wornfit/calc/quantity"
)

// Request is a size with a class or a pair, as typed. A class that was not
// given has an empty letter; a size that was not given is 0.
type Request struct {
	Nominal     q.Length
	Hole, Shaft Class
}

var (
	classForm = regexp.MustCompile(`^([A-Za-z]{1,2})([0-9]{1,2})$`)
	sizeForm  = regexp.MustCompile(`^([0-9]+(?:[.,][0-9]+)?)\s*(mm)?\s*(.*)$`)
)

const readWant = "a size in mm with a class or a pair, such as 25 H7, 30 k6 or 25 H7/p6"

// ReadClass reads a tolerance class such as H7 or js6. The letter is kept as
// typed: H is a hole, h a shaft.
func ReadClass(text string) (Class, error) {
	m := classForm.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil || mixedCase(m[1]) {
		return Class{}, refuse("tolerance class", quote(text), "a letter and a grade, such as H7, k6 or js9")
	}
	grade, _ := strconv.Atoi(m[2]) // two digits at most
	return Class{m[1], grade}, nil
}

func mixedCase(s string) bool { return s != strings.ToLower(s) && s != strings.ToUpper(s) }

// Read reads "25 H7", "30 k6", "25 H7/p6", "25 mm H7/p6" or "H7/p6". The size is
// in mm: inch sizes belong to ANSI B4.1 and are refused.
func Read(text string) (Request, error) {
	var r Request
	rest := strings.TrimSpace(text)
	if m := sizeForm.FindStringSubmatch(rest); m != nil {
		mmValue, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		if err != nil || !(mmValue > 0) {
			return Request{}, refuse("size with class", quote(text), readWant)
		}
		r.Nominal, rest = q.Length(mmValue*mm), m[3]
	}
	first, second, pair := strings.Cut(rest, "/")
	a, err := ReadClass(first)
	if err != nil {
		return Request{}, refuse("size with class", quote(text), readWant)
	}
	if !pair {
		if a.Hole() {
			r.Hole = a
		} else {
			r.Shaft = a
		}
		return r, nil
	}
	b, err := ReadClass(second)
	if err != nil || !a.Hole() || b.Hole() {
		return Request{}, refuse("fit", quote(text), "a hole class, a stroke and a shaft class, such as H7/p6")
	}
	r.Hole, r.Shaft = a, b
	return r, nil
}
