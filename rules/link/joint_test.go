package link

import (
	"math"
	"slices"
	"strings"
	"testing"

	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// A sleeved shaft pressed into a bushed hub: one hold file stands in three
// joints of one option and each speaks for itself.
func TestOneHoldInThreeJoints(t *testing.T) {
	o := newBench(t).stock().joined("sleeve", "bush", "press-fit")
	if want := "shaft-sleeve-press+hub-bush-press+fit-press"; o.ID != want {
		t.Errorf("the option is called %s, want %s", o.ID, want)
	}
	seen := map[string]bool{}
	for _, c := range o.Checks {
		if seen[c.FullID] {
			t.Errorf("two rules are called %s", c.FullID)
		}
		seen[c.FullID] = true
	}
	reg := regs(t, o, map[string]float64{
		"sleeve_seat.target": 20.03e-3, "sleeve_bore.target": 20e-3,
		"bush_outside.target": 31.05e-3, "hub_bore.target": 31e-3,
		"shaft_size.target": 25.02e-3, "bush_bore.target": 25e-3,
	})
	for id, want := range map[string]float64{"sleeve.press-tight": 30e-6, "bush.press-tight": 50e-6, "fit.press-tight": 20e-6} {
		if got := reg[check(t, o, id).Margin]; math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g m tight, want %g", id, got, want)
		}
	}
	// sizes of the bush joint stand for its largest and smallest too
	for _, n := range o.Named {
		if (n.Name == "bush.tight_most" || n.Name == "bush.tight_least") && math.Abs(reg[n.Node]-50e-6) > 1e-12 {
			t.Errorf("%s is %g m, want 50 um", n.Name, reg[n.Node])
		}
	}
	var names []string
	for _, n := range o.Named {
		if strings.HasSuffix(n.Name, ".pressure") {
			names = append(names, n.Name)
		}
	}
	slices.Sort(names)
	if got := strings.Join(names, " "); got != "bush.pressure fit.pressure sleeve.pressure" {
		t.Errorf("pressures are called %q", got)
	}
	var friction []string
	for _, s := range o.Slots {
		if s.Kind == NumberSlot && s.Number.ID == "friction" {
			friction = append(friction, s.Name)
		}
	}
	if len(friction) != 1 || friction[0] != "low(hold/press.friction)" {
		t.Errorf("the friction of all three presses is %v, want the one number of the hold", friction)
	}
}

// The press on the finished fit takes the tightest of the two surfaces for its
// pressure and the loosest for its grip. A worn shaft of 29.98 to 30.02 in a
// hub of 29.99 to 30.00: 30 um tight at the most, 20 um loose at the least.
func TestFinishedFitKnowsBothEnds(t *testing.T) {
	o := newBench(t).stock().joined("leave", "leave", "press-fit")
	reg := regs(t, o, map[string]float64{"shaft.largest": 30.02e-3, "shaft.smallest": 29.98e-3, "hub.smallest": 29.99e-3, "hub.largest": 30.00e-3,
		"hub.outside": 60e-3, "shaft.material.E": 200e9, "shaft.material.nu": 0.3, "hub.material.E": 100e9, "hub.material.nu": 0.25})
	if got := reg[check(t, o, "fit.press-tight").Margin]; math.Abs(got+20e-6) > 1e-12 {
		t.Errorf("tight at the least is %g m, want -20 um", got)
	}
	// Lamé by hand: hub (60^2+30^2)/(60^2-30^2) = 5/3, give (5/3+0.25)/100 GPa = 19.1667e-12; shaft (1-0.3)/200 GPa = 3.5e-12
	want := 30e-6 / (29.99e-3 * (19.1667e-12 + 3.5e-12))
	i := slices.IndexFunc(o.Named, func(n Named) bool { return n.Name == "fit.pressure" })
	if got := reg[o.Named[i].Node]; math.Abs(got-want)/want > 1e-5 {
		t.Errorf("pressure is %.6g Pa, want %.6g by hand", got, want)
	}
}

// A name for a row stands for whatever row the treatment runs on.
func TestRowsUnderOtherNames(t *testing.T) {
	b := newBench(t).stock()
	for _, c := range []struct{ shaft, hub, purpose, rule, want string }{
		{"leave", "leave", "running", "run-grows", "shaft.material.expansion hub.material.expansion wishes.interchange"},
		{"true-up", "bush", "running", "run-grows", "shaft.material.expansion hub/bush.bush_material.expansion wishes.interchange"},
		{"sleeve", "bush", "running", "run-grows", "shaft/sleeve.sleeve_material.expansion hub/bush.bush_material.expansion wishes.interchange"},
		{"leave", "leave", "press-fit", "fit.press-inner", "shaft.material.yield"},
		{"sleeve", "leave", "press-fit", "fit.press-inner", "shaft/sleeve.sleeve_material.yield"},
		{"leave", "bush", "running", "bush.press-inner", "hub/bush.bush_material.yield"},
		{"sleeve", "leave", "running", "sleeve.press-inner", "shaft.material.yield"},
	} {
		o := b.joined(c.shaft, c.hub, c.purpose)
		k := check(t, o, c.rule)
		node := k.Right
		if k.Need {
			node = k.Margin
		}
		uses := map[string]bool{}
		for _, s := range o.Uses(node) {
			uses[s.Name] = true
		}
		for _, want := range strings.Fields(c.want) {
			if !uses[want] {
				t.Errorf("%s: %s rests on %v, want %s among them", o.ID, c.rule, uses, want)
			}
		}
		if len(uses) != len(strings.Fields(c.want)) {
			t.Errorf("%s: %s rests on %v, want %s alone", o.ID, c.rule, uses, c.want)
		}
	}
}

