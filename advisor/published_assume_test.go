package advisor_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// withAssumed writes assumed values into a case, each as SECTION.KEY: VALUE: the
// section is a part, duty or fits. What is printed is never written over; of a
// list of candidates one may be assumed.
func withAssumed(t testing.TB, text string, assumed []string) string {
	t.Helper()
	lines := strings.Split(text, "\n")
	for _, a := range assumed {
		if strings.HasPrefix(a, "made: ") {
			lines = append(lines, a)
			continue
		}
		path, value, _ := strings.Cut(a, ": ")
		section, key, _ := strings.Cut(path, ".")
		head, indent := sectionOf(lines, section)
		if head < 0 {
			t.Fatalf("%s: the case has no %s", a, section)
		}
		at, end := head+1, head+1
		for ; end < len(lines) && strings.HasPrefix(lines[end], indent); end++ {
			if strings.HasPrefix(lines[end], indent+key+":") {
				at = end
			}
		}
		old, stands := strings.CutPrefix(lines[at], indent+key+": ")
		switch {
		case !stands:
			lines = slices.Insert(lines, at, indent+key+": "+value)
		case strings.HasPrefix(old, "unknown"), strings.HasPrefix(old, "{}"), strings.HasPrefix(old, "[") && strings.Contains(old, value):
			lines[at] = indent + key + ": " + value
		default:
			t.Fatalf("%s: it is printed as %s", a, old)
		}
	}
	return strings.Join(lines, "\n")
}

// sectionOf finds the line that begins a section, and how far its keys stand in.
func sectionOf(lines []string, section string) (head int, indent string) {
	for i, l := range lines {
		switch {
		case section == "fits" && strings.HasPrefix(l, "  - id: "), l == "  "+section+":":
			return i, "    "
		case section != "fits" && strings.HasPrefix(l, section+":"):
			return i, "  "
		}
	}
	return -1, ""
}

// gauged writes assumed readings: "hub 97.955 97.956 97.955 97.956" are two
// angles at one end of the bore, then two at the other.
func gauged(unit string, length float64, surfaces ...string) string {
	with := map[string]string{"hub": "bg", "shaft": "mic"}
	var out []string
	for _, s := range surfaces {
		side, sizes, _ := strings.Cut(s, " ")
		var rows []string
		for i, x := range strings.Fields(sizes) {
			rows = append(rows, fmt.Sprintf("[%.2f, %d, %s]", []float64{0.1, 0.1, 0.9, 0.9}[i]*length, []int{0, 90, 0, 90}[i], x))
		}
		out = append(out, fmt.Sprintf("%s: {unit: %s, with: %s, part_at: 20 degC, gauge_at: 20 degC, rows: [%s]}", side, unit, with[side], strings.Join(rows, ", ")))
	}
	return "fits.readings: {" + strings.Join(out, ", ") + "}"
}

// held writes sizes as made, DIMENSION SIZE ..., so that the windows of the others
// are those that go with them.
func held(fit, surface string, sizes ...string) string {
	with := map[string]string{"hub": "bg", "shaft": "mic"}[surface]
	var out []string
	for i := 0; i < len(sizes); i += 2 {
		out = append(out, fmt.Sprintf("{fit: %s, surface: %s, dimension: %s, sizes: [%s, %s], with: %s}", fit, surface, sizes[i], sizes[i+1], sizes[i+1], with))
	}
	return "made: [" + strings.Join(out, ", ") + "]"
}

func mm(x float64) float64   { return x * 1e-3 }
func inch(x float64) float64 { return x * 25.4e-3 }
