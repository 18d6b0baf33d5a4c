package catalogue_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/catalogue"
	"wornfit/calc/quantity"
)

// keywords are the operators and literals that expr v1.17.8 spells as words.
// They and taken are written out, because only rules/lang may import expr.
var keywords = strings.Fields("and or not in matches contains startsWith endsWith let if else true false nil")

// taken are the builtins of expr v1.17.8, our own functions and the unit names.
var taken = strings.Fields(`
	abs all any bitand bitor bitxor bitnand bitshl bitshr bitushr bitnot ceil concat count date duration filter find
	findIndex findLast findLastIndex first flatten float floor fromBase64 fromJSON fromPairs get groupBy hasPrefix
	hasSuffix indexOf int join keys last lastIndexOf len lower map max mean median min none now one reduce repeat
	replace reverse round sort sortBy split splitAfter string sum take timezone toBase64 toJSON toPairs trim
	trimPrefix trimSuffix type uniq upper values
	sqrt low high pi degC degF
	mm um m inch thou N kN lbf Nm Pa MPa GPa psi ksi K s minute h days rpm kg g W kW deg`)

var snake = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

func TestNames(t *testing.T) {
	seen := map[string]string{}
	for _, topic := range catalogue.Topics() {
		if len(topic.Kernels) == 0 {
			t.Errorf("topic %s offers nothing", topic.Name)
		}
		for _, k := range topic.Kernels {
			if first, twice := seen[k.Name]; twice {
				t.Errorf("%s is in %s and in %s", k.Name, first, topic.Name)
			}
			seen[k.Name] = topic.Name
			if !snake.MatchString(k.Name) {
				t.Errorf("%s: %q is not snake_case", topic.Name, k.Name)
			}
			if slices.Contains(taken, k.Name) || slices.Contains(keywords, k.Name) {
				t.Errorf("%s: %s is a word of the rule language", topic.Name, k.Name)
			}
			if k.Says == "" || strings.TrimSpace(k.Source) == "" {
				t.Errorf("%s says %q and has the source %q; both must be there", k.Name, k.Says, k.Source)
			}
			if k.Grade > basis.Practice {
				t.Errorf("%s has no grade: %d", k.Name, k.Grade)
			}
		}
	}
}

// An argument of one name means one kind of quantity everywhere, so that a
// reader who met it in one calculation knows it in the next. Arguments are put in
// by place, so one may share its name with a builtin.
func TestArguments(t *testing.T) {
	type use struct {
		dim quantity.Dim
		in  string
	}
	seen := map[string]use{}
	for _, k := range catalogue.All() {
		for _, a := range k.Args {
			if !snake.MatchString(a.Name) || slices.Contains(keywords, a.Name) || a.Says == "" {
				t.Errorf("%s: argument %q must be snake_case, no keyword, and say what it is", k.Name, a.Name)
			}
			if u, met := seen[a.Name]; met && u.dim != a.Dim {
				t.Errorf("argument %s is %v in %s and %v in %s", a.Name, u.dim, u.in, a.Dim, k.Name)
			} else if !met {
				seen[a.Name] = use{a.Dim, k.Name}
			}
		}
	}
}

// A package that offers Kernels is in the list; the folders are read, so a new
// one can not be forgotten.
func TestEveryTopicIsListed(t *testing.T) {
	files, err := filepath.Glob("../*/*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	offers := map[string]bool{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "\nfunc Kernels() []kernel.Kernel") {
			offers[filepath.Base(filepath.Dir(f))] = true
		}
	}
	for _, topic := range catalogue.Topics() {
		if !offers[topic.Name] {
			t.Errorf("topic %s offers no Kernels in its folder", topic.Name)
		}
		delete(offers, topic.Name)
	}
	for name := range offers {
		t.Errorf("calc/%s offers Kernels but is not in the catalogue", name)
	}
}

func TestFind(t *testing.T) {
	all := catalogue.All()
	for _, k := range all {
		if got, ok := catalogue.Find(k.Name); !ok || got.Name != k.Name || got.Value == nil {
			t.Errorf("%s is listed but not found", k.Name)
		}
	}
	if _, ok := catalogue.Find("no_such_thing"); ok {
		t.Error("no_such_thing is found")
	}
	all[0].Name = "spoiled"
	if catalogue.All()[0].Name == "spoiled" {
		t.Error("the list is handed out to be changed")
	}
}

func ExampleFind() {
	k, _ := catalogue.Find("pass_time")
	sheet, err := k.Worked([]float64{0.1, 0.2e-3, 1000. / 60})
	fmt.Println(strings.Join(sheet.Steps, "\n"), err)
	// Output:
	// length / (feed·turns)
	// with length = 0.1 m, feed = 0.0002 m, turns = 16.6667 1/s
	// gives 30 s <nil>
}
