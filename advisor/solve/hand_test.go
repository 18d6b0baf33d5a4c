package solve

import (
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// mm is the unit the hand-made options speak in.
const mm = 1e-3

// hand lays out a small option by hand.
type hand struct {
	b *tape.Builder
	o *link.Option
	m Model
}

func byHand() *hand {
	h := &hand{b: tape.NewBuilder(), o: &link.Option{ID: "by hand"}}
	h.b.Slot("none") // node 0 stays free: 0 means none
	h.m = Model{Option: h.o, Width: map[string]float64{}, Gauge: map[string]float64{}}
	return h
}

// dim adds a dimension cut by a machine of this width and gauge, in mm, that
// may lie from low to high.
func (h *hand) dim(id, suits string, low, high, width, gauge float64) (value tape.Node) {
	d := link.Dim{ID: id, Suits: suits}
	d.Target, d.Cut, d.Gauge = h.b.Slot(id+".target"), h.b.Slot(id+".cut"), h.b.Slot(id+".gauge")
	d.Reading = h.b.Apply(lang.Add, d.Target, d.Cut)
	for _, l := range h.o.Dims {
		if l.ID == suits {
			d.Reading = h.b.Apply(lang.Add, d.Reading, h.b.Apply(lang.Sub, l.Reading, l.Target))
		}
	}
	d.Value = h.b.Apply(lang.Add, d.Reading, d.Gauge)
	d.Low, d.High = h.b.Const(low*mm), h.b.Const(high*mm)
	h.o.Dims = append(h.o.Dims, d)
	h.m.Width[id], h.m.Gauge[id] = width*mm, gauge*mm
	return d.Value
}

// given adds an input known to a range, or not known at all.
func (h *hand) given(name string, lo, hi float64, is bool) tape.Node {
	n := h.b.Slot(name)
	h.o.Slots = append(h.o.Slots, link.Slot{Node: n, Ask: &link.Ask{Name: name}})
	h.m.Known = append(h.m.Known, link.Known{Value: interval.I{Lo: lo, Hi: hi}, Best: (lo + hi) / 2, Is: is})
	return n
}

// limit adds: the margin is kept at 0 or more.
func (h *hand) limit(id string, strength link.Strength, ground link.Ground, margin tape.Node) {
	c := link.Check{Rule: &link.Rule{}, FullID: id, Margin: margin}
	c.ID, c.Strength, c.Ground = id, strength, ground
	h.o.Checks = append(h.o.Checks, c)
}

func (h *hand) must(id string, margin tape.Node)   { h.limit(id, link.Must, link.Physics, margin) }
func (h *hand) should(id string, margin tape.Node) { h.limit(id, link.Should, link.Practice, margin) }

func (h *hand) sub(a, b tape.Node) tape.Node           { return h.b.Apply(lang.Sub, a, b) }
func (h *hand) add(a, b tape.Node) tape.Node           { return h.b.Apply(lang.Add, a, b) }
func (h *hand) mul(a, b tape.Node) tape.Node           { return h.b.Apply(lang.Mul, a, b) }
func (h *hand) size(v float64) tape.Node               { return h.b.Const(v * mm) }
func (h *hand) over(a tape.Node, v float64) tape.Node  { return h.sub(a, h.size(v)) }
func (h *hand) under(a tape.Node, v float64) tape.Node { return h.sub(h.size(v), a) }

func (h *hand) solve(b Budget) Answer {
	h.o.Program = h.b.Build()
	return Search{}.Design(h.m, b)
}

func window(t *testing.T, a Answer, id string) Window {
	t.Helper()
	for _, w := range a.Windows {
		if w.ID == id {
			return w
		}
	}
	t.Fatalf("no window of %s: works %v", id, a.Works)
	return Window{}
}

func isAt(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want*mm) > 0.02e-6 { // the bisection stops at 5 nm
		t.Errorf("%s is %.6f mm, want %.6f", what, got/mm, want)
	}
}

// A bore of 25 to 25.1 in truth, cut to 0.02 and gauged to 0.004, beside a
// reading of 24.9 ± 0.01 that it must clear by 0.05.
func TestForEveryTrueSize(t *testing.T) {
	h := byHand()
	bore := h.dim("bore", "", 20, 30, 0.02, 0.004)
	shaft := h.given("shaft", 24.89*mm, 24.91*mm, true)
	h.must("clears", h.over(h.sub(bore, shaft), 0.05))
	h.must("most", h.under(bore, 25.1))
	a := h.solve(Thorough)
	w := window(t, a, "bore")
	isAt(t, "low", w.Low, 24.91+0.05+0.004)
	isAt(t, "high", w.High, 25.1-0.004)
	if a.Works != Yes || w.Lower < w.Low || w.Upper > w.High || w.LowBy[0] != "clears" || w.HighBy[0] != "most" {
		t.Errorf("works %v, %+v", a.Works, w)
	}
}

