package rules_test

import (
	"strings"
	"testing"

	"wornfit/calc/catalogue"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/rules"
)

// A slow calculation may be asked in a limit of the finished design, and nowhere
// that a search would ask for it.
func TestASlowCalculationStandsAfterTheSearch(t *testing.T) {
	slow := kernel.Kernel{Name: "soak_time", Says: "invented", Result: quantity.TimeDim, Slow: true,
		Args:  []kernel.Arg{{Name: "wall", Dim: quantity.LengthDim, Range: interval.I{Lo: 0, Hi: 1}}},
		Value: func(x []float64) float64 { return 1e4 * x[0] }}
	const limit = `  - id: bush-wall-least
    must: 'soak_time(wall) >= least_soak'
`
	for _, c := range []struct{ add, says string }{
		{"    after: yes\n", ""},
		{"    after: no\n", "soak_time is slow"},
		{"", "soak_time is slow"},
	} {
		files := small(t, map[string]string{"hub/bush.yaml": "numbers:\n => numbers:\n  least_soak: {value: 10 s, from: practice, seen: practice}\n"})
		text := string(files["hub/bush.yaml"].Data)
		at := strings.Index(text, "limits:\n")
		if at < 0 {
			t.Fatal("the small base has no limits in hub/bush.yaml")
		}
		text = text[:at+8] + strings.Replace(limit, "bush-wall-least", "bush-soaks", 1) + c.add +
			"    ground: physics\n    why: it soaks too short\n    remedy: wait\n    from: practice\n" + text[at+8:]
		files["hub/bush.yaml"].Data = []byte(text)
		_, faults := rules.Load([]rules.Layer{{Name: "small", Files: files}}, append(catalogue.All(), slow))
		if c.says == "" && len(faults) > 0 {
			t.Errorf("%q: %v", c.add, faults)
		}
		if c.says != "" {
			only(t, faults, c.says, "after: yes")
		}
	}
}
