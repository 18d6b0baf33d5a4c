package knowledge_test

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/knowledge"
	"wornfit/rules/yamldoc"
)

// The count that `knowledge check` prints is the one found by walking the files
// without the loader.
func TestTheLoaderCountsEveryNumber(t *testing.T) {
	walked := map[string]int{}
	err := fs.WalkDir(os.DirFS("."), ".", func(file string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && (e.Name() == "tests" || e.Name() == "testdata"):
			return fs.SkipDir
		case !e.IsDir() && filepath.Ext(file) == ".yaml":
			counted(yamldoc.ReadFS(os.DirFS("."), file).Root, walked)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	told := shipped(t).Numbers.ByGrade()
	if !maps.Equal(told, walked) {
		t.Errorf("the loader counts %v, the files hold %v", told, walked)
	}
	if walked["page"] < 50 || walked["practice"] < 300 {
		t.Errorf("only %v were found; the walk has lost its way", walked)
	}
}

// counted adds the numbers under a node by grade: a value that begins as a
// number does; a criterion, or what a broken should costs, which say once for
// all they hold where they are from.
func counted(n yamldoc.Node, by map[string]int) {
	value, seen := strings.TrimLeft(n.Get("value").Text(), "+-±."), n.Get("seen").Text()
	if value != "" && value[0] >= '0' && value[0] <= '9' || seen != "" && (n.Get("curve").Present() || n.Get("points").Present()) {
		by[seen]++
	}
	for _, e := range n.Entries() {
		counted(e.Value, by)
	}
	if n.IsList() {
		for _, x := range n.Items() {
			counted(x, by)
		}
	}
}

// What a shop lays over counts too, a number it replaced at the shop's grade.
func TestTheCountFollowsTheShop(t *testing.T) {
	dir := t.TempDir()
	for file, text := range map[string]string{
		"overrides.yaml": "machines/small-lathe.tolerance: {value: 12 um, from: our test cuts, seen: derived}\n" +
			"hub/bush.least_ring: {value: 4 mm, from: our shop standard 7}\n",
		"machines/our-lathe.yaml": "id: our-lathe\nturns: yes\ntolerance: {value: 10 um, from: asm, seen: memory}\nhardest: {value: 300 HB, from: asm, seen: memory}\n",
	} {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, file)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	base, faults := knowledge.Load(dir)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	want := shipped(t).Numbers
	want[basis.Practice]-- // the lathe's width is now known by trial; least_ring is the shop's word for the shop's word
	want[basis.Derived]++
	want[basis.Memory] += 2 // of the new lathe
	if base.Numbers != want {
		t.Errorf("with the shop's layer %s, want %s", base.Numbers, want)
	}
}
