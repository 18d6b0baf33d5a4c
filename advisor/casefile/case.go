// Package casefile answers: what did the person write down about the worn fit?
// It reads a case (YAML, schema case/1) into a Case and tells every fault of
// the file in one run, with its place and what would be right.
//
// Start with Read. The keys are explained in testdata/cases/README.md. Plain
// keys under parts, fits, duty, shop and wishes are names of the vocabulary
// without their first word, so a new vocabulary entry is a new key; what has
// more shape than one value (material, datums, readings, machines ...) is read
// here.
//
// It works nothing out: readings become a condition in package condition.
package casefile

import (
	"wornfit/calc/quantity"
	"wornfit/calc/rolling"
	"wornfit/rules/fault"
)

// Case is one case file, checked.
type Case struct {
	File, Title string
	Harm        Harm
	Class       string // one of Classes; "" when not said
	Parts       []*Part
	Fits        []*Fit
	Gauges      []*Gauge
	Duty        Givens // duty.load ... by vocabulary name
	Shop        Givens // shop.press_force ...
	Wishes      Givens // wishes.rate ...
	Machines    []Machine
	WorkHolding []string
	Services    []Service
	Stock       []string
	Weights     map[string]float64 // of criteria, as wished
	Made        []Made
	Notes       string
	Inch        bool   // the person speaks inch: more readings are typed in inch than in mm
	Money       string // the currency typed, such as EUR; "" when no price is given
}

// Harm is what happens if the fit slips, seizes or comes apart.
type Harm uint8

const (
	NotSaid Harm = iota // missing or unknown: no option may be ranked
	Nothing
	MachineDamage
	People
)

// HarmQuestion is asked while Harm is NotSaid.
const HarmQuestion = "what happens if this fit slips, seizes or comes apart? write if_it_lets_go: nothing, " +
	"machine damage, or people (a part can fall, fly, trap or burn, or a load, a vehicle, pressure or a person is no longer held)"

var harmWords = []string{"nothing", "machine damage", "people"}

func (h Harm) String() string {
	if h == NotSaid {
		return "not said"
	}
	return harmWords[h-1]
}

// Classes are the words of `class:`. All but the last two bar home work.
var Classes = []string{"lifting", "steering", "brakes", "pressure", "aircraft", "rail", "rides",
	"road-suspension", "guards", "medical", "other", "none"}

// Barred reports whether no size may be given because someone could be hurt,
// and says why in a few words.
func (c *Case) Barred() (because string, barred bool) {
	switch {
	case c.Class != "" && c.Class != "other" && c.Class != "none":
		return "it is a part of the class " + c.Class, true
	case c.Harm == People:
		return "people can be hurt if it lets go", true
	}
	return "", false
}

// Speech prints sizes and prices as the person wrote them.
func (c *Case) Speech() quantity.Speech {
	s := quantity.Speech{Units: quantity.Metric, Money: c.Money}
	if c.Inch {
		s.Units = quantity.Inch
	}
	return s
}

// Part returns a part by its id.
func (c *Case) Part(id string) (*Part, bool) {
	for _, p := range c.Parts {
		if p.ID == id {
			return p, true
		}
	}
	return nil, false
}

// Gauge returns a gauge by its id.
func (c *Case) Gauge(id string) (*Gauge, bool) {
	for _, g := range c.Gauges {
		if g.ID == id {
			return g, true
		}
	}
	return nil, false
}

// Fit returns a fit by its id.
func (c *Case) Fit(id string) (*Fit, bool) {
	for _, f := range c.Fits {
		if f.ID == id {
			return f, true
		}
	}
	return nil, false
}

// Side is which of the two surfaces of a fit is meant. It is the first word of
// the vocabulary's names.
type Side string

const (
	Hub   Side = "hub"
	Shaft Side = "shaft"
)

// Sides are both, hub first.
var Sides = []Side{Hub, Shaft}

// Givens are values by vocabulary name.
type Givens map[string]Value

// Part is one of the parts, stated once however many fits it has.
type Part struct {
	ID, Called    string // Called: the user's own word; the id when not given
	Is            Side
	Number        string   // drawing or part number
	Materials     []string // candidates; none: unknown
	BushMaterials []string // of the bush that is in a hub; none: unknown, or none is in it
	Given         Givens   // hub.outside ... by vocabulary name
	Datums        []Datum
	Near          []Neighbour
	NearStated    bool     // next_to_it is answered, with features or with none
	Kinds         []string // every kind of neighbour the vocabulary knows for this side
	Irreplaceable bool     // if_spoiled: irreplaceable
	Bearing       string   // designation; "" when it is no rolling bearing
	BearingPlay   string   // its clearance group, such as CN or C3
	Sealed        Value
	At            fault.Place

	rolls *rolling.Bearing
}

// Rolling is the rolling bearing whose ring the part is.
func (p *Part) Rolling() (rolling.Bearing, bool) {
	if p == nil || p.rolls == nil {
		return rolling.Bearing{}, false
	}
	return *p.rolls, true
}

// Datum is an axis the part can be set up on.
type Datum struct {
	ID       string
	Given    map[string]Value // by column of the vocabulary's table datums: offset, set_up, true_axis
	RunOut   Value            // full indicator reading, when given in place of offset
	Straight bool             // as it will run after straightening
	At       fault.Place
}

// Neighbour is a feature next to the fit.
type Neighbour struct {
	Kind           string // keyway, oil-hole ...
	Distance, Size Value
	At             fault.Place
}

// Gauge is a gauge the readings were taken with, or that is at hand.
type Gauge struct {
	ID, Called string
	Kind       string // inside, outside, shake or depth; "" when not said
	Round      bool   // three-point, ring, vee or blue: it sees odd lobes
	Within     Value  // U, k = 2, in m
	Repeats    Value  // the part of Within that differs from reading to reading; not given: unknown
	Takes      Value  // smallest to largest size it reads
	ZeroedOn   string
	At         fault.Place
}

// Machine is a machine of the shop, a row of the vocabulary's table machines.
type Machine struct {
	ID, Called string
	Class      string           // a row of the rule base's machines, for what the case does not say
	Given      map[string]Value // by column: turns, bores, tolerance, swing ...
	Rate       Value            // money per hour
	At         fault.Place
}

// Service is work that can be sent out, a row of the table machines as well.
type Service struct {
	ID, Called string
	Does       []string
	Given      map[string]Value // by column: grinds, tolerance, price, days ...
	At         fault.Place
}

// Made is a size that came off the machine.
type Made struct {
	Fit       string
	Surface   Side
	Dimension string // hub_bore ...
	Sizes     []Value
	With      string
	At        fault.Place
}
