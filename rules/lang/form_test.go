package lang

import (
	"strings"
	"testing"

	"wornfit/rules/fault"
)

// tell is one fault wanted: the text under the caret, words of the message,
// words of the remedy.
type tell struct{ under, says, remedy string }

// mustTell holds the faults of an expression to those wanted: place, message
// and remedy of each, no more and no fewer.
func mustTell(t *testing.T, source string, got fault.List, want ...tell) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s\ngot %d faults, want %d:\n%v", source, len(got), len(want), got)
		return
	}
	for i, w := range want {
		at := strings.Index(source, w.under)
		if at < 0 {
			t.Fatalf("%q is not in %q", w.under, source)
		}
		column, width := here.Column+len([]rune(source[:at])), len([]rune(w.under))
		f := got[i]
		if f.At.File != here.File || f.At.Line != here.Line || f.At.Column != column || f.At.Width != width {
			t.Errorf("%s\ngot %d:%d width %d, want under %q at %d:%d width %d\n%v", source, f.At.Line, f.At.Column, f.At.Width, w.under, here.Line, column, width, f)
		}
		if !strings.Contains(f.Says, w.says) {
			t.Errorf("%s\nsays %q, want %q", source, f.Says, w.says)
		}
		if !strings.Contains(f.Remedy, w.remedy) || w.remedy == "" {
			t.Errorf("%s\nremedy %q, want %q", source, f.Remedy, w.remedy)
		}
		if f.Key != "define.wall.is" {
			t.Errorf("%s\nkey %q", source, f.Key)
		}
	}
}

