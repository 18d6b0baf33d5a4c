// Package outside reads the check values that did not come from this program:
// worked examples of textbooks, computations by a second route, finite elements.
// Only tests use it. Each row in testdata/published/mechanics names its source and
// whether the book was at hand; where it was not, from_memory is true.
package outside

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"
)

// Row is one example: what goes in and what should come out, as printed.
type Row struct {
	ID, Source, Description, Note string
	FromMemory                    bool `json:"from_memory"`
	Inputs, Expected              map[string]Value
}

// Value is a number with its unit; Tol is in the same unit.
type Value struct {
	Value json.Number
	Unit  string
	Tol   float64
}

// Read returns the rows of a file in testdata/published/mechanics by their id.
func Read(t *testing.T, file string) map[string]Row {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", "mechanics", file))
	if err != nil {
		t.Fatal(err)
	}
	var rows []Row
	if err := json.Unmarshal(text, &rows); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	byID := map[string]Row{}
	for _, r := range rows {
		if r.ID == "" || r.Source == "" || len(r.Expected) == 0 {
			t.Fatalf("%s: row %q needs an id, a source and an expected value", file, r.ID)
		}
		if _, twice := byID[r.ID]; twice {
			t.Fatalf("%s: two rows are called %s", file, r.ID)
		}
		byID[r.ID] = r
	}
	return byID
}

// Get returns the named row.
func Get(t *testing.T, rows map[string]Row, id string) Row {
	t.Helper()
	r, ok := rows[id]
	if !ok {
		t.Fatalf("no row %s", id)
	}
	return r
}

// In returns an input in SI.
func (r Row) In(t *testing.T, name string) float64 {
	t.Helper()
	v, ok := r.Inputs[name]
	if !ok {
		t.Fatalf("%s has no input %s", r.ID, name)
	}
	x, _ := v.si(t, r.ID)
	return x
}

// Has reports whether the row states an expected value of this name.
func (r Row) Has(name string) bool { _, ok := r.Expected[name]; return ok }

// Want compares got, in SI, with the expected value within its own tolerance.
func (r Row) Want(t *testing.T, name string, got float64) {
	t.Helper()
	want, tol := r.expected(t, name)
	if !(tol > 0) {
		t.Fatalf("%s states no tolerance for %s", r.ID, name)
	}
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %s = %.7g, want %.7g within %.2g (SI; %s)", r.ID, name, got, want, tol, r.Source)
	}
}

// WantWithin compares got with the expected value: got/want must lie from lo to
// hi. Say beside the call why the two differ.
func (r Row) WantWithin(t *testing.T, name string, got, lo, hi float64) {
	t.Helper()
	want, _ := r.expected(t, name)
	if ratio := got / want; !(ratio >= lo && ratio <= hi) {
		t.Errorf("%s: %s = %.7g is %.5f of %.7g, want %g to %g (%s)", r.ID, name, got, ratio, want, lo, hi, r.Source)
	}
}

func (r Row) expected(t *testing.T, name string) (want, tol float64) {
	t.Helper()
	v, ok := r.Expected[name]
	if !ok {
		t.Fatalf("%s has no expected %s", r.ID, name)
	}
	return v.si(t, r.ID)
}
