package knowledge_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"strings"

	"wornfit/calc/interval"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// lot is a program with what was lowered into it: an option's, or that of one
// of its picks.
type lot struct {
	name    string
	prog    *tape.Program
	slots   []link.Slot
	dims    []link.Dim
	lowered []link.Lowered
	checks  []link.Check
	share   map[tape.Node]int // how many draws slopes and contraction look at, by node
}

// lots are an option's own program and those of its picks.
func lots(o *link.Option) []lot {
	name := o.ID + " for " + o.Purpose.ID
	out := []lot{{name: name, prog: o.Program, slots: o.Slots, dims: o.Dims, lowered: o.Lowered, checks: o.Checks}}
	for _, p := range o.Picks {
		out = append(out, lot{name: name + ", pick " + p.Full, prog: p.Program, slots: p.Slots, lowered: p.Lowered})
	}
	return out
}

// drawer draws inputs from what the vocabulary allows: mostly as they hang
// together on a real bench, now and then anywhere in their range.
type drawer struct {
	base    *rules.Base
	rng     *rand.Rand
	nominal float64
	rows    map[string]*link.RowValues // of this draw, by pick or row of the case
}

// otherDraws makes a long run by hand look at other draws than the usual ones.
var otherDraws = flag.String("draws", "", "any word: other draws for the safety net")

func newDrawer(base *rules.Base, seed string) *drawer {
	n := uint64(14695981039346656037)
	for _, c := range []byte(seed + *otherDraws) {
		n = (n ^ uint64(c)) * 1099511628211
	}
	return &drawer{base: base, rng: rand.New(rand.NewPCG(n, 7))}
}

// draw fills the slots of a program and runs it.
func (d *drawer) draw(l *lot) []float64 {
	reg := make([]float64, l.prog.Len())
	l.prog.Start(reg)
	d.nominal, d.rows = d.log(6e-3, 0.15), map[string]*link.RowValues{}
	for i := range l.slots {
		if s := &l.slots[i]; s.Kind != link.TargetSlot {
			reg[s.Node] = d.value(s)
		}
	}
	for i := range l.dims { // each range may rest on the sizes before it
		l.prog.Run(reg)
		d.target(l, i, reg)
	}
	l.prog.Run(reg)
	return reg
}

func (d *drawer) target(l *lot, i int, reg []float64) {
	dim := &l.dims[i]
	declared := interval.I{Lo: reg[dim.Low], Hi: reg[dim.High]}
	at := d.nominal * (1 + 0.25*d.rng.NormFloat64())
	if declared.Lo < 0 { // a difference of sizes
		at = 3e-4 * d.rng.NormFloat64()
	}
	if d.rng.IntN(3) == 0 {
		at = d.within(declared)
	}
	for _, other := range l.dims[:i] {
		if (other.ID == dim.Suits || dim.Suits != "") && d.rng.IntN(2) == 0 {
			at = reg[other.Target] + 3e-4*d.rng.NormFloat64()
		}
	}
	if declared.Lo <= declared.Hi {
		at = min(max(at, declared.Lo), declared.Hi)
	}
	if !(declared.Lo < 0) {
		at = max(at, 1e-4)
	}
	reg[dim.Target] = at
}

func (d *drawer) value(s *link.Slot) float64 {
	r := d.rangeOf(s)
	switch {
	case s.Words != nil || s.YesNo:
		if k, ok := d.column(s); ok {
			return k.Best
		}
		return float64(d.rng.IntN(int(r.Hi) + 1))
	case s.Kind == link.CutSlot, s.Kind == link.GaugeSlot, s.Kind == link.NumberSlot:
		return d.within(r)
	}
	if k, ok := d.column(s); ok {
		return d.within(k.Value)
	}
	if d.rng.IntN(8) > 0 {
		if v, ok := d.likely(s.Name); ok {
			return min(max(v, r.Lo), r.Hi)
		}
		if e, ok := d.base.Vocabulary.Entry(s.Name); ok && e.Usual != nil {
			return d.within(e.Usual.Range)
		}
	}
	return d.wide(r)
}