// The forms of expr that rules do not use, each with what to write instead.
func TestFormsThatAreRefused(t *testing.T) {
	for _, c := range []struct {
		source string
		want   []tell
	}{
		{`wall + 3*mm`, []tell{{"3", "the number 3", "numbers table"}}},
		{`25.4*mm`, []tell{{"25.4", "the number 25.4", "numbers table"}}},
		{`30*K`, []tell{{"30", "the number 30", "numbers table"}}},
		{`2.0*wall`, []tell{{"2.0", "the number 2.0", "write 2"}}},
		{`0x4*wall`, []tell{{"0x4", "the number 0x4", "write 4"}}},
		{`1_000*wall`, []tell{{"1_000", "the number 1_000", "numbers table"}}},
		{`010*wall`, []tell{{"010", "the number 010", "numbers table"}}},
		{`wall**3`, []tell{{"3", "the exponent 3", "write wall*wall**2"}}},
		{`(wall + coat)^3`, []tell{{"3", "the exponent 3", "write (wall + coat)*(wall + coat)**2"}}},
		{`wall**-1`, []tell{{"-1", "the exponent -1", "write 1/wall**1"}}},
		{`seat_area**(1/2)`, []tell{{"1/2", "the exponent 1/2", "write sqrt(seat_area)"}}},
		{`seat_area**0.5`, []tell{{"0.5", "the exponent 0.5", "write sqrt(seat_area)"}}},
		{`wall**grip_margin`, []tell{{"grip_margin", "the exponent grip_margin", "**2"}}},
		{`wall**2**2`, []tell{{"2**2", "the exponent 2**2", "**4"}}},
		{`wall + mm`, []tell{{"mm", "the unit mm stands alone", "write 1*mm"}}},
		{`max(wall, mm)`, []tell{{"mm", "the unit mm stands alone", "write 1*mm"}}},
		{`mm.wall`, []tell{{"mm", "mm is a unit", "rename"}}},
		{`wall//2`, []tell{{"//", "a comment", "single /"}}},
		{`wall /* of the bush */`, []tell{{"/*", "a comment", "outside the quotes"}}},
		{`hub["outside"]`, []tell{{`hub["outside"]`, "[ ] looks something up", "dotted name"}}},
		{`filler.wets[hub.material]`, []tell{{`filler.wets[hub.material]`, "[ ] looks something up", "lookup such as pair"}}},
		{`wall[1:2]`, []tell{{"wall[1:2]", "part of a list", "dotted name"}}},
		{`hub?.outside`, []tell{{"hub?.outside", "?. is not used", "plain dot"}}},
		{`hub.outside()`, []tell{{"hub.outside()", "called on a value", "f(a, b)"}}},
		{`wall | abs()`, []tell{{"wall | abs", "hands a value on", "write abs(wall)"}}},
		{`::abs(wall)`, []tell{{"::abs", ":: in front", "leave it out"}}},
		{`all(wall, # > 1)`, []tell{{"all(wall, # > 1)", "all is a function of expr", "min, max"}}},
		{`round(wall)`, []tell{{"round(wall)", "round is a function of expr", "min, max"}}},
		{`let x = wall; x`, []tell{{"let x = wall; x", "let is not used", "under define"}}},
		{`wall; coat`, []tell{{"wall; coat", "; joins two", "write one"}}},
		{`{a: wall}`, []tell{{"{a: wall}", "{ } is not used", "dotted name"}}},
		{`[wall]`, []tell{{"[wall]", "a list stands only after in", "write in"}}},
		{`if hub.comes_off { wall } else { coat }`, []tell{{"if hub.comes_off { wall } else { coat }", "if and else", "test ? this : that"}}},
		{`wall ?: coat`, []tell{{"wall ?: coat", "?: with nothing", "test ? this : that"}}},
		{`!hub.comes_off`, []tell{{"!", "! is not used", "write not"}}},
		{`+wall`, []tell{{"+", "a + in front", "leave it out"}}},
		{`wall % coat`, []tell{{"%", "% is a remainder", "numbers table"}}},
		{`wall ?? coat`, []tell{{"??", "?? is not used", "whole range"}}},
		{`it.bush && it.bores`, []tell{{"&&", "&& is not used", "write and"}}},
		{`it.bush || it.bores`, []tell{{"||", "|| is not used", "write or"}}},
		{`duty.shock matches "hea"`, []tell{{"matches", "matches compares letters", `== "word"`}}},
		{`duty.shock contains "hea"`, []tell{{"contains", "contains compares letters", `== "word"`}}},
		{`duty.shock startsWith "hea"`, []tell{{"startsWith", "startsWith compares letters", `== "word"`}}},
		{`nil`, []tell{{"nil", "nil is not used", "whole range"}}},
		{`duty.shock == b"heavy"`, []tell{{`b"heavy"`, "b in front of a quote", "leave it out"}}},
		{`wall in 1..2`, []tell{{"in", "in wants a list of words", "inch"}}},
		{`duty.shock in [heavy, "light"]`, []tell{{"heavy", "words in quotes only", `write "word"`}}},
		{`duty.shock in []`, []tell{{"duty.shock in []", "an empty list", "name the words"}}},
		{`degC(wall)`, []tell{{"degC(wall)", "degC takes a plain number", "absolute already"}}},
		{`degC()`, []tell{{"degC()", "degC takes one number", "degC(40)"}}},
		{`degC(-300)`, []tell{{"degC(-300)", "colder than absolute zero", "there can be"}}},
		{``, []tell{{"", "nothing is written", "write an expression"}}},
	} {
		mustTell(t, c.source, told(c.source), c.want...)
	}
}

