package yamldoc

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"
)

// Packed files: the nodes of many files in one text, so that a program that
// carries its files need not parse them at every start. What was packed is known
// by a mark, and whoever unpacks must hold the mark of the very files.
//
//	name, mark, nodes, links, files; of each file its path and its root
//	node: kind, style, tag, line, column, comment; its text, or its children

const packedName = "wornfit nodes 1\n"

// tags are those a file may have; the library resolves them when it reads.
var tags = []string{"!!str", "!!map", "!!seq", "!!int", "!!float", "!!bool", "!!null", "!!timestamp"}

// Pack puts the nodes of files without faults into one text.
func Pack(mark string, paths []string, docs []*Doc) ([]byte, error) {
	p := packer{}
	for i, d := range docs {
		if len(d.Faults) > 0 {
			return nil, d.Faults.Err()
		}
		p.text(paths[i])
		p.node(d.Root.y)
	}
	if p.err != nil {
		return nil, p.err
	}
	head := packer{out: []byte(packedName)}
	head.text(mark)
	for _, n := range []int{p.nodes, p.links, len(docs)} {
		head.number(n)
	}
	return append(head.out, p.out...), nil
}

type packer struct {
	out          []byte
	nodes, links int
	err          error
}

func (p *packer) number(n int) { p.out = binary.AppendUvarint(p.out, uint64(n)) }

func (p *packer) text(s string) {
	p.number(len(s))
	p.out = append(p.out, s...)
}

func (p *packer) node(y *yaml.Node) {
	tag := slices.Index(tags, y.Tag)
	if tag < 0 || y.Kind == yaml.AliasNode {
		p.err = fmt.Errorf("line %d: a %s cannot be packed", y.Line, y.Tag)
		return
	}
	p.nodes++
	for _, n := range []int{int(y.Kind), int(y.Style), tag, y.Line, y.Column} {
		p.number(n)
	}
	p.text(y.LineComment)
	if y.Kind == yaml.ScalarNode {
		p.text(y.Value)
		return
	}
	p.number(len(y.Content))
	p.links += len(y.Content)
	for _, c := range y.Content {
		p.node(c)
	}
}

var errPacked = errors.New("the packed files are damaged")

// Unpack gives the files that were packed, by path, if they bear the mark; else
// nil. data holds each file's own text, for places within a line.
func Unpack(packed, mark string, data func(path string) (name string, text []byte)) (map[string]*Doc, error) {
	u := unpacker{in: packed}
	if len(packed) < len(packedName) || packed[:len(packedName)] != packedName {
		return nil, nil
	}
	u.at = len(packedName)
	if u.text() != mark {
		return nil, nil
	}
	nodes, links, files := u.number(), u.number(), u.number()
	if u.bad || nodes > len(packed) || links > len(packed) {
		return nil, errPacked
	}
	u.nodes, u.links = make([]yaml.Node, nodes), make([]*yaml.Node, links)
	out := make(map[string]*Doc, files)
	for range files {
		path := u.text()
		y := u.node()
		if u.bad {
			return nil, errPacked
		}
		name, text := data(path)
		d := &Doc{File: name, data: text}
		d.Root = Node{doc: d, y: y}
		out[path] = d
	}
	return out, nil
}

// unpacker hands out nodes of two blocks made at once.
type unpacker struct {
	in    string
	at    int
	bad   bool
	nodes []yaml.Node
	links []*yaml.Node
}

func (u *unpacker) number() int {
	n, shift := 0, 0
	for u.at < len(u.in) && shift < 35 {
		b := u.in[u.at]
		u.at++
		n |= int(b&0x7f) << shift
		if b < 0x80 {
			return n
		}
		shift += 7
	}
	u.bad = true
	return 0
}

func (u *unpacker) text() string {
	n := u.number()
	if u.bad || n > len(u.in)-u.at {
		u.bad = true
		return ""
	}
	u.at += n
	return u.in[u.at-n : u.at]
}

func (u *unpacker) node() *yaml.Node {
	if u.bad || len(u.nodes) == 0 {
		u.bad = true
		return nil
	}
	y := &u.nodes[0]
	u.nodes = u.nodes[1:]
	y.Kind, y.Style = yaml.Kind(u.number()), yaml.Style(u.number())
	tag := u.number()
	if tag >= len(tags) {
		u.bad = true
		return nil
	}
	y.Tag, y.Line, y.Column, y.LineComment = tags[tag], u.number(), u.number(), u.text()
	if y.Kind == yaml.ScalarNode {
		y.Value = u.text()
		return y
	}
	n := u.number()
	if n > len(u.links) {
		u.bad = true
		return nil
	}
	y.Content, u.links = u.links[:n:n], u.links[n:]
	for i := range y.Content {
		y.Content[i] = u.node()
	}
	return y
}
