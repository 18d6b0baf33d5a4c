package yamldoc

import (
	"strings"
	"unicode/utf8"

	"wornfit/rules/fault"
)

// Straight reports whether a scalar stands on one line exactly as its text
// reads, so that a place in the text is a place in the file. A text folded over
// lines, a block and a text with escapes are not straight.
func (n Node) Straight() bool {
	if !n.IsScalar() || n.Block() {
		return false
	}
	rest, ok := n.doc.from(int(n.y.line), int(n.y.column)+n.quote())
	if !ok {
		return false
	}
	text := n.y.value
	if n.y.style&single != 0 {
		text = strings.ReplaceAll(text, "'", "''")
	}
	return strings.HasPrefix(rest, text)
}

// TextAt is the place of a scalar's first character, inside its quotes.
func (n Node) TextAt() fault.Place {
	at := n.At()
	if n.y != nil {
		at.Column += n.quote()
	}
	return at
}

func (n Node) quote() int {
	if n.Quoted() {
		return 1
	}
	return 0
}

// from is what stands on a line from a column on; both count from 1, in
// characters.
func (d *Doc) from(line, column int) (string, bool) {
	if d.lines == nil {
		d.lines = strings.Split(string(d.data), "\n")
	}
	if line < 1 || line > len(d.lines) {
		return "", false
	}
	text := d.lines[line-1]
	for n := 1; n < column; n++ { // a character may be several bytes
		_, size := utf8.DecodeRuneInString(text)
		if size == 0 {
			return "", false
		}
		text = text[size:]
	}
	return text, column >= 1
}
