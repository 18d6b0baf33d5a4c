package yamldoc

import (
	"strings"
	"testing"
)

const little = `# a file
id: bush   # its name
numbers: {wall: {value: 1.6 mm, from: practice}, list: [1, 2.5, yes, null]}
says: 'it''s "in"'
text: |
  two
  lines
`

// What is unpacked is what was packed, node for node, places and comments too.
func TestPackedIsUnpacked(t *testing.T) {
	d := Read("a.yaml", []byte(little))
	packed, err := Pack("mark", []string{"a.yaml"}, []*Doc{d})
	if err != nil {
		t.Fatal(err)
	}
	got, err := Unpack(string(packed), "mark", func(path string) (string, []byte) { return path, []byte(little) })
	if err != nil || len(got) != 1 {
		t.Fatalf("%d files, %v", len(got), err)
	}
	same(t, d.Root.y, got["a.yaml"].Root.y)
	if at := got["a.yaml"].Root.Get("says").TextAt(); at.Line != 4 || at.Column != 8 {
		t.Errorf("says stands at %v", at)
	}
}

// same compares all that a reader of the nodes may ask for.
func same(t *testing.T, a, b *node) {
	t.Helper()
	if a.kind != b.kind || a.style != b.style || a.null != b.null || a.value != b.value || a.line != b.line || a.column != b.column ||
		a.comment != b.comment || len(a.content) != len(b.content) {
		t.Errorf("packed %+v\nunpacked %+v", *a, *b)
		return
	}
	for i := range a.content {
		same(t, &a.content[i], &b.content[i])
	}
}

// Of other files nothing is taken, and what is damaged is told, wherever it is cut.
func TestWhatIsNotOursIsNotUnpacked(t *testing.T) {
	d := Read("a.yaml", []byte(little))
	packed, err := Pack("mark", []string{"a.yaml"}, []*Doc{d})
	if err != nil {
		t.Fatal(err)
	}
	data := func(path string) (string, []byte) { return path, nil }
	for _, other := range []string{"", "x", strings.Replace(string(packed), "mark", "nark", 1)} {
		if got, err := Unpack(other, "mark", data); got != nil || err != nil {
			t.Errorf("%.20q gives %d files, %v", other, len(got), err)
		}
	}
	for cut := len(packedName) + 5; cut < len(packed); cut++ {
		if got, err := Unpack(string(packed[:cut]), "mark", data); err == nil && len(got) > 0 {
			t.Errorf("cut after %d bytes it gives %d files", cut, len(got))
		}
	}
}

// A file with a fault is not packed: its fault would be lost.
func TestAFaultIsNotPacked(t *testing.T) {
	if _, err := Pack("mark", []string{"a.yaml"}, []*Doc{Read("a.yaml", []byte("a: 1\na: 2\n"))}); err == nil {
		t.Error("a file with a key given twice was packed")
	}
}
