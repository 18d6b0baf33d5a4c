package knowledge_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wornfit/advisor/diagnose"
	"wornfit/advisor/given"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// story is a file of tests/diagnosis: a fit of a case, and what is told of why
// it wore as more is seen on it.
type story struct {
	file, base string
	given      map[string]string
	lines      []storyLine
}

// storyLine is one look at it: exactly these patterns are told. A near miss
// names the pattern that it looks like and is not.
type storyLine struct {
	at     string
	change map[string]string
	tells  []string
	misses []string
}

func stories(t *testing.T) []story {
	t.Helper()
	files, err := filepath.Glob("tests/diagnosis/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no stories: %v", err)
	}
	var out []story
	for _, file := range files {
		out = append(out, readStory(t, file))
	}
	return out
}

func readStory(t *testing.T, file string) story {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	doc := yamldoc.Read(file, data)
	s := story{file: file}
	if doc.Root.Keys("base", "given", "lines") {
		s.base = doc.Root.Need("base", "name a case").Text()
		s.given = texts(doc.Root.Get("given"))
		for _, n := range doc.Root.Need("lines", "write a line a pattern").Items() {
			if n.Keys("change", "tells", "misses") {
				s.lines = append(s.lines, storyLine{at: n.At().String(), change: texts(n.Get("change")),
					tells: list(n.Need("tells", "name the patterns told")), misses: list(n.Get("misses"))})
			}
		}
	}
	for _, f := range doc.Faults {
		t.Error(f.Error())
	}
	return s
}

func list(n yamldoc.Node) (out []string) {
	for _, x := range n.Items() {
		out = append(out, x.Text())
	}
	return out
}

// seen is a case looked at again: some of what it says is otherwise.
type seen struct {
	*given.Source
	base    *rules.Base
	changed map[string]link.Known
	rows    map[string]link.RowValues // hub.material and its like
}

func (s seen) Fill(slots []link.Slot) []link.Known {
	out := s.Source.Fill(slots)
	for i, slot := range slots {
		if k, ok := s.changed[slot.Name]; ok {
			out[i] = k
		}
		if r, ok := s.rows[slot.Row]; ok {
			out[i] = r.Columns[slot.Column]
		}
	}
	return out
}

// look makes the changes; `not looked` takes a sign back.
func look(base *rules.Base, src *given.Source, changes ...map[string]string) (seen, error) {
	s := seen{Source: src, base: base, changed: map[string]link.Known{}, rows: map[string]link.RowValues{}}
	for _, c := range changes {
		for name, text := range c {
			e, ok := base.Vocabulary.Entry(name)
			if !ok {
				return s, fmt.Errorf("there is no name %s", name)
			}
			k, err := s.read(e, text)
			if err != nil {
				return s, fmt.Errorf("%s: %w", name, err)
			}
			s.changed[name] = k
		}
	}
	return s, nil
}

func (s seen) read(e *rules.Entry, text string) (link.Known, error) {
	slot := slotOf(e)
	switch {
	case e.Type.Kind == lang.Row:
		for _, r := range s.base.Rows(e.Type.Table) {
			if r.ID == text {
				s.rows[e.Name] = r
				return link.Known{Is: true}, nil
			}
		}
		return link.Known{}, fmt.Errorf("there is no row %s", text)
	case text == "not looked" && slot.Words != nil:
		return link.Known{Value: interval.I{Lo: 0, Hi: float64(len(slot.Words) - 1)}}, nil
	case strings.Contains(text, " to "): // a reading with its doubt
		low, high, _ := strings.Cut(text, " to ")
		a, err := quantity.Parse(low, slot.Dim)
		if err != nil {
			return link.Known{}, err
		}
		b, err := quantity.Parse(high, slot.Dim)
		return link.Known{Value: interval.I{Lo: a.Best, Hi: b.Best}, Best: (a.Best + b.Best) / 2, Is: true}, err
	}
	return read(slot, text)
}

func told(base *rules.Base, src *given.Source, purpose string, changes ...map[string]string) (diagnose.Found, error) {
	s, err := look(base, src, changes...)
	if err != nil {
		return diagnose.Found{}, err
	}
	return diagnose.Find(base, s, base.Purpose(purpose), quantity.Speech{Units: quantity.Metric})
}

// A fit is looked at, and exactly the patterns that a fitter would name are told.
func TestDiagnosis(t *testing.T) {
	base := shipped(t)
	for _, s := range stories(t) {
		src, purpose, err := readCase(base, filepath.Join("..", s.base))
		if err != nil {
			t.Fatalf("%s: %v", s.file, err)
		}
		for _, l := range s.lines {
			found, err := told(base, src, purpose, s.given, l.change)
			if err != nil {
				t.Errorf("%s: %v", l.at, err)
				continue
			}
			var got []string
			for _, f := range found.Findings {
				got = append(got, f.Rule)
			}
			slices.Sort(got)
			want := slices.Sorted(slices.Values(l.tells))
			if !slices.Equal(got, want) {
				t.Errorf("%s: with %v\n  tells %v\n  want  %v", l.at, l.change, got, want)
			}
			for _, id := range l.misses {
				if slices.Contains(got, id) {
					t.Errorf("%s: %s is told, and it is written as a near miss", l.at, id)
				}
			}
		}
	}
}

