package quantity

import (
	"math/big"
	"strings"
)

// units settles the units of the numbers of one text: one that states none
// takes the other's, else the block's, else none if a plain number is wanted.
func (r *reader) units(first, second string) (a, b Unit, assumed bool, bad *Refusal) {
	if first == "" {
		first = second
	} else if second == "" {
		second = first
	}
	if first == "" {
		switch {
		case r.block != nil:
			return *r.block, *r.block, true, nil
		case !r.any && r.dim == Number && r.kind != "angle":
			return Unit{}, Unit{}, false, nil
		}
		return a, b, false, r.missing(r.text)
	}
	if a, bad = r.unit(first, r.text); bad != nil {
		return a, b, false, bad
	}
	b, bad = r.unit(second, r.text)
	if bad == nil && (a.Dim != b.Dim || a.kind() != b.kind() && a.Name != b.Name) {
		bad = refuse(r.text, "write both in units of one kind", "%q mixes a unit of %s, %q, with a unit of %s, %q", r.text, a.kind(), first, b.kind(), second)
	}
	if bad == nil && a.Dim.Money != 0 && a.Name != b.Name {
		bad = refuse(r.text, "write both in one currency", "%q mixes %s with %s", r.text, a.Name, b.Name)
	}
	return a, b, false, bad
}

// deviationUnits is units for a size and its deviations: the deviation of a
// temperature is a change.
func (r *reader) deviationUnits(size, dev string) (a, b Unit, assumed bool, bad *Refusal) {
	if size == "" {
		if rows := bySpelling[tidyUnit(dev)]; len(rows) > 0 && rows[0].small {
			return a, b, false, refuse(r.text, "write the unit after the size too, such as 1.2500 in ±3 tenths",
				"%q may mean the size in %s too, or the deviation alone", r.text, dev)
		}
		size, dev = dev, ""
	}
	a, _, assumed, bad = r.units(size, "")
	if bad != nil || dev == "" {
		return a, a, assumed, bad
	}
	changes := wish{dim: a.Dim}
	if changes.dim == TemperatureDim {
		changes.dim = ChangeDim
	}
	b, bad = changes.unit(dev, r.text)
	return a, b, assumed, bad
}

func (r *reader) plainOrClass(size figure, word string) (Typed, *Refusal) {
	unit, class := word, ""
	if c, ok := classOf(word); ok && (len(bySpelling[word]) == 0 || !r.any && r.dim == LengthDim) {
		unit, class = "", c // 5 m3 is a volume unless a length is wanted
	} else if cut := strings.LastIndexByte(word, ' '); cut > 0 && len(bySpelling[tidyUnit(word)]) == 0 {
		if c, ok := classOf(word[cut+1:]); ok {
			unit, class = word[:cut], c
		}
	}
	if class != "" && !r.any && r.dim != LengthDim {
		return Typed{}, refuse(r.text, writeIn("", r.name()), "%q is a size with a class, %s is wanted", r.text, r.name())
	}
	if class != "" && unit == "" && r.block == nil {
		unit = "mm" // classes of ISO 286 are for sizes in millimetres
		t, bad := r.plain(size, unit)
		t.Form, t.Class, t.Assumed = Class, class, true
		return t, bad
	}
	t, bad := r.plain(size, unit)
	if class != "" {
		t.Form, t.Class = Class, class
	}
	return t, bad
}

func (r *reader) plain(size figure, word string) (Typed, *Refusal) {
	u, _, assumed, bad := r.units(word, "")
	if bad != nil {
		return Typed{}, bad
	}
	return r.build(Plain, u, assumed, size.value, size.value, size.value, part{size, u}), nil
}

func (r *reader) rangeTo(low figure, first string, dash bool) (Typed, *Refusal) {
	high, bad := r.figure()
	if bad != nil {
		return Typed{}, bad
	}
	second := r.unitWord()
	r.space()
	if !r.end() {
		return Typed{}, r.strange(high, second)
	}
	if second == "" && first != "" {
		return Typed{}, refuse(r.text, "write the unit after the last number, such as 0.8 to 1.5 mm", "%q has a unit on its first number alone", r.text)
	}
	a, b, assumed, bad := r.units(first, second)
	if dash && unclearDash(low, high, b) && (bad == nil || second == "") {
		return Typed{}, refuse(r.text, "write "+low.String()+" to "+high.String()+" for limits, a fraction as 1-3/16",
			"the dash in %q may make a fraction or limits", r.text)
	}
	if bad != nil {
		return Typed{}, bad
	}
	top := inUnit(high.value, b, a)
	if low.value.Cmp(top) > 0 {
		remedy := "write the low one first"
		if dash {
			remedy = "write the low one first, deviations as 25 +0/-0.02 mm"
		}
		return Typed{}, refuse(r.text, remedy, "%q has its low limit above its high limit", r.text)
	}
	return r.build(Range, a, assumed, low.value, middle(low.value, top), top, part{low, a}, part{high, b}), nil
}

// unclearDash: 1-3 in may be a fraction not finished; 140-190 HB is none.
func unclearDash(low, high figure, u Unit) bool {
	if low.places < 0 || high.places < 0 {
		return true
	}
	return low.whole() && high.whole() && (u.fractions() || u.Name == "")
}

func (r *reader) plusMinusAlone() (Typed, *Refusal) {
	d, word, bad := r.lastFigure()
	if bad != nil {
		return Typed{}, bad
	}
	u, _, assumed, bad := r.units(word, "")
	if bad != nil {
		return Typed{}, bad
	}
	return r.build(Departure, u, assumed, neg(d.value), new(big.Rat), d.value, part{d, u}), nil
}

