package rules

import (
	"strconv"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// seam reads what may cross between part files: names with a kind of quantity,
// or the table whose row it is.
func (l *loader) seam(d *yamldoc.Doc) {
	s := &l.base.Input.Seam
	d.Root.Keys("shaft", "hub", "hold", "purpose", "joint")
	for key, to := range map[string]*[]link.SeamName{"shaft": &s.Shaft, "hub": &s.Hub, "hold": &s.Hold, "purpose": &s.Purpose, "joint": &s.Joint} {
		for _, e := range d.Root.Get(key).Entries() {
			kind := e.Value.Text()
			t := lang.Type{Kind: lang.NumberKind}
			if dim, ok := quantity.Kinds[kind]; ok {
				t.Dim = dim
			} else if len(l.base.Vocabulary.Tables[kind]) > 0 {
				t = lang.Type{Kind: lang.Row, Table: kind}
			} else {
				e.Value.Fault("there is no kind of quantity and no table "+kind, fault.DidYouMean(kind, kindWords()))
			}
			*to = append(*to, link.SeamName{Name: e.Name, Type: t, At: e.KeyAt})
		}
	}
}

// common reads steps.yaml: what every repair has.
func (l *loader) common() {
	doc, ok := l.docs["steps.yaml"]
	if !ok || !doc.Root.Present() {
		return
	}
	doc.Root.Keys("numbers", "before", "after")
	d := &draft{doc: doc, side: "steps", numbers: map[string]*link.Number{}, part: &link.Part{ID: "common", File: "steps.yaml", Says: "steps every repair has"}}
	l.names(d)
	sc := &scope{l: l, d: d}
	for _, n := range doc.Root.Get("before").Items() {
		l.step(sc, n)
	}
	for _, n := range doc.Root.Get("after").Items() {
		l.step(sc, n)
		if k := len(d.part.Steps) - 1; k >= 0 && len(d.part.Steps[k].Needs) == 0 {
			d.part.Steps[k].Needs = []string{"parts"}
		}
	}
	for i := range d.part.Steps {
		d.part.Steps[i].Always = true
	}
	l.base.Input.Common = d.part
}

// criteria reads how options are scored.
func (l *loader) criteria(doc *yamldoc.Doc) {
	doc.Root.Keys("broken_should", "most_energy", "criteria")
	if n := doc.Root.Need("broken_should", "say how many points a broken should costs"); n.Present() {
		n.Keys("points", "from", "seen")
		l.from(n)
		l.seen(n)
		l.base.OffShould, _ = strconv.ParseFloat(n.Need("points", "write a number").Text(), 64)
	}
	if n := doc.Root.Need("most_energy", "say above what stored energy no home work is advised"); n.Present() {
		if x, ok := l.number("most_energy", n); ok {
			l.base.MostEnergy = x.Low
		}
	}
	extra := map[string]lang.Type{"total.hours": number(quantity.TimeDim), "total.wait": number(quantity.TimeDim), "total.costs": number(quantity.MoneyDim)}
	items := doc.Root.Need("criteria", "list the criteria").Items()
	for _, n := range items {
		extra["joined."+n.Get("id").Text()] = number(quantity.Kinds[n.Get("quantity").Text()])
	}
	l.base.Input.Scoring = &link.Part{ID: "criteria", File: "criteria.yaml", Side: link.Purpose}
	sc := &scope{l: l, extra: extra}
	for _, n := range items {
		l.criterion(sc, n)
	}
}

func number(d quantity.Dim) lang.Type { return lang.Type{Kind: lang.NumberKind, Dim: d} }

var joinWords = map[string]link.Join{"sum": link.Sum, "chance": link.Risk, "least": link.Least, "most": link.Most}

func (l *loader) criterion(sc *scope, n yamldoc.Node) {
	if !n.Keys("id", "says", "quantity", "is", "joins", "none", "better", "weight", "curve", "from", "seen") {
		return
	}
	c := link.Criterion{ID: n.Need("id", "give it an id").Text(), Says: n.Need("says", "say what it counts").Text(), From: l.from(n), At: n.At()}
	c.Grade = l.seen(n)
	kind := n.Need("quantity", "write a kind of quantity").Text()
	dim, ok := quantity.Kinds[kind]
	if !ok {
		n.Get("quantity").Fault("there is no kind of quantity "+kind, fault.DidYouMean(kind, kindWords()))
		return
	}
	c.Dim, c.Less = dim, n.Need("better", "write less or more").Word("less", "more") == "less"
	if j := n.Get("joins"); j.Present() {
		c.Join = joinWords[j.Word("sum", "chance", "least", "most")]
	}
	if x := n.Get("is"); x.Present() {
		if src := l.parse(x); src != nil {
			e, faults := src.Check(sc, number(dim))
			l.faults = append(l.faults, faults...)
			c.Is = e
		}
	}
	if v := n.Get("none"); v.Present() {
		if r, _, ok := amount(v, kind, &dim); ok {
			c.None = r.Lo
		}
	}
	c.Weight, _ = strconv.ParseFloat(n.Need("weight", "write a number").Text(), 64)
	l.curve(&c, n.Need("curve", "write {value: points, ...}"), dim)
	l.base.Input.Criteria = append(l.base.Input.Criteria, c)
}

// curve reads the corners of a criterion's curve, each value with its unit.
func (l *loader) curve(c *link.Criterion, n yamldoc.Node, dim quantity.Dim) {
	for _, e := range n.Entries() {
		r, err := quantity.Parse(e.Name, dim)
		at := r.Best
		if dim == quantity.Number {
			at, err = strconv.ParseFloat(e.Name, 64)
		}
		p, err2 := strconv.ParseFloat(e.Value.Text(), 64)
		if err != nil || err2 != nil || p < 0 || p > 100 {
			l.faults.Add(e.KeyAt, e.Value.Key, "the corner "+e.Name+": "+e.Value.Text()+" of the curve cannot be read", "write a value with its unit, and points from 0 to 100")
			continue
		}
		if k := len(c.Curve); k > 0 && at <= c.Curve[k-1].At {
			l.faults.Add(e.KeyAt, e.Value.Key, "the corner "+e.Name+" does not come after the one before it", "list corners from small to large")
		}
		c.Curve = append(c.Curve, link.CurvePoint{At: at, Points: p})
	}
	if len(c.Curve) < 2 {
		n.Fault("a curve needs two corners at least", "write {value: points, value: points}")
	}
}

// options reads the trade names.
func (l *loader) options(doc *yamldoc.Doc) {
	for _, n := range doc.Root.Items() {
		if !n.Keys("id", "says", "shaft", "hub", "any", "fit", "cannot") {
			continue
		}
		t := TradeName{ID: n.Need("id", "give it an id").Text(), Says: n.Need("says", "say it in a line").Text(), Cannot: map[string]string{}, At: n.At()}
		for key, to := range map[string]*[]string{"shaft": &t.Shaft, "hub": &t.Hub, "any": &t.Any, "fit": &t.Fit} {
			for _, x := range n.Get(key).Items() {
				*to = append(*to, x.Text())
			}
		}
		for _, e := range n.Get("cannot").Entries() {
			t.Cannot[e.Name] = e.Value.Text()
		}
		l.base.Names = append(l.base.Names, t)
	}
}

// overrides lays a layer's numbers over weak ones, and makes a should a must.
func (l *loader) overrides() {
	for _, doc := range l.over {
		for _, e := range doc.Root.Entries() {
			l.override(e)
		}
	}
}

func (l *loader) override(e yamldoc.Entry) {
	if !e.Value.Keys("value", "from", "becomes") {
		return
	}
	for _, p := range l.base.Input.Parts {
		for _, list := range [][]link.Rule{p.Needs, p.Limits} {
			for i := range list {
				if list[i].ID == e.Name {
					l.becomes(&list[i], e)
					return
				}
			}
		}
		for i := range p.Numbers {
			n := &p.Numbers[i]
			if sideWord(p.Side)+"/"+p.ID+"."+n.ID != e.Name {
				continue
			}
			if !n.Grade.Weak() {
				e.Value.Fault(e.Name+" was read in a source ("+n.From+"): only numbers from memory or practice may be replaced", "argue with the source in knowledge/ itself")
				return
			}
			if from := e.Value.Need("from", "say whose number it is").Text(); from != "" {
				if r, dim, ok := amount(e.Value.Need("value", "write the value with its unit"), "", &n.Dim); ok && dim == n.Dim {
					n.Low, n.High, n.DoubtLow, n.DoubtHi, n.From = r.Lo, r.Hi, r.Lo, r.Hi, from
				}
			}
			return
		}
	}
	l.faults.Add(e.KeyAt, e.Value.Key, "no number and no rule is called "+e.Name, "write hub/bush.least_wall, or the id of a should")
}

func (l *loader) becomes(r *link.Rule, e yamldoc.Entry) {
	switch e.Value.Need("becomes", "write must").Word("must") {
	case "must":
		if r.Ground == link.Safety && r.Strength == link.Must {
			e.Value.Fault("safety rules are never touched", "leave it out")
			return
		}
		r.Strength = link.Must
	}
}

func sideWord(s link.Side) string { return sides[s].folder }
