package render

import (
	"math"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// fixture is an answer made by hand, its numbers chosen to be told apart: no
// program worked it out. A kick-sledge's swing arm, invented.
func fixture() *answer.Answer {
	yes, no := true, false
	name, best := "true-shaft-bush-bore", "shaft-true-up+hub-bush-press"
	price, spare, short := 185.0, 0.000123, -0.000217
	mm := func(x float64) float64 { return x / 1000 }
	size := func(n, says string, x, u float64) answer.Line {
		return answer.Line{Name: n, Says: says, Value: mm(x), U: mm(u), Dim: quantity.LengthDim}
	}
	a := &answer.Answer{SchemaVersion: answer.Version,
		Case:      answer.Case{File: "arm.yaml", Title: "swing arm of a kick-sledge, eye worn on its bolt (invented)", Fit: "eye", Purpose: "oscillating", Shaft: "bolt", Hub: "swing arm", Money: "EUR"},
		Knowledge: answer.Knowledge{Version: "0.1", Hash: "0123456789ab", Layers: []string{"shipped 0.1", "shop-rules"}},
		Condition: []answer.Section{
			{Name: "swing arm bore", Lines: []answer.Line{size("largest", "largest", 31.234, 0.006), size("smallest", "smallest", 30.871, 0.006),
				size("clean_up", "cleans up at, set up on far-side", 31.777, 0.008)}},
			{Name: "bolt shaft", Lines: []answer.Line{size("largest", "largest", 30.412, 0.004), size("taper", "taper, end to end", -0.019, 0.004)}},
			{Name: "fit", Lines: []answer.Line{size("clearance_least", "clearance now, at the least", 0.459, 0.007), size("clearance_mean", "clearance now, mean", -0.038, 0.007),
				{Name: "wear_rate", Says: "wear of both together since new", Value: 2.5e-11, U: 2e-12, Dim: quantity.WearRateDim}}},
		},
		Diagnosis: []answer.Finding{{Rule: "dry", Says: "it ran dry", Cure: "clear the oil hole", Source: "common practice, no source"}},
		Methods: []answer.Method{
			{Name: name, Says: "true the shaft and bush the bore to suit", Verdict: answer.WithCare, Best: &best, Rank: 1, Points: 63.4, Others: 1, Why: "a bush 48.5 mm long on 30 mm binds"},
			{Name: "knurl", Says: "knurl the shaft", Verdict: answer.RuledOut, Kind: answer.Never, Why: "a knurled surface does not swing"},
		},
		Buying: []answer.Buying{{Part: "hub", Price: &price, Text: "A bought swing arm wins at 185 EUR or less."}},
		Criteria: []answer.Criterion{{ID: "cost", Says: "bench hours at their rate, and what is bought", Weight: 0.6},
			{ID: "risk", Says: "chance of spoiling a part", Weight: 0.4}},
		Notes: []string{"swing arm: read at 2 angles only"},
	}
	first := answer.Option{ID: best, Name: &name, Says: "shaft turned down; hub bored out and bushed, bush pressed in", Shaft: "true-up", Hub: "bush",
		Holds: map[string]string{"bush": "press"}, Verdict: answer.WithCare, Rank: 1, Points: 63.4, Broken: 8, Picks: map[string]string{"hub/bush.bush_material": "bronze-660", "shaft/true-up.datum": "centres"},
		Scores: map[string]answer.Score{"cost": {Value: 87.25, Points: 54, Dim: quantity.MoneyDim, Parts: []answer.Part{{Says: "bench hours", Value: 23400, Dim: quantity.TimeDim}}},
			"risk": {Value: 0.0684, Points: 74, Parts: []answer.Part{{Says: "a shaft cut under size cannot be put back", Value: 0.02}}}, "out-of-service": {Value: 27000, Dim: quantity.TimeDim}},
		Dimensions: []answer.Dimension{
			{ID: "shaft_size", Name: "shaft size", Part: "shaft", On: "250 mm lathe", Low: answer.Edge{Value: mm(28.3111), By: []string{"shaft-rise"}},
				High: answer.Edge{Value: mm(29.8666), By: []string{"bush.press-holds-torque"}}, Target: mm(29.8451), Lower: mm(29.8352), Upper: mm(29.8549), Gauge: mm(0.003), Holds: mm(0.02)},
			{ID: "bush_outside", Name: "bush outside", Part: "bush", Suits: "hub_bore", Low: answer.Edge{Value: mm(35.021)}, High: answer.Edge{Value: mm(35.066)},
				Target: mm(35.0433), Lower: mm(35.0334), Upper: mm(35.0532), Holds: mm(0.02), Made: true},
		},
		Values: []answer.Value{{Name: "hub/bush.wall", Says: "wall of the bush", Value: mm(2.599), Dim: quantity.LengthDim, Formula: "(bush_outside - bush_bore) / 2"},
			{Name: "bush.grip_torque", Says: "torque it surely holds", Value: 76.5, Dim: quantity.TorqueDim},
			{Name: "never", Says: "life without wear", Value: math.MaxFloat64, Dim: quantity.TimeDim}},
		Reasons: []answer.Reason{
			{Rule: "bush-not-long", What: "limit", Strength: "should", Ground: "practice", Holds: &no, Margin: &short, Dim: quantity.LengthDim, Text: "a bush 48.5 mm long on 30 mm binds", Remedy: "two short bushes", Source: "common practice, no source", Grade: "practice"},
			{Rule: "bush.press-holds-torque", What: "limit", Strength: "must", Ground: "physics", Holds: &yes, Margin: &spare, Dim: quantity.LengthDim, Text: "it surely holds 76.5 N m, and 6.74 N m must pass", Source: "thick-ring equations", Grade: "derived", Weak: []string{"hold/press.friction"}},
			{Rule: "shaft-rise", What: "limit", Strength: "should", Ground: "practice", Holds: &yes, Text: "stress would stand at 1.06 times what it was"},
		},
		Steps: []answer.Step{{ID: "isolate", Says: "isolate and lock off", Hours: 3600, Cautions: []string{"Start-up (it may turn): lock and tag"}},
			{ID: "press", Says: "press the bush in with 17.3 kN", On: "shop press", Hours: 19800, Wait: 3600, Cautions: []string{"Start-up (it may turn): lock and tag", "Press (ejection): stand aside"}}},
		Mistakes:   []answer.Mistake{{Says: "the bush is bored before it is pressed in", Instead: "finish the bore last"}},
		Neighbours: []string{"oil hole: restore, drill through the bush"},
		Missing:    []answer.Missing{{Name: "duty.load", Ask: "the load on the fit, such as 1800 N", With: "a spring balance"}},
	}
	second := answer.Option{ID: "shaft-leave+hub-leave", Says: "shaft left as it is; bore left as it is", Shaft: "leave", Hub: "leave", Verdict: answer.RuledOut, Kind: answer.Never, Rank: 2,
		Scores:   map[string]answer.Score{"cost": {Value: 104, Dim: quantity.MoneyDim}},
		Reasons:  []answer.Reason{{Rule: "oscillating-act", What: "limit", Strength: "must", Ground: "function", Holds: &no, Text: "it would stand at 0.822 mm, and 0.31 mm is where it wants repair", Blocks: true}},
		Conflict: []string{"it would stand at 0.822 mm"}, Changes: []string{"turn the bolt round"}}
	a.Options = []answer.Option{first, second}
	return a
}
