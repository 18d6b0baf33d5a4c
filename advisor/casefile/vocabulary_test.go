package casefile

import (
	"os"
	"strings"
	"testing"

	"wornfit/rules"
)

// vocabulary is the one that ships, with more layers over it. Calculations are
// not needed to read a case, so faults about them are not looked at.
func vocabulary(t testing.TB, over ...rules.Layer) *rules.Vocabulary {
	t.Helper()
	base, _ := rules.Load(append([]rules.Layer{{Name: "knowledge", Files: os.DirFS("../../knowledge")}}, over...), nil)
	if base.Vocabulary == nil || len(base.Vocabulary.Names()) == 0 {
		t.Fatal("the vocabulary is empty")
	}
	return base.Vocabulary
}

// ids lists the materials that ship.
func ids(t testing.TB) IDs {
	t.Helper()
	files, err := os.ReadDir("../../knowledge/materials")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, f := range files {
		out = append(out, strings.TrimSuffix(f.Name(), ".yaml"))
	}
	return IDs{"materials": out}
}

func file(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile("../../testdata/" + path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
