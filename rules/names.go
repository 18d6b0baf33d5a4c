package rules

import (
	"fmt"
	"maps"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

// names takes down every private name of a file, so that expressions may use
// them in any order.
func (l *loader) names(d *draft) {
	root := d.doc.Root
	taken := map[string]fault.Place{}
	each := func(key string, take func(yamldoc.Entry) bool) {
		n := root.Get(key)
		if n.Present() && !n.IsMap() {
			n.Keys()
		}
		for _, e := range n.Entries() {
			if !l.privateName(d, taken, e) || !take(e) {
				d.bad[e.Name] = true
			}
		}
	}
	each("numbers", func(e yamldoc.Entry) bool {
		n, ok := l.number(fileKey(d.part)+"."+e.Name, e.Name, e.Value)
		if ok {
			if n.At == e.Value.At() { // not laid over
				n.At = e.KeyAt
			}
			d.part.Numbers = append(d.part.Numbers, n)
		}
		return ok
	})
	for i := range d.part.Numbers {
		d.numbers[d.part.Numbers[i].ID] = &d.part.Numbers[i]
	}
	each("pick", func(e yamldoc.Entry) bool {
		from := e.Value.Need("from", "name a table, or a list such as shop.machines").Text()
		if from == "" || !l.rowsFrom(e.Value.Get("from"), from) {
			return false
		}
		d.picks[e.Name] = from
		return true
	})
	each("choose", func(e yamldoc.Entry) bool { d.dims[e.Name] = true; return true })
	joints := maps.Clone(taken) // a joint may be called like what is defined for it
	for _, e := range root.Get("joints").Entries() {
		if l.privateName(d, joints, e) {
			d.joints[e.Name] = true
		}
	}
	each("define", func(e yamldoc.Entry) bool {
		d.defines[e.Name] = l.defined(d, e)
		return true
	})
}

// privateName tells a name that cannot be one, or that is taken.
func (l *loader) privateName(d *draft, taken map[string]fault.Place, e yamldoc.Entry) bool {
	tell := func(says, remedy string) bool {
		l.faults.Add(e.KeyAt, e.Value.Key, says, remedy)
		return false
	}
	if as := misread(e.Name); as != "" {
		return tell(e.Name+" is read as "+as, "choose another name")
	}
	if why := lang.BadName(e.Name); why != "" {
		return tell(why, "")
	}
	if had, again := taken[e.Name]; again {
		return tell(fmt.Sprintf("%s is already the name of something on line %d", e.Name, had.Line), "choose another name")
	}
	if l.firstWords[e.Name] || e.Name == "joint" || e.Name == "it" || e.Name == "option" {
		return tell("names that begin with "+e.Name+". mean something already", "choose another name")
	}
	if side := l.crossedBy(e.Name); side != "" && side != d.side {
		return tell(e.Name+" crosses the seam: every "+side+" file defines it", "choose another name")
	}
	taken[e.Name] = e.KeyAt
	return true
}

// crossedBy says which kind of file defines a name of the seam that all may use.
func (l *loader) crossedBy(name string) string {
	seam := &l.base.Input.Seam
	switch {
	case among(seam.Shaft, name):
		return "shaft"
	case among(seam.Hub, name):
		return "hub"
	case among(seam.Purpose, name):
		return "purpose"
	}
	return ""
}

// rowsFrom tells a pick from something that has no rows.
func (l *loader) rowsFrom(n yamldoc.Node, from string) bool {
	tables := l.base.Vocabulary.Tables
	if _, ok := tables[tableOf(from)]; !ok {
		var names []string
		for t := range tables {
			names = append(names, t)
		}
		n.Fault("there is no table "+tableOf(from), fault.DidYouMean(tableOf(from), sorted(names)))
		return false
	}
	if list, ok := beforeLast(from); ok && !l.firstWords[list] {
		n.Fault("nothing is said of "+list+", so it has no "+tableOf(from), "write shop."+tableOf(from)+", or hub. or shaft. in front")
		return false
	}
	return true
}
