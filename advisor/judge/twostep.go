package judge

import (
	"fmt"
	"slices"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
	"wornfit/rules/link"
)

// outOfService is the criterion that time rules by; stopped what standing costs.
const (
	outOfService = "out-of-service"
	stopped      = "wishes.stopped_cost"
)

// leastGain is how many points the proper repair must be ahead, were there time,
// to be worth doing later. Common practice, no source.
const leastGain = 3

// leastLonger is how much longer it must last than what gets it going now.
// Common practice, no source.
const leastLonger = 1.5

// TwoSteps is what to do when time rules: what gets the machine going now, and
// what is the better repair when there is time. nil: one repair is both.
func (b *Bench) TwoSteps(list []*Judged) *answer.TwoSteps {
	var working []*Judged
	for _, j := range list {
		if j.worked() {
			working = append(working, j)
		}
	}
	if len(working) < 2 {
		return nil
	}
	best := working[0]
	if limit, set := b.deadline(); set && b.away(best) > limit {
		return b.inTime(best, working, limit)
	}
	proper, ahead := best, b.unhurried(best)
	for _, j := range working[1:] {
		if p := b.unhurried(j); p > ahead && outlasts(j, best) {
			proper, ahead = j, p
		}
	}
	if proper == best || ahead < b.unhurried(best)+leastGain || b.away(proper) <= b.away(best) {
		return nil
	}
	return b.steps(best, proper, "")
}

// outlasts reports whether a repair lasts enough longer than another, as far as
// both are known: else doing it twice gains nothing.
func outlasts(j, now *Judged) bool {
	a, b := j.Mark.Scores["life"], now.Mark.Scores["life"]
	return !(a.Value > 0 && b.Value > 0) || a.Value >= leastLonger*b.Value
}

// inTime finds what is back in service before the deadline when the best is not.
func (b *Bench) inTime(best *Judged, working []*Judged, limit float64) *answer.TwoSteps {
	at := slices.IndexFunc(working, func(j *Judged) bool { return b.away(j) <= limit })
	if at < 0 {
		quick := slices.MinFunc(working, func(x, y *Judged) int {
			switch d := b.away(x) - b.away(y); {
			case d < 0:
				return -1
			case d > 0:
				return 1
			}
			return 0
		})
		return &answer.TwoSteps{Text: fmt.Sprintf("Nothing that works is done within %s; the quickest is %s, %s.",
			quantity.Span(limit), quick.Name(), quantity.Span(b.away(quick)))}
	}
	now := working[at]
	if !outlasts(best, now) {
		return &answer.TwoSteps{Now: &now.Combination.ID, Text: fmt.Sprintf("It must be back within %s: %s is the best that is, in %s%s.",
			quantity.Span(limit), both(now), quantity.Span(b.away(now)), b.lasts(now))}
	}
	return b.steps(now, best, fmt.Sprintf("It must be back within %s. ", quantity.Span(limit)))
}

func (b *Bench) steps(now, then *Judged, before string) *answer.TwoSteps {
	text := fmt.Sprintf("%sNow: %s gets it going in %s%s. Properly, when there is time: %s, %s%s.", before,
		both(now), quantity.Span(b.away(now)), b.lasts(now), both(then), quantity.Span(b.away(then)), b.lasts(then))
	return &answer.TwoSteps{Now: &now.Combination.ID, Then: &then.Combination.ID, Text: text}
}

func both(j *Judged) string {
	if j.trade == nil {
		return j.Combination.ID
	}
	return j.trade.ID + " (" + j.Combination.ID + ")"
}

// lasts says how long a repair is good for, when that is known.
func (b *Bench) lasts(j *Judged) string {
	v, ok := j.Mark.Scores["life"]
	if !ok || !(v.Value > 0) {
		return ""
	}
	return " and should last " + quantity.Span(v.Value)
}

// away is how long an option is out of service, s.
func (b *Bench) away(j *Judged) float64 { return j.Mark.Scores[outOfService].Value }

// deadline is when it must be back, if the case says so.
func (b *Bench) deadline() (limit float64, set bool) {
	k, ok := b.Given.Value("wishes.deadline")
	return k.Best, ok && k.Says == "stated"
}

// unhurried is what an option would earn if standing still cost nothing and no
// hour counted but those at the bench.
func (b *Bench) unhurried(j *Judged) float64 {
	m := *j
	m.Found.Reg = slices.Clone(j.Found.Reg)
	if slot, ok := j.Option.Slot(stopped); ok && slot.Kind == link.GivenSlot {
		m.Found.Reg[slot.Node] = 0
	}
	j.Option.Program.Run(m.Found.Reg)
	calm := *b
	calm.Weights = map[string]float64{}
	for id, w := range b.Weights {
		if id != outOfService {
			calm.Weights[id] = w
		}
	}
	return calm.mark(&m)
}
