package lang

import (
	"slices"

	"wornfit/rules/fault"
)

// word checks a word in quotes against the closed list it must come from.
func (c *checker) word(f *form, words *Words) *Expr {
	if words == nil {
		c.tell(f, `the word "`+f.name+`" stands where none can be`, "compare something with it by == or in")
		return nil
	}
	code, ok := words.Code(f.name)
	if !ok {
		c.tell(f, `"`+f.name+`" is no word of `+words.Name, fault.DidYouMean(f.name, words.List))
		return nil
	}
	return &Expr{Op: Const, Value: code, Type: Type{Kind: Word, Words: words}, At: c.s.at(f)}
}

// equal checks == and !=: words, or two facts that are yes or no.
func (c *checker) equal(f *form) *Expr {
	x, y := f.args[0], f.args[1]
	switch {
	case x.op == wordForm && y.op == wordForm:
		c.tell(f, "two words are compared with each other", "name what one of them is said of")
		return nil
	case x.op == wordForm:
		return c.ordered(f, c.against(y, x), true)
	case y.op == wordForm:
		return c.ordered(f, c.against(x, y), false)
	}
	if c.unquoted(x, y) || c.unquoted(y, x) {
		return nil
	}
	a, b := c.expr(x, nil), c.expr(y, nil)
	if a == nil || b == nil {
		return nil
	}
	return c.alike(f, a, b)
}

// alike checks two sides of which none is a word in quotes.
func (c *checker) alike(f *form, a, b *Expr) *Expr {
	x, y := f.args[0], f.args[1]
	switch {
	case a.Type.Kind == NumberKind && b.Type.Kind == NumberKind:
		c.tell(f, "two numbers are never exactly equal", "write <= or >=")
	case x.literal || y.literal:
		c.tell(f, "a comparison with true or false", yesRemedy(c.s, f))
	case a.Type.Kind == Row || b.Type.Kind == Row || a.Type.Kind == RangeKind || b.Type.Kind == RangeKind:
		c.tell(f, "rows and ranges cannot be compared", "compare a column, or low(x) and high(x)")
	case a.Type.Kind == Word && b.Type.Kind == Word && !sameType(a.Type, b.Type):
		c.tell(f, a.Type.Words.Name+" and "+b.Type.Words.Name+" have different words", "compare two of one list")
	case a.Type.Kind != b.Type.Kind:
		c.tell(f, c.s.said(x)+" is "+say(a.Type)+", "+c.s.said(y)+" is "+say(b.Type)+": they cannot be compared", "compare two of a kind")
	default:
		return c.node(f, f.op, Type{Kind: YesNo}, a, b)
	}
	return nil
}

// yesRemedy writes x == true as x, and x == false as not x.
func yesRemedy(s *Source, f *form) string {
	fact, word := f.args[0], f.args[1]
	if fact.literal {
		fact, word = word, fact
	}
	if (word.value == 1) == (f.op == Equal) {
		return "write " + s.said(fact)
	}
	return "write not " + s.said(fact)
}

// ordered puts the two sides back as written.
func (c *checker) ordered(f *form, sides []*Expr, wordFirst bool) *Expr {
	if sides == nil {
		return nil
	}
	if wordFirst {
		sides[0], sides[1] = sides[1], sides[0]
	}
	return c.node(f, f.op, Type{Kind: YesNo}, sides...)
}

// against checks x beside a word in quotes; nil when either is wrong.
func (c *checker) against(x, word *form) []*Expr {
	e := c.expr(x, nil)
	switch {
	case e == nil:
		return nil
	case e.Type.Kind == YesNo:
		c.tell(x, c.s.said(x)+" is yes or no, not a word", "write "+c.s.said(x)+" or not "+c.s.said(x))
		return nil
	case e.Type.Kind != Word:
		c.tell(x, c.s.said(x)+" is "+say(e.Type)+", not a word", "compare it with one of its own kind")
		return nil
	}
	w := c.word(word, e.Type.Words)
	if w == nil {
		return nil
	}
	return []*Expr{e, w}
}

// unquoted tells duty.shock == heavy, where heavy lacks its quotes.
func (c *checker) unquoted(x, bare *form) bool {
	if bare.op != Name || x.op != Name {
		return false
	}
	if _, known := c.scope.Name(bare.name); known {
		return false
	}
	t, ok := c.scope.Name(x.name)
	if !ok || t.Kind != Word || !slices.Contains(t.Words.List, bare.name) {
		return false
	}
	c.tell(bare, bare.name+" is a word of "+t.Words.Name+" without its quotes", `write "`+bare.name+`"`)
	return true
}

// among checks x in ["a", "b"] into x == "a" or x == "b".
func (c *checker) among(f *form) *Expr {
	x := c.expr(f.args[0], nil)
	if x == nil {
		return nil
	}
	if x.Type.Kind != Word {
		c.tell(f.args[0], c.s.said(f.args[0])+" is "+say(x.Type)+", not a word", "in is for words; a span of numbers is two limits")
		return nil
	}
	var out *Expr
	whole := true
	for _, a := range f.args[1:] {
		w := c.word(a, x.Type.Words)
		if w == nil {
			whole = false
			continue
		}
		one := c.node(f, Equal, Type{Kind: YesNo}, x, w)
		if out == nil {
			out = one
		} else {
			out = c.node(f, Or, Type{Kind: YesNo}, out, one)
		}
	}
	if !whole {
		return nil
	}
	return out
}
