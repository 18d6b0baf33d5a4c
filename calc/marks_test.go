package calc_test

import (
	"encoding/csv"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// mark is what a comment must say for a number to have a source: how it was come
// by, in one of the words for it. "our choice" is for numbers of the program, not
// of the trade.
var mark = regexp.MustCompile(`(?i)\b(exact|by definition|from memory|common practice|our choice|derived|worked out|geometry|arithmetic|read (in|on|as)|SOURCES\.md|tables? [0-9]|ISO [0-9]|JCGM|NIST|DIN [0-9]|catalogue|span of the tables?)\b`)

// Every number that stands as a constant or in a table of calc says beside it, or
// above it, where it is from.
func TestEveryConstantHasItsSource(t *testing.T) {
	numbers := 0
	walk(t, ".", ".go", func(path, text string) {
		if strings.HasSuffix(path, "_test.go") {
			return
		}
		n, faults := unmarked(t, path, text)
		numbers += n
		for _, fault := range faults {
			t.Error(fault)
		}
	})
	if numbers < 30 {
		t.Errorf("only %d constants and tables found; is the test looking in the right place?", numbers)
	}
}

// Every row of an embedded table names its source and its mark.
func TestEveryRowHasItsSource(t *testing.T) {
	rows := 0
	walk(t, ".", ".csv", func(path, text string) {
		if strings.Contains(filepath.ToSlash(path), "testdata/") {
			return
		}
		n, faults := unsourced(path, text)
		rows += n
		for _, fault := range faults {
			t.Error(fault)
		}
	})
	if rows < 1000 {
		t.Errorf("only %d rows found; is the test looking in the right place?", rows)
	}
}

func TestTheMarkRuleCanFail(t *testing.T) {
	for _, c := range []struct {
		what, text string
		faults     int
	}{
		{"marked beside", "const Gap = 0.5 // from memory of a handbook", 0},
		{"marked above", "// Gap is common practice, no source.\nconst Gap = 0.5", 0},
		{"marked above the group", "// Exact by definition.\nconst (\n\tA = 25.4\n\tB = 9.8\n)", 0},
		{"one of two in a group", "const (\n\tA = 25.4 // exact\n\tB = 9.8\n)", 1},
		{"no comment", "const Gap = 0.5", 1},
		{"a comment without a source", "// Gap is how wide it is.\nconst Gap = 0.5", 1},
		{"not exported", "const gap = 0.5", 1},
		{"inside a function", "func f() float64 {\n\tconst gap = 0.5\n\treturn gap\n}", 1},
		{"worked out of another", "const gap = 3 * other", 1},
		{"a table", "var widths = []float64{4, 6, 10}", 1},
		{"a table of rows", "// widths by grade, ISO 286-1 table 1.\nvar widths = map[int]float64{6: 13}", 0},
		{"a negative one", "const Low = -40.0", 1},
		{"a mere 1", "const One = 1", 0},
		{"an enumeration", "const (\n\tA = iota\n\tB\n)", 0},
		{"a word", "const source = \"ISO 286\"", 0},
		{"a variable without a number", "var known = []string{\"a\"}", 0},
		{"a function with numbers", "var f = func(x float64) float64 { return 2.5 * x }", 0},
		{"a length of an array", "var kept [16]float64", 0},
	} {
		if _, faults := unmarked(t, "planted.go", "package p\n\n"+c.text+"\n"); len(faults) != c.faults {
			t.Errorf("%s: faults %v, want %d", c.what, faults, c.faults)
		}
	}
	for _, c := range []struct {
		what, text string
		faults     int
	}{
		{"sound", "size,source,seen\n1,ISO 15,memory\n", 0},
		{"no source", "size,source,seen\n1,,memory\n", 1},
		{"no mark", "size,source,seen\n1,ISO 15,\n", 1},
		{"no column", "size\n1\n", 1},
	} {
		if _, faults := unsourced("planted.csv", c.text); len(faults) != c.faults {
			t.Errorf("a table, %s: faults %v, want %d", c.what, faults, c.faults)
		}
	}
}

// unmarked counts the constants and tables of a file that hold a number and tells
// which have no source beside or above them.
func unmarked(t *testing.T, path, text string) (numbers int, faults []string) {
	t.Helper()
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, path, text, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(text, "\n")
	look := func(d *ast.GenDecl) {
		for _, s := range d.Specs {
			v, ok := s.(*ast.ValueSpec)
			if !ok || !holdsNumber(v) {
				continue
			}
			numbers++
			if said := d.Doc.Text() + v.Doc.Text() + v.Comment.Text() + lineComment(set, tree, lines, v); !mark.MatchString(said) {
				faults = append(faults, set.Position(v.Pos()).String()+": "+v.Names[0].Name+
					" has no source beside or above it: say read where, derived, from memory of what, common practice, exact, or our choice")
			}
		}
	}
	for _, d := range tree.Decls {
		switch d := d.(type) {
		case *ast.GenDecl:
			look(d)
		case *ast.FuncDecl:
			ast.Inspect(d, func(n ast.Node) bool {
				if in, ok := n.(*ast.GenDecl); ok && in.Tok == token.CONST {
					look(in)
				}
				return true
			})
		}
	}
	return numbers, faults
}

// lineComment is what stands behind a value on its own lines, or by itself on the
// lines above: inside a function the parser hangs it on nothing.
func lineComment(set *token.FileSet, tree *ast.File, lines []string, v *ast.ValueSpec) string {
	first, last := set.Position(v.Pos()).Line, set.Position(v.End()).Line
	var out string
	for _, g := range tree.Comments {
		at, end := set.Position(g.Pos()).Line, set.Position(g.End()).Line
		alone := strings.HasPrefix(strings.TrimSpace(lines[at-1]), "//")
		if alone && end == first-1 || at >= first && at <= last {
			out += g.Text()
		}
	}
	return out
}

// holdsNumber reports whether a declaration states a number other than 0 or 1.
// Functions, types and the counts of an enumeration state none.
func holdsNumber(v *ast.ValueSpec) bool {
	found := false
	for _, x := range v.Values {
		ast.Inspect(x, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncLit, *ast.ArrayType:
				return false
			case *ast.BasicLit:
				if n.Kind == token.INT || n.Kind == token.FLOAT {
					x, err := strconv.ParseFloat(n.Value, 64)
					found = found || err != nil || x != 0 && x != 1
				}
			}
			return true
		})
	}
	return found
}

// unsourced counts the rows of a table and tells which lack a source or a mark of
// how it was come by.
func unsourced(path, text string) (rows int, faults []string) {
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(all) < 2 {
		return 0, []string{path + ": is no table: " + strconv.Itoa(len(all)) + " lines"}
	}
	source, seen := -1, -1
	for i, head := range all[0] {
		switch head {
		case "source":
			source = i
		case "seen", "confidence", "confirmed":
			seen = i
		}
	}
	if source < 0 || seen < 0 {
		return len(all) - 1, []string{path + ": needs the columns source and seen"}
	}
	for n, row := range all[1:] {
		if row[source] == "" || row[seen] == "" {
			faults = append(faults, path+":"+strconv.Itoa(n+2)+": the row has no source or no mark")
		}
	}
	return len(all) - 1, faults
}

func walk(t *testing.T, root, ext string, each func(path, text string)) {
	t.Helper()
	err := filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || filepath.Ext(path) != ext {
			return err
		}
		text, err := os.ReadFile(path)
		if err == nil {
			each(path, string(text))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
