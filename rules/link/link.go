package link

import (
	"fmt"
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// linker joins the files of one option.
type linker struct {
	in            *Input
	opt           *Option
	shaft, hub    *env
	purpose       *env
	common        *env // nil: there is none
	scoring       *env
	holds, locks  map[string]*env // by joint
	first, second *env            // the two parts in cutting order
	over          []tape.Node
	dimOf         []dimUse
	sums          map[string]tape.Node // total.*, joined.*
	away          [2]tape.Node         // number of the firm that has the shaft, the hub, after the steps so far; 0: no step yet
	paid          map[string]tape.Node // by pick: yes-no, a step so far has its firm's price
	later         []func()             // what only words ask for, lowered after all that judges
	bare          bool                 // without words
	alone         bool                 // one part only: of the other files nothing is known
	faults        fault.List
}

// Link joins a shaft treatment, a hub treatment, the hold of each of their
// joints (and of "fit" for a static purpose) and a purpose into one option. The
// error is a fault.List that names every fault met.
func Link(in Input, shaft, hub *Part, holds map[string]*Part, purpose *Part) (*Option, error) {
	return link(in, Combination{Shaft: shaft, Hub: hub, Holds: holds, Purpose: purpose}, (*linker).lower, false)
}

func link(in Input, c Combination, lower func(*linker), bare bool) (*Option, error) {
	l := &linker{
		bare: bare,
		in:   &in,
		opt: &Option{
			ID: ID(c.Shaft, c.Hub, c.Purpose, c.Holds), Shaft: c.Shaft, Hub: c.Hub, Purpose: c.Purpose, Holds: map[string]*Part{}, Locks: c.Locks,
			Totals: map[string]tape.Node{}, Criteria: map[string]tape.Node{},
		},
		shaft: newEnv(c.Shaft, nil), hub: newEnv(c.Hub, nil), purpose: newEnv(c.Purpose, nil),
		holds: map[string]*env{}, locks: map[string]*env{}, sums: map[string]tape.Node{}, paid: map[string]tape.Node{},
	}
	scoring := in.Scoring
	if scoring == nil {
		scoring = &Part{ID: "criteria", Side: Shared}
	}
	l.scoring = newEnv(scoring, nil)
	if in.Common != nil {
		l.common = newEnv(in.Common, nil)
	}
	l.first, l.second = cuttingOrder(l.shaft, l.hub)
	l.hold(c.Holds)
	for name, k := range c.Locks {
		l.lock(name, k)
	}
	if l.faults != nil {
		return nil, l.failed()
	}
	lower(l)
	if l.faults != nil {
		return nil, l.failed()
	}
	return l.opt, nil
}

func (l *linker) failed() error {
	l.faults.Sort()
	return l.faults.Err()
}

// hold puts each hold on its joint.
func (l *linker) hold(holds map[string]*Part) {
	for _, e := range []*env{l.shaft, l.hub} {
		for i := range e.part.Joints {
			j := &e.part.Joints[i]
			l.holdOne(holds, &joint{name: j.Name, owner: e, decl: j}, j.At)
		}
	}
	if l.opt.Purpose.Static {
		l.holdOne(holds, &joint{name: Fit}, l.purpose.at())
	}
	for name, h := range holds {
		if l.holds[name] == nil {
			l.faults.Add(fault.Place{File: h.File}, "", fmt.Sprintf("%s has no joint %s for %s to hold", l.opt.ID, name, fileName(h)), "leave the hold out")
		}
	}
}

func (l *linker) holdOne(holds map[string]*Part, j *joint, at fault.Place) {
	switch h := holds[j.name]; {
	case h == nil:
		l.faults.Add(at, "", fmt.Sprintf("joint %s of %s has no hold", j.name, l.opt.ID), "name one of its holds: "+strings.Join(l.in.holdNames(j), ", "))
	case l.holds[j.name] != nil:
		l.faults.Add(at, "", fmt.Sprintf("%s has two joints called %s", l.opt.ID, j.name), "give one of them another name")
	case h.FitOnly && j.name != Fit:
		l.faults.Add(at, "", fmt.Sprintf("%s cannot hold joint %s: it is for the finished fit alone", fileName(h), j.name), "choose another hold")
	default:
		l.holds[j.name] = newEnv(h, j)
		l.opt.Holds[j.name] = h
	}
}

// lock puts a lock on a joint beside its hold.
func (l *linker) lock(joint string, k *Part) {
	h := l.holds[joint]
	if h == nil {
		l.faults.Add(fault.Place{File: k.File}, "", fmt.Sprintf("%s has no joint %s for %s to lock", l.opt.ID, joint, fileName(k)), "leave the lock out")
		return
	}
	l.locks[joint] = newEnv(k, h.joint)
}

// locked reports whether a lock on a hold's joint takes a limit off it.
func (l *linker) locked(e *env, r *Rule) bool {
	if r.Carried == "" || e.joint == nil || e.part.Side != Hold {
		return false
	}
	k := l.locks[e.joint.name]
	return k != nil && slices.Contains(k.part.Carries, r.Carried)
}

// envs are the files in cutting order, each hold after the part whose joint it
// is on; the finished fit's hold and the purpose come last.
func (l *linker) envs() []*env {
	var out []*env
	for _, e := range []*env{l.first, l.second} {
		out = append(out, e)
		for i := range e.part.Joints {
			out = append(out, l.holding(e.part.Joints[i].Name)...)
		}
	}
	if h := l.holds[Fit]; h != nil && h.joint.owner == nil {
		out = append(out, l.holding(Fit)...)
	}
	return append(out, l.purpose)
}

// holding are the hold of a joint and its lock.
func (l *linker) holding(joint string) []*env {
	var out []*env
	for _, list := range []map[string]*env{l.holds, l.locks} {
		if e := list[joint]; e != nil {
			out = append(out, e)
		}
	}
	return out
}

// lower makes the option's program.
func (l *linker) lower() {
	lw := newLowering(l, nil)
	l.room()
	l.dims(lw)
	l.ranges(lw)
	for _, e := range l.envs() {
		l.checks(lw, e)
		l.aims(lw, e)
	}
	l.steps(lw)
	l.scores(lw)
	l.picks(lw)
	l.holdsAfterSizes(lw)
	for _, e := range l.envs() {
		l.last(func() { l.named(lw, e) })
	}
	l.finish()
	l.opt.Slots, l.opt.Lowered = lw.inputs(), lw.lowered
	l.opt.PickSlots = picked(l.opt.Slots)
	l.opt.Program = lw.built()
}

// last puts off what only words ask for. What comes first then has the same
// nodes and slots whether there are words or not.
func (l *linker) last(work func()) {
	if !l.bare {
		l.later = append(l.later, work)
	}
}

func (l *linker) finish() {
	for _, work := range l.later {
		work()
	}
}

// room sets lists aside in the size they come to.
func (l *linker) room() {
	checks, steps, picks := 0, 0, 0
	for _, e := range l.envs() {
		checks += len(e.part.Needs) + len(e.part.Limits) + len(e.part.bars)
		steps += len(e.part.Steps)
		picks += len(e.part.Picks)
	}
	l.opt.Checks = make([]Check, 0, checks)
	l.opt.Steps = make([]LinkedStep, 0, steps)
	l.opt.Picks = make([]LinkedPick, 0, picks)
}

func (l *linker) aims(lw *lowering, e *env) {
	for i := range e.part.Aims {
		a := &e.part.Aims[i]
		l.opt.Aims = append(l.opt.Aims, LinkedAim{Aim: *a, Of: e.part, Joint: e.jointName(),
			Least: lw.expr(e, a.Least), Most: lw.expr(e, a.Most), Middle: lw.expr(e, a.Middle), Of_: lw.expr(e, a.Of)})
	}
	slices.SortStableFunc(l.opt.Aims, func(a, b LinkedAim) int {
		switch {
		case a.First && !b.First:
			return -1
		case b.First && !a.First:
			return 1
		}
		return 0
	})
}

// named lists the defines that say what they are, and those that something
// used. Rows have no number and are left out.
func (l *linker) named(lw *lowering, e *env) {
	for i := range e.part.Defines {
		d := &e.part.Defines[i]
		if d.Is == nil {
			continue
		}
		if _, used := lw.done[asked{e, d.ID}]; !used && d.Says == "" {
			continue
		}
		n, err := lw.define(e, d)
		if err != nil {
			continue // told
		}
		t := e.typeOf(d)
		if t.Kind == lang.Row {
			continue
		}
		l.opt.Named = append(l.opt.Named, Named{Name: e.full + d.ID, Says: d.Says, Told: d.Told, Of: e.part, Joint: e.jointName(), Node: n, Dim: t.Dim, Type: t})
	}
}
