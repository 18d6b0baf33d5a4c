package catalogue_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"go/ast"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wornfit/calc/catalogue"
)

var update = flag.Bool("update", false, "write told.json anew from the doc comments")

// tellers tell of the kernels whose function the source does not show: the name is
// put together, or several documented functions stand beside it. The first that
// fits counts.
var tellers = []struct{ topic, kernels, function string }{
	{"assembly", "cold_expansion_*", "MeanContraction"},
	{"assembly", "grab_time_along_*", "GrabTimeAlong"},
	{"assembly", "grab_time_*", "GrabTime"},
	{"assembly", "grab_estimate_*", "GrabEstimate"},
	{"buildup", "carbon_equivalent", "CarbonEquivalent"},
	{"bushes", "*_bore_*", "ByBore"},
	{"bushes", "*_outside_*", "ByOutside"},
	{"fits", "held_grade", "HeldGrade"},
	{"gears", "form_factor", "FormFactor"},
	{"gears", "velocity_factor", "VelocityFactor"},
	{"rolling", "c?_clearance_*", "InternalClearance"},
}

// teller is the function named for a kernel in tellers, or "".
func teller(t *testing.T, topic, kernel string) string {
	for _, r := range tellers {
		fits, err := path.Match(r.kernels, kernel)
		if err != nil {
			t.Fatal(err)
		}
		if fits && r.topic == topic {
			return r.function
		}
	}
	return ""
}

