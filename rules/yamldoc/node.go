package yamldoc

import (
	"fmt"
	"slices"
	"strings"

	"wornfit/rules/fault"
)

// Present reports whether the key was there with a value.
func (n Node) Present() bool { return n.y != nil && !n.y.null }

// Doc returns the file the node stands in.
func (n Node) Doc() *Doc { return n.doc }

// At returns the node's place; of an absent node, the start of the file.
func (n Node) At() fault.Place {
	if n.y == nil {
		if n.doc != nil {
			return fault.Place{File: n.doc.File}
		}
		return fault.Place{}
	}
	return n.doc.place(n.y)
}

// Fault records what is wrong with the node.
func (n Node) Fault(says, remedy string) {
	n.doc.Faults.Add(n.At(), n.Key, says, remedy)
}

// IsMap, IsList and IsScalar tell the node's form; an absent node has none.
func (n Node) IsMap() bool    { return n.y != nil && n.y.kind == mapping }
func (n Node) IsList() bool   { return n.y != nil && n.y.kind == sequence }
func (n Node) IsScalar() bool { return n.y != nil && n.y.kind == scalar }

// Quoted reports whether a scalar was written in quotes, so that it is text
// whatever it looks like.
func (n Node) Quoted() bool {
	return n.y != nil && n.y.style&quoted != 0
}

// Block reports whether a scalar was written as a block (| or >): the places
// inside it are lost.
func (n Node) Block() bool {
	return n.y != nil && n.y.style&block != 0
}

// Comment returns the comment that ends the node's line, if any: a unit lost
// behind # shows here.
func (n Node) Comment() string {
	if n.y == nil {
		return ""
	}
	return n.y.comment
}

// Get returns the value of a key, absent when there is none.
func (n Node) Get(key string) Node {
	if n.IsMap() {
		for i := 0; i+1 < len(n.y.content); i += 2 {
			if n.y.content[i].value == key {
				return Node{doc: n.doc, y: &n.y.content[i+1], Key: join(n.Key, key)}
			}
		}
	}
	return Node{doc: n.doc, Key: join(n.Key, key)}
}

// Entry is a key of a map with its value.
type Entry struct {
	Name  string
	KeyAt fault.Place
	Value Node
}

// Entries returns a map's keys in the order written.
func (n Node) Entries() []Entry {
	if !n.IsMap() {
		return nil
	}
	var out []Entry
	for i := 0; i+1 < len(n.y.content); i += 2 {
		k := &n.y.content[i]
		out = append(out, Entry{k.value, n.doc.place(k), Node{doc: n.doc, y: &n.y.content[i+1], Key: join(n.Key, k.value)}})
	}
	return out
}

// Items returns a list's items; a lone value counts as a list of one.
func (n Node) Items() []Node {
	if !n.Present() {
		return nil
	}
	if !n.IsList() {
		return []Node{n}
	}
	out := make([]Node, len(n.y.content))
	for i := range n.y.content {
		out[i] = Node{doc: n.doc, y: &n.y.content[i], Key: fmt.Sprintf("%s[%d]", n.Key, i)}
	}
	return out
}

// Keys tells every key of a map that is not in the list, with the nearest that
// is. It reports false when the node is no map (told too).
func (n Node) Keys(allowed ...string) bool {
	if !n.IsMap() {
		n.Fault("found "+n.form()+" where keys and values should stand", "write one `key: value` a line")
		return false
	}
	for i := 0; i+1 < len(n.y.content); i += 2 {
		if k := &n.y.content[i]; !slices.Contains(allowed, k.value) {
			n.doc.Faults.Add(n.doc.place(k), join(n.Key, k.value), "there is no key "+k.value+" here", fault.DidYouMean(k.value, allowed))
		}
	}
	return true
}

// Text returns a scalar as it was typed; "" when absent. A map or list in its
// place is told.
func (n Node) Text() string {
	if !n.Present() {
		return ""
	}
	if !n.IsScalar() {
		n.Fault("found "+n.form()+" where one value should stand", "write a single value")
		return ""
	}
	return n.y.value
}

// Word returns a scalar that must be one of the list; "" when absent or told.
func (n Node) Word(list ...string) string {
	w := n.Text()
	if w == "" || slices.Contains(list, w) {
		return w
	}
	n.Fault(fmt.Sprintf("%q is not a word known here", w), fault.DidYouMean(w, list))
	return ""
}

// YesNo returns yes or no as the file says; given is false when absent. yes,
// no, true and false are read, in lower case.
func (n Node) YesNo() (yes, given bool) {
	switch w := strings.ToLower(n.Text()); w {
	case "":
		return false, false
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	default:
		n.Fault(fmt.Sprintf("%q is neither yes nor no", w), "write yes or no")
		return false, false
	}
}

// Need returns the value of a key and tells when it is missing.
func (n Node) Need(key, remedy string) Node {
	v := n.Get(key)
	if !v.Present() {
		n.doc.Faults.Add(n.At(), join(n.Key, key), key+" is missing", remedy)
	}
	return v
}

func (n Node) form() string {
	switch {
	case n.IsMap():
		return "keys and values"
	case n.IsList():
		return "a list"
	case n.IsScalar():
		return fmt.Sprintf("%q", n.y.value)
	}
	return "nothing"
}
