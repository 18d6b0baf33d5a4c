package gears_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/gears"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

func pairOf(t *testing.T, r outside.Row) gears.Pair {
	t.Helper()
	return gears.Pair{Module: q.Length(r.In(t, "m")), Pinion: teeth(t, r, "z1"), Wheel: teeth(t, r, "z2"), Pressure: r.In(t, "phi")}
}

func TestBacklashAgreesWithASecondRoute(t *testing.T) {
	rows := outside.Read(t, "reference.json")
	for _, id := range []string{"R80-2-0.05", "R80-2.11667-0.1"} {
		r := outside.Get(t, rows, id)
		shift := q.Length(r.In(t, "dCD"))
		b, notes, err := gears.BacklashAt(pairOf(t, r), 0, shift)
		kerneltest.Fine(t, err)
		r.Want(t, "phi_w", b.Working)
		r.Want(t, "jt", float64(b.Circular))
		r.Want(t, "jn", float64(b.Normal))
		r.Want(t, "angle_gear1", b.PinionTurns)
		rule, err := gears.BacklashByRule(r.In(t, "phi"), shift)
		kerneltest.Fine(t, err)
		r.Want(t, "approx", float64(rule))
		if len(notes) > 0 {
			t.Errorf("%s: notes %v, want none", id, notes)
		}
	}
}

// The handbook's factors, from memory; rule and exact answer meet its tolerance alike.
func TestTheRuleOfThumbAgreesWithTheHandbook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "G09")
	shift := q.Length(r.In(t, "dCD"))
	rule, err := gears.BacklashByRule(r.In(t, "phi"), shift)
	kerneltest.Fine(t, err)
	r.Want(t, "circular_backlash", float64(rule))
	exact, _, err := gears.BacklashAt(pairOf(t, r), 0, shift)
	kerneltest.Fine(t, err)
	r.Want(t, "circular_backlash", float64(exact.Circular))
	for name, degrees := range map[string]float64{"factor_20": 20, "factor_14_5": 14.5} {
		factor, err := gears.BacklashByRule(degrees*math.Pi/180, 1)
		kerneltest.Fine(t, err)
		r.Want(t, name, float64(factor))
	}
}

// What the doc comment says of the rule: exact in the limit, 1.6 % short at a
// tenth of a module on 20 and 40 teeth.
func TestTheRuleIsTheLimit(t *testing.T) {
	p := gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 20 * math.Pi / 180}
	for _, c := range []struct{ shift, short, tol float64 }{{1e-8, 0, 1e-6}, {0.2e-3, 0.0155, 0.001}} {
		exact, _, err := gears.BacklashAt(p, 0, q.Length(c.shift))
		kerneltest.Fine(t, err)
		rule, err := gears.BacklashByRule(p.Pressure, q.Length(c.shift))
		kerneltest.Fine(t, err)
		if short := float64(exact.Circular/rule) - 1; math.Abs(short-c.short) > c.tol {
			t.Errorf("at a shift of %v the rule is %.5f short, want %.4f", c.shift, short, c.short)
		}
	}
}

// Second route: the space that two teeth leave on the circle where they roll,
// each tooth's thickness carried there from the pitch circle.
func TestBacklashByToothThickness(t *testing.T) {
	const m, z1, z2, φ, shift, before = 0.003, 17, 45, 14.5 * math.Pi / 180, 0.0004, 0.00012
	b, _, err := gears.BacklashAt(gears.Pair{Module: m, Pinion: z1, Wheel: z2, Pressure: φ}, before, shift)
	kerneltest.Fine(t, err)
	inv := func(x float64) float64 { return math.Tan(x) - x }
	w := math.Acos(m * (z1 + z2) / 2 * math.Cos(φ) / (m*(z1+z2)/2 + shift))
	roll := math.Cos(φ) / math.Cos(w) // rolling circle over pitch circle
	space := math.Pi * m * roll
	for _, z := range []float64{z1, z2} {
		thick := math.Pi*m/2 - before/2
		space -= m * z * roll * (thick/(m*z) + inv(φ) - inv(w))
	}
	kerneltest.Near(t, "circular", float64(b.Circular), space, 1e-10)
	kerneltest.Near(t, "normal", float64(b.Normal), space*math.Cos(w), 1e-10)
	kerneltest.Near(t, "rock of the pinion", b.PinionTurns, space/(m*z1*roll/2), 1e-10)
	kerneltest.Near(t, "rock of the wheel", b.WheelTurns, space/(m*z2*roll/2), 1e-10)
}

