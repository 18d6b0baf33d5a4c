package knowledge_test

import (
	"strings"
	"testing"

	"wornfit/rules/link"
)

// directions are what any machinist knows of a rule without its numbers: which
// way each thing pushes it. + keeps it better, - worse, as the slot grows.
var directions = []struct{ option, purpose, rule, better, worse string }{
	{"shaft-true-up+hub-bush-press", "running", "bush-cleans", "hub_bore.target hub.witness", "hub.largest hub.score hub/bush.datum.offset hub/bush.datum.set_up"},
	{"shaft-true-up+hub-bush-press", "running", "bush-has-wall", "bush_outside.target", "bush_bore.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush-hub-wall", "hub.outside", "hub_bore.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush-hub-outside-bush", "hub.outside bush_bore.target", "hub_bore.target bush_outside.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush-bored-last", "hub_bore.target low(hub/bush.left_to_bore)", "bush_outside.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-tight", "bush_outside.target", "hub_bore.target hold/press.roughness"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-holds-torque", "bush_outside.target fit.length hub.outside low(hold/press.friction)", "duty.load hold/press.grip_margin"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-holds-thrust", "fit.length hub.outside", "duty.thrust hub_bore.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-force", "shop.press_force hub_bore.target", "bush_outside.target fit.length high(hold/press.friction)"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-outer-strong", "hub.material.yield hub_bore.target", "bush_outside.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-outer-unburst", "hub.material.tensile hub_bore.target", "bush_outside.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-oven", "shop.oven_temperature hub_bore.target hub.material.expansion", "bush_outside.target"},
	{"shaft-true-up+hub-bush-press", "running", "bush.press-chill", "hub_bore.target hub/bush.bush_material.expansion", "shop.cold_temperature"},
	{"shaft-true-up+hub-bush-press", "running", "true-up-shaft-cleans", "shaft.smallest shaft.witness", "shaft_size.target shaft.score shaft/true-up.datum.offset"},
	{"shaft-true-up+hub-bush-press", "running", "true-up-shaft-strong", "shaft_size.target shaft.material.yield", "duty.torque duty.starting_factor shaft.bore"},
	{"shaft-true-up+hub-bush-press", "running", "true-up-shaft-rise", "shaft_size.target", "fit.nominal"},
	{"shaft-true-up+hub-bush-press", "running", "true-up-shaft-case", "shaft.case_depth shaft_size.target", "fit.nominal"},
	{"shaft-true-up+hub-bush-press", "running", "running-free", "bush_bore.target", "shaft_size.target fit.new_least"},
	{"shaft-true-up+hub-bush-press", "running", "running-free-warm", "bush_bore.target", "shaft_size.target duty.shaft_hotter"},
	{"shaft-true-up+hub-bush-press", "running", "running-overload", "fit.length", "duty.load"},
	{"shaft-true-up+hub-bush-press", "running", "running-burns", "fit.length", "duty.load duty.speed"},
	{"shaft-true-up+hub-bush-press", "running", "running-close", "shaft_size.target", "bush_bore.target"},
	{"shaft-true-up+hub-bush-press", "running", "running-pressure", "fit.length shaft_size.target", "duty.load"},
	{"shaft-true-up+hub-bush-press", "running", "running-speed", "hub/bush.bush_material.most_speed", "duty.speed shaft_size.target"},
	{"shaft-true-up+hub-bush-press", "running", "running-pv", "fit.length", "duty.load duty.speed"},
	{"shaft-replace+hub-true-up", "oscillating", "true-up-hub-cleans", "hub_bore.target", "hub.largest hub.score hub/true-up.datum.offset"},
	{"shaft-replace+hub-true-up", "oscillating", "true-up-hub-wall", "hub.outside", "hub_bore.target"},
	{"shaft-replace+hub-true-up", "oscillating", "oscillating-pv", "fit.length", "duty.load duty.strokes duty.swing"},
	{"shaft-replace+hub-true-up", "oscillating", "oscillating-act", "shaft_size.target", "hub_bore.target"},
	{"shaft-replace+hub-true-up", "oscillating", "replace-shaft-strong", "shaft_size.target shaft/replace.stock.yield", "duty.torque shaft.bore"},
	// not the hub bore: draws are loose fits too, and a thin wall makes a loose fit less so
	{"shaft-true-up+hub-true-up+fit-press", "press-fit", "fit.press-holds-torque", "shaft_size.target fit.length", "duty.torque duty.starting_factor duty.thrust"},
	{"shaft-true-up+hub-true-up+fit-press", "press-fit", "fit.press-inner-strong", "hub_bore.target", "shaft_size.target"},
	{"shaft-true-up+hub-true-up+fit-compound", "press-fit", "fit.compound-holds-torque", "shaft_size.target fit.length hold/compound.shear", "duty.torque hold/compound.margin"},
	{"shaft-true-up+hub-true-up+fit-compound", "press-fit", "fit.compound-fills", "shaft_size.target", "hub_bore.target"},
	{"shaft-replace+hub-true-up", "sliding", "sliding-pv", "fit.length", "duty.load duty.strokes duty.stroke_length"},
	{"shaft-replace+hub-true-up", "sliding", "sliding-act", "shaft_size.target", "hub_bore.target"},
	{"shaft-true-up+hub-leave+fit-slip", "keyed-hub", "fit.slip-goes-together", "hub.smallest", "shaft_size.target"},
	{"shaft-true-up+hub-leave+fit-slip", "keyed-hub", "fit.slip-close", "shaft_size.target", "hub.largest"},
	{"shaft-true-up+hub-leave+fit-slip", "keyed-hub", "fit.key-crushes", "", "hub.largest duty.torque duty.starting_factor lock/key.sure"},
	{"shaft-true-up+hub-leave+fit-slip", "keyed-hub", "keyed-hub-act", "shaft_size.target", "hub.largest"},
	{"shaft-true-up+hub-leave+fit-press", "bearing-seat", "bearing-seat-squeezed", "fit.play_most", "fit.inner_hotter fit.other_takes fit.outer_raceway"},
	{"shaft-true-up+hub-leave+fit-press", "bearing-seat", "bearing-seat-shaft-low", "shaft_size.target", ""},
	{"shaft-true-up+hub-leave+fit-press", "bearing-seat", "bearing-seat-shaft-high", "", "shaft_size.target"},
	{"shaft-leave+hub-bush-press+fit-press", "press-fit", "bush-hub-strong", "hub.material.yield", "shaft.largest"},
}

// Whatever the numbers, each rule is pushed the way the trade knows.
func TestRulesArePushedTheRightWay(t *testing.T) {
	base := shipped(t)
	drawn := map[string][][]float64{}
	for _, c := range directions {
		o, err := linkNamed(base, c.option, c.purpose)
		if err != nil {
			t.Fatal(err)
		}
		l := lots(o)[0]
		if drawn[l.name] == nil {
			drawn[l.name] = things(newDrawer(base, "directions"), &l)
		}
		found := false
		for i := range o.Checks {
			if o.Checks[i].FullID == c.rule {
				found = true
				pushed(t, &l, &o.Checks[i], drawn[l.name], strings.Fields(c.better), 1)
				pushed(t, &l, &o.Checks[i], drawn[l.name], strings.Fields(c.worse), -1)
			}
		}
		if !found {
			t.Errorf("%s has no rule %s", c.option, c.rule)
		}
	}
}

// things are draws that could lie on a bench, cut and gauged without error.
func things(d *drawer, l *lot) [][]float64 {
	var out [][]float64
	for range 60000 {
		reg := d.draw(l)
		for _, s := range l.slots {
			if s.Kind == link.CutSlot || s.Kind == link.GaugeSlot {
				reg[s.Node] = 0
			}
		}
		l.prog.Run(reg)
		if l.isAThing(reg) {
			if out = append(out, reg); len(out) == 300 {
				break
			}
		}
	}
	return out
}

// pushed looks at the slope over each name in every draw.
func pushed(t *testing.T, l *lot, c *link.Check, regs [][]float64, names []string, way float64) {
	t.Helper()
	adj := make([]float64, l.prog.Len())
	for _, name := range names {
		n, ok := l.prog.Slot(name)
		if !ok {
			t.Errorf("%s of %s does not ask for %s", c.FullID, l.name, name)
			continue
		}
		moved, seen := 0, 0
		for _, reg := range regs {
			if !finite(reg[c.Margin]) {
				continue
			}
			seen++
			l.prog.Gradient(reg, adj, c.Margin)
			switch g := way * adj[n]; {
			case g < 0:
				t.Errorf("%s: at %s = %v the slope of %s is %v; it must push the other way", l.name, name, reg[n], c.FullID, adj[n])
				return
			case g > 0:
				moved++
			}
		}
		if moved < 20 {
			t.Errorf("%s: %s moved %s in %d of %d draws only", l.name, name, c.FullID, moved, seen)
		}
	}
}

// isAThing reports that the parts of a draw could lie on a bench: walls of some
// thickness, and a press that is one, tight and by no more than a hundredth.
func (l *lot) isAThing(reg []float64) bool {
	at := func(name string) (float64, bool) {
		n, ok := l.prog.Slot(name)
		return reg[n], ok
	}
	if hole, ok := at("shaft.bore"); ok {
		if nominal, ok := at("fit.nominal"); ok && hole >= nominal {
			return false
		}
	}
	between := func(inner, outer string, least, most float64) bool {
		x, okX := at(inner)
		y, okY := at(outer)
		return !okX || !okY || x >= least*y && x <= most*y
	}
	for i := range l.checks {
		c := &l.checks[i]
		if strings.HasSuffix(c.FullID, ".press-tight") && !(reg[c.Margin] >= 0) {
			return false
		}
	}
	press := true
	if strings.Contains(l.name, "bush-press") {
		press = between("bush_outside.target", "hub_bore.target", 1.0001, 1.01)
	}
	if strings.Contains(l.name, "hub-true-up+fit-press") {
		press = press && between("shaft_size.target", "hub_bore.target", 1.0001, 1.01)
	}
	return press && between("hub_bore.target", "hub.outside", 0, 0.95) && between("hub.largest", "hub.outside", 0, 0.95) &&
		between("bush_bore.target", "bush_outside.target", 0, 0.95) && between("shaft.bore", "shaft_size.target", 0, 0.9) &&
		between("shaft.bore", "shaft.smallest", 0, 0.9)
}
