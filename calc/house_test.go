// Package calc_test holds the house rules of the calculations.
package calc_test

import (
	"go/ast"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// notTopics are the folders that hold no calculation of the trade.
var notTopics = map[string]bool{
	"basis": true, "catalogue": true, "interval": true, "kernel": true, "outside": true, "quantity": true,
}

// Every exported function of a topic that can refuse or note says where it holds
// and where it comes from, each as a line of a list so that go doc keeps them apart.
func TestEveryCalculationSaysWhereItHolds(t *testing.T) {
	folders, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, folder := range folders {
		if !folder.IsDir() || notTopics[folder.Name()] {
			continue
		}
		files, err := filepath.Glob(filepath.Join(folder.Name(), "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			n, faults := unstated(t, file, string(text))
			seen += n
			for _, fault := range faults {
				t.Error(fault)
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d calculations found; is the test looking in the right place?", seen)
	}
}

func TestTheHouseRuleCanFail(t *testing.T) {
	const lists = "//\n//   - Holds for: a.\n//   - Source: b.\n"
	for _, c := range []struct {
		what, doc, function string
		faults              int
	}{
		{"well told", "// F is.\n" + lists, "func F() (float64, error) { return 0, nil }", 0},
		{"no doc", "", "func F() (float64, error) { return 0, nil }", 2},
		{"no source", "// F is.\n//\n//   - Holds for: a.\n", "func F() (x float64, err error) { return 0, nil }", 1},
		{"run together", "// F is.\n// Holds for: a.\n// Source: b.\n", "func F() (float64, []basis.Note) { return 0, nil }", 2},
		{"swallowed by the formula", "// F is.\n//\n//\ta = b\n" + lists, "func F() error { return nil }", 2},
		{"a method", "// F is.\n", "func (a T) F() error { return nil }", 2},
		{"cannot refuse", "// F is.\n", "func F() float64 { return 0 }", 0},
		{"reads a text", "// ReadF reads.\n", "func ReadF(s string) error { return nil }", 0},
		{"not exported", "", "func f() error { return nil }", 0},
	} {
		_, faults := unstated(t, "planted.go", "package p\n\n"+c.doc+c.function+"\n")
		if len(faults) != c.faults {
			t.Errorf("%s: faults %v, want %d", c.what, faults, c.faults)
		}
	}
}

// unstated counts the calculations of a file and tells what their doc comments lack.
func unstated(t *testing.T, file, text string) (calculations int, faults []string) {
	t.Helper()
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, file, text, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range tree.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || !f.Name.IsExported() || !refusesOrNotes(f) || strings.HasPrefix(f.Name.Name, "Read") {
			continue // what reads a text holds for every text
		}
		calculations++
		stated := listed(f.Doc.Text())
		for _, label := range []string{"Holds for:", "Source:"} {
			if !strings.Contains(stated, "\n"+label) {
				faults = append(faults, set.Position(f.Pos()).String()+": "+f.Name.Name+" has no list line \""+label+"\"; put a sentence between formula and list")
			}
		}
	}
	return calculations, faults
}

func refusesOrNotes(f *ast.FuncDecl) bool {
	if f.Type.Results == nil {
		return false
	}
	for _, r := range f.Type.Results.List {
		switch typ := r.Type.(type) {
		case *ast.Ident:
			if typ.Name == "error" {
				return true
			}
		case *ast.ArrayType:
			if e, ok := typ.Elt.(*ast.SelectorExpr); ok && e.Sel.Name == "Note" {
				return true
			}
		}
	}
	return false
}

// listed is the text of a doc comment's list items, each on its own line.
func listed(text string) string {
	var b strings.Builder
	var parse comment.Parser
	for _, block := range parse.Parse(text).Content {
		list, ok := block.(*comment.List)
		if !ok {
			continue
		}
		for _, item := range list.Items {
			b.WriteByte('\n')
			for _, inner := range item.Content {
				if p, ok := inner.(*comment.Paragraph); ok {
					for _, word := range p.Text {
						if plain, ok := word.(comment.Plain); ok {
							b.WriteString(string(plain))
						}
					}
				}
			}
		}
	}
	return b.String()
}
