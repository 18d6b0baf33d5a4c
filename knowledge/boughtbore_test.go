package knowledge_test

import (
	"testing"

	"wornfit/calc/fits"
	"wornfit/calc/quantity"
	"wornfit/rules/link"
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
	reg := make([]float64, o.Program.Len())
	o.Program.Start(reg)
	for _, s := range o.Slots {
		if s.Kind == link.NumberSlot {
			reg[s.Node] = s.Number.Low
		}
	}
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
