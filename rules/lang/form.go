package lang

import (
	"strconv"
	"strings"

	"github.com/expr-lang/expr/ast"
)

// operators are the binary operators a rule may use.
var operators = map[string]Op{
	"+": Add, "-": Sub, "*": Mul, "/": Div, "**": Pow, "^": Pow,
	"<=": LessEq, ">=": GreaterEq, "<": Less, ">": Greater,
	"==": Equal, "!=": NotEqual, "and": And, "or": Or, "in": inForm, "..": rangeForm,
}

// form turns one node of expr's tree into a form, and tells what is not allowed.
func (r *reader) form(n ast.Node) *form {
	at := n.Location()
	switch n := n.(type) {
	case *ast.IntegerNode:
		return r.number(float64(n.Value), at.From, at.To)
	case *ast.FloatNode:
		return r.number(n.Value, at.From, at.To)
	case *ast.BoolNode:
		f := &form{op: Const, typ: Type{Kind: YesNo}, literal: true, from: at.From, to: at.To}
		if n.Value {
			f.value = 1
		}
		return f
	case *ast.StringNode:
		return &form{op: wordForm, name: n.Value, from: at.From, to: at.To}
	case *ast.IdentifierNode:
		return named(n.Value, at.From, at.To)
	case *ast.MemberNode:
		return r.member(n)
	case *ast.UnaryNode:
		return r.unary(n)
	case *ast.BinaryNode:
		return r.binary(n)
	case *ast.ConditionalNode:
		return r.conditional(n)
	case *ast.CallNode:
		if callee, ok := n.Callee.(*ast.IdentifierNode); ok {
			return r.call(callee.Value, n.Arguments, at.From)
		}
		return r.refused(n)
	case *ast.BuiltinNode:
		if _, ok := builtins[n.Name]; ok {
			return r.call(n.Name, n.Arguments, at.From)
		}
		return r.refused(n)
	}
	return r.refused(n)
}

// named is a name standing alone: a unit, pi, or what the scope knows.
func named(name string, from, to int) *form {
	f := &form{op: Name, name: name, from: from, to: to}
	if u, ok := unitNamed(name); ok {
		f.op, f.value, f.typ.Dim = Const, u.Factor, u.Dim
	} else if name == "pi" {
		f.op, f.value = Const, pi // a constant keeps its name, so that pi.x can be told
	}
	return f
}

// member joins a.b.c to one dotted name.
func (r *reader) member(n *ast.MemberNode) *form {
	p, dotted := n.Property.(*ast.StringNode)
	if !dotted || n.Optional || r.s.runes[p.Location().From] != []rune(p.Value + " ")[0] {
		return r.refused(n)
	}
	base := r.form(n.Node)
	switch {
	case base.op == Name:
		base.name += "." + p.Value
		base.to = p.Location().To
	case base.op == Const && base.name != "":
		r.tell(base.from, base.to, base.name+" is a unit or a constant, so "+base.name+"."+p.Value+" is no name", "rename it")
		base.op = badForm
	case base.op != badForm:
		r.tell(base.from, p.Location().To, "a column is taken from something that is no name", "write a dotted name such as hub.outside")
		base.op, base.args = badForm, nil
	}
	return base
}

func (r *reader) unary(n *ast.UnaryNode) *form {
	arg := r.form(n.Node)
	f := &form{args: []*form{arg}, from: n.Location().From}
	f.from, f.to = r.s.within(min(f.from, arg.from), arg.to)
	r.noLoneUnit(arg)
	switch n.Operator {
	case "-":
		f.op = Neg
	case "not":
		f.op = Not
		if in, ok := n.Node.(*ast.BinaryNode); ok && in.Operator == "in" {
			f.from, f.to = arg.from, arg.to
		}
	case "!":
		r.tell(f.from, f.from+1, "! is not used in rules", "write not")
		f.op = badForm
	default:
		r.tell(f.from, f.from+1, "a "+n.Operator+" in front of a value", "leave it out")
		f.op = badForm
	}
	return f
}

