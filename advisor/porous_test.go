package advisor_test

import (
	"strings"
	"testing"

	"wornfit/advisor"
)

// Compound wicks into a porous bush, and the solvent before it takes its oil: of
// the guide rod's bushes the pressed ones are sintered, the bonded ones never.
func TestNoPorousBushIsBonded(t *testing.T) {
	b := base(t)
	c := read(t, b, shipped(t, "guide-rod"))
	a, err := advisor.Advise(b, c, c.Fits[0], advisor.Ask{Speech: c.Speech(), All: true})
	if err != nil {
		t.Fatal(err)
	}
	pressed, bonded := 0, 0
	for _, o := range a.Options {
		for _, file := range []string{"bush", "re-bush"} {
			metal := o.Picks["hub/"+file+".bush_material"]
			switch {
			case metal == "" || o.Hub != file:
			case strings.HasSuffix(o.ID, "hub-"+file+"-compound"):
				bonded++
				if strings.HasPrefix(metal, "sintered") {
					t.Errorf("%s bonds a bush of %s", o.ID, metal)
				}
			case strings.HasPrefix(metal, "sintered"):
				pressed++
			}
		}
	}
	if pressed == 0 || bonded == 0 {
		t.Errorf("%d sintered bushes are pressed and %d bushes are bonded: the case shows nothing", pressed, bonded)
	}
}
