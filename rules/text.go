package rules

import (
	"regexp"
	"slices"
	"strings"

	"wornfit/rules/yamldoc"
)

var (
	idForm     = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]*([-_][A-Za-z0-9]+)*$`)
	numberForm = regexp.MustCompile(`^[-+]?(0[xob])?[0-9.][0-9a-fA-F_.]*([eE][-+]?[0-9]+)?$|^[-+]?\.(inf|nan)$`)
	dateForm   = regexp.MustCompile(`^[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}`)
	clockForm  = regexp.MustCompile(`^[0-9]+(:[0-9]+)+$`)

	truths   = []string{"yes", "no", "on", "off", "true", "false", "y", "n"}
	nothings = []string{"null", "nil", "~", ""}
	grammar  = []string{"and", "or", "not", "in", "matches", "contains", "startswith", "endswith", "let", "if", "else"}
)

// misread says as what YAML or the rule language may read an id or word in
// place of text, or "" when it is text to both.
func misread(w string) string {
	low := strings.ToLower(w)
	switch {
	case slices.Contains(truths, low):
		return "yes or no"
	case slices.Contains(nothings, low):
		return "nothing at all"
	case slices.Contains(grammar, low):
		return "a word of the rule language"
	case !strings.Contains("+-.0123456789", w[:1]): // all below begin with one of these
		return ""
	case dateForm.MatchString(w):
		return "a date"
	case clockForm.MatchString(w):
		return "a time of day"
	case numberForm.MatchString(low):
		return "a number"
	}
	return ""
}

// badWord says what is wrong with an id or a word of a closed list, or "".
func badWord(w string) (says, remedy string) {
	if as := misread(w); as != "" {
		return w + " is read as " + as, "choose a word that is plain text, such as is-" + strings.Trim(w, "~-+.")
	}
	if !idForm.MatchString(w) {
		return w + " cannot be an id or a word", "use letters, digits and - with a letter first"
	}
	return "", ""
}

// word tells an id or word that is no plain text, at its place.
func word(n yamldoc.Node) string {
	w := n.Text()
	if n.Present() && w != "" {
		if says, remedy := badWord(w); says != "" {
			n.Fault(says, remedy)
			return ""
		}
	}
	return w
}
