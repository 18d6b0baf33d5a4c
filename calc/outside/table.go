package outside

import (
	"encoding/csv"
	"os"
	"testing"
)

// Table returns the rows of a table of printed values by the heads of its columns.
func Table(t *testing.T, path string) []map[string]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%s: %d rows, %v", path, len(all), err)
	}
	var out []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, head := range all[0] {
			row[head] = cells[i]
		}
		out = append(out, row)
	}
	return out
}
