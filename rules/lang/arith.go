package lang

import "wornfit/calc/quantity"

// single checks -x, abs(x) and sqrt(x).
func (c *checker) single(f *form) *Expr {
	if !c.count(f, 1) {
		return nil
	}
	x := c.value(f.args[0])
	if x == nil || !c.ratio(f.args[0], x) {
		return nil
	}
	t := x.Type
	if f.op == Sqrt {
		root, ok := rootDim(t.Dim)
		if !ok {
			c.tell(f, "the square root of "+sayDim(t.Dim), "take it of a square, such as area or length**2")
			return nil
		}
		t.Dim = root
	}
	return c.node(f, f.op, t, x)
}

// ratio tells when a reading on a scale stands where only quantities may.
func (c *checker) ratio(f *form, e *Expr) bool {
	switch e.Type.Dim.Scale {
	case quantity.Ratio:
		return true
	case quantity.Absolute:
		c.tell(f, c.s.said(f)+" is a temperature on a scale, which cannot be multiplied or divided", "take a change of temperature: ("+c.s.said(f)+" - degC(20))")
	default:
		c.tell(f, c.s.said(f)+" is a hardness, which can only be compared", "compare it with a hardness of the same scale")
	}
	return false
}

// pair checks an operator between two numbers.
func (c *checker) pair(f *form) *Expr {
	a, b := c.value(f.args[0]), c.value(f.args[1])
	if a == nil || b == nil {
		return nil
	}
	switch f.op {
	case Add, Sub:
		return c.sum(f, a, b)
	case Mul, Div, Pow:
		return c.product(f, a, b)
	}
	if a.Type.Dim != b.Type.Dim {
		c.unlike(f, a, b, "compared")
		return nil
	}
	return c.node(f, f.op, Type{Kind: YesNo}, a, b)
}

func (c *checker) sum(f *form, a, b *Expr) *Expr {
	dim, ok := sumDim(f.op, a.Type.Dim, b.Type.Dim)
	switch done := map[Op]string{Add: "added", Sub: "subtracted"}[f.op]; {
	case ok:
		return c.node(f, f.op, Type{Dim: dim}, a, b)
	case a.Type.Dim == b.Type.Dim && a.Type.Dim == quantity.TemperatureDim:
		c.tell(f, "two temperatures on a scale are added", "add a change of temperature, or subtract one from the other")
	case a.Type.Dim == b.Type.Dim:
		c.tell(f, "hardness can only be compared, not "+done, "compare the two")
	default:
		c.unlike(f, a, b, done)
	}
	return nil
}

// unlike tells two kinds of quantity that do not go together.
func (c *checker) unlike(f *form, a, b *Expr, done string) {
	x, y := f.args[0], f.args[1]
	remedy := "both must be the same kind of quantity"
	hot, change := quantity.TemperatureDim, quantity.ChangeDim
	switch {
	case isZero(a) && zeroOf(b.Type.Dim) != "":
		remedy = "write " + zeroOf(b.Type.Dim)
	case isZero(b) && zeroOf(a.Type.Dim) != "":
		remedy = "write " + zeroOf(a.Type.Dim)
	case a.Type.Dim == hot && b.Type.Dim == change, a.Type.Dim == change && b.Type.Dim == hot:
		remedy = "K is a change; a temperature is written degC(40) or degF(100)"
	case a.Type.Dim.Scale > quantity.Absolute && b.Type.Dim.Scale > quantity.Absolute:
		remedy = "the hardness scales do not convert: state both in one"
	}
	c.tell(f, c.s.said(x)+" is "+sayDim(a.Type.Dim)+", "+c.s.said(y)+" is "+sayDim(b.Type.Dim)+": they cannot be "+done, remedy)
}

func isZero(e *Expr) bool {
	return e.Op == Const && e.Value == 0 && e.Type.Dim == quantity.Number
}

func (c *checker) product(f *form, a, b *Expr) *Expr {
	fit, fitting := c.ratio(f.args[0], a), c.ratio(f.args[1], b)
	if !fit || !fitting {
		return nil
	}
	var dim quantity.Dim
	var ok bool
	switch f.op {
	case Mul:
		dim, ok = timesDim(a.Type.Dim, b.Type.Dim)
	case Div:
		dim, ok = overDim(a.Type.Dim, b.Type.Dim)
	default:
		dim, ok = powDim(a.Type.Dim, int(b.Value))
	}
	if f.op == Div && b.Op == Const && b.Value == 0 {
		c.tell(f, "a division by zero", "divide by something else")
		return nil
	}
	if !ok {
		c.tell(f, "units piled up beyond the 12th power", "look for a power too many")
		return nil
	}
	return c.node(f, f.op, Type{Dim: dim}, a, b)
}

// extreme checks min and max of two or more alike.
func (c *checker) extreme(f *form) *Expr {
	if len(f.args) < 2 {
		c.tell(f, f.name+" of one value", "give it two or more")
		for _, a := range f.args {
			c.value(a)
		}
		return nil
	}
	args, whole := make([]*Expr, len(f.args)), true
	for i, a := range f.args {
		args[i] = c.value(a)
		whole = whole && args[i] != nil
	}
	if !whole {
		return nil
	}
	out := args[0]
	for i, e := range args[1:] {
		if e.Type.Dim != out.Type.Dim {
			c.unlike(&form{args: []*form{f.args[0], f.args[i+1]}, from: f.from, to: f.to}, args[0], e, "compared")
			return nil
		}
		out = c.node(f, f.op, out.Type, out, e)
	}
	return out
}

// end checks low(x) and high(x).
func (c *checker) end(f *form) *Expr {
	if !c.count(f, 1) {
		return nil
	}
	x := f.args[0]
	if x.op != Name {
		if x.op != badForm {
			c.tell(x, f.name+" takes the name of a range", "write "+f.name+"(NAME) with a number of the numbers table written as a range")
		}
		for _, a := range x.args {
			if a.op != wordForm {
				c.expr(a, nil)
			}
		}
		return nil
	}
	t, ok := c.lookUp(x)
	switch {
	case !ok:
		return nil
	case t.Kind == NumberKind:
		c.tell(f, x.name+" is one number, not a range", "write "+x.name)
		return nil
	case t.Kind != RangeKind:
		c.tell(f, x.name+" is "+say(t)+", not a range", f.name+" takes a number of the numbers table written as a range")
		return nil
	}
	inner := &Expr{Op: Name, Name: x.name, Type: t, At: c.s.at(x)}
	return c.node(f, f.op, Type{Dim: t.Dim}, inner)
}
