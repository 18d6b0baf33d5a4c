package tape

import (
	"fmt"
	"strconv"
	"strings"

	"wornfit/rules/lang"
)

// Formula writes how the root is computed, in the words of the rule language.
// Nodes that say names stand as their names; the others are written out. say may
// be nil; slots it leaves unnamed keep their own names.
func (p *Program) Formula(root Node, say func(Node) string) string {
	f := speller{nodes: p.nodes, calls: p.calls, name: func(n Node) string {
		if say != nil && n != root {
			if s := say(n); s != "" {
				return s
			}
		}
		return p.SlotName(n)
	}}
	s, _ := f.text(root)
	return s
}

// spell writes a node not yet in the builder, for an error.
func (b *Builder) spell(nd node) string {
	f := speller{nodes: append(b.nodes[:len(b.nodes):len(b.nodes)], nd), calls: b.calls, name: func(n Node) string { return label(b.slots, b.labels, n) }}
	s, _ := f.text(Node(len(b.nodes)))
	return s
}

type speller struct {
	nodes []node
	calls []call
	name  func(Node) string
}

// loosest binds less than any op, firmest more.
const loosest, firmest = 0, 9

// text gives the text of a node and how tightly it binds.
func (f speller) text(n Node) (string, int) {
	if s := f.name(n); s != "" {
		return s, firmest
	}
	nd := &f.nodes[n]
	t := trait{}
	if int(nd.op) < len(traits) {
		t = traits[nd.op]
	}
	switch {
	case nd.op == lang.Const:
		return literal(nd)
	case nd.op == lang.Call:
		c := f.calls[nd.args[0]]
		return c.kernel.Name + "(" + f.list(c.args) + ")", firmest
	case nd.op == lang.Cond:
		return f.at(nd.args[0], loosest+1) + " ? " + f.at(nd.args[1], loosest+1) + " : " + f.at(nd.args[2], loosest), loosest
	case nd.op == square:
		return f.at(nd.args[0], t.rank+1) + "^2", t.rank
	case t.rank == 0:
		return t.sign + "(" + f.list(nd.args[:t.args]) + ")", firmest
	case t.args == 1:
		return t.sign + f.at(nd.args[0], t.rank), t.rank
	case nd.op == lang.Pow:
		return f.at(nd.args[0], t.rank+1) + "^" + f.at(nd.args[1], t.rank+1), t.rank
	}
	return f.at(nd.args[0], t.rank) + " " + t.sign + " " + f.at(nd.args[1], t.rank+1), t.rank
}

// literal writes a constant; a negative one binds as a minus does.
func literal(nd *node) (string, int) {
	if nd.kind == lang.YesNo {
		return strconv.FormatBool(nd.value > 0), firmest
	}
	if nd.value < 0 {
		return fmt.Sprintf("%g", nd.value), traits[lang.Neg].rank
	}
	return fmt.Sprintf("%g", nd.value), firmest
}

// at writes a node where something of the given rank is wanted.
func (f speller) at(n Node, rank int) string {
	s, own := f.text(n)
	if own < rank {
		return "(" + s + ")"
	}
	return s
}

func (f speller) list(ns []Node) string {
	s := make([]string, len(ns))
	for i, n := range ns {
		s[i] = f.at(n, loosest)
	}
	return strings.Join(s, ", ")
}