// No shift leaves what was there; teeth cut without play bind when pushed
// closer, teeth thinned enough do not.
func TestCloserCanBind(t *testing.T) {
	p := gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 20 * math.Pi / 180}
	b, notes, err := gears.BacklashAt(p, 80e-6, 0)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "circular", float64(b.Circular), 80e-6, 1e-9)
	kerneltest.Near(t, "normal", float64(b.Normal), 80e-6*math.Cos(p.Pressure), 1e-9)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
	b, notes, err = gears.BacklashAt(p, 0, -0.1e-3)
	kerneltest.Fine(t, err)
	if !(b.Normal < 0) || len(notes) != 1 || notes[0].Grade != basis.Derived {
		t.Errorf("no play and 0.1 closer: %v, notes %v; want less than nought and one note", b.Normal, notes)
	}
	b, notes, err = gears.BacklashAt(p, 80e-6, -0.1e-3)
	kerneltest.Fine(t, err)
	if !(b.Normal > 0) || len(notes) > 0 {
		t.Errorf("0.08 play and 0.1 closer: %v, notes %v; want some left", b.Normal, notes)
	}
	_, notes, err = gears.BacklashAt(p, 2e-3, -0.6e-3)
	if err != nil || len(notes) != 1 || notes[0].Grade != basis.Memory {
		t.Errorf("0.6 closer: notes %v, %v; want the tips on the bottom", notes, err)
	}
}

// Straight away, straight in, along the tooth force; and against the distance of
// the two axes worked out in the plane.
func TestCentreShift(t *testing.T) {
	const a, φ = 0.06, 20 * math.Pi / 180
	for _, c := range []struct{ angle, want float64 }{{0, 1}, {math.Pi, -1}, {math.Pi/2 - φ, math.Sin(φ)}} {
		got, err := gears.CentreShift(1e-4, c.angle)
		kerneltest.Fine(t, err)
		kerneltest.Near(t, "shift", float64(got), 1e-4*c.want, 1e-12)
	}
	const e = 0.5e-3
	for _, θ := range []float64{0.3, 1.2, 1.57, 2.5} {
		got, err := gears.CentreShift(e, θ)
		kerneltest.Fine(t, err)
		plane := math.Hypot(a+e*math.Cos(θ), e*math.Sin(θ)) - a
		if sideways := plane - float64(got); !(sideways >= 0 && sideways < 2.2e-6) {
			t.Errorf("at %v sideways adds %v m; the doc comment says 2 µm at most", θ, sideways)
		}
	}
}

// Second route: the line of action laid out in the plane, cut by the two outside
// circles, its length counted in base pitches.
func TestContactRatioInThePlane(t *testing.T) {
	for _, p := range []gears.Pair{
		{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 20 * math.Pi / 180},
		{Module: 3e-3, Pinion: 24, Wheel: 48, Pressure: 14.5 * math.Pi / 180, PinionOutside: 77.4e-3, WheelOutside: 149.5e-3},
	} {
		for _, shift := range []float64{-0.1e-3, 0, 0.5e-3} {
			got, _, err := gears.ContactRatio(p, q.Length(shift))
			kerneltest.Fine(t, err)
			kerneltest.Near(t, "contact ratio", got, contactInThePlane(p, shift), 1e-12)
		}
	}
}

func contactInThePlane(p gears.Pair, shift float64) float64 {
	m, z1, z2 := float64(p.Module), float64(p.Pinion), float64(p.Wheel)
	rb1, rb2, a := m*z1*math.Cos(p.Pressure)/2, m*z2*math.Cos(p.Pressure)/2, m*(z1+z2)/2+shift
	ra1, ra2 := m*(z1+2)/2, m*(z2+2)/2
	if p.PinionOutside > 0 {
		ra1, ra2 = float64(p.PinionOutside)/2, float64(p.WheelOutside)/2
	}
	// Axes at (0,0) and (a,0); the line through the pitch point that touches both base circles.
	px, cos := a*z1/(z1+z2), (rb1+rb2)/a
	ux := math.Sqrt(1 - cos*cos)                       // the line leans by the pressure angle to the common tangent
	end := func(cx, r float64, away float64) float64 { // along u from the pitch point to the circle
		dx := px - cx
		half := dx * ux
		return -half + away*math.Sqrt(half*half-dx*dx+r*r)
	}
	return (end(0, ra1, 1) - end(a, ra2, -1)) / (math.Pi * m * math.Cos(p.Pressure))
}

// Two racks have 4/(π·sin 2φ) teeth in mesh: 1.98 at 20°, the most there is.
func TestContactRatioOfVeryManyTeeth(t *testing.T) {
	const φ = 20 * math.Pi / 180
	ε, _, err := gears.ContactRatio(gears.Pair{Module: 1e-3, Pinion: 4000000, Wheel: 4000000, Pressure: φ}, 0)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "contact ratio", ε, 4/(math.Pi*math.Sin(2*φ)), 1e-5)
}

