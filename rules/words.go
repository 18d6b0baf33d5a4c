package rules

import (
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// vocabulary reads the names, the tables' columns and the kinds of neighbour.
func (l *loader) vocabulary() {
	v := &Vocabulary{byName: map[string]*Entry{}, Tables: map[string][]*Entry{}, countsAs: map[string]string{}}
	l.base.Vocabulary = v
	ids, docs := l.in("vocabulary")
	var tables []*yamldoc.Doc
	for i, d := range docs {
		switch {
		case !d.Root.Present():
		case ids[i] == "tables":
			tables = append(tables, d)
		case ids[i] == "near":
			l.near(d)
		default:
			for _, n := range d.Root.Items() {
				l.entry(v, n)
			}
		}
	}
	for _, d := range tables { // last: a column may take the words of a name
		l.tableColumns(v, d)
	}
	l.rowsKnown()
	l.optionWords()
}

func (l *loader) near(d *yamldoc.Doc) {
	if d.Root.Keys("kinds") {
		for _, k := range d.Root.Need("kinds", "list the kinds of neighbour").Items() {
			l.base.Kinds = append(l.base.Kinds, word(k))
		}
	}
}

// rowsKnown tells a name whose table there is not, and a kind of neighbour that
// no case can state.
func (l *loader) rowsKnown() {
	v := l.base.Vocabulary
	for _, name := range v.order {
		e := v.byName[name]
		if _, ok := v.Tables[e.Type.Table]; e.Type.Kind == lang.Row && !ok {
			l.faults.Add(e.At, name, "there is no table "+e.Type.Table, fault.DidYouMean(e.Type.Table, sorted(l.tableNames())))
			e.bad = true
		}
	}
	for _, k := range l.base.Kinds {
		for _, side := range []string{"hub", "shaft"} {
			name := side + ".near_" + strings.ReplaceAll(k, "-", "_")
			if _, ok := v.byName[name]; !ok {
				l.faults.Add(fault.Place{File: "vocabulary/near.yaml"}, "kinds", "no case can say that a "+k+" is near: there is no name "+name, "add it to the vocabulary")
			}
		}
	}
}

// optionWords are the words that tell which parts an option is made of: what is
// done to a side, what it is for, what holds each joint, and which joint a hold
// or lock is on.
func (l *loader) optionWords() {
	for _, side := range []string{"shaft", "hub", "purpose"} {
		ids, _ := l.in(side)
		l.words["option."+side] = &lang.Words{Name: "option." + side, List: ids}
	}
	holds, _ := l.in("hold")
	held := &lang.Words{Name: "a hold", List: append([]string{"none"}, holds...)}
	l.words["option."+link.Fit] = held
	joints := &lang.Words{Name: "option.joint", List: []string{"none", link.Fit}}
	l.words["option.joint"] = joints
	for _, side := range []string{"shaft", "hub"} {
		_, docs := l.in(side)
		for _, d := range docs {
			for _, j := range d.Root.Get("joints").Entries() {
				l.words["option."+j.Name] = held
				if !slices.Contains(joints.List, j.Name) {
					joints.List = append(joints.List, j.Name)
				}
			}
		}
	}
}
