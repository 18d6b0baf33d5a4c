// Package knowledge is the rule base that ships with the program: what a
// machinist may edit. See package rules for what the files may hold.
//
// Start with Load. The files are embedded, so that one program file is all
// there is to copy to the shop's computer.
package knowledge

import (
	"embed"
	"io/fs"
	"os"

	"wornfit/calc/catalogue"
	"wornfit/rules"
	"wornfit/rules/fault"
)

// Version of the rule base; it changes when an answer may.
const Version = "0.1"

//go:embed *.yaml vocabulary shaft hub hold lock purpose diagnosis materials fillers machines gauges pairings cautions clearances ways bush_kinds bush_sizes keys pins pin_counts seats
var files embed.FS

// packed is files parsed once and for all; the program parses them itself when
// they were changed since. Written by: go test ./knowledge -run Packed -update
//
//go:embed packed.bin
var packed string

// Load reads the shipped rule base with the folders laid over it, in order.
func Load(over ...string) (*rules.Base, fault.List) {
	layers := []rules.Layer{{Name: "shipped " + Version, Files: files, Packed: packed}}
	for _, dir := range over {
		layers = append(layers, rules.Layer{Name: dir, Files: os.DirFS(dir)})
	}
	return rules.Load(layers, catalogue.All())
}

// LoadFrom reads a whole rule base from a folder in place of the shipped one.
func LoadFrom(fsys fs.FS, name string) (*rules.Base, fault.List) {
	return rules.Load([]rules.Layer{{Name: name, Files: fsys}}, catalogue.All())
}
