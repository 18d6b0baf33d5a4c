package yamldoc

import (
	"encoding/binary"
	"errors"
	"sync"
	"sync/atomic"
)

// Packed files: the nodes of many files in one text, so that a program that
// carries its files need not parse them at every start. What was packed is known
// by a mark, and whoever unpacks must hold the mark of the very files.
//
//	name, mark, files; of each file its path, how many nodes, and its root as a text
//	node: kind, style, whether null, line, column, comment; its text, or its children

const packedName = "wornfit nodes 3\n"

// Pack puts the nodes of files without faults into one text.
func Pack(mark string, paths []string, docs []*Doc) ([]byte, error) {
	out := packer{out: []byte(packedName)}
	out.text(mark)
	out.number(len(docs))
	for i, d := range docs {
		if len(d.Faults) > 0 {
			return nil, d.Faults.Err()
		}
		var p packer
		p.node(d.Root.y)
		out.text(paths[i])
		out.number(p.nodes)
		out.text(string(p.out))
	}
	return out.out, nil
}

type packer struct {
	out   []byte
	nodes int
}

func (p *packer) number(n int) { p.out = binary.AppendUvarint(p.out, uint64(n)) }

func (p *packer) text(s string) {
	p.number(len(s))
	p.out = append(p.out, s...)
}

func (p *packer) node(y *node) {
	null := 0
	if y.null {
		null = 1
	}
	p.nodes++
	for _, n := range []int{int(y.kind), int(y.style), null, int(y.line), int(y.column)} {
		p.number(n)
	}
	p.text(y.comment)
	if y.kind == scalar {
		p.text(y.value)
		return
	}
	p.number(len(y.content))
	for i := range y.content {
		p.node(&y.content[i])
	}
}

var errPacked = errors.New("the packed files are damaged")

// Unpack gives the files that were packed, by path, if they bear the mark; else
// nil. data holds each file's own text, for places within a line. It works on as
// many cores as there are.
func Unpack(packed, mark string, data func(path string) (name string, text []byte)) (map[string]*Doc, error) {
	u := unpacker{in: packed}
	if len(packed) < len(packedName) || packed[:len(packedName)] != packedName {
		return nil, nil
	}
	u.at = len(packedName)
	if u.text() != mark {
		return nil, nil
	}
	out := map[string]*Doc{}
	var wait sync.WaitGroup
	var damaged atomic.Bool
	for range u.number() {
		path, nodes, text := u.text(), u.number(), u.text()
		if u.bad || nodes < 1 || nodes > len(text) {
			damaged.Store(true)
			break
		}
		d := &Doc{}
		d.File, d.data = data(path)
		out[path] = d
		wait.Go(func() {
			file := unpacker{in: text, nodes: make([]node, nodes)}
			root := file.room(1)
			file.node(&root[0])
			d.Root = Node{doc: d, y: &root[0]}
			if file.bad {
				damaged.Store(true)
			}
		})
	}
	wait.Wait()
	if damaged.Load() {
		return nil, errPacked
	}
	return out, nil
}

// unpacker hands out nodes of a block made at once.
type unpacker struct {
	in    string
	at    int
	bad   bool
	nodes []node
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

// room is the next n nodes; none when there are not so many.
func (u *unpacker) room(n int) []node {
	if u.bad || n > len(u.nodes) {
		u.bad = true
		return nil
	}
	out := u.nodes[:n:n]
	u.nodes = u.nodes[n:]
	return out
}

func (u *unpacker) node(y *node) {
	y.kind, y.style, y.null = uint8(u.number()), uint8(u.number()), u.number() == 1
	y.line, y.column, y.comment = int32(u.number()), int32(u.number()), u.text()
	if y.kind == scalar {
		y.value = u.text()
		return
	}
	y.content = u.room(u.number())
	for i := range y.content {
		if u.bad {
			return
		}
		u.node(&y.content[i])
	}
}
