package lang

import (
	"reflect"
	"strings"

	"github.com/expr-lang/expr/ast"
)

// refusal is what is told of a form that expr has and rules do not.
type refusal struct{ says, remedy string }

var refusedOperators = map[string]refusal{
	"&&":         {"&& is not used in rules", "write and"},
	"||":         {"|| is not used in rules", "write or"},
	"%":          {"% is a remainder, which rules do not use", "write a share as a number such as 5 % in the numbers table"},
	"??":         {"?? is not used in rules", "an unknown value needs no stand-in: what is not known is tried over its whole range"},
	"matches":    {"matches compares letters", `write == "word" or in ["word", "word"]`},
	"contains":   {"contains compares letters", `write == "word" or in ["word", "word"]`},
	"startsWith": {"startsWith compares letters", `write == "word" or in ["word", "word"]`},
	"endsWith":   {"endsWith compares letters", `write == "word" or in ["word", "word"]`},
}

var refusedNodes = map[reflect.Type]refusal{
	reflect.TypeFor[*ast.NilNode]():                {"nil is not used in rules", "what is not known is tried over its whole range: leave the test out"},
	reflect.TypeFor[*ast.BytesNode]():              {"b in front of a quote", "leave it out"},
	reflect.TypeFor[*ast.ChainNode]():              {"?. is not used in rules", "write a plain dot"},
	reflect.TypeFor[*ast.SliceNode]():              {"[ : ] takes part of a list, which rules do not use", "write a dotted name, or call a lookup"},
	reflect.TypeFor[*ast.MemberNode]():             {"[ ] looks something up, which rules do not use", "write a dotted name, or call a lookup such as pair(a, b)"},
	reflect.TypeFor[*ast.CallNode]():               {"a function is called on a value", "write the function's name, then all values in brackets: f(a, b)"},
	reflect.TypeFor[*ast.VariableDeclaratorNode](): {"let is not used in rules", "give it a name under define"},
	reflect.TypeFor[*ast.SequenceNode]():           {"; joins two expressions", "write one"},
	reflect.TypeFor[*ast.ArrayNode]():              {"a list stands only after in", `write in ["this", "that"]`},
	reflect.TypeFor[*ast.MapNode]():                {"{ } is not used in rules", "write a dotted name"},
}

func (r *reader) refused(n ast.Node) *form {
	why, ok := refusedNodes[reflect.TypeOf(n)]
	if b, is := n.(*ast.BuiltinNode); is {
		why, ok = refusal{b.Name + " is a function of expr that rules do not use", "use min, max, abs, sqrt, low, high or a calculation of the catalogue"}, true
	}
	if !ok {
		why = refusal{"this form is not used in rules", "write arithmetic, comparisons, and, or, not"}
	}
	from, to := r.span(n)
	r.tell(from, to, why.says, why.remedy)
	return &form{op: badForm, from: from, to: to}
}

func (r *reader) refusedOperator(n *ast.BinaryNode) *form {
	f := r.joined(badForm, r.form(n.Left), r.form(n.Right))
	why := refusedOperators[n.Operator]
	at := n.Location()
	r.tell(at.From, at.To, why.says, why.remedy)
	return f
}

// span is the extent of any node, from all the places below it.
func (r *reader) span(n ast.Node) (from, to int) {
	e := extent{from: len(r.s.runes)}
	ast.Walk(&n, &e)
	from, to = min(e.from, e.to), min(e.to, len(r.s.runes))
	switch n := n.(type) {
	case *ast.CallNode:
		if len(n.Arguments) == 0 {
			to = min(r.s.seek(to, 1, ")")+1, len(r.s.runes))
		}
	case *ast.VariableDeclaratorNode:
		from = r.before(from, "let")
	}
	return r.s.within(from, to)
}

// before is where the last keyword before a place begins, whose own place expr
// does not keep.
func (r *reader) before(from int, keyword string) int {
	front := string(r.s.runes[:from])
	if i := strings.LastIndex(front, keyword); i >= 0 {
		return len([]rune(front[:i]))
	}
	return from
}

type extent struct{ from, to int }

func (e *extent) Visit(n *ast.Node) {
	if at := (*n).Location(); at.To > at.From {
		e.from, e.to = min(e.from, at.From), max(e.to, at.To)
	}
}
