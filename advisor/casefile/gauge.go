package casefile

import (
	"wornfit/calc/quantity"
	"wornfit/rules/yamldoc"
)

// gauges reads the list of gauges by id.
func (r *reader) gauges(n yamldoc.Node) {
	if n.Present() && !n.IsMap() {
		n.Keys()
		return
	}
	for _, e := range n.Entries() {
		g := &Gauge{ID: e.Name, Called: e.Name, At: e.KeyAt}
		r.c.Gauges = append(r.c.Gauges, g)
		if !e.Value.IsMap() {
			e.Value.Keys()
			continue
		}
		r.gauge(e.Value, g)
	}
}

var points = []string{"two", "three", "ring", "vee", "blue"}

func (r *reader) gauge(n yamldoc.Node, g *Gauge) {
	n.Keys("called", "kind", "points", "within", "repeats_within", "takes", "zeroed_on")
	if t := n.Get("called").Text(); t != "" {
		g.Called = t
	}
	g.Kind = n.Get("kind").Word("inside", "outside", "shake", "depth")
	p := n.Get("points").Word(points...)
	g.Round = p != "" && p != "two"
	g.ZeroedOn = n.Get("zeroed_on").Text()
	g.Within = r.positive(n.Need("within", "say how far it may be out, like ±0.005 mm"), "±0.005 mm")
	g.Repeats = r.positive(n.Get("repeats_within"), "±0.002 mm")
	g.Takes = r.quantity(n.Get("takes"), quantity.LengthDim, "25 mm to 50 mm")
	if g.Repeats.Known && g.Within.Known && g.Repeats.Lo > g.Within.Lo {
		n.Get("repeats_within").Fault("it repeats within "+g.Repeats.Text+" but reads true within "+g.Within.Text,
			"within is the whole doubt and cannot be the smaller")
	}
}

// positive reads a half width: ±0.005 mm or 0.005 mm.
func (r *reader) positive(n yamldoc.Node, example string) Value {
	v := r.typed(n, quantity.LengthDim, "", example, halfWidth)
	if v.Lo = v.Hi; v.Known && v.Lo <= 0 {
		n.Fault("a gauge that is good to "+v.Text+" does not exist", "write the half width, like "+example)
		v.Known = false
	}
	return v
}
