package judge

import (
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/why"
	"wornfit/rules"
	"wornfit/rules/link"
)

// Methods gives each trade name its best option; others counts the rest of it.
func Methods(base *rules.Base, purpose *link.Part, options []answer.Option, others func(name string) int) []answer.Method {
	var out []answer.Method
	for i := range base.Names {
		n := &base.Names[i]
		m := answer.Method{Name: n.ID, Says: n.Says, Verdict: answer.RuledOut, Kind: answer.Never}
		for k := range options {
			o := &options[k]
			if o.Name == nil || *o.Name != n.ID {
				continue
			}
			m.Best, m.Verdict, m.Kind, m.Rank, m.Points, m.Why = &o.ID, o.Verdict, o.Kind, o.Rank, o.Points, why.Decides(o.Reasons)
			m.Others = others(n.ID)
			break
		}
		if m.Best == nil {
			m.Why = n.Cannot[purpose.ID]
			if m.Why == "" && !possible(base, n) {
				continue // no treatment of the rule base answers to this name yet
			}
		}
		out = append(out, m)
	}
	slices.SortStableFunc(out, func(a, b answer.Method) int {
		if (a.Best == nil) != (b.Best == nil) {
			if a.Best == nil {
				return 1
			}
			return -1
		}
		return a.Rank - b.Rank
	})
	return out
}

// possible reports whether the rule base has the treatments a name asks for.
func possible(base *rules.Base, n *rules.TradeName) bool {
	has := func(side link.Side, ids []string) bool {
		if len(ids) == 0 {
			return true
		}
		for _, p := range base.Input.Parts {
			if p.Side == side && slices.Contains(ids, p.ID) {
				return true
			}
		}
		return false
	}
	if len(n.Any) > 0 && !has(link.Shaft, n.Any) && !has(link.Hub, n.Any) {
		return false
	}
	return has(link.Shaft, n.Shaft) && has(link.Hub, n.Hub) && has(link.Hold, n.Fit)
}
