package link

import "slices"

// Combination is one option before it is linked: which files, for which purpose.
type Combination struct {
	ID                  string // shaft-true-up+hub-bush-press
	Shaft, Hub, Purpose *Part
	Holds               map[string]*Part // by joint
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
				out = append(out, Combination{ID: ID(s, h, purpose, with), Shaft: s, Hub: h, Purpose: purpose, Holds: with})
			}
		}
	}
	return out
}

// Link links a combination.
func (c Combination) Link(in Input) (*Option, error) {
	return Link(in, c.Shaft, c.Hub, c.Holds, c.Purpose)
}

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
