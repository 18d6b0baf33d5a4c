package condition

import (
	"fmt"
	"maps"
	"strings"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// Row is a row of a table that the case gives: a machine, a datum.
type Row struct {
	ID, Called string
	Class      string                // a row of the rule base that says what the case does not
	Columns    map[string]link.Known // by column
}

// Known returns all that is known, by vocabulary name: readings with their
// doubt, givens as stated, words and yes-no as their codes. What is not known
// is not in the map. Materials are rows: see Materials.
func (c *Condition) Known() map[string]link.Known {
	out := map[string]link.Known{}
	for _, givens := range []casefile.Givens{c.Case.Duty, c.Case.Shop, c.Case.Wishes, c.Fit.Given} {
		put(out, givens)
	}
	for _, side := range casefile.Sides {
		s := c.Surface(side)
		put(out, s.Part.Given)
		neighbours(out, s)
		if w := c.Fit.Surfaces[side].Witness; w.Known {
			out[string(side)+".witness"] = known(w)
		}
		for name, f := range s.figures() {
			if f.Is {
				out[string(side)+"."+name] = measured(f, s.says())
			}
		}
	}
	c.putWhenNew(out)
	putStated(out, "fit.load_stated", "duty.load", "fit.length")
	putStated(out, "shaft.bore_stated", "shaft.bore")
	c.putKeyway(out)
	c.rolling(out)
	for name, inside := range map[string]bool{"shop.gauge_inside": true, "shop.gauge_outside": false} {
		if g := c.BestGauge(inside); g != nil {
			out[name] = link.Known{Value: interval.Point(g.Within.Hi), Best: g.Within.Hi, Is: true, Says: g.Called}
		}
	}
	return out
}

func (s *Surface) figures() map[string]Figure {
	return map[string]Figure{"largest": s.Largest, "smallest": s.Smallest, "mean": s.Mean, "taper": s.Taper,
		"out_of_round": s.OutOfRound, "one_sided": s.OneSided, "wear": s.Wear, "score": s.Score, "bell_mouth": s.BellMouth}
}

func (s *Surface) says() string {
	if s.Readings == 1 {
		return "1 reading"
	}
	return fmt.Sprintf("%d readings", s.Readings)
}

func measured(f Figure, says string) link.Known {
	return link.Known{Value: f.Range, Best: f.Best, Is: true, Grade: basis.Page, Says: says}
}

// put adds what is stated.
func put(out map[string]link.Known, givens map[string]casefile.Value) {
	for name, v := range givens {
		if v.Known {
			out[name] = known(v)
		}
	}
}

func known(v casefile.Value) link.Known {
	return link.Known{Value: interval.I{Lo: v.Lo, Hi: v.Hi}, Best: v.Mid(), Is: true, Grade: basis.Page, Says: "stated"}
}

// ringItself is the kind of neighbour that a rolling bearing is to itself: what
// must never be cut.
const ringItself = "rolling-bearing"

// neighbours answers hub.near_X for every kind once next_to_it is answered.
func neighbours(out map[string]link.Known, s *Surface) {
	for _, kind := range s.Part.Kinds {
		if !s.Part.NearStated && kind != ringItself {
			continue
		}
		there := 0.0
		if kind == ringItself && s.Part.Bearing != "" {
			there = 1
		}
		for _, n := range s.Part.Near {
			if n.Kind == kind {
				there = 1
			}
		}
		name := string(s.Side) + ".near_" + strings.ReplaceAll(kind, "-", "_")
		out[name] = link.Known{Value: interval.Point(there), Best: there, Is: true, Says: "stated"}
	}
}

func (c *Condition) putWhenNew(out map[string]link.Known) {
	v := c.Fit.WhenNew
	is := 0.0
	if v.Known {
		is = 1
		out["fit.new_least"] = link.Known{Value: interval.Point(v.Lo), Best: v.Lo, Is: true, Says: "stated"}
		out["fit.new_most"] = link.Known{Value: interval.Point(v.Hi), Best: v.Hi, Is: true, Says: "stated"}
	}
	out["fit.new_stated"] = link.Known{Value: interval.Point(is), Best: is, Is: true, Says: "stated"}
}

// putStated says under name whether all of these are known: what is not told
// must not be held against a part as the worst it may be.
func putStated(out map[string]link.Known, name string, of ...string) {
	is := 1.0
	for _, n := range of {
		if !out[n].Is {
			is = 0
		}
	}
	out[name] = link.Known{Value: interval.Point(is), Best: is, Is: true, Says: "stated"}
}

// BestGauge is the finest gauge for a bore or an outside of this fit's size;
// nil when the case lists none.
func (c *Condition) BestGauge(inside bool) *casefile.Gauge {
	kind := "outside"
	if inside {
		kind = "inside"
	}
	var best *casefile.Gauge
	nom := c.Fit.Given["fit.nominal"]
	for _, g := range c.Case.Gauges {
		fits := !nom.Known || !g.Takes.Known || g.Takes.Lo <= nom.Mid() && nom.Mid() <= g.Takes.Hi
		if g.Kind == kind && g.Within.Known && fits && (best == nil || g.Within.Hi < best.Within.Hi) {
			best = g
		}
	}
	return best
}

// Materials are the candidates for what a part is made of; none: unknown.
func (c *Condition) Materials(side casefile.Side) []string {
	p := c.Fit.Part(side)
	if _, ok := p.Rolling(); ok && len(p.Materials) == 0 {
		return []string{ringSteel}
	}
	return p.Materials
}

// ringSteel is what rolling bearings are made of.
const ringSteel = "bearing-steel-52100"

// Rows returns the rows of a table the case gives: shop.machines, hub.datums,
// shaft.datums; nil for any other.
func (c *Condition) Rows(table string) []Row {
	var out []Row
	switch table {
	case "shop.machines":
		for _, m := range c.Case.Machines {
			r := Row{ID: m.ID, Called: m.Called, Class: m.Class, Columns: map[string]link.Known{}}
			put(r.Columns, m.Given)
			out = append(out, r)
		}
		for _, s := range c.Case.Services {
			r := Row{ID: s.ID, Called: s.Called, Columns: map[string]link.Known{}}
			put(r.Columns, s.Given)
			out = append(out, r)
		}
	case "hub.datums", "shaft.datums":
		s := c.Surface(casefile.Side(strings.TrimSuffix(table, ".datums")))
		for _, d := range s.Part.Datums {
			r := Row{ID: d.ID, Called: d.ID, Columns: map[string]link.Known{}}
			put(r.Columns, maps.Clone(d.Given))
			if o := c.offset(s, d); o.Is {
				r.Columns["offset"] = measured(o, "stated")
			}
			out = append(out, r)
		}
	}
	return out
}
