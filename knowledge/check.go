package knowledge

import (
	"io/fs"
	"os"

	"wornfit/calc/catalogue"
	"wornfit/rules"
	"wornfit/rules/fault"
)

// Check reads the shipped rule base with the folders laid over it, as Load
// does, and looks for every fault, linking every option.
func Check(over ...string) (*rules.Base, fault.List) {
	layers := []rules.Layer{{Name: "shipped " + Version, Files: files}}
	for _, dir := range over {
		layers = append(layers, rules.Layer{Name: dir, Files: os.DirFS(dir)})
	}
	return rules.Check(layers, catalogue.All())
}

// CheckFrom is Check for a whole rule base in a folder.
func CheckFrom(fsys fs.FS, name string) (*rules.Base, fault.List) {
	return rules.Check([]rules.Layer{{Name: name, Files: fsys}}, catalogue.All())
}
