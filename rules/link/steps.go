package link

import (
	"fmt"
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// steps lists the operations of the option once each, in the order they can be
// done, and sums their hours, waiting and costs.
func (l *linker) steps(lw *lowering) {
	var all []stepUse
	named := map[string]fault.Place{}
	for _, e := range l.asDone() {
		var last *Step
		for i := range e.part.Steps {
			s := &e.part.Steps[i]
			if s.Common {
				named[s.ID] = s.At
				continue
			}
			all = append(all, stepUse{e: e, s: s, after: last})
			last = s
		}
	}
	for _, u := range l.ordered(append(l.commonSteps(named), all...)) {
		l.step(lw, u)
	}
	l.total(lw)
}

// asDone are the files as work goes: the purpose of a held fit says what to mind
// before the joint is made, and a key goes into its shaft before the hub goes on.
// A lock that is made in the joint says that it needs the joint.
func (l *linker) asDone() []*env {
	out := l.envs()
	for i := 1; i < len(out); i++ {
		if out[i].part.Side == Lock {
			out[i-1], out[i] = out[i], out[i-1]
		}
	}
	if at := slices.IndexFunc(out, func(e *env) bool { return e.joint != nil && e.joint.name == Fit }); at >= 0 {
		out = slices.Insert(out[:len(out)-1], at, l.purpose)
	}
	return out
}

// stepUse is a step of one use of a file; after is the one before it there.
type stepUse struct {
	e     *env
	s     *Step
	after *Step
}

func (u stepUse) id() string { return u.e.said(u.s.ID) }

// commonSteps are those of steps.yaml that every option has or a part names.
func (l *linker) commonSteps(named map[string]fault.Place) []stepUse {
	var out []stepUse
	if l.common != nil {
		for i := range l.common.part.Steps {
			s := &l.common.part.Steps[i]
			if _, ok := named[s.ID]; ok || s.Always {
				out = append(out, stepUse{e: l.common, s: s})
			}
			delete(named, s.ID)
		}
	}
	for id, at := range named {
		l.faults = append(l.faults, fault.Fault{At: at, Says: "steps.yaml has no step " + id, Remedy: "write the step there, or correct the name"})
	}
	return out
}

// ordered puts the steps in an order in which each comes after what it needs:
// always the first in the list that can be done.
func (l *linker) ordered(all []stepUse) []stepUse {
	needs := make([][]int, len(all))
	for i, u := range all {
		needs[i] = l.stepNeeds(all, u)
	}
	var order []stepUse
	done := make([]bool, len(all))
	for len(order) < len(all) {
		next := -1
		for i := range all {
			if !done[i] && !slices.ContainsFunc(needs[i], func(n int) bool { return !done[n] }) {
				next = i
				break
			}
		}
		if next < 0 {
			l.stepCircle(all, needs, done)
			return order
		}
		done[next] = true
		order = append(order, all[next])
	}
	return order
}

// stepNeeds are the steps that come before one: what its needs name, the one
// before it in its file, and of a last step all that are not.
func (l *linker) stepNeeds(all []stepUse, u stepUse) []int {
	var out []int
	for i, o := range all {
		if o.e == u.e && o.s == u.after || u.s.Last && !o.s.Last {
			out = append(out, i)
		}
	}
	for _, need := range u.s.Needs {
		gives, known := l.meets(u, need)
		found := false
		for i, o := range all {
			if o.s != u.s && gives(o) {
				out, found = append(out, i), true
			}
		}
		if !found && !known {
			l.faults = append(l.faults, fault.Fault{At: u.s.At, Says: fmt.Sprintf("step %s needs %s, which no step gives", u.id(), need),
				Remedy: "name what a step gives, mate, parts, joint NAME; in a hold joint sizes, in a lock joint"})
		}
	}
	return out
}

// meets says which steps give what a step needs; known: it may rightly be that
// none does.
func (l *linker) meets(u stepUse, need string) (gives func(stepUse) bool, known bool) {
	name, isJointOf := strings.CutPrefix(need, "joint ")
	switch {
	case need == "parts":
		return func(o stepUse) bool { return o.e.part.Side != Shared && o.e.part.Side != Purpose }, true
	case need == "mate":
		return l.mateSteps(u.e), true
	case need == "joint sizes":
		return l.sizeSteps(u.e), true
	case need == "joint" && u.e.joint != nil:
		return func(o stepUse) bool {
			return o.e != u.e && o.e.joint == u.e.joint && slices.Contains(o.s.Gives, "joint")
		}, false
	case isJointOf:
		return func(o stepUse) bool {
			return o.e.joint != nil && o.e.joint.name == name && slices.Contains(o.s.Gives, "joint")
		}, l.holds[name] != nil
	}
	return func(o stepUse) bool {
		return slices.Contains(o.s.Gives, need) && (o.e == u.e || u.e.part.Side == Shared || o.e.joint == nil)
	}, false
}

// mateSteps finish the other part, when it is made before this one.
func (l *linker) mateSteps(e *env) func(stepUse) bool {
	finishes := l.first.part.Finishes
	return func(o stepUse) bool {
		return e == l.second && o.e == l.first && (finishes == "" || slices.Contains(o.s.Gives, finishes))
	}
}

// sizeSteps make the two sizes a hold joins: all steps of both parts for the
// finished fit, those that give the sizes its joint names for any other.
func (l *linker) sizeSteps(e *env) func(stepUse) bool {
	if e.joint == nil {
		return func(stepUse) bool { return false }
	}
	if e.joint.owner == nil {
		return func(o stepUse) bool {
			return o.e == l.shaft || o.e == l.hub || o.e.joint != nil && o.e.joint != e.joint
		}
	}
	sizes := map[string]bool{}
	for _, field := range []string{"inner_size", "outer_size"} {
		if x := e.joint.decl.Fields[field]; x != nil {
			x.Names(func(name string, _ lang.Type) { sizes[name] = true })
		}
	}
	return func(o stepUse) bool {
		return o.e == e.joint.owner && slices.ContainsFunc(o.s.Gives, func(g string) bool { return sizes[g] })
	}
}

func (l *linker) stepCircle(all []stepUse, needs [][]int, done []bool) {
	at := slices.Index(done, false)
	var chain []int
	for !slices.Contains(chain, at) {
		chain = append(chain, at)
		at = needs[at][slices.IndexFunc(needs[at], func(n int) bool { return !done[n] })]
	}
	var round []string
	for _, i := range append(chain[slices.Index(chain, at):], at) {
		round = append(round, all[i].id())
	}
	l.faults = append(l.faults, fault.Fault{At: all[at].s.At, Says: "steps wait for one another: " + strings.Join(round, " <- "),
		Remedy: "take one need away, or change the order of the steps"})
}

func (l *linker) step(lw *lowering, u stepUse) {
	when, never := l.when(lw, u.e, u.s.When)
	if never {
		return
	}
	s := LinkedStep{Step: u.s, Of: u.e.part, Joint: u.e.jointName(), FullID: u.id(), WhenNode: when,
		HoursNode: lw.expr(u.e, u.s.Hours), WaitNode: lw.expr(u.e, u.s.Wait), CostsNode: lw.expr(u.e, u.s.Costs)}
	if _, ok := u.e.find(u.s.On, isPick); ok {
		s.OnPick = u.e.full + u.s.On
		l.outside(lw, u.e, &s)
	}
	l.leaves(lw, u.e, &s)
	l.opt.Steps = append(l.opt.Steps, s)
	at := len(l.opt.Steps) - 1
	l.last(func() { l.opt.Steps[at].Words = l.words(lw, u.e, u.s.Says, u.s.SaysPieces) })
}

// total sums over the steps that are done.
func (l *linker) total(lw *lowering) {
	sum := func(of func(LinkedStep) tape.Node) tape.Node {
		total := lw.b.Const(0)
		for _, s := range l.opt.Steps {
			n := of(s)
			if n == 0 {
				continue
			}
			if s.WhenNode != 0 {
				n = lw.b.Apply(lang.Cond, s.WhenNode, n, lw.b.Const(0))
			}
			total = lw.b.Apply(lang.Add, total, n)
		}
		return total
	}
	l.sums["total.hours"] = sum(func(s LinkedStep) tape.Node { return s.HoursNode })
	l.sums["total.wait"] = lw.b.Apply(lang.Add, sum(func(s LinkedStep) tape.Node { return s.WaitNode }), sum(func(s LinkedStep) tape.Node { return s.AwayNode }))
	l.sums["total.costs"] = lw.b.Apply(lang.Add, sum(func(s LinkedStep) tape.Node { return s.CostsNode }), sum(func(s LinkedStep) tape.Node { return s.FirmNode }))
	for _, name := range []string{"total.hours", "total.wait", "total.costs"} {
		l.opt.Totals[name] = l.sums[name]
	}
}