// What is told of a kernel is the doc comment of the function its Worked calls.
func TestToldIsWhatTheDocCommentsSay(t *testing.T) {
	told := map[string]catalogue.Doc{}
	var silent []string
	for _, topic := range catalogue.Topics() {
		p := readTopic(t, topic.Name)
		for _, k := range topic.Kernels {
			d, ok := p.told(k.Name)
			if f := teller(t, topic.Name, k.Name); f != "" {
				if ok {
					t.Errorf("%s is found without being named in tellers", k.Name)
				}
				d, ok = p.docs[f]
			}
			if ok {
				told[k.Name] = d
			} else {
				silent = append(silent, k.Name)
			}
		}
	}
	if len(silent) > 0 {
		t.Errorf("nothing is told of %s; name their functions in tellers", strings.Join(silent, ", "))
	}
	told = inPlainNames(told)
	var text bytes.Buffer
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	e.SetIndent("", "\t")
	if err := e.Encode(told); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("told.json", text.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile("told.json")
	if err != nil || !bytes.Equal(kept, text.Bytes()) {
		t.Errorf("told.json is not what the doc comments say (%v); go test ./calc/catalogue -run Told -update", err)
	}
	for kernel, function := range map[string]string{ // found by eye
		"contact_pressure": "interference.ContactPressure", "grip_torque": "interference.GripTorque",
		"shaft_cleanup_keeping_axis": "cleanup.ShaftKeepingAxis", "bush_life": "wear.BushLife", "shaft_upper": "fits.Of",
	} {
		if told[kernel].Function != function {
			t.Errorf("%s is told by %q, not by %s", kernel, told[kernel].Function, function)
		}
	}
}

// Where two documented functions are called alike, neither is told.
func TestToldDoesNotGuess(t *testing.T) {
	const doc = "\n//\n//   - Holds for: a.\n//   - Source: b.\nfunc "
	text := "package p\n// A is." + doc + "A() error { return nil }\n// B is." + doc + "B() error { return nil }\n" +
		"func helped(name string) any { return B() }\nfunc Kernels() []any { through := func() any { return A() }; return []any{\n" +
		"f(\"one\", func() any { return A() }),\nf(\"two\", func() any { A(); return B() }),\nhelped(\"three\"),\nf(\"four\", through),\nf(\"five\"),\n} }\n"
	p := newTopic("p")
	p.add(t, "planted.go", text)
	for name, want := range map[string]string{"one": "p.A", "two": "", "three": "p.B", "four": "p.A", "five": "", "six": ""} {
		if d, _ := p.told(name); d.Function != want {
			t.Errorf("%s is told by %q, want %q", name, d.Function, want)
		}
	}
}

// inPlainNames calls a function that a doc comment names by the one or two kernels it is
// behind, as they are typed, else in small words. A name of one word without its
// package may be a word like any other and is left.
func inPlainNames(told map[string]catalogue.Doc) map[string]catalogue.Doc {
	kernels := map[string][]string{}
	for kernel, d := range told {
		_, function, _ := strings.Cut(d.Function, ".")
		kernels[function] = append(kernels[function], kernel)
	}
	for _, list := range kernels {
		slices.Sort(list)
	}
	named := regexp.MustCompile(`\b[a-z]+\.[A-Z][A-Za-z0-9]*\b|\b[A-Z][a-z0-9]+([A-Z][a-z0-9]+)+\b`)
	noted := regexp.MustCompile(`(noted as extrapolated)`)
	hump := regexp.MustCompile(`([a-z0-9])([A-Z])`)
	plain := func(text string) string {
		// a kernel is not worked outside the ranges of its arguments, its function is
		text = noted.ReplaceAllString(text, "$1 (refused outside the ranges it wants)")
		return named.ReplaceAllStringFunc(text, func(name string) string {
			name = name[strings.Index(name, ".")+1:]
			if list := kernels[name]; len(list) == 1 || len(list) == 2 {
				return strings.ReplaceAll(strings.Join(list, " or "), "_", "-")
			}
			return strings.ToLower(hump.ReplaceAllString(name, "$1 $2"))
		})
	}
	out := map[string]catalogue.Doc{}
	for kernel, d := range told {
		d.Holds, d.Beyond, d.Source = plain(d.Holds), plain(d.Beyond), plain(d.Source)
		out[kernel] = d
	}
	return out
}

// source is the files of one topic.
type source struct {
	name  string
	files []*ast.File
	funcs map[string]*ast.FuncDecl // by name, methods too
	docs  map[string]catalogue.Doc // of the functions that say where they hold
}

func newTopic(name string) *source {
	return &source{name: name, funcs: map[string]*ast.FuncDecl{}, docs: map[string]catalogue.Doc{}}
}

func readTopic(t *testing.T, name string) *source {
	t.Helper()
	p := newTopic(name)
	files, err := filepath.Glob(filepath.Join("..", name, "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files of %s, %v", len(files), name, err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p.add(t, file, string(text))
	}
	return p
}

func (p *source) add(t *testing.T, file, text string) {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), file, text, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	p.files = append(p.files, tree)
	for _, d := range tree.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		p.funcs[f.Name.Name] = f
		if d := docOf(f.Doc.Text()); f.Name.IsExported() && d.Holds != "" {
			d.Function = p.name + "." + f.Name.Name
			p.docs[f.Name.Name] = d
		}
	}
}

// docOf takes a doc comment apart.
func docOf(text string) catalogue.Doc {
	var out catalogue.Doc
	for _, block := range new(comment.Parser).Parse(text).Content {
		switch b := block.(type) {
		case *comment.Code:
			if out.Formula == "" {
				out.Formula = strings.TrimSpace(b.Text)
			}
		case *comment.List:
			for _, item := range b.Items {
				label, rest, _ := strings.Cut(plainText(item.Content), ":")
				rest = strings.TrimSpace(rest)
				switch label {
				case "Holds for":
					out.Holds = rest
				case "Beyond":
					out.Beyond = rest
				case "Source":
					out.Source = rest
				}
			}
		}
	}
	return out
}

func plainText(blocks []comment.Block) string {
	text := new(comment.Printer).Text(&comment.Doc{Content: blocks})
	return strings.Join(strings.Fields(string(text)), " ")
}

