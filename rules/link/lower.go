package link

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/tape"
)

// lowering makes one program of an option's expressions, each define when it is
// first asked for. A pick has a lowering of its own, in which no size exists.
type lowering struct {
	l     *linker
	b     *tape.Builder
	pick  *Pick             // of a pick's own program
	done  map[asked]outcome // defines and joint fields met so far
	chain []string          // those being worked out now, outermost first
	slots []Slot

	lowered []Lowered // when the Input says Trace
}

// asked is a name in one use of a file.
type asked struct {
	in   *env
	name string
}

type outcome struct {
	node tape.Node
	err  error
	busy bool
}

// told is an error already put on the list of faults.
type told struct{ fault.Fault }

func (t told) Unwrap() error { return t.Fault }

// usualSlots is how many inputs most options do with.
const usualSlots = 256

func newLowering(l *linker, pick *Pick) *lowering {
	lw := &lowering{l: l, b: tape.NewBuilder(), pick: pick, done: doneRoom.Get().(map[asked]outcome)}
	if pick == nil {
		lw.slots = (*slotRoom.Get().(*[]Slot))[:0]
	}
	return lw
}

// slotRoom is where slots are gathered, as many as there come to be.
var slotRoom = sync.Pool{New: func() any { s := make([]Slot, 0, usualSlots); return &s }}

// inputs ends gathering slots: a list of just those there are.
func (lw *lowering) inputs() []Slot {
	if lw.pick != nil {
		return lw.slots
	}
	out, room := slices.Clone(lw.slots), lw.slots
	lw.slots = nil
	clear(room)
	slotRoom.Put(&room)
	return out
}

// built ends lowering: the program of all of it.
func (lw *lowering) built() *tape.Program {
	p := lw.b.Build()
	lw.b.Rest()
	clear(lw.done)
	doneRoom.Put(lw.done)
	lw.done = nil
	return p
}

// doneRoom is maps for what is met, emptied.
var doneRoom = sync.Pool{New: func() any { return map[asked]outcome{} }}

// expr lowers an expression as the file of e reads it. 0: a fault was told.
func (lw *lowering) expr(e *env, x *lang.Expr) tape.Node {
	if x == nil {
		return 0
	}
	n, err := lw.try(e, x)
	if err != nil {
		return 0
	}
	return n
}

func (lw *lowering) try(e *env, x *lang.Expr) (tape.Node, error) {
	resolve := func(name string) (tape.Node, error) { return lw.name(e, name) }
	var names map[string]tape.Node
	if lw.l.in.Trace {
		names = map[string]tape.Node{}
		resolve = func(name string) (tape.Node, error) {
			n, err := lw.name(e, name)
			names[name] = n
			return n, err
		}
	}
	n, err := lw.b.Lower(x, resolve)
	if err != nil {
		return 0, lw.l.tell(err, x.At)
	}
	if names != nil {
		lw.lowered = append(lw.lowered, Lowered{Of: e.part, Joint: e.jointName(), Expr: x, Node: n, Names: names})
	}
	return n, nil
}

// tell puts an error on the list, once.
func (l *linker) tell(err error, at fault.Place) error {
	var t told
	if errors.As(err, &t) {
		return err
	}
	var f fault.Fault
	if !errors.As(err, &f) {
		f = fault.Fault{At: at, Says: err.Error()}
	}
	l.faults = append(l.faults, f)
	return told{f}
}

// once works a name out the first time it is asked for, and tells a name that
// rests on itself with the whole chain.
func (lw *lowering) once(k asked, says string, at fault.Place, work func() (tape.Node, error)) (tape.Node, error) {
	o, ok := lw.done[k]
	switch {
	case ok && o.busy:
		return 0, lw.circle(says, at)
	case ok:
		return o.node, o.err
	}
	lw.done[k] = outcome{busy: true}
	lw.chain = append(lw.chain, says)
	n, err := work()
	lw.chain = lw.chain[:len(lw.chain)-1]
	lw.done[k] = outcome{node: n, err: err}
	return n, err
}

func (lw *lowering) circle(says string, at fault.Place) error {
	from := max(slices.Index(lw.chain, says), 0)
	round := append(slices.Clone(lw.chain[from:]), says)
	return lw.l.tell(fault.Fault{
		At:     at,
		Says:   says + " is worked out from itself: " + strings.Join(round, " <- "),
		Remedy: "break the circle: each value must rest on values known before it",
	}, at)
}

// slot is an input of the program, listed on first use.
func (lw *lowering) slot(a Ask, t lang.Type) tape.Node {
	if n, ok := lw.b.Find(a.Name); ok {
		return n
	}
	n := lw.b.Slot(a.Name)
	lw.b.Mark(n, t.Kind)
	lw.slots = append(lw.slots, Slot{n, lw.l.in.ask(a, t)})
	return n
}

// number is a number of a file; of a range its low or high end.
func (lw *lowering) number(e *env, at int, end string) tape.Node {
	n := &e.part.Numbers[at]
	name := e.nums + n.ID
	if end != "" {
		name = end + "(" + name + ")"
	}
	return lw.slot(Ask{Name: name, Kind: NumberSlot, Number: n}, lang.Type{Dim: n.Dim})
}

// word is the constant an option.* name stands for.
func (lw *lowering) word(e *env, name string) (tape.Node, error) {
	t, ok := lw.l.in.Given[name]
	if !ok || t.Words == nil {
		return 0, fmt.Errorf("%s is not known", name)
	}
	word := lw.l.optionWord(e, name[len("option."):])
	if word == "" {
		return 0, fmt.Errorf("%s is not known of a part alone", name)
	}
	code, ok := t.Words.Code(word)
	if !ok {
		return 0, fmt.Errorf("%s is %q here, which its list of words does not hold", name, word)
	}
	return lw.b.Const(code), nil
}

// optionWord is what is done to a side, what holds a joint, what the fit is for,
// or in a hold or lock the joint it is on.
func (l *linker) optionWord(e *env, of string) string {
	switch {
	case of == "joint" && e.joint != nil:
		return e.joint.name
	case of == "joint" && !l.alone:
		return "none"
	case of == "shaft":
		return idOf(l.opt.Shaft)
	case of == "hub":
		return idOf(l.opt.Hub)
	case of == "purpose":
		return idOf(l.opt.Purpose)
	case l.alone:
		return ""
	}
	if h := l.holds[of]; h != nil {
		return h.part.ID
	}
	return "none"
}

// idOf is a part's id, "" of none.
func idOf(p *Part) string {
	if p == nil {
		return ""
	}
	return p.ID
}
