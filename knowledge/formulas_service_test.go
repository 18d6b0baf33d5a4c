package knowledge_test

import (
	"math"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/bearing"
	"wornfit/calc/interference"
	q "wornfit/calc/quantity"
	"wornfit/calc/wear"
)

func (f figures) tube(size string) interference.Ring {
	return interference.Ring{Bore: f.l("shaft.bore"), Outside: f.l(size), Elastic: f.metal("shaft.material")}
}

var chilledBush = []formula{
	{"bush.cold", func(f figures) (float64, bool) {
		e := assembly.Entry{Seat: f.l("bush_outside"), Interference: f.l("bush_outside") - f.l("hub_bore"), Hub: q.Expansion(f.v("hub.material.expansion")),
			Shaft: q.Expansion(f.v("hold/press.cold_share") * f.v("hub/bush.bush_material.expansion")), Room: 293.15} // the mean down to the cold
		return noted(assembly.ShaftTemperature(e, q.Length(f.v("hold/press.entry_rate")*f.v("hub_bore"))))
	}},
}

var pressedTube = []formula{
	{"shaft/true-up.shaft_give", func(f figures) (float64, bool) { return val(interference.ShaftGive(f.tube("shaft_size"))) }},
	{"hub/true-up.bore_give", func(f figures) (float64, bool) { return val(interference.HubGive(f.hub())) }},
	{"fit.inner_stress", func(f figures) (float64, bool) {
		p := q.Stress(f.v("fit.in_service"))
		if f.v("shaft.bore") == 0 {
			return float64(p), true // a solid shaft is pressed alike all through
		}
		s, ok := val(interference.BushHoop(f.l("shaft.bore"), f.l("shaft_size"), p))
		return -s, ok
	}},
	{"fit.force", func(f figures) (float64, bool) {
		return val(interference.PressForce(interference.Stroke{Seat: f.l("hub_bore"), SeatLength: f.l("fit.length"), HubLength: f.l("fit.length"), Travel: f.l("fit.length")},
			q.Stress(f.v("fit.pressure")), f.v("high(hold/press.friction)")))
	}},
}

var warmPin = []formula{
	{"purpose/oscillating.hot_loss", func(f figures) (float64, bool) {
		warmer := q.TemperatureChange(f.v("duty.temperature") - 293.15)
		const cold = q.Length(1e-3) // any clearance loses the same
		hot, ok := noted(bearing.PlainHotClearance(bearing.Plain{Clearance: cold, Shaft: f.l("shaft_size"), HubGrows: q.Expansion(f.v("hub.material.expansion")), HubsWarmer: warmer,
			ShaftExpands: q.Expansion(f.v("shaft/replace.stock.expansion")), ShaftWarmer: warmer + q.TemperatureChange(f.v("duty.shaft_hotter"))}))
		return float64(cold) - hot, ok
	}},
	{"purpose/oscillating.wear_rate", func(f figures) (float64, bool) {
		r, _, _, err := wear.Rate(worn(f))
		return max(float64(r), f.v("purpose/oscillating.least_rate")), err == nil
	}},
	{"purpose/oscillating.years", func(f figures) (float64, bool) {
		h := worn(f)
		left := f.v("purpose/oscillating.act_at") - f.v("purpose/oscillating.loosest")
		t, _, _, err := wear.LifeLeft(h, h.Now+q.Length(left))
		if err != nil || left <= 0 || f.v("purpose/oscillating.wear_rate") <= f.v("purpose/oscillating.least_rate") {
			return 0, false // worn out already, or not worn: the rule says 0, or goes by its least rate
		}
		life := float64(t) * f.v("purpose/oscillating.gain") / f.v("duty.hours_a_year") * f.v("purpose/oscillating.year")
		if f.v("duty.cause_cured") == 0 {
			life *= f.v("purpose/oscillating.ignored")
		}
		return life, true
	}},
}

// worn is what both parts lost, counted from nothing.
func worn(f figures) wear.History {
	return wear.History{Now: f.l("shaft.wear") + f.l("hub.wear"), Hours: q.Time(f.v("duty.hours"))}
}

// The same of what happens in service: warmth, wear, tubes and the cold way in.
func TestFormulasOfServiceAreThoseOfCalc(t *testing.T) {
	for _, c := range []struct {
		option, purpose string
		formulas        []formula
	}{
		{"shaft-true-up+hub-bush-press", "running", chilledBush},
		{"shaft-true-up+hub-true-up+fit-press", "press-fit", pressedTube},
		{"shaft-replace+hub-true-up", "oscillating", warmPin},
	} {
		held(t, c.option, c.purpose, c.formulas, 200)
	}
}

// The bore of a pressed bush grows warm as the rings of calc say: bush walls of
// 0.03 to 0.1 of the bore, hubs of 1.5 to 3 times the bush, metals as in
// knowledge/materials.
func TestAPressedBushGrowsAsTheRingsOfCalc(t *testing.T) {
	base := shipped(t)
	o, l, f := figuresOf(t, base, "shaft-true-up+hub-bush-press", "running")
	for _, d := range o.Dims { // a size is what was aimed at: these draws have no cut and no gauge
		f.nodes[d.ID] = d.Target
	}
	set := func(name string, v float64) { f.reg[f.nodes[name]] = v }
	regs := things(newDrawer(base, "shortcut"), &l)
	if len(regs) < 200 {
		t.Fatalf("only %d draws", len(regs))
	}
	hubs := [][3]float64{{198e9, 0.29, 12e-6}, {82e9, 0.26, 10.5e-6}, {124e9, 0.26, 10.8e-6}, {69e9, 0.33, 23.6e-6}} // steel, grey iron 20 and 40, aluminium
	bronzes := [][3]float64{{100e9, 0.34, 18e-6}, {104e9, 0.34, 19.9e-6}, {107e9, 0.32, 16.2e-6}}
	for i, reg := range regs {
		f.reg = reg
		hub, bronze := hubs[i%4], bronzes[i%3]
		wall, wide := 0.03+0.07*float64(i%17)/16, 1.5+1.5*float64(i%29)/28
		bore := f.v("bush_bore")
		set("bush_outside", bore*(1+2*wall))
		set("hub_bore", bore*(1+2*wall))
		set("hub.outside", bore*(1+2*wall)*wide)
		set("hub.material.E", hub[0])
		set("hub.material.nu", hub[1])
		set("hub.material.expansion", hub[2])
		set("hub/bush.bush_material.E", bronze[0])
		set("hub/bush.bush_material.nu", bronze[1])
		set("hub/bush.bush_material.expansion", bronze[2])
		l.prog.Run(f.reg)
		if got, want := f.v("hub/bush.bore_expansion"), boreGrows(t, f); !(math.Abs(got-want) <= 1e-9*want) {
			t.Errorf("the rule says %.6g, the rings %.6g", got, want)
		}
	}
}

// boreGrows is what the bore grows for each degree and size, bush and hub warmed
// alike, pressed tight enough to stay together.
func boreGrows(t *testing.T, f figures) float64 {
	t.Helper()
	bush, hub := f.bush(), f.metal("hub.material")
	bush.Alpha, hub.Alpha = q.Expansion(f.v("hub/bush.bush_material.expansion")), q.Expansion(f.v("hub.material.expansion"))
	r, _, err := bearing.HotClearance(bearing.Bushed{Shaft: bush.Bore, Press: bush.Outside / 100, Bush: bush, HousingMetal: hub,
		Housing: f.l("hub.outside"), BushWarmer: 1, HousingWarmer: 1})
	if err != nil {
		t.Fatal(err)
	}
	return float64(r.BoreGrows / bush.Bore)
}
