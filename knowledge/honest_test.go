package knowledge_test

import (
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"wornfit/calc/basis"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

var update = flag.Bool("update", false, "write tests/weak-musts.txt anew")

// Every number anywhere in the files says where it is from and how it was seen,
// read here without the loader, so that what the loader skips is found too.
func TestEveryNumberSaysWhereItIsFrom(t *testing.T) {
	numbers := map[string]int{}
	err := fs.WalkDir(os.DirFS("."), ".", func(file string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && (e.Name() == "tests" || e.Name() == "testdata"):
			return fs.SkipDir
		case e.IsDir() || filepath.Ext(file) != ".yaml":
			return nil
		}
		doc := yamldoc.ReadFS(os.DirFS("."), file)
		for _, f := range doc.Faults {
			t.Error(f.Error())
		}
		sourced(t, doc.Root, numbers, strings.HasPrefix(file, "vocabulary/"))
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	total := 0
	for _, n := range numbers {
		total += n
	}
	t.Logf("%d numbers: %v", total, numbers)
	if total < 400 {
		t.Errorf("only %d numbers were found; the walk has lost its way", total)
	}
}

// sourced tells a value without from and seen, and a number that stands bare.
// The vocabulary's ranges and examples decide nothing and need no source.
func sourced(t *testing.T, n yamldoc.Node, numbers map[string]int, vocabulary bool) {
	if v := n.Get("value"); v.Present() {
		from, seen := n.Get("from").Text(), n.Get("seen").Text()
		if from == "" || seen == "" {
			t.Errorf("%s: %s = %s: from %q, seen %q; a number says both", n.At(), n.Key, v.Text(), from, seen)
		}
		numbers[seen]++
		return
	}
	whole := n.Get("from").Present() && n.Get("seen").Present() // of a criterion: says it for all it holds
	if c := n.Get("curve"); c.Present() && !whole {
		t.Errorf("%s: the curve of %s says not where it is from", c.At(), n.Get("id").Text())
	}
	for _, e := range n.Entries() {
		if whole && e.Name == "curve" {
			continue
		}
		if text := e.Value; !vocabulary && !whole && text.IsScalar() && !text.Quoted() && bare(text.Text()) {
			t.Errorf("%s: %s = %s stands bare; write {value: ..., from: ..., seen: ...}", text.At(), text.Key, text.Text())
		}
		sourced(t, e.Value, numbers, vocabulary)
	}
	if n.IsList() {
		for _, x := range n.Items() {
			sourced(t, x, numbers, vocabulary)
		}
	}
}

// bare reports a text that begins as a number does and is no sentence.
func bare(text string) bool {
	first := strings.TrimLeft(text, "+-±.")
	return first != "" && unicode.IsDigit(rune(first[0])) && len(strings.Fields(text)) < 3
}

const weakMusts = "tests/weak-musts.txt"

// A must that hangs on a number from memory or practice is listed in a file, so
// that a new one is seen in a diff and the list can only be made shorter on
// purpose.
func TestMustsOnWeakNumbersAreListed(t *testing.T) {
	base := shipped(t)
	found, musts := weak(base)
	var text strings.Builder
	fmt.Fprintln(&text, "# Every must whose verdict hangs on a number from memory or from practice, and those numbers.")
	fmt.Fprintln(&text, "# A column of a table is listed when the number of any row is weak. Written by: go test ./knowledge -run Musts -update")
	for _, id := range slices.Sorted(maps.Keys(found)) {
		fmt.Fprintf(&text, "%s: %s\n", id, strings.Join(slices.Sorted(maps.Keys(found[id])), ", "))
	}
	if *update {
		if err := os.WriteFile(weakMusts, []byte(text.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	had, err := os.ReadFile(weakMusts)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d of %d musts hang on weak numbers", len(found), musts)
	if string(had) != text.String() {
		t.Errorf("%s is not what the rules say; look at each new line, better its source, or run with -update:\n%s", weakMusts, text.String())
	}
}

// weak lists, for each must that is a limit, the weak numbers its margin rests
// on in any option; musts is how many such limits there are.
func weak(base *rules.Base) (found map[string]map[string]bool, musts int) {
	found = map[string]map[string]bool{}
	all := map[string]bool{}
	columns := weakColumns(base)
	for _, p := range base.Input.Parts {
		if p.Side != link.Purpose {
			continue
		}
		for _, c := range link.Every(base.Input, p) {
			o, err := c.Link(base.Input)
			if err != nil {
				continue // another test tells it
			}
			for i := range o.Checks {
				c := &o.Checks[i]
				if c.Need || c.Strength != link.Must {
					continue
				}
				id := c.Of.Side.String() + "/" + c.ID
				all[id] = true
				for _, s := range o.Uses(c.Margin) {
					if name := weakName(s, columns); name != "" {
						if found[id] == nil {
							found[id] = map[string]bool{}
						}
						found[id][name] = true
					}
				}
			}
		}
	}
	return found, len(all)
}

func weakName(s link.Slot, columns map[string]string) string {
	switch {
	case s.Kind == link.NumberSlot && s.Number.Grade.Weak():
		name := s.Number.ID
		if file, _, ok := strings.Cut(strings.TrimSuffix(s.Name[strings.Index(s.Name, "(")+1:], ")"), "."); ok {
			name = file + "." + name
		}
		return name + " (" + s.Number.Grade.String() + ")"
	case s.Table != "":
		return columns[s.Table+"."+s.Column]
	}
	return ""
}

// weakColumns are the columns of the shipped tables of which a number is weak.
func weakColumns(base *rules.Base) map[string]string {
	out := map[string]string{}
	for table, columns := range base.Vocabulary.Tables {
		for _, c := range columns {
			worst := basis.Page
			for _, r := range base.Rows(table) {
				if k, ok := r.Columns[c.Name]; ok {
					worst = basis.Worse(worst, k.Grade)
				}
			}
			if worst.Weak() {
				out[table+"."+c.Name] = table + "." + c.Name + " (" + worst.String() + ")"
			}
		}
	}
	return out
}