// A limit that is worst in the middle of a reading's range, not at its ends, is
// never called proved; one whose slope turns within the range is judged at the
// end that is worst.
func TestForEveryTrueSizeWhereTheSlopeTurns(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64 // of the reading
		kept   bool    // (reading-1)**2 <= 4
	}{{-0.5, 2.9, true}, {-0.5, 3.1, false}, {-1.1, 2.5, false}} {
		h := byHand()
		bore := h.dim("bore", "", 20, 30, 0.02, 0.004)
		h.must("most", h.under(bore, 25))
		x := h.given("x", c.lo, c.hi, true)
		d := h.sub(x, h.b.Const(1))
		h.must("hill", h.sub(h.b.Const(4), h.mul(d, d)))
		a := h.solve(Thorough)
		if s := a.States[1]; (s.Holds == Yes) != c.kept || s.Proved != c.kept {
			t.Errorf("x from %v to %v: holds %v proved %v, want %v", c.lo, c.hi, s.Holds, s.Proved, c.kept)
		}
	}
}

// What is not known may stand at its kindest: the answer then depends and names
// it, and only it.
func TestWhatIsNotKnownIsNamed(t *testing.T) {
	h := byHand()
	bore := h.dim("bore", "", 24, 25.1, 0.02, 0.004)
	big := h.given("big", 0, 0.3*mm, false)
	h.given("idle", 0, 1, false)
	small := h.given("small", 0, 0.001*mm, false)
	h.must("clears", h.sub(h.over(bore, 24.9), h.add(big, small)))
	a := h.solve(Thorough)
	if a.Works != Depends || len(a.Missing) != 1 || a.Missing[0] != "big" {
		t.Errorf("works %v, missing %v; only big stands in the way", a.Works, a.Missing)
	}
}

// A pin turned to suit a bored hole passes on the gauging of the hole, not the
// width of its machine: 0.03 to 0.08 of clearance with machines of 0.04 and 0.02.
func TestCutToSuit(t *testing.T) {
	for _, suits := range []string{"bore", ""} {
		h := byHand()
		bore := h.dim("bore", "", 25, 26, 0.04, 0.004)
		pin := h.dim("pin", suits, 20, 30, 0.02, 0.003)
		h.must("free", h.over(h.sub(bore, pin), 0.03))
		h.must("close", h.under(h.sub(bore, pin), 0.08))
		a := h.solve(Thorough)
		if suits == "" {
			if len(a.Narrowed) == 0 { // 0.04 + 0.02 + gauges do not go into 0.05
				t.Error("cut to drawings, something must be held closer")
			}
			continue
		}
		if a.Works != Yes || len(a.Narrowed) > 0 {
			t.Fatalf("works %v, narrowed %v", a.Works, a.Narrowed)
		}
		b, p := window(t, a, "bore"), window(t, a, "pin")
		isAt(t, "pin low", b.Target-p.Low, 0.08-0.007)
		isAt(t, "pin high", b.Target-p.High, 0.03+0.007)
		isAt(t, "bore low", b.Low, 25)
		isAt(t, "bore high", b.High, 26)
	}
}

// A size that is already made is held, and its mate follows.
func TestAMadeSizeIsHeld(t *testing.T) {
	h := byHand()
	bore := h.dim("bore", "", 25, 26, 0.04, 0.004)
	pin := h.dim("pin", "bore", 20, 30, 0.02, 0.003)
	h.must("free", h.over(h.sub(bore, pin), 0.03))
	h.must("close", h.under(h.sub(bore, pin), 0.08))
	h.m.Held = map[string]float64{"bore": 25.613 * mm}
	a := h.solve(Thorough)
	b, p := window(t, a, "bore"), window(t, a, "pin")
	if !b.Held || b.Target != 25.613*mm {
		t.Errorf("bore is %+v", b)
	}
	isAt(t, "pin low", p.Low, 25.613-0.08+0.007)
	isAt(t, "pin high", p.High, 25.613-0.03-0.007)
}

