package lang

import (
	"slices"
	"testing"

	"wornfit/calc/quantity"
)

// Whatever is typed is read or told, with its place inside the text; nothing
// panics, and what passes the checks is compiled by expr.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"wall >= least_wall", "not wall > 2", "a < b < c < d", `duty.shock in ["heavy", "hevy"]`, "hub.comes_off ? wall : coat ?: tight",
		"low(turn_off)*pi**2", "degC(-40.5) - degF(500)", "let x = wall; x", "if wall { 1 } else if coat { 2 } else { 4 }", "all(wall, # > 1)",
		"wall | abs() | min(coat)", "::abs(wall)", "hub?.outside?.[0]", "{a: 1, b: [2]}", "wall[1:2]", "b'x'", "`raw`", "wall²", "2mm", "//", "/*",
		"(((wall)", ")", "not", "not in", "x not in", "-", "- -wall", "1..2", "a;b", "wall\n + coat", "\"\\u{41}\"", "''", "_finite(wall)", "$env", "wall.in", "mm.mm",
		"pair(shaft_face, bore_face) == \"bad\"", "rub_speed()", "wall ?", "0x", "1e999", "9999999999999999999", "\x00", "\xff", "wall.\"x\"",
	} {
		f.Add(seed)
	}
	scope := bench()
	f.Fuzz(func(t *testing.T, source string) {
		s, faults := Parse(text(source))
		e, more := s.Infer(scope)
		_, _, _, limit := s.CheckLimit(scope)
		_, _, ends := s.CheckRange(scope, quantity.LengthDim)
		for _, p := range slices.Concat(faults, more, limit, ends) {
			if p.At.Line < here.Line || p.At.Column < here.Column || p.At.Width < 0 || p.Says == "" || p.Remedy == "" {
				t.Errorf("%q: place or words: %+v", source, p)
			}
		}
		if e == nil && len(faults)+len(more) == 0 {
			t.Errorf("%q: nothing, and no fault", source)
		}
		if e != nil && len(faults) == 0 && e.Type.Kind != Row {
			if _, err := s.Referee(scope); err != nil {
				t.Errorf("%q: %v", source, err)
			}
		}
	})
}