func (r *reader) binary(n *ast.BinaryNode) *form {
	if chained(n) {
		return r.chain(n)
	}
	op, ok := operators[n.Operator]
	switch {
	case !ok:
		return r.refusedOperator(n)
	case op == Pow:
		return r.power(n)
	case op == inForm:
		return r.in(n)
	}
	left, right := r.form(n.Left), r.form(n.Right)
	f := r.joined(op, left, right)
	if op != And && op != Or && r.looseNot(n, left) {
		r.tell(f.from, f.to, "not takes only "+r.s.said(left.args[0])+", before "+n.Operator+" is looked at",
			"write not ("+r.s.piece(left.args[0].from, f.to)+")")
		f.op, f.args[0] = badForm, left.args[0]
	}
	if op != Mul && op != Div {
		r.noLoneUnit(left)
		r.noLoneUnit(right)
	}
	return f
}

func (r *reader) joined(op Op, left, right *form) *form {
	f := &form{op: op, args: []*form{left, right}}
	f.from, f.to = r.s.within(min(left.from, right.from), max(left.to, right.to))
	return f
}

// looseNot reports whether the left side is a `not` without brackets: not a > 2
// is read as (not a) > 2.
func (r *reader) looseNot(n *ast.BinaryNode, left *form) bool {
	u, ok := n.Left.(*ast.UnaryNode)
	return ok && u.Operator == "not" && left.op == Not && left.args[0].op != inForm &&
		!strings.Contains(r.s.piece(left.to, n.Location().From), ")")
}

// chained reports a < x < b: expr reads it as a < x && x < b, with one x in
// two places of the tree.
func chained(n *ast.BinaryNode) bool {
	right, ok := n.Right.(*ast.BinaryNode)
	if !ok || n.Operator != "&&" {
		return false
	}
	left, ok := n.Left.(*ast.BinaryNode)
	for ok && left.Operator == "&&" {
		left, ok = left.Right.(*ast.BinaryNode)
	}
	return ok && left.Right == right.Left
}

func (r *reader) chain(n *ast.BinaryNode) *form {
	var parts []*form
	for {
		last := n.Right.(*ast.BinaryNode)
		parts = append(parts, r.form(last.Right))
		left := n.Left.(*ast.BinaryNode)
		if !chained(left) {
			parts = append(parts, r.form(left.Right), r.form(left.Left))
			break
		}
		n = left
	}
	f := &form{op: badForm}
	for i := len(parts) - 1; i >= 0; i-- {
		f.args = append(f.args, parts[i])
	}
	f.from, f.to = r.s.within(f.args[0].from, parts[0].to)
	r.tell(f.from, f.to, "two comparisons in a row", "write each by itself, joined with and; in a limit, write two limits")
	return f
}

func (r *reader) conditional(n *ast.ConditionalNode) *form {
	if n.Exp1 == n.Cond {
		f := &form{op: badForm, args: []*form{r.form(n.Cond), r.form(n.Exp2)}}
		f.from, f.to = f.args[0].from, f.args[1].to
		r.tell(f.from, f.to, "?: with nothing between", "write test ? this : that")
		return f
	}
	f := &form{op: Cond, args: []*form{r.form(n.Cond), r.form(n.Exp1), r.form(n.Exp2)}}
	f.from, f.to = r.s.within(f.args[0].from, f.args[2].to) // expr's own place is the end, or none
	for _, a := range f.args {
		r.noLoneUnit(a)
	}
	if !n.Ternary {
		f.from = r.before(f.from, "if")
		r.tell(f.from, f.to, "if and else are not used in rules", "write test ? this : that")
		f.op = badForm
	}
	return f
}

// noLoneUnit tells a unit that multiplies nothing: wall + mm hides a 1.
func (r *reader) noLoneUnit(f *form) {
	if f.op == Const && f.name != "" && f.name != "pi" {
		r.tell(f.from, f.to, "the unit "+f.name+" stands alone", "write 1*"+f.name+" if one is meant")
		f.op = badForm
	}
}

// number is a literal. Rules hold none but 0, 1, 2 and 4: every other number
// has a source, and stands in the numbers table with it.
func (r *reader) number(v float64, from, to int) *form {
	text := r.s.piece(from, to)
	f := &form{op: Const, value: v, literal: true, from: from, to: to}
	switch text {
	case "0", "1", "2", "4":
		return f
	}
	f.op = badForm
	remedy := "put it in the numbers table with from and seen, and write its name"
	if v == 0 || v == 1 || v == 2 || v == 4 {
		remedy = "write " + strconv.FormatFloat(v, 'f', -1, 64)
	}
	r.tell(from, to, "the number "+text+" in an expression", remedy)
	return f
}
