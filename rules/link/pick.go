package link

import (
	"fmt"
	"slices"
	"strings"

	"wornfit/calc/interval"
	"wornfit/rules/fault"
	"wornfit/rules/tape"
)

// picks lists the picks of the option so that each comes after those it asks
// about, each with a program of its own.
func (l *linker) picks(main *lowering) {
	all := make([]LinkedPick, 0, cap(l.opt.Picks))
	for _, e := range l.envs() {
		for i := range e.part.Picks {
			all = append(all, l.pick(main, e, &e.part.Picks[i]))
		}
	}
	for len(all) > 0 {
		at := slices.IndexFunc(all, func(p LinkedPick) bool { return len(l.awaited(all, p)) == 0 })
		if at < 0 {
			l.pickCircle(all)
			return
		}
		p := all[at]
		for _, s := range p.Slots {
			i := slices.IndexFunc(l.opt.Picks, func(o LinkedPick) bool { return o.Full == s.Pick })
			if i >= 0 && !slices.Contains(p.rests, i) {
				p.rests = append(p.rests, i)
			}
		}
		l.opt.Picks = append(l.opt.Picks, p)
		all = slices.Delete(all, at, at+1)
	}
}

// awaited are the picks still in the list that a pick asks about.
func (l *linker) awaited(all []LinkedPick, p LinkedPick) []int {
	var out []int
	for i, o := range all {
		if slices.ContainsFunc(p.Slots, func(s Slot) bool { return s.Kind == PickSlot && s.Pick == o.Full }) {
			out = append(out, i)
		}
	}
	return out
}

func (l *linker) pickCircle(all []LinkedPick) {
	at := 0
	var chain []int
	for !slices.Contains(chain, at) {
		chain = append(chain, at)
		at = l.awaited(all, all[at])[0]
	}
	var round []string
	for _, i := range append(chain[slices.Index(chain, at):], at) {
		round = append(round, all[i].Full)
	}
	l.faults = append(l.faults, fault.Fault{At: all[at].At, Says: fmt.Sprintf("picks wait for one another: %s", strings.Join(round, " <- ")),
		Remedy: "let one of them ask about what is given instead"})
}

func (l *linker) pick(main *lowering, e *env, p *Pick) LinkedPick {
	out := LinkedPick{Pick: p, Of: e.part, Joint: e.jointName(), Full: e.full + p.ID, Failed: ruled(e, &p.Missing)}
	l.last(func() {
		at := slices.IndexFunc(l.opt.Picks, func(o LinkedPick) bool { return o.Full == out.Full })
		if at >= 0 { // else a circle was told
			l.wording(main, e, &l.opt.Picks[at].Failed)
		}
	})
	out.Failed.Need = true
	if _, ok := l.in.Tables[tableOf(p.From)]; !ok {
		l.faults = append(l.faults, fault.Fault{At: p.At, Says: fmt.Sprintf("%s picks from %s, which is no table", out.Full, p.From), Remedy: "name a table of the vocabulary"})
	}
	lw := newLowering(l, p)
	if p.Where != nil {
		out.Where = lw.expr(e, p.Where)
	}
	if p.Best != nil {
		out.Best = lw.expr(e, p.Best)
	}
	out.Program, out.Slots, out.Lowered = lw.built(), lw.inputs(), lw.lowered
	return out
}

// Unsettled are the givens that decide whether a row fits and are not known
// exactly: what to ask about a pick that is unsure.
func (p *LinkedPick) Unsettled(known map[string]Known) []Slot {
	if p.Where == 0 {
		return nil
	}
	var out []Slot
	uses := p.Program.Uses(p.Where)
	for _, s := range p.Slots {
		k := known[s.Name]
		if s.Kind == GivenSlot && slices.Contains(uses, s.Node) && (!k.Is || k.Value.Width() > 0) {
			out = append(out, s)
		}
	}
	return out
}

// HangsOn reports whether another value of a given would settle otherwise which of
// the rows fit; value is what is known of the other givens.
func (p *LinkedPick) HangsOn(given string, rows []RowValues, value func(Slot) Known) bool {
	if p.Where == 0 {
		return false
	}
	asked := func(row RowValues, free bool) interval.I {
		reg := make([]interval.I, p.Program.Len())
		p.Program.StartI(reg)
		for _, s := range p.Slots {
			k := Known{}
			switch {
			case s.Pick == "it":
				k = row.Columns[s.Column]
			case s.Kind == GivenSlot && !(free && s.Name == given):
				k = value(s)
			}
			reg[s.Node] = orWhole(k, s).Value
		}
		p.Program.Enclose(reg)
		return reg[p.Where]
	}
	return slices.ContainsFunc(rows, func(r RowValues) bool { return asked(r, true) != asked(r, false) })
}

// Asks are the names of givens that the picks ask about, beyond what the
// option's own program does: hub.swing, shaft.material.hardness.
func (o *Option) Asks() []Slot {
	var out []Slot
	seen := map[string]bool{}
	for i := range o.Picks {
		for _, s := range o.Picks[i].Slots {
			if s.Kind == GivenSlot && !seen[s.Name] {
				seen[s.Name] = true
				out = append(out, s)
			}
		}
	}
	return out
}

// Slot finds an input of the option by its name.
func (o *Option) Slot(name string) (Slot, bool) {
	n, ok := o.Program.Slot(name)
	if !ok {
		return Slot{}, false
	}
	i := slices.IndexFunc(o.Slots, func(s Slot) bool { return s.Node == n })
	return o.Slots[i], true
}

// Uses are the slots a node rests on.
func (o *Option) Uses(n tape.Node) []Slot {
	var out []Slot
	for _, u := range o.Program.Uses(n) {
		i := slices.IndexFunc(o.Slots, func(s Slot) bool { return s.Node == u })
		out = append(out, o.Slots[i])
	}
	return out
}
