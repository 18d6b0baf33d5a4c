package judge

import (
	"slices"

	"wornfit/advisor/answer"
	"wornfit/advisor/rank"
	"wornfit/advisor/solve"
	"wornfit/calc/interval"
	"wornfit/rules"
	"wornfit/rules/link"
)

// Rough is an option at first sight: ruled out for certain, or the most points
// it may earn whatever is picked and cut. Nothing else of it is kept.
type Rough struct {
	Combination link.Combination
	Out         bool    // ruled out, by facts or by contraction over all its picks at once
	Most        float64 // of one that is not
	unsure      bool    // a must hangs on what nobody stated: it cannot be told to work
	kind        string  // of one that is: the world, the shop or a wish
	broken      int     // and by how many musts, as far as seen
	judged      *Judged // when facts alone ruled it out: no more to be found
	trade       *rules.TradeName
}

// Rough looks an option over without any search.
func (b *Bench) Rough(c link.Combination) (Rough, error) {
	r := Rough{Combination: c, trade: b.Base.NameOf(c)}
	if v := b.aloneOut(c); v.out {
		r.Out, r.kind, r.broken = true, v.kind, v.broken
		return r, nil
	}
	s, out, err := b.sketch(c)
	if out != nil || err != nil {
		if r.Out, r.judged = true, out; out != nil {
			r.kind, r.broken = out.Kind, out.broken()
		}
		return r, err
	}
	j := b.over(c, s)
	defer s.shared.Rest()
	if len(s.sets[0].Failed) > 0 { // then every set has some
		j.Set = s.sets[0]
		b.noRow(j)
	}
	r.Out, r.Most, r.kind, r.broken = !j.Open(), j.most, j.Kind, j.broken()
	r.unsure = !r.Out && j.mustHangs()
	if !r.Out {
		b.keep(c, s)
	}
	if r.Out && len(s.sets[0].Failed) == 0 {
		return r, b.lockedRough(&r, j)
	}
	return r, nil
}

// mustHangs reports a must that no size decides, only what nobody stated: a need
// that hangs on no pick, or a limit that a glance says is never sure.
func (j *Judged) mustHangs() bool {
	for i := range j.Found.States {
		c, s := &j.Option.Checks[i], &j.Found.States[i]
		if c.Strength != link.Must || s.Holds != solve.Depends {
			continue
		}
		if !c.Need && s.Applies == solve.Yes || !j.picked(c.Margin) && (c.When == 0 || !j.picked(c.When)) {
			return true
		}
	}
	return false
}

// lockedRough looks whether a lock may open what is ruled out only because a hold
// does not carry what must pass.
func (b *Bench) lockedRough(r *Rough, j *Judged) error {
	var locked []link.Combination
	var joints []string
	for i := range j.Option.Checks {
		if c := &j.Option.Checks[i]; c.Carried != "" && !slices.Contains(joints, c.Joint) {
			joints = append(joints, c.Joint)
			locked = append(locked, r.Combination.Locked(&b.Base.Input, c.Joint)...)
		}
	}
	if len(locked) == 0 {
		return nil
	}
	j.Model.Apart = func(c *link.Check) bool { return c.Carried != "" }
	if b.glance(j); !j.Open() {
		return nil
	}
	for _, with := range locked {
		k, err := b.Rough(with)
		if err != nil {
			return err
		}
		if !k.Out && (r.Out || k.Most > r.Most) {
			r.Out, r.Most = false, k.Most
		}
		r.unsure = false // of several, what each may come to is not kept apart
	}
	return nil
}

// joined lets every picked column be all that any of the sets makes it.
func (b *Bench) joined(j *Judged, sets []link.PickSet) {
	j.Model.Joined = true
	for _, d := range j.Option.Dims { // the closest that any of the machines holds
		for n := range sets {
			if k, ok := sets[n].Column(d.By, "tolerance"); ok && k.Is {
				j.Model.Width[d.ID] = min(j.Model.Width[d.ID], k.Value.Hi)
			}
		}
	}
	for at, i := range j.Option.PickSlots {
		s := &j.Option.Slots[i]
		over := link.Known{Value: interval.None(), Is: true}
		for n := range sets {
			k, ok := sets[n].Column(s.Pick, s.Column)
			if !ok {
				k = b.Given.Whole(s)
			} else if k.Is {
				k.Value = interval.Point(k.Best)
			}
			over.Value, over.Grade = over.Value.Join(k.Value), max(over.Grade, k.Grade)
			over.Is = over.Is && k.Is
		}
		over.Best = over.Value.Mid()
		if s.YesNo || len(s.Words) > 0 {
			over.Best = over.Value.Lo
		}
		over.Is = over.Is && over.Value.Lo == over.Value.Hi
		j.Model.Picked[at] = over
	}
}

// mostOf is the most an option may earn, as far as a glance tells. A should that
// hangs on what is picked may yet be kept.
func (b *Bench) mostOf(j *Judged) float64 {
	if j.Found.Within == nil {
		return j.Mark.Points
	}
	may := 0.0 // half of each is taken off
	for i := range j.Found.States {
		c, s := &j.Option.Checks[i], &j.Found.States[i]
		if c.Strength == link.Should && s.Applies != solve.No && s.Holds == solve.Depends && (j.picked(c.Margin) || c.When != 0 && j.picked(c.When)) {
			may += 0.5
		}
	}
	return rank.Most(j.Option, b.Base.Input.Criteria, b.Weights, &j.Found, b.Base.OffShould) + b.Base.OffShould*may
}

// worked reports an option that is known to work.
func (j *Judged) worked() bool { return j.Verdict == answer.Works || j.Verdict == answer.WithCare }
