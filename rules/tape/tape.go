// Package tape turns checked expressions into one program and runs it in every
// way the project needs: plain values, blocks of draws, intervals, contraction,
// gradients, intervals of slopes. One lowered program serves all, so no second
// copy of a formula can drift.
//
// Start with Builder: Slot makes an input, Lower adds an expression, Build
// gives the Program. Every node keeps its own register, so a run is its own
// trace. The package knows no file, no rule and no option.
//
// Words are their codes. A yes-no is 1 or 0, and NaN where what it rests on is
// no number: test it with > 0 and == 0, and NaN decides nothing. A division by
// 0 is NaN, not infinite. `and`, `or` and a conditional look only at what they
// need: no and NaN is no.
package tape

import "wornfit/calc/interval"

// Node is a register of the program; it never stands for anything else. The
// zero Node is "none".
type Node int32

// Lanes is how many draws RunBlock does at once.
const Lanes = 128

// Resolver gives the node a name stands for in the part being lowered; low and
// high of a ranged number are asked for as "low(name)" and "high(name)", the
// column of a row as "row.column".
type Resolver func(name string) (Node, error)

// The methods, in files of their own:
//
//	NewBuilder() *Builder
//	(*Builder) Slot(name string) Node                    an input; the same name gives the same node
//	(*Builder) Const(v float64) Node
//	(*Builder) Apply(op lang.Op, args ...Node) Node      hash-consed, constants folded
//	(*Builder) Lower(e *lang.Expr, resolve Resolver) (Node, error)
//	(*Builder) Build() *Program                          more may be added later and built again: nodes keep their numbers
//	(*Program) Len() int                                 registers needed (node numbers are 1..Len-1)
//	(*Program) Slots() []Node; SlotName(Node) string; Slot(name string) (Node, bool)
//	(*Program) Start(reg []float64)                      writes the constants
//	(*Program) Run(reg []float64)                        caller has filled the slots
//	(*Program) StartBlock/RunBlock(reg [][Lanes]float64)
//	(*Program) StartI(reg []interval.I); Enclose(reg []interval.I)
//	(*Program) Contract(reg []interval.I, keep []Node) (empty bool)   every keep node >= 0 (a yes-no node: yes)
//	(*Program) Gradient(reg, adjoint []float64, root Node)
//	(*Program) Slopes(reg, adjoint []interval.I, root Node)           encloses the gradient over the box in reg
//	(*Program) Uses(root Node) []Node                    the slots a node depends on, ascending
//	(*Program) Opaque() []kernel.Kernel                  calls no interval or SMT reader can see through
//	(*Program) Formula(root Node, say func(Node) string) string       the node's expression in words of its own names
//
// and beside them
//
//	(*Builder) Mark(n Node, k lang.Kind); YesNo(v bool) Node; Call(k kernel.Kernel, args ...Node) Node; Err() error
//	(*Program) Only(roots ...Node) *Program              the same registers, but runs only what the roots need
//	(*Program) Kind(n Node) lang.Kind; Keeps(reg []float64, n Node) bool
//	(*Program) Middle(reg, mid []interval.I); MeanValue(reg, mid, adjoint []interval.I, root Node) interval.I
//	(*Program) Defined(reg []interval.I, root Node) bool  no draw in the box makes the root NaN
//	(*Program) Blind() []kernel.Kernel                   calls intervals say nothing of

// Yes reports whether an enclosed yes-no is certain; No whether its opposite
// is. Of an empty range neither is.
func Yes(i interval.I) bool { return 0 < i.Lo && i.Lo <= i.Hi }
func No(i interval.I) bool  { return i.Lo <= i.Hi && i.Hi <= 0 }