// A joint that does not say how its parts grow with heat means its materials.
func TestJointFallsBackOnItsMaterials(t *testing.T) {
	o := newBench(t).stock().joined("leave", "bush", "running")
	i := slices.IndexFunc(o.Named, func(n Named) bool { return n.Name == "bush.warm" })
	if i < 0 {
		t.Fatal("bush.warm is not listed")
	}
	var names []string
	for _, s := range o.Uses(o.Named[i].Node) {
		names = append(names, s.Name)
	}
	if got := strings.Join(names, " "); got != "hub/bush.bush_material.expansion hub.material.expansion" {
		t.Errorf("bush.warm rests on %s", got)
	}
}

// A rule for one purpose is no rule of another.
func TestRuleOfAnotherPurposeIsLeftOut(t *testing.T) {
	b := newBench(t).stock()
	for purpose, want := range map[string]bool{"running": false, "press-fit": true} {
		o := b.joined("leave", "bush", purpose)
		at := slices.IndexFunc(o.Checks, func(c Check) bool { return c.ID == "bush-for-press-fit" })
		if got := at >= 0; got != want {
			t.Errorf("%s: bush-for-press-fit stands among the rules: %t, want %t", o.ID, got, want)
		}
		if at >= 0 && o.Checks[at].When != 0 {
			t.Errorf("%s: bush-for-press-fit is always asked, yet it has a condition left", o.ID)
		}
	}
}

// A file says once what it does to each kind of neighbour; what it cannot live
// with is a rule of its own.
func TestNeighboursRuledOut(t *testing.T) {
	o := newBench(t).stock().joined("true-up", "bush", "press-fit")
	for id, slot := range map[string]string{
		"true-up-shaft-near-spline":   "shaft.near_spline",
		"bush-hub-near-keyway":        "hub.near_keyway",
		"bush.press-hub-near-spline":  "hub.near_spline",
		"fit.press-hub-near-spline":   "hub.near_spline",
		"fit.press-shaft-near-spline": "shaft.near_spline",
	} {
		c := check(t, o, id)
		if !c.Need || c.Strength != Must || c.Ground != Geometry {
			t.Errorf("%s is need %t, strength %d, ground %d; want a must of geometry", id, c.Need, c.Strength, c.Ground)
		}
		for there, kept := range map[float64]bool{0: true, 1: false} {
			if got := o.Program.Keeps(regs(t, o, map[string]float64{slot: there}), c.Margin); got != kept {
				t.Errorf("%s with %s %g: kept %t, want %t", id, slot, there, got, kept)
			}
		}
	}
	if got := check(t, o, "bush-hub-near-keyway").Why[0].Text; got != "a keyway would cut the bush in two" {
		t.Errorf("the reason given is %q", got)
	}
	for _, c := range o.Checks {
		if strings.HasSuffix(c.FullID, "near-keyway") && c.Of.ID == "true-up" {
			t.Errorf("%s is a rule, though a keyway there is restored", c.FullID)
		}
	}
}

// What a sentence puts in: a value of the program, or the row picked.
func TestWordsOfRulesAndSteps(t *testing.T) {
	o := newBench(t).stock().joined("true-up", "bush", "running")
	reg := regs(t, o, map[string]float64{"bush_outside.target": 30e-3, "bush_bore.target": 25e-3})
	why := check(t, o, "bush-wall").Why
	if len(why) != 2 || why[0].Text != "the wall comes to " || math.Abs(reg[why[1].Node]-2.5e-3) > 1e-12 {
		t.Errorf("the wall is told as %+v", why)
	}
	i := slices.IndexFunc(o.Steps, func(s LinkedStep) bool { return s.ID == "true-up-shaft-turn" })
	if w := o.Steps[i].Words; len(w) != 2 || w[1].Row != "shaft/true-up.datum" || o.Steps[i].OnPick != "shaft/true-up.turner" {
		t.Errorf("the step is told as %+v on %q", w, o.Steps[i].OnPick)
	}
}

