// Package rank puts judged options in order: verdict first, then points. Each
// criterion has a fixed curve, so that adding an option never changes how two
// others stand.
//
// Start with Judge for one option, Order for all. It words nothing.
package rank

import (
	"sort"

	"wornfit/advisor/answer"
	"wornfit/advisor/solve"
	"wornfit/calc/interval"
	"wornfit/rules/link"
)

// Weights are the weights of the criteria, by id, as the case wishes or as the
// rule base has them.
type Weights map[string]float64

// Mark is what an option earns.
type Mark struct {
	Scores map[string]Earned
	Points float64 // 0 to 100, less Off
	Off    float64 // for each should that is broken
}

// Earned is one criterion's number and the points (0 to 100) its curve gives it.
type Earned struct{ Value, Points float64 }

// Score reads the criteria off a design and weighs them; off is what each
// broken should costs, half of it for one that depends.
func Score(o *link.Option, criteria []link.Criterion, w Weights, ans *solve.Answer, off float64) Mark {
	m := Mark{Scores: map[string]Earned{}}
	sum := 0.0
	for _, c := range criteria {
		v := ans.Reg[o.Criteria[c.ID]]
		e := Earned{Value: v, Points: Curve(c.Curve, v)}
		m.Scores[c.ID] = e
		m.Points += w[c.ID] * e.Points
		sum += w[c.ID]
	}
	if sum > 0 {
		m.Points /= sum
	}
	m.Off = off * (shoulds(o, ans) + float64(len(ans.Narrowed)))
	m.Points -= m.Off
	return m
}

// Most is the most an option may earn while its criteria stay within the ranges
// a glance told and its needs stand as found.
func Most(o *link.Option, criteria []link.Criterion, w Weights, ans *solve.Answer, off float64) float64 {
	points, sum := 0.0, 0.0
	for i, c := range criteria {
		points += w[c.ID] * top(c.Curve, ans.Within[i])
		sum += w[c.ID]
	}
	if sum > 0 {
		points /= sum
	}
	return points - off*shoulds(o, ans)
}

// shoulds counts the shoulds that are broken; one that depends is half broken.
func shoulds(o *link.Option, ans *solve.Answer) (broken float64) {
	for i := range ans.States {
		c, s := &o.Checks[i], &ans.States[i]
		switch {
		case c.Strength != link.Should || s.Applies == solve.No:
		case s.Holds == solve.No:
			broken++
		case s.Holds == solve.Depends:
			broken += 0.5
		}
	}
	return broken
}

// top is the most a curve reaches over a range.
func top(points []link.CurvePoint, over interval.I) float64 {
	most := max(Curve(points, over.Lo), Curve(points, over.Hi))
	for _, p := range points {
		if over.Lo < p.At && p.At < over.Hi {
			most = max(most, p.Points)
		}
	}
	return most
}

// Curve reads a broken line: straight between its corners, level beyond.
func Curve(points []link.CurvePoint, x float64) float64 {
	if len(points) == 0 || !(x >= points[0].At) {
		if len(points) == 0 {
			return 0
		}
		return points[0].Points
	}
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if x <= b.At {
			return a.Points + (b.Points-a.Points)*(x-a.At)/(b.At-a.At)
		}
	}
	return points[len(points)-1].Points
}

var verdictOrder = map[string]int{answer.Works: 0, answer.WithCare: 0, answer.CantTell: 1, answer.RuledOut: 2}

// Verdict says what an option comes to, the first that applies, and of a
// ruled-out one why: because of the world, the shop or the wishes.
func Verdict(o *link.Option, ans *solve.Answer) (verdict, kind string) {
	switch ans.Works {
	case solve.No:
		return answer.RuledOut, kindOf(o, ans)
	case solve.Depends, solve.NotProved:
		return answer.CantTell, ""
	}
	if mustDepends(o, ans) {
		return answer.CantTell, ""
	}
	if len(ans.Narrowed) > 0 {
		return answer.WithCare, ""
	}
	for i := range ans.States {
		c, s := &o.Checks[i], &ans.States[i]
		if s.Applies == solve.No {
			continue
		}
		if c.Strength == link.Should && s.Holds != solve.Yes || c.Strength == link.Must && len(s.Weak) > 0 {
			return answer.WithCare, ""
		}
	}
	return answer.Works, ""
}

func mustDepends(o *link.Option, ans *solve.Answer) bool {
	for i := range ans.States {
		if o.Checks[i].Strength == link.Must && ans.States[i].Holds == solve.Depends {
			return true
		}
	}
	return false
}

// kindOf: needs, and limits that fail by themselves, must each be met, so the hardest of them decides; limits are in
// each other's way, so the one easiest to give decides.
func kindOf(o *link.Option, ans *solve.Answer) string {
	hardest, easiest := link.Wish, link.Physics
	needs, limits := false, false
	for _, i := range ans.Broken {
		g := o.Checks[i].Ground
		if o.Checks[i].Need || ans.States[i].Proved { // proved to fail by itself
			needs, hardest = true, min(hardest, g)
		} else {
			limits, easiest = true, max(easiest, g)
		}
	}
	g := link.Physics
	switch {
	case needs && limits:
		g = min(hardest, easiest)
	case needs:
		g = hardest
	case limits:
		g = easiest
	}
	return Kind(g)
}

// Kind names the kind of ruled out that a ground makes.
func Kind(g link.Ground) string {
	switch g {
	case link.Shop:
		return answer.NotHere
	case link.Wish:
		return answer.NotWished
	}
	return answer.Never
}

var kindOrder = map[string]int{"": 0, answer.NotWished: 1, answer.NotHere: 2, answer.Never: 3}

// Better reports whether a stands before b: working ones together by points,
// then those that cannot be told, then those ruled out, the easiest to mend
// first. The id settles what is alike.
func Better(a, b *answer.Option, brokenA, brokenB int) bool {
	if d := verdictOrder[a.Verdict] - verdictOrder[b.Verdict]; d != 0 {
		return d < 0
	}
	if a.Verdict == answer.RuledOut {
		if d := kindOrder[a.Kind] - kindOrder[b.Kind]; d != 0 {
			return d < 0
		}
		if brokenA != brokenB {
			return brokenA < brokenB
		}
	}
	if a.Points != b.Points {
		return a.Points > b.Points
	}
	return a.ID < b.ID
}

// Order sorts options and numbers those that are not ruled out.
func Order(list []answer.Option, broken map[string]int) {
	sort.SliceStable(list, func(i, j int) bool {
		return Better(&list[i], &list[j], broken[list[i].ID], broken[list[j].ID])
	})
	for i := range list {
		list[i].Rank = i + 1
	}
}
