package lang

import (
	"strings"

	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"

	"wornfit/rules/fault"
)

// longestText is how many characters an expression may have; beyond it a
// reader is lost, and a define with a name serves better.
const longestText = 1000

// Parse reads an expression with expr's parser and tells every form a rule may
// not use. The Source is never nil: where the text could not be read at all,
// its checks give nil and no further fault.
func Parse(t Text) (*Source, fault.List) {
	s := &Source{Text: t, runes: []rune(t.Source), lines: strings.Contains(t.Source, "\n")}
	r := &reader{s: s}
	if strings.TrimSpace(t.Source) == "" {
		r.tell(0, 0, "nothing is written here", "write an expression")
		return s, r.faults
	}
	if len(s.runes) > longestText {
		r.tell(0, 1, "an expression of more than 1000 characters", "give its parts names under define")
		return s, r.faults
	}
	if r.comments() {
		return s, r.faults
	}
	// A parser keeps the offset of its last text (expr v1.17.8): a new one each time.
	tree, err := new(parser.Parser).Parse(t.Source, nil)
	if err != nil {
		r.syntax(err.(*file.Error))
		return s, r.faults
	}
	s.root = r.form(tree.Node)
	r.noLoneUnit(s.root)
	return s, r.faults
}

// reader turns expr's tree into forms and collects what it may not hold.
type reader struct {
	s      *Source
	faults fault.List
}

func (r *reader) tell(from, to int, says, remedy string) {
	r.faults.Add(r.s.place(from, to), r.s.Text.Key, says, remedy)
}

// comments tells expr's comments. expr drops them without a word, so that a//b
// would be read as a.
func (r *reader) comments() bool {
	var quote rune
	runes := r.s.runes
	for i := 0; i+1 < len(runes); i++ {
		c := runes[i]
		switch {
		case quote != 0 && c == '\\' && quote != '`':
			i++
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'' || c == '`':
			quote = c
		case c == '/' && (runes[i+1] == '/' || runes[i+1] == '*'):
			r.tell(i, i+2, "a comment inside an expression: what follows "+string(runes[i:i+2])+" would not be read",
				"divide with a single /, and put remarks after # outside the quotes")
			return true
		}
	}
	return false
}
