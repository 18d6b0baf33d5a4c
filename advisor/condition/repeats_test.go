package condition

import (
	"strings"
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/rules/fault"
)

// Repeats of one place further apart than the gauge can be are told with both
// values and their place; up to six times what it repeats within, or three
// times what it is true within, they are not. The rule stands in repeats.go.
func TestRepeatsThatContradict(t *testing.T) {
	for _, c := range []struct {
		within, again, second float64
		told                  bool
	}{
		{0.005, 0.002, 25.862, true},
		{0.005, 0.002, 25.074, false}, // just six times
		{0.005, 0.002, 25.075, true},
		{0.005, 0, 25.077, false}, // just three times
		{0.005, 0, 25.078, true},
	} {
		for _, land := range []bool{false, true} {
			b := newBench().round()
			r := at20(gauge(c.within, c.again), 6, 0, 25.062, c.second)
			r.Place = fault.Place{File: "case.yaml", Line: 75, Column: 13}
			if b.on(casefile.Hub).Readings = []casefile.Reading{r}; land {
				b.on(casefile.Hub).Readings, b.on(casefile.Hub).Lands = nil, []casefile.Reading{r}
			}
			_, solve := Find(b.c, b.fit, steel)
			if (len(solve) > 0) != c.told {
				t.Errorf("%+v, land %v: told %v", c, land, solve)
			}
			for _, f := range solve {
				if f.At.Line != 75 || !strings.Contains(f.Says, "25.062") || !strings.Contains(f.Remedy, "read it again") {
					t.Errorf("%+v: %v lacks place, value or remedy", c, f)
				}
			}
		}
	}
}

// Two repeats leave one degree of freedom: k is 13.97 in place of 2, which is
// told. Source of k: JCGM 100:2008 table G.2, 95.45 %.
func TestFewRepeatsAreTold(t *testing.T) {
	b := newBench().round()
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(gauge(0.002, 0.002), 6, 0, 25.050, 25.062)}
	if !noted(b.find(t), "2 repeats of eye that differ are few") {
		t.Errorf("a doubt of few repeats is not told")
	}
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(gauge(0.002, 0.002), 6, 0, 25.050, 25.051)}
	if noted(b.find(t), "are few") {
		t.Errorf("repeats within the gauge's doubt are told as few")
	}
}

func noted(c *Condition, says string) bool {
	for _, n := range c.Notes {
		if strings.Contains(n.Says, says) {
			return true
		}
	}
	return false
}

// That an oval may hide is told once for both parts.
func TestHiddenOvalIsToldOnce(t *testing.T) {
	b := newBench().round()
	g := gauge(0.002, 0.001)
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(g, 5, 0, 25.05), at20(g, 5, 90, 25.06)}
	b.on(casefile.Shaft).Readings = []casefile.Reading{at20(g, 5, 0, 24.98)}
	n := 0
	c := b.find(t)
	for _, note := range c.Notes {
		n += strings.Count(note.Says, "oval may hide")
	}
	if n != 1 || !noted(c, "eye and pin: read at fewer than three angles") {
		t.Errorf("told %d times: %v", n, c.Notes)
	}
}

// Wear told from the nominal is no better known than the size it was made to:
// a bore made 25.00 to 25.08 and read 25.10 lost 0.02 to 0.10. Source: arithmetic.
func TestDoubtCoversTheRange(t *testing.T) {
	b := newBench().round()
	b.fit.Given["fit.nominal"] = is(25 * mm)
	b.fit.WhenNew = casefile.Value{Stated: true, Known: true, Lo: 0.03 * mm, Hi: 0.08 * mm}
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(gauge(0.001, 0), 5, 0, 25.10), at20(gauge(0.001, 0), 5, 90, 25.02)}
	c := b.find(t)
	check(t, "doubt of the wear", c.Hub.Wear.Doubt(), 0.081, 1e-6)
	for name, f := range map[string]Figure{"wear": c.Hub.Wear, "one-sided": c.Hub.OneSided, "largest": c.Hub.Largest} {
		if d := f.Doubt() + 1e-12; f.Best-d > f.Range.Lo || f.Best+d < f.Range.Hi {
			t.Errorf("%s %.4f ± %.4f mm does not cover %v", name, f.Best/mm, d/mm, f.Range)
		}
	}
}
