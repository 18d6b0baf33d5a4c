package knowledge_test

import (
	"testing"

	"wornfit/calc/fits"
	"wornfit/calc/quantity"
)

// A bought hub's bore is held to lie within the widest that ISO 286 lets an H7
// of its size be (calc/fits reads the tables), and not much beyond.
func TestABoughtBoreIsAnH7(t *testing.T) {
	base := shipped(t)
	o, err := linkNamed(base, "shaft-leave+hub-replace", "running")
	if err != nil {
		t.Fatal(err)
	}
	h7, err := fits.ReadClass("H7")
	if err != nil {
		t.Fatal(err)
	}
	reg := numbered(o)
	at, ok := o.Slot("fit.nominal")
	if !ok {
		t.Fatal("the option does not ask for fit.nominal")
	}
	seen := 0
	for mm := 3.05; mm < 400; mm += 0.1 { // just over each step too
		reg[at.Node] = mm * 1e-3
		o.Program.Run(reg)
		limits, _, err := fits.Of(quantity.Length(mm*1e-3), h7)
		if err != nil {
			t.Fatal(err)
		}
		want := float64(limits.Upper)
		for _, n := range o.Named {
			if n.Name != "hub/replace.bore_large" {
				continue
			}
			seen++
			over := reg[n.Node] - mm*1e-3
			if over < want || over > want*1.4 {
				t.Errorf("at %.2f mm the bore may be %.1f um over; an H7 is %.1f", mm, over*1e6, want*1e6)
			}
		}
	}
	if seen < 3900 {
		t.Errorf("only %d sizes were looked at", seen)
	}
}

// A bought bearing's rings are as large as ISO 492 lets those of normal class be.
// The sizes and deviations stand here as the standard's tables print them.
func TestABoughtRingIsThatOfItsList(t *testing.T) {
	base := shipped(t)
	o, err := linkNamed(base, "shaft-buy+hub-replace+fit-press", "bearing-seat")
	if err != nil {
		t.Fatal(err)
	}
	reg := numbered(o)
	set := func(name string, v float64) {
		at, ok := o.Slot(name)
		if !ok {
			t.Fatalf("the option does not ask for %s", name)
		}
		reg[at.Node] = v
	}
	set("hub.near_rolling_bearing", 1)
	set("shaft.near_rolling_bearing", 1)
	for _, c := range []struct{ mm, bore, outside float64 }{{25, -10, -9}, {40, -12, -11}, {72, -15, -13}} {
		set("fit.nominal", c.mm*1e-3)
		o.Program.Run(reg)
		want := map[string]float64{"hub/replace.bore_small": c.bore, "hub/replace.bore_large": 0, "shaft/buy.shaft_small": c.outside, "shaft/buy.shaft_large": 0}
		for _, n := range o.Named {
			w, ok := want[n.Name]
			if !ok {
				continue
			}
			delete(want, n.Name)
			if got := (reg[n.Node] - c.mm*1e-3) * 1e6; got < w-1e-6 || got > w+1e-6 {
				t.Errorf("%s at %g mm: %.3f um from its size, want %g", n.Name, c.mm, got, w)
			}
		}
		if len(want) > 0 {
			t.Errorf("not in the option: %v", want)
		}
	}
}
