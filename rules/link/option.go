package link

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/tape"
)

// Dim is a dimension of a linked option, with its nodes. What is cut is read
// by a gauge and then is what it truly is:
//
//	reading = target + cut + (what the size it suits was made over its own target)
//	value   = reading + gauge
//
// so a mate follows the made size one to one and passes on only the gauge's
// error, not the machine's. Target, Cut and Gauge are slots.
type Dim struct {
	ID, Says, Part, By string
	From               *Part
	Inside             bool
	Suits              string // the ID it follows, "" when none
	Target, Cut, Gauge tape.Node
	Reading, Value     tape.Node
	Low, High          tape.Node // declared range, for the target
}

// Check is a need or a limit of a linked option.
type Check struct {
	Rule
	Of          *Part
	FullID      string // with the joint in front when a hold is used on one: bush.press-tight
	Need        bool
	Margin      tape.Node // of a limit: kept when >= 0; of a need: a yes-no node
	Left, Right tape.Node // of a limit
	Dim         quantity.Dim
	When        tape.Node // 0: always
	Why         []WordPiece
	Remedy      []WordPiece
}

// WordPiece is text, or a value to be printed.
type WordPiece struct {
	Text  string
	Node  tape.Node // 0: text
	Dim   quantity.Dim
	Words []string // of a word value: the closed list
}

// SlotKind says where a slot's value comes from.
type SlotKind uint8

const (
	GivenSlot  SlotKind = iota // a vocabulary name, or a column of a row given by the case
	NumberSlot                 // a number of a part file
	PickSlot                   // a column of a picked row
	TargetSlot
	CutSlot
	GaugeSlot
)

// Slot is an input of the option's program. Name is `hub.outside`,
// `shaft.material.E`, `hub/bush.least_wall`, `low(hub/bush.left_to_bore)`,
// `hub/bush.borer.tolerance`, `hub_bore.target`.
type Slot struct {
	Node   tape.Node
	Name   string
	Kind   SlotKind
	Dim    quantity.Dim
	Words  []string
	Number *Number // of a NumberSlot
	Pick   string  // of a PickSlot: full name of the pick, hub/bush.borer
	Column string
}

// LinkedPick is a pick of an option under its full name.
type LinkedPick struct {
	Pick
	Of    *Part
	Full  string    // hub/bush.borer
	Where tape.Node // in the pick's own program, see PickProgram
}

// LinkedStep is a step with its nodes in the option's program; 0: none.
type LinkedStep struct {
	Step
	Of                                       *Part
	Joint                                    string
	HoursNode, WaitNode, CostsNode, WhenNode tape.Node
}

// LinkedScore is one named contribution in the option's program.
type LinkedScore struct {
	Score
	Of   *Part
	Node tape.Node
}

// Named is a define of a part, for tables, worked numbers and words.
type Named struct {
	Name, Says string // hub/bush.wall; bush.pressure
	Of         *Part
	Node       tape.Node
	Dim        quantity.Dim
}

// Option is a linked option: one program, all needs and limits of all its files.
type Option struct {
	ID                  string // shaft-leave+hub-bush-press
	Shaft, Hub, Purpose *Part
	Holds               map[string]*Part // by joint: bush, sleeve, fit
	Program             *tape.Program
	Slots               []Slot
	Dims                []Dim // in cutting order
	Checks              []Check
	Picks               []LinkedPick
	Steps               []LinkedStep
	Scores              []LinkedScore
	Named               []Named
	Aims                []LinkedAim
	Totals              map[string]tape.Node // total.hours, total.wait, total.materials, ...; criteria use them
	Criteria            map[string]tape.Node // the number each criterion's curve reads
}

// LinkedAim is an aim with its node.
type LinkedAim struct {
	Aim
	Of                       *Part
	Least, Most, Middle, Of_ tape.Node
}

// Known is what is known of one slot: a reading with its doubt, a stated value
// (Lo == Hi), or nothing (Is false: its whole range).
type Known struct {
	Value interval.I
	Best  float64
	Is    bool
	Grade basis.Grade
	Says  string // how it is known: "bore gauge, 4 readings", "stated", "not measured"
}
