package link

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/lang"
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
	ID, Says, Part, By string // By: full name of the pick, hub/bush.borer
	From               *Part
	Joint              string // of a hold's: the joint it is on
	Inside             bool
	Suits              string // the ID it follows, "" when none
	Target, Cut, Gauge tape.Node
	Reading, Value     tape.Node
	Low, High          tape.Node // declared range, for the target
}

// Check is a need or a limit of a linked option.
type Check struct {
	*Rule
	Of          *Part
	FullID      string // with the joint in front when a hold is used on one: bush.press-tight
	Need        bool
	Margin      tape.Node // of a limit: kept when >= 0; of a need: a yes-no node
	Left, Right tape.Node // of a limit
	Dim         quantity.Dim
	When        tape.Node // 0: always
	Why         []WordPiece
	Remedy      []WordPiece
	Joint       string // of a hold's: the joint it is on
}

// WordPiece is text, or a value to be printed.
type WordPiece struct {
	Text  string
	Node  tape.Node // 0: text
	Dim   quantity.Dim
	YesNo bool     // a value that is yes (1) or no (0)
	Words []string // of a word value: the closed list
	Row   string   // full name of a pick or of a row of the case, whose id is put in
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
	Node tape.Node
	*Ask
}

// Ask is what an input asks for. It is one for all options that ask it, and
// never changed.
type Ask struct {
	Name   string
	Kind   SlotKind
	Dim    quantity.Dim
	Words  []string
	Number *Number // of a NumberSlot
	Pick   string  // of a PickSlot: full name of the pick, hub/bush.borer
	Row    string  // of a GivenSlot that is a column of a row of the case: shaft.material
	Table  string  // of a PickSlot or a Row: the table whose column it is
	Column string
	YesNo  bool
}

// picked lists the slots that are columns of picked rows.
func picked(slots []Slot) []int {
	var out []int
	for i := range slots {
		if slots[i].Kind == PickSlot {
			out = append(out, i)
		}
	}
	return out
}

// LinkedPick is a pick of an option under its full name. Where and Best are in
// its own Program, whose slots are the columns of the row tried (it.swing), and
// the givens, numbers and earlier picks they ask for.
type LinkedPick struct {
	*Pick
	Of      *Part
	Joint   string // of a hold's pick: the joint it is on
	Full    string // hub/bush.borer, bush.way, purpose/running.class
	Failed  Check  // the rule that fails when no row is left
	Program *tape.Program
	Slots   []Slot
	Where   tape.Node // 0: every row
	Best    tape.Node // 0: none
	Lowered []Lowered // its expressions in its own Program, when the Input says Trace
	rests   []int     // the earlier picks it asks about
}

// LinkedStep is a step with its nodes in the option's program; 0: none.
type LinkedStep struct {
	*Step
	Of                                       *Part
	Joint                                    string
	FullID                                   string // bush.press-in
	OnPick                                   string // full name of the pick it is done on, "" when none
	Words                                    []WordPiece
	HoursNode, WaitNode, CostsNode, WhenNode tape.Node
	SentNode                                 tape.Node // yes-no: a firm does it
	FirmNode, AwayNode                       tape.Node // what a firm asks, and how long the part is away
	firm                                     tape.Node // which firm; 0: the shop does it
}

// LinkedScore is one named contribution in the option's program.
type LinkedScore struct {
	Score
	Of    *Part
	Joint string // of a hold's: the joint it is on
	Node  tape.Node
}

// Named is a define of a part, for tables, worked numbers and words.
type Named struct {
	Name, Says string // hub/bush.wall; bush.pressure
	Told       bool
	Of         *Part
	Joint      string
	Node       tape.Node
	Dim        quantity.Dim
	Type       lang.Type
}

// Option is a linked option: one program, all needs and limits of all its files.
type Option struct {
	ID                  string // shaft-leave+hub-bush-press
	Shaft, Hub, Purpose *Part
	Holds               map[string]*Part // by joint: bush, sleeve, fit
	Locks               map[string]*Part // by joint
	Program             *tape.Program
	Slots               []Slot
	PickSlots           []int // indexes of the Slots that are columns of picked rows, ascending
	Dims                []Dim // in cutting order
	Checks              []Check
	Picks               []LinkedPick
	Steps               []LinkedStep
	Scores              []LinkedScore
	Named               []Named
	Aims                []LinkedAim
	Totals              map[string]tape.Node // total.hours, total.wait, total.costs: sums over the steps
	Criteria            map[string]tape.Node // the number each criterion's curve reads, by its ID
	Lowered             []Lowered            // every expression, when the Input says Trace
}

// Lowered is an expression with what the program made of it. Names gives the
// node of each name as the program asked for it: hub_bore, shaft_face.family,
// low(left_to_bore).
type Lowered struct {
	Of    *Part
	Joint string // of a hold's: the joint it is on
	Expr  *lang.Expr
	Node  tape.Node
	Names map[string]tape.Node
}

// LinkedAim is an aim with its node.
type LinkedAim struct {
	Aim
	Of                       *Part
	Joint                    string
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
