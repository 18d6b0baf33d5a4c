package lang

import (
	"fmt"
	"math"
	"slices"

	"github.com/expr-lang/expr/ast"
)

// judgeFuncs are our functions as expr's VM calls them. finiteName wraps what
// may come out infinite; no rule can name it.
var judgeFuncs = map[string]func(args ...any) (any, error){
	finiteName: onFloat(func(x float64) float64 { return x }),
	"sqrt":     onFloat(math.Sqrt),
	"degC":     onFloat(func(x float64) float64 { return kelvin("degC", x) }),
	"degF":     onFloat(func(x float64) float64 { return kelvin("degF", x) }),
	"low":      func(args ...any) (any, error) { return args[0].(span).Low, nil },
	"high":     func(args ...any) (any, error) { return args[0].(span).High, nil },
}

const finiteName = "_finite"

// onFloat takes expr's ints as well: the literal 2 is one.
func onFloat(f func(float64) float64) func(args ...any) (any, error) {
	return func(args ...any) (any, error) {
		x, err := float(args[0])
		if err != nil {
			return nil, err
		}
		if y := f(x); finite(y) {
			return y, nil
		}
		return nil, ErrUndecided
	}
}

func float(v any) (float64, error) {
	switch v := v.(type) {
	case float64:
		return v, nil
	case int:
		return float64(v), nil
	case bool:
		if v {
			return 1, nil
		}
		return 0, nil
	}
	return 0, fmt.Errorf("%v is no number", v)
}

// guard wraps every division and power and both sides of every comparison, so
// that an infinity or NaN stops the judge instead of deciding.
type guard struct{}

func (guard) Visit(node *ast.Node) {
	n, ok := (*node).(*ast.BinaryNode)
	if !ok {
		return
	}
	switch n.Operator {
	case "/", "**", "^":
		ast.Patch(node, finiteCall(n))
	case "<", "<=", ">", ">=":
		n.Left, n.Right = finiteCall(n.Left), finiteCall(n.Right)
	}
}

func finiteCall(n ast.Node) ast.Node {
	c := &ast.CallNode{Callee: &ast.IdentifierNode{Value: finiteName}, Arguments: []ast.Node{n}}
	c.SetLocation(n.Location())
	return c
}

// withWords is the function of a call with the closed lists of the columns it
// takes from rows, so that the VM's words can be turned into codes.
func withWords(call *Expr, scope Scope) *Func {
	fn := *call.Func
	fn.Args = slices.Clone(fn.Args)
	for i, a := range fn.Args {
		if t, ok := scope.Name(call.Args[i].Name + "." + a.Column); ok && a.Type.Kind == Row {
			fn.Args[i].Type.Words = t.Words
		}
	}
	return &fn
}

// judged calls a kernel from the VM: words become codes, a row its column.
func (fn *Func) judged(args ...any) (any, error) {
	if len(args) != len(fn.Args) {
		return nil, fmt.Errorf("%s takes %d values, not %d", fn.Kernel.Name, len(fn.Args), len(args))
	}
	x := make([]float64, len(args))
	for i, v := range args {
		var err error
		if x[i], err = fn.Args[i].code(v); err != nil {
			return nil, err
		}
	}
	y := fn.Kernel.Value(x)
	if !finite(y) {
		return nil, ErrUndecided
	}
	switch fn.Result.Kind {
	case YesNo:
		return y > 0, nil
	case Word:
		list := fn.Result.Words.List
		if i := int(y); i >= 0 && i < len(list) && float64(i) == y {
			return list[i], nil
		}
		return nil, fmt.Errorf("%s gives the code %v, and %s has %d words", fn.Kernel.Name, y, fn.Result.Words.Name, len(list))
	}
	return y, nil
}

// code is an argument as a kernel takes it.
func (a FuncArg) code(v any) (float64, error) {
	if row, ok := v.(map[string]any); ok {
		v = row[a.Column]
	}
	word, ok := v.(string)
	if !ok {
		return float(v)
	}
	if a.Type.Words == nil {
		return 0, fmt.Errorf("the word %q has no code here", word)
	}
	code, ok := a.Type.Words.Code(word)
	if !ok {
		return 0, fmt.Errorf("%q is no word of %s", word, a.Type.Words.Name)
	}
	return code, nil
}
