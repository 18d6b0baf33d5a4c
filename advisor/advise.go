// Package advisor answers: what can be done about this worn fit, best first, at
// what sizes, and why? This file is the whole way through, readable as one
// page; each step is a room of its own.
//
//	case -> condition -> given -> every option: screened, solved, scored -> order -> words
package advisor

import (
	"maps"
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/advisor/diagnose"
	"wornfit/advisor/given"
	"wornfit/advisor/judge"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/link"
)

// Ask is how the answer is wanted.
type Ask struct {
	Speech quantity.Speech
	Only   []string // ids or trade names to be worked out with the large budget too
	All    bool     // every option worked out, not only those that may be shown
}

// Advise judges every option for one fit of a case read without faults.
func Advise(base *rules.Base, c *casefile.Case, f *casefile.Fit, ask Ask) (*answer.Answer, error) {
	a := head(base, c, f)
	if a.Stop = barred(c); a.Stop != nil {
		return a, nil
	}
	cond, contradictions := condition.Find(c, f, expansion(base))
	if a.Stop = dangerous(base, cond, contradictions, ask.Speech); a.Stop != nil && a.Stop.Kind == "safety" {
		return a, nil
	}
	a.Condition, a.Notes = sections(cond), notes(cond)
	if a.Stop != nil {
		return a, nil
	}
	purpose := base.Purpose(f.Purpose)
	if purpose == nil {
		a.Stop = notYet(base, f.Purpose)
		return a, nil
	}
	known := given.New(base, cond)
	found, err := diagnose.Find(base, known, purpose, ask.Speech)
	if err != nil {
		return nil, err
	}
	a.Diagnosis, a.Look = found.Findings, found.Look
	shop := &judge.Bench{Base: base, Given: known, Speech: ask.Speech, Weights: weights(base, c),
		Called: map[string]string{"shaft": a.Case.Shaft, "hub": a.Case.Hub}, Near: near(cond), Made: made(c, f), Asked: ask.Only}
	if err := shop.Alone(purpose); err != nil {
		return nil, err
	}
	contest, err := held(shop, link.All(base.Input, purpose), ask.All)
	if err != nil {
		return nil, err
	}
	judged := contest.Judged()
	if err := thorough(shop, judged, ask.Only); err != nil {
		return nil, err
	}
	judge.Sort(judged)
	if !ask.All {
		judged = told(judged, ask.Only)
	}
	if a.Options, err = judge.Options(judged); err != nil {
		return nil, err
	}
	a.IDs = contest.IDs()
	a.Methods = judge.Methods(base, purpose, a.Options, contest.Others)
	a.Condition = append(a.Condition, howBad(a.Options, cond)...)
	a.Buying = shop.Buying(judged, a.Options)
	a.TwoSteps = shop.TwoSteps(judged)
	a.Criteria = shop.Criteria()
	return a, nil
}

// held looks every option over and works out those that may be among the best,
// or all of them.
func held(shop *judge.Bench, all []link.Combination, every bool) (*judge.Contest, error) {
	rough, err := judge.Each(longestFirst(all), shop.Rough)
	if err != nil {
		return nil, err
	}
	contest := shop.NewContest(rough, shown)
	next := contest.Round
	if every {
		next = contest.All
	}
	for list := next(); len(list) > 0; list = next() {
		judged, err := judge.Each(longestFirst(list), shop.Judge)
		if err != nil {
			return nil, err
		}
		contest.Take(judged)
	}
	return contest, nil
}

// shown is how many options are told in full.
const shown = 5

// told are the options worth telling of those worked out: the first few, the best
// of each trade name, what would be bought, the fit as it is, and those asked for.
func told(judged []*judge.Judged, only []string) []*judge.Judged {
	var out []*judge.Judged
	seen := map[string]bool{}
	for i, j := range judged {
		first := false
		for _, group := range append(j.Buys(), j.Name()) {
			first, seen[group] = first || !seen[group], true
		}
		if i < shown || first || asFound(j.Combination) || slices.Contains(only, j.Combination.ID) {
			out = append(out, j)
		}
	}
	return out
}

// asFound reports an option that cuts nothing and buys nothing: how bad the fit is
// is told from it.
func asFound(c link.Combination) bool {
	return c.Shaft.Finishes+c.Hub.Finishes == "" && !c.Shaft.Bought && !c.Hub.Bought
}