// Every pattern has a line that tells it and one that comes near and does not.
func TestEveryPatternHasLines(t *testing.T) {
	base := shipped(t)
	tells, misses, known := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, s := range stories(t) {
		for _, l := range s.lines {
			for _, id := range l.tells {
				tells[id] = true
			}
			for _, id := range l.misses {
				misses[id] = true
			}
		}
	}
	for _, p := range base.Patterns {
		known[p.ID] = true
		if !tells[p.ID] {
			t.Errorf("no line of tests/diagnosis tells %s", p.ID)
		}
		if !misses[p.ID] {
			t.Errorf("no line of tests/diagnosis comes near %s and misses it", p.ID)
		}
	}
	for id := range misses {
		if !known[id] {
			t.Errorf("a near miss names %s, which is no pattern", id)
		}
	}
	if len(base.Patterns) < 40 {
		t.Errorf("only %d patterns were found", len(base.Patterns))
	}
}

// Where nobody looked, nothing is told, whatever was measured and of whatever
// purpose; and what to look at is asked.
func TestNothingLookedAtTellsNothing(t *testing.T) {
	base := shipped(t)
	signs := map[string]string{}
	for _, n := range base.Vocabulary.Names() {
		if strings.Contains(n, ".seen_") {
			signs[n] = "not looked"
		}
	}
	unread := map[string]string{"hub.crack_check": "eye", "shaft.crack_check": "eye", "hub.taper": "0 mm to 0.02 mm", "shaft.taper": "0 mm to 0.02 mm",
		"hub.bell_mouth": "-0.02 mm to 0.02 mm", "shaft.bell_mouth": "-0.02 mm to 0.02 mm", "hub.wear": "0 mm to 0.1 mm", "shaft.wear": "0 mm to 0.1 mm"}
	for _, purpose := range []string{"running", "oscillating", "press-fit"} {
		src, _, err := readCase(base, filepath.Join("tests", "cases", purpose+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		found, err := told(base, src, purpose, signs, unread)
		if err != nil {
			t.Fatal(err)
		}
		if len(found.Findings) > 0 {
			t.Errorf("%s: told %+v though nobody looked", purpose, found.Findings)
		}
		if len(found.Look) < 4 || found.Look[0].Ask == "" || found.Look[0].With == "" {
			t.Errorf("%s: to look at: %+v", purpose, found.Look)
		}
	}
}

// What the trade tells of wear stands in a pattern. The names were copied from
// a collection of 28 rows; each says which file tells it.
func TestTradePatternsAreTold(t *testing.T) {
	base := shipped(t)
	known := map[string]bool{}
	for _, p := range base.Patterns {
		known[p.ID] = true
	}
	file, err := os.Open(filepath.Join("testdata", "trade_patterns.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 29 {
		t.Fatalf("%d rows, want a head and 28", len(rows))
	}
	named := map[string]bool{}
	for _, r := range rows[1:] {
		for _, id := range strings.Fields(r[3]) {
			named[id] = true
			if !known[id] {
				t.Errorf("%s, %s: there is no pattern %s", r[0], r[1], id)
			}
		}
		if r[3] == "" && r[4] == "" {
			t.Errorf("%s, %s: neither a pattern nor why not", r[0], r[1])
		}
	}
	t.Logf("%d patterns of the trade by %d of ours; %d of ours are in no row", len(rows)-1, len(named), len(known)-len(named))
}

// A pattern speaks its numbers in the user's units and leaves no brace.
func TestPatternsSpeakTheirNumbers(t *testing.T) {
	spoken := 0
	for _, p := range shipped(t).Patterns {
		for _, text := range []string{p.Says, p.Cause, p.Cure, p.Repair, p.Again} {
			mm := p.Speak(text, quantity.Speech{Units: quantity.Metric})
			inch := p.Speak(text, quantity.Speech{Units: quantity.Inch})
			if strings.ContainsAny(mm+inch, "{}") {
				t.Errorf("%s: %q", p.ID, mm)
			}
			if mm != text {
				spoken++
			}
			if p.ID == "seal-groove" && text == p.Repair && (!strings.Contains(mm, "3 mm along") || !strings.Contains(inch, "0.1181 in along")) {
				t.Errorf("%q, %q", mm, inch)
			}
			if p.ID == "ran-hot" && text == p.Cause && !strings.Contains(mm, "at 200 °C to 300 °C") {
				t.Errorf("%q", mm)
			}
		}
	}
	if spoken < 6 {
		t.Errorf("only %d sentences speak a number", spoken)
	}
}
