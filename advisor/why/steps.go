package why

import (
	"strings"

	"wornfit/advisor/answer"
	"wornfit/rules"
	"wornfit/rules/link"
)

// Steps words the operations in the order they are done, each with the cautions
// that stand before the act.
func (w *Writer) Steps(base *rules.Base) []answer.Step {
	var out []answer.Step
	value := func(n int32) float64 {
		if n == 0 {
			return 0
		}
		return w.Reg[n]
	}
	for i := range w.Option.Steps {
		s := &w.Option.Steps[i]
		if s.WhenNode != 0 && !(w.Reg[s.WhenNode] > 0) {
			continue
		}
		st := answer.Step{ID: s.FullID, Says: w.Sentence(s.Words), On: w.Rows[s.OnPick],
			Hours: value(int32(s.HoursNode)), Wait: value(int32(s.WaitNode)), Costs: value(int32(s.CostsNode))}
		st.Costs, st.Wait = st.Costs+value(int32(s.FirmNode)), st.Wait+value(int32(s.AwayNode))
		if st.SentOut = value(int32(s.SentNode)) > 0; st.SentOut { // the firm has its own
			out = append(out, st)
			continue
		}
		for _, c := range s.Cautions {
			st.Cautions = append(st.Cautions, Caution(base, c))
		}
		out = append(out, st)
	}
	return out
}

// Caution is a caution in one line: the hazard, how it hurts, what to do.
func Caution(base *rules.Base, id string) string {
	t := func(col string) string { return base.Text("cautions", id, col) }
	return t("hazard") + " (" + t("why") + "): " + t("do")
}

// Mistakes and Neighbours gather what the parts of the option say.
func (w *Writer) Mistakes() []answer.Mistake {
	var out []answer.Mistake
	for _, p := range w.parts() {
		for _, m := range p.Mistakes {
			out = append(out, answer.Mistake{Says: m.Says, Instead: m.Instead})
		}
	}
	return out
}

// Neighbours says what is done about each feature next to the fit that the
// case names: near is what stands on the shaft and on the hub.
func (w *Writer) Neighbours(near map[link.Side][]string) []string {
	var out []string
	for _, p := range w.parts() {
		for _, kind := range near[p.Side] {
			for _, f := range p.Features {
				if f.Kind == kind {
					out = append(out, w.Called[p.Side.String()]+", "+strings.ReplaceAll(kind, "-", " ")+": "+f.Answer+"; "+f.Why)
				}
			}
		}
	}
	return out
}

func (w *Writer) parts() []*link.Part {
	out := []*link.Part{w.Option.Shaft, w.Option.Hub}
	done := map[*link.Part]bool{}
	for _, j := range []string{"sleeve", "bush", link.Fit} {
		for _, h := range []*link.Part{w.Option.Holds[j], w.Option.Locks[j]} {
			if h != nil && !done[h] {
				done[h] = true
				out = append(out, h)
			}
		}
	}
	return append(out, w.Option.Purpose)
}
