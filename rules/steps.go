package rules

import (
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// commonHeads takes down the ids of the steps that a part file may name.
func (l *loader) commonHeads() {
	for _, doc := range l.all("steps.yaml") {
		for _, key := range []string{"before", "after", "named"} {
			for _, n := range doc.Root.Get(key).Items() {
				l.commonIDs = append(l.commonIDs, n.Get("id").Text())
			}
		}
	}
}

// common reads steps.yaml: what every repair has, before and after its own
// steps, and what only some name.
func (l *loader) common(doc *yamldoc.Doc) {
	root := doc.Root
	if !root.Keys("numbers", "define", "before", "after", "named") {
		return
	}
	d := newDraft(doc, "steps", link.Shared, "common")
	d.part.Says = "steps every repair has"
	l.names(d)
	sc := &scope{l: l, d: d}
	for _, e := range root.Get("define").Entries() {
		if def := d.defines[e.Name]; def != nil {
			sc.keep(def)
		}
	}
	for _, key := range []string{"before", "named", "after"} {
		for _, n := range root.Get(key).Items() {
			had := len(d.part.Steps)
			l.step(sc, n)
			for i := had; i < len(d.part.Steps); i++ {
				d.part.Steps[i].Always, d.part.Steps[i].Last = key != "named", key == "after"
			}
		}
	}
	if c := l.base.Input.Common; c != nil {
		l.merge(c, d.part)
		return
	}
	l.base.Input.Common = d.part
}

// merge adds a later layer's steps to the first's.
func (l *loader) merge(to, more *link.Part) {
	for _, n := range more.Numbers {
		for i := range to.Numbers {
			if to.Numbers[i].ID == n.ID {
				l.faults.Add(n.At, "numbers."+n.ID, n.ID+" is a number of "+to.File+" already", "choose another name; numbers are changed in overrides.yaml")
			}
		}
	}
	to.Numbers = append(to.Numbers, more.Numbers...)
	to.Defines = append(to.Defines, more.Defines...)
	to.Steps = append(to.Steps, more.Steps...)
	for n, t := range more.Types {
		to.Types[n] = t
	}
}

func newDraft(doc *yamldoc.Doc, folder string, side link.Side, id string) *draft {
	return &draft{doc: doc, side: folder, numbers: map[string]*link.Number{}, picks: map[string]string{}, dims: map[string]bool{},
		defines: map[string]*define{}, joints: map[string]bool{}, bad: map[string]bool{},
		part: &link.Part{ID: id, File: doc.File, Side: side, Types: map[string]lang.Type{}}}
}
