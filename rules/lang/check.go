package lang

import (
	"slices"

	"wornfit/rules/fault"
)

// checker types one expression against a scope. A method that returns nil has
// told why, or met a form that was told by Parse; the rest is still checked, so
// that one run tells all.
type checker struct {
	s      *Source
	scope  Scope
	faults fault.List
}

// Infer checks an expression whose type is what it comes to. The Expr is nil
// when anything is wrong.
func (s *Source) Infer(scope Scope) (*Expr, fault.List) {
	if s.root == nil {
		return nil, nil
	}
	c := &checker{s: s, scope: scope}
	e := c.expr(s.root, nil)
	return e, c.done()
}

// Check checks an expression that must come to a value of the type wanted. The
// Expr is nil when anything is wrong; where Parse has told a fault already, the
// list may be empty.
func (s *Source) Check(scope Scope, want Type) (*Expr, fault.List) {
	if s.root == nil {
		return nil, nil
	}
	c := &checker{s: s, scope: scope}
	e := c.expr(s.root, want.Words)
	if e != nil && !c.wanted(s.root, e, want) {
		e = nil
	}
	return e, c.done()
}

func (c *checker) done() fault.List {
	if len(c.faults) > 1 {
		c.faults.Sort()
	}
	return c.faults
}

func (c *checker) tell(f *form, says, remedy string) {
	c.faults.Add(c.s.at(f), c.s.Text.Key, says, remedy)
}

// wanted tells when an expression does not come to what its place asks for.
func (c *checker) wanted(f *form, e *Expr, want Type) bool {
	switch {
	case sameType(e.Type, want):
		return true
	case want.Kind == NumberKind && e.Type.Kind == NumberKind:
		c.tell(f, c.s.said(f)+" is "+sayDim(e.Type.Dim)+", and "+sayDim(want.Dim)+" is wanted here", zeroRemedy(e, want))
	default:
		c.tell(f, c.s.said(f)+" is "+say(e.Type)+", and "+say(want)+" is wanted here", kindRemedy(want))
	}
	return false
}

func zeroRemedy(e *Expr, want Type) string {
	if zero := zeroOf(want.Dim); e.Op == Const && e.Value == 0 && zero != "" {
		return "write " + zero
	}
	return "look for a factor left out or one too many"
}

func kindRemedy(want Type) string {
	switch want.Kind {
	case YesNo:
		return "compare it, or name something that is yes or no"
	case Word:
		return "write one of its words in quotes"
	case Row:
		return "name a row, such as hub.material"
	}
	return "write a number"
}

func sameType(a, b Type) bool {
	if a.Kind != b.Kind {
		return false
	}
	switch a.Kind {
	case NumberKind, RangeKind:
		return a.Dim == b.Dim
	case Word:
		return sameWords(a.Words, b.Words)
	case Row:
		return a.Table == b.Table || a.Table == "" || b.Table == ""
	}
	return true
}

func sameWords(a, b *Words) bool {
	return a == b || a != nil && b != nil && slices.Equal(a.List, b.List)
}

// say names a type in a sentence.
func say(t Type) string {
	switch t.Kind {
	case NumberKind:
		return sayDim(t.Dim)
	case YesNo:
		return "yes or no"
	case Word:
		return "a word"
	case Row:
		return "a row of " + t.Table
	}
	return "a range"
}

// expr checks a form. words is the closed list a word written here comes from,
// nil where no word may stand.
func (c *checker) expr(f *form, words *Words) *Expr {
	switch f.op {
	case Const:
		return &Expr{Op: Const, Value: f.value, Type: f.typ, At: c.s.at(f)}
	case Name:
		return c.name(f)
	case wordForm:
		return c.word(f, words)
	case Neg, Abs, Sqrt:
		return c.single(f)
	case Add, Sub, Mul, Div, Pow, LessEq, GreaterEq, Less, Greater:
		return c.pair(f)
	case Min, Max:
		return c.extreme(f)
	case And, Or, Not:
		return c.logic(f)
	case Equal, NotEqual:
		return c.equal(f)
	case inForm:
		return c.among(f)
	case Cond:
		return c.cond(f, words)
	case Low, High:
		return c.end(f)
	case Call:
		return c.call(f)
	case rangeForm:
		c.tell(f, "a span of two sizes", "it stands only as the range of a dimension")
	}
	for _, a := range f.args {
		if a.op != wordForm {
			c.expr(a, nil)
		}
	}
	return nil
}

func (c *checker) node(f *form, op Op, t Type, args ...*Expr) *Expr {
	return &Expr{Op: op, Type: t, Args: args, At: c.s.at(f)}
}

// value checks a form that must be a number of any kind.
func (c *checker) value(f *form) *Expr {
	e := c.expr(f, nil)
	if e == nil || e.Type.Kind == NumberKind {
		return e
	}
	if e.Type.Kind == Row {
		c.tell(f, c.s.said(f)+" is a row of "+e.Type.Table+", not a number", "name one of its columns: "+c.s.said(f)+"."+c.column(e.Name))
	} else {
		c.tell(f, c.s.said(f)+" is "+say(e.Type)+", not a number", "write what is to be compared or reckoned with")
	}
	return nil
}

// truth checks a form that must be yes or no.
func (c *checker) truth(f *form) *Expr {
	e := c.expr(f, nil)
	if e == nil || e.Type.Kind == YesNo {
		return e
	}
	remedy := "compare it with something"
	if e.Type.Kind == Word {
		remedy = "compare it with one of its words: " + c.s.said(f) + ` == "` + e.Type.Words.List[0] + `"`
	}
	c.tell(f, c.s.said(f)+" is "+say(e.Type)+", not yes or no", remedy)
	return nil
}

func (c *checker) logic(f *form) *Expr {
	args := make([]*Expr, len(f.args))
	whole := true
	for i, a := range f.args {
		args[i] = c.truth(a)
		whole = whole && args[i] != nil
	}
	if !whole {
		return nil
	}
	return c.node(f, f.op, Type{Kind: YesNo}, args...)
}

// cond checks test ? this : that. A word on one side takes its list from the other.
func (c *checker) cond(f *form, words *Words) *Expr {
	test := c.truth(f.args[0])
	first, second := f.args[1], f.args[2]
	if first.op == wordForm && words == nil {
		first, second = second, first
	}
	a := c.expr(first, words)
	if words == nil && a != nil {
		words = a.Type.Words
	}
	b := c.expr(second, words)
	if test == nil || a == nil || b == nil {
		return nil
	}
	if first != f.args[1] {
		a, b = b, a
	}
	switch {
	case a.Type.Kind == Row || a.Type.Kind == RangeKind:
		c.tell(f.args[1], c.s.said(f.args[1])+" is "+say(a.Type), "choose between numbers, words or yes and no")
		return nil
	case !sameType(a.Type, b.Type):
		c.tell(f, "either "+say(a.Type)+" or "+say(b.Type)+", as the test falls", "both sides of the : must be alike")
		return nil
	}
	return c.node(f, Cond, a.Type, test, a, b)
}
