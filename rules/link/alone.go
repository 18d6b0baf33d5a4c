package link

import "slices"

// Alone links what a part demands whatever it is joined with: its needs, the
// neighbours it cannot bear, its picks, its sizes and their limits, each as far as
// it rests on the case and on the part itself. What rests on another file of the
// option is left out, so what is ruled out here is ruled out in every option with
// the part; open are the needs left out. Of a hold or a purpose the neighbours and
// the limits are those of the parts it is used on, and are left out too.
func Alone(in Input, p, purpose *Part) (o *Option, open []*Rule) {
	in.Trace = false
	l := &linker{in: &in, bare: true, alone: true, opt: &Option{Purpose: purpose}, holds: map[string]*env{}, locks: map[string]*env{}}
	e := newEnv(p, nil)
	switch p.Side {
	case Shaft:
		l.opt.Shaft, l.shaft = p, e
	case Hub:
		l.opt.Hub, l.hub = p, e
	case Purpose:
		l.purpose = e
	}
	lw := newLowering(l, nil)
	for i := range p.Needs {
		if !l.ifItCan(func() { l.check(lw, e, &p.Needs[i]) }) {
			open = append(open, &p.Needs[i])
		}
	}
	if p.Side == Shaft || p.Side == Hub {
		l.ifItCan(func() { l.features(lw, e) })
		l.sizesAlone(lw, e)
	}
	for i := range p.Picks {
		l.ifItCan(func() {
			if k := l.pick(lw, e, &p.Picks[i]); len(l.faults) == 0 {
				l.opt.Picks = append(l.opt.Picks, k)
			}
		})
	}
	l.opt.Slots, l.opt.Program = lw.inputs(), lw.built()
	l.opt.PickSlots = picked(l.opt.Slots)
	l.opt.Checks = slices.DeleteFunc(l.opt.Checks, func(c Check) bool {
		return c.Margin == 0 || c.Need && l.opt.asksMore(c.Margin) || c.When != 0 && l.opt.asksMore(c.When)
	})
	return l.opt, open
}

// sizesAlone lowers the sizes of a part and the limits on them. A range that rests
// on another file is left open.
func (l *linker) sizesAlone(lw *lowering, e *env) {
	for i := range e.part.Choose {
		l.ifItCan(func() { l.dim(lw, e, &e.part.Choose[i]) })
	}
	for i, u := range l.dimOf {
		d := &l.opt.Dims[i]
		d.Low, d.High = lw.b.Const(0), lw.b.Const(openEnd)
		l.ifItCan(func() {
			if low := lw.expr(u.e, u.d.Low); low != 0 {
				d.Low = low
			}
		})
		l.ifItCan(func() {
			if high := lw.expr(u.e, u.d.High); high != 0 {
				d.High = high
			}
		})
	}
	for i := range e.part.Limits {
		l.ifItCan(func() { l.check(lw, e, &e.part.Limits[i]) })
	}
}

// openEnd is beyond any size, in metres, and any heat, in kelvin.
const openEnd = 1e4

// ifItCan does a piece of work, and forgets it when it asked for what is not there.
func (l *linker) ifItCan(work func()) bool {
	checks := len(l.opt.Checks)
	work()
	if l.faults == nil {
		return true
	}
	l.opt.Checks, l.faults = l.opt.Checks[:checks], nil
	return false
}
