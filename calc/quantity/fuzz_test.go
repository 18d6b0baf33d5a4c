package quantity

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

// FuzzParse: whatever is typed, wherever it stands, the answer is an ordered
// set of finite sizes that reads back the same, or a refusal with a remedy. The
// texts it caught stand in testdata/fuzz: a star for a unit that panicked, two
// numbers too long to be written again, and -1 with deviations read as a
// departure. Run by hand: go test -run=none -fuzz=FuzzParse -fuzztime=10m -parallel=1
func FuzzParse(f *testing.F) {
	for i, c := range accepted {
		f.Add(c.text, uint8(i))
	}
	for i, c := range refused {
		f.Add(c.text, uint8(i))
	}
	for _, text := range []string{
		"1-3/16-1-5/16 in", "25 -0/-0 mm", "+0/-0 mm", "±0 mm", "1 to 2 to 3 mm", "1--3 in", "0/-0", "25 mm H7 H7", "1/K", "5 1/K",
		"- 5 mm", "5 mm to 6 mm to", "5 °C to 6 K", "20 °C ±1 °F", "5 % to 1 rad", "5e 1/K", ".5.5 mm", "5 (N m)", "0 0/16 in", "½½ in", "5⅜⅜",
	} {
		f.Add(text, uint8(0))
	}
	kinds := make([]string, 0, len(Kinds))
	for k := range Kinds {
		kinds = append(kinds, k)
	}
	slices.Sort(kinds)
	block := must("in", LengthDim)
	f.Fuzz(func(t *testing.T, text string, place uint8) {
		kind := kinds[int(place)%len(kinds)]
		for name, read := range map[string]func(string) (Typed, error){
			"ParseAny":  ParseAny,
			"ParseIn":   func(s string) (Typed, error) { return ParseIn(s, block) },
			"Parse":     func(s string) (Typed, error) { return Parse(s, Kinds[kind]) },
			"ParseKind": func(s string) (Typed, error) { return ParseKind(s, kind) },
		} {
			got, err := read(text)
			if err != nil {
				var r *Refusal
				if !errors.As(err, &r) || r.Says == "" || r.Remedy == "" || r.Text != text || strings.ContainsAny(err.Error(), "\n\r") {
					t.Fatalf("%s(%q): poor refusal %q", name, text, err)
				}
				continue
			}
			checkTyped(t, name, got)
			again, err := read(got.String())
			if err != nil || !same(got, again) {
				t.Fatalf("%s(%q) is %v to %v, written again as %q: %v to %v, %v", name, text, got.Low, got.High, got, again.Low, again.High, err)
			}
		}
	})
}

func checkTyped(t *testing.T, name string, got Typed) {
	for _, v := range []float64{got.Low, got.Best, got.High} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%s(%q) gives %v", name, got.Text, v)
		}
	}
	if !(got.Low <= got.Best && got.Best <= got.High) {
		t.Fatalf("%s(%q): %v, %v, %v are out of order", name, got.Text, got.Low, got.Best, got.High)
	}
	if got.Exact == nil || got.Places < -1 {
		t.Fatalf("%s(%q): no exact value or %d places", name, got.Text, got.Places)
	}
	for _, units := range []System{Metric, Inch, Both} {
		if said := (Speech{units, "EUR"}).Say(got.Best, got.Dim); said == "" || strings.Contains(said, "NaN") {
			t.Fatalf("%s(%q) is said %q", name, got.Text, said)
		}
	}
}

func same(a, b Typed) bool {
	return a.Low == b.Low && a.Best == b.Best && a.High == b.High && a.Dim == b.Dim && a.Form == b.Form &&
		a.Class == b.Class && a.Exact.Cmp(b.Exact) == 0 && a.Unit.Name == b.Unit.Name
}
