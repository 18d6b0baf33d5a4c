package lang

import (
	"testing"

	"wornfit/calc/quantity"
)

func TestALimitIsOneComparison(t *testing.T) {
	for source, want := range map[string]Sense{
		"wall >= least_wall":         AtLeast,
		"wall <= 2*hub_bore":         AtMost,
		"hot <= shop.oven":           AtMost,
		"low(turn_off) >= tight":     AtLeast,
		"it.hardest >= hub.hardness": AtLeast,
		"pressure*joint.inner_hoop <= part_of_yield*joint.inner_material.yield": AtMost,
	} {
		s, faults := Parse(text(source))
		left, right, sense, more := s.CheckLimit(bench())
		if len(faults)+len(more) > 0 || left == nil || right == nil || sense != want {
			t.Errorf("%s: %v %v %v %v", source, left, right, sense, append(faults, more...))
		}
	}
	for _, c := range []struct {
		source string
		want   tell
	}{
		{"wall > least_wall", tell{"wall > least_wall", "a limit with >", "write >="}},
		{"wall < least_wall", tell{"wall < least_wall", "a limit with <", "write <="}},
		{"wall >= coat and wall <= tight", tell{"wall >= coat and wall <= tight", "two comparisons in one limit", "two limits"}},
		{"wall >= coat or it.bush", tell{"wall >= coat or it.bush", "a choice inside a limit", "told apart by when"}},
		{"coat <= wall <= tight", tell{"coat <= wall <= tight", "two comparisons in a row", "two limits"}},
		{"not (wall >= coat)", tell{"not (wall >= coat)", "not in front of a limit", "turn the comparison round"}},
		{"wall", tell{"wall", "a limit without a comparison", "one <= or >="}},
		{"hub.comes_off", tell{"hub.comes_off", "a limit without a comparison", "one <= or >="}},
		{`duty.shock == "none"`, tell{`duty.shock == "none"`, "no <= or >=", "under needs"}},
		{"wall = coat", tell{"=", "a single =", "<= or >="}},
		{"wall >= (coat <= tight ? coat : tight)", tell{"coat <= tight", "a comparison inside a limit", "under define"}},
		{"wall >= force", tell{"wall >= force", "they cannot be compared", "same kind"}},
		{"wall >= 2.5*mm", tell{"2.5", "the number 2.5", "numbers table"}},
		{"it.bush >= wall", tell{"it.bush", "yes or no, not a number", "compared"}},
	} {
		s, faults := Parse(text(c.source))
		left, right, _, more := s.CheckLimit(bench())
		mustTell(t, c.source, append(faults, more...), c.want)
		if left != nil || right != nil {
			t.Errorf("%s: sides given beside a fault", c.source)
		}
	}
}

func TestARangeHasTwoEndsOfOneKind(t *testing.T) {
	s, faults := Parse(text("hub.smallest/2 .. 2*hub.outside"))
	low, high, more := s.CheckRange(bench(), quantity.LengthDim)
	if len(faults)+len(more) > 0 || low.Op != Div || high.Op != Mul {
		t.Fatalf("%v %v %v", low, high, append(faults, more...))
	}
	for _, c := range []struct {
		source string
		want   []tell
	}{
		{"hub.smallest", []tell{{"hub.smallest", "a range with one end", "LOW .. HIGH"}}},
		{"hub.smallest .. force", []tell{{"force", "force is force (N), and length (mm) is wanted", "factor"}}},
		{"0 .. hub.outsid", []tell{{"0", "0 is a plain number", "write 0*mm"}, {"hub.outsid", "unknown", "hub.outside"}}},
	} {
		s, faults := Parse(text(c.source))
		low, high, more := s.CheckRange(bench(), quantity.LengthDim)
		mustTell(t, c.source, append(faults, more...), c.want...)
		if low != nil || high != nil {
			t.Errorf("%s: ends given beside a fault", c.source)
		}
	}
	mustTell(t, "wall .. coat", told("wall .. coat"), tell{"wall .. coat", "a span of two sizes", "range of a dimension"})
}

func TestSidesAreExpressionsOfTheirOwn(t *testing.T) {
	s, _ := Parse(text("(wall + coat)*2 >= 2*(tight - coat)"))
	left, right, ok := s.Sides()
	if !ok || left.Text.Source != "(wall + coat)*2" || right.Text.Source != "2*(tight - coat)" || right.Text.At.Column != 39 {
		t.Errorf("%v %+v %+v", ok, left.Text, right.Text)
	}
	s, _ = Parse(text("wall + coat"))
	if _, _, ok := s.Sides(); ok {
		t.Error("a sum has no sides")
	}
}
