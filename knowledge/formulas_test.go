package knowledge_test

import (
	"math"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/bearing"
	"wornfit/calc/interference"
	q "wornfit/calc/quantity"
	"wornfit/calc/strength"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// formula is a value that a rule file writes out, and the calculation of the
// same thing in calc; ok is false where calc refuses the draw.
type formula struct {
	name string
	calc func(f figures) (v float64, ok bool)
}

// figures reads the values of one draw by their names in the option.
type figures struct {
	t     *testing.T
	nodes map[string]tape.Node
	reg   []float64
}

func (f figures) v(name string) float64 {
	n, ok := f.nodes[name]
	if !ok {
		f.t.Fatalf("the option has no value %s", name)
	}
	return f.reg[n]
}

func (f figures) put(name string, v float64) { f.reg[f.nodes[name]] = v }

func (f figures) l(name string) q.Length { return q.Length(f.v(name)) }

func (f figures) metal(row string) interference.Elastic {
	return interference.Elastic{E: q.Stress(f.v(row + ".E")), Nu: f.v(row + ".nu")}
}

func (f figures) bush() interference.Ring {
	return interference.Ring{Bore: f.l("bush_bore"), Outside: f.l("bush_outside"), Elastic: f.metal("hub/bush.bush_material")}
}

func (f figures) hub() interference.Ring {
	return interference.Ring{Bore: f.l("hub_bore"), Outside: f.l("hub.outside"), Elastic: f.metal("hub.material")}
}

func val[T ~float64](v T, err error) (float64, bool) { return float64(v), err == nil }

// noted is val of a calculation that may add notes.
func noted[T ~float64, N any](v T, _ N, err error) (float64, bool) { return float64(v), err == nil }

var pressedBush = []formula{
	{"hub/bush.hub_give", func(f figures) (float64, bool) { return val(interference.HubGive(f.hub())) }},
	{"bush.pressure", func(f figures) (float64, bool) {
		inner, err := interference.ShaftGive(f.bush())
		if err != nil {
			return 0, false
		}
		return val(interference.JointPressure(f.l("hub_bore"), f.l("bush_outside")-f.l("hub_bore"), inner, interference.Give(f.v("hub/bush.hub_give"))))
	}},
	{"hub/bush.close_in", func(f figures) (float64, bool) {
		return val(interference.CloseIn(f.bush(), q.Stress(f.v("bush.pressure"))))
	}},
	{"bush.fitting", func(f figures) (float64, bool) { // with the metal in it that is bored out later
		rough := f.bush()
		rough.Bore -= f.l("high(hub/bush.left_to_bore)")
		inner, err := interference.ShaftGive(rough)
		if err != nil || rough.Bore <= 0 {
			return 0, false
		}
		return val(interference.JointPressure(f.l("hub_bore"), f.l("bush_outside")-f.l("hub_bore"), inner, interference.Give(f.v("hub/bush.hub_give"))))
	}},
	{"bush.force", func(f figures) (float64, bool) {
		return val(interference.GripThrust(f.l("hub_bore"), f.l("fit.length"), q.Stress(f.v("bush.fitting")), f.v("high(hold/press.friction)")))
	}},
	{"bush.grip_torque", func(f figures) (float64, bool) {
		p := f.v("bush.pressure_least")
		if p < 0 {
			return 0, false // it hangs loose: calc refuses, the rule says 0
		}
		return val(interference.GripTorque(f.l("hub_bore"), f.l("fit.length"), q.Stress(p), f.v("low(hold/press.friction)")))
	}},
	{"bush.inner_stress", func(f figures) (float64, bool) {
		s, ok := val(interference.BushHoop(f.l("bush_bore"), f.l("bush_outside"), q.Stress(f.v("bush.in_service"))))
		return -s, ok // calc counts pressing together below 0
	}},
	{"bush.outer_stress", func(f figures) (float64, bool) {
		return val(interference.HubHoop(f.l("hub_bore"), f.l("hub.outside"), q.Stress(max(f.v("bush.in_service"), f.v("bush.fitting")))))
	}},
	{"bush.outer_mises", func(f figures) (float64, bool) {
		p, ok := val(interference.HubYieldPressure(f.l("hub_bore"), f.l("hub.outside"), 1e6))
		return 1e6 * max(f.v("bush.in_service"), f.v("bush.fitting")) / p, ok
	}},
	{"bush.hot", func(f figures) (float64, bool) {
		e := assembly.Entry{Seat: f.l("hub_bore"), Interference: f.l("bush_outside") - f.l("hub_bore"), Hub: q.Expansion(f.v("hub.material.expansion")),
			Shaft: q.Expansion(f.v("hub/bush.bush_material.expansion")), Room: 293.15}
		return noted(assembly.HubTemperature(e, q.Length(f.v("hold/press.entry_rate")*f.v("hub_bore")), 293.15))
	}},
}

var backedBush = []formula{
	{"hub/bush.bore_give", func(f figures) (float64, bool) {
		return val(interference.BackedBushGive(f.bush(), interference.Give(f.v("hub/bush.hub_give"))))
	}},
	{"hub/bush.hands_on", func(f figures) (float64, bool) {
		return val(interference.BushPassesOn(f.bush(), interference.Give(f.v("hub/bush.hub_give"))))
	}},
}

var runningBush = []formula{
	{"purpose/running.pressed", func(f figures) (float64, bool) {
		return val(bearing.Pressure(q.Force(f.v("duty.load")), f.l("shaft_size"), f.l("fit.length")))
	}},
	{"purpose/running.rubbing", func(f figures) (float64, bool) {
		return val(bearing.SlidingSpeed(f.l("shaft_size"), q.Rotation(f.v("duty.speed"))))
	}},
	{"purpose/running.pv", func(f figures) (float64, bool) {
		return val(bearing.PressureSpeed(q.Stress(f.v("purpose/running.pressed")), q.Speed(f.v("purpose/running.rubbing"))))
	}},
	{"shaft/true-up.twist", func(f figures) (float64, bool) {
		return val(strength.Twisting(strength.Section{Bore: f.l("shaft.bore"), Outside: f.l("shaft_size")}, q.Torque(f.v("duty.starting_factor")*f.v("duty.torque"))))
	}},
	{"shaft/true-up.rise", func(f figures) (float64, bool) {
		left, ok := val(strength.StrengthLeft(f.l("shaft.bore"), f.l("fit.nominal"), f.l("shaft_size")))
		return 1 / left, ok
	}},
	{"hub/bush.hub_wall", func(f figures) (float64, bool) {
		return val(strength.HubWall(f.l("hub_bore"), f.l("hub.outside")))
	}},
}

var swingingEye = []formula{
	{"purpose/oscillating.rubbing", func(f figures) (float64, bool) {
		return val(bearing.SwingSpeed(f.l("shaft_size"), f.v("duty.swing"), q.Rotation(f.v("duty.strokes"))))
	}},
}

// What the rule files write out, so that proofs and slopes see through it, is
// what calc works out; calc is held to published examples.
func TestFormulasInRulesAreThoseOfCalc(t *testing.T) {
	for _, c := range []struct {
		option, purpose string
		formulas        []formula
	}{
		{"shaft-true-up+hub-bush-press", "running", append(pressedBush, runningBush...)},
		{"shaft-replace+hub-true-up", "oscillating", swingingEye},
		{"shaft-leave+hub-bush-press+fit-press", "press-fit", backedBush},
	} {
		held(t, c.option, c.purpose, c.formulas, 200)
	}
}

func held(t *testing.T, option, purpose string, formulas []formula, least int) {
	t.Helper()
	heldLocked(t, option, purpose, nil, formulas, least, nil)
}

// heldLocked is held of an option with a lock on some of its joints, in draws in
// which some inputs are set.
func heldLocked(t *testing.T, option, purpose string, locks map[string]string, formulas []formula, least int, set func(figures)) {
	t.Helper()
	base := shipped(t)
	o, err := linkLocked(base, option, purpose, locks)
	if err != nil {
		t.Fatal(err)
	}
	l, f := lots(o)[0], figures{t: t, nodes: namesOf(o)}
	draws := append(things(newDrawer(base, "formulas"), &l), things(newDrawer(base, "formulas again"), &l)...)
	for _, f.reg = range draws {
		if set != nil {
			set(f)
			l.prog.Run(f.reg)
		}
	}
	for _, x := range formulas {
		n := 0
		for _, f.reg = range draws {
			want, ok := x.calc(f)
			got := f.v(x.name)
			if !ok || !finite(got) || !finite(want) {
				continue
			}
			n++
			if math.Abs(got-want) > 1e-9*math.Max(math.Abs(got), math.Abs(want)) {
				t.Errorf("%s is %.12g by the rule, %.12g by calc", x.name, got, want)
				break
			}
		}
		if n < least {
			t.Errorf("%s was compared in %d draws only, %d wanted", x.name, n, least)
		}
	}
}

// namesOf gives every value of an option by name: inputs, sizes, defines.
func namesOf(o *link.Option) map[string]tape.Node {
	out := map[string]tape.Node{}
	for _, s := range o.Slots {
		out[s.Name] = s.Node
	}
	for _, n := range o.Named {
		out[n.Name] = n.Node
	}
	for _, d := range o.Dims {
		out[d.ID] = d.Value
	}
	return out
}

// figuresOf links an option and names its nodes.
func figuresOf(t *testing.T, base *rules.Base, option, purpose string) (*link.Option, lot, figures) {
	t.Helper()
	o, err := linkNamed(base, option, purpose)
	if err != nil {
		t.Fatal(err)
	}
	return o, lots(o)[0], figures{t: t, nodes: namesOf(o)}
}

// A shaft pressed into a bush that is pressed into a hub: the rule adds what the
// bush hands on; the layer solver settles all three at once.
func TestAShaftInABushInAHubIsTheLayerSolvers(t *testing.T) {
	base := shipped(t)
	_, l, f := figuresOf(t, base, "shaft-leave+hub-bush-press+fit-press", "press-fit")
	n, told := 0, 0 // told: draws in which leaving the shaft out would show
	for _, f.reg = range things(newDrawer(base, "layers"), &l) {
		// a round solid shaft half a thousandth tight in the bore the bush has after it
		// is in; loose, that bore is larger by what it closed in
		f.reg[f.nodes["shaft.bore"]] = 0
		f.reg[f.nodes["duty.temperature"]], f.reg[f.nodes["duty.shaft_hotter"]] = 293.15, 0 // the solver's rings are cold
		f.reg[f.nodes["shaft.largest"]] = 1.0005 * f.v("bush_bore")
		f.reg[f.nodes["shaft.smallest"]] = 1.0005 * f.v("bush_bore")
		l.prog.Run(f.reg)
		tight, press := f.l("shaft.largest")-f.l("bush_bore"), f.l("bush_outside")-f.l("hub_bore")
		got, want := f.v("hub/bush.hub_pressure"), 0.0
		s, _, err := interference.Press(interference.Stack{Parts: []interference.Part{
			{Outside: f.l("bush_bore"), Elastic: f.metal("shaft.material")},
			{Outside: f.l("hub_bore"), Elastic: f.metal("hub/bush.bush_material")},
			{Outside: f.l("hub.outside"), Elastic: f.metal("hub.material")}}, Interference: []q.Length{tight - f.l("hub/bush.close_in"), press}})
		thinnest := math.Min(f.v("bush_outside")-f.v("bush_bore"), f.v("hub.outside")-f.v("hub_bore"))
		if err != nil || s.Gap[0]+s.Gap[1] > 0 || float64(tight+press) > thinnest/50 { // no fit in the trade is so tight for its wall
			continue
		}
		// a bush so soft closes in by more than it was pressed: to take its walls loose
		// or gauged is no small matter any more, and no such bush is offered
		if f.v("hub/bush.bush_material.E") < 10e9 {
			continue
		}
		n++
		want = float64(s.Pressure[1])
		// the solver takes rings of the loose sizes, the rule the sizes as they are
		// gauged: walls differ by the interference, and pressure goes as the wall
		allowed := 2 * float64(tight+press) / thinnest * want
		if math.Abs(f.v("bush.pressure")-want) > allowed {
			told++
		}
		if math.Abs(got-want) > allowed {
			t.Fatalf("hub pressure %.4g MPa by the rule, %.4g by the layer solver", got/1e6, want/1e6)
		}
	}
	if n < 50 || told < n/2 {
		t.Errorf("compared in %d draws; only %d would show a shaft left out", n, told)
	}
}
