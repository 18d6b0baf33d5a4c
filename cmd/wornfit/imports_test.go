package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// everybody may be imported by all.
var everybody = []string{"calc/quantity", "calc/interval", "calc/basis"}

// may lists what each package may import besides: ours by folder, others by
// module. A row that ends in /... stands for the packages below it. Tests are free.
var may = map[string][]string{
	"calc/quantity": {}, "calc/interval": {}, "calc/basis": {}, "calc/outside": {},
	"calc/kernel":            {},
	"calc/kernel/kerneltest": {"calc/kernel"},
	"calc/assembly":          {"calc/kernel"},
	"calc/bearing":           {"calc/kernel", "calc/interference"},
	"calc/buildup":           {"calc/kernel"},
	"calc/bushes":            {"calc/kernel"},
	"calc/cleanup":           {"calc/kernel"},
	"calc/film":              {"calc/kernel"},
	"calc/fits":              {"calc/kernel"},
	"calc/gears":             {"calc/kernel"},
	"calc/interference":      {"calc/kernel"},
	"calc/joints":            {"calc/kernel"},
	"calc/keyed":             {"calc/kernel"},
	"calc/machining":         {"calc/kernel"},
	"calc/rolling":           {"calc/kernel", "calc/interference"},
	"calc/rotating":          {"calc/kernel"},
	"calc/strength":          {"calc/kernel"},
	"calc/uncertainty":       {"calc/kernel", "gonum.org/v1/gonum"},
	"calc/wear":              {"calc/kernel"},
	"calc/catalogue": {"calc/kernel", "calc/assembly", "calc/bearing", "calc/buildup", "calc/bushes", "calc/cleanup", "calc/film", "calc/fits", "calc/gears",
		"calc/interference", "calc/joints", "calc/keyed", "calc/machining", "calc/rolling", "calc/rotating", "calc/strength", "calc/uncertainty", "calc/wear"},

	"rules/fault":   {},
	"rules/yamldoc": {"rules/fault", "gopkg.in/yaml.v3"},
	"rules/lang":    {"rules/fault", "calc/kernel", "github.com/expr-lang/expr"},
	"rules/tape":    {"rules/lang", "rules/fault", "calc/kernel"},
	"rules/link":    {"rules/lang", "rules/tape", "rules/fault", "calc/kernel"},
	"rules":         {"rules/lang", "rules/link", "rules/tape", "rules/yamldoc", "rules/fault", "calc/kernel"},
	"knowledge":     {"rules", "rules/fault", "calc/catalogue"},

	"advisor/casefile":  {"calc/rolling", "rules", "rules/yamldoc", "rules/fault", "rules/lang"},
	"advisor/condition": {"advisor/casefile", "calc/cleanup", "calc/rolling", "calc/rotating", "calc/uncertainty", "rules/link", "rules/fault"},
	"advisor/given":     {"advisor/casefile", "advisor/condition", "rules", "rules/lang", "rules/link"},
	"advisor/solve":     {"rules/lang", "rules/link", "rules/tape"},
	"advisor/answer":    {},
	"advisor/diagnose":  {"advisor/answer", "advisor/given", "rules", "rules/link", "rules/tape"},
	"advisor/rank":      {"advisor/answer", "advisor/solve", "rules/link"},
	"advisor/why":       {"advisor/answer", "advisor/solve", "rules", "rules/link", "rules/tape"},
	"advisor/judge":     {"advisor/answer", "advisor/given", "advisor/rank", "advisor/solve", "advisor/why", "rules", "rules/link", "rules/tape"},
	"advisor": {"advisor/answer", "advisor/casefile", "advisor/condition", "advisor/diagnose", "advisor/given", "advisor/judge", "knowledge", "rules",
		"rules/fault", "rules/link"},

	"cmd/wornfit": {"cmd/wornfit/...", "advisor", "advisor/answer", "advisor/casefile", "calc/catalogue", "calc/fits", "calc/kernel", "knowledge", "rules", "rules/fault", "rules/link",
		"github.com/spf13/cobra", "github.com/spf13/pflag", "golang.org/x/term"},
	"cmd/wornfit/render": {"advisor/answer", "calc/catalogue", "calc/kernel", "github.com/olekukonko/tablewriter"},
}

// Imports point one way, by this table and no other.
func TestImportsPointOneWay(t *testing.T) {
	seen := 0
	for dir, imports := range importsOf(t, "../..") {
		allowed, known := may[dir]
		if !known {
			t.Errorf("%s has no row in this table: say what it may import", dir)
			continue
		}
		for _, imp := range imports {
			seen++
			if !allows(allowed, dir, imp) {
				t.Errorf("%s imports %s, which this table does not allow", dir, imp)
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d imports were looked at; the walk has lost its way", seen)
	}
}

// The table can fail: an edge that points upward is told.
func TestAnUpwardImportIsTold(t *testing.T) {
	for _, edge := range [][2]string{{"calc/fits", "advisor"}, {"rules/lang", "rules"}, {"advisor/solve", "advisor/casefile"}, {"advisor", "gopkg.in/yaml.v3"}} {
		if allows(may[edge[0]], edge[0], edge[1]) {
			t.Errorf("%s may import %s", edge[0], edge[1])
		}
	}
}

func allows(allowed []string, dir, imp string) bool {
	if slices.Contains(everybody, imp) && imp != dir {
		return true
	}
	for _, a := range allowed {
		if below, ok := strings.CutSuffix(a, "/..."); ok && strings.HasPrefix(imp, below+"/") || imp == a || strings.Contains(a, ".") && strings.HasPrefix(imp, a+"/") {
			return true
		}
	}
	return false
}

// importsOf reads what each folder of the repository imports outside the
// standard library, tests left out.
func importsOf(t *testing.T, root string) map[string][]string {
	out := map[string][]string{}
	err := filepath.WalkDir(root, func(file string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && (e.Name() == "testdata" || e.Name() == ".git") {
			return filepath.SkipDir
		}
		if path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		dir, _ := filepath.Rel(root, filepath.Dir(file))
		dir = filepath.ToSlash(dir)
		for _, i := range f.Imports {
			imp, _ := strconv.Unquote(i.Path.Value)
			ours, isOurs := strings.CutPrefix(imp, "wornfit/")
			if isOurs {
				imp = ours
			} else if !strings.Contains(strings.Split(imp, "/")[0], ".") {
				continue
			}
			if !slices.Contains(out[dir], imp) {
				out[dir] = append(out[dir], imp)
			}
		}
		if out[dir] == nil {
			out[dir] = []string{}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
