package link

import "wornfit/rules/tape"

// Fact is a file's needs by themselves, with a program of their own: what a
// pattern of wear asks of the case. It is part of no option.
type Fact struct {
	Program *tape.Program
	Slots   []Slot
	Is      []tape.Node // by index of the file's needs: yes or no
	Lowered []Lowered   // when the Input says Trace
}

// Facts lowers the needs of a file that stands alone; purpose is what the fit
// they are asked of is for.
func Facts(in Input, p, purpose *Part) (*Fact, error) {
	l := &linker{in: &in, opt: &Option{Shaft: &Part{}, Hub: &Part{}, Purpose: purpose}, shaft: newEnv(&Part{}, nil), hub: newEnv(&Part{}, nil), purpose: newEnv(&Part{}, nil)}
	lw := newLowering(l, nil)
	e := newEnv(p, nil)
	out := &Fact{}
	for i := range p.Needs {
		out.Is = append(out.Is, lw.expr(e, p.Needs[i].Test))
	}
	if l.faults != nil {
		return nil, l.failed()
	}
	out.Program, out.Slots, out.Lowered = lw.built(), lw.inputs(), lw.lowered
	return out, nil
}
