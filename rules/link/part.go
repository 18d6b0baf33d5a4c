// Package link joins what is done to the shaft, what is done to the hub, the
// holds of their joints and the fit's purpose into one option with one
// program. It is the only package that knows the seam between the parts.
//
// Start with Link; All lists what can be linked. Part is a rule file as checked
// data; Option is what the solver, the ranking and the words work on. It knows
// no YAML, no case and no treatment by name.
//
// # Names
//
// A file sees its own names, then its joint, then the seam, then the
// vocabulary. In the option they are told apart so:
//
//	hub/bush.wall            a define or pick of a treatment; purpose/running.class
//	bush.pressure            the same of a hold, by the joint it is on
//	hold/press.friction      a number of a hold: one, however many joints use it
//	low(hub/bush.over)       an end of a number written as a range
//	hub_bore.target          a size, with hub_bore.cut and hub_bore.gauge
//	bush.press-tight         a rule or step of a hold; those of other files keep their ids
//	shaft.material.E         a column of a row of the case
//
// # The finished fit
//
// A static purpose gives the finished fit a joint called fit. Its sizes are the
// tightest that the two surfaces allow (inner_size, inner_large: shaft_large;
// outer_size, outer_small: bore_small), for stress and force; the loosest, for
// grip, are inner_small (shaft_small) and outer_large (bore_large). A joint of a
// treatment states inner_size and outer_size; large and small stand for them
// unless stated, and inner_expansion for the expansion of inner_material.
// fit.pressure, fit.grip_torque and fit.grip_thrust are seen by every file;
// those of bush and sleeve by the treatment that has the joint.
package link