// Further apart, less in mesh: first advised against, then not enough, then none.
func TestContactIsLostStepByStep(t *testing.T) {
	p := gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 20 * math.Pi / 180}
	last := math.Inf(1)
	for _, c := range []struct {
		shift  q.Length
		lo, hi float64
		grade  basis.Grade
		noted  int
	}{
		{0, 1.6, 1.7, 0, 0}, {1.2e-3, 1, 1.2, basis.Memory, 1}, {2e-3, 0.5, 1, basis.Derived, 1},
	} {
		ε, notes, err := gears.ContactRatio(p, c.shift)
		kerneltest.Fine(t, err)
		if !(ε > c.lo && ε < c.hi && ε < last) || len(notes) != c.noted || c.noted > 0 && notes[0].Grade != c.grade {
			t.Errorf("shift %v: contact ratio %v, notes %v", c.shift, ε, notes)
		}
		last = ε
	}
	// 12 teeth of 20° are undercut: the tips of a large wheel dig in.
	if _, notes, err := gears.ContactRatio(gears.Pair{Module: 2e-3, Pinion: 12, Wheel: 80, Pressure: p.Pressure}, 0); err != nil || len(notes) != 1 {
		t.Errorf("12 and 80 teeth: notes %v, %v; want one", notes, err)
	}
}

func TestMeshRefusals(t *testing.T) {
	back := func(before, shift q.Length, spoil func(*gears.Pair)) func() error {
		return func() error {
			p := gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 0.35}
			spoil(&p)
			_, _, err := gears.BacklashAt(p, before, shift)
			return err
		}
	}
	contact := func(shift q.Length, spoil func(*gears.Pair)) func() error {
		return func() error {
			p := gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 0.35}
			spoil(&p)
			_, _, err := gears.ContactRatio(p, shift)
			return err
		}
	}
	as := func(*gears.Pair) {}
	checkRefusals(t, []refused{
		{"no module", "module", back(0, 0, func(p *gears.Pair) { p.Module = 0 })},
		{"no pinion", "teeth of the pinion", back(0, 0, func(p *gears.Pair) { p.Pinion = 5 })},
		{"no wheel", "teeth of the wheel", contact(0, func(p *gears.Pair) { p.Wheel = 0 })},
		{"no angle", "pressure angle", back(0, 0, func(p *gears.Pair) { p.Pressure = nan })},
		{"out of reach", "shift of the axes", back(0, 4e-3, as)},
		{"too close", "shift of the axes", back(0, -5e-3, as)},
		{"unknown shift", "shift of the axes", back(0, q.Length(nan), as)},
		{"unknown backlash", "backlash before", back(q.Length(nan), 0, as)},
		{"less than no backlash", "backlash before", back(-1e-5, 0, as)},
		{"a pinion without tips", "outside of the pinion", contact(0, func(p *gears.Pair) { p.PinionOutside = 37e-3 })},
		{"a wheel without tips", "outside of the wheel", contact(0, func(p *gears.Pair) { p.WheelOutside = -1 })},
		{"short tips apart", "shift of the axes", contact(3e-3, func(p *gears.Pair) { p.PinionOutside, p.WheelOutside = 41e-3, 81e-3 })},
		{"rule: degrees", "pressure angle", func() error { _, err := gears.BacklashByRule(14.5, 1e-4); return err }},
		{"rule: no shift", "shift of the axes", func() error { _, err := gears.BacklashByRule(0.35, q.Length(nan)); return err }},
		{"worn by less than nothing", "way the axis moved", func() error { _, err := gears.CentreShift(-1e-4, 0); return err }},
		{"worn by who knows", "way the axis moved", func() error { _, err := gears.CentreShift(q.Length(nan), 0); return err }},
		{"degrees for the load", "angle to the line of centres", func() error { _, err := gears.CentreShift(1e-4, 70); return err }},
		{"no distance", "module", func() error { _, err := gears.CentreDistance(gears.Pair{}); return err }},
		{"no second pair", "module", func() error {
			_, err := gears.OutOfLine(gears.Pair{Module: 1, Pinion: 20, Wheel: 20, Pressure: 0.35}, gears.Pair{})
			return err
		}},
	})
}

func ExampleBacklashAt() {
	// A stud has sunk 0.20 into its bush along the tooth force.
	p := gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 20 * math.Pi / 180}
	shift, _ := gears.CentreShift(0.20e-3, math.Pi/2-p.Pressure)
	b, _, err := gears.BacklashAt(p, 0.08e-3, shift)
	fmt.Printf("%.3f mm further apart: %.3f mm on the pitch circle, %.3f mm by feeler, %v\n", 1e3*shift, 1e3*b.Circular, 1e3*b.Normal, err)
	// Output: 0.068 mm further apart: 0.130 mm on the pitch circle, 0.122 mm by feeler, <nil>
}

func ExampleContactRatio() {
	ε, _, err := gears.ContactRatio(gears.Pair{Module: 2e-3, Pinion: 20, Wheel: 40, Pressure: 20 * math.Pi / 180}, 0.3e-3)
	fmt.Printf("%.2f %v\n", ε, err)
	// Output: 1.49 <nil>
}
