// Package why turns an option that was judged into sentences with the numbers
// put in, in the units the user speaks. It decides nothing.
//
// Start with New and Reasons.
package why

import (
	"math"
	"strings"
	"wornfit/calc/interval"

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

	Unknown map[tape.Node]interval.I // inputs that nobody stated, with all they may be
	spans   []interval.I             // registers for what may be
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
		return w.mayBe(p.Node, p.Dim, len(p.Words) == 0 && !p.YesNo)
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
		if _, unstated := w.Unknown[s]; unstated {
			return true
		}
	}
	return false
}

// mayBe tells the range of a number that rests on something not known, where
// that is narrow enough to be of use: of two metals it may be made of, not of
// any metal.
func (w *Writer) mayBe(n tape.Node, d quantity.Dim, number bool) string {
	const unknown = "(not known)"
	if !number {
		return unknown
	}
	prog := w.Option.Program.Only(n)
	if w.spans == nil {
		w.spans = make([]interval.I, prog.Len())
		w.Option.Program.StartI(w.spans)
	}
	for _, s := range w.Option.Program.Uses(n) {
		w.spans[s] = interval.Point(w.Reg[s])
		if span, unstated := w.Unknown[s]; unstated {
			w.spans[s] = span
		}
	}
	prog.Enclose(w.spans)
	is := w.spans[n]
	if !prog.Defined(w.spans, n) || !(is.Width() <= 2*math.Abs(w.Reg[n])) {
		return unknown
	}
	low, high := w.Speech.Say(is.Lo, d), w.Speech.Say(is.Hi, d)
	if low == high {
		return low
	}
	return low + " to " + high
}