// Shoulds are kept while they can be, given up one at a time, and what could be
// kept after all is taken back; then the aims are met in their order.
func TestADesign(t *testing.T) {
	h := byHand()
	bore := h.dim("bore", "", 20, 30, 0.02, 0.004)
	h.must("most", h.under(bore, 26))
	h.should("over", h.over(bore, 25))
	h.should("under", h.under(bore, 25.5))
	h.should("small", h.under(bore, 24.9)) // not with over
	h.should("smaller", h.under(bore, 24.8))
	h.o.Aims = []link.LinkedAim{{Most: bore}}
	a := h.solve(Thorough)
	got := ""
	for i, s := range a.States {
		if s.Holds == Yes {
			got += h.o.Checks[i].FullID + " "
		}
	}
	if a.Works != Yes || got != "most under small smaller " {
		t.Errorf("works %v, keeps %s: one should stands against two", a.Works, got)
	}
	if w := window(t, a, "bore"); w.Upper > w.High || w.Upper < w.High-0.006*mm {
		t.Errorf("the bore is aimed at its most: %+v", w)
	}
}

// The first aim wins over the second, which gets what is left.
func TestAimsInTheirOrder(t *testing.T) {
	for _, c := range []struct {
		leastFirst bool
		near       float64
	}{{true, 25}, {false, 26}} {
		h := byHand()
		bore := h.dim("bore", "", 25, 26, 0.02, 0.002)
		h.o.Aims = []link.LinkedAim{{Least: bore}, {Most: bore}}
		if !c.leastFirst {
			h.o.Aims[0], h.o.Aims[1] = h.o.Aims[1], h.o.Aims[0]
		}
		// a third of a machine's width is left to the rules and to the aims to come
		if w := window(t, h.solve(Thorough), "bore"); math.Abs(w.Target-c.near*mm) > 0.007*mm {
			t.Errorf("target %.4f, want near %v", w.Target/mm, c.near)
		}
	}
}

// Room for 0.049 between two cuts of 0.04 and 0.02: the earlier gives way.
func TestTolerance(t *testing.T) {
	h := byHand()
	bore := h.dim("bore", "", 25, 26, 0.04, 0.002)
	pin := h.dim("pin", "", 20, 30, 0.02, 0.002)
	h.must("free", h.over(h.sub(bore, pin), 0.03))
	h.must("close", h.under(h.sub(bore, pin), 0.079))
	a := h.solve(Thorough)
	if a.Works != Yes || len(a.Narrowed) != 1 || a.Narrowed[0] != "bore" {
		t.Fatalf("works %v, held closer: %v, want the bore, cut first", a.Works, a.Narrowed)
	}
	if w := window(t, a, "bore"); math.Abs(w.Width-0.021*mm) > 0.0005*mm {
		t.Errorf("the bore is left %.4f mm, want 0.049 less 0.02 and twice two gauges of 0.002 = 0.021", w.Width/mm)
	}
}

// No design is called impossible that works when cut closer than the machine does.
func TestToleranceBeforeImpossible(t *testing.T) {
	h := byHand()
	bore := h.dim("bore", "", 20, 30, 0.5, 0.002)
	h.must("over", h.over(bore, 25))
	h.must("under", h.under(bore, 25.1))
	if a := h.solve(Thorough); a.Works != Yes || len(a.Narrowed) != 1 {
		t.Errorf("works %v, narrowed %v: 0.1 is enough for a gauge of 0.002, not for a machine of 0.5", a.Works, a.Narrowed)
	}
}

// A number that rests on memory decides when no design bears its doubt; one
// that a design can make room for does not.
func TestAWeakNumberThatDecidesIsNamed(t *testing.T) {
	for _, c := range []struct {
		most    float64
		decides bool
	}{{25.02, true}, {26, false}} {
		h := byHand()
		bore := h.dim("bore", "", 20, 30, 0.006, 0.002)
		n := h.b.Slot("file.least")
		h.o.Slots = append(h.o.Slots, link.Slot{Node: n, Ask: &link.Ask{Name: "file.least", Kind: link.NumberSlot,
			Number: &link.Number{Low: 25 * mm, High: 25 * mm, DoubtLow: 24.9 * mm, DoubtHi: 25.2 * mm, Grade: basis.Memory}}})
		h.m.Known = append(h.m.Known, link.Known{Value: interval.Point(25 * mm), Best: 25 * mm, Is: true})
		h.must("least", h.sub(bore, n))
		h.must("most", h.under(bore, c.most))
		a := h.solve(Thorough)
		named := len(a.States[0].Weak)+len(a.States[1].Weak) > 0
		if a.Works != Yes || named != c.decides {
			t.Errorf("most %v: works %v, weak %v and %v, want named %v", c.most, a.Works, a.States[0].Weak, a.States[1].Weak, c.decides)
		}
	}
}
