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
	known := src.Fill(fact.Slots)
	for i, s := range fact.Slots {
		full := s.Name
		if s.Row != "" { // what the part is made of, not a figure of it
			full = s.Row
		}
		if known[i].Is || full == Held {
			continue
		}
		side, name, _ := strings.Cut(full, ".")
		if side != link.Hub.String() && side != link.Shaft.String() {
			side, name = "", full
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
		_, ask, with := src.Missing(onSide(sides[0], name))
		if both, ok := ofBoth(ask); ok && len(sides) > 1 {
			out = append(out, answer.Missing{Name: onSide(sides[0], name) + ", " + onSide(sides[1], name), Ask: both, With: with})
			continue
		}
		for _, side := range sides {
			_, ask, with := src.Missing(onSide(side, name))
			out = append(out, answer.Missing{Name: onSide(side, name), Ask: ask, With: with})
		}
	}
	return out
}

func onSide(side, name string) string {
	if side == "" {
		return name
	}
	return side + "." + name
}

// ofBoth turns a question about one surface into one about the two; ok is false
// when it does not say which surface it is about.
func ofBoth(ask string) (both string, ok bool) {
	for _, one := range []string{" (the bore)", " (the shaft)"} {
		if rest, cut := strings.CutSuffix(ask, one); cut {
			return rest + " (bore and shaft)", true
		}
	}
	return "", false
}
