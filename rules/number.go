package rules

import (
	"errors"
	"strings"
	"sync"

	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// amount reads one value, or a range from low to high, of a stated kind; of any
// kind its unit says when kind is "": without a unit it is a plain number, and
// whoever lost the unit hears of it from the first expression that uses it.
func amount(n yamldoc.Node, kind string) (r interval.I, of quantity.Dim, ok bool) {
	text := n.Text()
	switch {
	case text == "":
		return r, of, false
	case n.Block():
		n.Fault("a number stands in a block (| or >)", "write it on the line of its key")
		return r, of, false
	case n.Comment() != "" && !n.Quoted():
		n.Fault("the number "+text+" ends in a comment: a unit behind # is not read", "write the unit before the #, and remarks on a line of their own")
		return r, of, false
	}
	key := amountText{text, kind}
	if a, ok := amounts.Load(key); ok {
		return a.(amountRead).r, a.(amountRead).of, true
	}
	var t quantity.Typed
	var err error
	switch {
	case kind != "":
		t, err = quantity.ParseKind(text, kind)
	case strings.HasSuffix(text, "%") || text[len(text)-1] >= '0' && text[len(text)-1] <= '9':
		t, err = quantity.Parse(text, quantity.Number)
	default:
		t, err = quantity.ParseAny(text)
	}
	if err == nil {
		err = t.Is(quantity.Plain, quantity.Range)
	}
	if err != nil {
		tell(n, err)
		return r, of, false
	}
	r = interval.I{Lo: t.Low, Hi: t.High}
	amounts.Store(key, amountRead{r, t.Dim})
	return r, t.Dim, true
}

// amounts are those read without fault before: tables repeat them, and a text of
// a kind is the same amount wherever it stands.
var amounts sync.Map

type amountText struct{ text, kind string }

type amountRead struct {
	r  interval.I
	of quantity.Dim
}

// tell puts a refused text on the list.
func tell(n yamldoc.Node, err error) {
	var r *quantity.Refusal
	if errors.As(err, &r) {
		n.Fault(r.Says, r.Remedy)
		return
	}
	n.Fault(err.Error(), "write a value with its unit, such as 1.6 mm")
}

// number reads an entry of a `numbers` table; key is its name in overrides.
func (l *loader) number(key, id string, n yamldoc.Node) (link.Number, bool) {
	if n.IsScalar() {
		n.Fault("the number "+n.Text()+" has no source", "write {value: "+n.Text()+", from: KEY, seen: page}; see sources.yaml")
		return link.Number{}, false
	}
	if !n.Keys("value", "doubt", "from", "seen") {
		return link.Number{}, false
	}
	out := link.Number{ID: id, At: n.At()}
	out.From, out.Grade = l.sourced(n)
	r, dim, ok := amount(n.Need("value", "write the value with its unit"), "")
	if !ok {
		return out, false
	}
	out.Dim, out.Low, out.High = dim, r.Lo, r.Hi
	d := doubted(r, dim, out.Grade.Weak())
	if w, ok := doubt(n, r, dim); ok {
		d = w
	}
	out.DoubtLow, out.DoubtHi = d.Lo, d.Hi
	l.replaced(key, &out, "")
	l.base.Numbers[out.Grade]++
	return out, true
}

// weakPart is how far a weak number is tried to either side when nothing is
// said: a fifth of itself (design section 5; common practice, no source).
const weakPart = 0.2

// doubted is what a number is tried over when its file states no doubt. Of a
// temperature it is a fifth of what it lies over or under 20 degC: a fifth of
// its kelvins would say nothing.
func doubted(r interval.I, dim quantity.Dim, weak bool) interval.I {
	if !weak {
		return r
	}
	zero := 0.0
	if dim.Scale == quantity.Absolute {
		zero = 293.15
	}
	widen := func(x float64) interval.I { return interval.Around(x, weakPart*max(x-zero, zero-x)) }
	return interval.I{Lo: widen(r.Lo).Lo, Hi: widen(r.Hi).Hi}
}

// doubt reads a stated doubt, which must hold the value.
func doubt(n yamldoc.Node, r interval.I, dim quantity.Dim) (interval.I, bool) {
	d := n.Get("doubt")
	if !d.Present() {
		return r, false
	}
	w, of, ok := amount(d, "")
	switch {
	case !ok:
		return r, false
	case of != dim:
		d.Fault("the doubt "+d.Text()+" is "+of.String()+", the value "+n.Get("value").Text()+" is "+dim.String(), "write both in units of one kind")
		return r, false
	case !w.Covers(r):
		d.Fault("the doubt "+d.Text()+" does not hold the value "+n.Get("value").Text(), "write the least and the most it may be")
		return r, false
	}
	return w, true
}

func numberType(n *link.Number) lang.Type {
	if n.Low < n.High {
		return lang.Type{Kind: lang.RangeKind, Dim: n.Dim}
	}
	return number(n.Dim)
}

// number is the type of a number of a kind.
func number(d quantity.Dim) lang.Type { return lang.Type{Kind: lang.NumberKind, Dim: d} }