// told finds where a kernel's name stands, and the one documented function that
// is called there; else the one called by what is called there, and so on.
func (p *source) told(kernel string) (catalogue.Doc, bool) {
	for _, tree := range p.files {
		var path, found []ast.Node
		ast.Inspect(tree, func(n ast.Node) bool {
			if n == nil {
				path = path[:len(path)-1]
				return true
			}
			path = append(path, n)
			if lit, ok := n.(*ast.BasicLit); ok && lit.Value == strconv.Quote(kernel) && found == nil {
				found = slices.Clone(path)
			}
			return true
		})
		if found == nil {
			continue
		}
		piece, alone := element(found)
		name := p.called(locals(found), piece)
		if name == "" && alone {
			name = p.called(locals(found), found[1]) // the whole function is about this one
		}
		d, ok := p.docs[name]
		return d, ok
	}
	f := p.joined()
	if f == nil {
		return catalogue.Doc{}, false
	}
	d, ok := p.docs[p.called(locals([]ast.Node{f}), f)]
	return d, ok
}

// element is the largest piece round a name that is still about one kernel: the
// element of the list it is in, else its statement, which stands alone.
func element(path []ast.Node) (piece ast.Node, alone bool) {
	for i, n := range path {
		list, ok := n.(*ast.CompositeLit)
		if _, isList := typeOf(list).(*ast.ArrayType); ok && isList && i+1 < len(path) {
			return path[i+1], false
		}
	}
	for i := len(path) - 1; i >= 0; i-- {
		if s, ok := path[i].(ast.Stmt); ok {
			return s, true
		}
	}
	return path[len(path)-1], false
}

func typeOf(c *ast.CompositeLit) ast.Expr {
	if c == nil {
		return nil
	}
	return c.Type
}

// locals are the functions kept in variables of the function round the name.
func locals(path []ast.Node) map[string]ast.Node {
	out := map[string]ast.Node{}
	for _, n := range path {
		f, ok := n.(*ast.FuncDecl)
		if !ok {
			continue
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if a, ok := n.(*ast.AssignStmt); ok && len(a.Lhs) == 1 && len(a.Rhs) == 1 {
				if id, ok := a.Lhs[0].(*ast.Ident); ok {
					if lit, ok := a.Rhs[0].(*ast.FuncLit); ok {
						out[id.Name] = lit
					}
				}
			}
			return true
		})
	}
	return out
}

// called is the one documented function named in the pieces, or else in the
// functions they name, and so on level by level; "" for none or several.
func (p *source) called(locals map[string]ast.Node, pieces ...ast.Node) string {
	been := map[string]bool{}
	for len(pieces) > 0 {
		var names []string
		var next []ast.Node
		for _, piece := range pieces {
			ast.Inspect(piece, func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				if !ok || been[id.Name] {
					return true
				}
				been[id.Name] = true
				if _, told := p.docs[id.Name]; told {
					names = append(names, id.Name)
				} else if f := locals[id.Name]; f != nil {
					next = append(next, f)
				} else if f := p.funcs[id.Name]; f != nil && f.Body != nil {
					next = append(next, f.Body)
				}
				return true
			})
		}
		if len(names) > 0 {
			return only(names)
		}
		pieces = next
	}
	return ""
}

// joined is the one function that makes kernels whose names are put together;
// nil for none or several.
func (p *source) joined() *ast.FuncDecl {
	var out *ast.FuncDecl
	several := false
	for _, f := range p.funcs {
		ast.Inspect(f, func(n ast.Node) bool {
			kv, ok := n.(*ast.KeyValueExpr)
			if !ok {
				return true
			}
			id, isName := kv.Key.(*ast.Ident)
			if _, sum := kv.Value.(*ast.BinaryExpr); sum && isName && id.Name == "Name" {
				several = several || out != nil && out != f
				out = f
			}
			return true
		})
	}
	if several {
		return nil
	}
	return out
}

func only(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	return ""
}
