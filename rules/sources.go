package rules

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

// splitFrom parts `key, place in it`.
func splitFrom(from string) (key, place string) {
	key, place, _ = strings.Cut(from, ",")
	return strings.TrimSpace(key), strings.TrimSpace(place)
}

func (l *loader) sources(d *yamldoc.Doc) {
	for _, e := range d.Root.Entries() {
		e.Value.Keys("what", "how", "prints")
		l.base.Sources[e.Name] = Source{Key: e.Name, What: e.Value.Need("what", "say what was read").Text(),
			How: e.Value.Need("how", "write page, derived, secondary, memory or none").Word("page", "derived", "secondary", "memory", "none"), Prints: e.Value.Get("prints").Text()}
	}
}

// from reads a node's `from`, which must name a known source.
func (l *loader) from(n yamldoc.Node) string {
	f := n.Need("from", "name a key of sources.yaml, such as `practice`")
	text := f.Text()
	if text == "" {
		return ""
	}
	key, _ := splitFrom(text)
	if _, ok := l.base.Sources[key]; !ok {
		var keys []string
		for k := range l.base.Sources {
			keys = append(keys, k)
		}
		f.Fault("there is no source "+key, fault.DidYouMean(key, sorted(keys)))
	}
	return text
}

var gradeWords = []string{"page", "derived", "secondary", "memory", "practice"}

// seen reads how a number was come by.
func (l *loader) seen(n yamldoc.Node) basis.Grade {
	w := n.Need("seen", "write page, derived, secondary, memory or practice").Word(gradeWords...)
	g, ok := basis.ReadGrade(w)
	if !ok {
		return basis.Practice
	}
	return g
}