// Every expression of every option, worked out a second time by walking its
// tree with the values of its names, comes to what the program has.
func TestProgramIsTheExpressions(t *testing.T) {
	b := newBench(t).stock()
	b.in.Trace = true
	options := 0
	for _, p := range b.in.of(Purpose) {
		for _, c := range All(b.in, p) {
			o, err := c.Link(b.in)
			if err != nil {
				t.Fatal(err)
			}
			options++
			set := map[string]float64{}
			for i, s := range o.Slots {
				set[s.Name] = 0.3 + math.Mod(float64(i)*0.618, 1) // apart from one another and from 0
				if s.YesNo {
					set[s.Name] = float64(i % 2)
				}
			}
			reg := regs(t, o, set)
			if len(o.Lowered) < len(o.Checks) {
				t.Fatalf("%s lists %d expressions for %d rules", o.ID, len(o.Lowered), len(o.Checks))
			}
			same(t, o.ID, o.Lowered, reg)
			for _, k := range o.Picks {
				if k.Where != 0 && len(k.Lowered) == 0 {
					t.Errorf("%s: the pick %s lists no expression", o.ID, k.Full)
				}
				reg := make([]float64, k.Program.Len())
				k.Program.Start(reg)
				for i, s := range k.Slots {
					if reg[s.Node] = 0.1 + float64(i%3); s.YesNo {
						reg[s.Node] = float64(i % 2)
					}
				}
				k.Program.Run(reg)
				same(t, o.ID, k.Lowered, reg)
			}
		}
	}
	if options != 9+2*9 { // one hold for sleeve and bush, two for a finished fit
		t.Errorf("%d options were tried, want 27", options)
	}
}

func same(t *testing.T, id string, list []Lowered, reg []float64) {
	t.Helper()
	for _, l := range list {
		got, want := reg[l.Node], walk(t, l.Expr, l.Names, reg)
		if math.Abs(got-want) > 1e-9*math.Abs(want) || math.IsNaN(got) != math.IsNaN(want) {
			t.Errorf("%s: %s: the program has %g, the expression %g", id, l.Expr.At, got, want)
		}
	}
}

// walk works an expression out by its tree.
func walk(t *testing.T, e *lang.Expr, names map[string]tape.Node, reg []float64) float64 {
	v := func(i int) float64 { return walk(t, e.Args[i], names, reg) }
	truth := func(b bool) float64 {
		if b {
			return 1
		}
		return 0
	}
	switch e.Op {
	case lang.Const:
		return e.Value
	case lang.Name:
		return reg[names[e.Name]]
	case lang.Low:
		return reg[names["low("+e.Args[0].Name+")"]]
	case lang.High:
		return reg[names["high("+e.Args[0].Name+")"]]
	case lang.Add:
		return v(0) + v(1)
	case lang.Sub:
		return v(0) - v(1)
	case lang.Mul:
		return v(0) * v(1)
	case lang.Div:
		return v(0) / v(1)
	case lang.Pow:
		return math.Pow(v(0), v(1))
	case lang.Max:
		return max(v(0), v(1))
	case lang.LessEq:
		return truth(v(0) <= v(1))
	case lang.GreaterEq:
		return truth(v(0) >= v(1))
	case lang.And:
		return truth(v(0) > 0 && v(1) > 0)
	case lang.Equal:
		return truth(v(0) == v(1))
	case lang.Or:
		return truth(v(0) > 0 || v(1) > 0)
	case lang.Not:
		return truth(!(v(0) > 0))
	}
	t.Fatalf("%s: the test does not know op %d", e.At, e.Op)
	return 0
}

// What a hold settles, such as how hot a part is made, comes right after the
// two sizes of its joint and bears the joint's name.
func TestHoldsChoiceFollowsItsSizes(t *testing.T) {
	b := newBench(t).stock()
	shrink := b.part(sheet{id: "press", side: Hold,
		dims:    []dimText{{"entry_gap", "", "joint.inner_size/4", "joint.inner_size", ""}, {"way_in", "", "entry_gap", "2*entry_gap", "entry_gap"}},
		defines: []defineText{{"pressure", "stress", "0*MPa"}, {"grip_torque", "torque", "0*Nm"}, {"grip_thrust", "force", "0*N"}},
		limits:  []ruleText{{id: "press-room", is: "entry_gap >= joint.inner_size - joint.outer_size"}}})
	o := b.link(b.named("true-up", Shaft), b.named("bush", Hub), b.named("press-fit", Purpose), map[string]*Part{"bush": shrink, "fit": shrink})
	var ids []string
	for _, d := range o.Dims {
		ids = append(ids, d.ID)
	}
	want := "shaft_size hub_bore bush_outside bush.entry_gap bush.way_in bush_bore fit.entry_gap fit.way_in"
	if got := strings.Join(ids, " "); got != want {
		t.Errorf("sizes in the order %s\nwant %s", got, want)
	}
	reg := regs(t, o, map[string]float64{"bush.entry_gap.target": 1e-4, "bush.entry_gap.cut": 1e-6, "bush.way_in.target": 5e-4, "bush_outside.target": 30e-3, "hub_bore.target": 30e-3})
	i := slices.IndexFunc(o.Dims, func(d Dim) bool { return d.ID == "bush.way_in" })
	if got := reg[o.Dims[i].Value]; math.Abs(got-5.01e-4) > 1e-15 {
		t.Errorf("the way in is %g, want its target and what the gap missed by", got)
	}
}
