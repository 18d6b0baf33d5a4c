package rules

import (
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// pick reads a discrete choice: a row of a table, or of what the shop has.
func (l *loader) pick(sc *scope, e yamldoc.Entry) {
	n := e.Value
	if !n.Keys("from", "where", "best", "all", "id", "ground", "why", "remedy", "source") {
		return
	}
	p := link.Pick{ID: e.Name, From: sc.d.picks[e.Name], At: n.At()}
	if len(l.base.Vocabulary.Tables[tableOf(p.From)]) == 0 {
		var names []string
		for t := range l.base.Vocabulary.Tables {
			names = append(names, t)
		}
		n.Get("from").Fault("there is no table "+p.From, fault.DidYouMean(tableOf(p.From), sorted(names)))
		return
	}
	in := &scope{l: l, d: sc.d, it: tableOf(p.From)}
	if w := n.Get("where"); w.Present() {
		if src := l.parse(w); src != nil {
			x, faults := src.Check(in, lang.Type{Kind: lang.YesNo})
			l.faults = append(l.faults, faults...)
			p.Where = x
		}
	}
	p.All, _ = n.Get("all").YesNo()
	if b := n.Get("best"); b.Present() {
		b.Keys("least", "most", "first")
		for i, w := range []string{"least", "most"} {
			if v := b.Get(w); v.Present() {
				if src := l.parse(v); src != nil {
					x, faults := src.Infer(in)
					l.faults = append(l.faults, faults...)
					p.Best, p.Most = x, i == 1
				}
			}
		}
		p.First = b.Get("first").Present()
	}
	if p.All == n.Get("best").Present() {
		n.Fault("the pick "+e.Name+" says neither or both of all and best", "write all: yes, or best: {least: ...}")
	}
	p.Missing = link.Rule{At: n.At(), Strength: link.Must}
	l.told(sc, withFrom{n}.node(), &p.Missing)
	if p.Missing.Ground == link.Practice || p.Missing.Ground == link.Wish {
		p.Missing.Strength = link.Should
	}
	sc.d.part.Picks = append(sc.d.part.Picks, p)
}

// withFrom lets the source of a pick's rule be called `source`, because its
// `from` is the table.
type withFrom struct{ n yamldoc.Node }

func (w withFrom) node() yamldoc.Node { return w.n.Renamed("from", "source", "practice") }

// choose reads the sizes, in cutting order.
func (l *loader) choose(sc *scope) {
	p := sc.d.part
	var earlier []string
	for _, e := range sc.d.doc.Root.Get("choose").Entries() {
		n := e.Value
		if !n.Keys("says", "part", "by", "gauged", "range", "suits") || !sc.d.dims[e.Name] {
			continue
		}
		d := link.Dimension{ID: e.Name, Says: n.Need("says", "write what a fitter calls it").Text(), Part: n.Need("part", "write whose size it is").Text(),
			By: n.Need("by", "name the pick that makes it").Text(), At: n.At(), Suits: n.Get("suits").Text()}
		d.Inside = n.Need("gauged", "write inside or outside").Word("inside", "outside") == "inside"
		if _, ok := sc.d.picks[d.By]; !ok && d.By != "" {
			n.Get("by").Fault(d.By+" is no pick of this file", fault.DidYouMean(d.By, pickNames(sc.d)))
		}
		if d.Suits != "" && d.Suits != "mate" && !slices.Contains(earlier, d.Suits) {
			n.Get("suits").Fault(e.Name+" suits "+d.Suits+", which is not cut before it", "name an earlier dimension of this file, or mate")
		}
		r := n.Need("range", "write LOW .. HIGH")
		if src := l.parse(r); src != nil {
			lo, hi, faults := src.CheckRange(sc, quantity.LengthDim)
			l.faults = append(l.faults, faults...)
			d.Low, d.High = lo, hi
		}
		if d.Low != nil && d.High != nil {
			p.Choose = append(p.Choose, d)
		}
		earlier = append(earlier, e.Name)
	}
}

func pickNames(d *draft) []string {
	var out []string
	for n := range d.picks {
		out = append(out, n)
	}
	return sorted(out)
}

// joints reads where a hold takes effect.
func (l *loader) joints(sc *scope) {
	seam := l.base.Input.Seam.Joint
	for _, e := range sc.d.doc.Root.Get("joints").Entries() {
		j := link.Joint{Name: e.Name, Fields: map[string]*lang.Expr{}, Rows: map[string]string{}, At: e.Value.At()}
		for _, f := range e.Value.Entries() {
			if f.Name == "holds" {
				for _, h := range f.Value.Items() {
					j.Holds = append(j.Holds, h.Text())
				}
				continue
			}
			i := slices.IndexFunc(seam, func(x link.SeamName) bool { return x.Name == f.Name })
			if i < 0 {
				l.faults.Add(f.KeyAt, f.Value.Key, "a joint has no "+f.Name, fault.DidYouMean(f.Name, seamNames(seam)))
				continue
			}
			if seam[i].Type.Kind == lang.Row {
				if t, ok := sc.Name(f.Value.Text()); !ok || t.Kind != lang.Row {
					f.Value.Fault(f.Value.Text()+" is no row of a table", "name a pick, or hub.material")
				}
				j.Rows[f.Name] = f.Value.Text()
				continue
			}
			if src := l.parse(f.Value); src != nil {
				x, faults := src.Check(sc, seam[i].Type)
				l.faults = append(l.faults, faults...)
				j.Fields[f.Name] = x
			}
		}
		sc.d.part.Joints = append(sc.d.part.Joints, j)
	}
}

func seamNames(list []link.SeamName) []string {
	var out []string
	for _, s := range list {
		out = append(out, s.Name)
	}
	return out
}

func (l *loader) aim(sc *scope, n yamldoc.Node) {
	n.Keys("least", "most", "middle", "nearest", "of")
	var a link.Aim
	for w, to := range map[string]**lang.Expr{"least": &a.Least, "most": &a.Most, "middle": &a.Middle, "of": &a.Of} {
		if v := n.Get(w); v.Present() {
			if src := l.parse(v); src != nil {
				x, faults := src.Infer(sc)
				l.faults = append(l.faults, faults...)
				*to = x
			}
		}
	}
	a.Nearest = n.Get("nearest").Text()
	sc.d.part.Aims = append(sc.d.part.Aims, a)
}

func (l *loader) score(sc *scope, n yamldoc.Node) {
	if !n.Keys("id", "criterion", "is", "says") {
		return
	}
	s := link.Score{ID: l.id(sc, n), Criterion: n.Need("criterion", "name a criterion of criteria.yaml").Text(), Says: n.Need("says", "say what it counts").Text(), At: n.At()}
	if src := l.parse(n.Need("is", "write an expression")); src != nil {
		x, faults := src.Infer(sc)
		l.faults = append(l.faults, faults...)
		if s.Is = x; x != nil {
			sc.d.part.Scores = append(sc.d.part.Scores, s)
		}
	}
}

// step reads an operation.
func (l *loader) step(sc *scope, n yamldoc.Node) {
	if c := n.Get("common"); c.Present() {
		n.Keys("common")
		sc.d.part.Steps = append(sc.d.part.Steps, link.Step{ID: c.Text(), Common: true, At: n.At()})
		return
	}
	if !n.Keys("id", "says", "hours", "wait", "costs", "when", "on", "needs", "gives", "cautions", "acts", "from") {
		return
	}
	says := n.Need("says", "say what is done")
	s := link.Step{ID: l.id(sc, n), Says: says.Text(), SaysPieces: l.pieces(sc, says), On: n.Get("on").Text(), At: n.At()}
	for w, to := range map[string]struct {
		e   **lang.Expr
		dim quantity.Dim
	}{"hours": {&s.Hours, quantity.TimeDim}, "wait": {&s.Wait, quantity.TimeDim}, "costs": {&s.Costs, quantity.MoneyDim}} {
		if v := n.Get(w); v.Present() {
			if src := l.parse(v); src != nil {
				x, faults := src.Check(sc, lang.Type{Kind: lang.NumberKind, Dim: to.dim})
				l.faults = append(l.faults, faults...)
				*to.e = x
			}
		}
	}
	if w := n.Get("when"); w.Present() {
		if src := l.parse(w); src != nil {
			x, faults := src.Check(sc, lang.Type{Kind: lang.YesNo})
			l.faults = append(l.faults, faults...)
			s.When = x
		}
	}
	if _, ok := sc.d.picks[s.On]; s.On != "" && !ok {
		n.Get("on").Fault("the step is done on "+s.On+", which is no pick of this file", fault.DidYouMean(s.On, pickNames(sc.d)))
	}
	for _, x := range n.Get("needs").Items() {
		s.Needs = append(s.Needs, x.Text())
	}
	for _, x := range n.Get("gives").Items() {
		s.Gives = append(s.Gives, x.Text())
	}
	for _, x := range n.Get("cautions").Items() {
		s.Cautions = append(s.Cautions, l.caution(x))
	}
	for _, a := range n.Get("acts").Items() {
		l.guarded(a, s.Cautions)
	}
	sc.d.part.Steps = append(sc.d.part.Steps, s)
}

// guarded tells a hazardous act that stands in a step without its caution.
func (l *loader) guarded(act yamldoc.Node, have []string) {
	known := false
	for _, id := range l.base.IDs("cautions") {
		for _, a := range strings.Split(l.base.Text("cautions", id, "guards"), "\n") {
			if a != act.Text() {
				continue
			}
			known = true
			if !slices.Contains(have, id) {
				act.Fault(act.Text()+" stands in a step without the caution "+id+" ("+l.base.Text("cautions", id, "hazard")+")", "add "+id+" to its cautions")
			}
		}
	}
	if !known {
		act.Fault("no caution guards the act "+act.Text(), "name an act that stands under `guards` of a caution")
	}
}
