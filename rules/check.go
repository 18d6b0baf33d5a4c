package rules

import (
	"errors"

	"wornfit/calc/kernel"
	"wornfit/rules/fault"
	"wornfit/rules/link"
)

// Check loads a rule base as `knowledge check` does. In one run it tells the
// faults that Load tells, rules that can never be kept or always are, pairs that
// contradict, and, once the files are sound, what goes wrong when they are
// joined into options.
func Check(layers []Layer, calc []kernel.Kernel) (*Base, fault.List) {
	b, faults := Load(layers, calc)
	sound := len(faults) == 0
	for _, p := range b.Input.Parts {
		b.judge(p, &faults)
	}
	if sound {
		b.linkAll(&faults)
	}
	faults.Sort()
	return b, faults
}

// Remarks tells what is no fault but wants a look: names that nothing uses,
// trade names and sentences about parts that are not there.
func (b *Base) Remarks() fault.List {
	var faults fault.List
	for _, p := range b.Input.Parts {
		b.unused(p, &faults)
	}
	for i := range b.Patterns {
		b.Patterns[i].unsaid(&faults)
	}
	b.unspoken(&faults)
	b.namesWithout(&faults)
	faults.Sort()
	return faults
}

// linkAll links every option for every purpose: what two files make of each
// other no file shows by itself.
func (b *Base) linkAll(faults *fault.List) {
	for _, purpose := range b.Input.Parts {
		if purpose.Side != link.Purpose {
			continue
		}
		for _, c := range link.Every(b.Input, purpose) {
			_, err := c.Link(b.Input)
			var list fault.List
			if errors.As(err, &list) {
				*faults = append(*faults, list...)
			} else if err != nil {
				faults.Add(fault.Place{File: purpose.File}, c.ID, err.Error(), "see the files it is made of")
			}
		}
	}
}

// namesWithout tells the trade names that speak of a part that is not there.
func (b *Base) namesWithout(faults *fault.List) {
	ids := map[link.Side][]string{}
	for _, p := range b.Input.Parts {
		ids[p.Side] = append(ids[p.Side], p.ID)
	}
	have := func(id string, sides ...link.Side) bool {
		for _, s := range sides {
			for _, i := range ids[s] {
				if i == id {
					return true
				}
			}
		}
		return false
	}
	for i := range b.Names {
		n := &b.Names[i]
		look := func(list []string, what string, sides ...link.Side) {
			for _, id := range list {
				if !have(id, sides...) {
					faults.Add(n.At, n.ID, "there is no "+what+" "+id, fault.DidYouMean(id, ids[sides[0]]))
				}
			}
		}
		look(n.Shaft, "shaft treatment", link.Shaft)
		look(n.Hub, "hub treatment", link.Hub)
		look(n.Any, "treatment", link.Shaft, link.Hub)
		look(n.Fit, "hold", link.Hold)
		for p := range n.Cannot {
			look([]string{p}, "purpose", link.Purpose)
		}
	}
}
