package casefile

import (
	"fmt"
	"math"
	"slices"
)

// loose are the purposes whose hub must be able to go over its shaft.
var loose = []string{"running", "oscillating", "sliding"}

// check tells what is wrong between values that are each right alone.
func (r *reader) check() {
	for _, p := range r.c.Parts {
		swing, out := p.Given[string(p.Is)+".swing"], p.Given["hub.outside"]
		if swing.Known && out.Known && swing.Hi < out.Lo {
			r.tell(swing.At, swing.Key, fmt.Sprintf("%s swings %s and measures %s outside", p.Called, swing.Text, out.Text),
				"the swing is the greatest of the whole part and cannot be the smaller")
		}
	}
	for _, f := range r.c.Fits {
		r.nominal(f)
		r.stations(f)
		r.taken(f)
		r.wall(f)
		r.inside(f)
		r.grown(f)
	}
	r.oneMoney()
}

// span is the smallest and largest true size the readings allow.
type span struct {
	lo, hi   float64 // the readings
	from, to Value   // the readings, as typed
	u        float64 // the gauge's doubt
}

func spanOf(readings []Reading) (s span, ok bool) {
	s.lo, s.hi = math.Inf(1), math.Inf(-1)
	for _, rd := range readings {
		for _, v := range rd.Sizes {
			if !v.Known {
				continue
			}
			if v.Lo < s.lo {
				s.lo, s.from = v.Lo, v
			}
			if v.Hi > s.hi {
				s.hi, s.to = v.Hi, v
			}
			if rd.Gauge != nil && rd.Gauge.Within.Known {
				s.u = max(s.u, rd.Gauge.Within.Hi)
			}
		}
	}
	return s, s.lo <= s.hi
}

// nominal tells a reading that belongs to some other fit: more than a tenth
// away from the size the fit was made to.
func (r *reader) nominal(f *Fit) {
	nom := f.Given["fit.nominal"]
	if !nom.Known {
		return
	}
	for _, s := range Sides {
		for _, rd := range slices.Concat(f.Surfaces[s].Readings, f.Surfaces[s].Lands) {
			for _, v := range rd.Sizes {
				if v.Known && math.Abs(v.Lo-nom.Mid()) > nom.Mid()/10 {
					r.tell(v.At, v.Key, fmt.Sprintf("the %s reads %s and the fit is %s", s, v.Text, nom.Text),
						"a fit does not wear by a tenth of its size: check the figure and the unit")
				}
			}
		}
	}
}

func (r *reader) wall(f *Fit) {
	if s, ok := spanOf(f.Surfaces[Hub].Readings); ok {
		if out := f.given(Hub, "outside"); out.Known && out.Hi <= s.hi && !r.told[out.Key] {
			r.told[out.Key] = true // once, however many fits the part has
			r.tell(out.At, out.Key, fmt.Sprintf("%s measures %s outside and its bore %s", f.Hub.Called, out.Text, s.to.Text),
				"the outside must be the larger: give the diameter where the wall is thinnest")
		}
	}
	if s, ok := spanOf(f.Surfaces[Shaft].Readings); ok {
		if hole := f.given(Shaft, "bore"); hole.Known && hole.Hi >= s.lo && !r.told[hole.Key] {
			r.told[hole.Key] = true
			r.tell(hole.At, hole.Key, fmt.Sprintf("the hole through %s is %s and its outside %s", f.Shaft.Called, hole.Text, s.from.Text),
				"the hole must be the smaller")
		}
	}
}

// inside tells a bore smaller than the shaft that is said to move in it.
func (r *reader) inside(f *Fit) {
	hub, ok := spanOf(f.Surfaces[Hub].Readings)
	shaft, also := spanOf(f.Surfaces[Shaft].Readings)
	if !ok || !also || !slices.Contains(loose, f.Purpose) {
		return
	}
	if hub.lo+hub.u < shaft.hi-shaft.u {
		r.tell(hub.from.At, hub.from.Key, fmt.Sprintf("the bore reads %s and the shaft that is %s in it %s", hub.from.Text, f.Purpose, shaft.to.Text),
			"the bore must be the larger: a burr, a warm part, a thimble one turn out, or hub and shaft swapped")
	}
}

// grown tells wear that added metal: a bore below its unworn land, or a shaft
// above it. Without a land the nominal size stands in where the fit is free.
func (r *reader) grown(f *Fit) {
	for _, s := range Sides {
		now, ok := spanOf(f.Surfaces[s].Readings)
		if !ok {
			continue
		}
		was, known := spanOf(f.Surfaces[s].Lands)
		if nom := f.Given["fit.nominal"]; !known && nom.Known && slices.Contains(loose, f.Purpose) {
			was, known = span{lo: nom.Lo, hi: nom.Hi, from: nom, to: nom}, true
		}
		if !known {
			continue
		}
		u := math.Hypot(now.u, was.u)
		switch {
		case s == Hub && now.hi < was.lo-u:
			r.tell(now.to.At, now.to.Key, fmt.Sprintf("the bore reads %s at most and was %s before it wore", now.to.Text, was.from.Text),
				"wear cannot make a bore smaller: check the figure, the gauge's zero and the size it was")
		case s == Shaft && now.lo > was.hi+u:
			r.tell(now.from.At, now.from.Key, fmt.Sprintf("the shaft reads %s at least and was %s before it wore", now.from.Text, was.to.Text),
				"wear cannot make a shaft larger: check the figure, the gauge's zero and the size it was")
		}
	}
}

// oneMoney tells prices in more than one currency: nothing here changes money.
func (r *reader) oneMoney() {
	most := 0
	for m, n := range r.money {
		if n > most || n == most && m < r.c.Money {
			most, r.c.Money = n, m
		}
	}
	if len(r.money) > 1 {
		all := make([]string, 0, len(r.money))
		for m := range r.money {
			all = append(all, m)
		}
		slices.Sort(all)
		r.tell(r.doc.Root.At(), "", fmt.Sprintf("prices stand in %d currencies: %v", len(all), all), "write all prices in one")
	}
}
