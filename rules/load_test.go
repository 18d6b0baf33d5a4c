package rules_test

import (
	"testing"

	"wornfit/calc/basis"
	"wornfit/rules/link"
)

func TestSmallBaseHasNoFault(t *testing.T) {
	b := good(t, small(t, nil))
	ids := map[link.Side][]string{}
	for _, p := range b.Input.Parts {
		ids[p.Side] = append(ids[p.Side], p.ID)
	}
	if len(ids[link.Shaft]) != 2 || len(ids[link.Hub]) != 2 || len(ids[link.Hold]) != 1 || len(ids[link.Purpose]) != 1 {
		t.Errorf("parts %v; want two treatments of each side, a hold and a purpose", ids)
	}
	running := b.Purpose("running")
	if running == nil || running.Static {
		t.Fatalf("purpose running: %+v", running)
	}
	var options []string
	for _, c := range link.All(b.Input, running) {
		options = append(options, c.ID)
	}
	if want := "shaft-leave+hub-bush-press"; !has(options, want) || len(options) != 4 {
		t.Errorf("options %v; want four, %s among them", options, want)
	}
}

func has(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// A number written in a file comes out in SI with its doubt: stated, or a fifth
// either way when it is from memory or practice.
func TestNumbersAndTheirDoubt(t *testing.T) {
	b := good(t, small(t, map[string]string{"shaft/true-up.yaml": "spoil:     {value: 0.02, from: practice, seen: practice} => " +
		"spoil:     {value: 0.02, from: handbook, seen: page}"}))
	for _, c := range []struct {
		side                   link.Side
		part, id               string
		low, high, least, most float64
		grade                  basis.Grade
	}{
		{link.Hub, "bush", "least_wall", 1.6e-3, 1.6e-3, 1e-3, 2e-3, basis.Practice},               // 1 mm to 2 mm stated
		{link.Hub, "bush", "left_to_bore", 0.2e-3, 0.4e-3, 0.16e-3, 0.48e-3, basis.Practice},       // a range, a fifth either way
		{link.Shaft, "true-up", "spoil", 0.02, 0.02, 0.02, 0.02, basis.Page},                       // read on the page: not tried
		{link.Hold, "press", "friction", 0.08, 0.16, 0.064, 0.192, basis.Memory},                   // from memory
		{link.Shaft, "true-up", "turning", 3600, 3600, 0.8 * 3600, 1.2 * 3600, basis.Practice},     // 1 h
		{link.Purpose, "running", "lasts", 5 * year, 5 * year, 4 * year, 6 * year, basis.Practice}, // 5 year
	} {
		n := number(t, b.Input.Parts, c.side, c.part, c.id)
		for _, v := range []struct {
			what      string
			got, want float64
		}{{"low", n.Low, c.low}, {"high", n.High, c.high}, {"doubt from", n.DoubtLow, c.least}, {"doubt to", n.DoubtHi, c.most}} {
			if d := v.got - v.want; d > 1e-12*v.want || d < -1e-12*v.want {
				t.Errorf("%s/%s.%s: %s %g, want %g", c.side, c.part, c.id, v.what, v.got, v.want)
			}
		}
		if n.Grade != c.grade {
			t.Errorf("%s/%s.%s is graded %s, want %s", c.side, c.part, c.id, n.Grade, c.grade)
		}
	}
}

const year = 365.25 * 86400 // s: a Julian year, by definition

func number(t *testing.T, parts []*link.Part, side link.Side, part, id string) *link.Number {
	t.Helper()
	for _, p := range parts {
		for i := range p.Numbers {
			if p.Side == side && p.ID == part && p.Numbers[i].ID == id {
				return &p.Numbers[i]
			}
		}
	}
	t.Fatalf("no number %s/%s.%s", side, part, id)
	return nil
}

// What a `from` prints as never looks better than it is.
func TestCite(t *testing.T) {
	b := good(t, small(t, nil))
	for _, c := range []struct {
		from  string
		grade basis.Grade
		want  string
	}{
		{"practice", basis.Practice, "common practice, no source"},
		{"common practice, no source", basis.Practice, "common practice, no source"},
		{"handbook, table 4", basis.Page, "an invented handbook, table 4"},
		{"handbook", basis.Memory, "from memory of an invented handbook"},
		{"recalled", basis.Memory, "from memory of another invented handbook"},
		{"from memory of handbook, table 4", basis.Memory, "from memory of an invented handbook, table 4"},
		{"handbook and geometry", basis.Derived, "an invented handbook and worked out by geometry"},
		{"our shop standard 7", basis.Practice, "our shop standard 7"},
	} {
		if got := b.Cite(c.from, c.grade); got != c.want {
			t.Errorf("%s prints as %q, want %q", c.from, got, c.want)
		}
	}
}

// The first trade name that fits names an option; one that none fits has none.
func TestTradeNames(t *testing.T) {
	b := good(t, small(t, nil))
	want := map[string]string{"shaft-true-up+hub-bush-press": "true-shaft-bush-bore", "shaft-leave+hub-bush-press": "bore-and-bush", "shaft-leave+hub-leave": "leave-it", "shaft-true-up+hub-leave": ""}
	for _, c := range link.All(b.Input, b.Purpose("running")) {
		got := ""
		if n := b.NameOf(c); n != nil {
			got = n.ID
		}
		if got != want[c.ID] {
			t.Errorf("%s is called %q, want %q", c.ID, got, want[c.ID])
		}
	}
}

// The same files give the same hash, any change another one.
func TestHash(t *testing.T) {
	a, again := good(t, small(t, nil)), good(t, small(t, nil))
	other := good(t, small(t, map[string]string{"hub/bush.yaml": "value: 1.6 mm => value: 1.7 mm"}))
	if a.Hash != again.Hash || a.Hash == other.Hash || len(a.Hash) != 12 {
		t.Errorf("hashes %s, %s of the same files, %s of others", a.Hash, again.Hash, other.Hash)
	}
}
