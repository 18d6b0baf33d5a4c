package casefile

import (
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/calc/rolling"
	"wornfit/rules/yamldoc"
)

var partKeys = []string{"is", "called", "number", "material", "datums", "next_to_it", "bearing", "clearance_group", "sealed", "if_spoiled"}

func (r *reader) parts(n yamldoc.Node) {
	if !n.Present() {
		return
	}
	if !n.IsMap() {
		n.Keys()
		return
	}
	for _, e := range n.Entries() {
		r.c.Parts = append(r.c.Parts, r.part(e))
	}
}

func (r *reader) part(e yamldoc.Entry) *Part {
	n := e.Value
	p := &Part{ID: e.Name, Called: e.Name, Given: Givens{}, At: e.KeyAt}
	if !n.IsMap() {
		n.Keys()
		return p
	}
	p.Is = Side(n.Need("is", "write is: hub (the outer part) or is: shaft (the inner one)").Word("hub", "shaft"))
	if p.Is == "" {
		return p
	}
	keys := partKeys
	if p.Is == Hub {
		keys = append(slices.Clone(partKeys), "bush_material")
	}
	r.keys(n, string(p.Is), keys...)
	if t := n.Get("called").Text(); t != "" {
		p.Called = t
	}
	p.Number = n.Get("number").Text()
	p.Materials = r.material(n.Get("material"))
	p.BushMaterials = r.material(n.Get("bush_material"))
	p.Given = r.given(n, string(p.Is), keys...)
	r.spoiled(n.Get("if_spoiled"), p)
	r.datums(n.Get("datums"), p)
	r.neighbours(n.Get("next_to_it"), p)
	r.bearing(n, p)
	return p
}

// material reads one id, a list of candidates, or unknown.
func (r *reader) material(n yamldoc.Node) []string {
	var out []string
	ids, checked := r.ids["materials"]
	for _, m := range n.Items() {
		t := m.Text()
		if t == "" || t == "unknown" {
			continue
		}
		if checked && m.Word(ids...) == "" {
			continue
		}
		out = append(out, t)
	}
	return out
}

// spoiled reads what is lost when the part is spoiled: a price, or irreplaceable.
func (r *reader) spoiled(n yamldoc.Node, p *Part) {
	if n.Text() == "irreplaceable" {
		p.Irreplaceable = true
	}
	e, ok := r.v.Entry(string(p.Is) + ".worth")
	switch {
	case !ok || !n.Present():
	case p.Irreplaceable: // as dear as the vocabulary can say
		p.Given[e.Name] = Value{Stated: true, Known: true, Lo: e.Range.Hi, Hi: e.Range.Hi, Text: n.Text(), At: n.At(), Key: n.Key}
	default:
		p.Given[e.Name] = r.entry(n, e)
	}
}

func (r *reader) datums(n yamldoc.Node, p *Part) {
	if !n.Present() {
		return
	}
	if !n.IsMap() {
		n.Keys()
		return
	}
	for _, e := range n.Entries() {
		d := Datum{ID: e.Name, At: e.KeyAt}
		if !e.Value.IsMap() {
			e.Value.Keys()
			continue
		}
		d.Given = r.columns(e.Value, "datums", nil, "run_out", "straightened")
		d.RunOut = r.quantity(e.Value.Get("run_out"), quantity.LengthDim, "0.04 mm")
		d.Straight, _ = e.Value.Get("straightened").YesNo()
		if d.RunOut.Stated && d.Given["offset"].Stated {
			e.Value.Get("run_out").Fault("both run_out and offset are given", "keep one; the offset is half the full indicator reading")
		}
		p.Datums = append(p.Datums, d)
	}
}

// kinds are the neighbours a treatment answers for: near_keyway is keyway.
func (r *reader) kinds(s Side) []string {
	var out []string
	for _, e := range r.v.Under(string(s)) {
		if k, ok := strings.CutPrefix(e.Name, string(s)+".near_"); ok {
			out = append(out, strings.ReplaceAll(k, "_", "-"))
		}
	}
	return out
}

func (r *reader) neighbours(n yamldoc.Node, p *Part) {
	p.Kinds = r.kinds(p.Is)
	p.NearStated = n.Present() && !(n.IsScalar() && n.Text() == "unknown")
	if !p.NearStated || n.IsScalar() && n.Text() == "none" {
		return
	}
	for _, i := range n.Items() {
		if !i.IsMap() {
			i.Fault("found "+i.Text()+" where a neighbour should stand", "write none, or - {kind: keyway, distance: 0 mm, size: 6 mm}")
			continue
		}
		i.Keys("kind", "distance", "size")
		kind := i.Need("kind", "say what it is: "+strings.Join(r.kinds(p.Is), ", "))
		near := Neighbour{At: i.At(),
			Distance: r.quantity(i.Get("distance"), quantity.LengthDim, "5 mm"),
			Size:     r.quantity(i.Get("size"), quantity.LengthDim, "6 mm"),
		}
		if kind.Present() {
			near.Kind = kind.Word(r.kinds(p.Is)...)
		}
		p.Near = append(p.Near, near)
	}
}

func (r *reader) bearing(n yamldoc.Node, p *Part) {
	b := n.Get("bearing")
	if p.Bearing = b.Text(); p.Bearing == "none" {
		p.Bearing = ""
	}
	if p.Bearing != "" && !b.Quoted() {
		b.Fault("a designation without quotes may lose its zeros", "write bearing: '"+p.Bearing+"'")
	}
	p.BearingPlay = n.Get("clearance_group").Word("C2", "CN", "C3", "C4", "C5", "unknown")
	if b.Present() && p.Bearing != "" {
		text := p.Bearing
		if p.BearingPlay != "" && p.BearingPlay != "unknown" {
			text += " " + p.BearingPlay
		}
		found, _, err := rolling.Of(text)
		if err != nil {
			b.Fault(err.Error(), "take the number off its ring, or leave bearing out and give the readings of the ring")
		} else {
			p.rolls = &found
		}
	}
	if s := n.Get("sealed"); s.Present() && s.Text() != "unknown" {
		yes, ok := s.YesNo()
		p.Sealed = Value{Stated: true, Known: ok, Lo: code(yes), Hi: code(yes), Text: s.Text(), At: s.At(), Key: s.Key}
	}
}
