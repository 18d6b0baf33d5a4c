package advisor

import (
	"wornfit/advisor/answer"
	"wornfit/advisor/condition"
	"wornfit/calc/quantity"
)

// sections lays the condition out for the eye: each surface, then the fit.
func sections(c *condition.Condition) []answer.Section {
	out := []answer.Section{surface(c.Hub.Part.Called+" bore", &c.Hub), surface(c.Shaft.Part.Called, &c.Shaft)}
	fit := answer.Section{Name: "fit", Lines: []answer.Line{}}
	figure(&fit, "clearance_least", "clearance now, at the least", c.Clearance.Least)
	figure(&fit, "clearance_mean", "clearance now, mean", c.Clearance.Mean)
	figure(&fit, "clearance_most", "clearance now, at the most", c.Clearance.Most)
	for _, s := range c.Clearance.Shakes {
		figure(&fit, "shake", "clearance by shake", s.Found)
	}
	if c.WearRate.Is {
		fit.Lines = append(fit.Lines, answer.Line{Name: "wear_rate", Says: "wear of both together since new", Value: c.WearRate.Best, U: c.WearRate.U, Unit: answer.Unit(quantity.WearRateDim), Dim: quantity.WearRateDim})
	}
	return append(out, fit)
}

func surface(name string, s *condition.Surface) answer.Section {
	sec := answer.Section{Name: name, Lines: []answer.Line{}}
	figure(&sec, "largest", "largest", s.Largest)
	figure(&sec, "smallest", "smallest", s.Smallest)
	figure(&sec, "mean", "mean", s.Mean)
	figure(&sec, "before", "before it wore ("+s.BeforeFrom+")", s.Before)
	figure(&sec, "wear", "wear on diameter", s.Wear)
	figure(&sec, "out_of_round", "out of round", s.OutOfRound)
	figure(&sec, "taper", "taper, end to end", s.Taper)
	figure(&sec, "one_sided", "depth to one side", s.OneSided)
	figure(&sec, "bell_mouth", "ends over middle", s.BellMouth)
	figure(&sec, "score", "deepest score", s.Score)
	for _, u := range s.CleanUps {
		says := "cleans up at, set up on " + u.Datum
		if u.Straightens {
			says += ", straightened first"
		}
		figure(&sec, "clean_up", says, u.Size)
	}
	return sec
}

func figure(sec *answer.Section, name, says string, f condition.Figure) {
	if !f.Is {
		return
	}
	sec.Lines = append(sec.Lines, answer.Line{Name: name, Says: says, Value: f.Best, U: f.Doubt(), Unit: "m", Dim: quantity.LengthDim, Fine: f.U})
}

func notes(c *condition.Condition) []string {
	out := []string{}
	for _, n := range c.Notes {
		out = append(out, n.Says+" ("+n.Source+")")
	}
	return out
}
