package lang

import (
	"strings"
	"unicode"

	"github.com/expr-lang/expr/file"
)

// ascii is what to write for the signs people copy from a book.
var ascii = map[rune]string{
	'≤': "<=", '≥': ">=", '≠': "!=", '×': "*", '·': "*", '∙': "*", '⋅': "*", '÷': "/", '−': "-", '–': "-",
	'²': "**2", '⁴': "**4", '√': "sqrt(x)", '“': `"`, '”': `"`, '‘': `"`, '’': `"`, '„': `"`,
	'°': "degC(40)", '±': "low(x) and high(x)",
}

// syntax tells in plain words what expr's parser stopped at. expr gives the
// first error only.
func (r *reader) syntax(e *file.Error) {
	from, to := r.stopped(e)
	says, remedy := r.reading(e, from, to)
	r.tell(from, to, says, remedy)
}

// stopped is the text to underline: expr's own place, which for an end too
// early, a run-together number or an open quote is a character off.
func (r *reader) stopped(e *file.Error) (from, to int) {
	last := len([]rune(strings.TrimRightFunc(r.s.Text.Source, unicode.IsSpace)))
	from = min(e.From, last-1)
	to = min(max(e.To, from+1), last)
	switch {
	case strings.Contains(e.Message, "literal not terminated"):
		for from > 0 && !strings.ContainsRune("\"'`", r.s.runes[from]) {
			from--
		}
	case strings.HasPrefix(e.Message, "bad number"):
		for from > 0 && inNumber(r.s.runes[from-1]) {
			from--
		}
		for to < last && inNumber(r.s.runes[to]) {
			to++
		}
	}
	return from, to
}

func inNumber(c rune) bool {
	return c == '.' || c == '_' || unicode.IsDigit(c) || unicode.IsLetter(c)
}

func (r *reader) reading(e *file.Error, from, to int) (says, remedy string) {
	msg, text := e.Message, r.s.piece(from, to)
	after := strings.TrimSpace(r.s.piece(to, len(r.s.runes)))
	switch {
	case strings.HasPrefix(msg, "unrecognized character"):
		return "the sign " + text + " is not read here", instead(text)
	case strings.HasPrefix(msg, "bad number syntax"):
		return "a number run together with letters", "write 2*mm: a unit is a factor"
	case strings.Contains(msg, "literal not terminated"):
		return "a quote that is not closed", `close the word with "`
	case strings.HasSuffix(msg, "token EOF"), strings.Contains(msg, "end of expression"):
		return "the expression ends too early", "close every bracket, and write a value after the last operator"
	case strings.Contains(msg, `Operator("=")`) && strings.HasPrefix(after, "<"):
		return "=< is not used in rules", "write <="
	case strings.Contains(msg, `Operator("=")`) && strings.HasPrefix(after, ">"):
		return "=> is not used in rules", "write >="
	case strings.Contains(msg, `Operator(">")`) && from > 0 && r.s.runes[from-1] == '<':
		return "<> is not used in rules", "write !="
	case strings.Contains(msg, `Operator("=")`):
		return "a single =", "write == to compare words; between sizes write <= or >="
	case strings.Contains(msg, `Operator("in")`) && !strings.HasPrefix(after, "["):
		return "in stands for a list of words here", "the unit is inch"
	case strings.Contains(msg, `Operator("#")`):
		return "# is not used in rules", "put remarks outside the quotes"
	case strings.HasPrefix(msg, "unexpected token Identifier"), strings.HasPrefix(msg, "unexpected token Number"), strings.HasPrefix(msg, "unexpected token String"):
		return text + " follows with no operator in between", "write 2*mm for a size, == to compare, and or or to join"
	case strings.HasPrefix(msg, "unexpected token"):
		return "unexpected " + text, "check the brackets and operators before it"
	}
	return "expr cannot read this: " + msg, "check the brackets and operators"
}

func instead(text string) string {
	for _, c := range text {
		if w, ok := ascii[c]; ok {
			return "write " + w
		}
	}
	return "write plain letters, digits, _ and . in names"
}
