package tape

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"wornfit/calc/kernel"
	"wornfit/rules/lang"
)

// node is how a register gets its value.
type node struct {
	op    lang.Op // Const, Name (a slot), one of traits, or Call
	kind  lang.Kind
	args  [3]Node // of a Call the first is its place in calls
	value float64 // of a Const
}

// call is a kernel with the nodes of its arguments.
type call struct {
	kernel kernel.Kernel
	args   []Node
}

// key tells two nodes apart. A yes-no constant is not the number of its code:
// "no" breaks a limit, a margin of 0 keeps it.
type key struct {
	op   lang.Op
	kind lang.Kind
	args [3]Node
	bits uint64
}

// Builder collects nodes. An expression met twice is one node. It serves one
// goroutine.
type Builder struct {
	graph
	byName map[string]Node
	seen   map[key]Node
	called map[string]Node
	err    error
}

// NewBuilder returns an empty Builder.
func NewBuilder() *Builder {
	if b, ok := rested.Get().(*Builder); ok {
		return b
	}
	return &Builder{
		graph:  graph{nodes: make([]node, 1, usual)}, // node 0 is none
		byName: map[string]Node{},
		seen:   make(map[key]Node, usual),
		called: map[string]Node{},
	}
}

// usual is how many nodes most programs have.
const usual = 512

// rested are builders whose room may be used again.
var rested sync.Pool

// Rest hands the builder's room on; it may not be used after. Programs it built
// stay as they are.
func (b *Builder) Rest() {
	clear(b.byName)
	clear(b.seen)
	clear(b.called)
	clear(b.calls)
	clear(b.labels)
	b.nodes, b.slots, b.labels, b.calls, b.err = b.nodes[:1], b.slots[:0], b.labels[:0], b.calls[:0], nil
	rested.Put(b)
}

// Err is the first constant made by Const, Apply or Call that is no finite
// number, such as 1/0. Its node is kept as it is, and is NaN in every run.
func (b *Builder) Err() error { return b.err }

func (b *Builder) fail(err error) {
	if b.err == nil {
		b.err = err
	}
}

// Slot gives the input of that name, a number until Mark says otherwise.
func (b *Builder) Slot(name string) Node {
	if n, ok := b.byName[name]; ok {
		return n
	}
	n := b.add(node{op: lang.Name})
	b.slots = append(b.slots, n)
	b.labels = append(b.labels, name)
	b.byName[name] = n
	return n
}

// Find gives the slot of that name, if there is one yet.
func (b *Builder) Find(name string) (Node, bool) {
	n, ok := b.byName[name]
	return n, ok
}

// label is the name of a slot.
func label(slots []Node, labels []string, n Node) string {
	if i, ok := slices.BinarySearch(slots, n); ok { // slots come in the order of their nodes
		return labels[i]
	}
	return ""
}

// Mark says what a slot holds. Contract keeps words and yes-nos at whole codes.
// Lower marks the slots it is given; nodes that are no slot keep their kind.
func (b *Builder) Mark(n Node, k lang.Kind) {
	if b.nodes[n].op == lang.Name && (k == lang.YesNo || k == lang.Word) {
		b.nodes[n].kind = k
	}
}

// Const gives the node of a number.
func (b *Builder) Const(v float64) Node {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		b.fail(fmt.Errorf("a constant is %v; it must be a finite number", v))
	}
	return b.constant(v, lang.NumberKind)
}

// YesNo gives the node of a constant yes or no.
func (b *Builder) YesNo(v bool) Node {
	if v {
		return b.constant(1, lang.YesNo)
	}
	return b.constant(0, lang.YesNo)
}

func (b *Builder) constant(v float64, kind lang.Kind) Node {
	return b.once(node{op: lang.Const, kind: kind, value: v}, false)
}

// Apply gives the node of op over args, folded if they are constants. Add, Mul,
// Min, Max, And and Or take two or more. It panics when op does not take so
// many, or when the exponent of a power is no constant. Calls are made by Call.
func (b *Builder) Apply(op lang.Op, args ...Node) Node {
	n, err := b.apply(op, args)
	if err != nil {
		b.fail(err)
	}
	return n
}

