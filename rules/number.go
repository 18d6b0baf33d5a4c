package rules

import (
	"fmt"
	"regexp"
	"strconv"

	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

var plain = regexp.MustCompile(`^(-?[0-9]*\.?[0-9]+)(?: to (-?[0-9]*\.?[0-9]+))?$`)

// amount reads a value or a range of a stated kind (nil: whatever its unit
// says; a number without a unit is a plain number).
func amount(n yamldoc.Node, kind string, dim *quantity.Dim) (r interval.I, of quantity.Dim, ok bool) {
	text := n.Text()
	if text == "" {
		return r, of, false
	}
	if c := n.Comment(); c != "" && plain.MatchString(text) && dim != nil && *dim != quantity.Number {
		n.Fault("the value "+text+" has no unit; the rest of the line is a comment", "write the unit before the #")
		return r, of, false
	}
	if m := plain.FindStringSubmatch(text); m != nil && (dim == nil || *dim == quantity.Number) {
		lo, _ := strconv.ParseFloat(m[1], 64)
		hi := lo
		if m[2] != "" {
			hi, _ = strconv.ParseFloat(m[2], 64)
		}
		if lo > hi {
			n.Fault("the range "+text+" runs downwards", "write the smaller first")
			return r, of, false
		}
		return interval.I{Lo: lo, Hi: hi}, quantity.Number, true
	}
	var t quantity.Typed
	var err error
	switch {
	case kind != "":
		t, err = quantity.ParseKind(text, kind)
	case dim != nil:
		t, err = quantity.Parse(text, *dim)
	default:
		t, err = quantity.ParseAny(text)
	}
	if err != nil {
		n.Fault(err.Error(), "write a value with its unit, such as 1.6 mm")
		return r, of, false
	}
	return interval.I{Lo: t.Low, Hi: t.High}, t.Dim, true
}

// number reads an entry of a `numbers` table.
func (l *loader) number(id string, n yamldoc.Node) (link.Number, bool) {
	if !n.Keys("value", "doubt", "from", "seen") {
		return link.Number{}, false
	}
	out := link.Number{ID: id, From: l.from(n), Grade: l.seen(n), At: n.At()}
	r, dim, ok := amount(n.Need("value", "write the value with its unit"), "", nil)
	if !ok {
		return out, false
	}
	out.Dim, out.Low, out.High = dim, r.Lo, r.Hi
	out.DoubtLow, out.DoubtHi = r.Lo, r.Hi
	if out.Grade.Weak() {
		out.DoubtLow, out.DoubtHi = min(r.Lo*0.8, r.Lo*1.2), max(r.Hi*0.8, r.Hi*1.2)
		if dim.Scale != quantity.Ratio {
			out.DoubtLow, out.DoubtHi = r.Lo, r.Hi
		}
	}
	if d := n.Get("doubt"); d.Present() {
		if w, _, ok := amount(d, "", &dim); ok {
			out.DoubtLow, out.DoubtHi = w.Lo, w.Hi
			if w.Lo > r.Lo || w.Hi < r.Hi {
				d.Fault(fmt.Sprintf("the doubt %s does not hold the value %s", d.Text(), n.Get("value").Text()), "widen the doubt")
			}
		}
	}
	return out, true
}

func numberType(n *link.Number) lang.Type {
	if n.Low < n.High {
		return lang.Type{Kind: lang.RangeKind, Dim: n.Dim}
	}
	return lang.Type{Kind: lang.NumberKind, Dim: n.Dim}
}
