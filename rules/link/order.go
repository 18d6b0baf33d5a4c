package link

import (
	"fmt"
	"slices"

	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// cuttingOrder gives the part finished first and the one cut to suit it. The
// surface with less freedom comes first: kept, then less metal, then more.
// Alike: the hub, since a shaft is turned to suit a hole.
func cuttingOrder(shaft, hub *env) (first, second *env) {
	if shaft.part.Metal < hub.part.Metal {
		return shaft, hub
	}
	return hub, shaft
}

// mate is the dimension that `suits: mate` means in a file: the other part's
// finished size, if that is cut and is cut earlier. "" when there is none.
func (l *linker) mate(e *env) string {
	if l.alone || e != l.second || l.first.part.Metal == Kept {
		return ""
	}
	return l.first.part.Finishes
}

// dims makes the nodes of every size, in cutting order: the first part's, the
// second's, then what the holds and the purpose choose.
func (l *linker) dims(lw *lowering) {
	for _, e := range l.envs() {
		for i := range e.part.Choose {
			l.dim(lw, e, &e.part.Choose[i])
		}
	}
}

func (l *linker) dim(lw *lowering, e *env, d *Dimension) {
	id := e.dimID(d.ID)
	if i := slices.IndexFunc(l.opt.Dims, func(o Dim) bool { return o.ID == id }); i >= 0 {
		l.faults = append(l.faults, fault.Fault{At: d.At, Says: fmt.Sprintf("%s is a size of %s and of %s", id, fileName(l.opt.Dims[i].From), fileName(e.part)),
			Remedy: "give one of them another name"})
		return
	}
	suits := ""
	switch {
	case d.Suits == "mate":
		suits = l.mate(e)
	case d.Suits != "":
		suits = e.dimID(d.Suits)
	}
	size := lang.Type{Dim: d.dim()}
	target := lw.slot(Ask{Name: id + ".target", Kind: TargetSlot}, size)
	size.Dim.Scale = quantity.Ratio // what a temperature misses by is a change of temperature
	over := lw.slot(Ask{Name: id + ".cut", Kind: CutSlot}, size)
	gauge := lw.slot(Ask{Name: id + ".gauge", Kind: GaugeSlot}, size)
	out := Dim{ID: id, Says: d.Says, Part: d.Part, By: d.By, From: e.part, Joint: e.jointName(), Inside: d.Inside, Suits: suits,
		Target: target, Cut: over, Gauge: gauge}
	if _, ok := e.find(d.By, isPick); ok {
		out.By = e.full + d.By
	}
	if suits != "" {
		i := slices.IndexFunc(l.opt.Dims, func(o Dim) bool { return o.ID == suits })
		if i < 0 {
			l.faults = append(l.faults, fault.Fault{At: d.At, Says: fmt.Sprintf("%s suits %s, which is no size cut before it", id, suits),
				Remedy: "name a size that stands earlier under choose, or mate"})
			return
		}
		over = lw.b.Apply(lang.Add, over, l.over[i])
	}
	out.Reading = lw.b.Apply(lang.Add, target, over)
	out.Value = lw.b.Apply(lang.Add, out.Reading, gauge)
	l.opt.Dims = append(l.opt.Dims, out)
	l.over = append(l.over, over)
	l.dimOf = append(l.dimOf, dimUse{e, d})
}

// dimUse is where a linked dimension was declared.
type dimUse struct {
	e *env
	d *Dimension
}

// ranges lowers what each target may be.
func (l *linker) ranges(lw *lowering) {
	for i, u := range l.dimOf {
		l.opt.Dims[i].Low, l.opt.Dims[i].High = lw.expr(u.e, u.d.Low), lw.expr(u.e, u.d.High)
	}
}

// holdsAfterSizes moves what a hold chooses (a temperature, a pin) behind the
// last size of the joint it is on, since it is settled when both are made.
func (l *linker) holdsAfterSizes(lw *lowering) {
	if !slices.ContainsFunc(l.opt.Dims, func(d Dim) bool { return d.Joint != "" }) {
		return
	}
	var moved []Dim
	for _, d := range l.opt.Dims {
		if d.Joint == "" {
			moved = append(moved, d)
		}
	}
	for _, d := range l.opt.Dims {
		if d.Joint == "" {
			continue
		}
		at := 0
		for _, t := range l.jointTargets(lw, d.Joint) {
			at = max(at, 1+slices.IndexFunc(moved, func(o Dim) bool { return o.Target == t }))
		}
		for at < len(moved) && moved[at].Joint == d.Joint {
			at++ // a hold's own order stands
		}
		moved = slices.Insert(moved, at, d)
	}
	l.opt.Dims = moved
}

// jointTargets are the targets that the two sizes of a joint rest on.
func (l *linker) jointTargets(lw *lowering, joint string) []tape.Node {
	var targets []tape.Node
	for _, field := range []string{"joint.inner_size", "joint.outer_size"} {
		n, ok, err := lw.jointField(l.holds[joint], field)
		if !ok || err != nil {
			continue
		}
		targets = append(targets, lw.b.Uses(n)...)
	}
	return targets
}
