package fault

import (
	"errors"
	"testing"
)

// A fault names its place, its key, what is wrong and what would be right.
func TestError(t *testing.T) {
	f := Fault{At: Place{File: "hub/bush.yaml", Line: 7, Column: 20}, Key: "define.wall.is", Says: "the name wal is unknown here", Remedy: "did you mean wall?"}
	if got, want := f.Error(), "hub/bush.yaml:7:20: define.wall.is: the name wal is unknown here; did you mean wall?"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := (Place{File: "seam.yaml"}).String(); got != "seam.yaml" {
		t.Errorf("a whole file is %q", got)
	}
}

// Faults come in reading order, line 9 before line 10, each once.
func TestSort(t *testing.T) {
	var l List
	for _, line := range []int{10, 9, 10} {
		l.Add(Place{File: "a", Line: line, Column: 1}, "", "x", "")
	}
	l.Add(Place{File: "A", Line: 99, Column: 1}, "", "x", "")
	l.Sort()
	if got := l.Error(); got != "A:99:1: x\na:9:1: x\na:10:1: x" {
		t.Errorf("%s", got)
	}
	var target List
	if err := l.Err(); !errors.As(err, &target) || len(target) != 3 {
		t.Errorf("as an error: %v", err)
	}
	if (List{}).Err() != nil {
		t.Error("no faults are an error")
	}
}

// The nearest word is what a hasty hand most likely meant; a far one is none.
func TestNearest(t *testing.T) {
	words := []string{"hub.outside", "hub.smallest", "least_wall", "bores", "mm", "heavy"}
	for typed, want := range map[string]string{
		"hub.outsid": "hub.outside", "hub.otuside": "hub.outside", "least_wal": "least_wall", "laest_wall": "least_wall", "bors": "bores", "havy": "heavy",
		"m": "mm", "shaft": "", "x": "", "completely_other": "",
	} {
		if got := Nearest(typed, words); got != want {
			t.Errorf("%s: %q, want %q", typed, got, want)
		}
	}
	if got := DidYouMean("zzz", []string{"a-word", "b-word"}); got != "known here: a-word, b-word" {
		t.Errorf("%q", got)
	}
}
