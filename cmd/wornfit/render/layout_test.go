package render

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

var everyWidth = []int{36, 40, 60, 67, 68, 80, 100, 120}

// pages draws every page of an answer.
func pages(a *answer.Answer, l Look, v Voice) map[string]string {
	out := map[string]string{"advise": Advise(l, a, v, true)}
	var all []*answer.Option
	for i := range a.Options {
		o := &a.Options[i]
		all = append(all, o)
		out["size "+o.ID] = Size(l, a, o, v, true)
		out["why "+o.ID] = Why(l, a, o, v)
	}
	out["compare"] = Compare(l, a, all, v)
	return out
}

// everyLook calls check with every page at every width, in every unit, in plain
// characters and not, painted and not.
func everyLook(t *testing.T, check func(t *testing.T, l Look, units quantity.System, name, page string)) {
	for _, w := range everyWidth {
		for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			for _, l := range []Look{{Width: w}, {Width: w, ASCII: true}, {Width: w, Colour: true}} {
				t.Run(fmt.Sprintf("%d %v ascii=%v colour=%v", w, units, l.ASCII, l.Colour), func(t *testing.T) {
					for name, page := range pages(fixture(), l, Voice{quantity.Speech{Units: units, Money: "EUR"}}) {
						check(t, l, units, name, page)
					}
				})
			}
		}
	}
}

var painted = regexp.MustCompile("\x1b\\[[0-9;]*m")

func TestNoLineIsWiderOrRagged(t *testing.T) {
	everyLook(t, func(t *testing.T, l Look, _ quantity.System, name, page string) {
		if page == "" || !strings.HasSuffix(page, "\n") || strings.HasSuffix(page, "\n\n") {
			t.Errorf("%s does not end in one line end", name)
		}
		for i, line := range strings.Split(strings.TrimSuffix(painted.ReplaceAllString(page, ""), "\n"), "\n") {
			switch {
			case width(line) > l.Width:
				t.Errorf("%s line %d is %d wide: %q", name, i+1, width(line), line)
			case strings.ContainsAny(line, "\t\r"+glue) || strings.TrimRight(line, " ") != line:
				t.Errorf("%s line %d has a tab, a hard blank or blanks at its end: %q", name, i+1, line)
			case l.ASCII && strings.ContainsFunc(line, func(r rune) bool { return r > '~' }):
				t.Errorf("%s line %d is not plain: %q", name, i+1, line)
			case strings.Contains(line, "…") || strings.Contains(line, "%!"):
				t.Errorf("%s line %d is cut: %q", name, i+1, line)
			}
		}
		if l.Colour == !strings.Contains(page, "\x1b[") {
			t.Errorf("%s: colour is %v, not as asked", name, !l.Colour)
		}
	})
}

// whole lists, by units, numbers of the fixture as a fitter reads them. They
// were written by hand from the fixture: 25.4 mm an inch, limits inward.
var whole = map[quantity.System][]string{
	quantity.Metric: {"31.234 ±0.006 mm", "30.412 ±0.004 mm", "-0.019 ±0.004 mm", "0.459 ±0.007 mm free", "0.038 ±0.007 mm tight", "31.777 ±0.008 mm",
		"29.836 mm", "29.845 mm", "29.854 mm", "28.312 mm", "29.866 mm", "35.034 mm", "35.053 mm", "0.090 ±0.008 µm/h", "87.25 EUR", "6.5 h", "7.5 h", "17.3 kN", "6.74 N m", "185 EUR"},
	quantity.Inch: {"1.2297 ±.0003 in", "1.1973 ±.0002 in", "-0.0007 ±0.0002 in", "0.0181 ±0.0003 in free", "0.0015 ±0.0003 in tight",
		"1.1747 in", "1.1750 in", "1.1753 in", "1.1147 in", "1.1758 in", "1.3793 in", "1.3800 in", "87.25 EUR"},
	quantity.Both: {"1.2297 ±.0003 in", "(31.234 ±0.006 mm)", "(0.459 ±0.007 mm) free", "1.1747 in", "(29.836 mm)", "1.1753 in", "(29.854 mm)"},
}

func TestNumbersStandWhole(t *testing.T) {
	everyLook(t, func(t *testing.T, l Look, units quantity.System, name, page string) {
		if name != "advise" {
			return
		}
		page = painted.ReplaceAllString(page, "")
		for _, number := range whole[units] {
			if number = Plain(number, l.ASCII); !strings.Contains(page, number) {
				t.Errorf("%s is not whole at width %d:\n%s", number, l.Width, page)
			}
		}
	})
}

