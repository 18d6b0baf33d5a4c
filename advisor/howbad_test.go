package advisor

import (
	"testing"

	"wornfit/advisor/answer"
	"wornfit/advisor/condition"
	"wornfit/calc/interval"
)

// judged is an option of a purpose nobody has written yet, that tells its three
// clearances, mm.
func judged(least, most, act float64) []answer.Option {
	value := func(name string, mm float64) answer.Value {
		return answer.Value{Name: "purpose/later." + name, Says: name, Value: mm / 1000}
	}
	return []answer.Option{{Purpose: "later", Values: []answer.Value{value("tightest", 9)}}, // tells none of them
		{Purpose: "later", Values: []answer.Value{value("least_new", least), value("tightest", 9), value("most_new", most), value("act_at", act)}}}
}

// stands is a fit that is as loose as this at its loosest, mm, and wore at this
// rate, mm in 1000 h.
func stands(low, high, rate float64) *condition.Condition {
	c := &condition.Condition{}
	c.Clearance.Most = condition.Figure{Is: true, Best: (low + high) / 2000, Range: interval.I{Lo: low / 1000, Hi: high / 1000}}
	if rate > 0 {
		r := rate / 1000 / (1000 * 3600)
		c.WearRate = condition.Figure{Is: true, Best: r, Range: interval.I{Lo: r / 2, Hi: r * 2}}
	}
	return c
}

func line(sections []answer.Section, name string) (answer.Line, bool) {
	for _, s := range sections {
		for _, l := range s.Lines {
			if l.Name == name {
				return l, true
			}
		}
	}
	return answer.Line{}, false
}

// The word goes by the loosest place and its doubt: past when the whole doubt is
// past, within when it leaves more than a quarter of what may wear.
func TestStandingToTheLimit(t *testing.T) {
	for _, c := range []struct {
		most, act float64 // of a good fit, and to act at
		low, high float64 // loosest now
		want      string
	}{
		{0.08, 0.24, 0.241, 0.251, "past"},
		{0.08, 0.24, 0.235, 0.245, "near"}, // the doubt straddles it
		{0.08, 0.24, 0.195, 0.205, "near"}, // 0.035 of 0.16 left
		{0.08, 0.24, 0.185, 0.195, "within"},
		{-0.018, 0, 0.018, 0.063, "past"}, // a press fit gone loose
		{-0.018, 0, -0.035, -0.025, "within"},
		{-0.018, 0, -0.006, -0.002, "near"},
	} {
		l, ok := line(howBad(judged(c.most-0.05, c.most, c.act), stands(c.low, c.high, 0)), "standing")
		if !ok || l.Words != c.want {
			t.Errorf("%+v: %q", c, l.Words)
		}
	}
}

// Left at its own rate: 0.05 mm at 0.01 mm in 1000 h are 5000 h; at the least,
// the doubt of the size and twice the rate, 0.045 mm at 0.02: 2250 h.
func TestTimeLeftAtItsOwnRate(t *testing.T) {
	sections := howBad(judged(0.03, 0.08, 0.24), stands(0.185, 0.195, 0.01))
	for name, want := range map[string]float64{"time_left": 5000, "time_left_least": 2250} {
		l, ok := line(sections, name)
		if !ok || l.Value < want*3600*0.9999 || l.Value > want*3600*1.0001 {
			t.Errorf("%s: %g h, want %g", name, l.Value/3600, want)
		}
	}
	for what, c := range map[string]*condition.Condition{"past its limit": stands(0.25, 0.26, 0.01), "no rate": stands(0.185, 0.195, 0)} {
		if l, ok := line(howBad(judged(0.03, 0.08, 0.24), c), "time_left"); ok {
			t.Errorf("%s: %g h are promised", what, l.Value/3600)
		}
	}
}

// A purpose that does not tell all three has no such section; a fit not read
// has the three and no verdict.
func TestNoVerdictWithoutNumbers(t *testing.T) {
	some := judged(0.03, 0.08, 0.24)
	some[1].Values = some[1].Values[:3]
	if s := howBad(some, stands(0.1, 0.11, 0)); s != nil {
		t.Errorf("%+v", s)
	}
	s := howBad(judged(0.03, 0.08, 0.24), &condition.Condition{})
	if _, ok := line(s, "standing"); ok || len(s) != 1 || len(s[0].Lines) != 3 {
		t.Errorf("%+v", s)
	}
}
