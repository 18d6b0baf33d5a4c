package tape

import (
	"wornfit/rules/lang"
)

// fold gives the value of nd if all its arguments are constants, by running it.
func (b *Builder) fold(nd node, args []Node) (v float64, constant bool) {
	for _, a := range args {
		if b.nodes[a].op != lang.Const {
			return 0, false
		}
	}
	var reg [4]float64
	for i, a := range args {
		reg[i] = b.nodes[a].value
	}
	p := Program{steps: []step{{op: nd.op, a: 0, b: 1, c: 2, dst: 3}}}
	p.Run(reg[:])
	return reg[3], true
}

// same finds the node that op over args is anyway, NaN included: x+0, x*1, yes
// and x. It leaves x*0 and x-x alone, which are NaN where x is.
func (b *Builder) same(op lang.Op, args []Node) (Node, bool) {
	switch op {
	case lang.Add:
		return b.neutral(args, 0, true)
	case lang.Sub:
		return b.neutral(args, 0, false)
	case lang.Mul:
		return b.neutral(args, 1, true)
	case lang.Div, lang.Pow:
		return b.neutral(args, 1, false)
	case lang.Min, lang.Max:
		return args[0], args[0] == args[1]
	case lang.And, lang.Or:
		return b.decided(op, args)
	case lang.Neg, lang.Not:
		in := &b.nodes[args[0]]
		return in.args[0], in.op == op
	case lang.Cond:
		if t := &b.nodes[args[0]]; t.op == lang.Const {
			if t.value > 0 {
				return args[1], true
			}
			return args[2], t.value == 0
		}
	}
	return 0, false
}

// neutral finds x in x op v, and if either side will do in v op x.
func (b *Builder) neutral(args []Node, v float64, either bool) (Node, bool) {
	if b.is(args[1], v) {
		return args[0], true
	}
	return args[1], either && b.is(args[0], v)
}

func (b *Builder) is(n Node, v float64) bool {
	return b.nodes[n].op == lang.Const && b.nodes[n].value == v
}

// decided finds what one side alone says: no and x is no, yes and x is x.
func (b *Builder) decided(op lang.Op, args []Node) (Node, bool) {
	settles, leaves := 0.0, 1.0
	if op == lang.Or {
		settles, leaves = 1, 0
	}
	for i, a := range args {
		if b.is(a, settles) {
			return a, true
		}
		if b.is(a, leaves) {
			return args[1-i], true
		}
	}
	return args[0], args[0] == args[1]
}
