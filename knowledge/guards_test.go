package knowledge_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wornfit/knowledge"
)

// Hot and poisonous work can not be written into a step without what guards it:
// a step that names the act and no caution is told every one of these.
func TestNoHazardousActWithoutItsCautions(t *testing.T) {
	part, err := os.ReadFile("testdata/throwaway/hub/close-up.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for act, want := range map[string][]string{
		"brazing":  {"C02", "C08", "C10", "C12", "C22"}, // zinc, flux, closed hollow, burns, torch
		"welding":  {"C10", "C11", "C22", "C27", "C33"}, // closed hollow, degreaser, arc, bend, earth clamp
		"spraying": {"C22"},
		"chromium": {"C07"},
		"blasting": {"C19", "C21"}, // dust, sparks
		"plating":  {"C09", "C29"}, // cyanide, brittle steel
		"pouring":  {"C04", "C12", "C43"},
		"torch":    {"C22", "C23", "C26"}, // fire, oxygen, temper
	} {
		dir := t.TempDir()
		if err := os.Mkdir(filepath.Join(dir, "hub"), 0o755); err != nil {
			t.Fatal(err)
		}
		text := string(part) + "  - {id: close-up-hot, says: hot work, hours: '0*h', acts: [" + act + "]}\n"
		if err := os.WriteFile(filepath.Join(dir, "hub", "close-up.yaml"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		_, faults := knowledge.Load(dir)
		var told []string
		for _, f := range faults {
			if _, rest, ok := strings.Cut(f.Says, act+" stands in a step without the caution "); ok {
				told = append(told, rest[:3])
			}
		}
		if slices.Sort(told); !slices.Equal(told, want) {
			t.Errorf("%s is guarded by %v, want %v; %s", act, told, want, faults.Error())
		}
	}
}
