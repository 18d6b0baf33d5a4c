package tape

import (
	"errors"
	"fmt"
	"math"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// Lower adds a checked expression and gives its node. What is wrong comes back
// as a fault.Fault with its place: a name that stands for nothing, a constant
// that is no finite number, a row where a number must stand. A branch that a
// constant shuts off is not looked at, so `0 == 1 ? 1/0 : 2` is 2.
func (b *Builder) Lower(e *lang.Expr, resolve Resolver) (Node, error) {
	l := lowering{b, resolve}
	return l.lower(e)
}

type lowering struct {
	b       *Builder
	resolve Resolver
}

func (l lowering) lower(e *lang.Expr) (Node, error) {
	switch e.Op {
	case lang.Const:
		return l.constant(e)
	case lang.Name:
		return l.name(e, e.Name)
	case lang.Low, lang.High:
		return l.end(e)
	case lang.Cond, lang.And, lang.Or:
		return l.choice(e)
	case lang.Call:
		return l.call(e)
	}
	args, err := l.all(e.Args)
	if err != nil {
		return 0, err
	}
	return l.apply(e, args)
}

func (l lowering) all(es []*lang.Expr) ([]Node, error) {
	args := make([]Node, len(es))
	for i, e := range es {
		n, err := l.lower(e)
		if err != nil {
			return nil, err
		}
		args[i] = n
	}
	return args, nil
}

func (l lowering) apply(e *lang.Expr, args []Node) (Node, error) {
	t := trait{}
	if int(e.Op) < len(traits) {
		t = traits[e.Op]
	}
	switch {
	case t.args == 0 || len(args) < t.args && !t.chain || len(args) == 0 || len(args) > t.args && !t.chain:
		return 0, wrong(e, fmt.Sprintf("op %d with %d arguments cannot be run", e.Op, len(args)), "check the expression before lowering it")
	case t.chain && len(args) == 1:
		return args[0], nil
	case e.Op == lang.Pow && l.b.nodes[args[1]].op != lang.Const:
		return 0, wrong(e, "the exponent is no constant", "write a plain number as the exponent")
	}
	n, err := l.b.apply(e.Op, args)
	if err != nil {
		return 0, wrong(e, err.Error(), "")
	}
	return n, nil
}

func (l lowering) constant(e *lang.Expr) (Node, error) {
	if math.IsNaN(e.Value) || math.IsInf(e.Value, 0) {
		return 0, wrong(e, fmt.Sprintf("the constant %v is no finite number", e.Value), "")
	}
	kind := lang.NumberKind
	if e.Type.Kind == lang.YesNo || e.Type.Kind == lang.Word {
		kind = e.Type.Kind
	}
	return l.b.constant(e.Value, kind), nil
}

func (l lowering) name(e *lang.Expr, name string) (Node, error) {
	if e.Type.Kind == lang.Row && name == e.Name {
		return 0, wrong(e, name+" is a row of a table, not a number", "name one of its columns")
	}
	n, err := l.resolve(name)
	switch {
	case err != nil:
		return 0, unresolved(e, err)
	case n <= 0 || int(n) >= len(l.b.nodes):
		return 0, wrong(e, name+" stands for nothing here", "define it or correct the name")
	}
	if name == e.Name {
		l.b.Mark(n, e.Type.Kind)
	}
	return n, nil
}

// unresolved is why a name stands for nothing, with its place.
func unresolved(e *lang.Expr, err error) error {
	var f fault.Fault
	if errors.As(err, &f) {
		return err
	}
	return wrong(e, err.Error(), "")
}

// end lowers low(x) and high(x).
func (l lowering) end(e *lang.Expr) (Node, error) {
	if len(e.Args) != 1 || e.Args[0].Op != lang.Name {
		return 0, wrong(e, "low and high take one name", "name a number written as a range")
	}
	word := "low"
	if e.Op == lang.High {
		word = "high"
	}
	return l.name(e, word+"("+e.Args[0].Name+")")
}

// choice lowers ops whose first arguments may leave the others out.
func (l lowering) choice(e *lang.Expr) (Node, error) {
	if e.Op == lang.Cond && len(e.Args) == 3 {
		test, err := l.lower(e.Args[0])
		if err != nil {
			return 0, err
		}
		if branch, ok := l.taken(test, e.Args); ok {
			return l.lower(branch)
		}
		rest, err := l.all(e.Args[1:])
		if err != nil {
			return 0, err
		}
		return l.apply(e, append([]Node{test}, rest...))
	}
	settles := 0.0
	if e.Op == lang.Or {
		settles = 1
	}
	var args []Node
	for _, a := range e.Args {
		n, err := l.lower(a)
		if err != nil {
			return 0, err
		}
		if l.b.is(n, settles) {
			return n, nil
		}
		args = append(args, n)
	}
	return l.apply(e, args)
}

// taken is the branch a constant test chooses.
func (l lowering) taken(test Node, args []*lang.Expr) (*lang.Expr, bool) {
	switch {
	case l.b.nodes[test].op != lang.Const:
		return nil, false
	case l.b.nodes[test].value > 0:
		return args[1], true
	}
	return args[2], true
}

func (l lowering) call(e *lang.Expr) (Node, error) {
	if e.Func == nil || len(e.Func.Args) != len(e.Args) || len(e.Func.Kernel.Args) != len(e.Args) {
		return 0, wrong(e, "the call does not have its function's arguments", "check the expression before lowering it")
	}
	args := make([]Node, len(e.Args))
	for i, a := range e.Args {
		var err error
		if e.Func.Args[i].Type.Kind == lang.Row {
			args[i], err = l.column(a, e.Func.Args[i].Column)
		} else {
			args[i], err = l.lower(a)
		}
		if err != nil {
			return 0, err
		}
	}
	n, err := l.b.call(e.Func.Kernel, args)
	if err != nil {
		return 0, wrong(e, err.Error(), "")
	}
	return n, nil
}

// column lowers a row to one of its columns, through any choice between rows.
func (l lowering) column(e *lang.Expr, column string) (Node, error) {
	switch e.Op {
	case lang.Name:
		return l.name(e, e.Name+"."+column)
	case lang.Cond:
		test, err := l.lower(e.Args[0])
		if err != nil {
			return 0, err
		}
		if branch, ok := l.taken(test, e.Args); ok {
			return l.column(branch, column)
		}
		yes, err := l.column(e.Args[1], column)
		if err != nil {
			return 0, err
		}
		no, err := l.column(e.Args[2], column)
		if err != nil {
			return 0, err
		}
		return l.apply(e, []Node{test, yes, no})
	}
	return 0, wrong(e, "no row of a table stands here", "name a row, such as a material")
}

func wrong(e *lang.Expr, says, remedy string) error {
	return fault.Fault{At: e.At, Says: says, Remedy: remedy}
}
