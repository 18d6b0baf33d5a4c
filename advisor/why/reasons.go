package why

import (
	"math"
	"slices"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/advisor/solve"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// Reasons words every need and limit that applies, the blocking ones first,
// then what is broken, then what holds, each in the order of the files.
func (w *Writer) Reasons(base *rules.Base, ans *solve.Answer) []answer.Reason {
	blocks := map[int]bool{}
	for _, i := range ans.Broken {
		blocks[i] = true
	}
	var groups [3][]answer.Reason
	for i := range ans.States {
		c, s := &w.Option.Checks[i], &ans.States[i]
		if s.Applies == solve.No {
			continue
		}
		r := w.reason(base, c, s)
		r.Blocks = blocks[i]
		g := 2
		switch {
		case r.Blocks:
			g = 0
		case s.Holds != solve.Yes:
			g = 1
		}
		groups[g] = append(groups[g], r)
	}
	return append(append(groups[0], groups[1]...), groups[2]...)
}

func (w *Writer) reason(base *rules.Base, c *link.Check, s *solve.State) answer.Reason {
	r := answer.Reason{Rule: c.FullID, What: "limit", Strength: rules.StrengthWord(c.Strength), Ground: rules.GroundWord(c.Ground),
		Text: w.Sentence(c.Why), Remedy: w.Sentence(c.Remedy), Source: base.Cite(c.From, c.Grade), Grade: c.Grade.String(),
		Proved: s.Proved, After: c.After, Weak: s.Weak, Unit: answer.Unit(c.Dim), Dim: c.Dim}
	if c.Need {
		r.What, r.Unit = "need", ""
	} else if m := s.Worst; !math.IsInf(m, 0) && !math.IsNaN(m) {
		r.Margin = &m
	}
	yes, no := true, false
	switch s.Holds {
	case solve.Yes:
		r.Holds = &yes
		r.Text = w.kept(base, c)
	case solve.No:
		r.Holds = &no
	}
	if s.Holds == solve.Depends && c.Need {
		r.Text = "not known whether " + r.Text
	}
	if s.Holds != solve.Yes && !c.Need && !w.Rests(c.Margin) && s.AtTarget >= 0 && s.Worst < 0 && !math.IsInf(s.Worst, 0) {
		r.Text += "; on target that is kept, at the worst it is not"
	}
	return r
}

// kept says of a rule that is kept what it came to, not what would be wrong:
// the two sides of a limit, or that a need's trouble is not there.
func (w *Writer) kept(base *rules.Base, c *link.Check) string {
	if c.Need {
		return "not so: " + w.Sentence(c.Why)
	}
	most := "at most"
	if c.Sense == link.AtLeast {
		most = "at least"
	}
	left, right := w.side(base, c.Left), w.side(base, c.Right)
	if left != "" {
		left += ": "
	}
	if right != "" {
		right = ", " + right
	}
	return left + w.value(c.Left, c.Dim) + " (" + most + " " + w.value(c.Right, c.Dim) + right + ")"
}

func (w *Writer) value(n tape.Node, d quantity.Dim) string {
	if w.Rests(n) {
		return w.mayBe(n, d, true)
	}
	return w.say(n, d)
}

// side is what one side of a limit is called, "" where it has no name.
func (w *Writer) side(base *rules.Base, n tape.Node) string {
	for i := range w.Option.Dims {
		if x := &w.Option.Dims[i]; x.Value == n {
			return x.Says
		}
	}
	for i := range w.Option.Named {
		if x := &w.Option.Named[i]; x.Node == n && x.Says != "" {
			return x.Says
		}
	}
	if e, ok := base.Vocabulary.Entry(w.Option.Program.SlotName(n)); ok {
		says, _, _ := strings.Cut(e.Says, ";")
		return says
	}
	return ""
}

// Decisive puts what blocks for the reason that decided, the world or the shop or
// a wish, before the rest of what blocks, and what can be told in full first; the
// order is otherwise kept.
func Decisive(reasons []answer.Reason, kind string) []answer.Reason {
	group := func(r answer.Reason) int {
		switch {
		case !r.Blocks:
			return 3
		case kindOf(r.Ground) != kind:
			return 2
		case strings.Contains(r.Text, unknown):
			return 1
		}
		return 0
	}
	slices.SortStableFunc(reasons, func(a, b answer.Reason) int { return group(a) - group(b) })
	return reasons
}

// kindOf is the kind of ruled out that a broken rule of this ground is.
func kindOf(ground string) string {
	switch ground {
	case "shop":
		return answer.NotHere
	case "wish":
		return answer.NotWished
	}
	return answer.Never
}

// Decides is the one reason that decided: the first that blocks, else the
// first should that is broken; "" when nothing stands in the way.
func Decides(reasons []answer.Reason) string {
	for _, r := range reasons {
		if r.Blocks {
			return r.Text
		}
	}
	for _, r := range reasons {
		if r.Holds == nil && r.Strength == "must" {
			return "not known well enough: " + r.Text
		}
	}
	for _, r := range reasons {
		if r.Holds != nil && !*r.Holds && r.Strength == "should" {
			return r.Text
		}
	}
	for _, r := range reasons {
		if r.Holds == nil && r.Strength == "should" {
			return "not known: " + r.Text
		}
	}
	return ""
}

// Conflict lists the rules in the way, in words.
func Conflict(reasons []answer.Reason) []string {
	var out []string
	for _, r := range reasons {
		if r.Blocks {
			out = append(out, r.Text)
		}
	}
	return out
}
