package tape

import (
	"math"
	"slices"
	"sync"

	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/rules/lang"
)

// step is one op to run: dst from a, b, c. Of a Call, a is its place in calls.
type step struct {
	op      lang.Op
	a, b, c Node
	dst     Node
}

// Program is what a Builder built. It is never changed, so goroutines may share
// it; each needs registers of its own.
type Program struct {
	*graph
	steps []step // ascending dst
	rests []Node // of a program made by Only: all nodes it rests on, the roots too
}

// graph is the nodes of a program, or of one being built.
type graph struct {
	nodes   []node
	slots   []Node
	labels  []string // of the slots
	calls   []call
	scratch Node // first of the registers behind the nodes where a call's arguments are gathered
	spare   int  // how many
}

// work is room that intervals need beside their registers.
type work struct {
	found []Node    // those that under found, at its end
	need  []bool    // by node: every kept point needs it to be a number
	hangs []uint8   // by node: how it hangs on what moves
	x     []float64 // a kernel's arguments
	p     *Program
	reg   []interval.I
	moved bool // a slot was narrowed by more than leastStep
}

// Build gives the program of all nodes so far.
func (b *Builder) Build() *Program {
	p := &Program{graph: &graph{
		nodes:   slices.Clone(b.nodes),
		slots:   slices.Clone(b.slots),
		labels:  slices.Clone(b.labels),
		calls:   slices.Clone(b.calls),
		scratch: Node(len(b.nodes)),
	}}
	for _, c := range p.calls {
		p.spare = max(p.spare, len(c.args))
	}
	p.steps = make([]step, 0, len(p.nodes)-len(p.slots))
	for n := range p.nodes {
		if nd := &p.nodes[n]; n > 0 && nd.runs() {
			p.steps = append(p.steps, stepOf(nd, Node(n)))
		}
	}
	return p
}

// works is room not in use now.
var works sync.Pool

// work is room for the graph; what stands in it means nothing.
func (p *graph) work() *work {
	w, ok := works.Get().(*work)
	if !ok {
		w = &work{}
	}
	n := len(p.nodes)
	if cap(w.need) < n {
		room := max(n, usual)
		w.found, w.need, w.hangs = make([]Node, room), make([]bool, room), make([]uint8, room)
	}
	if len(w.x) < p.spare {
		w.x = make([]float64, p.spare)
	}
	w.found, w.need, w.hangs = w.found[:n], w.need[:n], w.hangs[:n]
	return w
}

func stepOf(nd *node, dst Node) step {
	return step{op: nd.op, a: nd.args[0], b: nd.args[1], c: nd.args[2], dst: dst}
}

// Len is how many registers a run needs: one for each node, register 0, and a
// few at the end where the arguments of calls are gathered.
func (p *Program) Len() int { return int(p.scratch) + p.spare }

// Slots are the inputs, ascending.
func (p *Program) Slots() []Node { return p.slots }

// SlotName is the name of a slot, "" of any other node.
func (p *Program) SlotName(n Node) string { return label(p.slots, p.labels, n) }

// Slot finds an input by its name.
func (p *Program) Slot(name string) (Node, bool) {
	if i := slices.Index(p.labels, name); i >= 0 {
		return p.slots[i], true
	}
	return 0, false
}

// Kind is what a node holds: a number, a yes-no or a word's code.
func (p *Program) Kind(n Node) lang.Kind { return p.nodes[n].kind }

// Keeps reports whether a run kept a node: a number is not negative, a yes-no
// is yes. NaN is not kept.
func (p *Program) Keeps(reg []float64, n Node) bool {
	if p.nodes[n].kind == lang.YesNo {
		return reg[n] > 0
	}
	return reg[n] >= 0
}

// Only is a program of the same nodes and registers that runs only what the
// roots need. Other registers stay as they are.
func (p *Program) Only(roots ...Node) *Program {
	q := *p
	w := p.work()
	defer works.Put(w)
	q.rests = slices.Clone(p.under(w, roots))
	steps := 0
	for _, n := range q.rests {
		if p.nodes[n].runs() {
			steps++
		}
	}
	q.steps = make([]step, 0, steps)
	for _, n := range q.rests {
		if nd := &p.nodes[n]; nd.runs() {
			q.steps = append(q.steps, stepOf(nd, n))
		}
	}
	return &q
}

