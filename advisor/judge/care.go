package judge

import (
	"slices"
	"strings"

	"wornfit/rules/link"
)

// care says what wants care beside the rules: sizes held closer than the machine
// usually does, gauges too coarse for the limits, musts that rest on numbers
// nobody is sure of.
func (j *Judged) care() []string {
	out := []string{}
	if closer := j.dimsSaid(func(i int) bool { return slices.Contains(j.Found.Narrowed, j.Option.Dims[i].ID) }); closer != "" {
		out = append(out, "held closer than the machine usually does: "+closer)
	}
	coarse := j.dimsSaid(func(i int) bool {
		return i < len(j.Found.Windows) && !j.Found.Windows[i].Held && j.Found.Windows[i].Width < 2*j.Found.Windows[i].Gauge*(1-1e-6)
	})
	if coarse != "" {
		out = append(out, "the gauge is too coarse to tell these limits, find a better one: "+coarse)
	}
	for i := range j.Found.States {
		if c := &j.Option.Checks[i]; c.Strength == link.Must && len(j.Found.States[i].Weak) > 0 {
			out = append(out, "numbers that nobody is sure of decide whether it works; wornfit why names them")
			break
		}
	}
	return out
}

// dimsSaid names the sizes that are so, in cutting order.
func (j *Judged) dimsSaid(is func(i int) bool) string {
	var says []string
	for i := range j.Option.Dims {
		if is(i) {
			says = append(says, j.Option.Dims[i].Says)
		}
	}
	return strings.Join(says, ", ")
}
