package link

import (
	"math"
	"strings"
	"testing"
)

func stepOrder(o *Option) string {
	var ids []string
	for _, s := range o.Steps {
		ids = append(ids, s.FullID)
	}
	return strings.Join(ids, " ")
}

// Stripping is named by both parts and done once; the bush is finished after it
// is in and after the shaft it suits; closing up is last.
func TestStepsInTheOrderTheyCanBeDone(t *testing.T) {
	b := newBench(t).stock()
	for _, c := range []struct{ shaft, hub, purpose, want string }{
		{"leave", "leave", "running", "strip leave-hub-dress leave-shaft-dress close-up"},
		{"true-up", "bush", "running", "strip true-up-shaft-turn bush-bore bush-turn bush.press-in bush-finish close-up"},
		{"leave", "bush", "press-fit", "strip leave-shaft-dress bush-bore bush-turn bush.press-in bush-finish fit.press-in close-up"},
		{"sleeve", "bush", "running", "strip bush-bore bush-turn bush.press-in bush-finish sleeve-seat sleeve-turn sleeve.press-in sleeve-finish close-up"},
	} {
		if got := stepOrder(b.joined(c.shaft, c.hub, c.purpose)); got != c.want {
			t.Errorf("shaft %s, hub %s, %s:\n got %s\nwant %s", c.shaft, c.hub, c.purpose, got, c.want)
		}
	}
}

// A part of the second cut that wants the mate's size waits for it even when
// it stands first in the list.
func TestStepWaitsForWhatItNeeds(t *testing.T) {
	b := newBench(t).stock()
	hub := b.part(sheet{id: "bush", side: Hub, metal: Kept, defines: b.leaveHubDefines(),
		steps: []stepText{{id: "gauge", hours: "1*h", needs: "shaft_ready"}}})
	shaft := b.leaveShaft()
	shaft.Steps[1].Gives = []string{"shaft_ready"}
	o := b.link(shaft, hub, b.named("running", Purpose), nil)
	if got, want := stepOrder(o), "strip leave-shaft-dress gauge close-up"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// Sums by hand: strip 1 h, turn 1/2 h, bore and turn and finish the bush 3 h,
// press 1/2 h, close up 1/2 h. Risk: 1 - 0.9 * 0.75.
func TestTotalsAndCriteria(t *testing.T) {
	o := newBench(t).stock().joined("true-up", "bush", "running")
	reg := regs(t, o, map[string]float64{"steps.strip_hours": 3600, "shaft/true-up.spoil": 0.1, "criteria.hour_worth": 3})
	for name, want := range map[string]float64{"total.hours": 5.5 * 3600, "total.wait": 0, "total.costs": 0} {
		if got := reg[o.Totals[name]]; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s is %g, want %g", name, got, want)
		}
	}
	for name, want := range map[string]float64{"risk": 0.325, "reversible": 0, "life": 4, "effort": 3*5.5 + 0.325} {
		if got := reg[o.Criteria[name]]; math.Abs(got-want) > 1e-12 {
			t.Errorf("%s is %g, want %g", name, got, want)
		}
	}
	if len(o.Scores) != 5 {
		t.Errorf("%d contributions, want 5", len(o.Scores))
	}
	o = newBench(t).stock().joined("leave", "leave", "running")
	if got := regs(t, o, nil)[o.Criteria["reversible"]]; got != 1 {
		t.Errorf("where no part says how far it is undone: %g, want the criterion's own 1", got)
	}
}

// A step done only in some cases counts only then.
func TestStepOnCondition(t *testing.T) {
	b := newBench(t).stock()
	shaft := b.part(sheet{id: "leave", side: Shaft, metal: Kept,
		defines: []defineText{{"shaft_large", "length", "shaft.largest"}, {"shaft_small", "length", "shaft.smallest"}, {"shaft_face", "row", "shaft.material"}},
		steps: []stepText{
			{id: "pull", hours: "2*h", when: "hub.comes_off"},
			{id: "never", hours: "4*h", when: `option.hub == "bush"`},
			{id: "always", hours: "1*h", when: `option.hub == "leave"`},
		}})
	o := b.link(shaft, b.named("leave", Hub), b.named("running", Purpose), nil)
	if s := stepOrder(o); strings.Contains(s, "never") || !strings.Contains(s, "always") {
		t.Errorf("steps %s", s)
	}
	for off, want := range map[float64]float64{0: 2.75, 1: 4.75} { // strip 1, dress 1/4, always 1, close up 1/2
		got := regs(t, o, map[string]float64{"hub.comes_off": off, "steps.strip_hours": 3600})[o.Totals["total.hours"]] / 3600
		if got != want {
			t.Errorf("hub comes off %g: %g h, want %g", off, got, want)
		}
	}
}
