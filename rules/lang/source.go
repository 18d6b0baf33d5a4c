package lang

import (
	"strings"

	"wornfit/rules/fault"
)

// Source is an expression that expr's parser has read, in the forms a rule may
// use. It knows what was written, not yet what the names mean: see Check,
// Infer, CheckLimit and CheckRange. A Source may be checked against any number
// of scopes.
type Source struct {
	Text  Text
	runes []rune
	lines bool  // more than one
	root  *form // nil where the text could not be read at all
}

// form is a node as written. It uses the operators of Op and those below.
type form struct {
	op       Op
	typ      Type    // of a Const
	value    float64 // of a Const
	literal  bool    // a Const written as a number, true or false
	name     string  // of a Name, a Call, a wordForm
	args     []*form
	from, to int // in characters of the text
}

// The forms that are no nodes of a checked expression.
const (
	badForm   Op = 200 + iota // told already; its args are still checked
	wordForm                  // "steady"
	inForm                    // args[0] in the words args[1:]
	rangeForm                 // low .. high
)

// place is where characters from..to of the text stand in their file. A span
// over several lines is underlined on its first.
func (s *Source) place(from, to int) fault.Place {
	at := s.Text.At
	if !s.lines {
		at.Column, at.Width = at.Column+from, to-from
		return at
	}
	for i := 0; i < from && i < len(s.runes); i++ {
		at.Column++
		if s.runes[i] == '\n' {
			at.Line, at.Column = at.Line+1, s.Text.At.Column
		}
	}
	at.Width = 0
	for i := from; i < to && i < len(s.runes) && s.runes[i] != '\n'; i++ {
		at.Width++
	}
	return at
}

func (s *Source) at(f *form) fault.Place { return s.place(f.from, f.to) }

// piece is the text from..to, for use inside a sentence.
func (s *Source) piece(from, to int) string {
	from, to = max(0, from), min(to, len(s.runes))
	if from >= to {
		return ""
	}
	return string(s.runes[from:to])
}

const longestPiece = 48

func (s *Source) said(f *form) string {
	if f.to-f.from > longestPiece {
		return "this"
	}
	return s.piece(f.from, f.to)
}

// within widens a span over the brackets that belong to it: expr gives the
// place of operators and leaves only, so the span of (a + b)*c begins at a.
func (s *Source) within(from, to int) (int, int) {
	open, closed := 0, 0
	var quote rune
	for _, r := range s.runes[from:to] {
		switch {
		case quote != 0:
			if r == quote {
				quote = 0
			}
		case r == '"' || r == '\'' || r == '`':
			quote = r
		case strings.ContainsRune("([{", r):
			open++
		case strings.ContainsRune(")]}", r) && open > 0:
			open--
		case strings.ContainsRune(")]}", r):
			closed++
		}
	}
	for ; closed > 0; closed-- {
		from = s.seek(from-1, -1, "([{")
	}
	for ; open > 0; open-- {
		to = s.seek(to, 1, ")]}") + 1
	}
	return max(0, from), min(to, len(s.runes))
}

// seek walks from i in steps until it stands on one of the characters.
func (s *Source) seek(i, step int, on string) int {
	for i >= 0 && i < len(s.runes) {
		if strings.ContainsRune(on, s.runes[i]) {
			return i
		}
		i += step
	}
	return i
}
