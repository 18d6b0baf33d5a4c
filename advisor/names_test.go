package advisor_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/calc/interval"
)

// What the readings and a bearing's designation tell is told under names that the
// vocabulary has; under any other it would be lost without a word.
func TestWhatIsKnownHasNamesOfTheVocabulary(t *testing.T) {
	b := base(t)
	files, err := filepath.Glob("../testdata/cases/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	bearings := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		c := read(t, b, string(data))
		for _, f := range c.Fits {
			cond, _ := condition.Find(c, f, func(string) (interval.I, bool) { return interval.I{}, false })
			known := cond.Known()
			for name := range known {
				if _, ok := b.Vocabulary.Entry(name); !ok {
					t.Errorf("%s: %s is known, and no name of the vocabulary", file, name)
				}
			}
			for _, side := range casefile.Sides {
				for _, m := range cond.Materials(side) {
					if !slices.Contains(b.IDs("materials"), m) {
						t.Errorf("%s: the %s is of %s, which is no row of the materials", file, side, m)
					}
				}
			}
			if known["fit.raceway"].Is {
				bearings++
			}
		}
	}
	if bearings < 2 {
		t.Errorf("the raceway is known of %d seats; two cases have rolling bearings", bearings)
	}
}
