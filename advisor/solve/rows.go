package solve

import (
	"math"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// class says who chooses the value of an uncertain slot.
type class uint8

const (
	sure    class = iota
	made          // a cut or a gauge's error: always against us
	read          // a reading: the true size is anywhere in its range
	unknown       // not known at all
)

// slot is an input that is a range.
type slot struct {
	node     tape.Node
	name     string
	class    class
	span     interval.I
	discrete bool // a word or yes-no: only whole codes
	picked   bool // a column of a picked row: a better row may be taken
}

// row is a limit as the search sees it: kept when its margin is >= 0.
type row struct {
	check   int       // index of Option.Checks; -1 for the declared range of a dimension
	dim     int       // of a range: index of the dimension
	plus    tape.Node // margin = reg[plus] - reg[minus]
	minus   tape.Node // 0: none
	flip    bool      // an aim's: margin = offset - reg[plus]
	offset  float64
	must    bool
	sure    bool          // its `when` is met whatever is unknown
	in      []tape.Node   // slots it depends on, sure or not
	at      []int         // indexes of the problem's slots it depends on
	ends    []float64     // by at: the corner last found worst, an end or a code
	endsOf  against       // and of what
	prog    *tape.Program // just what it needs
	free    bool          // depends on a target
	targets []int         // the free dimensions whose target it depends on
	line    line
	deduct  float64 // margin at target less margin at the worst corner, frozen
	scale   float64 // margin that one machine width of every size is worth
}

// problem is a Model laid out for the search.
type problem struct {
	m       Model
	prog    *tape.Program
	dims    []link.Dim
	free    []int     // indexes of dimensions not held
	width   []float64 // by dimension: width to be cut to
	unit    []float64 // by dimension: the length its margins are counted in
	slots   []slot
	index   []int32 // by node: its place among the slots and 1, or 0
	rows    []row
	spots   []int // what the rows' at and targets are cut from
	needs   []int // checks that are needs
	after   []row // limits looked at on the finished design only
	all     *tape.Program
	reg     []float64 // best values, current targets
	tmp     []float64
	adj     []float64
	dt      []float64 // slopes to targets
	lead    []int     // by dimension: the one it suits, or -1
	lp      maximin
	lined   straight // the active rows, as lines last drew them
	here    straight // and where a climb stands
	cuts    bundle
	box     []interval.I // what the facts are: see lookAtFacts
	ends    []float64    // what worstEnds found last
	from    []int
	moves   []bool // by node: what is not one value; nil: not asked yet
	changed int    // counts changes of what the rows are held against
	hasty   bool   // while climbing: a slot that no slope moves is left at its best value
}

// straight is rows made straight at a place: their margins there and their
// slopes to the coordinates, in machine widths.
type straight struct {
	m  []float64
	g  [][]float64
	at []int // which rows they are
}

func newProblem(m Model) *problem {
	o := m.Option
	if m.Shared == nil {
		m.Shared = NewShared()
	}
	q := &problem{m: m, prog: o.Program, dims: o.Dims}
	q.reg, q.tmp, q.adj = m.Shared.room(q.prog.Len()), m.Shared.room(q.prog.Len()), m.Shared.room(q.prog.Len())
	q.index = m.Shared.places(q.prog.Len())
	clear(q.reg)
	q.prog.Start(q.reg)
	q.given()
	q.prog.Start(q.tmp)
	q.width, q.dt, q.lead = make([]float64, len(q.dims)), make([]float64, len(q.dims)), make([]int, len(q.dims))
	q.unit = make([]float64, len(q.dims))
	for i, d := range q.dims {
		q.lead[i] = q.leader(i)
		q.width[i] = m.Width[d.ID]
		q.unit[i] = max(m.Width[d.ID], 1e-6)
		if _, held := m.Held[d.ID]; held {
			q.width[i] = 0
		} else {
			q.free = append(q.free, i)
		}
		q.addSlot(slot{node: d.Cut, name: d.ID + ".cut", class: made})
		u := m.Gauge[d.ID]
		q.addSlot(slot{node: d.Gauge, name: d.ID + ".gauge", class: made, span: interval.I{Lo: -u, Hi: u}})
		if at, held := m.Held[d.ID]; held {
			q.reg[d.Target] = at
		}
	}
	q.spread()
	q.lookAtFacts()
	q.limits()
	return q
}

// done gives the registers back.
func (q *problem) done() {
	q.m.Shared.floats = append(q.m.Shared.floats, q.reg, q.tmp, q.adj)
	q.m.Shared.index, q.m.Shared.rows, q.m.Shared.spots = q.index, q.rows, q.spots
	q.m.Shared.back(q.box)
}

// ranged gives registers for ranges, with the constants in place.
func (q *problem) ranged() []interval.I {
	reg := q.m.Shared.ranged(q.prog.Len())
	q.prog.StartI(reg)
	return reg
}

// alike gives a copy of registers.
func (q *problem) alike(reg []interval.I) []interval.I {
	out := q.m.Shared.ranged(len(reg))
	copy(out, reg)
	return out
}

// given fills the slots that the case, the picks and the files give.
func (q *problem) given() {
	for i := range q.m.Option.Slots {
		s := &q.m.Option.Slots[i]
		k, ok := q.m.Of(i)
		if !ok {
			continue
		}
		q.reg[s.Node] = k.Best
		is := slot{node: s.Node, name: s.Name, span: k.Value, picked: s.Kind == link.PickSlot}
		is.discrete = len(s.Words) > 0 || q.prog.Kind(s.Node) == lang.YesNo
		switch {
		case !k.Is:
			is.class = unknown
			q.addSlot(is)
		case k.Value.Lo < k.Value.Hi:
			is.class = read
			q.addSlot(is)
		}
	}
}

func (q *problem) addSlot(s slot) {
	q.slots = append(q.slots, s)
	q.index[s.node] = int32(len(q.slots))
}

// spread sets the range of every cut from the widths.
func (q *problem) spread() {
	q.changed++
	for i, d := range q.dims {
		h := q.width[i] / 2
		q.slots[q.index[d.Cut]-1].span = interval.I{Lo: -h, Hi: h}
	}
}

// limits makes a row of every limit that may apply, and two of the declared
// range of every free dimension.
func (q *problem) limits() {
	o := q.m.Option
	most := len(o.Checks) + 2*len(q.free)
	q.rows, q.spots = q.m.Shared.limits(most, len(o.Aims))
	roots := make([]tape.Node, 0, 2*most)
	add := func(r row, nodes ...tape.Node) {
		q.rests(&r, nodes...)
		roots = append(roots, nodes...)
		q.rows = append(q.rows, r)
	}
	for i := range o.Checks {
		c := &o.Checks[i]
		if c.Need {
			q.needs = append(q.needs, i)
			continue
		}
		when := q.applies(c)
		if when == No || q.m.Apart != nil && q.m.Apart(c) {
			continue
		}
		r := row{sure: when == Yes, check: i, dim: -1, plus: c.Margin, must: c.Strength == link.Must}
		if c.After {
			q.rests(&r, c.Margin)
			q.after = append(q.after, r)
			continue
		}
		add(r, c.Margin)
	}
	for _, i := range q.free {
		d := q.dims[i]
		add(row{check: -1, dim: i, plus: d.Target, minus: d.Low, must: true}, d.Target, d.Low)
		add(row{check: -1, dim: i, plus: d.High, minus: d.Target, must: true}, d.High, d.Target)
	}
	q.all = q.m.Shared.together(q.prog, roots)
}

// rests finds what a row depends on, and the program of just that.
func (q *problem) rests(r *row, nodes ...tape.Node) {
	r.prog, r.in = q.only(nodes...), q.inputs(nodes)
	from := len(q.spots)
	for _, s := range r.in {
		if i := q.index[s]; i > 0 {
			q.spots = append(q.spots, int(i)-1)
		}
	}
	r.at = q.spots[from:len(q.spots):len(q.spots)]
	from = len(q.spots)
	for _, i := range q.free {
		if slices.Contains(r.in, q.dims[i].Target) {
			r.free = true
			q.spots = append(q.spots, i)
		}
	}
	r.targets = q.spots[from:len(q.spots):len(q.spots)]
}

// inputs are the slots that nodes depend on, each once.
func (q *problem) inputs(nodes []tape.Node) []tape.Node {
	if len(nodes) == 1 {
		return q.uses(nodes[0])
	}
	var key [2]tape.Node
	copy(key[:], nodes)
	in, ok := q.m.Shared.both[key]
	if !ok {
		in = append(slices.Clone(q.uses(nodes[0])), q.uses(nodes[1])...)
		slices.Sort(in)
		in = slices.Compact(in)
		q.m.Shared.both[key] = in
	}
	return in
}

// only is the program of just these nodes, made once for the option.
func (q *problem) only(nodes ...tape.Node) *tape.Program {
	var key [2]tape.Node
	copy(key[:], nodes)
	p := q.m.Shared.only[key]
	if p == nil || len(nodes) > 2 {
		p = q.prog.Only(nodes...)
		q.m.Shared.only[key] = p
	}
	return p
}

// uses are the slots a node depends on.
func (q *problem) uses(n tape.Node) []tape.Node {
	u, ok := q.m.Shared.uses[n]
	if !ok {
		u = q.prog.Uses(n)
		q.m.Shared.uses[n] = u
	}
	return u
}

// applies says whether a check's `when` is met: it hangs on facts, never on sizes.
func (q *problem) applies(c *link.Check) Truth {
	if c.When == 0 {
		return Yes
	}
	t, _ := q.fact(c.When)
	return t
}

// fact decides a yes-no of facts; when it depends, it names the slots it hangs on.
func (q *problem) fact(n tape.Node) (Truth, []string) {
	switch is := q.box[n]; {
	case tape.Yes(is):
		return Yes, nil
	case tape.No(is):
		return No, nil
	}
	var of []string
	for _, s := range q.uses(n) {
		if i := q.index[s]; i > 0 {
			of = append(of, q.slots[i-1].name)
		}
	}
	return Depends, of
}

// lookAtFacts encloses all that needs and conditions ask.
func (q *problem) lookAtFacts() {
	q.box = q.ranged()
	for _, s := range q.prog.Slots() {
		q.box[s] = interval.Point(q.reg[s])
	}
	for i := range q.slots {
		q.box[q.slots[i].node] = q.slots[i].span
	}
	q.m.Shared.asked(q.m.Option).Enclose(q.box)
}

func (r *row) value(reg []float64) float64 {
	v := reg[r.plus] - r.offset
	if r.minus != 0 {
		v -= reg[r.minus]
	}
	if r.flip {
		v = -v
	}
	if math.IsNaN(v) {
		return math.Inf(-1)
	}
	return v
}
