package diagnose

import (
	"cmp"
	"slices"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/rules/link"
)

// looks counts, for each thing nobody looked at, the patterns that wait for it.
// The same sign of bore and shaft is one thing: they are looked at together.
type looks struct {
	names []string            // as first met
	sides map[string][]string // by the name without its side
	count map[string]int
}

// add notes what an open pattern waits for.
func (l *looks) add(fact *link.Fact, src Known) {
	if l.count == nil {
		l.sides, l.count = map[string][]string{}, map[string]int{}
	}
	here := map[string]bool{}
	for _, s := range fact.Slots {
		if k, ok := src.Value(s.Name); !ok || k.Is || s.Name == Held {
			continue
		}
		side, name, _ := strings.Cut(s.Name, ".")
		if side != link.Hub.String() && side != link.Shaft.String() {
			side, name = "", s.Name
		}
		if l.count[name] == 0 && !here[name] {
			l.names = append(l.names, name)
		}
		if !slices.Contains(l.sides[name], side) {
			l.sides[name] = append(l.sides[name], side)
		}
		here[name] = true
	}
	for name := range here {
		l.count[name]++
	}
}

// asked are the questions, those that most patterns wait for first.
func (l *looks) asked(src Known) []answer.Missing {
	slices.SortStableFunc(l.names, func(a, b string) int { return cmp.Compare(l.count[b], l.count[a]) })
	var out []answer.Missing
	for _, name := range l.names {
		sides := l.sides[name]
		full := name
		if sides[0] != "" {
			full = sides[0] + "." + name
		}
		_, ask, with := src.Missing(full)
		if len(sides) > 1 {
			full = sides[0] + "." + name + ", " + sides[1] + "." + name
			ask = both(ask)
		}
		out = append(out, answer.Missing{Name: full, Ask: ask, With: with})
	}
	return out
}

// both turns a question about one surface into one about the two.
func both(ask string) string {
	for _, one := range []string{" (the bore)", " (the shaft)"} {
		if rest, ok := strings.CutSuffix(ask, one); ok {
			return rest + " (bore and shaft)"
		}
	}
	return ask
}