// runs reports a node that a run works out.
func (nd *node) runs() bool { return nd.op != lang.Const && nd.op != lang.Name }

// Moved is a program of just the steps that may come out otherwise when the
// given slots do; the rest is as the last full run left it.
func (p *Program) Moved(slots []Node) *Program {
	q := *p
	q.steps, q.rests = nil, nil
	w := p.work()
	defer works.Put(w)
	clear(w.need)
	for _, n := range slots {
		w.need[n] = true
	}
	for _, s := range p.steps {
		if slices.ContainsFunc(p.args(s.dst), func(a Node) bool { return w.need[a] }) {
			w.need[s.dst] = true
			q.steps = append(q.steps, s)
		}
	}
	return &q
}

// Uses are the slots a node depends on, ascending.
func (p *graph) Uses(root Node) []Node {
	w := p.work()
	defer works.Put(w)
	var uses []Node
	for _, n := range p.under(w, []Node{root}) {
		if p.nodes[n].op == lang.Name {
			uses = append(uses, n)
		}
	}
	return uses
}

// under are all nodes the roots rest on, themselves included, ascending. They
// stand in w.
func (p *graph) under(w *work, roots []Node) []Node {
	clear(w.need)
	top := Node(0)
	for _, r := range roots {
		w.need[r], top = true, max(top, r)
	}
	w.need[0] = false // is none
	from := len(w.found)
	for n := top; n > 0; n-- {
		if w.need[n] {
			from--
			w.found[from] = n
			for _, a := range p.args(n) {
				w.need[a] = true
			}
		}
	}
	return w.found[from:]
}

func (p *graph) args(n Node) []Node {
	nd := &p.nodes[n]
	if nd.op == lang.Call {
		return p.calls[nd.args[0]].args
	}
	return nd.args[:]
}

// Opaque are the kernels the program calls: what an SMT reader cannot see
// through. Blind are those of them that intervals cannot see through either.
func (p *Program) Opaque() []kernel.Kernel {
	return p.kernels(func(kernel.Kernel) bool { return true })
}

// Blind are the kernels that promise neither an Enclose nor a Trend for each
// argument: nothing that rests on them can be proved.
func (p *Program) Blind() []kernel.Kernel {
	return p.kernels(func(k kernel.Kernel) bool {
		return k.Enclose == nil && slices.ContainsFunc(k.Args, func(a kernel.Arg) bool { return a.Trend == 0 })
	})
}

func (p *Program) kernels(want func(kernel.Kernel) bool) []kernel.Kernel {
	var ks []kernel.Kernel
	seen := map[string]bool{}
	for _, s := range p.steps {
		if s.op != lang.Call {
			continue
		}
		if k := p.calls[s.a].kernel; !seen[k.Name] && want(k) {
			seen[k.Name] = true
			ks = append(ks, k)
		}
	}
	return ks
}

// upTo is how many steps end at or before a node.
func (p *Program) upTo(n Node) int {
	if k := len(p.steps); k == 0 || p.steps[k-1].dst <= n {
		return k
	}
	i, found := slices.BinarySearchFunc(p.steps, n, func(s step, n Node) int { return int(s.dst - n) })
	if found {
		return i + 1
	}
	return i
}

// Start writes the constants. Once for each set of registers is enough.
func (p *Program) Start(reg []float64) {
	p.constants(func(n Node, v float64) { reg[n] = v })
}

// StartBlock is Start for RunBlock.
func (p *Program) StartBlock(reg [][Lanes]float64) {
	p.constants(func(n Node, v float64) {
		for i := range reg[n] {
			reg[n][i] = v
		}
	})
}

// StartI is Start for intervals. A constant that is no number is empty.
func (p *Program) StartI(reg []interval.I) {
	p.constants(func(n Node, v float64) {
		if reg[n] = interval.Point(v); math.IsNaN(v) {
			reg[n] = interval.None()
		}
	})
}

func (p *Program) constants(write func(n Node, v float64)) {
	for n := range p.nodes {
		if n > 0 && p.nodes[n].op == lang.Const {
			write(Node(n), p.nodes[n].value)
		}
	}
}
