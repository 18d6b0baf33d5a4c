package tape

import (
	"fmt"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
)

// bushing is an example of the size an option has: 11 dimensions, shared
// pressures and stresses, 28 limits. Its numbers are invented.
func bushing() (p *Program, keep []Node, box []interval.I) {
	b := NewBuilder()
	slots := map[string]interval.I{
		"shaft": interval.Of(24.95, 25.0), "bore": interval.Of(25, 33), "bush_outer": interval.Of(27, 36), "hub_outer": interval.Of(42, 42.5),
		"squeeze": interval.Of(0, 0.06), "ream": interval.Of(0, 0.3), "length": interval.Of(20, 40), "clearance": interval.Of(0.01, 0.2),
		"young": interval.Of(100e3, 120e3), "young_hub": interval.Of(100e3, 105e3), "friction": interval.Of(0.1, 0.15),
	}
	var v = map[string]Node{}
	for _, name := range []string{"shaft", "bore", "bush_outer", "hub_outer", "squeeze", "ream", "length", "clearance", "young", "young_hub", "friction"} {
		v[name] = b.Slot(name)
	}
	c := b.Const
	sub := func(x, y Node) Node { return b.Apply(lang.Sub, x, y) }
	mul := func(x ...Node) Node { return b.Apply(lang.Mul, x...) }
	div := func(x, y Node) Node { return b.Apply(lang.Div, x, y) }
	add := func(x ...Node) Node { return b.Apply(lang.Add, x...) }
	ratio := func(out, in Node) Node { return mul(div(out, in), div(out, in)) }
	hoop := func(out, in Node) Node { return add(c(1), div(c(2), sub(ratio(out, in), c(1)))) }
	hub, bush := hoop(v["hub_outer"], v["bush_outer"]), hoop(v["bush_outer"], v["bore"])
	give := add(div(add(hub, c(0.25)), v["young_hub"]), div(sub(bush, c(0.33)), v["young"]))
	pressure := div(v["squeeze"], mul(give, v["bush_outer"]))
	closeIn := div(mul(c(2), pressure, v["bore"]), mul(v["young"], sub(c(1), div(c(1), ratio(v["bush_outer"], v["bore"])))))
	wall := div(sub(v["bush_outer"], v["bore"]), c(2))
	grip := mul(c(3.14159), v["bush_outer"], v["length"], pressure, v["friction"])
	finished := add(sub(v["bore"], closeIn), v["ream"])
	least := func(x Node, y float64) { keep = append(keep, sub(x, c(y))) }
	most := func(x Node, y float64) { keep = append(keep, sub(c(y), x)) }
	least(wall, 1.5)
	most(wall, 4)
	least(sub(finished, v["shaft"]), 0.02)
	most(sub(finished, v["shaft"]), 0.08)
	keep = append(keep, sub(v["clearance"], sub(finished, v["shaft"])), sub(sub(finished, v["shaft"]), v["clearance"]))
	least(grip, 1200)
	most(grip, 60000)
	most(mul(pressure, hub), 90)
	most(div(mul(c(2), pressure), sub(c(1), div(c(1), ratio(v["bush_outer"], v["bore"])))), 120)
	least(div(sub(v["hub_outer"], v["bush_outer"]), c(2)), 4)
	least(div(v["hub_outer"], v["bush_outer"]), 1.2)
	least(v["squeeze"], 0.01)
	most(div(v["squeeze"], v["bush_outer"]), 0.0015)
	least(pressure, 2)
	most(pressure, 40)
	most(closeIn, 0.05)
	least(sub(v["ream"], closeIn), -0.02)
	least(div(v["length"], v["bore"]), 0.8)
	most(div(v["length"], v["bore"]), 1.5)
	least(sub(v["length"], mul(c(4), wall)), 5)
	most(mul(grip, div(c(1), v["friction"])), 500000)
	least(div(wall, v["bore"]), 0.05)
	most(div(wall, v["bore"]), 0.2)
	most(sub(v["bush_outer"], v["bore"]), 9)
	least(v["bore"], 25.02)
	most(v["bush_outer"], 35)
	most(mul(v["ream"], c(2)), 0.5)
	p = b.Build()
	box = make([]interval.I, p.Len())
	p.StartI(box)
	for name, r := range slots {
		box[v[name]] = r
	}
	return p, keep, box
}

func middle(p *Program, box []interval.I) []float64 {
	reg := make([]float64, p.Len())
	p.Start(reg)
	for _, s := range p.Slots() {
		reg[s] = box[s].Mid()
	}
	return reg
}