func (r *reader) plusMinus(size figure, word string) (Typed, *Refusal) {
	d, second, bad := r.lastFigure()
	if bad != nil {
		return Typed{}, bad
	}
	u, v, assumed, bad := r.deviationUnits(word, second)
	if bad != nil {
		return Typed{}, bad
	}
	dev := change(d.value, v, u)
	low, high := new(big.Rat).Sub(size.value, dev), new(big.Rat).Add(size.value, dev)
	return r.build(PlusMinus, u, assumed, low, size.value, high, part{size, u}, part{d, v}), nil
}

// lastFigure reads the number after ± and its unit, to the end.
func (r *reader) lastFigure() (figure, string, *Refusal) {
	r.space()
	d, bad := r.number()
	if bad != nil {
		return d, "", bad
	}
	word := r.unitWord()
	r.space()
	if !r.end() {
		return d, "", r.strange(d, word)
	}
	return d, word, nil
}

// deviations reads +.0005/-.0000 if it stands here; ok is false, and nothing
// read, if something else does. Alone they need their slash: -1 +0/-0 is a size
// below nought with its deviations.
func (r *reader) deviations(alone bool) (upper, lower figure, ok bool, bad *Refusal) {
	start := r.at
	r.space()
	if c := r.peek(); c != '+' && c != '-' && !nilDeviation(r.rest()) {
		r.at = start
		return upper, lower, false, nil
	}
	if upper, bad = r.figure(); bad != nil {
		return upper, lower, false, bad
	}
	r.space()
	slash := r.take("/")
	if slash {
		r.space()
	}
	c := r.peek()
	hasSign := c == '+' || c == '-'
	if alone && !slash || !hasSign && (!slash || c != '0') {
		r.at = start
		return upper, lower, false, nil
	}
	if lower, bad = r.figure(); bad != nil {
		return upper, lower, false, bad
	}
	switch {
	case !lower.plus && lower.value.Sign() != 0:
		bad = refuse(r.text, "write a sign before each, such as +0.02/-0.01 mm", "%q has a deviation without its sign", r.text)
	case upper.value.Cmp(lower.value) < 0:
		bad = refuse(r.text, "write the upper one first: "+signed(lower, "+")+"/"+signed(upper, "-"), "%q has its low limit above its high limit", r.text)
	}
	return upper, lower, bad == nil, bad
}

func (r *reader) deviationsAlone(upper, lower figure) (Typed, *Refusal) {
	word := r.unitWord()
	r.space()
	if !r.end() {
		return Typed{}, r.strange(lower, word)
	}
	u, _, assumed, bad := r.units(word, "")
	if bad != nil {
		return Typed{}, bad
	}
	return r.build(Departure, u, assumed, lower.value, new(big.Rat), upper.value, part{upper, u}, part{lower, u}), nil
}

func (r *reader) sizeDeviations(size, upper, lower figure, word string) (Typed, *Refusal) {
	second := r.unitWord()
	r.space()
	if !r.end() {
		return Typed{}, r.strange(lower, second)
	}
	u, v, assumed, bad := r.deviationUnits(word, second)
	if bad != nil {
		return Typed{}, bad
	}
	low := new(big.Rat).Add(size.value, change(lower.value, v, u))
	high := new(big.Rat).Add(size.value, change(upper.value, v, u))
	return r.build(Deviations, u, assumed, low, size.value, high, part{size, u}, part{upper, v}, part{lower, v}), nil
}

// build converts once, from exact fractions, so that order is kept.
func (r *reader) build(form Form, u Unit, assumed bool, low, best, high *big.Rat, parts ...part) Typed {
	t := Typed{Text: r.text, Unit: u, Dim: u.Dim, Places: -1, Exact: best, Form: form, Assumed: assumed, parts: parts}
	for _, p := range parts {
		t.Places = max(t.Places, p.places)
	}
	if form == Deviations || form == Departure {
		best = middle(low, high)
	}
	if form == Departure {
		scale := u.factor()
		t.Low, t.Best, t.High = float(product(low, scale)), float(product(best, scale)), float(product(high, scale))
		return t
	}
	t.Low, t.Best, t.High = float(u.exactSI(low)), float(u.exactSI(best)), float(u.exactSI(high))
	return t
}

// sound refuses what was read well and still can be no such quantity.
func (r *reader) sound(t Typed) *Refusal {
	switch {
	case r.diameter && t.Dim != LengthDim:
		return refuse(r.text, "write the diameter mark before a length alone", "%q has a diameter mark on a unit of %s", r.text, t.Unit.kind())
	case t.Dim == TemperatureDim && t.Form == Departure:
		return refuse(r.text, "write the temperature too, such as 20 ±2 °C", "%q is a change, a temperature is wanted", r.text)
	case t.Dim == TemperatureDim && t.Low < 0:
		return refuse(r.text, "write a temperature above -273.15 °C", "%q is below absolute zero", r.text)
	}
	return nil
}

func float(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}

func neg(r *big.Rat) *big.Rat { return new(big.Rat).Neg(r) }

func middle(a, b *big.Rat) *big.Rat {
	return product(new(big.Rat).Add(a, b), big.NewRat(1, 2))
}

// change is a difference in one unit told in another.
func change(v *big.Rat, from, to Unit) *big.Rat {
	return quotient(product(v, from.factor()), to.factor())
}

// inUnit is a value in one unit told in another, zeros counted.
func inUnit(v *big.Rat, from, to Unit) *big.Rat {
	out := quotient(from.exactSI(v), to.factor())
	if to.row != nil && to.row.zero != nil {
		out.Sub(out, to.row.zero)
	}
	return out
}