import (
	"wornfit/calc/basis"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// Strength is how hard a need or limit binds.
type Strength uint8

const (
	Must Strength = iota
	Should
	Prefer
)

// Ground is what a need or limit rests on, in the order blamed last to first.
type Ground uint8

const (
	Physics Ground = iota
	Geometry
	Function
	Safety
	Standard
	Practice
	Shop
	Wish
)

// Side is the kind of part file.
type Side uint8

const (
	Shaft Side = iota
	Hub
	Hold
	Purpose
	Shared    // steps.yaml and criteria.yaml: numbers, defines and steps all options share
	Lock      // what stops a joint from turning or sliding beside its hold
	Diagnosis // a pattern of wear: no part of an option
)

func (s Side) String() string {
	return [...]string{"shaft", "hub", "hold", "purpose", "shared", "lock", "diagnosis"}[s]
}

// Metal is what a treatment does to the finished surface; it decides which of
// the two is finished first.
type Metal uint8

const (
	Kept Metal = iota
	Less
	More
)

// Number is an entry of a file's `numbers` table. Low == High unless it is
// written as a range; Doubt is how far either way a weak number is tried.
type Number struct {
	ID                string
	Dim               quantity.Dim
	Low, High         float64
	DoubtLow, DoubtHi float64 // tried again at these (weak numbers); equal to Low, High when sound
	From              string
	Grade             basis.Grade
	At                fault.Place
}

// Sense is the comparison of a limit: Left <= Right, or Left >= Right.
type Sense = lang.Sense

const (
	AtMost  = lang.AtMost
	AtLeast = lang.AtLeast
)

// Rule is a need (Test, a yes-no of discrete facts) or a limit (Left, Sense, Right).
type Rule struct {
	ID                string
	Test              *lang.Expr // of a need
	Left, Right       *lang.Expr // of a limit
	Sense             Sense
	When              *lang.Expr // nil: always
	Carried           string     // of a hold's limit: what a lock on the joint takes off it, torque or thrust; "" nothing
	After             bool       // of a limit: looked at on the finished design, never in the search
	Strength          Strength
	Ground            Ground
	Why, Remedy, From string // Why may hold {name} or {expression} pieces
	WhyPieces         []Piece
	RemedyPieces      []Piece
	Grade             basis.Grade
	At                fault.Place
}

// Piece is a run of words, or a value put in when the sentence is told.
type Piece struct {
	Text  string
	Value *lang.Expr // nil: Text as it stands
	Row   string     // name of a row whose id is put in: datum, of {datum.id}
}

// Dimension is a size to be chosen.
type Dimension struct {
	ID, Says  string
	Part      string // shaft, hub, bush, sleeve: whose size it is
	By        string // the pick whose tolerance is its full width
	Inside    bool   // gauged inside (a bore) or outside
	Low, High *lang.Expr
	Suits     string // an earlier dimension of the file, or "mate": it is cut to that one's made size
	At        fault.Place
}

// Pick is a discrete choice: a row of a table or of the shop.
type Pick struct {
	ID, From string     // table, or vocabulary list such as shop.machines
	Where    *lang.Expr // over `it.` columns, givens and picks made before; nil: every row
	Best     *lang.Expr // the row with the least of this (Most: the most); nil with All: each row tried
	Most     bool
	All      bool
	First    bool // the first row in the table's order
	Missing  Rule // the need that fails when no row is left: id, strength, ground, why, remedy
	At       fault.Place
}

// Define is a named value: an expression, or another name for a row.
type Define struct {
	ID, Says string
	Told     bool // belongs on the page of the best option
	Is       *lang.Expr
	Row      string // name of a row: shaft.material, or a pick
	At       fault.Place
}

// Joint is where a hold takes effect inside a treatment.
type Joint struct {
	Name   string
	Fields map[string]*lang.Expr // inner_size, outer_size, inner_give, ... as the seam lists
	Rows   map[string]string     // inner_material, outer_material: names of rows
	Holds  []string              // ids of the holds it may be given; none: every hold that is not for the fit alone
	At     fault.Place
}

// Aim is what the design should come near, in the order listed.
type Aim struct {
	Least, Most, Middle *lang.Expr
	First               bool       // before the aims of the other files
	Nearest             string     // a list of stock sizes
	Of                  *lang.Expr // what is to be nearest
}

// Step is an operation. Hours is work at the bench, Wait is cure, soak or
// cooling, Costs is what is used up.
//
// Needs may name what another step gives, mate (the other part's finished size,
// when that is made first), joint NAME, joint sizes (in a hold: the two sizes it
// joins), in a lock joint (its hold's steps) and parts (every step of both parts
// and their holds). Gives names
// dimensions, or joint in a hold. The steps of one file keep their order.
type Step struct {
	ID, Says           string
	SaysPieces         []Piece
	Hours, Wait, Costs *lang.Expr // nil: none
	On                 string
	Needs, Gives       []string
	Cautions           []string
	When               *lang.Expr
	Common             bool // only the name of a step of steps.yaml: counted once however many parts name it
	Always             bool // in steps.yaml: every option has it, named or not
	Last               bool // in steps.yaml: after all the steps of the parts, not before them
	At                 fault.Place
}

// Score is one named contribution to a criterion.
type Score struct {
	ID, Criterion, Says string
	Is                  *lang.Expr
	At                  fault.Place
}

// Feature is what a part file does about a kind of neighbour.
type Feature struct {
	Kind, Answer, Why string // Answer: keep clear | restore | accept | ruled out
	At                fault.Place
}

// Mistake is what people do wrong with a treatment, for teaching and the sheet.
type Mistake struct{ Says, Instead string }

// Part is one treatment, hold or purpose file, checked against the seam alone.
type Part struct {
	ID       string
	File     string
	Says     string
	Side     Side
	Metal    Metal
	Finishes string   // "" when nothing is cut
	Bought   bool     // the part is bought new: SIDE.price and SIDE.days are what it stands at
	Static   bool     // a purpose whose finished fit has a hold
	FitOnly  bool     // a hold or lock for the finished fit alone, never for a bush or sleeve
	Carries  []string // of a lock: torque, thrust
	Locks    []string // of a purpose: the locks its finished fit must have one of
	Numbers  []Number
	Needs    []Rule
	Limits   []Rule
	Picks    []Pick
	Choose   []Dimension // in cutting order
	Joints   []Joint
	Defines  []Define
	Aims     []Aim
	Steps    []Step
	Scores   []Score
	Features []Feature
	Mistakes []Mistake
	Cautions []string
	Types    map[string]lang.Type // every private name's type
	names    map[string]private   // filled by Index
	bars     []bar                // likewise
}

// dim is what kind of quantity is chosen: a length, unless its range says
// otherwise (a temperature, a count of pins).
func (d *Dimension) dim() quantity.Dim {
	if d.Low == nil {
		return quantity.LengthDim
	}
	return d.Low.Type.Dim
}