// What expr reads differently from what people mean.
func TestTrapsOfPrecedence(t *testing.T) {
	mustTell(t, "not wall > coat", told("not wall > coat"), tell{"not wall > coat", "not takes only wall, before >", "write not (wall > coat)"})
	mustTell(t, "it.bush and not wall <= 2*coat", told("it.bush and not wall <= 2*coat"),
		tell{"not wall <= 2*coat", "not takes only wall", "write not (wall <= 2*coat)"})
	mustTell(t, `not duty.shock == "heavy"`, told(`not duty.shock == "heavy"`),
		tell{`not duty.shock == "heavy"`, "before ==", `write not (duty.shock == "heavy")`})
	mustTell(t, `not duty.shock in ["heavy"]`, told(`not duty.shock in ["heavy"]`),
		tell{`not duty.shock in ["heavy"]`, "before in", `write duty.shock not in ["heavy"]`})
	mustTell(t, "coat < wall < least_wall", told("coat < wall < least_wall"), tell{"coat < wall < least_wall", "two comparisons in a row", "joined with and"})
	mustTell(t, "coat <= wall < hub_bore >= tight", told("coat <= wall < hub_bore >= tight"),
		tell{"coat <= wall < hub_bore >= tight", "two comparisons in a row", "two limits"})
	mustTell(t, "bush-wall", told("bush-wall"), tell{"bush-wall", "read as a subtraction", "did you mean bush_wall?"})
	mustTell(t, "2*least-wall", told("2*least-wall"), tell{"least-wall", "read as a subtraction", "did you mean least_wall?"})
}

func TestNotBindsAsWritten(t *testing.T) {
	for _, source := range []string{
		`not (wall > coat)`, `not hub.comes_off and it.bush`, `(not hub.comes_off) == it.bush`,
		`duty.shock not in ["heavy"]`, `not (duty.shock in ["heavy"])`,
	} {
		inferred(t, source)
	}
}

// expr gives the first error of its syntax only; each is said in plain words.
func TestSyntaxIsToldInPlainWords(t *testing.T) {
	for _, c := range []struct {
		source    string
		at, width int // of the caret, from 0
		want      tell
	}{
		{"wall +", 5, 1, tell{"", "ends too early", "close every bracket"}},
		{"(wall", 4, 1, tell{"", "ends too early", "close every bracket"}},
		{"wall)", 4, 1, tell{"", "unexpected )", "brackets"}},
		{"2mm", 0, 3, tell{"", "run together", "write 2*mm"}},
		{"2 mm", 2, 2, tell{"", "no operator in between", "write 2*mm"}},
		{"wall coat", 5, 4, tell{"", "no operator in between", "write 2*mm"}},
		{"wall = coat", 5, 1, tell{"", "a single =", "write =="}},
		{"wall =< coat", 5, 1, tell{"", "=<", "write <="}},
		{"wall => coat", 5, 1, tell{"", "=>", "write >="}},
		{"wall <> coat", 6, 1, tell{"", "<>", "write !="}},
		{"wall ≤ coat", 5, 1, tell{"", "the sign ≤", "write <="}},
		{"wall × 2", 5, 1, tell{"", "the sign ×", "write *"}},
		{"wall²", 4, 1, tell{"", "the sign ²", "write **2"}},
		{"duty.shock == “heavy”", 14, 1, tell{"", "the sign “", `write "`}},
		{"0*in", 2, 2, tell{"", "list of words", "inch"}},
		{`duty.shock == "heavy`, 14, 6, tell{"", "not closed", `with "`}},
		{"wall # of the bush", 5, 1, tell{"", "# is not used", "outside the quotes"}},
		{"wall @ 2", 5, 1, tell{"", "the sign @", "plain letters"}},
		{"wall + ", 5, 1, tell{"", "ends too early", "close every bracket"}},
		{"min(wall, coat", 13, 1, tell{"", "ends too early", "close every bracket"}},
	} {
		got := told(c.source)
		if len(got) != 1 {
			t.Errorf("%s\ngot %v, want one fault", c.source, got)
			continue
		}
		if at := got[0].At; at.Line != here.Line || at.Column != here.Column+c.at || at.Width != c.width {
			t.Errorf("%s\nat %d:%d width %d, want column %d width %d", c.source, at.Line, at.Column, at.Width, here.Column+c.at, c.width)
		}
		if !strings.Contains(got[0].Says, c.want.says) || !strings.Contains(got[0].Remedy, c.want.remedy) {
			t.Errorf("%s\n%v", c.source, got)
		}
	}
}
