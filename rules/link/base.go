package link

import (
	"wornfit/calc/basis"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
)

// Input is what linking needs besides the parts joined: filled once by package
// rules, never changed by a link.
type Input struct {
	Parts []*Part // every treatment, hold and purpose, in the order of the files

	// Given is every name of the vocabulary, and the words option.shaft,
	// option.hub, option.purpose, and for each joint option.JOINT (option.fit,
	// option.bush) with the hold's id, or none where there is no such joint.
	// The closed lists must be the very ones the expressions were checked with.
	Given map[string]lang.Type

	// Tables is the columns of each table by the table's own name: shop.machines
	// and hub.datums are rows of machines and datums.
	Tables map[string][]Column

	Seam     Seam
	Common   *Part // steps.yaml: its numbers, defines and steps; nil: none
	Scoring  *Part // criteria.yaml: its numbers and defines; nil: none
	Criteria []Criterion

	asks *asks // filled as options are linked; nil: not kept

	// Trace makes a link list every expression lowered with the nodes of its
	// names, for the tests that hold the program to the referee.
	Trace bool
}

// Column is a column of a table.
type Column struct {
	Name string
	Type lang.Type
}

// Seam is what may cross between the parts of an option: names and their types.
type Seam struct {
	Shaft, Hub, Hold, Purpose []SeamName // what every file of the kind defines
	Joint                     []SeamName // what a hold may see of the joint it is on
}

// SeamName is one name that crosses.
type SeamName struct {
	Name string
	Type lang.Type
	At   fault.Place
}

// Join says how the contributions of an option's parts make one number.
type Join uint8

const (
	Sum   Join = iota
	Risk       // of chances: 1 less the product of what each leaves
	Least      // the smallest of them
	Most       // the largest of them
)

// Criterion is one way in which options are better or worse. Its Is may name
// total.hours, total.wait, total.costs (sums over the steps), joined.CRITERION
// (the contributions of the parts to any criterion, joined as that one says),
// the seam's names and the vocabulary.
type Criterion struct {
	ID, Says string
	Join     Join
	None     float64    // what no contribution at all stands for
	Is       *lang.Expr // nil: joined.ID as it stands
	Dim      quantity.Dim
	Less     bool // less of it is better
	Curve    []CurvePoint
	Weight   float64 // unless the case wishes otherwise
	From     string
	Grade    basis.Grade
	At       fault.Place
}

// CurvePoint is one corner of a criterion's curve: a number in SI and what it
// earns, of 100. The curve is straight between corners and level beyond.
type CurvePoint struct{ At, Points float64 }

// column returns a column of the table a pick or a row stands in.
func (in *Input) column(table, name string) (Column, bool) {
	for _, c := range in.Tables[table] {
		if c.Name == name {
			return c, true
		}
	}
	return Column{}, false
}

func (in *Input) columnNames(table string) []string {
	var names []string
	for _, c := range in.Tables[table] {
		names = append(names, c.Name)
	}
	return names
}