// thorough works the first option, those asked for and what cannot be told of the
// others shown out with the large budget; of the rest that is shown the quick
// look is told in full.
func thorough(shop *judge.Bench, judged []*judge.Judged, only []string) error {
	var list []*judge.Judged
	seen, full := map[string]bool{}, map[*judge.Judged]bool{}
	for i, j := range judged {
		name := j.Name()
		asked := slices.Contains(only, j.Combination.ID) || slices.Contains(only, name) && !seen[name]
		if asked || (i < shown || !seen[name]) && j.Open() {
			list, full[j] = append(list, j), asked || i == 0 || j.Open() && j.Unfound()
		}
		seen[name] = true
	}
	slices.SortStableFunc(list, func(a, b *judge.Judged) int {
		if full[a] != full[b] {
			return map[bool]int{true: -1, false: 1}[full[a]] // takes longer
		}
		return toil(b.Combination) - toil(a.Combination)
	})
	_, err := judge.Each(list, func(j *judge.Judged) (*judge.Judged, error) { return j, shop.Finish(j, full[j]) })
	return err
}

// longestFirst puts the options with the most sizes and limits first: they take
// longest, and none should be left to one core at the end. The order of the
// answer is the ranking's.
func longestFirst(all []link.Combination) []link.Combination {
	slices.SortStableFunc(all, func(a, b link.Combination) int { return toil(b) - toil(a) })
	return all
}

// toil grows with the time an option takes to work out.
func toil(c link.Combination) int {
	sizes, limits := 1, 0
	for _, p := range slices.AppendSeq([]*link.Part{c.Shaft, c.Hub, c.Purpose}, maps.Values(c.Holds)) {
		sizes, limits = sizes+len(p.Choose), limits+len(p.Limits)
	}
	return sizes * limits
}

func head(base *rules.Base, c *casefile.Case, f *casefile.Fit) *answer.Answer {
	return &answer.Answer{
		SchemaVersion: answer.Version,
		Case: answer.Case{File: c.File, Title: c.Title, Fit: f.ID, Purpose: f.Purpose, Money: c.Money,
			Shaft: f.Part(casefile.Shaft).Called, Hub: f.Part(casefile.Hub).Called},
		Knowledge: answer.Knowledge{Version: knowledge.Version, Hash: base.Hash, Layers: base.Layers},
		Condition: []answer.Section{}, Diagnosis: []answer.Finding{}, Look: []answer.Missing{}, Options: []answer.Option{}, Methods: []answer.Method{},
		Buying:   []answer.Buying{},
		Criteria: []answer.Criterion{}, Notes: []string{},
	}
}

// weights are those of the rule base, with what the case wishes in their place.
func weights(base *rules.Base, c *casefile.Case) map[string]float64 {
	w := map[string]float64{}
	for _, cr := range base.Input.Criteria {
		w[cr.ID] = cr.Weight
		if x, wished := c.Weights[cr.ID]; wished {
			w[cr.ID] = x
		}
	}
	return w
}

func expansion(base *rules.Base) condition.Expansion {
	return func(material string) (interval.I, bool) {
		for _, r := range base.Rows("materials") {
			if k, ok := r.Columns["expansion"]; ok && r.ID == material {
				return k.Value, true
			}
		}
		return interval.I{}, false
	}
}

// near lists the features next to the fit on each part.
func near(cond *condition.Condition) map[link.Side][]string {
	out := map[link.Side][]string{}
	for side, s := range map[link.Side]*condition.Surface{link.Shaft: &cond.Shaft, link.Hub: &cond.Hub} {
		for _, n := range s.Part.Near {
			out[side] = append(out[side], n.Kind)
		}
	}
	return out
}

// made lists the sizes of this fit that already came off the machine.
func made(c *casefile.Case, f *casefile.Fit) []judge.Made {
	var out []judge.Made
	for _, m := range c.Made {
		if m.Fit != f.ID {
			continue
		}
		one := judge.Made{Dimension: m.Dimension, Surface: string(m.Surface)}
		if g, ok := c.Gauge(m.With); ok {
			one.U = g.Within.Hi
		}
		for _, s := range m.Sizes {
			if s.Known {
				one.Sizes = append(one.Sizes, s.Mid())
			}
		}
		out = append(out, one)
	}
	return out
}
