package rules

import (
	"slices"
	"strings"

	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// joints reads where a hold takes effect inside a treatment.
func (l *loader) joints(sc *scope) {
	for _, e := range sc.d.doc.Root.Get("joints").Entries() {
		if sc.d.joints[e.Name] {
			l.joint(sc, e)
		}
	}
}

func (l *loader) joint(sc *scope, e yamldoc.Entry) {
	seam := l.base.Input.Seam.Joint
	if !e.Value.Keys(append(seamNames(seam), "holds")...) {
		return
	}
	j := link.Joint{Name: e.Name, Fields: map[string]*lang.Expr{}, Rows: map[string]string{}, At: e.KeyAt}
	for _, s := range seam {
		n := e.Value.Get(s.Name)
		switch {
		case !n.Present():
			if !standsIn(s.Name) {
				e.Value.Fault("the joint "+e.Name+" does not say its "+s.Name, "a hold may ask for it: write "+s.Name+": with an expression")
			}
		case s.Type.Kind == lang.Row:
			if _, ok := sc.row(n, &s.Type); ok {
				j.Rows[s.Name] = n.Text()
			}
		default:
			if x := sc.expr(n, s.Type); x != nil {
				j.Fields[s.Name] = x
			}
		}
	}
	holds, _ := l.in("hold")
	for _, h := range e.Value.Get("holds").Items() {
		if h.Word(holds...) != "" {
			j.Holds = append(j.Holds, h.Text())
		}
	}
	sc.d.part.Joints = append(sc.d.part.Joints, j)
}

// standsIn reports a field that a joint need not say: the linker takes the size
// for the largest and smallest, and the material's own expansion.
func standsIn(field string) bool {
	return strings.HasSuffix(field, "_large") || strings.HasSuffix(field, "_small") || strings.HasSuffix(field, "_expansion")
}

func seamNames(list []link.SeamName) []string {
	var out []string
	for _, s := range list {
		out = append(out, s.Name)
	}
	return out
}

func among(list []link.SeamName, name string) bool {
	return slices.ContainsFunc(list, func(s link.SeamName) bool { return s.Name == name })
}

// aim reads what the design should come near.
func (l *loader) aim(sc *scope, n yamldoc.Node) {
	if !n.Keys("least", "most", "middle", "nearest", "of", "first") {
		return
	}
	if n.Get("nearest").Present() != n.Get("of").Present() {
		n.Fault("an aim says nearest without of, or of without nearest", "write {nearest: TABLE, of: SIZE}")
		return
	}
	first, _ := n.Get("first").YesNo()
	said := len(n.Entries())
	if n.Get("first").Present() {
		said--
	}
	if said != 1 && !n.Get("nearest").Present() {
		n.Fault("an aim says more or less than one thing", "write one of {least: ...}, {most: ...}, {middle: ...}; a second aim is a line of its own")
		return
	}
	a := link.Aim{First: first, Least: sc.infer(n.Get("least")), Most: sc.infer(n.Get("most")), Middle: sc.infer(n.Get("middle")), Of: sc.infer(n.Get("of"))}
	if t := n.Get("nearest"); t.Present() {
		if a.Nearest = t.Text(); !l.rowsFrom(t, a.Nearest) {
			return
		}
	}
	for _, x := range []*lang.Expr{a.Least, a.Most, a.Middle, a.Of} {
		if x != nil && x.Type.Kind != lang.NumberKind {
			l.faults.Add(x.At, n.Key, "an aim is no number", "name a size, or what is worked out from sizes")
		} else if x != nil {
			sc.d.part.Aims = append(sc.d.part.Aims, a)
		}
	}
}

// score reads a contribution to a criterion, in the criterion's own kind.
func (l *loader) score(sc *scope, n yamldoc.Node) {
	if !n.Keys("id", "criterion", "is", "says") {
		return
	}
	s := link.Score{ID: l.id(sc, n), Says: n.Need("says", "say what it counts").Text(), At: n.At()}
	s.Criterion = n.Need("criterion", "name a criterion of criteria.yaml").Word(l.criteriaIDs...)
	is := n.Need("is", "write an expression")
	if s.Criterion == "" {
		sc.infer(is)
		return
	}
	if s.Is = sc.expr(is, l.criterionType[s.Criterion]); s.Is != nil {
		sc.d.part.Scores = append(sc.d.part.Scores, s)
	}
}
