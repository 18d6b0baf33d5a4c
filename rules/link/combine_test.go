package link

import (
	"strings"
	"testing"
)

func TestEveryOptionOfAPurpose(t *testing.T) {
	b := newBench(t).stock()
	ids := func(purpose string) []string {
		var out []string
		for _, c := range All(b.in, b.named(purpose, Purpose)) {
			out = append(out, c.ID)
		}
		return out
	}
	running := "shaft-leave+hub-leave shaft-leave+hub-true-up shaft-leave+hub-bush-press shaft-true-up+hub-leave shaft-true-up+hub-true-up shaft-true-up+hub-bush-press " +
		"shaft-sleeve-press+hub-leave shaft-sleeve-press+hub-true-up shaft-sleeve-press+hub-bush-press"
	if got := strings.Join(ids("running"), " "); got != running {
		t.Errorf("running:\n got %s\nwant %s", got, running)
	}
	static := ids("press-fit")
	if len(static) != 18 || static[0] != "shaft-leave+hub-leave+fit-press" || static[17] != "shaft-sleeve-press+hub-bush-press+fit-slip" {
		t.Errorf("press-fit: %d options from %s to %s", len(static), static[0], static[len(static)-1])
	}
	for _, id := range static {
		if strings.Contains(id, "bush-slip") || strings.Contains(id, "sleeve-slip") {
			t.Errorf("%s holds a bush or sleeve by what is for the finished fit alone", id)
		}
	}
}

// A joint may say which holds it takes.
func TestJointThatTakesOneHold(t *testing.T) {
	b := newBench(t).stock()
	compound := b.press()
	compound.ID = "compound"
	b.in.Parts = append(b.in.Parts, compound)
	if n := len(All(b.in, b.named("running", Purpose))); n != 16 { // one joint twice is two options, two joints four
		t.Fatalf("%d options with two holds, want 16", n)
	}
	b.named("bush", Hub).Joints[0].Holds = []string{"compound"}
	for _, c := range All(b.in, b.named("running", Purpose)) {
		if strings.Contains(c.ID, "bush-press") {
			t.Errorf("%s presses a bush that takes compound alone", c.ID)
		}
	}
}
