// Package render lays an answer out for the eye: pages of text for a terminal
// or a printer, and JSON for programs.
//
// Start with Advise, Compare, Size and Why, one page each, or with Page, which
// they are all written on. The package lays out and words headings; it judges
// nothing, sorts nothing and works nothing out beyond adding hours.
package render

import (
	"regexp"
	"strings"
)

// TableFrom is the width in columns from which tables are drawn; below it
// every row becomes a card.
const TableFrom = 68

// wideProse keeps long lines from tiring the eye on a wide screen.
const wideProse = 100

// Look is how a page is to look.
type Look struct {
	Width  int  // columns; no line is wider
	ASCII  bool // only characters any printer has
	Colour bool // paint verdicts and headings
}

// Page is text being laid out.
type Page struct {
	Look
	b strings.Builder
}

// NewPage starts an empty page. A width under 36 columns counts as 36: the
// longest number with its doubt and unit has no room in less.
func NewPage(l Look) *Page {
	l.Width = max(l.Width, 36)
	return &Page{Look: l}
}

// String is the page so far; lines have no trailing blanks.
func (p *Page) String() string { return p.b.String() }

// Title opens a page.
func (p *Page) Title(text string) {
	for _, l := range wrap(p.plain(upperFirst(text)), p.prose()) {
		p.line(0, p.paint(bold, l))
	}
}

// Head opens a section.
func (p *Page) Head(text string) {
	p.Blank()
	for _, l := range wrap(p.plain(text), p.prose()) {
		p.line(0, p.paint(bold, l))
	}
}

// Blank leaves a line free, never two and none at the top.
func (p *Page) Blank() {
	if s := p.b.String(); s != "" && !strings.HasSuffix(s, "\n\n") {
		p.b.WriteByte('\n')
	}
}

// Para writes a paragraph, indented.
func (p *Page) Para(indent int, text string) { p.Item(indent, "", text) }

// Item writes a paragraph behind a mark, such as 1. or !, with the text
// hanging after it.
func (p *Page) Item(indent int, mark, text string) {
	mark = p.plain(mark)
	hang := 0
	if mark != "" {
		hang = width(mark) + 1
	}
	for i, l := range wrap(p.plain(text), p.prose()-indent-hang) {
		if i == 0 && mark != "" {
			p.line(indent, p.paint(styleOf(mark), mark)+" "+l)
			continue
		}
		p.line(indent+hang, l)
	}
}

// Pairs writes names and what each is: side by side where all have room, else
// each text under its name.
func (p *Page) Pairs(indent int, names, texts []string) {
	at, most := 0, 0
	for i := range names {
		names[i], texts[i] = p.plain(names[i]), p.plain(texts[i])
		at, most = max(at, width(names[i])+2), max(most, min(width(texts[i]), roomy))
	}
	beside := indent+at+most <= p.prose()
	for i, name := range names {
		if !beside {
			p.Para(indent, name)
			p.Para(indent+2, texts[i])
			continue
		}
		for k, l := range wrap(texts[i], p.prose()-indent-at) {
			if k == 0 {
				p.line(indent, pad(name, at)+p.paint(styleOf(texts[i]), l))
				continue
			}
			p.line(indent+at, l)
		}
	}
}

// roomy is the width at which a text may wrap beside its name.
const roomy = 30

func (p *Page) prose() int { return min(p.Width, wideProse) }

func (p *Page) line(indent int, text string) {
	l := strings.TrimRight(strings.Repeat(" ", indent)+strings.ReplaceAll(text, glue, " "), " ")
	p.b.WriteString(l)
	p.b.WriteByte('\n')
}

func (p *Page) plain(text string) string { return Plain(text, p.ASCII) }

// Plain makes text fit to be laid out: no tabs, no line breaks, and with ascii
// no character a plain printer lacks.
func Plain(text string, ascii bool) string {
	text = strings.Join(strings.Fields(text), " ")
	if !ascii {
		return micro.ReplaceAllString(text, "${1}µm${2}")
	}
	return strings.Join(strings.Fields(ASCII(text)), " ")
}

// ASCII writes text in plain characters: what has no other way to be written
// becomes a question mark.
func ASCII(text string) string {
	return strings.Map(func(r rune) rune {
		if r > '~' {
			return '?'
		}
		return r
	}, toASCII.Replace(text))
}

// micro is the unit the program's own texts write without its Greek letter.
var micro = regexp.MustCompile(`(^|[ /±])um($|[ /.,;)])`)

var toASCII = strings.NewReplacer(
	"±", "+/-", "µ", "u", "μ", "u", "°", " deg ", "⌀", "dia ", "Ø", "dia ", "ø", "dia ", "−", "-", "–", "-", "—", "-", "×", "x", "·", ",",
	"≤", "<=", "≥", ">=", "½", "1/2", "¼", "1/4", "¾", "3/4", "²", "2", "³", "3", "…", "...", "’", "'", "‘", "'", "“", "\"", "”", "\"",
	"ä", "ae", "ö", "oe", "ü", "ue", "ß", "ss", "é", "e", "è", "e", "à", "a", "\u00a0", " ")

// asTyped is a first word that keeps its small letter: a file, a place in one,
// a name with points in it, the letter of a formula.
var asTyped = regexp.MustCompile(`^([^\s:]+(\.[A-Za-z]|:[0-9])|[^aA\s][ ,])`)

func upperFirst(s string) string {
	if asTyped.MatchString(s) {
		return s
	}
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}
