package rules_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"wornfit/calc/catalogue"
	"wornfit/rules"
	"wornfit/rules/fault"
)

// small is the rule base in testdata/small, which has no faults; every number
// in it is invented. edits replace whole files, or a text within one: a value
// that holds " => " says what stands there and what to put instead.
func small(t *testing.T, edits map[string]string) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	root := os.DirFS("testdata/small")
	err := fs.WalkDir(root, ".", func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(root, p)
		out[p] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for p, text := range edits {
		for _, line := range strings.Split(text, "\n\n") {
			was, now, part := strings.Cut(line, " => ")
			switch {
			case !part:
				out[p] = &fstest.MapFile{Data: []byte(text)}
			case out[p] == nil || !strings.Contains(string(out[p].Data), was):
				t.Fatalf("%s has no %q to change", p, was)
			default:
				out[p] = &fstest.MapFile{Data: []byte(strings.Replace(string(out[p].Data), was, now, 1))}
			}
		}
	}
	return out
}

func load(fsys fs.FS, over ...rules.Layer) (*rules.Base, fault.List) {
	return rules.Check(append([]rules.Layer{{Name: "small", Files: fsys}}, over...), catalogue.All())
}

// good loads a base that must have no faults.
func good(t *testing.T, fsys fs.FS, over ...rules.Layer) *rules.Base {
	t.Helper()
	b, faults := load(fsys, over...)
	if len(faults) > 0 {
		t.Fatalf("%v", faults)
	}
	return b
}

// told is what loading says when the small base is edited.
func told(t *testing.T, edits map[string]string) fault.List {
	t.Helper()
	_, faults := load(small(t, edits))
	return faults
}

// only fails unless there is one fault, and it says all of this.
func only(t *testing.T, faults fault.List, says ...string) {
	t.Helper()
	if len(faults) != 1 {
		t.Errorf("%d faults where one was planted:\n%v", len(faults), faults)
		return
	}
	for _, s := range says {
		if !strings.Contains(faults[0].Error(), s) {
			t.Errorf("told %q\nwant %q in it", faults[0].Error(), s)
		}
	}
}
