package rules

import (
	"fmt"

	"wornfit/calc/interval"
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
	all := x.rules()
	sums := map[[2]int]tape.Node{}
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			if a, c := all[i].rule, all[j].rule; a.Test == nil && c.Test == nil && a.Left.Type.Dim == c.Left.Type.Dim {
				sums[[2]int{i, j}] = x.b.Apply(lang.Add, all[i].asks, all[j].asks)
			}
		}
	}
	x.build()
	alone := make([]bool, len(all))
	for i, j := range all {
		says, remedy := x.alone(j)
		if alone[i] = says != ""; alone[i] {
			faults.Add(j.rule.At, j.rule.ID, says, remedy)
		}
	}
	for i, a := range all {
		for j := i + 1; j < len(all); j++ {
			if c := all[j]; !alone[i] && !alone[j] && x.contradict(a, c, sums[[2]int{i, j}]) {
				*faults = append(*faults, fault.Fault{At: c.rule.At, Key: c.rule.ID,
					Says:   fmt.Sprintf("%s and %s can never be kept together", c.rule.ID, a.rule.ID),
					Remedy: "correct one of the two, or tell them apart by when", Also: []fault.Place{a.rule.At}})
			}
		}
	}
}

// rules lowers the needs and limits of the file; a limit asks for a margin of 0
// or more.
func (x *bounds) rules() []judged {
	var all []judged
	for i := range x.part.Needs {
		r := &x.part.Needs[i]
		if n := x.lower(r.Test); n != 0 {
			all = append(all, judged{r, n, x.lower(r.When)})
		}
	}
	for i := range x.part.Limits {
		r := &x.part.Limits[i]
		left, right := x.lower(r.Left), x.lower(r.Right)
		if left == 0 || right == 0 {
			continue
		}
		if r.Sense == link.AtMost {
			left, right = right, left
		}
		all = append(all, judged{r, x.b.Apply(lang.Sub, left, right), x.lower(r.When)})
	}
	return all
}

// alone judges one rule by itself: over every way its words and facts can fall,
// when they are not too many.
func (x *bounds) alone(j judged) (says, remedy string) {
	never, always, noNumber, applies := true, true, true, false
	x.each([]tape.Node{j.asks, j.when}, func(reg []interval.I) {
		x.prog.Enclose(reg)
		if j.when != 0 && tape.No(reg[j.when]) {
			return
		}
		applies = true
		r := x.value(reg, j.asks)
		if j.rule.Test != nil {
			never, always = never && tape.No(r), always && tape.Yes(r)
		} else {
			never, always = never && r.Hi < 0, always && r.Lo >= 0
		}
		always = always && x.prog.Defined(reg, j.asks)
		noNumber = noNumber && r.Empty()
	})
	switch {
	case !applies:
		return "its when is never true", "correct the when, or take the rule out"
	case noNumber:
		return "it comes to no number, whatever the values", "look for a division by 0 or the root of less than 0"
	case never:
		return "it can never be kept, whatever the vocabulary allows", "look for a unit, a number or a sense that is wrong"
	case always:
		return "it is always kept, whatever the vocabulary allows", "look for a unit, a number or a sense that is wrong; else take it out"
	}
	return "", ""
}

// contradict reports that no value keeps two rules at once, though both may
// apply and each can be kept. sum is that of their margins, 0 when they have
// none of one kind: where it is under 0 one of the two is broken.
func (x *bounds) contradict(a, b judged, sum tape.Node) bool {
	var whens []tape.Node
	for _, w := range []tape.Node{a.when, b.when} {
		if w != 0 {
			whens = append(whens, w)
		}
	}
	if len(whens) > 0 && x.prog.Contract(x.start(), whens) {
		return false
	}
	for _, one := range []judged{a, b} {
		if x.prog.Contract(x.start(), append([]tape.Node{one.asks}, whens...)) {
			return false
		}
	}
	if x.prog.Contract(x.start(), append([]tape.Node{a.asks, b.asks}, whens...)) {
		return true
	}
	if sum == 0 {
		return false
	}
	reg := x.start()
	x.prog.Enclose(reg)
	r := x.value(reg, sum)
	return !r.Empty() && r.Hi < 0
}