func (b *Builder) apply(op lang.Op, args []Node) (Node, error) {
	if int(op) >= len(traits) || traits[op].args == 0 {
		panic(fmt.Sprintf("tape: op %d cannot be applied; use Slot, Const, Call or Lower", op))
	}
	t := &traits[op]
	if len(args) < t.args || len(args) > t.args && !t.chain {
		panic(fmt.Sprintf("tape: %s takes %d arguments, got %d", t.sign, t.args, len(args)))
	}
	for _, a := range args {
		if a <= 0 || int(a) >= len(b.nodes) {
			panic(fmt.Sprintf("tape: %s is applied to node %d, which is none of the builder's", t.sign, a))
		}
	}
	n, err := b.one(op, args[:t.args])
	for _, a := range args[t.args:] {
		next, e := b.one(op, []Node{n, a})
		if n = next; err == nil {
			err = e
		}
	}
	return n, err
}

// one makes one node of op over exactly as many arguments as it takes.
func (b *Builder) one(op lang.Op, args []Node) (Node, error) {
	if op == lang.Pow && b.nodes[args[1]].op != lang.Const {
		panic("tape: the exponent of a power must be a constant")
	}
	if n, ok := b.same(op, args); ok {
		return n, nil
	}
	if op == lang.Mul && args[0] == args[1] || op == lang.Pow && b.nodes[args[1]].value == 2 {
		op, args = square, args[:1]
	}
	nd := node{op: op, kind: b.kindOf(op, args)}
	copy(nd.args[:], args)
	v, constant := b.fold(nd, args)
	if !constant {
		return b.once(nd, traits[op].commutes), nil
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return b.once(nd, traits[op].commutes), fmt.Errorf("%s is %v; it must be a finite number", b.spell(nd), v)
	}
	return b.constant(v, nd.kind), nil
}

func (b *Builder) kindOf(op lang.Op, args []Node) lang.Kind {
	switch {
	case traits[op].yesNo:
		return lang.YesNo
	case op == lang.Cond:
		return b.nodes[args[1]].kind
	case op == lang.Min || op == lang.Max:
		return b.nodes[args[0]].kind
	}
	return lang.NumberKind
}

// once returns the node like nd, made on first use.
func (b *Builder) once(nd node, commutes bool) Node {
	k := key{op: nd.op, kind: nd.kind, args: nd.args, bits: math.Float64bits(nd.value)}
	if commutes && k.args[0] > k.args[1] {
		k.args[0], k.args[1] = k.args[1], k.args[0]
	}
	if n, ok := b.seen[k]; ok {
		return n
	}
	n := b.add(nd)
	b.seen[k] = n
	return n
}

func (b *Builder) add(nd node) Node {
	b.nodes = append(b.nodes, nd)
	return Node(len(b.nodes) - 1)
}

// Call gives the node of a kernel over its arguments, folded if they are
// constants. A kernel is known by its Name. It panics when the number of
// arguments is not the kernel's.
func (b *Builder) Call(k kernel.Kernel, args ...Node) Node {
	n, err := b.call(k, args)
	if err != nil {
		b.fail(err)
	}
	return n
}

func (b *Builder) call(k kernel.Kernel, args []Node) (Node, error) {
	if len(args) != len(k.Args) {
		panic(fmt.Sprintf("tape: %s takes %d arguments, got %d", k.Name, len(k.Args), len(args)))
	}
	x, constant := make([]float64, len(args)), true
	for i, a := range args {
		x[i] = b.nodes[a].value
		constant = constant && b.nodes[a].op == lang.Const
	}
	var err error
	if constant {
		v := k.Value(x)
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			return b.constant(v, lang.NumberKind), nil
		}
		err = fmt.Errorf("%s(%s) is %v; its arguments must be possible and in their ranges", k.Name, list(x), v)
	}
	id := fmt.Sprint(k.Name, args)
	n, ok := b.called[id]
	if !ok {
		n = b.add(node{op: lang.Call, args: [3]Node{Node(len(b.calls))}})
		b.calls = append(b.calls, call{kernel: k, args: append([]Node(nil), args...)})
		b.called[id] = n
	}
	return n, err
}

func list(x []float64) string {
	s := make([]string, len(x))
	for i, v := range x {
		s[i] = fmt.Sprintf("%g", v)
	}
	return strings.Join(s, ", ")
}
