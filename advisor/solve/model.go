package solve

import (
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// Model is one option with one set of picks, ready to be solved.
type Model struct {
	Option *link.Option
	Given  map[string]link.Known // by slot name: every slot but targets, cuts and gauges
	Width  map[string]float64    // full width the machine of each dimension holds, m
	Gauge  map[string]float64    // uncertainty of gauging each dimension, m
	Held   map[string]float64    // sizes already made, m
	Shared *Shared               // what all sets of picks of one option share; nil: worked out anew
}

// Shared is what the programs of one option have in common over all its sets of
// picks. It belongs to one goroutine at a time.
type Shared struct {
	only map[[2]tape.Node]*tape.Program
	uses map[tape.Node][]tape.Node
}

// NewShared is empty: it fills as problems are laid out.
func NewShared() *Shared {
	return &Shared{only: map[[2]tape.Node]*tape.Program{}, uses: map[tape.Node][]tape.Node{}}
}

// Budget is counted in points and boxes, never seconds: same case, same bytes.
type Budget struct {
	Points int  // low-discrepancy points tried before the ascent
	Ascent int  // steps of one ascent
	Boxes  int  // boxes of the proof that nothing works
	Whole  bool // aims, windows, weak numbers too
}

// Quick is enough to rank an option; Thorough is for the best of each name.
var (
	Quick    = Budget{Points: 256, Ascent: 24}
	Thorough = Budget{Points: 4096, Ascent: 80, Boxes: 512, Whole: true}
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
	Worst    float64  // margin at its worst corner, SI; of a need 1 or 0
	AtTarget float64  // margin with every reading at its best value and every size on target
	Proved   bool     // Worst is shown by enclosure
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
}

// Solver is the search behind one small door, so that it can be replaced.
type Solver interface {
	Design(Model, Budget) Answer
}
