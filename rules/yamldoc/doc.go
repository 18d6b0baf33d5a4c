// Package yamldoc reads a YAML file into nodes that know their place, and
// refuses what a hand-written file should not hold: aliases, unknown and
// repeated keys, files too large. Faults are collected, never only the first.
//
// Start with Read. A Node's methods take the fault list from the Doc. It is
// the only package that knows the YAML library.
package yamldoc

import (
	"fmt"
	"io/fs"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"wornfit/rules/fault"
)

// MaxSize is the largest file read, in bytes.
const MaxSize = 1 << 20

// Doc is one file being read and the faults found in it so far.
type Doc struct {
	File   string
	Root   Node
	Faults fault.List
	data   []byte
	lines  []string // of data, when first asked for
}

// Node is a value in the file under its dotted key. The zero Node is absent.
type Node struct {
	doc *Doc
	y   *node
	Key string // dotted: parts.arm.outside; items of a list as fits[0]
}

// Read parses a file. When it cannot be parsed at all the root is absent and
// the faults say why.
func Read(name string, data []byte) *Doc {
	d := &Doc{File: name, data: data}
	if len(data) > MaxSize {
		d.Faults.Add(fault.Place{File: name}, "", fmt.Sprintf("the file is %d bytes long", len(data)),
			"a file may be 1 MB at most; leave out what is not needed")
		return d
	}
	var top yaml.Node
	if err := yaml.Unmarshal(data, &top); err != nil {
		d.syntax(err, data)
		return d
	}
	if len(top.Content) == 0 {
		d.Faults.Add(fault.Place{File: name, Line: 1, Column: 1}, "", "the file is empty", "start from a case or rule file that works")
		return d
	}
	d.refuse(top.Content[0], nil)
	d.Root = Node{doc: d, y: &lean([]*yaml.Node{top.Content[0]})[0]}
	return d
}

// ReadFS parses a file of a file system.
func ReadFS(fsys fs.FS, name string) *Doc {
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		d := &Doc{File: name}
		d.Faults.Add(fault.Place{File: name}, "", "cannot be read: "+err.Error(), "check the name and that it may be read")
		return d
	}
	return Read(name, data)
}

var lineOf = regexp.MustCompile(`line (\d+)`)

// syntax translates the library's message: it names Go things, and sometimes
// no line.
func (d *Doc) syntax(err error, data []byte) {
	at := fault.Place{File: d.File, Line: 1, Column: 1}
	if m := lineOf.FindStringSubmatch(err.Error()); m != nil {
		at.Line, _ = strconv.Atoi(m[1])
	}
	says := strings.TrimPrefix(err.Error(), "yaml: ")
	says = lineOf.ReplaceAllString(says, "")
	says = strings.TrimLeft(strings.TrimSpace(says), ": ")
	remedy := "quote the text on this line, and check the indent and the brackets"
	for i, line := range strings.Split(string(data), "\n") {
		if strings.HasPrefix(line, "\t") || strings.HasPrefix(strings.TrimLeft(line, " "), "\t") {
			at.Line, at.Column, says, remedy = i+1, 1, "a tab stands where the indent should be", "indent with spaces"
			break
		}
	}
	d.Faults.Add(at, "", "not readable as YAML: "+says, remedy)
}

// step is a place on the way down to a node: its key is spelt out only when
// there is something to tell.
type step struct {
	up    *step
	key   string
	index int // of an item of a list, where key is ""
}

func (s *step) path() string {
	switch {
	case s == nil:
		return ""
	case s.key == "":
		return fmt.Sprintf("%s[%d]", s.up.path(), s.index)
	}
	return join(s.up.path(), s.key)
}

// refuse tells aliases and repeated keys anywhere below y.
func (d *Doc) refuse(y *yaml.Node, at *step) {
	switch y.Kind {
	case yaml.AliasNode:
		d.Faults.Add(d.at(y), at.path(), "an alias (*"+y.Value+") stands here", "write the value out")
	case yaml.MappingNode:
		seen := make(map[string]*yaml.Node, len(y.Content)/2)
		for i := 0; i+1 < len(y.Content); i += 2 {
			k := y.Content[i]
			if first, again := seen[k.Value]; again {
				d.Faults = append(d.Faults, fault.Fault{At: d.at(k), Key: join(at.path(), k.Value),
					Says:   fmt.Sprintf("%s is already given on line %d", k.Value, first.Line),
					Remedy: "keep one of the two", Also: []fault.Place{d.at(first)}})
			}
			seen[k.Value] = k
			d.refuse(y.Content[i+1], &step{up: at, key: k.Value})
		}
	case yaml.SequenceNode:
		for i, c := range y.Content {
			d.refuse(c, &step{up: at, index: i})
		}
	}
}

// node is what is kept of a node of the library: there are many of them.
type node struct {
	kind, style  uint8 // of package yaml
	null         bool
	line, column int32
	value        string
	comment      string // that ends its line
	content      []node
}

// Kinds and styles as a node keeps them.
const (
	mapping  = uint8(yaml.MappingNode)
	sequence = uint8(yaml.SequenceNode)
	scalar   = uint8(yaml.ScalarNode)
	single   = uint8(yaml.SingleQuotedStyle)
	quoted   = uint8(yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle)
	block    = uint8(yaml.LiteralStyle | yaml.FoldedStyle)
)

// lean keeps of the library's nodes what is asked for.
func lean(ys []*yaml.Node) []node {
	out := make([]node, len(ys))
	for i, y := range ys {
		out[i] = node{uint8(y.Kind), uint8(y.Style), y.Tag == "!!null", int32(y.Line), int32(y.Column), y.Value, y.LineComment, lean(y.Content)}
	}
	return out
}

func (d *Doc) at(y *yaml.Node) fault.Place {
	return fault.Place{File: d.File, Line: y.Line, Column: y.Column, Width: utf8.RuneCountInString(y.Value)}
}

func (d *Doc) place(n *node) fault.Place {
	return fault.Place{File: d.File, Line: int(n.line), Column: int(n.column), Width: utf8.RuneCountInString(n.value)}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
