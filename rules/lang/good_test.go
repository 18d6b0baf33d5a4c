package lang

import "testing"

// goodExpressions are expressions as a rule file of this trade has them: each must pass as it
// stands. A checker that cries wolf is switched off.
var goodExpressions = []string{
	"shaft.smallest - 2*datum.offset - least_cut",
	"shaft_size",
	"((1 + (shaft.bore/shaft_size)**2)/(1 - (shaft.bore/shaft_size)**2) - shaft.material.nu)/shaft.material.E",
	"(1 - shaft.material.nu)/shaft.material.E",
	"shaft_size <= clean_up",
	"shaft_size >= shaft.least_strong",
	"it.turns",
	"it.tolerance",
	"not shaft.case_hardened",
	"it.braze and wets(it, shaft.material)",
	"(shaft_size - undercut_size)/2",
	"undercut_size <= shaft.smallest - 2*datum.offset",
	"coat >= least_coat",
	"build_up_size >= shaft_size + low(turn_off)",
	"((1 + (bush_bore/hub_bore)**2)/(1 - (bush_bore/hub_bore)**2) - bush_material.nu)/bush_material.E",
	"((1 + (hub_bore/hub.outside)**2)/(1 - (hub_bore/hub.outside)**2) + hub.material.nu)/hub.material.E",
	"2/(1 - (bush_bore/hub_bore)**2)",
	"(1 + (hub_bore/hub.outside)**2)/(1 - (hub_bore/hub.outside)**2)",
	"(bush_outside - bush_bore)/2",
	"2*bush.pressure*bush_bore/((1 - (bush_bore/hub_bore)**2)*bush_material.E)",
	"hub_bore >= hub.largest + 2*datum.offset",
	"wall >= least_wall",
	"low(left_to_bore) >= close_in",
	"joint.inner_size - joint.outer_size",
	"tight/(joint.outer_size*(joint.inner_give + joint.outer_give))",
	"low(press_friction)*pressure*pi*joint.outer_size**2/2*joint.length",
	"low(press_friction)*pressure*pi*joint.outer_size*joint.length",
	"high(press_friction)*pressure*pi*joint.outer_size*joint.length",
	"tight >= 0*mm",
	"grip_torque >= grip_margin*joint.torque",
	"grip_thrust >= grip_margin*joint.thrust",
	"pressure*joint.inner_hoop <= part_of_yield*joint.inner_material.yield",
	"pressure*joint.outer_hoop <= part_of_yield*joint.outer_material.yield",
	"not joint.outer_material.brittle",
	"shop.press.force >= press_reserve*force",
	`it.purpose == "running" and it.speed == duty.speed_band`,
	"bore_small - shaft_large",
	"bore_large - shaft_small",
	"shaft_large*duty.temperature_rise*(shaft_face.expansion - bore_face.expansion)",
	"high(rub_friction)*duty.load*shaft_large/2",
	"duty.thrust",
	"tightest - hot_loss >= class.least",
	"loosest <= class.most",
	"loosest <= act_ratio*class.most",
	`pair(shaft_face, bore_face) != "bad"`,
	"max(tight, 0*mm)/(joint.outer_size*hub_give)",
	"pressure*sqrt(joint.outer_hoop**2 + joint.outer_hoop + 1)",
	"degC(20) + tight/(joint.outer_size*bore_face.expansion)",
	`not (hub.comes_off and duty.shock == "heavy")`,
	`hub.comes_off or not (duty.shock == "heavy")`,
	"max(fit.length <= least_wall ? wall : coat, least_wall)",
	"pi/4*(bush_outside + coat)**2*(fit.length + wall)",
	`duty.shock == "none" ? 1/2 : 1/4`,
	"set_up + cut",
	"2*pi*duty.rotation*stroke",
	"rub_speed(shaft_large, duty.rotation)",
	"abs(wall - coat) <= 4*thou",
	"wall <= 1/4*inch",
	"-wall**2",
	`duty.shock in ["light", "heavy"]`,
	`duty.shock not in ["light", "heavy"] and it.bush`,
	`"heavy" != duty.shock`,
	`hub.comes_off ? wall : -coat`,
	`shock_factor(duty.shock)*wall`,
	"  wall  ",
	"(wall)",
}

func TestGoodExpressionsPass(t *testing.T) {
	for _, source := range goodExpressions {
		inferred(t, source)
	}
}

// What the sketch of a filler wrote by looking up in brackets is a call of a
// lookup: the bracket form is told, the call passes above.
func TestLookupInBracketsIsTold(t *testing.T) {
	source := "it.braze and it.wets[shaft.material]"
	mustTell(t, source, told(source), tell{"it.wets[shaft.material]", "[ ] looks something up", "call a lookup"})
}

func TestNamesAreWalkedInReadingOrder(t *testing.T) {
	var got []string
	inferred(t, "low(turn_off) + wall*(hub_bore - wall)/hub_bore").Names(func(n string, _ Type) { got = append(got, n) })
	want := []string{"turn_off", "wall", "hub_bore", "wall", "hub_bore"}
	if len(got) != len(want) {
		t.Fatalf("got %v", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("got %v, want %v", got, want)
		}
	}
}

// One Source may be checked against many scopes, and says the same each time.
func TestCheckingChangesNothing(t *testing.T) {
	s, _ := Parse(text("hub.outsid + min(wall, force)"))
	_, first := s.Infer(bench())
	_, second := s.Infer(bench())
	if first.Error() != second.Error() || len(first) != 2 {
		t.Errorf("first %v\nthen %v", first, second)
	}
}
