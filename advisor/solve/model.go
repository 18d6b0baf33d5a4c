package solve

import (
	"slices"
	"sync"

	"wornfit/calc/interval"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// Model is one option with one set of picks, ready to be solved.
type Model struct {
	Option *link.Option
	Known  []link.Known           // by index of Option.Slots: of what is given
	Picked []link.Known           // by index of Option.PickSlots: of what is picked
	Width  map[string]float64     // full width the machine of each dimension holds, m
	Gauge  map[string]float64     // uncertainty of gauging each dimension, m
	Held   map[string]float64     // sizes already made, m
	Marks  []tape.Node            // criteria, whose range a glance tells
	Near   map[string]float64     // targets of a design of a like set of picks, a good place to start; nil: none
	Beat   *Beat                  // what it must do better than; nil: nothing
	Joined bool                   // of a glance: what is picked are the ranges over several sets
	Apart  func(*link.Check) bool // limits left out; nil: none
	Box    []interval.I           // by dimension: where every design must lie, as a glance over all picks at once told; nil: anywhere
	Shared *Shared                // what all sets of picks of one option share; nil: worked out anew
}

// Of is what the picks or the case say of the ith slot; ok is false of a target,
// a cut and a gauge.
func (m *Model) Of(i int) (k link.Known, ok bool) {
	switch m.Option.Slots[i].Kind {
	case link.GivenSlot, link.NumberSlot:
		return m.Known[i], true
	case link.PickSlot:
		k, _ := slices.BinarySearch(m.Option.PickSlots, i)
		return m.Picked[k], true
	}
	return link.Known{}, false
}

// Beat is how many shoulds (and sizes held closer than the machine's width) a
// design may cost and still be of interest: when it works for all values, and
// when it depends. Below nought: not at all.
type Beat struct{ Works, Depends int }

// Shared is what the programs of one option have in common over all its sets of
// picks. It belongs to one goroutine at a time.
type Shared struct {
	only    map[[2]tape.Node]*tape.Program
	uses    map[tape.Node][]tape.Node
	both    map[[2]tape.Node][]tape.Node
	roots   []tape.Node   // of the rows last laid out together
	all     *tape.Program // and their program
	facts   *tape.Program // what asked gives
	floats  [][]float64   // registers not in use
	index   []int32
	rows    []row
	spots   []int
	ranges  [][]interval.I
	nogoods []nogood
}

// together is the program of all rows; sets of picks mostly have the same.
func (s *Shared) together(p *tape.Program, roots []tape.Node) *tape.Program {
	if s.all == nil || !slices.Equal(s.roots, roots) {
		s.all, s.roots = p.Only(roots...), roots
	}
	return s.all
}

// asked is the program of all that needs and conditions ask.
func (s *Shared) asked(o *link.Option) *tape.Program {
	if s.facts == nil {
		var roots []tape.Node
		for i := range o.Checks {
			c := &o.Checks[i]
			if c.Need {
				roots = append(roots, c.Margin)
			}
			if c.When != 0 {
				roots = append(roots, c.When)
			}
		}
		s.facts = o.Program.Only(roots...)
	}
	return s.facts
}

// places is an index by node, all 0.
func (s *Shared) places(n int) []int32 {
	if s.index == nil {
		return make([]int32, n)
	}
	out := s.index
	s.index = nil
	clear(out)
	return out
}

// room gives registers for plain values; what stands in them means nothing.
func (s *Shared) room(n int) []float64 {
	if k := len(s.floats) - 1; k >= 0 {
		r := s.floats[k]
		s.floats = s.floats[:k]
		return r
	}
	return registers.float(n)
}

// ranged gives registers for ranges; what stands in them means nothing.
func (s *Shared) ranged(n int) []interval.I {
	if k := len(s.ranges) - 1; k >= 0 {
		r := s.ranges[k]
		s.ranges = s.ranges[:k]
		return r
	}
	return registers.ranged(n)
}

// Rest hands the registers on to other options; it fills again when used again.
func (s *Shared) Rest() {
	for _, r := range s.floats {
		registers.floats.Put(&r)
	}
	for _, r := range s.ranges {
		registers.ranges.Put(&r)
	}
	if s.rows != nil {
		clear(s.rows[:cap(s.rows)])
		registers.limits.Put(&limitRoom{s.rows, s.spots})
	}
	s.floats, s.ranges, s.rows, s.spots = nil, nil, nil, nil
}

// limits gives room for rows and what they rest on.
func (s *Shared) limits(most, aims int) (rows []row, spots []int) {
	if rows, spots = s.rows[:0], s.spots[:0]; rows == nil {
		if r, ok := registers.limits.Get().(*limitRoom); ok {
			rows, spots = r.rows[:0], r.spots[:0]
		} else {
			rows, spots = make([]row, 0, most+aims), make([]int, 0, 16*most)
		}
	}
	s.rows, s.spots = nil, nil
	return rows, spots
}

type limitRoom struct {
	rows  []row
	spots []int
}

// registers are those no option uses now; each may serve an option no longer
// than the one it was made for.
var registers spares

type spares struct{ floats, ranges, limits sync.Pool }

func (s *spares) float(n int) []float64 {
	if r, ok := s.floats.Get().(*[]float64); ok && cap(*r) >= n {
		return (*r)[:n]
	}
	return make([]float64, n, max(n, usual))
}

func (s *spares) ranged(n int) []interval.I {
	if r, ok := s.ranges.Get().(*[]interval.I); ok && cap(*r) >= n {
		return (*r)[:n]
	}
	return make([]interval.I, n, max(n, usual))
}

// usual is how many registers most options do with.
const usual = 512

// back takes registers of ranges that are no longer needed.
func (s *Shared) back(r ...[]interval.I) { s.ranges = append(s.ranges, r...) }

// NewShared is empty: it fills as problems are laid out.
func NewShared() *Shared {
	return &Shared{only: map[[2]tape.Node]*tape.Program{}, uses: map[tape.Node][]tape.Node{}, both: map[[2]tape.Node][]tape.Node{}}
}

// Budget is counted in points and boxes, never seconds: same case, same bytes.
type Budget struct {
	Points int  // low-discrepancy points tried before the ascent
	Ascent int  // steps of one ascent
	Boxes  int  // boxes of the proof that nothing works
	Whole  bool // aims, windows, weak numbers too
}

// Glance only throws out what cannot work, Quick is enough to rank an option,
// Thorough is for the best of each name, Again is Quick told in full.
var (
	Glance   = Budget{}
	Quick    = Budget{Points: 256, Ascent: 24}
	Thorough = Budget{Points: 4096, Ascent: 80, Boxes: 512, Whole: true}
	Again    = Budget{Points: Quick.Points, Ascent: Quick.Ascent, Whole: true}
)

// Truth is what is known of a limit or an option.
type Truth uint8

const (
	No        Truth = iota // for every value of what is not known
	Yes                    // for every value of what is not known
	Depends                // on what is not known or not gauged well enough
	NotProved              // the budget ran out
)

// State is one need or limit at the design, or at the nearest to one.
type State struct {
	Holds    Truth
	Applies  Truth    // its `when`
	Proved   bool     // Worst is shown by enclosure
	Worst    float64  // margin at its worst corner, SI; of a need 1 or 0
	AtTarget float64  // margin with every reading at its best value and every size on target
	Of       []string // slots unknown or gauged that it depends on, when it Depends
	Weak     []string // weak numbers whose doubt would break it whatever the design
}

// Window is what a dimension may be.
type Window struct {
	ID             string
	Low, High      float64  // slice window of the size, m
	LowBy, HighBy  []string // FullID of the rules that stop it
	Target         float64
	Lower, Upper   float64 // the tolerance to cut to
	Width          float64 // Upper - Lower; below Machine a should is broken
	Machine, Gauge float64
	Held           bool
}

// Answer is what Design finds.
type Answer struct {
	Works    Truth
	Design   map[string]float64 // targets by dimension; nil when none was found
	Windows  []Window           // in cutting order
	States   []State            // by index of Option.Checks
	Broken   []int              // checks that are in the way when nothing works
	Missing  []string           // slots that would settle it when it Depends
	Narrowed []string           // dimensions that must be held closer than the machine's width
	Reg      []float64          // the program's registers at the design: every value, for words and scores
	Passed   bool               // nothing that beats Model.Beat was found; the rest tells nothing
	Within   []interval.I       // of a glance that ruled nothing out: what each criterion may be, in the order of Model.Marks
	Box      []interval.I       // and where the targets may lie, by dimension
}

// Solver is the search behind one small door, so that it can be replaced.
type Solver interface {
	Design(Model, Budget) Answer
}
