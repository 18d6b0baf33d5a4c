package rules

import (
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

// An expression that rests on a name which is itself at fault would be told for
// nothing: the name has been told. The loader's `shaky` says that this happened
// in the check going on.

// parse reads a scalar as an expression; nil when it cannot be one.
func (l *loader) parse(n yamldoc.Node) *lang.Source {
	text := n.Text()
	switch {
	case text == "":
		if n.IsScalar() {
			n.Fault("an expression is missing", "write one in single quotes")
		}
		return nil
	case n.Block():
		n.Fault("an expression stands in a block (| or >)", "write it on one line in single quotes")
		return nil
	case n.Comment() != "" && !n.Quoted():
		n.Fault("an expression is not quoted and ends in a comment: what follows # is not read", "put the expression in single quotes")
		return nil
	case !n.Straight():
		n.Fault("an expression goes over several lines, or holds escapes", "write it on one line in single quotes, or give its parts names under define")
		return nil
	}
	src, faults := lang.Parse(lang.Text{Source: text, At: n.TextAt(), Key: n.Key})
	l.faults = append(l.faults, faults...)
	if len(faults) > 0 {
		return nil
	}
	return src
}

// quietly runs a check and tells its faults, unless it met a name at fault.
// sound is false when it did, or when there were faults.
func (l *loader) quietly(check func() fault.List) (sound bool) {
	saved := l.shaky
	l.shaky = false
	faults := check()
	sound = !l.shaky && len(faults) == 0
	if !l.shaky {
		l.faults = append(l.faults, faults...)
	}
	l.shaky = saved
	return sound
}

// expr reads an expression of the type wanted; nil when it is absent or at
// fault, which is told.
func (s *scope) expr(n yamldoc.Node, want lang.Type) *lang.Expr {
	if !n.Present() {
		return nil
	}
	return s.check(s.l.parse(n), func(src *lang.Source) (*lang.Expr, fault.List) { return src.Check(s, want) })
}

// infer reads an expression whose type is what it comes to.
func (s *scope) infer(n yamldoc.Node) *lang.Expr {
	if !n.Present() {
		return nil
	}
	return s.check(s.l.parse(n), func(src *lang.Source) (*lang.Expr, fault.List) { return src.Infer(s) })
}

func (s *scope) check(src *lang.Source, check func(*lang.Source) (*lang.Expr, fault.List)) (e *lang.Expr) {
	if src == nil {
		return nil
	}
	if !s.l.quietly(func() (faults fault.List) { e, faults = check(src); return faults }) {
		return nil
	}
	return e
}

// between reads LOW .. HIGH.
func (s *scope) between(n yamldoc.Node, dim quantity.Dim) (low, high *lang.Expr) {
	src := s.l.parse(n)
	if src == nil || !s.l.quietly(func() (faults fault.List) { low, high, faults = src.CheckRange(s, dim); return faults }) {
		return nil, nil
	}
	return low, high
}

var yesNo = lang.Type{Kind: lang.YesNo}
