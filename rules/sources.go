package rules

import (
	"strings"

	"wornfit/calc/basis"
	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

const (
	noSource = "common practice, no source"
	byMemory = "from memory of "
)

var howWords = []string{"page", "derived", "secondary", "memory", "none"}

// sources reads what each key of sources.yaml stands for.
func (l *loader) sources(d *yamldoc.Doc) {
	if !d.Root.Keys(keysOf(d.Root)...) {
		return
	}
	for _, e := range d.Root.Entries() {
		if says, remedy := badWord(e.Name); says != "" {
			l.faults.Add(e.KeyAt, e.Name, says, remedy)
			continue
		}
		if had, again := l.base.Sources[e.Name]; again {
			l.faults.Add(e.KeyAt, e.Name, "the source "+e.Name+" is already "+had.What, "choose another key")
			continue
		}
		if !e.Value.Keys("what", "how", "prints") {
			continue
		}
		l.base.Sources[e.Name] = Source{Key: e.Name, What: e.Value.Need("what", "say what was read").Text(), Prints: e.Value.Get("prints").Text(),
			How: e.Value.Need("how", "write one of "+strings.Join(howWords, ", ")).Word(howWords...)}
	}
}

func keysOf(n yamldoc.Node) []string {
	var out []string
	for _, e := range n.Entries() {
		out = append(out, e.Name)
	}
	return out
}

// Grade is how well what a source says is known, before any number of it is
// looked at.
func (s Source) Grade() basis.Grade {
	g, _ := basis.ReadGrade(s.How)
	if s.How == "none" {
		return basis.Practice
	}
	return g
}

// splitFrom parts a `from`: one or two keys of sources, and a place in them.
//
//	asm                     iso286, table 2            farm-column and compound-sheet
//	from memory of asm      common practice, no source
func splitFrom(from string) (keys []string, place string) {
	if from == noSource {
		return nil, ""
	}
	from = strings.TrimPrefix(from, byMemory)
	head, place, _ := strings.Cut(from, ",")
	for _, k := range strings.Split(head, " and ") {
		keys = append(keys, strings.TrimSpace(k))
	}
	return keys, strings.TrimSpace(place)
}

// source reads a `from` that must name known sources; grade is the worst of
// theirs.
func (l *loader) source(n yamldoc.Node, grade *basis.Grade) string {
	text := n.Text()
	if text == "" {
		return ""
	}
	if text == noSource {
		*grade = basis.Practice
		return text
	}
	if strings.HasPrefix(text, byMemory) {
		*grade = basis.Worse(*grade, basis.Memory)
	}
	keys, _ := splitFrom(text)
	for _, key := range keys {
		s, ok := l.base.Sources[key]
		if !ok {
			var known []string
			for k := range l.base.Sources {
				known = append(known, k)
			}
			n.Fault("there is no source "+key, fault.DidYouMean(key, sorted(known)))
			continue
		}
		*grade = basis.Worse(*grade, s.Grade())
	}
	return text
}

// from reads a node's `from`.
func (l *loader) from(n yamldoc.Node) (text string, grade basis.Grade) {
	text = l.source(n.Need("from", "name a key of sources.yaml; without a source write "+noSource), &grade)
	return text, grade
}

var gradeWords = []string{"page", "derived", "secondary", "memory", "practice"}

// sourced reads `from` and `seen`: how a number was come by. A number is never
// better known than its source.
func (l *loader) sourced(n yamldoc.Node) (from string, grade basis.Grade) {
	from, least := l.from(n)
	s := n.Need("seen", "write one of "+strings.Join(gradeWords, ", "))
	grade, ok := basis.ReadGrade(s.Word(gradeWords...))
	if !ok {
		return from, basis.Practice
	}
	if grade < least && from != "" {
		s.Fault("seen: "+grade.String()+" of a source that is known by "+least.String(), "write seen: "+least.String()+", or correct how in sources.yaml")
	}
	return from, grade
}