// The bushing may be narrowed but not refuted, and a hub 6 mm smaller is refuted:
// otherwise the figures below would be of nothing.
func TestBushingIsWorthTiming(t *testing.T) {
	p, keep, box := bushing()
	if len(keep) != 28 || len(p.Slots()) != 11 {
		t.Fatalf("%d limits and %d slots", len(keep), len(p.Slots()))
	}
	outer, _ := p.Slot("hub_outer")
	small := append([]interval.I(nil), box...)
	was := append([]interval.I(nil), box...)
	small[outer] = interval.Of(35.5, 36)
	if p.Contract(box, keep) || !smaller(t, p, was, box) {
		t.Error("the bushing is refuted or not narrowed")
	}
	if !p.Contract(small, keep) {
		t.Error("a hub 6 mm too small is not refuted")
	}
}

func TestNothingIsAllocated(t *testing.T) {
	p, keep, box := bushing()
	b := NewBuilder()
	x, y := b.Slot("x"), b.Slot("y")
	root := b.Apply(lang.Add, b.Call(heat, x), b.Call(ringHoop, y, x), b.Call(ripple, x))
	calls := b.Build()
	callBox := ranges(calls)
	calls.StartI(callBox)
	callBox[x], callBox[y] = interval.Of(1, 2), interval.Of(3, 4)
	for _, c := range []struct {
		name string
		p    *Program
		keep []Node
		box  []interval.I
	}{{"bushing", p, keep, box}, {"calls", calls, []Node{root}, callBox}} {
		p, reg, adjoint := c.p, middle(c.p, c.box), make([]float64, c.p.Len())
		block := make([][Lanes]float64, p.Len())
		p.StartBlock(block)
		mid, sides, work := ranges(p), ranges(p), ranges(p)
		for way, run := range map[string]func(){
			"Run":       func() { p.Run(reg) },
			"RunBlock":  func() { p.RunBlock(block) },
			"Enclose":   func() { p.Enclose(c.box) },
			"Contract":  func() { copy(work, c.box); p.Contract(work, c.keep) },
			"Gradient":  func() { p.Gradient(reg, adjoint, c.keep[0]) },
			"Slopes":    func() { p.Slopes(c.box, sides, c.keep[0]) },
			"Middle":    func() { p.Middle(c.box, mid) },
			"MeanValue": func() { p.MeanValue(c.box, mid, sides, c.keep[0]) },
			"Defined":   func() { p.Defined(c.box, c.keep[0]) },
		} {
			if n := testing.AllocsPerRun(100, run); n != 0 {
				t.Errorf("%s: %s allocates %v times", c.name, way, n)
			}
		}
	}
}

// Figures are per node, as a program's size is what a run costs; of Contract,
// Gradient, Slopes and MeanValue also per call.
func BenchmarkTape(b *testing.B) {
	p, keep, box := bushing()
	reg, adjoint := middle(p, box), make([]float64, p.Len())
	block := make([][Lanes]float64, p.Len())
	p.StartBlock(block)
	for _, s := range p.Slots() {
		for i := range block[s] {
			block[s][i] = reg[s]
		}
	}
	p.Run(reg)
	p.Enclose(box)
	work, mid, sides := ranges(p), ranges(p), ranges(p)
	small := append([]interval.I(nil), box...)
	outer, _ := p.Slot("hub_outer")
	small[outer] = interval.Of(35.5, 36)
	p.Middle(box, mid)
	root := keep[9]
	for _, c := range []struct {
		name  string
		per   int
		round func()
	}{
		{"Run", len(p.steps), func() { p.Run(reg) }},
		{"RunBlock", len(p.steps) * Lanes, func() { p.RunBlock(block) }},
		{"Enclose", len(p.steps), func() { p.Enclose(box) }},
		{"Contract", len(p.steps), func() { copy(work, box); p.Contract(work, keep) }},
		{"Refute", len(p.steps), func() { copy(work, small); p.Contract(work, keep) }},
		{"Gradient", p.upTo(root), func() { p.Gradient(reg, adjoint, root) }},
		{"Slopes", p.upTo(root), func() { p.Slopes(box, sides, root) }},
		{"MeanValue", p.upTo(root), func() { p.MeanValue(box, mid, sides, root) }},
	} {
		b.Run(fmt.Sprintf("%s/steps=%d", c.name, len(p.steps)), func(b *testing.B) {
			for b.Loop() {
				c.round()
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(c.per), "ns/node")
		})
	}
}
