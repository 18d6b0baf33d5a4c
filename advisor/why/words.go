// Package why turns an option that was judged into sentences with the numbers
// put in, in the units the user speaks. It decides nothing.
//
// Start with New and Reasons.
package why

import (
	"math"
	"slices"
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
	Ranged  map[tape.Node]interval.I // inputs stated as a range: duty from 10 to 75 degC
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
	return w.say(p.Node, p.Dim)
}

// say speaks a value. What rests on a range, as the case states it or the
// vocabulary has it, is told as one: its middle was never said. A length is told at
// the target sizes, and how far it may stray is for the limits to say.
func (w *Writer) say(n tape.Node, d quantity.Dim) string {
	if d != quantity.LengthDim && w.uses(n, w.Ranged) {
		if is, ok := w.between(n, w.Ranged, mostRanged); ok {
			return w.span(is, d)
		}
	}
	return w.Speech.Say(w.Reg[n], d)
}

func (w *Writer) span(is interval.I, d quantity.Dim) string {
	low, high := w.Speech.Say(is.Lo, d), w.Speech.Say(is.Hi, d)
	if low == high {
		return low
	}
	return low + " to " + high
}

// Rests reports whether a value rests on something that is not known.
func (w *Writer) Rests(n tape.Node) bool {
	return w.uses(n, w.Unknown)
}

func (w *Writer) uses(n tape.Node, open map[tape.Node]interval.I) bool {
	if len(open) == 0 {
		return false
	}
	for _, s := range w.Option.Program.Uses(n) {
		if _, is := open[s]; is {
			return true
		}
	}
	return false
}

// mayBe tells the range of a number that rests on something not known, where
// that is narrow enough to be of use: of two metals it may be made of, not of
// any metal.
func (w *Writer) mayBe(n tape.Node, d quantity.Dim, number bool) string {
	if !number {
		return unknown
	}
	is, ok := w.between(n, w.Unknown, mostCorners)
	if !ok || !(is.Width() <= 2*math.Abs(w.Reg[n])) {
		return unknown
	}
	return w.span(is, d)
}

// unknown stands in a sentence for a value that nobody knows.
const unknown = "(not known)"

// How many inputs are tried at both their ends: of what is not known, of ranges.
const mostCorners, mostRanged = 8, 3

// between is the least and most of a value at the ends of what is open.
// What is not known is mostly columns of one row, on which a value hangs one way:
// an enclosure would be far too wide, as it forgets that they go together.
func (w *Writer) between(n tape.Node, open map[tape.Node]interval.I, most int) (interval.I, bool) {
	var free []tape.Node
	for _, s := range w.Option.Uses(n) {
		span, is := open[s.Node]
		switch {
		case !is:
		case len(s.Words) > 0 && !s.YesNo || math.IsInf(span.Width(), 0):
			return interval.I{}, false
		default:
			free = append(free, s.Node)
		}
	}
	if len(free) > most {
		return interval.I{}, false
	}
	prog, reg := w.Option.Program.Only(n), slices.Clone(w.Reg)
	is := interval.Point(w.Reg[n])
	for corner := range 1 << len(free) {
		for k, s := range free {
			if reg[s] = open[s].Lo; corner>>k&1 == 1 {
				reg[s] = open[s].Hi
			}
		}
		prog.Run(reg)
		if math.IsNaN(reg[n]) || math.IsInf(reg[n], 0) {
			return interval.I{}, false
		}
		is = interval.I{Lo: min(is.Lo, reg[n]), Hi: max(is.Hi, reg[n])}
	}
	return is, true
}
