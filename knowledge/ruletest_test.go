package knowledge_test

import (
	"os"
	"path/filepath"
	"testing"

	"wornfit/rules/yamldoc"
)

// ruleTest is a file of tests/: an option at a design that breaks nothing, and
// what a change in the world makes of it.
type ruleTest struct {
	file   string
	option string
	locks  map[string]string // by joint
	base   string            // the case, from the top of the repository
	given  map[string]string // what is otherwise than in the case, for all lines
	picks  map[string]string // the row of each pick that may take several
	sizes  map[string]string
	always []string // what breaks as the option is, whatever the world
	lines  []ruleLine
}

// ruleLine is one change: exactly these rules break, no others of the option.
type ruleLine struct {
	at            string
	change, sizes map[string]string
	breaks        []string
}

// ruleTests reads every file of tests/SIDE/.
func ruleTests(t *testing.T) []ruleTest {
	t.Helper()
	files, err := filepath.Glob("tests/*/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var out []ruleTest
	for _, file := range files {
		if filepath.Dir(file) == filepath.Join("tests", "cases") {
			continue
		}
		out = append(out, readRuleTest(t, file))
	}
	return out
}

func readRuleTest(t *testing.T, file string) ruleTest {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	doc := yamldoc.Read(file, data)
	root := doc.Root
	out := ruleTest{file: file}
	if root.Keys("option", "locks", "base", "given", "picks", "sizes", "always", "lines") {
		out.option = root.Need("option", "name the option").Text()
		out.base = root.Need("base", "name a case").Text()
		out.locks = texts(root.Get("locks"))
		out.given, out.picks, out.sizes = texts(root.Get("given")), texts(root.Get("picks")), texts(root.Get("sizes"))
		for _, n := range root.Get("always").Items() {
			out.always = append(out.always, n.Text())
		}
		for _, n := range root.Need("lines", "write one line a rule").Items() {
			if !n.Keys("change", "sizes", "breaks") {
				continue
			}
			l := ruleLine{at: n.At().String(), change: texts(n.Get("change")), sizes: texts(n.Get("sizes"))}
			for _, b := range n.Need("breaks", "name the rules that break").Items() {
				l.breaks = append(l.breaks, b.Text())
			}
			if len(l.change)+len(l.sizes) == 0 {
				n.Fault("nothing is changed", "write change or sizes")
			}
			out.lines = append(out.lines, l)
		}
	}
	for _, f := range doc.Faults {
		t.Error(f.Error())
	}
	return out
}

func texts(n yamldoc.Node) map[string]string {
	out := map[string]string{}
	for _, e := range n.Entries() {
		out[e.Name] = e.Value.Text()
	}
	return out
}
