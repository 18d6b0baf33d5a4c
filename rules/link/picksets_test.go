package link

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wornfit/calc/interval"
)

func exactly(v float64) Known { return Known{Value: interval.Point(v), Best: v, Is: true} }

// shopRows is a small shop: invented machines, materials and axes.
func shopRows(table string) []RowValues {
	row := func(id string, of ...any) RowValues {
		r := RowValues{ID: id, Columns: map[string]Known{}}
		for i := 0; i < len(of); i += 2 {
			r.Columns[of[i].(string)] = exactly(of[i+1].(float64))
		}
		return r
	}
	switch table {
	case "shop.machines":
		small := row("bench-lathe", "turns", 1.0, "bores", 1.0, "tolerance", 10e-6, "swing", 0.2)
		large := row("gap-lathe", "turns", 1.0, "bores", 1.0, "tolerance", 30e-6, "swing", 0.6)
		mill := row("mill", "turns", 0.0, "bores", 1.0, "tolerance", 20e-6, "swing", 0.5)
		return []RowValues{large, small, mill}
	case "materials":
		return []RowValues{row("tin-bronze", "bush", 1.0, "nu", 0.34), row("bar-steel", "bush", 0.0), row("grey-iron", "bush", 1.0), {ID: "pot-metal"}}
	case "shaft.datums":
		return []RowValues{row("worn-place", "offset", 0.0, "true_axis", 0.0), row("centres", "offset", 20e-6, "true_axis", 1.0)}
	}
	return nil
}

func said(sets []PickSet, picks ...string) string {
	var out []string
	for _, s := range sets {
		var rows []string
		for _, p := range picks {
			r := s.Row(p)
			if r == "" {
				r = "-"
			}
			if slices.Contains(s.Unsure, p) {
				r += "?"
			}
			rows = append(rows, r)
		}
		out = append(out, strings.Join(rows, " "))
	}
	return strings.Join(out, "; ")
}

// The finest machine that takes the part is picked; each bush metal is tried,
// one of which nobody knows whether it makes a bush comes last.
func TestPicksOfABush(t *testing.T) {
	o := newBench(t).stock().joined("true-up", "bush", "running")
	known := map[string]Known{"hub.swing": exactly(0.3), "shaft.swing": exactly(0.1)}
	sets, missing, cut := o.PickSets(ByName(known), shopRows, 64)
	if len(missing) > 0 || cut {
		t.Errorf("missing %v, cut %t; want neither", missing, cut)
	}
	got := said(sets, "shaft/true-up.datum", "shaft/true-up.turner", "hub/bush.borer", "hub/bush.bush_material")
	want := "centres bench-lathe mill tin-bronze; centres bench-lathe mill grey-iron; centres bench-lathe mill pot-metal?"
	if got != want {
		t.Errorf("picked %q\nwant   %q", got, want)
	}
	if v, _ := sets[0].Column("hub/bush.borer", "tolerance"); v.Best != 20e-6 {
		t.Errorf("the borer holds %v, want 20 um", v)
	}
	if v, _ := sets[0].Column("hub/bush.bush_material", "nu"); v.Best != 0.34 {
		t.Errorf("the bronze's nu is %v, want 0.34", v)
	}
}

// Nobody measured what the hub swings. The machine that surely takes it is
// tried first, then the finer one that may.
func TestUnknownSwing(t *testing.T) {
	o := newBench(t).stock().joined("leave", "true-up", "running")
	for _, c := range []struct {
		swing interval.I
		want  string
	}{
		{interval.Of(0.15, 0.18), "bench-lathe"},
		{interval.Of(0.15, 0.3), "mill; bench-lathe?"},
		{interval.Of(0.55, 0.58), "gap-lathe"},
		{interval.Of(0.1, 0.9), "bench-lathe?"},
	} {
		sets, missing, _ := o.PickSets(ByName(map[string]Known{"hub.swing": {Value: c.swing}}), shopRows, 64)
		if got := said(sets, "hub/true-up.borer"); got != c.want || len(missing) > 0 {
			t.Errorf("swing %v: picked %q (missing %d), want %q", c.swing, got, len(missing), c.want)
		}
	}
	sets, _, _ := o.PickSets(ByName(nil), shopRows, 64)
	if got := said(sets, "hub/true-up.borer"); got != "bench-lathe?" {
		t.Errorf("swing not given: picked %q, want bench-lathe?", got)
	}
	if ask := o.Picks[0].Unsettled(nil); len(ask) != 1 || ask[0].Name != "hub.swing" {
		t.Errorf("to settle the borer, ask %v; want hub.swing", ask)
	}
	if ask := o.Picks[0].Unsettled(map[string]Known{"hub.swing": exactly(0.3)}); ask != nil {
		t.Errorf("with the swing known, still asks %v", ask)
	}
}

