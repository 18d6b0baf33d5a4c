package link

import "testing"

func BenchmarkLink(b *testing.B) {
	k := newBench(&testing.T{}).stock()
	all := All(k.in, k.named("press-fit", Purpose))
	c := all[len(all)-2] // a sleeved shaft pressed into a bushed hub
	for b.Loop() {
		if _, err := c.Link(k.in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPickSets(b *testing.B) {
	k := newBench(&testing.T{}).stock()
	o := k.joined("true-up", "bush", "running")
	known := map[string]Known{"hub.swing": exactly(0.3), "shaft.swing": exactly(0.1)}
	for b.Loop() {
		if sets, _, _ := o.PickSets(ByName(known), shopRows, 64); len(sets) != 3 {
			b.Fatal(len(sets))
		}
	}
}
