package render

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// glue stands for a blank at which a line may not break.
const glue = "\u00a0"

// width is the columns a text takes on a terminal. Every character the program
// prints itself is one wide.
func width(s string) int { return utf8.RuneCountInString(s) }

func pad(s string, to int) string { return s + strings.Repeat(" ", max(to-width(s), 0)) }

// wrap breaks text into lines of at most this many columns, at blanks, never
// inside a number or between a number and its unit. A word too long for a line
// breaks after a sign, then after a hyphen.
func wrap(text string, to int) []string {
	to = max(to, 1)
	var lines []string
	line := ""
	for _, w := range tokens(text) {
		switch {
		case line == "":
			line = w
		case width(line)+1+width(w) <= to:
			line += " " + w
			continue
		default:
			lines, line = append(lines, line), w
		}
		for width(line) > to {
			head, rest := part(line, to)
			lines, line = append(lines, head), rest
		}
	}
	return append(lines, line)
}

// longest is the widest piece of a text whose words break at these places.
func longest(text string, at *regexp.Regexp) int {
	most := 0
	for _, t := range tokens(text) {
		for _, piece := range split(t, at) {
			most = max(most, width(piece))
		}
	}
	return most
}

// part cuts a word that is wider than a line: after the last sign it may break
// at, else after a hyphen, else where the line ends.
func part(word string, to int) (head, rest string) {
	for _, at := range []*regexp.Regexp{atSign, atHyphen} {
		for _, p := range split(word, at) {
			if width(head)+width(p) > to {
				break
			}
			head += p
		}
		if head != "" {
			return head, word[len(head):]
		}
	}
	head = string([]rune(word)[:to])
	return head, word[len(head):]
}

// Where a word may break: after + / or _, and if that is not enough after a
// hyphen as well.
var (
	atSign   = regexp.MustCompile(`[^+/_]*[+/_]|[^+/_]+$`)
	atHyphen = regexp.MustCompile(`[^+/_-]*[+/_-]|[^+/_-]+$`)
)

// split cuts a word into pieces that each end where the word may break. What
// holds a blank or begins with a digit is a number, and whole.

func split(word string, at *regexp.Regexp) []string {
	if strings.Contains(word, glue) || !breakable.MatchString(word) {
		return []string{word}
	}
	return at.FindAllString(word, -1)
}

// breakable is a word of letters with signs between them, such as an option's
// id or the name of a file.
var breakable = regexp.MustCompile(`^[(]?[A-Za-z_.][A-Za-z0-9_.]*([+/-][A-Za-z0-9_.]+)+[).,;:]*$`)

// tokens are the words of a text, a number joined to what belongs to it.
func tokens(text string) []string {
	var out []string
	number := false // the last token ends in a number or its unit
	unit := ""
	for _, w := range strings.Fields(text) {
		bare := strings.TrimRight(w, ".,;:)")
		switch {
		case number && unit == "" && (strings.HasPrefix(w, "±") || strings.HasPrefix(w, "+/-")),
			number && unit == "" && units[bare],
			number && second[unit+" "+bare]:
			out[len(out)-1] += glue + w
			if units[bare] || second[unit+" "+bare] {
				unit = bare
			}
			number = bare == w
			continue
		}
		out = append(out, w)
		unit, number = "", numeric.MatchString(w)
	}
	return out
}

// numeric is a word a unit may follow.
var numeric = regexp.MustCompile(`^[(~<>=]*[+±−-]?(\+/-)?[0-9]*[.,]?[0-9]+(-[0-9]+)?(/[0-9]+)?$`)

var units = set("mm in µm um thou m ft uin mm2 in2 m2 mm3 cm3 m3 in3 N kN lbf MPa GPa psi Mpsi K °C °F deg C F HRC HB HV h s min years year " +
	"days day hours rpm kg g lb W kW hp J kJ % points of EUR USD GBP CHF money thou/h um/h µm/h mm/s m/s ft/min mm3/N/m um/m/K uin/in/°F " +
	"um/m/MPa uin/in/psi free tight EUR/h USD/h GBP/h kg/m3 lb/in3")

// second are the words that follow a unit and belong to it.
var second = map[string]bool{"N m": true, "kN m": true, "lbf in": true, "lbf ft": true, "MPa m/s": true, "psi ft/min": true,
	"°F change": true, "deg C": true, "deg F": true, "F change": true, "mm free": true, "mm tight": true, "in free": true, "in tight": true}

func set(words string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(words) {
		out[w] = true
	}
	return out
}