// A hub too large for every machine: the pick's own rule fails, the other picks
// are still made.
func TestNoMachineTakesIt(t *testing.T) {
	o := newBench(t).stock().joined("true-up", "true-up", "running")
	sets, missing, _ := o.PickSets(ByName(map[string]Known{"hub.swing": exactly(0.9), "shaft.swing": exactly(0.1)}), shopRows, 64)
	if len(missing) != 1 || missing[0].FullID != "true-up-borer" || missing[0].Ground != Shop || !missing[0].Need {
		t.Fatalf("missing %+v, want the shop's need true-up-borer", missing)
	}
	if got := said(sets, "hub/true-up.borer", "shaft/true-up.turner"); got != "- bench-lathe" {
		t.Errorf("picked %q, want no borer and the bench lathe", got)
	}
	if _, ok := sets[0].Column("hub/true-up.borer", "tolerance"); ok {
		t.Error("a borer nobody has holds a tolerance")
	}
}

// Where one metal leaves a pick without a row, the sets with every pick made
// are the ones that count.
func TestSetsWithARowForEveryPickCount(t *testing.T) {
	b := newBench(t).stock()
	hub := b.part(sheet{id: "bush", side: Hub, metal: Kept,
		picks: []pickText{
			{"metal", "materials", "", "", "all"},
			{"borer", "shop.machines", "it.bores and metal.bush", "it.tolerance", "most"},
		},
		defines: b.leaveHubDefines(),
	})
	o := b.link(b.named("leave", Shaft), hub, b.named("running", Purpose), nil)
	sets, missing, _ := o.PickSets(ByName(nil), shopRows, 64)
	if got, want := said(sets, "hub/bush.metal", "hub/bush.borer"), "tin-bronze gap-lathe; grey-iron gap-lathe; pot-metal gap-lathe?"; got != want || len(missing) > 0 {
		t.Errorf("picked %q with %d missing, want %q", got, len(missing), want)
	}
}

// The hub is cut first, yet a pick of the hub that asks about the new shaft's
// metal is made after that metal.
func TestPickWaitsForTheOther(t *testing.T) {
	b := newBench(t).stock()
	hub := b.part(sheet{id: "bush", side: Hub, metal: More,
		picks:   []pickText{{"metal", "materials", "it.bush and it.nu <= shaft_face.nu", "it.nu", ""}},
		defines: b.leaveHubDefines(),
	})
	o := b.link(b.named("sleeve", Shaft), hub, b.named("running", Purpose), map[string]*Part{"sleeve": b.named("press", Hold)})
	var order []string
	for _, p := range o.Picks {
		order = append(order, p.Full)
	}
	if got, want := strings.Join(order, " "), "shaft/sleeve.sleeve_material hub/bush.metal shaft/sleeve.turner"; got != want {
		t.Errorf("picks in the order %s, want %s", got, want)
	}
}

// Forty metals and forty bores are 1600 sets: 64 are kept, the heads of both
// lists among them, and the answer says that it was cut short.
func TestManySetsAreCutAndSaidSo(t *testing.T) {
	b := newBench(t).stock()
	hub := b.part(sheet{id: "bush", side: Hub, metal: Kept,
		picks:   []pickText{{"metal", "materials", "", "", "all"}, {"axis", "hub.datums", "", "", "all"}},
		defines: b.leaveHubDefines(),
	})
	o := b.link(b.named("leave", Shaft), hub, b.named("running", Purpose), nil)
	rows := func(table string) []RowValues {
		var out []RowValues
		for i := range 40 {
			out = append(out, RowValues{ID: fmt.Sprintf("%s-%02d", tableOf(table), i)})
		}
		return out
	}
	sets, _, cut := o.PickSets(ByName(nil), rows, 64)
	if len(sets) != 64 || !cut {
		t.Fatalf("%d sets, cut %t; want 64 and cut", len(sets), cut)
	}
	if got := said(sets[:3], "hub/bush.metal", "hub/bush.axis"); got != "materials-00 datums-00; materials-00 datums-01; materials-01 datums-00" {
		t.Errorf("the first sets are %q", got)
	}
	all, _, cut := o.PickSets(ByName(nil), rows, 2000)
	if len(all) != 1600 || cut {
		t.Errorf("%d sets, cut %t; want all 1600", len(all), cut)
	}
}

func (b *bench) leaveHubDefines() []defineText {
	return []defineText{
		{"bore_small", "length", "hub.smallest"}, {"bore_large", "length", "hub.largest"}, {"bore_face", "row", "hub.material"},
		{"bore_hoop", "number", "1"}, {"bore_give", "per-stress", "1/hub.material.E"}, {"bore_expansion", "expansion", "hub.material.expansion"},
	}
}

// What picks ask about is told, so that the case can be asked for it.
func TestPicksTellWhatTheyAsk(t *testing.T) {
	var names []string
	for _, s := range newBench(t).stock().joined("true-up", "bush", "running").Asks() {
		names = append(names, s.Name)
	}
	slices.Sort(names)
	if got := strings.Join(names, " "); got != "hub.swing shaft.swing" {
		t.Errorf("picks ask about %s", got)
	}
}
