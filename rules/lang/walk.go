package lang

// Names calls f for every name the expression uses, in reading order.
func (e *Expr) Names(f func(name string, of Type)) {
	if e.Op == Name {
		f(e.Name, e.Type)
	}
	for _, a := range e.Args {
		a.Names(f)
	}
}

// each calls f for every node, arguments after what takes them.
func (e *Expr) each(f func(*Expr)) {
	f(e)
	for _, a := range e.Args {
		a.each(f)
	}
}
