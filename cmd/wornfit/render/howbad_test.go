package render

import (
	"testing"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// badly is the fixture with how its fit stands to its limit, mm and h.
func badly(word string, now, least, most, act, left, leftLeast float64) *answer.Answer {
	a := fixture()
	size := func(name, says string, mm, u float64) answer.Line {
		return answer.Line{Name: name, Says: says, Value: mm / 1000, U: u / 1000, Dim: quantity.LengthDim}
	}
	sec := answer.Section{Name: "how bad", Lines: []answer.Line{{Name: "standing", Words: word}, size("loosest_now", "now", now, 0.005)}}
	if left > 0 {
		sec.Lines = append(sec.Lines, answer.Line{Name: "time_left", Value: left * 3600, Dim: quantity.TimeDim},
			answer.Line{Name: "time_left_least", Value: leftLeast * 3600, Dim: quantity.TimeDim})
	}
	sec.Lines = append(sec.Lines, size("least_new", "a good fit at its tightest", least, 0), size("most_new", "a good fit at its loosest", most, 0), size("act_at", "it wants repair at", act, 0))
	a.Condition = append(a.Condition, sec)
	return a
}

func TestHowBadInOneSentence(t *testing.T) {
	mm := Voice{quantity.Speech{Units: quantity.Metric}}
	for _, c := range []struct {
		a    *answer.Answer
		want []string
	}{
		{badly("past", 0.063, -0.059, -0.018, 0, 0, 0), []string{"It is past its limit: at the loosest it stands 0.063 ±0.005 mm free, and it wants repair at line to line.",
			"a good fit at its tightest 0.059 mm tight", "it wants repair at line to line"}},
		{badly("near", -0.002, -0.059, -0.018, 0, 0, 0), []string{"It is near its limit: at the loosest it stands 0.002 ±0.005 mm tight, and it wants repair at line to line."}},
		{badly("within", 0.057, 0.030, 0.080, 0.256, 13579, 4444), []string{"It is within its limit: at the loosest it stands 0.057 ±0.005 mm free, and it wants repair at 0.256 mm; at the rate it wore so far it may run about 13000 h yet, 4400 h at the least.",
			"a good fit at its loosest 0.080 mm"}},
		{badly("within", 0.057, 0.030, 0.080, 0.256, 0.4, 0.2), []string{"it may run about an hour yet."}},
	} {
		page := Advise(Look{Width: 80}, c.a, mm, false)
		says(t, page, c.want...)
		saysNot(t, page, "time_left", "standing")
	}
}

func TestWhyItWoreTellsAllFour(t *testing.T) {
	a := fixture()
	a.Diagnosis = []answer.Finding{{Rule: "dry", Says: "it ran dry", Cause: "nobody oiled it", Cure: "clear the oil hole", Repair: "a bush with a groove", Again: "it runs dry again", Source: "common practice, no source"},
		{Rule: "even", Says: "even wear", Cause: "plain wear", Cure: "oil it oftener", Repair: "any", Source: "guides"}}
	page := Advise(Look{Width: 80}, a, Voice{}, false)
	says(t, page, "Why it wore: cure this first", "- It ran dry. [common practice, no source]", "cause nobody oiled it", "cure first clear the oil hole",
		"repair a bush with a groove", "or else it runs dry again", "- Even wear. [guides]")
	saysNot(t, page, "To tell why it wore", "or else -")
}

func TestWhatToLookAtWhenNothingFits(t *testing.T) {
	a := fixture()
	a.Diagnosis = nil
	for _, ask := range []string{"Is metal torn?", "Was there powder?", "Are there pits?", "Is it polished?", "Is the oil hole open?"} {
		a.Look = append(a.Look, answer.Missing{Ask: ask, With: "eye"})
	}
	page := Advise(Look{Width: 80}, a, Voice{}, false)
	says(t, page, "To tell why it wore, look:", "- Is metal torn? [eye]", "- Is it polished? [eye]")
	saysNot(t, page, "Why it wore: cure this first", "Is the oil hole open?") // four at the most
	a.Look = nil
	saysNot(t, Advise(Look{Width: 80}, a, Voice{}, false), "Why it wore")
}
