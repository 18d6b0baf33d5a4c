package link

import (
	"math"
	"strings"
	"testing"

	"wornfit/rules/tape"
)

// What has less freedom is finished first: kept, then less metal, then more;
// alike, the hub. The second finished size is cut to the first.
func TestCuttingOrder(t *testing.T) {
	b := newBench(t).stock()
	for _, c := range []struct{ shaft, hub, want string }{
		{"leave", "leave", ""},
		{"leave", "true-up", "hub_bore"},
		{"leave", "bush", "hub_bore bush_outside<hub_bore bush_bore"},
		{"true-up", "leave", "shaft_size"},
		{"true-up", "true-up", "hub_bore shaft_size<hub_bore"},
		{"true-up", "bush", "shaft_size hub_bore bush_outside<hub_bore bush_bore<shaft_size"},
		{"sleeve", "leave", "sleeve_seat sleeve_bore<sleeve_seat shaft_size"},
		{"sleeve", "true-up", "hub_bore sleeve_seat sleeve_bore<sleeve_seat shaft_size<hub_bore"},
		{"sleeve", "bush", "hub_bore bush_outside<hub_bore bush_bore sleeve_seat sleeve_bore<sleeve_seat shaft_size<bush_bore"},
	} {
		o := b.joined(c.shaft, c.hub, "running")
		var got []string
		for _, d := range o.Dims {
			s := d.ID
			if d.Suits != "" {
				s += "<" + d.Suits
			}
			got = append(got, s)
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("shaft %s, hub %s: sizes in the order %q, want %q", c.shaft, c.hub, s, c.want)
		}
	}
}

// A part that is kept has the size it is read at: nothing is cut to suit it, even
// where its file names a size.
func TestNothingSuitsAKeptSize(t *testing.T) {
	b := newBench(t).stock()
	bought := b.part(sheet{id: "leave", side: Hub, metal: Kept, finishes: "bought_bore", defines: b.leaveHubDefines(),
		dims: []dimText{{"bought_bore", "", "hub.smallest", "hub.largest", ""}}})
	o := b.link(b.named("true-up", Shaft), bought, b.named("running", Purpose), nil)
	if d := o.Dims[1]; d.ID != "shaft_size" || d.Suits != "" {
		t.Errorf("%s suits %q, want shaft_size suiting nothing", d.ID, d.Suits)
	}
}

// regs runs an option with some slots set; all others stand at 0.
func regs(t *testing.T, o *Option, set map[string]float64) []float64 {
	t.Helper()
	reg := make([]float64, o.Program.Len())
	o.Program.Start(reg)
	for name, v := range set {
		n, ok := o.Program.Slot(name)
		if !ok {
			t.Fatalf("%s has no slot %s", o.ID, name)
		}
		reg[n] = v
	}
	o.Program.Run(reg)
	return reg
}

func slope(o *Option, reg []float64, root tape.Node, slot string) float64 {
	adjoint := make([]float64, len(reg))
	o.Program.Gradient(reg, adjoint, root)
	n, _ := o.Program.Slot(slot)
	return adjoint[n]
}

// The bush is turned to the bore that was made: how far that cut missed its
// target does not reach the interference, how it was gauged does.
func TestInterferenceRestsOnTheGaugeNotOnTheFirstCut(t *testing.T) {
	o := newBench(t).stock().joined("leave", "bush", "running")
	reg := regs(t, o, map[string]float64{
		"hub_bore.target": 31.00e-3, "hub_bore.cut": 15e-6, "hub_bore.gauge": -4e-6,
		"bush_outside.target": 31.04e-3, "bush_outside.cut": -5e-6, "bush_outside.gauge": 2e-6,
		"bush_bore.target": 25e-3,
	})
	tight := check(t, o, "bush.press-tight")
	// 40 um of targets, less 5 um of the second cut, plus 2 + 4 um of gauging
	if got, want := reg[tight.Margin], 41e-6; math.Abs(got-want) > 1e-15 {
		t.Errorf("the bush is %g m tight, want %g", got, want)
	}
	for slot, want := range map[string]float64{
		"hub_bore.target": -1, "hub_bore.cut": 0, "hub_bore.gauge": -1, "bush_outside.target": 1, "bush_outside.cut": 1, "bush_outside.gauge": 1,
	} {
		if got := slope(o, reg, tight.Margin, slot); got != want {
			t.Errorf("interference moves by %g for each of %s, want %g", got, slot, want)
		}
	}
	// the bore itself is what it is: its cut counts for cleaning up
	if got := slope(o, reg, check(t, o, "bush-cleans").Margin, "hub_bore.cut"); got != 1 {
		t.Errorf("clean-up moves by %g for each of the bore's own cut, want 1", got)
	}
}

// A mate across the seam follows in the same way.
func TestMateFollowsTheMadeSize(t *testing.T) {
	o := newBench(t).stock().joined("true-up", "bush", "running")
	free := check(t, o, "run-free")
	reg := regs(t, o, map[string]float64{"shaft_size.target": 24.9e-3, "shaft_size.cut": -30e-6, "bush_bore.target": 24.95e-3, "bush_bore.cut": 10e-6,
		"purpose/running.least": 30e-6, "bush_outside.target": 30e-3, "hub_bore.target": 30e-3})
	if got, want := reg[free.Margin], 30e-6; math.Abs(got-want) > 1e-15 {
		t.Errorf("clearance in hand is %g m, want 60 um of clearance less 30 um", got)
	}
	for slot, want := range map[string]float64{"shaft_size.cut": 0, "shaft_size.gauge": -1, "bush_bore.cut": 1, "bush_bore.gauge": 1, "purpose/running.least": -1} {
		if got := slope(o, reg, free.Margin, slot); got != want {
			t.Errorf("clearance moves by %g for each of %s, want %g", got, slot, want)
		}
	}
}
