package rules

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// An overlay changes what stands in the layers under it in two ways only, both
// in its overrides.yaml:
//
//	hub/bush.least_wall: {value: 2 mm, from: our shop standard 7}    a number from memory or practice
//	bush-wall-least: {becomes: must, from: our shop standard 7}      a should
//
// A number that was read in a source stands, a must stays a must, and safety is
// never touched. Who lays down a number stands by it: it is not tried over a
// doubt unless one is stated.

// override is one line of an overrides.yaml.
type override struct {
	yamldoc.Entry
	met bool
}

// overrides takes down the lines of every layer; of two for one name the later
// layer's holds.
func (l *loader) overrides() {
	for _, doc := range l.files.over {
		if doc.Root.Present() && !doc.Root.IsMap() {
			doc.Root.Keys()
		}
		for _, e := range doc.Root.Entries() {
			if e.Value.Keys("value", "doubt", "from", "seen", "becomes") {
				l.replace[e.Name] = &override{Entry: e}
			}
		}
	}
}

// replaced lays an override over a number read from a file.
func (l *loader) replaced(key string, n *link.Number, kind string) {
	o, ok := l.replace[key]
	if !ok {
		return
	}
	o.met = true
	if !n.Grade.Weak() {
		o.Value.Fault(key+" was read in a source ("+n.From+")", "only numbers from memory or practice may be replaced; correct the file itself")
		return
	}
	from := o.Value.Need("from", "say whose number it is").Text()
	r, dim, good := amount(o.Value.Need("value", "write the value with its unit"), kind)
	switch {
	case from == "" || !good:
		return
	case dim != n.Dim:
		o.Value.Get("value").Fault(o.Value.Get("value").Text()+" is "+dim.String()+", and "+key+" is "+n.Dim.String(), "write it in units of its kind")
		return
	}
	n.Grade = basis.Practice
	if g, ok := basis.ReadGrade(o.Value.Get("seen").Word(gradeWords...)); ok {
		n.Grade = g
	}
	n.Low, n.High, n.From, n.At = r.Lo, r.Hi, from, o.KeyAt
	n.DoubtLow, n.DoubtHi = r.Lo, r.Hi
	if w, ok := doubt(o.Value, r, dim); ok {
		n.DoubtLow, n.DoubtHi = w.Lo, w.Hi
	}
	l.laid[key] = o
}

// becomes makes a should a must.
func (l *loader) becomes(r *link.Rule) {
	o, ok := l.replace[r.ID]
	if !ok {
		return
	}
	o.met = true
	from := o.Value.Need("from", "say whose rule it is").Text()
	switch w := o.Value.Need("becomes", "write must").Word(strengthWords...); {
	case w == "" || from == "":
	case w != "must":
		o.Value.Get("becomes").Fault(r.ID+" cannot become "+w, "a should may become must, never the reverse")
	case r.Ground == link.Safety:
		o.Value.Fault(r.ID+" rests on safety, which is never touched", "leave it out")
	default:
		r.Strength, r.From = link.Must, from
	}
}

// notMet tells the overrides that change nothing, and those of numbers that a
// safety rule rests on.
func (l *loader) notMet() {
	var known []string
	for _, p := range l.base.Input.Parts {
		for i := range p.Numbers {
			known = append(known, fileKey(p)+"."+p.Numbers[i].ID)
		}
		for _, r := range append(p.Needs[:len(p.Needs):len(p.Needs)], p.Limits...) {
			known = append(known, r.ID)
			if r.Ground == link.Safety {
				l.safe(p, &r)
			}
		}
	}
	for name, o := range l.replace {
		if !o.met {
			l.faults.Add(o.KeyAt, name, "no number and no rule is called "+name, fault.DidYouMean(name, known))
		}
	}
}

// safe tells an override of a number that a safety rule rests on.
func (l *loader) safe(p *link.Part, r *link.Rule) {
	seen := map[string]bool{}
	var look func(e *lang.Expr)
	look = func(e *lang.Expr) {
		if e == nil {
			return
		}
		e.Names(func(name string, _ lang.Type) {
			if seen[name] {
				return
			}
			seen[name] = true
			if o := l.laid[fileKey(p)+"."+name]; o != nil {
				o.Value.Fault("the safety rule "+r.ID+" rests on "+name, "safety is never touched; leave it out")
			}
			for i := range p.Defines {
				if p.Defines[i].ID == name {
					look(p.Defines[i].Is)
				}
			}
		})
	}
	for _, e := range []*lang.Expr{r.Test, r.Left, r.Right, r.When} {
		look(e)
	}
}

// fileKey is a file's name in overrides: hub/bush.
func fileKey(p *link.Part) string {
	if p.Side == link.Shared {
		return p.ID
	}
	return p.Side.String() + "/" + p.ID
}

// cellReplaced lays an override over a value of a table's row.
func (l *loader) cellReplaced(key string, k *link.Known, kind string, dim quantity.Dim) {
	if l.replace[key] == nil {
		return
	}
	n := link.Number{Dim: dim, Low: k.Value.Lo, High: k.Value.Hi, From: k.Says, Grade: k.Grade}
	l.replaced(key, &n, kind)
	k.Value, k.Best = interval.I{Lo: n.Low, Hi: n.High}, interval.I{Lo: n.Low, Hi: n.High}.Mid()
	k.Says, k.Grade = n.From, n.Grade
}
