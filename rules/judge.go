package rules

import (
	"fmt"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// judged is a rule of a file as nodes: what it asks, and when.
type judged struct {
	rule       *link.Rule
	asks, when tape.Node
}

// judge tells the rules of a file that can never be kept, that are always kept,
// and the pairs that no value keeps together, over all that the vocabulary
// allows. What it says is proved; what it does not see may still be so.
func (b *Base) judge(p *link.Part, faults *fault.List) {
	x := newBounds(b, p)
	var all []judged
	for i := range p.Needs {
		r := &p.Needs[i]
		all = append(all, judged{r, x.lower(r.Test), x.lower(r.When)})
	}
	for i := range p.Limits {
		r := &p.Limits[i]
		left, right := x.lower(r.Left), x.lower(r.Right)
		if left == 0 || right == 0 {
			continue
		}
		if r.Sense == link.AtMost {
			left, right = right, left
		}
		all = append(all, judged{r, x.b.Apply(lang.Sub, left, right), x.lower(r.When)})
	}
	prog := x.b.Build()
	var open []judged
	for _, j := range all {
		if j.asks == 0 {
			continue
		}
		if says, remedy := x.alone(prog, j); says != "" {
			faults.Add(j.rule.At, j.rule.ID, says, remedy)
			continue
		}
		open = append(open, j)
	}
	for i, a := range open {
		for _, c := range open[i+1:] {
			if x.contradict(prog, a, c) {
				*faults = append(*faults, fault.Fault{At: c.rule.At, Key: c.rule.ID,
					Says:   fmt.Sprintf("%s and %s can never be kept together", c.rule.ID, a.rule.ID),
					Remedy: "correct one of the two, or tell them apart by when", Also: []fault.Place{a.rule.At}})
			}
		}
	}
}

// alone judges one rule by itself.
func (x *bounds) alone(prog *tape.Program, j judged) (says, remedy string) {
	reg := x.start(prog)
	prog.Enclose(reg)
	if j.when != 0 && tape.No(reg[j.when]) {
		return "its when is never true", "correct the when, or take the rule out"
	}
	r := reg[j.asks]
	never, always := r.Hi < 0, r.Lo >= 0
	if j.rule.Test != nil {
		never, always = tape.No(r), tape.Yes(r)
	}
	switch {
	case r.Empty():
		return "it comes to no number, whatever the values", "look for a division by 0 or the root of less than 0"
	case never:
		return "it can never be kept, whatever the vocabulary allows", "look for a unit, a number or a sense that is wrong"
	case always && prog.Defined(reg, j.asks):
		return "it is always kept, whatever the vocabulary allows", "look for a unit, a number or a sense that is wrong; else take it out"
	}
	return "", ""
}

// contradict reports that no value keeps two rules at once, though both may
// apply and each can be kept.
func (x *bounds) contradict(prog *tape.Program, a, b judged) bool {
	var whens []tape.Node
	for _, w := range []tape.Node{a.when, b.when} {
		if w != 0 {
			whens = append(whens, w)
		}
	}
	if len(whens) > 0 && prog.Contract(x.start(prog), whens) {
		return false
	}
	for _, one := range []judged{a, b} {
		if prog.Contract(x.start(prog), append([]tape.Node{one.asks}, whens...)) {
			return false
		}
	}
	return prog.Contract(x.start(prog), append([]tape.Node{a.asks, b.asks}, whens...))
}
