package link

import "testing"

var keptShaft = []defineText{{"shaft_large", "length", "shaft.largest"}, {"shaft_small", "length", "shaft.smallest"}, {"shaft_face", "row", "shaft.material"}}

// A firm asks its price once, whichever of its steps is the first that is done;
// nothing when none is, or when the shop does it itself.
func TestAFirmsPriceCountsOnce(t *testing.T) {
	b := newBench(t).stock()
	b.in.Tables["machines"] = append(b.in.Tables["machines"], columns("sent_out yes-no; firm number; price money; days time")...)
	shaft := b.part(sheet{id: "leave", side: Shaft, metal: Kept, defines: keptShaft,
		picks: []pickText{{"turner", "shop.machines", "it.turns", "", "first"}},
		steps: []stepText{
			{id: "key", hours: "1*h", on: "turner", when: "shaft.near_keyway"},
			{id: "spline", hours: "1*h", on: "turner", when: "shaft.near_spline"},
			{id: "whole", hours: "1*h", on: "turner", when: "not (shaft.near_keyway or shaft.near_spline)"},
			{id: "far", hours: "1*h", on: "turner", when: "hub.near_spline"},
		}})
	o := b.link(shaft, b.named("leave", Hub), b.named("running", Purpose), nil)
	const away, price = "shaft/leave.turner.sent_out", "shaft/leave.turner.price"
	for _, c := range []struct {
		name string
		set  map[string]float64
		want float64
	}{
		{"the first and the second are not done", map[string]float64{away: 1, price: 70}, 70},
		{"the first is not done", map[string]float64{away: 1, price: 70, "shaft.near_spline": 1}, 70},
		{"two are done", map[string]float64{away: 1, price: 70, "shaft.near_keyway": 1, "shaft.near_spline": 1}, 70},
		{"the first and the last are done", map[string]float64{away: 1, price: 70, "shaft.near_keyway": 1, "hub.near_spline": 1}, 70},
		{"the shop does it", map[string]float64{away: 0, price: 70, "shaft.near_keyway": 1}, 0},
	} {
		if got := regs(t, o, c.set)[o.Totals["total.costs"]]; got != c.want {
			t.Errorf("%s: costs %g, want %g", c.name, got, c.want)
		}
	}
}

// A pick none of whose steps is done costs nothing, though a firm would do them.
func TestAFirmThatDoesNothingAsksNothing(t *testing.T) {
	b := newBench(t).stock()
	b.in.Tables["machines"] = append(b.in.Tables["machines"], columns("sent_out yes-no; firm number; price money; days time")...)
	shaft := b.part(sheet{id: "leave", side: Shaft, metal: Kept, defines: keptShaft,
		picks: []pickText{{"turner", "shop.machines", "it.turns", "", "first"}},
		steps: []stepText{{id: "key", hours: "1*h", on: "turner", when: "shaft.near_keyway"}}})
	o := b.link(shaft, b.named("leave", Hub), b.named("running", Purpose), nil)
	if got := regs(t, o, map[string]float64{"shaft/leave.turner.sent_out": 1, "shaft/leave.turner.price": 70})[o.Totals["total.costs"]]; got != 0 {
		t.Errorf("costs %g, want 0", got)
	}
}

// Days count for every trip: to another firm, and back to one after work here.
func TestDaysCountForEveryTrip(t *testing.T) {
	b := newBench(t).stock()
	b.in.Tables["machines"] = append(b.in.Tables["machines"], columns("sent_out yes-no; firm number; price money; days time")...)
	shaft := b.part(sheet{id: "leave", side: Shaft, metal: Kept, defines: keptShaft,
		picks: []pickText{{"sprayer", "shop.machines", "it.turns", "", "first"}, {"grinder", "shop.machines", "it.turns", "", "first"}},
		steps: []stepText{
			{id: "spray", hours: "1*h", on: "sprayer"},
			{id: "bench", hours: "1*h", when: "shaft.near_keyway"},
			{id: "grind", hours: "1*h", on: "grinder"},
		}})
	o := b.link(shaft, b.named("leave", Hub), b.named("running", Purpose), nil)
	const spray, grind, day = "shaft/leave.sprayer.", "shaft/leave.grinder.", 86400.0
	for _, c := range []struct {
		name        string
		grinder, at float64 // who grinds: 0 the shop
		between     float64 // is there work here between the two
		want        float64
	}{
		{"one firm does both", 1, 1, 0, 6},
		{"two firms in a row", 1, 2, 0, 6 + 5},
		{"one firm, with work here between", 1, 1, 1, 6 + 5},
		{"the shop grinds", 0, 0, 0, 6},
	} {
		got := regs(t, o, map[string]float64{spray + "sent_out": 1, spray + "firm": 1, spray + "days": 6 * day,
			grind + "sent_out": c.grinder, grind + "firm": c.at, grind + "days": 5 * day, "shaft.near_keyway": c.between})[o.Totals["total.wait"]]
		if got != c.want*day {
			t.Errorf("%s: %g days, want %g", c.name, got/day, c.want)
		}
	}
}
