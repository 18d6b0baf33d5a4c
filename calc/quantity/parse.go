package quantity

import (
	"math/big"
	"strings"
)

// Form is the way a text states its size.
type Form uint8

const (
	Plain      Form = iota // one number: 23.48 mm
	Range                  // from and to: 0.8 to 1.5 mm, 24.98-25.00 mm
	PlusMinus              // 25 ±0.05 mm
	Deviations             // 1.000 +.0005/-.0000 in
	Departure              // ±0.05 mm, +0.02/-0.01 mm: no size, only how far from one
	Class                  // 25 H7: a size with a class; Low and High are the bare size
)

var formWords = [...]string{"one number", "a range", "a size with ±", "a size with deviations", "a departure", "a size with a class"}

func (f Form) String() string { return formWords[f] }

// Typed is what a person typed, understood. Low, Best and High are SI and in
// that order: a plain size has all three alike; a range, a size with deviations
// and a departure have the middle of their limits as Best, since the nominal of
// 25 -0.020/-0.041 mm lies outside them.
type Typed struct {
	Text            string
	Unit            Unit // of the first number; speak back in it
	Dim             Dim
	Places          int      // decimals typed, the most of its numbers; -1 all are fractions
	Exact           *big.Rat // the nominal in Unit, exactly: the first number; a range's middle; 0 of a departure
	Low, Best, High float64
	Form            Form
	Class           string // of a Class: H7, H7/p6
	Assumed         bool   // the unit was not written: the block's, or mm with a class
	parts           []part
}

// part is one number of a text with its unit, enough to write it back exactly.
type part struct {
	figure
	unit Unit
}

// Parse reads a quantity of the wanted kind, unit required (a plain Number has
// none, or %). The kind settles what °C, °F and K mean: a temperature or a
// change. The error is a *Refusal.
func Parse(text string, want Dim) (Typed, error) { return read(text, wish{dim: want}) }

// ParseKind is Parse for a word of Kinds. Only it tells apart the kinds that
// share a Dim: an angle, which needs deg or rad, from a number; an energy from
// a torque.
func ParseKind(text, kind string) (Typed, error) {
	dim, ok := Kinds[kind]
	if !ok {
		return Typed{}, refuse(text, "use one of the words of quantity.Kinds, such as length", "there is no kind of quantity %q", kind)
	}
	return read(text, wish{dim: dim, kind: kind})
}

// ParseAny takes the kind from the unit. °C and °F are temperatures; K is a
// change of temperature, as in the rule language.
func ParseAny(text string) (Typed, error) { return read(text, wish{any: true}) }

// ParseIn reads a number in a block that stated its unit once: a bare number
// is in that unit, a number with a unit keeps its own.
func ParseIn(text string, unit Unit) (Typed, error) {
	return read(text, wish{dim: unit.Dim, block: &unit})
}

// Is refuses a text whose Form is not among those named: a size where only
// plain numbers make sense, a departure where a size is wanted.
func (t Typed) Is(forms ...Form) error {
	names := make([]string, 0, len(forms))
	for _, f := range forms {
		if t.Form == f {
			return nil
		}
		names = append(names, f.String())
	}
	return refuse(t.Text, "write "+strings.Join(names, " or "), "%q is %s", t.Text, t.Form)
}

// String writes the text in one way that reads back to the same sizes.
func (t Typed) String() string {
	if len(t.parts) == 0 {
		return ""
	}
	first := t.parts[0].String()
	if len(t.parts) > 1 && t.parts[0].unit.Name == t.parts[1].unit.Name && (t.Form == Range || !t.Unit.small()) {
		first = t.parts[0].figure.String() // the unit once, at the end
	}
	switch t.Form {
	case Range:
		return first + " to " + t.parts[1].String()
	case PlusMinus:
		return first + " ±" + t.parts[1].String()
	case Deviations:
		return first + " " + deviationText(t.parts[1], t.parts[2])
	case Departure:
		if len(t.parts) == 1 {
			return "±" + first
		}
		return deviationText(t.parts[0], t.parts[1])
	case Class:
		return first + " " + t.Class
	}
	return first
}

func (p part) String() string {
	if p.unit.Name == "" {
		return p.figure.String()
	}
	return p.figure.String() + " " + p.unit.Name
}

func deviationText(upper, lower part) string {
	return signed(upper.figure, "+") + "/" + signed(lower.figure, "-") + strings.TrimPrefix(upper.String(), upper.figure.String())
}

