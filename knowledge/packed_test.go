package knowledge

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"wornfit/rules"
)

// What is packed is of these very files: else every start parses them anew.
func TestPackedIsOfTheseFiles(t *testing.T) {
	fresh, err := rules.Pack(rules.Layer{Name: "shipped", Files: files})
	if err != nil {
		t.Fatal(err)
	}
	if f := flag.Lookup("update"); f != nil && f.Value.String() == "true" {
		if err := os.WriteFile("packed.bin", fresh, 0o644); err != nil {
			t.Fatal(err)
		}
		packed = string(fresh)
	}
	if !bytes.Equal(fresh, []byte(packed)) {
		t.Errorf("packed.bin is of other files; write it anew: go test ./knowledge -run Packed -update")
	}
}
