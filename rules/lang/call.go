package lang

import "github.com/expr-lang/expr/ast"

// builtins are expr's own functions that rules may call; own are ours.
var builtins = map[string]Op{"min": Min, "max": Max, "abs": Abs}
var own = map[string]Op{"sqrt": Sqrt, "low": Low, "high": High}

// call reads f(a, b). Which kernels there are is the scope's to say.
func (r *reader) call(name string, args []ast.Node, from int) *form {
	f := &form{op: Call, name: name, from: from, to: from + len([]rune(name))}
	if _, absolute := scales[name]; absolute {
		f.to = r.s.seek(f.to, 1, ")") + 1
		return r.temperature(name, args, f)
	}
	if op, ok := builtins[name]; ok {
		f.op = op
	} else if op, ok := own[name]; ok {
		f.op = op
	}
	for _, a := range args {
		f.args = append(f.args, r.form(a))
	}
	r.callForm(f)
	f.from, f.to = r.callSpan(f)
	for _, a := range f.args {
		r.noLoneUnit(a)
	}
	return f
}

// callForm tells x | f() and ::f(x), which expr reads into the same tree as f(x).
func (r *reader) callForm(f *form) {
	switch {
	case len(f.args) > 0 && f.args[0].from < f.from:
		r.tell(f.args[0].from, f.to, "| hands a value on to "+f.name, "write "+f.name+"("+r.s.said(f.args[0])+")")
		f.op = badForm
	case r.s.piece(f.from-2, f.from) == "::":
		r.tell(f.from-2, f.to, ":: in front of "+f.name, "leave it out")
		f.op = badForm
	}
}

func (r *reader) callSpan(f *form) (from, to int) {
	from, to = f.from, f.to
	for _, a := range f.args {
		from, to = min(from, a.from), max(to, a.to)
	}
	if len(f.args) == 0 {
		return from, min(r.s.seek(to, 1, ")")+1, len(r.s.runes))
	}
	return r.s.within(from, to)
}

// in reads x in ["a", "b"].
func (r *reader) in(n *ast.BinaryNode) *form {
	left := r.form(n.Left)
	f := &form{op: inForm, args: []*form{left}, from: left.from, to: left.to}
	list, ok := n.Right.(*ast.ArrayNode)
	if !ok {
		at := n.Location()
		r.tell(at.From, at.To, "in wants a list of words", `write in ["this", "that"]; the unit is inch, and a span of numbers is two limits`)
		f.op = badForm
		return f
	}
	f.to = r.s.seek(list.Location().From, 1, "]") + 1
	for _, w := range list.Nodes {
		if s, ok := w.(*ast.StringNode); ok {
			f.args = append(f.args, r.form(s))
			f.to = r.s.seek(s.Location().To, 1, "]") + 1
			continue
		}
		at := w.Location()
		r.tell(at.From, at.To, "a list after in holds words in quotes only", `write "word"`)
		f.op = badForm
	}
	if len(list.Nodes) == 0 {
		r.tell(f.from, f.to, "an empty list, in which nothing is", "name the words")
		f.op = badForm
	}
	if r.looseNot(n, left) {
		r.tell(f.from, f.to, "not takes only "+r.s.said(left.args[0])+", before in is looked at",
			"write "+r.s.said(left.args[0])+" not in "+r.s.piece(list.Location().From, f.to))
		f.op, f.args[0] = badForm, left.args[0]
	}
	if f.op == badForm {
		f.args = f.args[:1]
	}
	return f
}
