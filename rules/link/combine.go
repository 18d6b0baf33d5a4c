package link

import (
	"maps"
	"slices"
)

// Combination is one option before it is linked: which files, for which purpose.
type Combination struct {
	ID                  string // shaft-true-up+hub-bush-press
	Shaft, Hub, Purpose *Part
	Holds               map[string]*Part // by joint
	Locks               map[string]*Part // by joint; no part of the ID
}

// All gives every option there is for a purpose: each shaft treatment with each
// hub treatment and each hold that a joint may have, in the order of the files.
// Nothing is linked.
func All(in Input, purpose *Part) []Combination {
	var out []Combination
	for _, s := range in.of(Shaft) {
		for _, h := range in.of(Hub) {
			holds := []map[string]*Part{{}}
			for _, j := range jointsOf(s, h, purpose) {
				holds = each(holds, j.Name, in.holdsFor(j))
			}
			for _, with := range holds {
				c := Combination{ID: ID(s, h, purpose, with), Shaft: s, Hub: h, Purpose: purpose, Holds: with}
				out = append(out, in.asked(c)...)
			}
		}
	}
	return out
}

// Every is All, and each of them with each lock that one of its joints may be
// given: for checks of the files.
func Every(in Input, purpose *Part) []Combination {
	out := All(in, purpose)
	for _, c := range out[:len(out):len(out)] {
		for _, j := range slices.Sorted(maps.Keys(c.Holds)) {
			out = append(out, c.Locked(&in, j)...)
		}
	}
	return out
}

// asked gives the finished fit the lock its purpose asks for, one combination
// for each that it may be.
func (in *Input) asked(c Combination) []Combination {
	if len(c.Purpose.Locks) == 0 {
		return []Combination{c}
	}
	var out []Combination
	for _, k := range in.of(Lock) {
		if slices.Contains(c.Purpose.Locks, k.ID) {
			out = append(out, c.With(Fit, k))
		}
	}
	return out
}

// With is the combination with a lock on a joint.
func (c Combination) With(joint string, lock *Part) Combination {
	locks := map[string]*Part{joint: lock}
	for j, k := range c.Locks {
		if j != joint {
			locks[j] = k
		}
	}
	c.Locks = locks
	return c
}

// Locked lists what a combination becomes with one more lock on a joint that has
// none: for a hold that does not carry by itself.
func (c Combination) Locked(in *Input, joint string) []Combination {
	if c.Locks[joint] != nil || c.Holds[joint] == nil {
		return nil
	}
	var out []Combination
	for _, k := range in.of(Lock) {
		if joint == Fit || !k.FitOnly {
			out = append(out, c.With(joint, k))
		}
	}
	return out
}

// Link links a combination.
func (c Combination) Link(in Input) (*Option, error) { return link(in, c, (*linker).lower, false) }

// Sketch links a combination without its words and named values: enough to judge
// it. Link gives the same nodes and slots, and more after them.
func (c Combination) Sketch(in Input) (*Option, error) { return link(in, c, (*linker).lower, true) }

// ID names an option by its parts, each hold after the part it holds.
func ID(shaft, hub, purpose *Part, holds map[string]*Part) string {
	id := "shaft-" + shaft.ID + heldBy(shaft, holds) + "+hub-" + hub.ID + heldBy(hub, holds)
	if h := holds[Fit]; purpose.Static && h != nil {
		id += "+fit-" + h.ID
	}
	return id
}

func heldBy(p *Part, holds map[string]*Part) string {
	s := ""
	for _, j := range p.Joints {
		if h := holds[j.Name]; h != nil {
			s += "-" + h.ID
		}
	}
	return s
}

func (in *Input) of(side Side) []*Part {
	return slices.DeleteFunc(slices.Clone(in.Parts), func(p *Part) bool { return p.Side != side })
}

// jointsOf are the joints of two parts, and the finished fit when it has a hold.
func jointsOf(shaft, hub, purpose *Part) []Joint {
	joints := append(slices.Clone(shaft.Joints), hub.Joints...)
	if purpose.Static {
		joints = append(joints, Joint{Name: Fit})
	}
	return joints
}

func (in *Input) holdsFor(j Joint) []*Part {
	return slices.DeleteFunc(in.of(Hold), func(h *Part) bool {
		return h.FitOnly && j.Name != Fit || len(j.Holds) > 0 && !slices.Contains(j.Holds, h.ID)
	})
}

func (in *Input) holdNames(j *joint) []string {
	decl := Joint{Name: j.name}
	if j.decl != nil {
		decl = *j.decl
	}
	var names []string
	for _, h := range in.holdsFor(decl) {
		names = append(names, h.ID)
	}
	return names
}

// each is every choice so far with each hold of one more joint.
func each(sets []map[string]*Part, joint string, holds []*Part) []map[string]*Part {
	var out []map[string]*Part
	for _, s := range sets {
		for _, h := range holds {
			with := map[string]*Part{joint: h}
			for j, o := range s {
				with[j] = o
			}
			out = append(out, with)
		}
	}
	return out
}
