package lang

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/types"
	"github.com/expr-lang/expr/vm"

	"wornfit/rules/fault"
)

// ErrUndecided is what a Judge answers where a division by zero, a root of a
// negative or a calculation outside its range stands in the way. expr's VM
// would go on with an infinity, for which `x/0 > 1` is true; our programs carry
// the infinity or NaN in their registers. For both, what is not finite decides
// nothing: a caller skips such a row, it never counts as kept or broken.
var ErrUndecided = errors.New("not finite, so undecided")

// Judge runs an expression as expr's own compiler and VM understand it. It
// holds our programs to expr in tests and in `knowledge check`; it is many
// times slower and never used to answer.
type Judge struct {
	program *vm.Program
	slots   []slot
	fixed   map[string]any // units and pi
	machine vm.VM
}

// slot is a value an expression needs, under the name a Resolver is asked for:
// hub.outside, low(turn_off), bush_material.family.
type slot struct {
	name string
	path []string
	typ  Type
}

// span is the value of a ranged number inside the VM.
type span struct{ Low, High float64 }

// Referee compiles the text, as written, with expr's compiler. It refuses an
// expression that has a fault in the scope.
func (s *Source) Referee(scope Scope) (*Judge, error) {
	e, faults := s.Infer(scope)
	return s.judge(scope, e, faults)
}

// RefereeAs is Referee for an expression whose words come from the type wanted.
func (s *Source) RefereeAs(scope Scope, want Type) (*Judge, error) {
	e, faults := s.Check(scope, want)
	return s.judge(scope, e, faults)
}

func (s *Source) judge(scope Scope, e *Expr, faults fault.List) (*Judge, error) {
	if err := faults.Err(); err != nil {
		return nil, err
	}
	if e == nil {
		return nil, errors.New(s.Text.At.String() + ": the expression has faults that Parse told")
	}
	j := &Judge{fixed: map[string]any{"pi": float64(pi)}}
	for _, u := range unitTable {
		j.fixed[u.Name] = u.Factor
	}
	options := []expr.Option{expr.Patch(guard{})}
	for name, f := range judgeFuncs {
		options = append(options, expr.Function(name, f))
	}
	called := map[string]bool{}
	e.each(func(n *Expr) {
		j.need(n, scope)
		if n.Op == Call && !called[n.Name] {
			called[n.Name] = true
			options = append(options, expr.Function(n.Name, withWords(n, scope).judged))
		}
	})
	env, err := j.env()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", s.Text.At, err)
	}
	j.program, err = expr.Compile(s.Text.Source, append(options, expr.Env(env))...)
	if err != nil {
		return nil, fmt.Errorf("%s: expr refuses what was checked: %w", s.Text.At, err)
	}
	return j, nil
}

// need notes the values a node takes from outside.
func (j *Judge) need(n *Expr, scope Scope) {
	switch n.Op {
	case Name:
		if n.Type.Kind != Row && n.Type.Kind != RangeKind {
			j.slot(n.Name, n.Type)
		}
	case Low:
		j.slot("low("+n.Args[0].Name+")", n.Type)
	case High:
		j.slot("high("+n.Args[0].Name+")", n.Type)
	case Call:
		for i, a := range n.Func.Args {
			if a.Type.Kind == Row {
				full := n.Args[i].Name + "." + a.Column
				t, ok := scope.Name(full)
				if !ok {
					t = Type{} // a code the kernel knows
				}
				j.slot(full, t)
			}
		}
	}
}

func (j *Judge) slot(name string, t Type) {
	if !slices.ContainsFunc(j.slots, func(s slot) bool { return s.name == name }) {
		j.slots = append(j.slots, slot{name, strings.Split(rangeName(name), "."), t})
	}
}

// rangeName is x of low(x) and high(x), and any other name itself.
func rangeName(name string) string {
	for _, end := range []string{"low(", "high("} {
		if rest, ok := strings.CutPrefix(name, end); ok {
			return strings.TrimSuffix(rest, ")")
		}
	}
	return name
}

// Names lists the values Run needs, under the names a Resolver is asked for,
// with their types; a range is asked for as low(NAME) and high(NAME).
func (j *Judge) Names(f func(name string, of Type)) {
	for _, s := range j.slots {
		f(s.name, s.typ)
	}
}

// env is the strict environment of the compiler: every name in its place, so
// that a misspelt one is refused and never read as zero.
func (j *Judge) env() (types.Map, error) {
	env := types.Map{}
	for name := range j.fixed {
		env[name] = types.Float64
	}
	for _, s := range j.slots {
		level := env
		for _, p := range s.path[:len(s.path)-1] {
			next, ok := level[p]
			if !ok {
				next = types.Map{}
				level[p] = next
			}
			m, ok := next.(types.Map)
			if !ok {
				return nil, fmt.Errorf("%s stands for a value and for a group of values (%s)", p, s.name)
			}
			level = m
		}
		last := s.path[len(s.path)-1]
		if _, group := level[last].(types.Map); group {
			return nil, fmt.Errorf("%s stands for a value and for a group of values", s.name)
		}
		level[last] = judgeType(s)
	}
	return env, nil
}

func judgeType(s slot) types.Type {
	switch {
	case s.name != rangeName(s.name):
		return types.TypeOf(span{})
	case s.typ.Kind == YesNo:
		return types.Bool
	case s.typ.Kind == Word:
		return types.String
	}
	return types.Float64
}

// Run gives the value of the expression for values under the names of Names:
// numbers as float64, yes or no as bool, words as strings. The answer is a
// float64, a bool or a string; the error is ErrUndecided where nothing finite
// comes out. A Judge runs one call at a time.
func (j *Judge) Run(values map[string]any) (any, error) {
	env := make(map[string]any, len(j.fixed)+len(j.slots))
	for name, v := range j.fixed {
		env[name] = v
	}
	for _, s := range j.slots {
		if err := s.put(env, values); err != nil {
			return nil, err
		}
	}
	out, err := j.machine.Run(j.program, env)
	switch {
	case errors.Is(err, ErrUndecided):
		return nil, ErrUndecided
	case err != nil:
		return nil, err
	}
	if n, ok := out.(int); ok {
		out = float64(n)
	}
	if f, ok := out.(float64); ok && !finite(f) {
		return nil, ErrUndecided
	}
	return out, nil
}

// put sets one value in the nested maps of the VM.
func (s slot) put(env, values map[string]any) error {
	v, ok := values[s.name]
	if !ok {
		return fmt.Errorf("no value for %s", s.name)
	}
	if f, number := v.(float64); number && !finite(f) {
		return ErrUndecided
	}
	level := env
	for _, p := range s.path[:len(s.path)-1] {
		next, ok := level[p].(map[string]any)
		if !ok {
			next = map[string]any{}
			level[p] = next
		}
		level = next
	}
	last := s.path[len(s.path)-1]
	if s.name == rangeName(s.name) {
		level[last] = v
		return nil
	}
	end, ok := v.(float64)
	if !ok {
		return fmt.Errorf("%s is %v; a range has numbers", s.name, v)
	}
	both, _ := level[last].(span)
	if strings.HasPrefix(s.name, "low(") {
		both.Low = end
	} else {
		both.High = end
	}
	level[last] = both
	return nil
}

func finite(f float64) bool { return !math.IsNaN(f) && !math.IsInf(f, 0) }
