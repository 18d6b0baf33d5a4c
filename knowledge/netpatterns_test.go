package knowledge_test

import (
	"testing"

	"wornfit/rules/link"
)

// Patterns of wear are under the safety net too: plain values are what the VM
// makes of the text, ranges enclose them, blocks are plain bit for bit.
func TestPatternsAreUnderTheNet(t *testing.T) {
	base := shipped(t)
	in := base.Input
	in.Trace = true
	files := written{}
	var n tally
	for _, purpose := range in.Parts {
		if purpose.Side != link.Purpose {
			continue
		}
		for i := range base.Patterns {
			p := &base.Patterns[i]
			fact, err := link.Facts(in, p.Part, purpose)
			if err != nil {
				t.Fatal(err)
			}
			l := lot{name: p.ID + " of " + purpose.ID, prog: fact.Program, slots: fact.Slots, lowered: fact.Lowered}
			d := newDrawer(base, l.name)
			regs, _ := d.draws(&l)
			for k := range l.lowered {
				seen, err := compare(files, &l.lowered[k], &base.Input, regs)
				if err != nil {
					t.Errorf("%s: %v", l.name, err)
				}
				n.add("by the VM", seen)
			}
			for _, check := range []func(*drawer, *lot, [][]float64, *tally) error{blocks, encloses} {
				if err := check(d, &l, regs, &n); err != nil {
					t.Errorf("%s: %v", l.name, err)
				}
			}
		}
	}
	t.Log(n.counts)
	if n.counts["by the VM"] < 1000*len(base.Patterns) || n.counts["enclosed"] < 1000*len(base.Patterns) {
		t.Errorf("too little was looked at: %v", n.counts)
	}
}
