package fits

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// InchFit is a fit of ANSI B4.1, such as RC4. Its hole and shaft carry the symbols
// the standard prints beside the class; RC9 and FN1 print none for the shaft.
type InchFit struct {
	Name string // RC4
	Fit
}

// ShaftName is the shaft's symbol, or the fit's name where the standard prints none.
func (f InchFit) ShaftName() string {
	if f.Shaft.Class.Letter == "" {
		return f.Name
	}
	return f.Shaft.Class.String()
}

const (
	inch     = 0.0254 // m: exact by definition
	thou     = 1e-3   // in: by definition
	b41Most  = 7.09   // in: the span of the tables
	b41Cited = "ANSI B4.1-1967 through calc/fits/SOURCES.md"
)

var b41Form = regexp.MustCompile(`^(?i)(RC|LC|LT|LN|FN)\s*([0-9]{1,2})$`)

// ReadB41 reads the name of a fit of ANSI B4.1, such as RC4 or "fn 2".
func ReadB41(text string) (string, error) {
	m := b41Form.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return "", refuse("inch fit", quote(text), "one of those tabled here, "+b41Known())
	}
	n, _ := strconv.Atoi(m[2]) // two digits at most
	return strings.ToUpper(m[1]) + strconv.Itoa(n), nil
}

// B41 returns the limits of a fit of ANSI B4.1 at a nominal size.
//
//	hole:           0 to the width of its grade
//	shaft c to h:   es = table, ei = es - width
//	shaft k to x:   ei = table, es = ei + width
//	shaft js:       ± width/2
//
// with the width of the grade as the grade table prints it, except in the 13
// places where a class table prints another (b41_exceptions.csv).
// A step "over A to B" takes in B. All fits of B4.1 stand on a basic hole.
//
//   - Holds for: RC1 to RC9, LC1 to LC5, LT1 to LT3, LN1 to LN3 over 0 to 7.09 in, FN1 to FN5 to 5.52 in; LT3 over 0.24 in, FN3 over 0.95 in.
//   - Beyond: refused; what only memory or derivation carries comes with a note and the grade memory.
//   - Source: ANSI B4.1-1967 through the publications named in SOURCES.md.
func B41(nominal q.Length, name string) (InchFit, []basis.Note, error) {
	name, err := ReadB41(name)
	if err != nil {
		return InchFit{}, nil, err
	}
	t := b41Tables()
	c, ok := t.classes[name]
	if !ok {
		return InchFit{}, nil, refuse("inch fit", quote(name), "one of those tabled here, "+b41Known())
	}
	size := math.Round(float64(nominal)/inch*1e9) / 1e9 // so that 0.71 in made of millimetres stays in its step
	at, sure, ok := t.at(c, size)
	if !(size > 0 && size <= b41Most) || !ok {
		return InchFit{}, nil, refuse("nominal size", showInch(nominal), t.span(c)+", where "+name+" is tabled here")
	}
	holeWidth, _ := t.width(c, "hole", c.hole, size)
	shaftWidth, _ := t.width(c, "shaft", c.shaft.Grade, size)
	f := InchFit{Name: name, Fit: Fit{
		Hole:  Limits{Nominal: nominal, Class: Class{"H", c.hole}, Upper: thous(holeWidth), Grade: basis.Secondary},
		Shaft: Limits{Nominal: nominal, Class: c.shaft, Grade: basis.Secondary},
	}}
	switch {
	case c.letter == "js":
		f.Shaft.Upper, f.Shaft.Lower = thous(shaftWidth/2), thous(-shaftWidth/2)
	case at.which == "es":
		f.Shaft.Upper, f.Shaft.Lower = thous(at.thou), thous(at.thou-shaftWidth)
	default:
		f.Shaft.Upper, f.Shaft.Lower = thous(at.thou+shaftWidth), thous(at.thou)
	}
	if c.letter == name { // no symbol is printed
		f.Shaft.Class.Letter = ""
	}
	if sure && c.confirmed {
		return f, nil, nil
	}
	f.Hole.Grade, f.Shaft.Grade = basis.Memory, basis.Memory
	return f, []basis.Note{{
		Says:   name + ": no printed row of this size was at hand; put together from the grade table and from memory",
		Source: b41Cited, Grade: basis.Memory,
	}}, nil
}

// thous is a length of so many thousandths of an inch.
func thous(x float64) q.Length { return q.Length(math.Round(x*1e6) / 1e6 * thou * inch) }

func showInch(x q.Length) string { return fmt.Sprintf("%.7g in", float64(x)/inch) }
