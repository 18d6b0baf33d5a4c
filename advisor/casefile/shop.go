package casefile

import (
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

var shopKeys = []string{"machines", "work_holding", "heat", "stock", "sends_out"}

func (r *reader) shop(n yamldoc.Node) {
	r.c.Shop = r.givens(n, "shop", shopKeys...)
	seen := map[string]fault.Place{}
	for _, i := range n.Get("machines").Items() {
		if i.IsScalar() && i.Text() == "none" {
			continue
		}
		if !i.IsMap() {
			i.Keys()
			continue
		}
		r.c.Machines = append(r.c.Machines, r.machine(i, seen))
	}
	r.c.WorkHolding = texts(n.Get("work_holding"))
	r.c.Heat = texts(n.Get("heat"))
	r.c.Stock = texts(n.Get("stock"))
	for _, i := range n.Get("sends_out").Items() {
		if i.IsScalar() && i.Text() == "none" {
			continue
		}
		if !i.Keys("does", "called", "price", "days") {
			continue
		}
		s := Service{At: i.At(), Does: texts(i.Need("does", "say what they do, such as grind or spray")),
			Price: r.quantity(i.Get("price"), quantity.MoneyDim, "140 EUR"),
			Days:  r.quantity(i.Get("days"), quantity.TimeDim, "5 days")}
		if s.Called = i.Get("called").Text(); s.Called == "" {
			s.Called = strings.Join(s.Does, ", ")
		}
		r.c.Services = append(r.c.Services, s)
	}
}

// machine reads a row of the shop: what it does is a list of verbs, each a
// yes-no column of the table (turn stands for turns).
func (r *reader) machine(n yamldoc.Node, seen map[string]fault.Place) Machine {
	m := Machine{At: n.At(), ID: r.oneID(seen, n.Need("id", "give the machine a short name"), "machine")}
	m.Called = n.Get("called").Text()
	if m.Called == "" {
		m.Called = m.ID
	}
	m.Given = r.columns(n, "machines", "id", "called", "does", "rate")
	m.Rate = r.quantity(n.Get("rate"), quantity.RateDim, "40 EUR/h")
	verbs := map[string]string{}
	for _, e := range r.v.Tables["machines"] {
		if word := e.Name[strings.LastIndex(e.Name, ".")+1:]; e.Type.Kind == lang.YesNo {
			verbs[strings.TrimSuffix(word, "s")] = word
			m.Given[word] = Value{Stated: true, Known: true, Text: "no"}
		}
	}
	var list []string
	for verb := range verbs {
		list = append(list, verb)
	}
	slices.Sort(list)
	for _, d := range n.Need("does", "list what it does: "+strings.Join(list, ", ")).Items() {
		if verb := d.Word(list...); verb != "" {
			m.Given[verbs[verb]] = Value{Stated: true, Known: true, Lo: 1, Hi: 1, Text: "yes", At: d.At(), Key: d.Key}
		}
	}
	return m
}

// buys reads the price and the days of a replacement for each part.
func (r *reader) buys(n yamldoc.Node) {
	if n.Present() && !n.IsMap() && n.Text() != "none" {
		n.Keys()
	}
	for _, e := range n.Entries() {
		p, ok := r.c.Part(e.Name)
		if !ok {
			var ids []string
			for _, p := range r.c.Parts {
				ids = append(ids, p.ID)
			}
			r.tell(e.KeyAt, e.Value.Key, "the part "+e.Name+" is not listed under parts", fault.DidYouMean(e.Name, ids))
			continue
		}
		e.Value.Keys("price", "days")
		for _, key := range []string{"price", "days"} {
			if entry, known := r.v.Entry(string(p.Is) + "." + key); known && e.Value.Get(key).Present() {
				p.Given[entry.Name] = r.entry(e.Value.Get(key), entry)
			}
		}
	}
}

func (r *reader) wishes(n yamldoc.Node) {
	r.c.Wishes = r.givens(n, "wishes", "weights")
	r.c.Weights = map[string]float64{}
	w := n.Get("weights")
	if w.Present() && !w.IsMap() {
		w.Keys()
	}
	for _, e := range w.Entries() {
		if list, checked := r.ids["criteria"]; checked && !slices.Contains(list, e.Name) {
			r.tell(e.KeyAt, e.Value.Key, "there is no criterion "+e.Name, fault.DidYouMean(e.Name, list))
			continue
		}
		v := r.typed(e.Value, quantity.Number, "", "2", oneNumber)
		switch {
		case v.Known && (v.Lo < 0 || v.Lo > 10):
			e.Value.Fault("the weight is "+v.Text, "a weight lies between 0, not counted, and 10")
		case v.Known:
			r.c.Weights[e.Name] = v.Lo
		}
	}
}

// made reads the sizes that came off the machine.
func (r *reader) made(n yamldoc.Node) {
	for _, i := range n.Items() {
		if i.IsScalar() && i.Text() == "none" {
			continue
		}
		if !i.Keys("fit", "surface", "dimension", "sizes", "with") {
			continue
		}
		m := Made{At: i.At(), Fit: i.Need("fit", "name the fit").Text(), Dimension: i.Need("dimension", "say which size it is, such as hub_bore").Text()}
		if _, ok := r.c.Fit(m.Fit); !ok && m.Fit != "" {
			i.Get("fit").Fault("the fit "+m.Fit+" is not listed under fits", fault.DidYouMean(m.Fit, r.fitIDs()))
		}
		m.Surface = Side(i.Need("surface", "write hub or shaft").Word("hub", "shaft"))
		for _, s := range i.Need("sizes", "give the sizes in the order of the stations").Items() {
			v := r.quantity(s, quantity.LengthDim, "30.43 mm")
			r.countUnit(v)
			m.Sizes = append(m.Sizes, v)
		}
		if g := r.with(i, i.Get("with"), m.Surface); g != nil {
			m.With = g.ID
		}
		r.c.Made = append(r.c.Made, m)
	}
}

func (r *reader) fitIDs() []string {
	var out []string
	for _, f := range r.c.Fits {
		out = append(out, f.ID)
	}
	return out
}

func (r *reader) gaugeRemedy(id string) string {
	var out []string
	for _, g := range r.c.Gauges {
		out = append(out, g.ID)
	}
	if near := fault.Nearest(id, out); near != "" {
		return "did you mean " + near + "?"
	}
	return "add it, with within: ±0.005 mm"
}
