package rules_test

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// Whatever line of whatever file is lost, cut short or spoiled, loading ends in
// faults that name a file of the base, or in none: never in a panic.
func TestAnyLineLost(t *testing.T) {
	base := small(t, nil)
	for _, p := range slices.Sorted(maps.Keys(base)) {
		lines := strings.SplitAfter(string(base[p].Data), "\n")
		for i, line := range lines {
			key, _, _ := strings.Cut(line, ":")
			for _, spoiled := range []string{"", key + ":\n", key + ": [x]\n", key + ": {x: y}\n", line[:len(line)/2] + "\n"} {
				fsys := maps.Clone(base)
				fsys[p] = &fstest.MapFile{Data: []byte(strings.Join(lines[:i], "") + spoiled + strings.Join(lines[i+1:], ""))}
				_, faults := load(fsys)
				for _, f := range faults {
					if f.At.File == "" || f.Says == "" {
						t.Fatalf("%s without line %d, %q: a fault that says or names nothing: %q", p, i+1, line, f.Error())
					}
				}
			}
		}
	}
}
