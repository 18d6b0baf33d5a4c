package lang

import (
	"slices"
	"strconv"
	"strings"

	"wornfit/rules/fault"
)

// name checks a name that stands as a value by itself.
func (c *checker) name(f *form) *Expr {
	t, ok := c.lookUp(f)
	if !ok {
		return nil
	}
	if t.Kind == RangeKind {
		c.tell(f, f.name+" is a range", "write low("+f.name+") or high("+f.name+"), whichever is the safe end")
		return nil
	}
	return &Expr{Op: Name, Name: f.name, Type: t, At: c.s.at(f)}
}

// lookUp finds what a name stands for, and tells when it stands for nothing.
func (c *checker) lookUp(f *form) (Type, bool) {
	t, ok := c.scope.Name(f.name)
	if ok {
		return t, true
	}
	if whole, known, ok := c.hyphenated(f); ok {
		c.tell(whole, c.s.said(whole)+" is read as a subtraction", "did you mean "+known+"?")
		return Type{}, false
	}
	says, remedy := c.unknown(f.name)
	c.tell(f, says, remedy)
	return Type{}, false
}

func (c *checker) unknown(name string) (says, remedy string) {
	if _, calc := c.scope.Func(name); calc {
		return name + " is a calculation", "call it: " + name + "(...)"
	}
	switch name {
	case "yes", "no":
		return name + " is not written in expressions", "write the fact alone for yes, and not in front of it for no"
	case "degC", "degF":
		return name + " is no factor", "write " + name + "(40) for a temperature, K for a change"
	}
	if i := strings.LastIndexByte(name, '.'); i > 0 {
		if t, ok := c.scope.Name(name[:i]); ok && t.Kind == Row {
			return name[:i] + " is a row of " + t.Table + ", which has no column " + name[i+1:],
				fault.DidYouMean(name[i+1:], c.columns(name[:i]))
		}
	}
	near := slices.Clone(c.scope.Near())
	for _, u := range Units() {
		if len(u) > 1 { // every short slip is near to a unit of one letter
			near = append(near, u)
		}
	}
	return "the name " + name + " is unknown here", fault.DidYouMean(name, near)
}

// columns lists what the scope knows below a row.
func (c *checker) columns(row string) []string {
	var out []string
	for _, n := range c.scope.Near() {
		if rest, ok := strings.CutPrefix(n, row+"."); ok && !strings.Contains(rest, ".") {
			out = append(out, rest)
		}
	}
	return out
}

// column is an example of a column for a remedy.
func (c *checker) column(row string) string {
	if cols := c.columns(row); len(cols) > 0 {
		return cols[0]
	}
	return "COLUMN"
}

// hyphenated finds the whole of bush-wall around an unknown bush, when it
// would be a known name with _.
func (c *checker) hyphenated(f *form) (whole *form, known string, ok bool) {
	from, to := f.from, f.to
	for from > 0 && inHyphened(c.s.runes[from-1]) {
		from--
	}
	for to < len(c.s.runes) && inHyphened(c.s.runes[to]) {
		to++
	}
	known = strings.ReplaceAll(c.s.piece(from, to), "-", "_")
	_, ok = c.scope.Name(known)
	return &form{from: from, to: to}, known, ok && to-from > f.to-f.from
}

func inHyphened(r rune) bool {
	return r == '-' || r == '_' || r == '.' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9'
}

// call checks a call of a calculation.
func (c *checker) call(f *form) *Expr {
	fn, ok := c.scope.Func(f.name)
	if !ok {
		says, remedy := c.unknownCall(f.name)
		c.faults.Add(c.s.place(f.from, f.from+len([]rune(f.name))), c.s.Text.Key, says, remedy)
		for _, a := range f.args {
			if a.op != wordForm {
				c.expr(a, nil)
			}
		}
		return nil
	}
	whole := c.count(f, len(fn.Args))
	args := make([]*Expr, len(f.args))
	for i := 0; i < len(f.args) && i < len(fn.Args); i++ {
		args[i] = c.argument(f.args[i], fn, i)
		whole = whole && args[i] != nil
	}
	if !whole {
		return nil
	}
	e := c.node(f, Call, fn.Result, args...)
	e.Name, e.Func = f.name, fn
	return e
}

func (c *checker) unknownCall(name string) (says, remedy string) {
	_, value := c.scope.Name(name)
	if _, unit := unitByName[name]; value || unit {
		return name + " is a value, not a calculation", "write " + name + "*( ) to multiply"
	}
	if s, ok := c.scope.(interface{ Slow(string) bool }); ok && s.Slow(name) {
		return name + " is slow, and a search would ask for it thousands of times", "let a cheap estimate stand here, and ask it in a limit with after: yes"
	}
	callable := []string{"min", "max", "abs", "sqrt", "low", "high", "degC", "degF"}
	for _, n := range c.scope.Near() {
		if _, ok := c.scope.Func(n); ok {
			callable = append(callable, n)
		}
	}
	return "the calculation " + name + " is unknown", fault.DidYouMean(name, callable)
}

// argument checks one argument of a calculation.
func (c *checker) argument(f *form, fn *Func, i int) *Expr {
	want := fn.Args[i].Type
	e := c.expr(f, want.Words)
	if e == nil || sameType(e.Type, want) {
		return e
	}
	name := "argument " + strconv.Itoa(i+1)
	if i < len(fn.Kernel.Args) && fn.Kernel.Args[i].Name != "" {
		name = fn.Kernel.Args[i].Name
	}
	remedy := kindRemedy(want)
	if want.Kind == NumberKind && e.Type.Kind == NumberKind {
		remedy = zeroRemedy(e, want)
	}
	c.tell(f, c.s.said(f)+" is "+say(e.Type)+", and "+name+" is "+say(want), remedy)
	return nil
}

// count tells a wrong number of arguments, and goes on.
func (c *checker) count(f *form, want int) bool {
	if len(f.args) == want {
		return true
	}
	if want == 1 {
		c.tell(f, f.name+" takes one value, not "+strconv.Itoa(len(f.args)), "write "+f.name+"(x)")
	} else {
		c.tell(f, f.name+" takes "+strconv.Itoa(want)+" values, not "+strconv.Itoa(len(f.args)), "write "+f.name+"("+c.params(f.name, want)+")")
	}
	return false
}

func (c *checker) params(fn string, n int) string {
	names := make([]string, n)
	f, _ := c.scope.Func(fn)
	for i := range names {
		names[i] = string(rune('a' + i%26))
		if i < len(f.Kernel.Args) && f.Kernel.Args[i].Name != "" {
			names[i] = f.Kernel.Args[i].Name
		}
	}
	return strings.Join(names, ", ")
}
