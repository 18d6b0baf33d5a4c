package rules_test

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"wornfit/rules/fault"
)

// A mark is where a fault must be told: the line that holds `line`, at the
// column where `at` begins in it.
type mark struct{ line, at, says, remedy string }

var planted = []mark{
	// numbers
	{"  hours:", "{value: 1 h", "from is missing", "common practice, no source"},
	{"  guessed:", "guess}", `"guess" is not a word known here`, "known here: page, derived, secondary, memory, practice"},
	{"  better:", "page}", "seen: page of a source that is known by memory", "write seen: memory"},
	{"  from_nowhere:", "handbok", "there is no source handbok", "did you mean handbook?"},
	{"  map:", "map:", "map is a word of the expression language", "map_value"},
	{"    value: 2 # mm", "2 # mm", "the number 2 ends in a comment", "write the unit before the #"},
	{"  two_kinds:", "1 N to 3 N", "the doubt 1 N to 3 N is force, the value 2 mm is length", "units of one kind"},
	// needs
	{"planted-word", `"havy"`, `"havy" is no word of duty.shock`, "did you mean heavy?"},
	{"planted-hangs", "'wall >= left'", "a `when` hangs on hub_bore", "make it a limit"},
	{"{id: yes", "yes", "yes is read as yes or no", "choose a word that is plain text"},
	{"{id: bush-twice", "bush-twice", "does not begin with that of its file", "write planted-bush-twice"},
	// picks and sizes
	{"  stock:", "material,", "there is no table material", "did you mean materials?"},
	{"  hub_bore:", "late_bore}", "hub_bore suits late_bore, which is not cut before it", "put late_bore above it"},
	{"  late_bore:", "borr,", "borr is no pick of this file", "did you mean borer?"},
	// defines
	{"  mixed:", "hub.outside + duty.load", "hub.outside is length (mm), duty.load is force (N)", ""},
	{"  warm:", "degC", "degC", "degC(40)"},
	{"  round_one:", "round_one:", "round_one is worked out from itself: round_one <- round_two <- round_one", "break the circle"},
	{"    is: hub.outside #", "hub.outside #", "ends in a comment: what follows # is not read", "single quotes"},
	{"  column:", "borer.tolerence", "has no column tolerence", "did you mean tolerance?"},
	{"  bore_small:", "duty.load", "duty.load is force (N), and length (mm) is wanted here", ""},
	{"  shaft_small:", "shaft_small:", "shaft_small crosses the seam: every shaft file defines it", "choose another name"},
	// limits
	{"planted-name", "hub.outsid'", "the name hub.outsid is unknown here", "did you mean hub.outside?"},
	{"planted-two", "hub_bore >= hub.largest and", "two comparisons in one limit", "write two limits"},
	{"planted-literal", "1.5*", "1.5", "numbers"},
	{"planted-practice", "practice, why", "a must rests on practice", "write should"},
	{"planted-practice", "guessed_wall", "the name guessed_wall is unknown here", ""},
	{"planted-range", "left_to_bore", "left_to_bore is a range", "write low(left_to_bore) or high(left_to_bore)"},
	{"planted-key", "note: n", "there is no key note here", "known here: id, must, should"},
	{"planted-never", "{id: planted-never", "it can never be kept", "look for a unit, a number or a sense that is wrong"},
	{"planted-under", "{id: planted-under", "planted-under and planted-over can never be kept together", "tell them apart by when"},
	{"planted-both", "{id: planted-both", "the rule planted-both demands more than one thing", "keep one of must, should and prefer"},
	{"planted-none", "{id: planted-none", "the rule planted-none demands nothing", "write must:, should: or prefer:"},
	{"planted-mute", "{id: planted-mute", "remedy is missing", "say what would mend it"},
	{"planted-mute", "walll", "the name walll is unknown here", "did you mean wall?"},
	{"    should: >", ">", "an expression stands in a block", "on one line in single quotes"},
	// the rest
	{"  keywy:", "keywy:", "there is no kind of neighbour keywy", "did you mean keyway?"},
	{"  keywy:", "keywy:", "no answer for a keyway beside the fit", "say what this treatment does about it"},
	{"planted-bore,", "borer}", "borer is a row of machines", "write {borer.id}"},
	{"planted-bore,", "lesser'", "lesser is length (mm), and time (h) is wanted here", ""},
	{"planted-bore,", "boror", "the step is done on boror, which is no pick", "did you mean borer?"},
	{"planted-bore,", "C99", "there is no caution C99", "known here: C14, C32"},
	{"planted-press,", "pressing]", "pressing stands in a step without the caution C14 (a part flies from the press)", "add C14"},
	{"planted-weld", "welding]", "no caution guards the act welding", "known here: pressing, stripping"},
	{"common-snd", "common-snd", `"common-snd" is not a word known here`, "did you mean common-send?"},
	{"planted-score", "rsk", `"rsk" is not a word known here`, "did you mean risk?"},
	{"planted-kind", "1', says", "1 is a plain number, and time (h) is wanted here", ""},
	{"cautions: [C15]", "C15", "there is no caution C15", ""},
	{"  left: ", "left:", "bore_face is not defined, and seam.yaml asks it of every hub file", "define it"},
}

// One run tells every fault of a file that is full of them, each at its place,
// and nothing that is not there: not a name again wherever it is used.
func TestPlantedFaults(t *testing.T) {
	const file = "hub/planted.yaml"
	data, err := os.ReadFile("testdata/planted/" + file)
	if err != nil {
		t.Fatal(err)
	}
	fsys := small(t, nil)
	fsys[file] = &fstest.MapFile{Data: data}
	_, faults := load(fsys)
	lines := strings.Split(string(data), "\n")
	left := map[int]fault.Fault{}
	for i, f := range faults {
		left[i] = f
	}
	for _, m := range planted {
		line, col := find(t, lines, m)
		found := false
		for i, f := range left {
			if f.At.File == file && f.At.Line == line && f.At.Column == col && strings.Contains(f.Says, m.says) {
				if !strings.Contains(f.Error(), m.remedy) {
					t.Errorf("%s\nwant the remedy %q", f.Error(), m.remedy)
				}
				delete(left, i)
				found = true
				break
			}
		}
		if !found {
			t.Errorf("not told at %s:%d:%d: %s", file, line, col, m.says)
		}
	}
	for _, f := range left {
		t.Errorf("told, but not planted: %s", f.Error())
	}
	if len(planted) < 20 {
		t.Errorf("only %d faults are planted", len(planted))
	}
}

func find(t *testing.T, lines []string, m mark) (line, col int) {
	t.Helper()
	for i, l := range lines {
		if strings.Contains(l, m.line) && !strings.HasPrefix(l, "#") {
			at := strings.Index(l, m.at)
			if at < 0 {
				t.Fatalf("line %d has no %q", i+1, m.at)
			}
			return i + 1, len([]rune(l[:at])) + 1
		}
	}
	t.Fatalf("no line has %q", m.line)
	return 0, 0
}
