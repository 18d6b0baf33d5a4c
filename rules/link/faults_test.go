package link

import (
	"errors"
	"strings"
	"testing"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// refused links and gives what was found wrong.
func refused(t *testing.T, b *bench, shaft, hub, purpose *Part, holds map[string]*Part) fault.List {
	t.Helper()
	o, err := Link(b.in, shaft, hub, holds, purpose)
	var list fault.List
	if !errors.As(err, &list) || o != nil {
		t.Fatalf("linked to %v with %v, want a list of faults and no option", o, err)
	}
	return list
}

func wants(t *testing.T, list fault.List, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(list.Error(), w) {
			t.Errorf("faults:\n%v\nwant %q among them", list, w)
		}
	}
	if len(list) != len(want) {
		t.Errorf("%d faults, want %d:\n%v", len(list), len(want), list)
	}
}

func (b *bench) hubWith(defines ...defineText) *Part {
	b.t.Helper()
	return b.part(sheet{id: "leave", side: Hub, metal: Kept, defines: append(b.leaveHubDefines(), defines...)})
}

// A value that rests on itself is told with the whole round, once however many
// rules use it.
func TestCircleIsToldWithItsChain(t *testing.T) {
	b := newBench(t).stock()
	hub := b.part(sheet{id: "leave", side: Hub, metal: Kept,
		defines: append(b.leaveHubDefines(), defineText{"a", "length", "b + hub.smallest"}, defineText{"b", "length", "c"}, defineText{"c", "length", "2*b"}),
		limits:  []ruleText{{id: "one", is: "a >= 0*mm"}, {id: "two", is: "b >= 0*mm"}}})
	list := refused(t, b, b.named("leave", Shaft), hub, b.named("running", Purpose), nil)
	wants(t, list, "hub/leave.b is worked out from itself: hub/leave.b <- hub/leave.c <- hub/leave.b")
}

// The same through two files and a joint: the give of a hub that is worked out
// from the pressure in it.
func TestCircleThroughFilesAndAJoint(t *testing.T) {
	b := newBench(t).stock()
	hub := b.bushHub()
	for i := range hub.Defines {
		if hub.Defines[i].ID == "hub_give" {
			hub.Defines[i].Is = b.expr(hub, scope{b: b, s: &sheet{}}, "bush.pressure/(hub.material.E*hub.material.E)")
		}
	}
	list := refused(t, b, b.named("leave", Shaft), hub, b.named("running", Purpose), map[string]*Part{"bush": b.named("press", Hold)})
	wants(t, list, "bush.pressure is worked out from itself: bush.pressure <- bush.gives <- joint bush.outer_give <- hub/bush.hub_give <- bush.pressure")
}

func TestRowThatStandsForItself(t *testing.T) {
	b := newBench(t).stock()
	hub := b.hubWith(defineText{"front", "row", "back"}, defineText{"back", "row", "front"}, defineText{"wide", "expansion", "front.expansion"})
	list := refused(t, b, b.named("leave", Shaft), hub, b.named("running", Purpose), nil)
	wants(t, list, "stands for itself")
}

// What the seam cannot give is told naming both files.
func TestSeamNamesBothFiles(t *testing.T) {
	b := newBench(t).stock()
	bare := b.part(sheet{id: "leave", side: Shaft, metal: Kept,
		defines: []defineText{{"shaft_small", "length", "shaft.smallest"}, {"shaft_face", "row", "shaft.material"}}})
	list := refused(t, b, bare, b.named("leave", Hub), b.named("running", Purpose), nil)
	for _, f := range list {
		if !strings.Contains(f.Says, "purpose/running asks for shaft_large, which shaft/leave does not define") {
			t.Errorf("told %v", f)
		}
	}
	hub := b.bushHub()
	delete(hub.Joints[0].Fields, "torque")
	list = refused(t, b, b.named("leave", Shaft), hub, b.named("running", Purpose), map[string]*Part{"bush": b.named("press", Hold)})
	wants(t, list, "hold/press asks for joint.torque, which hub/bush does not state for its joint bush")
}

func TestNamesNotKnown(t *testing.T) {
	b := newBench(t).stock()
	bad := func(name string, k lang.Type) *Part {
		hub := b.hubWith(defineText{"x", "length", "hub.smallest"})
		hub.Defines[len(hub.Defines)-1].Is = &lang.Expr{Op: lang.Name, Name: name, Type: k, At: fault.Place{File: "hub/leave.yaml", Line: 7, Column: 3}}
		return hub
	}
	for name, want := range map[string]string{
		"hub.smalest":           "hub.smalest is not known in hub/leave; did you mean hub.smallest?",
		"hub.material.expanson": "the table materials has no column expanson; did you mean expansion?",
		"bush.pressure":         "bush.pressure is not known in hub/leave",
		"option.bore":           "option.bore is not known",
	} {
		list := refused(t, b, b.named("leave", Shaft), bad(name, kind("length")), b.named("running", Purpose), nil)
		wants(t, list, want)
		if got := list[0].At.String(); got != "hub/leave.yaml:7:3" {
			t.Errorf("%s is told at %s", name, got)
		}
	}
}

