// Package answer is what the advisor found, as data: what `--json` prints and
// what every table is drawn from. It decides nothing and words nothing.
//
// Start with Answer. Sizes and all other numbers are SI; sentences are already
// in the units the user speaks.
package answer

import "wornfit/calc/quantity"

// Version is the schema_version of the JSON.
const Version = 1

// Answer is the answer to one fit of a case.
type Answer struct {
	SchemaVersion int         `json:"schema_version"`
	Case          Case        `json:"case"`
	Knowledge     Knowledge   `json:"knowledge"`
	Stop          *Stop       `json:"stop,omitempty"` // no option is ranked, and why
	Condition     []Section   `json:"condition"`
	Diagnosis     []Finding   `json:"diagnosis"`
	Look          []Missing   `json:"look"`    // what to look at when no pattern of wear surely fits, the most telling first
	Options       []Option    `json:"options"` // worked out: all when all were asked for
	IDs           []string    `json:"-"`       // of every option there is
	Methods       []Method    `json:"methods"`
	Buying        []Buying    `json:"buying"`
	TwoSteps      *TwoSteps   `json:"two_steps"`
	Criteria      []Criterion `json:"criteria"`
	Notes         []string    `json:"notes"`
}

// Case names the case and the fit the answer is to.
type Case struct {
	File    string `json:"file"`
	Title   string `json:"title"`
	Fit     string `json:"fit"`
	Purpose string `json:"purpose"`
	Shaft   string `json:"shaft"` // as the user calls it
	Hub     string `json:"hub"`
	Money   string `json:"money"`
}

// Knowledge says which rule base answered.
type Knowledge struct {
	Version string   `json:"version"`
	Hash    string   `json:"hash"`
	Layers  []string `json:"layers"`
}

// Stop is why no option is ranked and no size printed.
type Stop struct {
	Kind    string   `json:"kind"` // safety | question | readings
	Because string   `json:"because"`
	Do      []string `json:"do"`
}

// Section is a block of the condition: the shaft, the hub, the fit.
type Section struct {
	Name  string `json:"name"`
	Lines []Line `json:"lines"`
}

// Line is one figure of the condition. U is the doubt either way; Words stand
// in place of a number where there is none.
type Line struct {
	Name  string       `json:"name"`
	Says  string       `json:"says"`
	Value float64      `json:"value"`
	U     float64      `json:"u"`
	Dim   quantity.Dim `json:"-"`
	Unit  string       `json:"unit"`
	Words string       `json:"words,omitempty"`
	Fine  float64      `json:"-"` // the doubt that says how many digits are earned
}

// Finding is a pattern of wear: what is seen, what most likely did it, what to
// put right first and which repair suits.
type Finding struct {
	Rule   string `json:"rule"`
	Says   string `json:"says"`
	Cause  string `json:"cause"`
	Cure   string `json:"cure"`
	Repair string `json:"repair"`
	Again  string `json:"again"` // how a repair that ignores it fails; "" it does not
	Source string `json:"source"`
	Grade  string `json:"grade"`
}

// Option is one option judged.
type Option struct {
	ID         string            `json:"id"`
	Name       *string           `json:"name"` // trade name, or null
	Says       string            `json:"says"`
	Shaft      string            `json:"shaft"`
	Hub        string            `json:"hub"`
	Purpose    string            `json:"-"`
	Holds      map[string]string `json:"holds"`
	Locks      map[string]string `json:"locks"`
	Picks      map[string]string `json:"picks"`
	DoneBy     string            `json:"done_by"`
	Care       []string          `json:"care"` // what wants care beside the rules: sizes held close, coarse gauges, numbers not sure
	Verdict    string            `json:"verdict"`
	Kind       string            `json:"kind"`
	Rank       int               `json:"rank"`
	Points     float64           `json:"points"`
	Broken     float64           `json:"points_off"` // taken off for shoulds that are broken
	Scores     map[string]Score  `json:"scores"`
	FirstShare *float64          `json:"first_share"`
	Dimensions []Dimension       `json:"dimensions"`
	Values     []Value           `json:"values"`
	Reasons    []Reason          `json:"reasons"`
	Conflict   []string          `json:"conflict"`
	Changes    []string          `json:"changes"`
	Missing    []Missing         `json:"missing"`
	Steps      []Step            `json:"steps"`
	Mistakes   []Mistake         `json:"mistakes"`
	Neighbours []string          `json:"neighbours"`
}

// Verdicts, best first.
const (
	Works    = "works"
	WithCare = "works with care"
	CantTell = "can't tell"
	RuledOut = "ruled out"
)

// Kinds of ruled out.
const (
	Never     = "never"
	NotHere   = "not in this shop"
	NotWished = "not as you wished"
)

