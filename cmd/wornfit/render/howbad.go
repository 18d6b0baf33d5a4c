package render

import (
	"math"
	"strconv"
	"strings"

	"wornfit/advisor/answer"
)

// limitsOf names the section that says what the fit should be; it stands under
// How bad it is.
const limitsOf = "how bad"

// howBad says how the fit stands to its limit, and what leaving it as it is
// would come to.
func (p *Page) howBad(a *answer.Answer, v Voice) {
	left := asItIs(a)
	var sec answer.Section
	for _, s := range a.Condition {
		if s.Name == limitsOf {
			sec = s
		}
	}
	if left == nil && len(sec.Lines) == 0 {
		return
	}
	p.Head("How bad it is")
	if text := v.standing(sec); text != "" {
		p.Para(indent, text)
	}
	if left != nil {
		if text := asItIsSays(left, a.Case.Purpose+"-act"); text != "" {
			p.Para(indent, text)
		}
	}
	bare := answer.Section{}
	for _, l := range sec.Lines {
		if atLimit[l.Name] {
			bare.Lines = append(bare.Lines, l)
		}
	}
	p.section(bare, v, false)
}

// atLimit are the clearances by which a fit is judged.
var atLimit = map[string]bool{"least_new": true, "most_new": true, "act_at": true}

// asItIsSays tells the first must that leaving it breaks; the limit at which to
// act, by its rule told, is said already.
func asItIsSays(left *answer.Option, told string) string {
	already := false
	for _, r := range left.Reasons {
		switch {
		case !broken(r) || r.Strength != "must":
		case r.Rule == told:
			already = true
		default:
			return "Left as it is: " + strings.TrimSuffix(r.Text, ".") + "."
		}
	}
	if already {
		return ""
	}
	return "Left as it is, no rule that must be kept is surely broken: " + verdict(left.Verdict, left.Kind) + "."
}

// standing is how the fit stands to its limit, in one sentence.
func (v Voice) standing(sec answer.Section) string {
	l := map[string]answer.Line{}
	for _, one := range sec.Lines {
		l[one.Name] = one
	}
	where, ok := map[string]string{"past": "It is past its limit", "near": "It is near its limit", "within": "It is within its limit"}[l["standing"].Words]
	if !ok {
		return ""
	}
	text := where + ": at the loosest it stands " + v.figure(l["loosest_now"]) + ", and it wants repair at " + v.figure(l["act_at"])
	left, ok := l["time_left"]
	if !ok {
		return text + "."
	}
	text += "; at the rate it wore so far it may run about " + runHours(left.Value) + " yet"
	if least := runHours(l["time_left_least"].Value); least != runHours(left.Value) {
		text += ", " + least + " at the least"
	}
	return text + "."
}

// runHours says a running time to two digits: years of the calendar would mislead.
func runHours(s float64) string {
	h := s / 3600
	if h < 1 {
		return "an hour"
	}
	step := math.Pow10(int(math.Floor(math.Log10(h))) - 1)
	return strconv.FormatFloat(math.Max(math.Floor(h/step+1e-9)*step, 1), 'f', 0, 64) + " h"
}

// asItIs is the option that does nothing to either part.
func asItIs(a *answer.Answer) *answer.Option {
	for i := range a.Options {
		o := &a.Options[i]
		if fit := o.Holds["fit"]; uncut(o) && (fit == "" || fit == "press") {
			return o
		}
	}
	return nil
}
