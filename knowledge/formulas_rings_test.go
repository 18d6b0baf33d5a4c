package knowledge_test

import (
	"math"
	"testing"

	"wornfit/calc/fits"
	"wornfit/calc/interference"
	q "wornfit/calc/quantity"
	"wornfit/calc/strength"
)

func (f figures) sleeve() interference.Ring {
	return interference.Ring{Bore: f.l("sleeve_bore"), Outside: f.l("sleeve_outside"), Elastic: f.metal("shaft/sleeve.sleeve_material")}
}

func (f figures) core() interference.Ring {
	return interference.Ring{Bore: f.l("shaft.bore"), Outside: f.l("undercut_size"), Elastic: f.metal("shaft.material")}
}

var sleeved = []formula{
	{"shaft/sleeve.core_give", func(f figures) (float64, bool) { return val(interference.ShaftGive(f.core())) }},
	{"shaft/sleeve.shaft_give", func(f figures) (float64, bool) {
		return val(interference.SleeveGive(f.sleeve(), interference.Give(f.v("shaft/sleeve.core_give"))))
	}},
	{"shaft/sleeve.hands_on", func(f figures) (float64, bool) {
		return val(interference.SleevePassesOn(f.sleeve(), interference.Give(f.v("shaft/sleeve.core_give"))))
	}},
	{"sleeve.pressure", func(f figures) (float64, bool) {
		outer, err := interference.HubGive(f.sleeve())
		tight := f.l("undercut_size") - f.l("sleeve_bore")
		if err != nil || tight < 0 {
			return 0, false // it hangs loose: the rule says 0
		}
		return val(interference.JointPressure(f.l("sleeve_bore"), tight, interference.Give(f.v("shaft/sleeve.core_give")), outer))
	}},
	{"shaft/sleeve.growth", func(f figures) (float64, bool) {
		return val(interference.SleeveGrowth(f.sleeve(), q.Stress(f.v("sleeve.pressure"))))
	}},
	{"shaft/sleeve.twist", func(f figures) (float64, bool) {
		return val(strength.Twisting(strength.Section{Bore: f.l("shaft.bore"), Outside: f.l("undercut_size")}, q.Torque(f.v("duty.starting_factor")*f.v("duty.torque"))))
	}},
}

// A lining soldered into its shell warms as a pressed bush does: free, less what
// shell and lining press on each other.
var relined = []formula{
	{"hub/re-line.bore_expansion", func(f figures) (float64, bool) {
		lining := interference.Ring{Bore: f.l("lining_bore"), Outside: f.l("hub.bush_outside"), Elastic: f.metal("hub/re-line.lining")}
		shell, err := interference.HubGive(interference.Ring{Bore: f.l("hub.bush_outside"), Outside: f.l("hub.outside"), Elastic: f.metal("hub.material")})
		inner, err2 := interference.ShaftGive(lining)
		if err != nil || err2 != nil {
			return 0, false
		}
		free, shells := f.v("hub/re-line.lining.expansion"), f.v("hub.material.expansion")
		perKelvin := (free - shells) / (float64(shell) + float64(inner))
		closes, err := interference.CloseIn(lining, q.Stress(math.Abs(perKelvin)))
		return free - math.Copysign(float64(closes), perKelvin)/f.v("lining_bore"), err == nil
	}},
}

var rebushed = []formula{
	{"hub/re-bush.bore_give", func(f figures) (float64, bool) {
		hub, err := interference.HubGive(interference.Ring{Bore: f.l("hub.bush_outside"), Outside: f.l("hub.outside"), Elastic: f.metal("hub.material")})
		if err != nil {
			return 0, false
		}
		return val(interference.BackedBushGive(interference.Ring{Bore: f.l("bush_bore"), Outside: f.l("hub/re-bush.bush_outside"), Elastic: f.metal("hub/re-bush.bush_material")}, hub))
	}},
	{"hub/re-bush.close_in", func(f figures) (float64, bool) {
		return val(interference.CloseIn(interference.Ring{Bore: f.l("bush_bore"), Outside: f.l("hub/re-bush.bush_outside"), Elastic: f.metal("hub/re-bush.bush_material")}, q.Stress(f.v("bush.pressure"))))
	}},
}

// Rings in rings, in each file that has them, are the rings of calc.
func TestRingsInRulesAreThoseOfCalc(t *testing.T) {
	held(t, "shaft-sleeve-press+hub-leave+fit-press", "press-fit", sleeved, 100)
	held(t, "shaft-leave+hub-re-line", "running", relined, 50)                    // half the draws have no ring: the lining is larger than its shell
	held(t, "shaft-leave+hub-re-bush-press+fit-press", "press-fit", rebushed, 50) // nor have these, where the bore is drawn larger than the hole
}

