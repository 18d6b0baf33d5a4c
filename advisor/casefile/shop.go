package casefile

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"

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
	for _, i := range n.Get("heat").Items() {
		r.heat(i, seen)
	}
	r.c.Stock = texts(n.Get("stock"))
	for _, i := range n.Get("sends_out").Items() {
		if i.IsScalar() && i.Text() == "none" {
			continue
		}
		if !i.IsMap() {
			i.Keys()
			continue
		}
		r.c.Services = append(r.c.Services, r.service(i, seen))
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
	classes, checked := r.ids["machines"]
	if m.Class = n.Get("class").Text(); checked && m.Class != "" {
		n.Get("class").Word(classes...)
	}
	m.Given = r.columns(n, "machines", []string{sentOut, firm, "price", "days"}, "id", "called", "class", "does", "rate")
	m.Rate = r.quantity(n.Get("rate"), quantity.RateDim, "40 EUR/h")
	for _, of := range []string{firm, "price", "days"} { // of a firm
		m.Given[of] = Value{Stated: true, Known: true, Text: "0"}
	}
	m.Given[sentOut] = Value{Stated: true, Known: true, Text: "no"}
	does := n.Get("does")
	if m.Class != "" && !does.Present() {
		return m // what its class does
	}
	verbs := r.verbs(m.Given)
	list := slices.Sorted(maps.Keys(verbs))
	for _, d := range n.Need("does", "list what it does: "+strings.Join(list, ", ")).Items() {
		if verb := d.Word(list...); verb != "" {
			m.Given[verbs[verb]] = yes(d)
		}
	}
	return m
}

// heat reads a source of heat by its class: a torch, an oven, a welder is a row
// of the rule base's machines like any lathe.
func (r *reader) heat(n yamldoc.Node, seen map[string]fault.Place) {
	id := n.Text()
	if id == "" || id == "none" {
		return
	}
	if classes, checked := r.ids["machines"]; checked && n.Word(classes...) == "" {
		return
	}
	if _, again := seen[id]; again {
		return // listed under machines, with its own figures
	}
	none := Value{Stated: true, Known: true, Text: "0"}
	r.c.Machines = append(r.c.Machines, Machine{ID: id, Called: strings.ReplaceAll(id, "-", " "), Class: id, At: n.At(),
		Given: map[string]Value{sentOut: {Stated: true, Known: true, Text: "no"}, firm: none, "price": none, "days": none}})
}

// sentOut is the column that tells a firm's row from the shop's own, firm the
// number that tells one firm from the next.
const sentOut, firm = "sent_out", "firm"

// service reads work that can be sent out: a row like a machine's, with what the
// firm asks and how long it takes. What is sent out may be more than machines do.
func (r *reader) service(n yamldoc.Node, seen map[string]fault.Place) Service {
	s := Service{At: n.At(), Does: texts(n.Need("does", "say what they do, such as grind or spray")), Called: n.Get("called").Text(),
		Given: r.columns(n, "machines", []string{sentOut, firm}, "id", "called", "does")}
	if s.Called == "" {
		s.Called = strings.Join(s.Does, ", ")
	}
	id := strings.Join(strings.FieldsFunc(strings.ToLower(s.Called), func(c rune) bool { return c != '-' && !unicode.IsLetter(c) && !unicode.IsDigit(c) }), "-")
	if n.Get("id").Present() {
		id = r.oneID(seen, n.Get("id"), "service")
	}
	s.ID = id
	verbs := r.verbs(s.Given)
	s.Given[sentOut] = yes(n)
	number := float64(len(r.c.Services) + 1)
	s.Given[firm] = Value{Stated: true, Known: true, Lo: number, Hi: number, Text: strconv.Itoa(len(r.c.Services) + 1)}
	for _, d := range n.Get("does").Items() {
		if word, ok := verbs[d.Text()]; ok {
			s.Given[word] = yes(d)
		} else if near := fault.Nearest(d.Text(), slices.Sorted(maps.Keys(verbs))); near != "" && near[0] == d.Text()[0] {
			d.Fault(d.Text()+" is no work known here", "did you mean "+near+"?")
		}
	}
	return s
}

// verbs are what a machine may do by the columns of the table (turn stands for
// turns), each set to no until the case says it does.
func (r *reader) verbs(given map[string]Value) map[string]string {
	verbs := map[string]string{}
	for _, e := range r.v.Tables["machines"] {
		word := e.Name[strings.LastIndex(e.Name, ".")+1:]
		if e.Type.Kind != lang.YesNo {
			continue
		}
		given[word] = Value{Stated: true, Known: true, Text: "no"}
		if word != sentOut {
			verbs[strings.TrimSuffix(word, "s")] = word
		}
	}
	return verbs
}

func yes(n yamldoc.Node) Value {
	return Value{Stated: true, Known: true, Lo: 1, Hi: 1, Text: "yes", At: n.At(), Key: n.Key}
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
