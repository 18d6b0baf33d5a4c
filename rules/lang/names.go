package lang

import (
	"slices"
	"strings"

	"github.com/expr-lang/expr/builtin"
)

// keywords are the words of expr's grammar; true, false and nil are read as
// values before any name is looked up.
var keywords = []string{
	"and", "or", "not", "in", "matches", "contains", "startsWith", "endsWith",
	"let", "if", "else", "true", "false", "nil",
}

// Reserved reports whether a name means something to the language already: a
// keyword or builtin of expr, a unit, pi, or one of our functions. A define, a
// number, a pick or a dimension may not use it.
func Reserved(name string) bool {
	if _, unit := unitByName[name]; unit || name == "pi" || slices.Contains(keywords, name) {
		return true
	}
	if _, ours := own[name]; ours {
		return true
	}
	if _, absolute := scales[name]; absolute {
		return true
	}
	_, exprs := builtin.Index[name]
	return exprs
}

// BadName says why a name, dotted or plain, may not stand in a rule, or "" when
// it may: snake_case letters and digits, or one capital letter such as E.
func BadName(name string) (why string) {
	parts := strings.Split(name, ".")
	for _, p := range parts {
		if why := badPart(p); why != "" {
			return why
		}
	}
	if Reserved(parts[0]) {
		return parts[0] + " is a word of the expression language; write another, such as " + parts[0] + "_value"
	}
	return ""
}

func badPart(p string) string {
	switch {
	case p == "":
		return "a name has no empty part; write letters on both sides of every dot"
	case strings.Contains(p, "-"):
		return p + " would be read as a subtraction; write " + snake(p)
	case len(p) == 1 && p[0] >= 'A' && p[0] <= 'Z':
		return ""
	case p[0] < 'a' || p[0] > 'z':
		return p + " does not begin with a small letter; write " + snake(p)
	}
	for _, r := range p {
		if !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '_') {
			return p + " holds " + string(r) + "; write small letters, digits and _, such as " + snake(p)
		}
	}
	return ""
}

// snake is the nearest good name.
func snake(p string) string {
	var b strings.Builder
	for i, r := range p {
		switch {
		case r >= 'A' && r <= 'Z':
			if i > 0 && !strings.HasSuffix(b.String(), "_") {
				b.WriteByte('_')
			}
			b.WriteRune(r - 'A' + 'a')
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '_':
			b.WriteRune(r)
		default:
			b.WriteByte('_')
		}
	}
	s := strings.Trim(b.String(), "_")
	if s == "" || s[0] >= '0' && s[0] <= '9' {
		return "n_" + s
	}
	return s
}
