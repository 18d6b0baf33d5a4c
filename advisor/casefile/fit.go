package casefile

import (
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

var fitKeys = []string{"id", "called", "hub", "shaft", "purpose", "when_new", "readings", "lands", "seen", "deepest_score", "witness",
	"lobes", "faces", "end_float", "shake"}

func (r *reader) fits(n yamldoc.Node) {
	if !n.Present() {
		return
	}
	if !n.IsList() {
		n.Fault("fits is a list", "begin each fit with a dash: - id: ...")
		return
	}
	seen := map[string]fault.Place{}
	for _, i := range n.Items() {
		if !i.IsMap() {
			i.Keys()
			continue
		}
		f := &Fit{At: i.At(), ID: r.oneID(seen, i.Need("id", "give the fit a short name"), "fit")}
		r.fit(i, f)
		r.c.Fits = append(r.c.Fits, f)
	}
}

func (r *reader) fit(n yamldoc.Node, f *Fit) {
	r.keys(n, "fit", fitKeys...)
	if f.Called = n.Get("called").Text(); f.Called == "" {
		f.Called = f.ID
	}
	f.Hub, f.Shaft = r.partOf(n, Hub), r.partOf(n, Shaft)
	list, ok := r.ids["purpose"]
	if !ok {
		list = purposes
	}
	f.Purpose = n.Need("purpose", "say what the fit does: "+strings.Join(list, ", ")).Word(list...)
	f.Given = r.given(n, "fit", fitKeys...)
	f.WhenNew = r.whenNew(n.Get("when_new"))
	f.Surfaces = map[Side]*Surface{Hub: {}, Shaft: {}}
	for _, s := range Sides {
		r.surface(n, s, f.Surfaces[s])
	}
	r.signGivens(f)
	for _, key := range []string{"readings", "lands", "seen", "deepest_score", "witness", "lobes", "faces"} {
		if m := n.Get(key); m.Present() {
			m.Keys("hub", "shaft")
		}
	}
	r.shake(n.Get("shake"), f)
	r.endFloat(n.Get("end_float"), f)
}

// partOf finds the part a side of the fit belongs to.
func (r *reader) partOf(n yamldoc.Node, s Side) *Part {
	id := n.Need(string(s), "name the part that is the "+string(s))
	if !id.Present() || id.Text() == "" {
		return nil
	}
	p, ok := r.c.Part(id.Text())
	switch {
	case !ok:
		var known []string
		for _, p := range r.c.Parts {
			known = append(known, p.ID)
		}
		id.Fault("the part "+id.Text()+" is not listed under parts", fault.DidYouMean(id.Text(), known))
		return nil
	case p.Is != "" && p.Is != s:
		id.Fault("the part "+p.ID+" is a "+string(p.Is)+", and here it stands as the "+string(s), "swap the two, or correct parts."+p.ID+".is")
	}
	return p
}

// whenNew reads a clearance; "0.02 mm to 0.05 mm tight" is an interference.
func (r *reader) whenNew(n yamldoc.Node) Value {
	t, tight := strings.CutSuffix(strings.TrimSpace(n.Text()), " tight")
	if !tight {
		return r.quantity(n, quantity.LengthDim, "0.03 mm to 0.08 mm")
	}
	v := Value{Stated: true, Text: n.Text(), At: n.At(), Key: n.Key}
	m, err := quantity.Parse(t, quantity.LengthDim)
	if err != nil {
		refused(n, err)
		return v
	}
	v.Known, v.Lo, v.Hi, v.Typed = true, -m.High, -m.Low, m
	return v
}

func (r *reader) surface(n yamldoc.Node, s Side, to *Surface) {
	word := string(s)
	of := func(key string) yamldoc.Node { return n.Get(key).Get(word) }
	to.At = of("readings").At()
	to.Readings = r.readings(of("readings"), s)
	to.Lands = r.readings(of("lands"), s)
	to.Seen = r.seen(of("seen"), s)
	to.Witness = r.depth(of("witness"))
	if e, ok := r.v.Entry(word + ".score"); ok {
		to.Score = r.entry(of("deepest_score"), e)
	}
	r.lobes(of("lobes"), to)
	if f := of("faces"); f.Present() {
		f.Keys("near", "far")
		to.FaceNear, to.FaceFar = r.depth(f.Get("near")), r.depth(f.Get("far"))
	}
}

// depth reads a length that is never negative; the word none is 0.
func (r *reader) depth(n yamldoc.Node) Value {
	if n.IsScalar() && n.Text() == "none" {
		return Value{Stated: true, Known: true, Text: "none", At: n.At(), Key: n.Key}
	}
	v := r.quantity(n, quantity.LengthDim, "0.10 mm")
	if v.Known && v.Lo < 0 {
		n.Fault(v.Text+" is less than nothing", "write how deep it is, or none")
		v.Known = false
	}
	return v
}

// HowMade lists the words for how a surface was made, for the lobes a two-point
// gauge cannot see.
var HowMade = []string{"turned", "bored", "ground", "honed", "reamed", "three-jaw", "centreless", "drawn"}

func (r *reader) lobes(n yamldoc.Node, to *Surface) {
	if n.IsScalar() && slices.Contains(HowMade, n.Text()) {
		to.LobesHow = n.Text()
		return
	}
	if t := n.Text(); t != "" && t != "none" && t != "unknown" && !strings.ContainsAny(t, "0123456789") {
		n.Word(append([]string{"none", "unknown"}, HowMade...)...)
		return
	}
	to.Lobes = r.depth(n)
}

func (r *reader) shake(n yamldoc.Node, f *Fit) {
	for _, i := range n.Items() {
		if !i.IsMap() {
			i.Fault("found "+i.Text()+" where a shake should stand", "write {toward: 90 deg, move: 0.30 mm, with: GAUGE}")
			continue
		}
		i.Keys("toward", "at", "move", "with")
		f.Shake = append(f.Shake, Shake{Place: i.At(),
			Toward: r.angle(i.Get("toward"), block{}),
			At:     r.quantity(i.Get("at"), quantity.LengthDim, "5 mm"),
			Move:   r.depth(i.Need("move", "say how far the indicator moved")),
			Gauge:  r.with(i, i.Get("with"), ""),
		})
	}
}

func (r *reader) endFloat(n yamldoc.Node, f *Fit) {
	if !n.Present() || n.IsScalar() && n.Text() == "unknown" {
		return
	}
	n.Keys("found", "wanted")
	f.EndFloat = r.quantity(n.Get("found"), quantity.LengthDim, "1.0 mm")
	f.EndFloatWants = r.quantity(n.Get("wanted"), quantity.LengthDim, "0.1 mm to 0.3 mm")
}