// Score is one criterion of an option: its number, the points its curve gives
// that number (of 100), and what it is made of.
type Score struct {
	Value  float64      `json:"value"`
	Unit   string       `json:"unit"`
	Points float64      `json:"points"`
	Parts  []Part       `json:"parts"`
	Dim    quantity.Dim `json:"-"`
}

// Part is a named contribution to a score.
type Part struct {
	Says  string       `json:"says"`
	Value float64      `json:"value"`
	Unit  string       `json:"unit"`
	Dim   quantity.Dim `json:"-"`
}

// Criterion is how a score is counted.
type Criterion struct {
	ID     string  `json:"id"`
	Says   string  `json:"says"`
	Weight float64 `json:"weight"` // of all weights
}

// Dimension is a size: its slice window, the rules that stop it, the target and
// the limits to cut to. Sizes are diameters, in metres.
type Dimension struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	Part   string  `json:"part"`
	On     string  `json:"on"`
	Suits  string  `json:"suits"`
	Low    Edge    `json:"low"`
	High   Edge    `json:"high"`
	Target float64 `json:"target"`
	Lower  float64 `json:"lower"`
	Upper  float64 `json:"upper"`
	Gauge  float64 `json:"gauge"`   // uncertainty of gauging it
	Holds  float64 `json:"machine"` // full width its machine holds
	Made   bool    `json:"made"`
}

// Edge is one end of a window: the safe value, and beyond which nothing is
// (null until it is proved).
type Edge struct {
	Value float64            `json:"value"`
	Outer *float64           `json:"outer"`
	Gap   *float64           `json:"gap"`
	By    []string           `json:"by"`
	Slope map[string]float64 `json:"slope"`
}

// Value is a worked value of the design: the wall, the interference, the force.
type Value struct {
	Name    string       `json:"name"`
	Says    string       `json:"says"`
	Joint   string       `json:"joint"` // of a hold's: the joint it is on
	Told    bool         `json:"told"`  // one a fitter wants on the first page
	Value   float64      `json:"value"`
	Unit    string       `json:"unit"`
	Formula string       `json:"formula"`
	Dim     quantity.Dim `json:"-"`
}

// Reason is a need or a limit with what it came to.
type Reason struct {
	Rule     string       `json:"rule"`
	What     string       `json:"what"` // need | limit
	Strength string       `json:"strength"`
	Ground   string       `json:"ground"`
	Holds    *bool        `json:"holds"`
	Margin   *float64     `json:"margin"`
	Unit     string       `json:"unit"`
	Text     string       `json:"text"`
	Remedy   string       `json:"remedy"`
	Source   string       `json:"source"`
	Grade    string       `json:"grade"`
	Proved   bool         `json:"proved"`
	After    bool         `json:"after"` // looked at for these sizes only: searched, not proved
	Weak     []string     `json:"weak,omitempty"`
	Dim      quantity.Dim `json:"-"`
	Blocks   bool         `json:"blocks"` // one of the rules in the way
}

// Missing is a reading or fact that would settle a verdict.
type Missing struct {
	Name string `json:"name"`
	Ask  string `json:"ask"`
	With string `json:"with"`
}

// Step is an operation of the job.
type Step struct {
	ID       string   `json:"id"`
	Says     string   `json:"says"`
	On       string   `json:"on"`
	Hours    float64  `json:"hours"`
	Wait     float64  `json:"wait"`
	Costs    float64  `json:"costs"`
	SentOut  bool     `json:"sent_out"` // a firm does it: on names it
	Cautions []string `json:"cautions"` // told before the act
}

// Mistake is what people do wrong with this option.
type Mistake struct {
	Says    string `json:"says"`
	Instead string `json:"instead"`
}

// Method is a trade name: its best option and verdict.
type Method struct {
	Name    string  `json:"name"`
	Says    string  `json:"says"`
	Verdict string  `json:"verdict"`
	Kind    string  `json:"kind"`
	Best    *string `json:"best"`
	Rank    int     `json:"rank"`
	Points  float64 `json:"points"`
	Others  int     `json:"others"`
	Why     string  `json:"why"`
}

// TwoSteps is what gets the machine going now and what is better done when there
// is time.
type TwoSteps struct {
	Now  *string `json:"now"` // ids of options; null: nothing is in time
	Then *string `json:"then"`
	Text string  `json:"text"`
}

// Buying is the price at which a bought part wins over the best option that
// does not buy it: one for the hub, one for the shaft.
type Buying struct {
	Part  string   `json:"part"`  // hub or shaft
	Price *float64 `json:"price"` // null: at no price
	Now   *float64 `json:"now"`   // the price stated, null when none is
	Text  string   `json:"text"`
}
