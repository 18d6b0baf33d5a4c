package knowledge

import (
	"testing"

	"wornfit/rules/link"
)

// Every pair of treatments with every hold links for every purpose.
func TestEveryOptionLinks(t *testing.T) {
	base, faults := Load()
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	n := 0
	for _, p := range base.Input.Parts {
		if p.Side != link.Purpose {
			continue
		}
		for _, c := range link.All(base.Input, p) {
			if _, err := c.Link(base.Input); err != nil {
				t.Errorf("%s for %s: %v", c.ID, p.ID, err)
			}
			n++
		}
	}
	if n < 60 {
		t.Errorf("only %d options; three shaft treatments, four of the hub and three purposes make more", n)
	}
}
