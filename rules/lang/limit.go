package lang

import (
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
)

// Sense is the comparison of a limit.
type Sense uint8

const (
	AtMost  Sense = iota // left <= right
	AtLeast              // left >= right
)

// CheckLimit checks an expression that must be exactly one <= or >= between
// two numbers of one kind. One comparison is what gives a limit a margin, an
// edge and a slope.
func (s *Source) CheckLimit(scope Scope) (left, right *Expr, sense Sense, faults fault.List) {
	if s.root == nil {
		return nil, nil, AtMost, nil
	}
	c := &checker{s: s, scope: scope}
	f := s.root
	switch f.op {
	case LessEq, GreaterEq:
		if f.op == GreaterEq {
			sense = AtLeast
		}
		if e := c.expr(f, nil); e != nil && c.plainSides(f) {
			return e.Args[0], e.Args[1], sense, c.done()
		}
	case badForm:
		c.expr(f, nil)
	default:
		c.noLimit(f)
		c.expr(f, nil)
	}
	return nil, nil, sense, c.done()
}

// plainSides tells a comparison inside a side of a limit.
func (c *checker) plainSides(f *form) bool {
	for _, a := range f.args {
		if inner := comparison(a); inner != nil {
			c.tell(inner, "a comparison inside a limit", "give the side a name under define, or split the limit by when")
			return false
		}
	}
	return true
}

func comparison(f *form) *form {
	switch f.op {
	case LessEq, GreaterEq, Less, Greater, Equal, NotEqual, inForm:
		return f
	}
	for _, a := range f.args {
		if found := comparison(a); found != nil {
			return found
		}
	}
	return nil
}

func (c *checker) noLimit(f *form) {
	switch f.op {
	case Less, Greater:
		sign := map[Op]string{Less: "<", Greater: ">"}[f.op]
		c.tell(f, "a limit with "+sign, "write "+sign+"=: a size on the edge is kept")
	case Equal, NotEqual:
		c.tell(f, "a limit that is no <= or >=", "a fact stands under needs; between sizes write <= or >=")
	case And:
		c.tell(f, "two comparisons in one limit", "write two limits, each with its own id and why")
	case Or:
		c.tell(f, "a choice inside a limit", "split it: one limit for each case, told apart by when")
	case Not:
		c.tell(f, "not in front of a limit", "turn the comparison round")
	default:
		c.tell(f, "a limit without a comparison", "write one <= or >= between two numbers")
	}
}

// CheckRange checks low .. high, the range of a dimension: two numbers of the
// kind given.
func (s *Source) CheckRange(scope Scope, dim quantity.Dim) (low, high *Expr, faults fault.List) {
	if s.root == nil {
		return nil, nil, nil
	}
	c := &checker{s: s, scope: scope}
	f := s.root
	if f.op != rangeForm {
		if f.op != badForm {
			c.tell(f, "a range with one end", "write LOW .. HIGH")
		}
		c.expr(f, nil)
		return nil, nil, c.done()
	}
	want := Type{Dim: dim}
	low, high = c.value(f.args[0]), c.value(f.args[1])
	fit := low != nil && c.wanted(f.args[0], low, want)
	if high == nil || !c.wanted(f.args[1], high, want) || !fit {
		return nil, nil, c.done()
	}
	return low, high, c.done()
}

// Sides gives the two sides of a comparison or of a range as expressions of
// their own, so that a referee can weigh the numbers and not only the verdict.
// ok is false for any other expression.
func (s *Source) Sides() (left, right *Source, ok bool) {
	if s.root == nil {
		return nil, nil, false
	}
	switch s.root.op {
	case LessEq, GreaterEq, Less, Greater, rangeForm:
		return s.part(s.root.args[0]), s.part(s.root.args[1]), true
	}
	return nil, nil, false
}

func (s *Source) part(f *form) *Source {
	out, _ := Parse(Text{Source: s.piece(f.from, f.to), At: s.at(f), Key: s.Text.Key})
	return out
}
