package outside

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// ledger are the files of rows with ids.
var ledger = []string{"worked.json", "reference.json", "fe_press.json", "fe_fillets.json", "shop.json", "bearings.json", "fatigue.json", "bearing_film.json"}

// whole are the files of which one test reads every row.
var whole = map[string]string{"fe_fillets.json": "TestFilletFactorsAgreeWithFiniteElements"}

// Every row is read: its id, the start of it up to a dash, or the start that a
// test picks rows by stands in a test of calc.
func TestEveryPublishedRowIsRead(t *testing.T) {
	named := idsInTests(t)
	count := map[string]int{}
	for _, file := range ledger {
		rows := Read(t, file)
		for id, row := range rows {
			count[kind(row)]++
			if test := whole[file]; test != "" && slices.Contains(named, test) {
				continue
			}
			if !read(id, named) {
				t.Errorf("%s: %s is read by no test (%s)", file, id, row.Source)
			}
		}
	}
	t.Logf("rows: %v", count)
	if count["published"] < 30 || count["from memory"] < 20 || count["second route"] < 40 {
		t.Errorf("rows %v: some have got lost", count)
	}
}

// kind is how sure a row is: printed and read, from memory of a print, or our own
// computation by a second route.
func kind(r Row) string {
	switch {
	case r.FromMemory:
		return "from memory"
	case strings.Contains(r.Source, "own "):
		return "second route"
	}
	return "published"
}

func read(id string, named []string) bool {
	return slices.ContainsFunc(named, func(n string) bool {
		return n == id || strings.HasSuffix(n, "-") && strings.HasPrefix(id, strings.TrimSuffix(n, "-"))
	})
}

// idsInTests are all short quoted texts in the tests of calc.
func idsInTests(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "*", "*_test.go"))
	if err != nil || len(files) < 10 {
		t.Fatalf("%d test files, %v", len(files), err)
	}
	quoted := regexp.MustCompile(`"([A-Z][A-Za-z0-9./-]{1,40})"`)
	starts := regexp.MustCompile(`HasPrefix\(id, "([A-Z][A-Za-z0-9./]*)"\)`)
	tests := regexp.MustCompile(`(?m)^func (Test[A-Za-z0-9]+)\(`)
	var out []string
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range quoted.FindAllStringSubmatch(string(text), -1) {
			out = append(out, m[1])
		}
		for _, m := range starts.FindAllStringSubmatch(string(text), -1) {
			out = append(out, m[1]+"-")
		}
		for _, m := range tests.FindAllStringSubmatch(string(text), -1) {
			out = append(out, m[1])
		}
	}
	return out
}

func TestAnUnreadRowIsFound(t *testing.T) {
	named := []string{"A01", "R10-"}
	for id, want := range map[string]bool{"A01": true, "R10-1.5-2-steel": true, "A011": false, "R2": false, "B02": false} {
		if read(id, named) != want {
			t.Errorf("%s: read %v, want %v", id, !want, want)
		}
	}
}
