// Package why turns an option that was judged into sentences with the numbers
// put in, in the units the user speaks. It decides nothing.
//
// Start with New and Reasons.
package why

import (
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// Writer words one option: its values, the rows picked, the units spoken.
type Writer struct {
	Speech quantity.Speech
	Option *link.Option
	Reg    []float64         // the program's registers at the design
	Rows   map[string]string // what each row is called, by the pick's or row's full name
	Called map[string]string // the user's own words: shaft -> pivot pin

	Unknown map[tape.Node]bool // inputs that nobody stated: what rests on them has no value to tell
}

// Sentence puts the values into a sentence.
func (w *Writer) Sentence(pieces []link.WordPiece) string {
	var b strings.Builder
	for _, p := range pieces {
		b.WriteString(w.piece(p))
	}
	return strings.TrimSpace(b.String())
}

func (w *Writer) piece(p link.WordPiece) string {
	switch {
	case p.Row != "":
		if name, ok := w.Rows[p.Row]; ok {
			return name
		}
		return "what is stated"
	case p.Node == 0:
		return p.Text
	case w.Rests(p.Node):
		return "(not known)"
	case len(p.Words) > 0:
		if i := int(w.Reg[p.Node]); i >= 0 && i < len(p.Words) {
			return p.Words[i]
		}
		return "not known"
	case p.YesNo:
		if w.Reg[p.Node] > 0 {
			return "yes"
		}
		return "no"
	}
	return w.Speech.Say(w.Reg[p.Node], p.Dim)
}

// Rests reports whether a value rests on something that is not known.
func (w *Writer) Rests(n tape.Node) bool {
	if len(w.Unknown) == 0 {
		return false
	}
	for _, s := range w.Option.Program.Uses(n) {
		if w.Unknown[s] {
			return true
		}
	}
	return false
}
