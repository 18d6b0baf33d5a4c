// Package judge takes one option from its parts to its verdict: linked, its
// picks made, solved, scored, worded.
//
// Start with Bench.Judge for the quick look every option gets and Bench.Finish
// for the full one. The ordering rules are package rank's, the words why's.
package judge

import (
	"math"
	"slices"
	"sort"
	"strings"
	"sync"

	"wornfit/advisor/answer"
	"wornfit/advisor/given"
	"wornfit/advisor/rank"
	"wornfit/advisor/solve"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// mostSets is how many sets of picks of one option are solved.
const mostSets = 64

// Bench is what all options of a fit are judged with.
type Bench struct {
	Base    *rules.Base
	Given   *given.Source
	Speech  quantity.Speech
	Weights rank.Weights
	Called  map[string]string
	Near    map[link.Side][]string
	Made    []Made
	Asked   []string     // ids and trade names that are to be told in full
	Solver  solve.Solver // nil: the search of package solve

	parts     map[*link.Part]verdictAlone // filled by Alone; nil: not looked at
	unsettled link.Unsettled              // what Alone could not judge
	sketches  *sync.Map                   // by id: the *sketch of what Rough left open, until it is judged
}

// Judged is an option as far as it has been worked out.
type Judged struct {
	Combination link.Combination
	Option      *link.Option
	Set         link.PickSet
	Model       solve.Model
	Found       solve.Answer
	Mark        rank.Mark
	Verdict     string
	Kind        string
	Cut         bool    // not every set of picks was tried
	most        float64 // points it may earn, as far as a glance tells
	trade       *rules.TradeName
	bench       *Bench
}

// Name is the trade name, or the id where there is none.
func (j *Judged) Name() string {
	if j.trade != nil {
		return j.trade.ID
	}
	return j.Combination.ID
}

// Open reports whether the option is not ruled out.
func (j *Judged) Open() bool { return j.Verdict != answer.RuledOut }

// Judge judges a combination as it stands, and where a hold does not surely carry
// what must pass through it, with each lock that could: the best is kept.
func (b *Bench) Judge(c link.Combination) (*Judged, error) {
	best, err := b.judge(c, false)
	if err != nil || best.Option == nil {
		return best, err
	}
	for _, joint := range best.slipping() {
		for _, with := range c.Locked(&b.Base.Input, joint) {
			j, err := b.judge(with, true)
			if err != nil {
				return nil, err
			}
			if j.Open() && !j.Unfound() && (better(j, best) || best.Unfound()) { // a lock that helps nothing is not told of
				best = j
			}
		}
	}
	return best, nil
}

// slipping are the joints whose hold does not surely carry what a lock could.
func (j *Judged) slipping() []string {
	var out []string
	for i := range j.Option.Checks {
		c := &j.Option.Checks[i]
		if c.Carried == "" || slices.Contains(out, c.Joint) {
			continue
		}
		unsure := i < len(j.Found.States) && j.Found.States[i].Holds != solve.Yes
		if slices.Contains(j.Found.Broken, i) || j.Verdict == answer.CantTell && unsure {
			out = append(out, c.Joint)
		}
	}
	return out
}

// judge links a combination, looks at every set of picks and keeps the best.
// A set is solved only while it may still beat the best found: the glance tells
// the most it can earn. When it is wanted only if it is open, what is ruled out
// is not worked out.
func (b *Bench) judge(c link.Combination, ifOpen bool) (*Judged, error) {
	s, out, err := b.open(c)
	if out != nil || err != nil {
		return out, err
	}
	trade := b.Base.NameOf(c)
	defer s.shared.Rest()
	if ifOpen && s.out {
		return &Judged{Combination: c, Option: s.option, Verdict: answer.RuledOut}, nil
	}
	var list []*Judged
	for _, set := range s.sets {
		j := &Judged{Combination: c, Option: s.option, Set: set, Cut: s.cut, trade: trade, bench: b}
		j.Model = b.model(s.option, s.known, set)
		j.Model.Shared, j.Model.Box = s.shared, s.box
		b.glance(j)
		list = append(list, j)
		if j.whateverPicked() {
			break
		}
	}
	sort.SliceStable(list, func(i, k int) bool { return list[i].before(list[k]) })
	if ifOpen && !list[0].Open() {
		return list[0], nil
	}
	var best *Judged
	for i, j := range list {
		if best != nil {
			if b.enough(best, j, i) {
				break
			}
			b.against(j, best)
		}
		b.solve(j, solve.Quick)
		if best == nil || !j.Found.Passed && (better(j, best) || best.Unfound()) {
			best = j
		}
	}
	return best, nil
}

// Unfound reports whether the search ended with neither a design nor a proof.
func (j *Judged) Unfound() bool { return j.Found.Works == solve.NotProved }

// mostRuled is how many sets are worked out to word an option that is ruled out.
const mostRuled = 3

// glance throws a set out if facts or contraction do, else tells the most it may earn.
func (b *Bench) glance(j *Judged) {
	j.Model.Marks = j.Model.Marks[:0]
	for _, c := range b.Base.Input.Criteria {
		j.Model.Marks = append(j.Model.Marks, j.Option.Criteria[c.ID])
	}
	b.solve(j, solve.Glance)
	j.most = b.mostOf(j)
}

// against tells the search what it must beat, and where the best was found.
func (b *Bench) against(j, best *Judged) {
	if !best.Open() {
		return
	}
	spare := int(math.Floor((j.most - best.Mark.Points) / b.Base.OffShould))
	j.Model.Beat = &solve.Beat{Works: spare, Depends: -1}
	switch {
	case best.Verdict != answer.CantTell:
		j.Model.Near = best.Found.Design
	case best.Found.Works == solve.Depends: // of those that depend, the one that may earn most stands
		j.Model.Beat.Works = math.MaxInt32
	default:
		j.Model.Beat = &solve.Beat{Works: math.MaxInt32, Depends: math.MaxInt32}
	}
}

// whateverPicked reports whether a need that hangs on no pick rules the option out.
func (j *Judged) whateverPicked() bool {
	for _, i := range j.Found.Broken {
		c := &j.Option.Checks[i]
		if c.Need && !j.picked(c.Margin) && (c.When == 0 || !j.picked(c.When)) {
			return true
		}
	}
	return false
}

// picked reports whether a node rests on a picked row.
func (j *Judged) picked(n tape.Node) bool {
	for _, at := range j.Option.Program.Uses(n) {
		if slices.ContainsFunc(j.Option.Slots, func(s link.Slot) bool { return s.Node == at && s.Kind == link.PickSlot }) {
			return true
		}
	}
	return false
}

// before puts what a glance left open first, by the most it may earn.
func (j *Judged) before(k *Judged) bool {
	if j.Open() != k.Open() {
		return j.Open()
	}
	if !j.Open() {
		return better(j, k)
	}
	return j.most > k.most
}

// enough reports whether the ith set, and so all after it, need not be solved.
func (b *Bench) enough(best, j *Judged, i int) bool {
	if j.Open() {
		told := best.Verdict != answer.CantTell || best.Found.Works == solve.Depends && j.mustHangs()
		return best.Open() && told && best.Mark.Points >= j.most
	}
	return best.Open() || i >= mostRuled
}

// Finish works an option out in full, windows and all, with the large budget if
// it is wanted. What the quick look found to work is not lost: where the large
// budget climbs astray, the quick look's own way is gone again.
func (b *Bench) Finish(j *Judged, large bool) error {
	near, beat, worked, quick := j.Model.Near, j.Model.Beat, j.Found.Works == solve.Yes, *j
	j.Model.Near, j.Model.Beat = j.Found.Design, nil
	budget := solve.Again
	if large {
		budget = solve.Thorough
	}
	if b.solve(j, budget); worked && j.Found.Works != solve.Yes {
		j.Model.Near, j.Model.Beat = near, beat
		b.solve(j, solve.Again)
	}
	if worked && j.Found.Works != solve.Yes {
		*j = quick
	}
	j.Model.Shared.Rest()
	return nil
}

func (b *Bench) solve(j *Judged, budget solve.Budget) {
	s := b.Solver
	if s == nil {
		s = solve.Search{}
	}
	j.Found = s.Design(j.Model, budget)
	j.Verdict, j.Kind = rank.Verdict(j.Option, &j.Found)
	j.Mark = rank.Score(j.Option, b.Base.Input.Criteria, b.Weights, &j.Found, b.Base.OffShould)
	if j.Cut && j.Verdict == answer.RuledOut {
		j.Verdict, j.Kind = answer.CantTell, ""
	}
	b.noRow(j)
}

// noRow rules an option out when a pick has no row: no machine turns it.
func (b *Bench) noRow(j *Judged) {
	for _, c := range j.Set.Failed {
		if c.Strength != link.Must || b.unstated(j, c) {
			continue
		}
		kind := rank.Kind(c.Ground)
		if j.Verdict != answer.RuledOut || kind == answer.Never {
			j.Verdict, j.Kind = answer.RuledOut, kind
		}
	}
}

// unstated reports whether a pick found no row because the case states none of
// what it picks from: left out is not known, and not none. Axes are left out so.
func (b *Bench) unstated(j *Judged, c *link.Check) bool {
	for i := range j.Option.Picks {
		p := &j.Option.Picks[i]
		if p.Failed.FullID == c.FullID {
			return strings.HasSuffix(p.From, ".datums") && len(b.Given.Rows(p.From)) == 0
		}
	}
	return false
}

// model lays the picks over what is known; widths and gauges come from them.
func (b *Bench) model(o *link.Option, known []link.Known, set link.PickSet) solve.Model {
	m := solve.Model{Option: o, Known: known, Picked: make([]link.Known, len(o.PickSlots)), Width: map[string]float64{}, Gauge: map[string]float64{}}
	for at, i := range o.PickSlots {
		s := &o.Slots[i]
		k, ok := set.Column(s.Pick, s.Column)
		switch {
		case !ok:
			k = b.Given.Whole(s)
		case k.Is: // scatter of a listed value is for the ranking's draws, not held against the option
			k.Value = interval.Point(k.Best)
		}
		m.Picked[at] = k
	}
	for _, d := range o.Dims {
		m.Width[d.ID] = 50e-6 // a machine that states none: a careful turner with a caliper
		if k, ok := set.Column(d.By, "tolerance"); ok && k.Is {
			m.Width[d.ID] = k.Value.Hi
		}
		name := "shop.gauge_outside"
		if d.Inside {
			name = "shop.gauge_inside"
		}
		if k, ok := b.Given.Value(name); ok {
			m.Gauge[d.ID] = k.Value.Hi
		}
	}
	b.hold(&m)
	return m
}

func better(a, b *Judged) bool {
	return rank.Better(a.short(), b.short(), a.broken(), b.broken())
}

func (j *Judged) short() *answer.Option {
	return &answer.Option{ID: j.Combination.ID, Verdict: j.Verdict, Kind: j.Kind, Points: j.Mark.Points}
}

func (j *Judged) broken() int { return len(j.Found.Broken) + len(j.Set.Failed) }

// Sort puts options in order of rank.
func Sort(list []*Judged) {
	sort.SliceStable(list, func(i, k int) bool { return better(list[i], list[k]) })
}

// Options are the options worded, numbered in the order they stand.
func Options(list []*Judged) ([]answer.Option, error) {
	out, err := Each(list, func(j *Judged) (answer.Option, error) {
		if err := j.dress(); err != nil {
			return answer.Option{}, err
		}
		return j.word(), nil
	})
	for i := range out {
		out[i].Rank = i + 1
	}
	return out, err
}

// Criteria tells how scores are weighed.
func (b *Bench) Criteria() []answer.Criterion {
	sum := 0.0
	for _, c := range b.Base.Input.Criteria {
		sum += b.Weights[c.ID]
	}
	var out []answer.Criterion
	for _, c := range b.Base.Input.Criteria {
		out = append(out, answer.Criterion{ID: c.ID, Says: c.Says, Weight: b.Weights[c.ID] / max(sum, 1e-9)})
	}
	return out
}

func (b *Bench) mark(j *Judged) float64 {
	return rank.Score(j.Option, b.Base.Input.Criteria, b.Weights, &j.Found, b.Base.OffShould).Points
}