func TestHoldsThatDoNotFit(t *testing.T) {
	b := newBench(t).stock()
	leave, bush, running, press := b.named("leave", Shaft), b.named("bush", Hub), b.named("running", Purpose), b.named("press", Hold)
	wants(t, refused(t, b, leave, bush, running, nil), "joint bush of shaft-leave+hub-bush has no hold; name one of its holds: press")
	wants(t, refused(t, b, leave, bush, running, map[string]*Part{"bush": b.named("slip", Hold)}), "hold/slip cannot hold joint bush", "has no joint bush for hold/slip to hold")
	wants(t, refused(t, b, leave, b.named("leave", Hub), running, map[string]*Part{"fit": press}), "has no joint fit for hold/press to hold")
	wants(t, refused(t, b, leave, b.named("leave", Hub), b.named("press-fit", Purpose), nil), "joint fit of shaft-leave+hub-leave has no hold; name one of its holds: press, slip")
}

func TestSizesThatDoNotFit(t *testing.T) {
	b := newBench(t).stock()
	hub := b.trueHub()
	hub.Choose[0].ID = "shaft_size"
	for i := range hub.Defines {
		hub.Defines[i].Is = nil
		hub.Defines[i].Row = "hub.material"
	}
	hub.Limits, hub.Finishes = nil, "shaft_size"
	list := refused(t, b, b.named("true-up", Shaft), hub, b.named("running", Purpose), nil)
	if !strings.Contains(list.Error(), "shaft_size is a size of hub/true-up and of shaft/true-up") {
		t.Errorf("told %v", list)
	}
	late := b.bushHub()
	late.Choose[0].Suits = "bush_bore"
	list = refused(t, b, b.named("leave", Shaft), late, b.named("running", Purpose), map[string]*Part{"bush": b.named("press", Hold)})
	if !strings.Contains(list.Error(), "hub_bore suits bush_bore, which is no size cut before it") {
		t.Errorf("told %v", list)
	}
}

func TestPicksThatCannotBeMade(t *testing.T) {
	b := newBench(t).stock()
	hub := func(picks ...pickText) *Part {
		return b.part(sheet{id: "bush", side: Hub, metal: More, picks: picks, defines: b.leaveHubDefines(),
			dims: []dimText{{"hub_bore", "", "hub.smallest", "hub.largest", ""}}})
	}
	list := refused(t, b, b.named("leave", Shaft), hub(pickText{"big", "shop.machines", "it.swing >= hub_bore", "", "first"}), b.named("running", Purpose), nil)
	wants(t, list, "a pick is made before any size is known; hub_bore is a size")
	list = refused(t, b, b.named("leave", Shaft), hub(pickText{"one", "materials", "it.nu >= two.nu", "", "first"}, pickText{"two", "materials", "it.nu >= one.nu", "", "first"}), b.named("running", Purpose), nil)
	wants(t, list, "picks wait for one another: hub/bush.one <- hub/bush.two <- hub/bush.one")
}

func TestStepsThatCannotBeDone(t *testing.T) {
	b := newBench(t).stock()
	hub := func(steps ...stepText) *Part {
		return b.part(sheet{id: "leave", side: Hub, metal: Kept, defines: b.leaveHubDefines(), steps: steps})
	}
	link := func(steps ...stepText) fault.List {
		return refused(t, b, b.named("leave", Shaft), hub(steps...), b.named("running", Purpose), nil)
	}
	wants(t, link(stepText{id: "a", needs: "b_done"}, stepText{id: "b", gives: "b_done"}), "steps wait for one another: a <- b <- a")
	wants(t, link(stepText{id: "a", needs: "hub_boer"}), "step a needs hub_boer, which no step gives")
	wants(t, link(stepText{id: "common:stripp"}), "steps.yaml has no step stripp")
}

func TestScoreForNoCriterion(t *testing.T) {
	b := newBench(t).stock()
	hub := b.hubWith()
	hub.Scores = []Score{{ID: "s", Criterion: "rsik", Is: &lang.Expr{Op: lang.Const, Value: 1}}}
	wants(t, refused(t, b, b.named("leave", Shaft), hub, b.named("running", Purpose), nil), "s counts towards rsik, which is no criterion; did you mean risk?")
}
