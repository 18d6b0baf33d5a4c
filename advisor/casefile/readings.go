package casefile

import (
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/yamldoc"
)

// A block states gauge, unit and temperatures once; its rows may then hold
// bare numbers.
type block struct {
	with, part, gauge, how yamldoc.Node
	bare                   bool          // bare numbers are allowed
	unit                   quantity.Unit // what they are in
	setTo                  Value         // the size the gauge was set to: bare sizes are departures from it
	in                     quantity.Unit // what the departures are in
}

var readingKeys = []string{"at", "toward", "size", "with", "how", "part_at", "gauge_at"}

// readings reads the readings of one surface: one size, a list of readings
// each with its units, or a block.
func (r *reader) readings(n yamldoc.Node, s Side) []Reading {
	switch {
	case !n.Present() || n.IsScalar() && (n.Text() == "unknown" || n.Text() == "none"):
		return nil
	case n.IsMap() && (n.Get("rows").Present() || n.Get("unit").Present() || n.Get("set_to").Present()):
		return r.block(n, s)
	}
	var out []Reading
	for _, i := range n.Items() {
		if !i.IsMap() {
			i.Fault("found "+i.Text()+" where a reading should stand", "write - {at: 5 mm, toward: 0 deg, size: 30.31 mm, with: GAUGE}")
			continue
		}
		i.Keys(readingKeys...)
		out = append(out, r.reading(i, s, block{}))
	}
	return out
}

func (r *reader) block(n yamldoc.Node, s Side) []Reading {
	n.Keys("unit", "with", "how", "set_to", "in", "part_at", "gauge_at", "rows")
	b := block{with: n.Get("with"), part: n.Get("part_at"), gauge: n.Get("gauge_at"), how: n.Get("how")}
	if !r.blockUnits(n, &b) {
		return nil
	}
	var out []Reading
	rows := n.Need("rows", "list the readings: - {at: 5, toward: 0, size: 30.31}, or - [5, 0, 30.31]")
	for _, i := range rows.Items() {
		switch {
		case i.IsMap():
			i.Keys(readingKeys...)
			out = append(out, r.reading(i, s, b))
		case i.IsList():
			out = append(out, r.row(i, s, b))
		default:
			i.Fault("found "+i.Text()+" where a row should stand", "write - [5, 0, 30.31]: station, clock angle in degrees, size and its repeats")
		}
	}
	return out
}

func (r *reader) blockUnits(n yamldoc.Node, b *block) bool {
	unit, in, set := n.Get("unit"), n.Get("in"), n.Get("set_to")
	ok := true
	if unit.Present() {
		b.unit, ok = r.unit(unit)
		b.bare = ok
	}
	if !set.Present() {
		if in.Present() {
			in.Fault("in: "+in.Text()+" is for departures", "give set_to: too, the size the gauge was set to")
		}
		if !unit.Present() {
			n.Fault("the block states no unit", "write unit: mm, or set_to: 1.2500 in with in: tenths")
		}
		return b.bare
	}
	b.setTo = r.typed(set, quantity.LengthDim, "", "1.2500 in", oneNumber)
	step := n.Need("in", "say what a step of the dial is: in: tenths, in: um")
	if !step.Present() || !b.setTo.Known {
		return false
	}
	if b.in, ok = r.unit(step); ok && !b.bare { // stations beside departures are in the unit of the setting
		b.bare, b.unit = true, b.setTo.Typed.Unit
	}
	return ok
}

func (r *reader) unit(n yamldoc.Node) (quantity.Unit, bool) {
	u, err := quantity.UnitNamed(n.Text(), quantity.LengthDim)
	if err != nil {
		refused(n, err)
	}
	return u, err == nil
}

// row is [station, angle, size, repeat, repeat ...].
func (r *reader) row(n yamldoc.Node, s Side, b block) Reading {
	items := n.Items()
	if len(items) < 3 {
		n.Fault("the row is too short", "write [station, clock angle in degrees, size, and its repeats if any]")
		return Reading{Place: n.At()}
	}
	out := Reading{Place: n.At()}
	out.At, out.Toward = r.along(items[0], b), r.angle(items[1], b)
	for _, i := range items[2:] {
		out.Sizes = append(out.Sizes, r.size(i, s, b))
	}
	r.gaugeAndHeat(n, &out, s, b)
	return out
}

