package rules

import (
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/link"
)

var answers = []string{"keep clear", "restore", "accept", "ruled out"}

// features reads what the file does about each kind of neighbour: a treatment
// must answer every kind, for a silence would read as leave to cut.
func (l *loader) features(d *draft) {
	if d.part.Side != link.Shaft && d.part.Side != link.Hub {
		return
	}
	n := d.doc.Root.Need("features", "answer every kind of neighbour: "+strings.Join(answers, ", "))
	if !n.Present() {
		return
	}
	for _, e := range n.Entries() {
		if !slices.Contains(l.base.Kinds, e.Name) {
			l.faults.Add(e.KeyAt, e.Value.Key, "there is no kind of neighbour "+e.Name, fault.DidYouMean(e.Name, l.base.Kinds))
			continue
		}
		if !e.Value.Keys("answer", "why") {
			continue
		}
		d.part.Features = append(d.part.Features, link.Feature{Kind: e.Name, At: e.KeyAt,
			Answer: e.Value.Need("answer", "write one of "+strings.Join(answers, ", ")).Word(answers...),
			Why:    e.Value.Need("why", "say why").Text()})
	}
	for _, k := range l.base.Kinds {
		if !n.Get(k).Present() {
			n.Fault("no answer for a "+strings.ReplaceAll(k, "-", " ")+" beside the fit", "say what this treatment does about it: "+strings.Join(answers, ", "))
		}
	}
}
