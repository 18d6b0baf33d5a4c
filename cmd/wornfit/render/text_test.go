package render

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"wornfit/calc/quantity"
)

func TestWrapNeverPartsANumberFromItsUnit(t *testing.T) {
	for _, c := range []struct {
		text string
		to   int
		want []string
	}{
		{"the bore is 25.040 mm wide", 15, []string{"the bore is", "25.040" + glue + "mm wide"}},
		{"1.0058 ±.0002 in and more", 16, []string{"1.0058" + glue + "±.0002" + glue + "in", "and more"}},
		{"it holds 6.74 N m surely", 12, []string{"it holds", "6.74" + glue + "N" + glue + "m", "surely"}},
		{"at 20 °C it has let go", 8, []string{"at 20" + glue + "°C", "it has", "let go"}},
		{"shaft-true-up+hub-bush-press", 18, []string{"shaft-true-up+", "hub-bush-press"}},
		{"shaft-true-up+hub", 9, []string{"shaft-", "true-up+", "hub"}},
		{"shaft-true-up+hub", 16, []string{"shaft-true-up+", "hub"}}, // one too wide
		{"1800 EUR.", 30, []string{"1800" + glue + "EUR."}},
		{"", 10, []string{""}},
	} {
		if got := wrap(c.text, c.to); !slices.Equal(got, c.want) {
			t.Errorf("%q to %d: %q", c.text, c.to, got)
		}
	}
}

func TestPlainHasNoOtherCharacters(t *testing.T) {
	for in, want := range map[string]string{
		"25 ±0.01 mm": "25 +/-0.01 mm", "15 µm at 20 °C": "15 um at 20 deg C", "⌀25 − 2 × 3": "dia 25 - 2 x 3", "Öse, 5 ≤ 6": "OEse, 5 <= 6", "日": "?", "a\tb\nc": "a b c",
	} {
		want = strings.Replace(want, "OEse", Plain("Öse", true), 1)
		if got := Plain(in, true); got != want {
			t.Errorf("%q: %q, not %q", in, got, want)
		}
	}
	if got := Plain("0.07 um/h", false); got != "0.07 µm/h" {
		t.Errorf("got %q", got)
	}
}

func TestMeasuredEarnsItsDigits(t *testing.T) {
	mm, inch := Voice{}, Voice{quantity.Speech{Units: quantity.Inch}}
	for _, c := range []struct{ got, want string }{
		{mm.Measured(0.02542, 5e-6, true), "25.420 ±0.005 mm"},
		{mm.Measured(0.02542, 5.2e-6, true), "25.420 ±0.006 mm"}, // a doubt is rounded up
		{mm.Measured(0.0254, 4e-5, true), "25.40 ±0.04 mm"},
		{mm.Measured(0.0254, 1e-7, true), "25.400 ±0.001 mm"},
		{inch.Measured(0.0254*0.9951, 0.0254*0.00012, true), ".9951 ±.0002 in"},
		{mm.Measured(0.0254, 0, true), "25.400 mm"},
		{inch.Free(-0.0254*0.0015, 0), "0.0015 in tight"},
		{inch.Free(0.0254*0.002, 0), "0.0020 in free"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, not %q", c.got, c.want)
		}
	}
}

// A printed low limit is never under the true one, a high one never over, and
// the target lies between them.
func TestLimitsRoundInward(t *testing.T) {
	l, target, h := Voice{quantity.Speech{Units: quantity.Inch}}.Limits(0.025040, 0.0250505, 0.025061)
	if l != ".9859 in" || h != ".9866 in" { // 25.040 mm is .98583 in, 25.061 mm is .98665 in
		t.Errorf("got %s to %s", l, h)
	}
	if target != ".9862 in" {
		t.Errorf("target %s", target)
	}
}

func TestSpan(t *testing.T) {
	for s, want := range map[float64]string{0: "0 h", 45: "45 s", 1800: "30 min", 9000: "2.5 h", 4 * 86400: "4 days", 3 * 365.25 * 86400: "3 years", 1e12: "over 1000 years", math.Inf(1): "over 1000 years"} {
		if got := quantity.Span(s); got != want {
			t.Errorf("%g: %s, not %s", s, got, want)
		}
	}
}

func TestJSONBearsWhatCannotBeCounted(t *testing.T) {
	a := fixture()
	a.Options[0].Points = math.NaN()
	a.Options[0].Dimensions[0].Low.Value = math.Inf(-1)
	raw, err := JSON(a, false)
	if err != nil {
		t.Fatal(err)
	}
	again, _ := JSON(a, false)
	if string(raw) != string(again) || raw[len(raw)-1] != '\n' {
		t.Error("not the same twice, or no line end")
	}
	var v struct {
		Schema  int `json:"schema_version"`
		Options []struct {
			Points     *float64
			Holds      map[string]string
			Conflict   []string
			Dimensions []struct {
				Low struct {
					Value *float64
					By    []string
				}
				High struct{ Value float64 }
			}
			Values []struct{ Value *float64 }
		}
	}
	if err := json.Unmarshal(raw, &v); err != nil {
		t.Fatal(err)
	}
	o := v.Options[0]
	if v.Schema != 1 || o.Points != nil || o.Dimensions[0].Low.Value != nil || o.Values[2].Value != nil {
		t.Errorf("what cannot be counted is not null: %+v", o)
	}
	if got := o.Dimensions[0].High.Value; got != a.Options[0].Dimensions[0].High.Value {
		t.Errorf("a size changed on the way: %v", got)
	}
	if strings.Contains(string(raw), `"conflict": null`) {
		t.Error("an empty list is null")
	}
}

func TestJSONInPlainCharacters(t *testing.T) {
	raw, err := JSON(map[string]string{"a": "20 °C 𝄞"}, true)
	if err != nil {
		t.Fatal(err)
	}
	var v map[string]string
	if err := json.Unmarshal(raw, &v); err != nil || v["a"] != "20 °C 𝄞" {
		t.Errorf("%v: %q", err, v)
	}
	if strings.ContainsFunc(string(raw), func(r rune) bool { return r > '~' }) {
		t.Errorf("not plain: %s", raw)
	}
}
