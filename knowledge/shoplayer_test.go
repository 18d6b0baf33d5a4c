package knowledge_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/fault"
	"wornfit/rules/link"
)

// ourShop lays a shop's overrides over the shipped base.
func ourShop(t *testing.T, overrides string) (*rules.Base, fault.List) {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "overrides.yaml"), []byte(overrides+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	return knowledge.Load(dir)
}

// A shop that will not turn a bush thinner than 4 mm says so in one line, and a
// bush of 3 mm breaks the rule that 0.5 mm did not.
func TestAShopsNumberDecides(t *testing.T) {
	r := readRuleTest(t, filepath.Join("tests", "hub", "bush.yaml"))
	base, faults := ourShop(t, "hub/bush.least_ring: {value: 4 mm, from: our shop standard 7}")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := newRuleBench(base, r)
	if err != nil {
		t.Fatal(err)
	}
	if broken, err := b.broken(ruleLine{}); err != nil || !slices.Equal(broken, []string{"bush-has-wall"}) {
		t.Errorf("breaks %v, %v; want bush-has-wall alone", broken, err)
	}
}

// What was read in a source stands, whoever says otherwise; so do musts and safety.
func TestAShopMayNot(t *testing.T) {
	for _, c := range []struct{ name, text, says string }{
		{"change a number read on a page", "hold/compound.best_gap: {value: 0.1 mm to 0.3 mm, from: our trials}", "hold/compound.best_gap was read in a source"},
		{"change a metal's strength read on a page", "materials/steel-1045.yield: {value: 500 MPa, from: our trials}", "materials/steel-1045.yield was read in a source"},
		{"change a clearance quoted from a book", "clearances/greased.base_least: {value: 0.2 thou, from: our trials}", "clearances/greased.base_least was read in a source"},
		{"make a must a should", "bush-cleans: {becomes: should, from: us}", "never the reverse"},
		{"touch safety", "bush-no-lead: {becomes: must, from: us}", "never touched"},
		{"name nothing", "hub/bush.least_rng: {value: 4 mm, from: us}", "did you mean hub/bush.least_ring?"},
		{"leave its number without an owner", "hub/bush.least_ring: {value: 4 mm}", "from is missing"},
	} {
		_, faults := ourShop(t, c.text)
		if !strings.Contains(faults.Error(), c.says) {
			t.Errorf("%s: told %q, want %q", c.name, faults.Error(), c.says)
		}
	}
}

// A should that a shop makes a must rules out in every option it stands in.
func TestAShopsShouldBecomesMust(t *testing.T) {
	base, faults := ourShop(t, "bush-wall-least: {becomes: must, from: our shop standard 7}")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	seen := 0
	for _, c := range link.All(base.Input, base.Purpose("running")) {
		if c.Hub.ID != "bush" {
			continue
		}
		o, err := c.Link(base.Input)
		if err != nil {
			t.Fatal(err)
		}
		for _, check := range o.Checks {
			if check.ID != "bush-wall-least" {
				continue
			}
			seen++
			if check.Strength != link.Must || check.From != "our shop standard 7" {
				t.Errorf("%s: %s is %s, from %s", o.ID, check.ID, rules.StrengthWord(check.Strength), check.From)
			}
		}
	}
	if seen == 0 {
		t.Error("no option has the rule")
	}
}
