package lang

import (
	"math"
	"strings"
	"testing"

	"github.com/expr-lang/expr/builtin"

	"wornfit/calc/quantity"
)

func TestReservedNames(t *testing.T) {
	for _, n := range append(Units(), "in", "and", "or", "not", "let", "if", "else", "matches", "contains", "startsWith",
		"endsWith", "true", "false", "nil", "min", "max", "abs", "mean", "count", "sum", "pi", "sqrt", "low", "high", "degC", "degF") {
		if !Reserved(n) {
			t.Errorf("%s is free", n)
		}
		if why := BadName(n); !strings.Contains(why, n) {
			t.Errorf("BadName(%q) = %q", n, why)
		}
	}
	for _, n := range builtin.Names {
		if !Reserved(n) {
			t.Errorf("expr's %s is free", n)
		}
	}
}

func TestNames(t *testing.T) {
	for _, n := range []string{"wall", "bush_bore", "hub.outside", "shaft.material.E", "nu", "E", "n2", "hub.count", "shop.press.force", "bush.pressure"} {
		if why := BadName(n); why != "" {
			t.Errorf("BadName(%q) = %q", n, why)
		}
	}
	for n, want := range map[string]string{
		"bush-wall": "write bush_wall", "BushWall": "write bush_wall", "leastWall": "such as least_wall", "": "no empty part", "hub..wall": "no empty part",
		"2wall": "does not begin", "wände": "holds ä", "_wall": "does not begin", "hub wall": "such as hub_wall", "$env": "does not begin", "count.wall": "count is a word",
	} {
		if why := BadName(n); !strings.Contains(why, want) {
			t.Errorf("BadName(%q) = %q, want %q", n, why, want)
		}
	}
}

// Every unit is package quantity's, under its own name there.
func TestUnitsAreTheQuantityPackages(t *testing.T) {
	for _, name := range Units() {
		u, ok := UnitNamed(name)
		if !ok {
			t.Fatalf("no unit %s", name)
		}
		q, err := quantity.AnyUnit(name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if q.Dim != u.Dim || math.Abs(q.Factor()/u.Factor-1) > 1e-15 {
			t.Errorf("%s is %v %v here, %v %v there", name, u.Factor, u.Dim, q.Factor(), q.Dim)
		}
	}
	if _, ok := UnitNamed("furlong"); ok {
		t.Error("a furlong is no unit here")
	}
}

// Sizes anyone can check: NIST SP 811 appendix B.8 gives the pound-force as
// 4.448 222 N and the psi as 6.894 757 kPa (from memory of it).
func TestUnitSizes(t *testing.T) {
	for name, want := range map[string]float64{"inch": 0.0254, "lbf": 4.448222, "psi": 6894.757, "rpm": 1.0 / 60, "deg": math.Pi / 180} {
		if u, _ := UnitNamed(name); math.Abs(u.Factor/want-1) > 1e-7 {
			t.Errorf("%s is %v, want %v", name, u.Factor, want)
		}
	}
}

// Every kind of the vocabulary is said with its own words, so a fault never
// speaks of exponents where the trade has a name.
func TestEveryKindIsSaid(t *testing.T) {
	for kind, dim := range quantity.Kinds {
		if said := sayDim(dim); strings.Contains(said, "^") {
			t.Errorf("%s is said %q", kind, said)
		}
	}
	if said := sayDim(quantity.Dim{Len: 4, Mass: 1}); said != "a quantity in kg m^4" {
		t.Errorf("said %q", said)
	}
}

// The zero a remedy proposes is of the kind it is proposed for.
func TestZerosHaveTheirKind(t *testing.T) {
	for _, k := range kinds {
		if k.zero == "" {
			continue
		}
		if e := inferred(t, k.zero); e.Type.Dim != k.dim {
			t.Errorf("%s is %s, want %s", k.zero, sayDim(e.Type.Dim), sayDim(k.dim))
		}
	}
}