// A warmed sleeve grows at its outside as calc's rings do: free growth, and what
// the change of pressure on its shaft adds or takes.
func TestAWarmedSleeveGrowsAsTheRingsOfCalc(t *testing.T) {
	_, l, f := figuresOf(t, shipped(t), "shaft-sleeve-press+hub-leave", "running")
	n := 0
	for _, f.reg = range things(newDrawer(shipped(t), "warm sleeve"), &l) {
		outer, err := interference.HubGive(f.sleeve())
		if err != nil || f.v("shaft/sleeve.core_give") <= 0 {
			continue
		}
		shaft, sleeve := f.v("shaft.material.expansion"), f.v("shaft/sleeve.sleeve_material.expansion")
		perKelvin := (shaft - sleeve) / (f.v("shaft/sleeve.core_give") + float64(outer)) // of pressure, below 0 when it lets go
		growth, err := interference.SleeveGrowth(f.sleeve(), q.Stress(math.Abs(perKelvin)))
		if err != nil {
			continue
		}
		n++
		want := sleeve + math.Copysign(float64(growth), perKelvin)/f.v("sleeve_outside")
		if got := f.v("shaft/sleeve.shaft_expansion"); math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Fatalf("the sleeve grows %.9g a kelvin by the rule, %.9g by calc", got, want)
		}
	}
	if n < 100 {
		t.Errorf("compared in %d draws only", n)
	}
}

// A shaft bought to no stated fit is an h7, never narrower; one that is stated
// gives, in an H7 hole of nominal size, the fit when new and no more.
func TestABoughtShaftGivesTheFitWhenNew(t *testing.T) {
	o, err := linkNamed(shipped(t), "shaft-buy+hub-leave", "running")
	if err != nil {
		t.Fatal(err)
	}
	h7, err := fits.ReadClass("H7")
	if err != nil {
		t.Fatal(err)
	}
	reg := numbered(o)
	at := namesOf(o)
	n := 0
	for mm := 3.05; mm < 400; mm += 0.7 {
		limits, _, err := fits.Of(q.Length(mm*1e-3), h7)
		if err != nil {
			t.Fatal(err)
		}
		width := float64(limits.Upper)
		run := func(stated, least, most float64) (large, small float64) {
			reg[at["fit.nominal"]], reg[at["fit.new_stated"]], reg[at["fit.new_least"]], reg[at["fit.new_most"]] = mm*1e-3, stated, least, most
			o.Program.Run(reg)
			return reg[at["shaft/buy.shaft_large"]], reg[at["shaft/buy.shaft_small"]]
		}
		large, small := run(0, 0, 0)
		if math.Abs(large-mm*1e-3) > 1e-12 || large-small < width || large-small > 1.4*width {
			t.Errorf("at %.2f mm the shaft is %.1f um wide; an h7 is %.1f", mm, (large-small)*1e6, width*1e6)
		}
		least, most := 0.02e-3, 0.02e-3+3*width
		large, small = run(1, least, most)
		if tight := mm*1e-3 - large; tight < least || tight > least+0.2*(most-least) {
			t.Errorf("at %.2f mm the least play is %.1f um, 20 when new", mm, tight*1e6)
		}
		if loose := mm*1e-3 + width - small; loose > most || loose < most-0.2*(most-least)-0.5*width {
			t.Errorf("at %.2f mm the most play is %.1f um, %.1f when new", mm, loose*1e6, most*1e6)
		}
		n++
	}
	if n < 500 {
		t.Errorf("only %d sizes were looked at", n)
	}
}

// A bought thin bush is what its sizes say: walls that fill the ring between
// them, a tolerance that is thin beside the wall, and no size twice.
func TestBoughtBushesAreRings(t *testing.T) {
	base := shipped(t)
	rows := base.Rows("bush_sizes")
	seen := map[[3]float64]string{}
	for _, r := range rows {
		v := func(name string) float64 { return r.Columns[name].Best }
		ring := (v("outside") - v("bore")) / 2
		if v("wall_least") >= v("wall_most") || math.Abs(v("wall_most")-ring) > 0.01e-3 || v("wall_most")-v("wall_least") > 0.05e-3 {
			t.Errorf("%s: walls %.3f to %.3f mm in a ring of %.3f mm", r.ID, v("wall_least")*1e3, v("wall_most")*1e3, ring*1e3)
		}
		key := [3]float64{v("rolled"), v("bore"), v("outside")}
		if was, again := seen[key]; again {
			t.Errorf("%s is %s again", r.ID, was)
		}
		seen[key] = r.ID
	}
	if len(rows) < 30 {
		t.Errorf("only %d sizes are listed", len(rows))
	}
}