// signed writes a deviation; nought takes the sign its place has by custom.
func signed(f figure, nought string) string {
	switch f.value.Sign() {
	case -1:
		return f.String()
	case 0:
		return nought + f.String()
	}
	return "+" + f.String()
}

// reader parses one text.
type reader struct {
	scanner
	wish
	diameter bool
}

func read(text string, w wish) (Typed, error) {
	s, bad := fold(text)
	if bad != nil {
		return Typed{}, bad
	}
	r := &reader{scanner: scanner{text: text, s: s}, wish: w}
	if r.diameter = r.take("⌀"); r.diameter {
		r.space()
	}
	t, bad := r.typed()
	if bad == nil {
		bad = r.sound(t)
	}
	if bad != nil {
		return Typed{}, bad
	}
	return t, nil
}

// typed tells the forms apart by what follows the first number.
func (r *reader) typed() (Typed, *Refusal) {
	if r.take("±") {
		return r.plusMinusAlone()
	}
	if upper, lower, ok, bad := r.deviations(true); bad != nil {
		return Typed{}, bad
	} else if ok {
		return r.deviationsAlone(upper, lower)
	}
	size, bad := r.figure()
	if bad != nil {
		return Typed{}, bad
	}
	word := r.unitWord()
	r.space()
	switch {
	case r.end():
		return r.plainOrClass(size, word)
	case r.take("±"):
		return r.plusMinus(size, word)
	case r.takeTo():
		return r.rangeTo(size, word, false)
	}
	if upper, lower, ok, bad := r.deviations(false); bad != nil {
		return Typed{}, bad
	} else if ok {
		return r.sizeDeviations(size, upper, lower, word)
	}
	if r.take("-") {
		r.space()
		return r.rangeTo(size, word, true)
	}
	return Typed{}, r.strange(size, word)
}

// strange refuses what follows a whole size and is none of the forms.
func (r *reader) strange(size figure, word string) *Refusal {
	switch c := r.peek(); {
	case c == '+':
		return refuse(r.text, "write both deviations, such as 25 +0.02/-0 mm, or ±0.02 mm", "%q has one deviation", r.text)
	case digit(c) || c == '.' || c == ',':
		return refuse(r.text, "write one number without spaces, a fraction as 1-3/16, a range as 0.8 to 1.5 mm, feet and inches in inches alone",
			"%q has a second number, %q", r.text, r.rest())
	}
	return refuse(r.text, "write "+strings.TrimSpace(size.String()+" "+word)+" alone", "%q goes on with %q", r.text, r.rest())
}

// takeTo moves over the word `to` of a range.
func (r *reader) takeTo() bool {
	if !strings.HasPrefix(r.rest(), "to") {
		return false
	}
	after := r.rest()[2:]
	if after != "" && after[0] != ' ' && !digit(after[0]) && after[0] != '.' && after[0] != '-' {
		return false
	}
	r.at += 2
	r.space()
	return true
}

// unitWord reads up to what can stand in no unit: a number after a space, a
// sign before a number, ±, the word to.
func (r *reader) unitWord() string {
	r.space()
	start := r.at
	for !r.end() && !r.unitEnds(start) {
		r.at++
	}
	return strings.TrimSpace(r.s[start:r.at])
}

func (r *reader) unitEnds(start int) bool {
	rest := r.rest()
	if rest[0] == '+' || strings.HasPrefix(rest, "±") {
		return true
	}
	if rest[0] == '-' {
		next := strings.TrimLeft(rest[1:], " ")
		return next == "" || digit(next[0]) || strings.IndexByte(".,+-", next[0]) >= 0
	}
	if r.at == start {
		return rest == "to" || strings.HasPrefix(rest, "to ") || nilDeviation(rest)
	}
	if rest[0] != ' ' {
		return false
	}
	next := rest[1:]
	return next != "" && (digit(next[0]) || next[0] == '.') || next == "to" || strings.HasPrefix(next, "to ")
}

// nilDeviation reports a deviation written as a plain nought: 0/-0.013.
func nilDeviation(s string) bool {
	s, ok := strings.CutPrefix(s, "0")
	s = strings.TrimLeft(s, " ")
	if !ok || s == "" || s[0] != '/' {
		return false
	}
	s = strings.TrimLeft(s[1:], " ")
	return s != "" && (s[0] == '+' || s[0] == '-')
}