// Every number with its unit on a page of full width is found unbroken on the
// narrow ones.
func TestNarrowPagesKeepTheNumbersOfWideOnes(t *testing.T) {
	type look struct {
		ascii bool
		units quantity.System
	}
	wide := map[look]map[string]string{}
	everyLook(t, func(t *testing.T, l Look, units quantity.System, name, page string) {
		page = painted.ReplaceAllString(page, "")
		key := look{l.ASCII, units}
		if wide[key] == nil {
			wide[key] = pages(fixture(), Look{Width: 400, ASCII: l.ASCII}, Voice{quantity.Speech{Units: units, Money: "EUR"}})
		}
		full := wide[key][name]
		seen := 0
		for _, line := range strings.Split(strings.ReplaceAll(full, "  ", "\n"), "\n") {
			for _, token := range tokens(line) {
				number := strings.ReplaceAll(strings.TrimRight(token, ".,;:"), glue, " ")
				if !strings.ContainsAny(number, "0123456789") || !strings.Contains(number, " ") {
					continue
				}
				if seen++; !strings.Contains(page, number) {
					t.Errorf("%s: %q is broken at width %d", name, number, l.Width)
				}
			}
		}
		if seen == 0 && strings.HasPrefix(name, "advise") {
			t.Errorf("%s: no number found to look for", name)
		}
	})
}

func TestTablesFrom68(t *testing.T) {
	v := Voice{quantity.Speech{Money: "EUR"}}
	for _, w := range everyWidth {
		page := Advise(Look{Width: w}, fixture(), v, true)
		if table := strings.Contains(page, "────"); table != (w >= TableFrom) {
			t.Errorf("width %d: table is %v", w, table)
		}
	}
	if page := Advise(Look{Width: 80, ASCII: true}, fixture(), v, true); !strings.Contains(page, "----") {
		t.Error("no rule in plain characters")
	}
}

// Cautions are told before the act they warn of, in full the first time.
func TestCautionBeforeTheAct(t *testing.T) {
	page := Advise(Look{Width: 100}, fixture(), Voice{}, false)
	order := []string{"! Start-up (it may turn): lock and tag", "1. Isolate and lock off", "! Start-up: as before step 1", "! Press (ejection): stand aside", "2. Press the bush in"}
	last := -1
	for _, s := range order {
		at := strings.Index(page, s)
		if at <= last {
			t.Fatalf("%q does not come after %d:\n%s", s, last, page)
		}
		last = at
	}
}

func TestSafetyStopTellsWhatToDoFirstAndNoSize(t *testing.T) {
	a := fixture()
	a.Stop = &answer.Stop{Kind: "safety", Because: "people can be hurt if it lets go", Do: []string{"tag it out of service", "have it repaired by a licensed person"}}
	for name, page := range pages(a, Look{Width: 80}, Voice{}) {
		if !strings.HasPrefix(page, "Do not repair this yourself: tag it out of service.\n") {
			t.Errorf("%s does not begin with what to do:\n%s", name, page)
		}
		if regexp.MustCompile(`[0-9]`).MatchString(page) {
			t.Errorf("%s prints a number:\n%s", name, page)
		}
	}
}

func TestQuestionLeavesOptionsOut(t *testing.T) {
	a := fixture()
	a.Stop = &answer.Stop{Kind: "question", Because: "what happens if it lets go?", Do: []string{"answer it in the case file"}}
	page := Advise(Look{Width: 80}, a, Voice{}, true)
	if !strings.Contains(page, "What happens if it lets go?") || strings.Contains(page, "29.845") || strings.Contains(page, "bush outside") {
		t.Errorf("not the question alone:\n%s", page)
	}
}

// Words a fitter does not say of what these pages tell.
func TestWords(t *testing.T) {
	everyLook(t, func(t *testing.T, _ Look, _ quantity.System, name, page string) {
		for _, word := range []string{"pinned", "held size", "bush_outside:", "NaN", "Inf", "1e+", "179769"} {
			if strings.Contains(page, word) {
				t.Errorf("%s says %q", name, word)
			}
		}
	})
	page := Advise(Look{Width: 80}, fixture(), Voice{}, true)
	for _, word := range []string{"low limit", "high limit", "bush outside", "tight", "free", "swing arm", "bolt"} {
		if !strings.Contains(page, word) {
			t.Errorf("advise never says %q", word)
		}
	}
}

func TestEveryReasonIsToldOnceByWhy(t *testing.T) {
	a := fixture()
	o := &a.Options[0]
	page := strings.Join(strings.Fields(Why(Look{Width: 120}, a, o, Voice{})), " ")
	for _, r := range o.Reasons {
		if n := strings.Count(page, upperFirst(r.Text)); n != 1 {
			t.Errorf("%s is told %d times", r.Rule, n)
		}
	}
	heads := []string{"Speaks against it", "Kept, but only as far as a weak number can be trusted", "Kept, and by how much"}
	if !slices.IsSortedFunc(heads, func(x, y string) int { return strings.Index(page, x) - strings.Index(page, y) }) {
		t.Error("what decides does not come first")
	}
}
