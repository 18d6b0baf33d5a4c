package advisor

import (
	"strings"

	"wornfit/advisor/answer"
	"wornfit/advisor/condition"
	"wornfit/calc/quantity"
)

// nearShare is the share of what a fit may wear that, when no more is left, makes
// it near its limit. Common practice, no source.
const nearShare = 0.25

// limits are the three clearances by which a purpose says how a fit should be;
// below 0 it is tight.
type limits struct {
	mostNew, act float64
	lines        []answer.Line
}

// howBad says at what clearance the fit wants repair and what a good one has,
// which are the purpose's own numbers, and how the fit stands to them now. A
// purpose that does not define the three has no such section.
func howBad(options []answer.Option, c *condition.Condition) []answer.Section {
	l, ok := limitsOf(options)
	if !ok {
		return nil
	}
	lines := l.standing(c)
	return []answer.Section{{Name: "how bad", Lines: append(lines, l.lines...)}}
}

// limitsOf reads the purpose's numbers off the first option that tells all three.
func limitsOf(options []answer.Option) (limits, bool) {
	for i := range options {
		var l limits
		for _, v := range options[i].Values {
			switch strings.TrimPrefix(v.Name, "purpose/"+options[i].Purpose+".") {
			case "least_new":
			case "most_new":
				l.mostNew = v.Value
			case "act_at":
				l.act = v.Value
			default:
				continue
			}
			l.lines = append(l.lines, answer.Line{Name: v.Name[strings.LastIndex(v.Name, ".")+1:], Says: v.Says, Value: v.Value, Unit: v.Unit, Dim: v.Dim})
		}
		if len(l.lines) == 3 {
			return l, true
		}
	}
	return limits{}, false
}

// standing says whether the fit, where it is loosest, is past its limit, near
// it or within it; within, how long it may run on at the rate it wore so far.
func (l limits) standing(c *condition.Condition) []answer.Line {
	now := c.Clearance.Most
	if !now.Is {
		return nil
	}
	word := "near"
	switch left := l.act - now.Range.Hi; {
	case now.Range.Lo > l.act:
		word = "past"
	case left > nearShare*max(l.act-l.mostNew, 0):
		word = "within"
	}
	out := []answer.Line{{Name: "standing", Says: "to its limit it is", Words: word},
		{Name: "loosest_now", Says: "clearance now, at the most", Value: now.Best, U: now.Doubt(), Unit: "m", Dim: quantity.LengthDim, Fine: now.U}}
	if rate := c.WearRate; word == "within" && rate.Is && rate.Best > 0 && rate.Range.Hi > 0 {
		out = append(out, answer.Line{Name: "time_left", Says: "running time left at the rate it wore so far", Value: (l.act - now.Best) / rate.Best, Unit: "s", Dim: quantity.TimeDim},
			answer.Line{Name: "time_left_least", Says: "running time left at the least", Value: (l.act - now.Range.Hi) / rate.Range.Hi, Unit: "s", Dim: quantity.TimeDim})
	}
	return out
}
