package rules

import (
	"crypto/sha256"
	"encoding/hex"
	"hash"

	"wornfit/rules/yamldoc"
)

// mark is what files are known by: the sum of their names and texts.
func mark(sum hash.Hash) string { return hex.EncodeToString(sum.Sum(nil)) }

// Pack parses the files of a layer once and for all, for Layer.Packed.
func Pack(layer Layer) ([]byte, error) {
	l := newLoader(nil)
	sum := sha256.New()
	all := l.layer(layer, false, sum)
	parse(all)
	var paths []string
	var docs []*yamldoc.Doc
	for _, r := range all {
		paths, docs = append(paths, r.path), append(docs, r.doc)
	}
	if err := l.faults.Err(); err != nil {
		return nil, err
	}
	return yamldoc.Pack(mark(sum), paths, docs)
}

// unpack gives files what was packed of them, if it was packed of these very
// files. What is damaged or old is left: the files are parsed.
func unpack(layer Layer, all []*raw, mark string) {
	by := make(map[string]*raw, len(all))
	for _, r := range all {
		by[r.path] = r
	}
	docs, err := yamldoc.Unpack(layer.Packed, mark, func(path string) (string, []byte) {
		if r := by[path]; r != nil {
			return r.name, r.data
		}
		return path, nil
	})
	if err != nil {
		return
	}
	for path, d := range docs {
		if r := by[path]; r != nil {
			r.doc = d
		}
	}
}
