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
		if o := speaks(n, options); o != nil {
			m.Best, m.Verdict, m.Kind, m.Rank, m.Points, m.Why = &o.ID, o.Verdict, o.Kind, o.Rank, o.Points, why.Decides(o.Reasons)
			m.Others = others(n.ID)
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

// speaks is the option that stands for a name: its best, or if all of it is ruled
// out alike what the name lists first.
func speaks(n *rules.TradeName, options []answer.Option) *answer.Option {
	var best *answer.Option
	listed := func(o *answer.Option) int {
		return max(slices.Index(n.Hub, o.Hub), 0) + max(slices.Index(n.Shaft, o.Shaft), 0)
	}
	for i := range options {
		o := &options[i]
		switch {
		case o.Name == nil || *o.Name != n.ID:
		case best == nil:
			best = o
		case best.Verdict == answer.RuledOut && o.Verdict == answer.RuledOut && o.Kind == best.Kind && listed(o) < listed(best):
			best = o
		}
	}
	return best
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