// column is the cell of the row this draw took for the slot; one draw in eight
// takes no row but any value its table allows.
func (d *drawer) column(s *link.Slot) (link.Known, bool) {
	key := s.Pick + s.Row
	if s.Table == "" {
		return link.Known{}, false
	}
	if _, ok := d.rows[key]; !ok {
		d.rows[key] = nil
		if rows := d.base.Rows(s.Table); len(rows) > 0 && d.rng.IntN(8) > 0 {
			d.rows[key] = &rows[d.rng.IntN(len(rows))]
		}
	}
	if d.rows[key] == nil {
		return link.Known{}, false
	}
	k, ok := d.rows[key].Columns[s.Column]
	return k, ok
}

// likely is how the sizes of a worn fit hang together. A name not told here is
// drawn from its range.
func (d *drawer) likely(name string) (float64, bool) {
	side, what, _ := strings.Cut(name, ".")
	out := 1.0
	if side == "shaft" {
		out = -1
	}
	switch what {
	case "nominal":
		return d.nominal, true
	case "largest", "smallest", "mean":
		return d.nominal + out*8e-4*d.rng.Float64() - 4e-5, true
	case "outside":
		return d.nominal * (1.05 + 2*d.rng.Float64()), true
	case "bore":
		return max(d.nominal*(1.6*d.rng.Float64()-0.8), 0), true
	case "goes_on_over":
		return max(d.nominal*(1.6*d.rng.Float64()-0.3), 0), true
	case "length":
		return d.nominal * (0.4 + 2*d.rng.Float64()), true
	case "wear", "taper", "out_of_round", "one_sided", "score", "witness", "offset", "new_least", "new_most":
		return 4e-4 * d.rng.Float64(), true
	case "raceway", "outer_raceway":
		return d.nominal * (0.7 + 0.8*d.rng.Float64()), true
	case "play_least", "play_most", "other_takes":
		return 5e-5 * d.rng.Float64(), true
	case "temperature":
		return 273.15 + 150*d.rng.Float64(), true
	}
	return 0, false
}

// rangeOf is all that a slot may be.
func (d *drawer) rangeOf(s *link.Slot) interval.I {
	switch {
	case s.YesNo:
		return interval.Of(0, 1)
	case s.Words != nil:
		return interval.Of(0, float64(len(s.Words)-1))
	case s.Kind == link.CutSlot:
		return interval.Of(-5e-5, 5e-5)
	case s.Kind == link.GaugeSlot:
		return interval.Of(-1e-5, 1e-5)
	case s.Kind == link.TargetSlot:
		return interval.Of(1e-4, 1)
	case s.Kind == link.NumberSlot:
		return doubtOf(s)
	}
	if e, ok := d.base.Vocabulary.Entry(s.Name); ok {
		return e.Range
	}
	for _, e := range d.base.Vocabulary.Tables[s.Table] {
		if e.Name == s.Column {
			return e.Range
		}
	}
	return interval.None()
}

// doubtOf is how far a number of a file is tried; of one end of a range, about it.
func doubtOf(s *link.Slot) interval.I {
	n := s.Number
	at := n.Low
	if strings.HasPrefix(s.Name, "high(") {
		at = n.High
	}
	if n.Low == n.High && n.DoubtLow < n.DoubtHi {
		return interval.I{Lo: n.DoubtLow, Hi: n.DoubtHi}
	}
	return interval.Of(0.8*at, 1.2*at)
}

func (d *drawer) within(r interval.I) float64 {
	if !(r.Lo < r.Hi) {
		return r.Lo
	}
	return min(r.Lo+d.rng.Float64()*(r.Hi-r.Lo), r.Hi)
}

// wide is anywhere in a range, every power of ten alike.
func (d *drawer) wide(r interval.I) float64 {
	if r.Lo < 0 || r.Hi <= 0 || r.Lo > 200 && r.Hi < 2000 || d.rng.IntN(12) == 0 {
		return d.within(r)
	}
	if r.Lo == 0 && d.rng.IntN(12) == 0 {
		return 0
	}
	return min(d.log(max(r.Lo, r.Hi*1e-6), r.Hi), r.Hi)
}

func (d *drawer) log(lo, hi float64) float64 {
	return lo * math.Pow(hi/lo, d.rng.Float64())
}

func discrete(s *link.Slot) bool { return s.YesNo || s.Words != nil }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
