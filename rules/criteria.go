package rules

import (
	"strconv"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// criteriaHeads takes down what part files may count towards, and in what kind.
func (l *loader) criteriaHeads(doc *yamldoc.Doc) {
	for _, n := range doc.Root.Get("criteria").Items() {
		id := n.Get("id").Text()
		if dim, ok := quantity.Kinds[n.Get("quantity").Text()]; ok && id != "" {
			l.criteriaIDs = append(l.criteriaIDs, id)
			l.criterionType[id] = number(dim)
		}
	}
}

// criteria reads how options are scored.
func (l *loader) criteria(doc *yamldoc.Doc) {
	root := doc.Root
	if !root.Keys("broken_should", "most_energy", "numbers", "define", "criteria") {
		return
	}
	if n := root.Need("broken_should", "say how many points a broken should costs"); n.Present() && n.Keys("points", "from", "seen") {
		_, grade := l.sourced(n)
		l.base.Numbers[grade]++
		l.base.OffShould = points(n.Need("points", "write how many of 100"))
	}
	if n := root.Need("most_energy", "say above what stored energy no home work is advised"); n.Present() {
		if x, ok := l.number("criteria.most_energy", "most_energy", n); ok {
			l.base.MostEnergy = x.Low
		}
	}
	d := newDraft(doc, "criteria", link.Shared, "criteria")
	l.names(d)
	sc := &scope{l: l, d: d, extra: map[string]lang.Type{
		"total.hours": number(quantity.TimeDim), "total.wait": number(quantity.TimeDim), "total.costs": number(quantity.MoneyDim)}}
	for _, id := range l.criteriaIDs {
		sc.extra["joined."+id] = l.criterionType[id]
	}
	for _, e := range root.Get("define").Entries() {
		if def := d.defines[e.Name]; def != nil {
			sc.keep(def)
		}
	}
	l.base.Input.Scoring = d.part
	for _, n := range root.Need("criteria", "list the criteria").Items() {
		l.criterion(sc, n)
	}
}

// points reads a share of 100.
func points(n yamldoc.Node) float64 {
	p, err := strconv.ParseFloat(n.Text(), 64)
	if n.Present() && (err != nil || !(p >= 0 && p <= 100)) {
		n.Fault(n.Text()+" is no number of points", "write a number from 0 to 100")
		return 0
	}
	return p
}

var joinWords = map[string]link.Join{"sum": link.Sum, "chance": link.Risk, "least": link.Least, "most": link.Most}

func (l *loader) criterion(sc *scope, n yamldoc.Node) {
	if !n.Keys("id", "says", "quantity", "is", "joins", "none", "better", "weight", "curve", "from", "seen") {
		return
	}
	c := link.Criterion{ID: word(n.Need("id", "give it an id")), Says: n.Need("says", "say what it counts").Text(), At: n.At()}
	c.From, c.Grade = l.sourced(n)
	l.base.Numbers[c.Grade]++
	kind := n.Need("quantity", "write a kind of quantity").Text()
	dim, ok := quantity.Kinds[kind]
	if !ok {
		if kind != "" {
			n.Get("quantity").Fault("there is no kind of quantity "+kind, fault.DidYouMean(kind, kindWords()))
		}
		return
	}
	c.Dim = dim
	for i := range l.base.Input.Criteria {
		if had := &l.base.Input.Criteria[i]; had.ID == c.ID {
			n.Get("id").Fault("the criterion "+c.ID+" stands at "+had.At.String()+" already", "choose another id")
		}
	}
	c.Less = n.Need("better", "write less or more").Word("less", "more") == "less"
	c.Join = joinWords[n.Get("joins").Word("sum", "chance", "least", "most")]
	c.Is = sc.expr(n.Get("is"), number(dim))
	if w := n.Need("weight", "write a number; 1 is the usual"); w.Present() {
		var err error
		if c.Weight, err = strconv.ParseFloat(w.Text(), 64); err != nil || !(c.Weight >= 0) {
			w.Fault(w.Text()+" is no weight", "write a number, 0 or more")
		}
	}
	l.curve(&c, n.Need("curve", "write {VALUE: POINTS, ...}"), kind)
	c.None = l.none(&c, n.Get("none"), kind)
	l.base.Input.Criteria = append(l.base.Input.Criteria, c)
}

// none is what an option stands at to which no part contributes: of a sum or a
// chance nothing; of the rest, unless the file says, what earns least: nobody
// vouches for it.
func (l *loader) none(c *link.Criterion, n yamldoc.Node, kind string) float64 {
	if n.Present() {
		r, _, _ := amount(n, kind)
		return r.Lo
	}
	if c.Join == link.Sum || c.Join == link.Risk || len(c.Curve) == 0 {
		return 0
	}
	if c.Less {
		return c.Curve[len(c.Curve)-1].At
	}
	return c.Curve[0].At
}

// curve reads the corners of a criterion's curve, each value with its unit.
func (l *loader) curve(c *link.Criterion, n yamldoc.Node, kind string) {
	if !n.Present() {
		return
	}
	for _, e := range n.Entries() {
		t, err := quantity.ParseKind(e.Name, kind)
		if err != nil {
			l.faults.Add(e.KeyAt, e.Value.Key, err.Error(), "")
			continue
		}
		p := points(e.Value)
		if k := len(c.Curve) - 1; k >= 0 {
			last := c.Curve[k]
			switch {
			case t.Best <= last.At:
				l.faults.Add(e.KeyAt, e.Value.Key, "the corner "+e.Name+" does not come after the one before it", "list corners from small to large")
			case c.Less && p > last.Points || !c.Less && p < last.Points:
				l.faults.Add(e.KeyAt, e.Value.Key, "the corner "+e.Name+" turns the curve against better", "points fall as the value grows when less is better, and rise when more is")
			}
		}
		c.Curve = append(c.Curve, link.CurvePoint{At: t.Best, Points: p})
	}
	if len(c.Curve) < 2 {
		n.Fault("a curve needs two corners at least", "write {VALUE: POINTS, VALUE: POINTS}")
	}
}
