package fits

import (
	"strings"

	"wornfit/calc/basis"
)

// edge is a class worked out at a size, in micrometres.
type edge struct {
	upper, lower float64
	row          deviation
	delta        float64 // what the delta rule added to ES
	mirrored     bool    // a hole taken from the shaft of the same letter
	special      bool    // M6 over 250 to 315 mm
}

// edge finds the fundamental deviation of a class and puts the width to it.
func (t *table) edge(size float64, c Class, it float64) (edge, error) {
	row, ok := t.deviation(c.Letter, c.Grade, size)
	e := edge{row: row}
	if !ok && c.Hole() && c.Letter < "H" { // EI = -es holds for A to H without exception
		row, ok = t.deviation(strings.ToLower(c.Letter), c.Grade, size)
		row.value, row.which = -row.value, "EI"
		e.row, e.mirrored = row, true
	}
	if !ok {
		return e, t.unknown(c)
	}
	switch row.which {
	case "es", "EI", "ei", "ES":
	default: // js, JS
		e.upper, e.lower = it/2, -it/2
		return e, nil
	}
	at := row.value
	if row.addDelta {
		e.delta, ok = t.delta(c.Grade, size)
		if !ok {
			return e, refuse("tolerance grade of "+c.String(), c.String(), "one whose delta is tabled, IT3 to IT8")
		}
		at += e.delta
	}
	if c == (Class{"M", 6}) && size > 250 && size <= 315 {
		at, e.special = -9, true
	}
	if row.which == "es" || row.which == "ES" {
		e.upper, e.lower = at, at-it
	} else {
		e.upper, e.lower = at+it, at
	}
	return e, nil
}

// unknown says why a class has no deviation: the letter is not tabled, or not in this grade.
func (t *table) unknown(c Class) error {
	if t.deviations[c.Letter] != nil || c.Hole() && c.Letter < "H" && t.deviations[strings.ToLower(c.Letter)] != nil {
		return refuse("tolerance class", c.String(), "a class the standard has at this size; "+
			c.Letter+" is tabled here only for other grades or sizes")
	}
	return refuse("letter of "+c.String(), quote(c.Letter), "one of "+t.known(c.Hole()))
}

func quote(s string) string { return "'" + s + "'" }

const source = "ISO 286-1:2010 through calc/fits/SOURCES.md"

// notes says what a reader must know of this value: weak rows, the special case, js.
func (e edge) notes(c Class) []basis.Note {
	var out []basis.Note
	say := func(g basis.Grade, text string) {
		out = append(out, basis.Note{Says: c.String() + ": " + text, Source: source, Grade: g})
	}
	switch {
	case e.row.memory:
		say(basis.Memory, "this deviation is from memory of the standard")
	case !e.row.confirmed:
		say(basis.Memory, "this deviation is carried by one publication and memory only")
	}
	if e.special {
		say(basis.Memory, "the standard prints ES = -9 µm over 250 to 315 mm, not the computed -11; the sign is from memory")
	}
	if e.mirrored {
		say(basis.Derived, "EI taken as -es of shaft "+strings.ToLower(c.Letter))
	}
	if (c.Letter == "js" || c.Letter == "JS") && c.Grade >= 7 && c.Grade <= 11 && int(e.upper*2)%2 == 1 {
		say(basis.Secondary, "exact IT/2; the 1988 edition and JIS allow the width to be rounded down to even")
	}
	return out
}
