package rules

import (
	"slices"
	"strings"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

var stepKeys = []string{"id", "says", "hours", "wait", "costs", "when", "on", "needs", "gives", "cautions", "acts"}

// step reads an operation.
func (l *loader) step(sc *scope, n yamldoc.Node) {
	if c := n.Get("common"); c.Present() {
		n.Keys("common")
		if id := c.Word(l.commonIDs...); id != "" {
			sc.d.part.Steps = append(sc.d.part.Steps, link.Step{ID: id, Common: true, At: n.At()})
		}
		return
	}
	if !n.Keys(stepKeys...) {
		return
	}
	says := n.Need("says", "say what is done")
	s := link.Step{ID: l.id(sc, n), Says: says.Text(), SaysPieces: l.pieces(sc, says), On: n.Get("on").Text(), At: n.At(),
		Hours: sc.expr(n.Need("hours", "say how long it takes at the bench"), number(quantity.TimeDim)),
		Wait:  sc.expr(n.Get("wait"), number(quantity.TimeDim)),
		Costs: sc.expr(n.Get("costs"), number(quantity.MoneyDim)),
		When:  sc.expr(n.Get("when"), yesNo),
		Needs: texts(n.Get("needs")), Gives: texts(n.Get("gives"))}
	l.beforeSizes(sc, s.When, n.Get("when"), "a `when`")
	if _, ok := sc.d.picks[s.On]; s.On != "" && !ok && !sc.d.bad[s.On] {
		n.Get("on").Fault("the step is done on "+s.On+", which is no pick of this file", fault.DidYouMean(s.On, pickNames(sc.d)))
	}
	for _, c := range n.Get("cautions").Items() {
		if id := l.caution(c); id != "" {
			s.Cautions = append(s.Cautions, id)
		}
	}
	for _, a := range n.Get("acts").Items() {
		l.guarded(a, s.Cautions)
	}
	sc.d.part.Steps = append(sc.d.part.Steps, s)
}

func texts(n yamldoc.Node) []string {
	var out []string
	for _, x := range n.Items() {
		out = append(out, x.Text())
	}
	return out
}

// caution reads the id of a caution that must be there.
func (l *loader) caution(n yamldoc.Node) string {
	id := n.Text()
	if id == "" || l.base.Has("cautions", id) {
		return id
	}
	n.Fault("there is no caution "+id, fault.DidYouMean(id, l.base.IDs("cautions")))
	return ""
}

// guarded tells a hazardous act that stands in a step without its caution.
func (l *loader) guarded(act yamldoc.Node, have []string) {
	known := false
	var acts []string
	for _, id := range l.base.IDs("cautions") {
		guards := strings.Split(l.base.Text("cautions", id, "guards"), "\n")
		acts = append(acts, guards...)
		if !slices.Contains(guards, act.Text()) {
			continue
		}
		known = true
		if !slices.Contains(have, id) {
			act.Fault(act.Text()+" stands in a step without the caution "+id+" ("+l.base.Text("cautions", id, "hazard")+")", "add "+id+" to its cautions")
		}
	}
	if !known {
		acts = slices.DeleteFunc(acts, func(a string) bool { return a == "" })
		act.Fault("no caution guards the act "+act.Text(), fault.DidYouMean(act.Text(), slices.Compact(sorted(acts))))
	}
}
