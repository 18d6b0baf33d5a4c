// Package calc_test holds the house rules of the calculations.
package calc_test

import (
	"go/ast"
	"go/doc"
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
	seen := 0
	for _, folder := range topics(t) {
		for _, file := range parsed(t, folder, false) {
			n, faults := unstated(file)
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
		_, faults := unstated(plant(t, "planted.go", c.doc+c.function))
		if len(faults) != c.faults {
			t.Errorf("%s: faults %v, want %d", c.what, faults, c.faults)
		}
	}
}

// Every exported function that can refuse or note, and every one that reads a
// text, is shown at work: an Example of its name, with its output, in a test file.
func TestEveryCalculationHasAnExample(t *testing.T) {
	seen := 0
	for _, folder := range topics(t) {
		n, faults := unshown(parsed(t, folder, false), parsed(t, folder, true))
		seen += n
		for _, fault := range faults {
			t.Error(fault)
		}
	}
	if seen < 20 {
		t.Errorf("only %d calculations found; is the test looking in the right place?", seen)
	}
}

func TestTheRuleOfExamplesCanFail(t *testing.T) {
	const calculation = "func F() error { return nil }"
	const shown = "{\n\tfmt.Println(1)\n\t// Output: 1\n}"
	for _, c := range []struct {
		what, function, test string
		fault                string // what it must name; nothing where there is none
	}{
		{"shown", calculation, "func ExampleF() " + shown, ""},
		{"shown twice", calculation, "func ExampleF_cold() " + shown, ""},
		{"no example", calculation, "func TestF(t *testing.T) {}", "topic/planted.go:3:1: F "},
		{"no test at all", calculation, "", "func ExampleF"},
		{"never run", calculation, "func ExampleF() { fmt.Println(1) }", "an Output line"},
		{"nothing to read", calculation, "func ExampleF() {\n\t// Output:\n}", "an Output line"},
		{"another's", calculation, "func ExampleFall() " + shown, "func ExampleF "},
		{"a method", "func (a T) F() error { return nil }", "func ExampleT_F() " + shown, ""},
		{"a method of a pointer", "func (a *T) F() error { return nil }", "func ExampleT_F_cold() " + shown, ""},
		{"a method of a type of any number", "func (a T[N]) F() error { return nil }", "func ExampleT_F() " + shown, ""},
		{"a method shown as a function", "func (a T) F() error { return nil }", "func ExampleF() " + shown, "func ExampleT_F "},
		{"a method of what is not exported", "func (a hidden) F() error { return nil }", "", ""},
		{"reads a text", "func ReadF(s string) error { return nil }", "", "func ExampleReadF "},
		{"cannot refuse", "func F() float64 { return 0 }", "", ""},
		{"not exported", "func f() error { return nil }", "", ""},
	} {
		var tests []file
		if c.test != "" {
			tests = []file{plant(t, "topic/planted_test.go", c.test)}
		}
		_, faults := unshown([]file{plant(t, "topic/planted.go", c.function)}, tests)
		switch {
		case c.fault == "" && len(faults) != 0:
			t.Errorf("%s: faults %v, want none", c.what, faults)
		case c.fault != "" && (len(faults) != 1 || !strings.Contains(faults[0], c.fault)):
			t.Errorf("%s: faults %q, want one that says %q", c.what, faults, c.fault)
		}
	}
}

// file is a parsed file and what tells the lines of its parts.
type file struct {
	*ast.File
	set *token.FileSet
}

// topics are the folders that hold calculations.
func topics(t *testing.T) []string {
	t.Helper()
	folders, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, f := range folders {
		if f.IsDir() && !notTopics[f.Name()] {
			out = append(out, f.Name())
		}
	}
	return out
}

// parsed reads the files of a folder: its tests, or all but them.
func parsed(t *testing.T, folder string, tests bool) []file {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	var out []file
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") == tests {
			out = append(out, parse(t, name, nil))
		}
	}
	return out
}

// plant is a file made up to try a rule on.
func plant(t *testing.T, name, text string) file {
	t.Helper()
	return parse(t, name, "package p\n\n"+text+"\n")
}

func parse(t *testing.T, name string, text any) file {
	t.Helper()
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, name, text, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	return file{tree, set}
}

// calculations are the exported functions of a file that can refuse or note.
func (f file) calculations() []*ast.FuncDecl {
	var out []*ast.FuncDecl
	for _, d := range f.Decls {
		if fn, ok := d.(*ast.FuncDecl); ok && fn.Name.IsExported() && refusesOrNotes(fn) {
			out = append(out, fn)
		}
	}
	return out
}

func (f file) at(n ast.Node) string { return f.set.Position(n.Pos()).String() }

// unstated counts the calculations of a file and tells what their doc comments lack.
func unstated(f file) (calculations int, faults []string) {
	for _, fn := range f.calculations() {
		if strings.HasPrefix(fn.Name.Name, "Read") {
			continue // what reads a text holds for every text
		}
		calculations++
		stated := listed(fn.Doc.Text())
		for _, label := range []string{"Holds for:", "Source:"} {
			if !strings.Contains(stated, "\n"+label) {
				faults = append(faults, f.at(fn)+": "+fn.Name.Name+" has no list line \""+label+"\"; put a sentence between formula and list")
			}
		}
	}
	return calculations, faults
}

// unshown counts the calculations of a package and tells which no Example shows.
func unshown(files, tests []file) (calculations int, faults []string) {
	runs := map[string]bool{}
	for _, f := range tests {
		for _, e := range doc.Examples(f.File) {
			runs[e.Name] = runs[e.Name] || e.Output != ""
		}
	}
	for _, f := range files {
		for _, fn := range f.calculations() {
			name, ok := exampled(fn)
			if !ok {
				continue // go doc shows no method of a type that is not exported
			}
			calculations++
			if !shows(runs, name) {
				faults = append(faults, f.at(fn)+": "+fn.Name.Name+" is not shown at work; write func Example"+name+
					" with an Output line in "+filepath.Join(filepath.Dir(f.set.Position(fn.Pos()).Filename), "example_test.go"))
			}
		}
	}
	return calculations, faults
}

// shows reports whether an Example that runs bears a name, alone or with a
// small-lettered word after it.
func shows(runs map[string]bool, name string) bool {
	for example, run := range runs {
		rest, of := strings.CutPrefix(example, name)
		if run && of && (rest == "" || len(rest) > 1 && rest[0] == '_' && !token.IsExported(rest[1:])) {
			return true
		}
	}
	return false
}

// exampled is what go doc wants after Example: F, or T_M for a method of T.
func exampled(fn *ast.FuncDecl) (name string, ok bool) {
	if fn.Recv == nil {
		return fn.Name.Name, true
	}
	typ := fn.Recv.List[0].Type
	for {
		switch of := typ.(type) {
		case *ast.StarExpr:
			typ = of.X
		case *ast.IndexExpr:
			typ = of.X
		case *ast.IndexListExpr:
			typ = of.X
		case *ast.Ident:
			return of.Name + "_" + fn.Name.Name, of.IsExported()
		default:
			return "", false
		}
	}
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