func (r *reader) reading(n yamldoc.Node, s Side, b block) Reading {
	out := Reading{Place: n.At()}
	out.At, out.Toward = r.along(n.Get("at"), b), r.angle(n.Get("toward"), b)
	for _, i := range n.Need("size", "give the size that was read").Items() {
		out.Sizes = append(out.Sizes, r.size(i, s, b))
	}
	r.gaugeAndHeat(n, &out, s, b)
	return out
}

func (r *reader) gaugeAndHeat(n yamldoc.Node, out *Reading, s Side, b block) {
	own := func(key string, of yamldoc.Node) yamldoc.Node {
		if v := n.Get(key); v.Present() {
			return v
		}
		return of
	}
	out.Gauge = r.with(n, own("with", b.with), s)
	out.Round = out.Gauge != nil && out.Gauge.Round
	if how := own("how", b.how); how.Present() {
		out.Round = how.Word(points...) != "two"
	}
	out.PartAt = r.quantity(own("part_at", b.part), quantity.TemperatureDim, "20 degC")
	out.GaugeAt = r.quantity(own("gauge_at", b.gauge), quantity.TemperatureDim, "20 degC")
}

// with finds the gauge of a reading.
func (r *reader) with(n, with yamldoc.Node, s Side) *Gauge {
	id := with.Text()
	if id == "" {
		r.tell(n.At(), n.Key, "the reading names no gauge", "add with: and the id of a gauge listed under gauges:")
		return nil
	}
	g, ok := r.c.Gauge(id)
	if !ok {
		with.Fault("the gauge "+id+" is not listed under gauges", r.gaugeRemedy(id))
		return nil
	}
	if wrong := map[Side]string{Hub: "outside", Shaft: "inside"}[s]; wrong != "" && g.Kind == wrong {
		with.Fault("the gauge "+id+" measures "+wrong+"s, and this is the "+string(s), "name the gauge it was read with")
	}
	return g
}

// along reads a station; bare where the block states the unit.
func (r *reader) along(n yamldoc.Node, b block) Value {
	if b.bare {
		return r.inBlock(n, b.unit)
	}
	return r.typed(n, quantity.LengthDim, "", "5 mm", oneNumber)
}

// angle reads a clock angle; in a block a bare number is in degrees.
func (r *reader) angle(n yamldoc.Node, b block) Value {
	if b.bare {
		return r.inBlock(n, degrees)
	}
	return r.typed(n, quantity.Number, "angle", "90 deg", oneNumber)
}

var degrees, _ = quantity.AnyUnit("deg")

// size reads one reading of a size and holds it to the vocabulary's range.
func (r *reader) size(n yamldoc.Node, s Side, b block) Value {
	var v Value
	switch {
	case b.setTo.Known:
		v = r.departure(n, b)
	case b.bare:
		v = r.inBlock(n, b.unit)
	default:
		v = r.typed(n, quantity.LengthDim, "", "30.31 mm", oneNumber)
	}
	if e, ok := r.v.Entry(string(s) + ".largest"); ok && v.Known && !e.Range.Has(v.Lo) {
		n.Fault(v.Text+" is outside the range of a "+string(s)+" size", within(e.Range, v.Typed.Unit))
		v.Known = false
	}
	r.countUnit(v)
	return v
}

// departure reads +2 as two steps of the dial over the size it was set to. A
// size that carries its unit is a size.
func (r *reader) departure(n yamldoc.Node, b block) Value {
	v := r.inBlock(n, b.in)
	if v.Known && v.Typed.Assumed {
		v.Lo += b.setTo.Lo
		v.Hi, v.Typed.Unit = v.Lo, b.setTo.Typed.Unit
		v.Text = b.setTo.Text + " " + signed(v.Text) + " " + b.in.Name
	}
	return v
}

func signed(t string) string {
	if strings.HasPrefix(t, "-") || strings.HasPrefix(t, "+") {
		return t
	}
	return "+" + t
}

// countUnit finds out which system the person speaks.
func (r *reader) countUnit(v Value) {
	sys, ok := v.Typed.Speaks()
	switch {
	case !v.Known || !ok:
	case sys == quantity.Inch:
		r.inch++
	default:
		r.inch--
	}
}
