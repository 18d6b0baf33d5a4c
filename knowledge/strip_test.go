package knowledge_test

import (
	"slices"
	"strings"
	"testing"

	"wornfit/calc/interval"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// slots are the neighbours an abrasive strip catches in: hands and arms were lost
// so (HSE, alerts on emery cloth at lathes; caution C16).
var slots = []string{"keyway", "flat", "cross-hole", "spline"}

// No route puts an abrasive strip on a shaft with an open slot: each step that
// polishes is left out where there is one, or the slot rules the repair out, or
// the shaft is new and the slot is cut after the polishing.
func TestNoStripOnAnOpenSlot(t *testing.T) {
	base := shipped(t)
	polishing, seen := 0, map[string]bool{}
	for _, p := range base.Input.Parts {
		if p.Side != link.Purpose {
			continue
		}
		for _, c := range link.Every(base.Input, p) {
			o, err := c.Link(base.Input)
			if err != nil {
				t.Fatal(err)
			}
			for i := range o.Steps {
				s := &o.Steps[i]
				if s.Of.Side != link.Shaft || !slices.Contains(s.Cautions, "C16") {
					continue
				}
				polishing++
				if seen[s.FullID+o.Shaft.ID] {
					continue
				}
				seen[s.FullID+o.Shaft.ID] = true
				for _, kind := range slots {
					if why := strip(o, s, kind); why != "" {
						t.Errorf("%s: %s polishes a shaft with a %s: %s", o.ID, s.FullID, kind, why)
					}
				}
			}
		}
	}
	if polishing < 50 {
		t.Errorf("only %d polishing steps were found; the walk has lost its way", polishing)
	}
}

// strip says why a step may stand beside an open slot; "" it does not.
func strip(o *link.Option, s *link.LinkedStep, kind string) string {
	at := slices.IndexFunc(s.Of.Features, func(f link.Feature) bool { return f.Kind == kind })
	if at < 0 {
		return "its file does not answer for one"
	}
	f := s.Of.Features[at]
	if f.Answer == "ruled out" || s.Of.ID == "replace" && cutAfter(f) {
		return ""
	}
	if s.WhenNode == 0 {
		return "it has no when"
	}
	reg := make([]interval.I, o.Program.Len())
	o.Program.StartI(reg)
	for _, slot := range o.Slots {
		reg[slot.Node] = interval.Whole()
		if slot.YesNo {
			reg[slot.Node] = interval.Of(0, 1)
		}
		if slot.Name == "shaft.near_"+strings.ReplaceAll(kind, "-", "_") {
			reg[slot.Node] = interval.Point(1)
		}
	}
	o.Program.Enclose(reg)
	if !tape.No(reg[s.WhenNode]) {
		return "its when lets it"
	}
	return ""
}

// cutAfter reports that the answer for a slot in a new shaft says that polishing
// comes before it; of a spline, that it is cut elsewhere.
func cutAfter(f link.Feature) bool {
	return strings.Contains(f.Why, "polish") && strings.Contains(f.Why, "before") || f.Kind == "spline" && strings.Contains(f.Why, "have it cut")
}
