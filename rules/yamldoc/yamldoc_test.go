package yamldoc

import (
	"strings"
	"testing"
	"testing/fstest"
)

// What a hand-written file should not hold is refused with its place.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, text, at, says, remedy string }{
		{"an alias", "a: &x 1\nb: *x\n", "f.yaml:2:4", "an alias (*x) stands here", "write the value out"},
		{"a key twice", "a: 1\nb: 2\na: 3\n", "f.yaml:3:1", "a is already given on line 1", "keep one of the two"},
		{"a key twice, deep down", "a:\n  - {b: 1, b: 2}\n", "f.yaml:2:12", "b is already given on line 2", "keep one"},
		{"a tab", "a:\n\tb: 1\n", "f.yaml:2:1", "a tab stands where the indent should be", "indent with spaces"},
		{"a colon in plain text", "a: bore: round\n", "f.yaml:1:1", "not readable as YAML", "quote the text"},
		{"an open bracket", "a: [1, 2\nb: 3\n", "f.yaml:", "not readable as YAML", "check the indent and the brackets"},
		{"nothing", "# only a remark\n", "f.yaml:1:1", "the file is empty", ""},
	} {
		d := Read("f.yaml", []byte(c.text))
		if len(d.Faults) != 1 {
			t.Errorf("%s: %d faults: %v", c.name, len(d.Faults), d.Faults)
			continue
		}
		f := d.Faults[0]
		if !strings.HasPrefix(f.At.String(), c.at) || !strings.Contains(f.Says, c.says) || !strings.Contains(f.Remedy, c.remedy) {
			t.Errorf("%s: told %q, want %q at %s", c.name, f.Error(), c.says, c.at)
		}
	}
	if d := Read("f.yaml", make([]byte, MaxSize+1)); len(d.Faults) != 1 || d.Root.Present() {
		t.Errorf("a file too large: %v", d.Faults)
	}
	if d := ReadFS(fstest.MapFS{}, "gone.yaml"); len(d.Faults) != 1 || !strings.Contains(d.Faults[0].Says, "cannot be read") {
		t.Errorf("a file that is not there: %v", d.Faults)
	}
}

// A place inside a text is the place in the file only where the text stands as typed.
func TestStraight(t *testing.T) {
	text := "plain: a + b\nsingle: 'a + \"w\"'\ndouble: \"a + b\"\nµ: 'ø + b'\n" +
		"twice: 'it''s'\nescape: \"a\\tb\"\nfolded: 'a\n  + b'\nloose: a\n  + b\nblock: >\n  a + b\nlist: [a, 'b c']\nempty: ''\n"
	d := Read("f.yaml", []byte(text))
	if len(d.Faults) > 0 {
		t.Fatal(d.Faults)
	}
	for key, want := range map[string]bool{"plain": true, "single": true, "double": true, "µ": true, "twice": true, "escape": false, "folded": false, "loose": false, "block": false, "empty": true} {
		if got := d.Root.Get(key).Straight(); got != want {
			t.Errorf("%s: straight %v, want %v", key, got, want)
		}
	}
	for key, column := range map[string]int{"plain": 8, "single": 10, "µ": 5} {
		if at := d.Root.Get(key).TextAt(); at.Column != column {
			t.Errorf("%s: the text begins at column %d, want %d", key, at.Column, column)
		}
	}
	if items := d.Root.Get("list").Items(); !items[1].Straight() || items[1].TextAt().Column != 12 {
		t.Errorf("an item in quotes begins at %v", items[1].TextAt())
	}
}

// A unit lost behind # shows as a comment.
func TestComment(t *testing.T) {
	d := Read("f.yaml", []byte("a: 5 # thou\nb: {value: 5 mm} # remark\n"))
	if c := d.Root.Get("a").Comment(); c != "# thou" {
		t.Errorf("the comment after a is %q", c)
	}
	if c := d.Root.Get("b").Get("value").Comment(); c != "" {
		t.Errorf("the remark after the bracket counts as the value's: %q", c)
	}
}

// Each reading of a node tells what is wrong and what would be right.
func TestNodes(t *testing.T) {
	d := Read("f.yaml", []byte("word: stedy\nyes: 'off'\nmap: {x: 1}\nlist: [1, 2]\nnull_one: ~\n"))
	d.Root.Get("word").Word("steady", "heavy")
	d.Root.Get("yes").YesNo()
	d.Root.Get("map").Text()
	d.Root.Get("list").Keys("x")
	d.Root.Keys("word", "yes", "map", "lst", "null_one")
	d.Root.Need("null_one", "write something")
	d.Root.Need("gone", "write it")
	for _, want := range []string{
		`f.yaml:1:7: word: "stedy" is not a word known here; did you mean steady?`,
		`f.yaml:2:6: yes: "off" is neither yes nor no; write yes or no`,
		`f.yaml:3:6: map: found keys and values where one value should stand; write a single value`,
		`f.yaml:4:7: list: found a list where keys and values should stand`,
		`f.yaml:4:1: list: there is no key list here; did you mean lst?`,
		`null_one: null_one is missing; write something`,
		`gone: gone is missing; write it`,
	} {
		if !strings.Contains(d.Faults.Error(), want) {
			t.Errorf("told\n%s\nwant %s", d.Faults.Error(), want)
		}
	}
	if len(d.Faults) != 7 {
		t.Errorf("%d faults, want 7", len(d.Faults))
	}
	if n := d.Root.Get("word").Items(); len(n) != 1 || n[0].Text() != "stedy" {
		t.Error("a lone value is a list of one")
	}
}
