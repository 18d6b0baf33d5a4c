package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wornfit/advisor/answer"
)

// outcome is what one run of the program left.
type outcome struct {
	code     int
	out, err string
}

// try runs the program at the root of the repo, not on a terminal.
func try(t *testing.T, env map[string]string, args ...string) outcome {
	t.Helper()
	var out, errs bytes.Buffer
	code := run(args, world{in: strings.NewReader(""), out: &out, err: &errs,
		env: func(k string) string { return env[k] }, screen: func() (int, bool) { return 0, false }, read: os.ReadFile})
	return outcome{code, out.String(), errs.String()}
}

// worldAt is a world that prints nowhere.
func worldAt(t *testing.T) world {
	t.Helper()
	return world{out: io.Discard, err: io.Discard, env: func(string) string { return "" }, screen: func() (int, bool) { return 0, false }, read: os.ReadFile}
}

const (
	lever  = "../../testdata/cases/lever-eye.yaml"
	people = "../../testdata/cases/people.yaml"
	twenty = "../../testdata/faults/twenty-faults.yaml"
)

func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		args string
		code int
		says string // on stderr, or on stdout when the code is 0 or 3
	}{
		{"", 0, "wornfit advise testdata/cases/lever-eye.yaml"},
		{"help size", 0, "--worked"},
		{"--version", 0, "knowledge"},
		{"advise " + lever, 0, "How bad it is"},
		{"why " + lever + " leave-and-lubricate", 0, "In the way"},
		{"why " + lever + " knurl", 0, "does not run"},
		{"size " + lever + " leave-and-lubricate", 3, "Nothing is cut"},
		{"size " + lever + " knurl", 3, "does not run"},
		{"compare " + lever + " leave-and-lubricate", 3, "leave-and-lubricate"},
		{"compare " + lever + " knurl", 3, ""},
		{"advise " + people, 3, "Do not repair this yourself"},
		{"why " + people + " knurl", 3, "Do not repair this yourself"},
		{"size " + people + " no-such-thing", 3, "Do not repair this yourself"},
		{"compare " + people, 3, "Do not repair this yourself"},
		{"advize " + lever, 2, "did you mean advise?"},
		{"advise", 2, "wants the case file"},
		{"size " + lever, 2, "wants the case file and an option"},
		{"advise a b", 2, `takes no "b"`},
		{"advise --jsno " + lever, 2, "did you mean --json?"},
		{"--json advise " + lever, 2, "put it after the command, as in wornfit advise CASE --json"},
		{"--jsno advise " + lever, 2, "there is no flag --jsno"},
		{"knowledge --ascii check", 2, "as in wornfit knowledge check [DIR] --ascii"},
		{"advise --speak cm " + lever, 2, "--speak inch"},
		{"advise --fit pivto " + lever, 2, "did you mean pivot?"},
		{"advise --knowledge /no/such/dir " + lever, 2, "there is no folder /no/such/dir"},
		{"advise no-such.yaml", 2, "there is no file no-such.yaml"},
		{"advise " + twenty, 2, "20 faults in"},
		{"why " + lever + " knurll", 2, "did you mean knurl?"},
		{"why " + lever + " qqqqqqqqqqqq", 2, "as advise prints it"},
		{"knowledge chekc", 2, "did you mean check?"},
		{"help advize", 2, "did you mean advise?"},
		{"help knowledge chekc", 2, "did you mean check?"},
		{"completion bsh", 2, "did you mean bash?"},
		{"knowledge check /no/such/dir", 2, "there is no folder"},
	} {
		got := try(t, nil, strings.Fields(c.args)...)
		if got.code != c.code {
			t.Errorf("%s: exit %d, not %d: %s", c.args, got.code, c.code, got.err)
		}
		says := got.err
		if c.code == 0 || c.code == 3 && c.says != "" {
			says = got.out
		}
		if !strings.Contains(says, c.says) {
			t.Errorf("%s does not say %q:\n%s", c.args, c.says, says)
		}
		if c.code == 2 && got.out != "" {
			t.Errorf("%s: an error on stdout: %s", c.args, got.out)
		}
		if c.code == 0 && got.err != "" {
			t.Errorf("%s: stderr: %s", c.args, got.err)
		}
	}
}

// An error is at most two lines, names no Go type and ends without a stop.
func TestErrorsAreTwoPlainLines(t *testing.T) {
	for _, args := range []string{"advize", "advise", "advise x.yaml", "advise --x", "size " + lever + " y", "advise --speak", "advise --fit", "compare " + lever + " knurll", "advise ."} {
		got := try(t, nil, strings.Fields(args)...)
		lines := strings.Split(strings.TrimSuffix(got.err, "\n"), "\n")
		if len(lines) > 2 || !strings.HasPrefix(lines[0], "wornfit: error: ") || len(lines) == 2 && !strings.HasPrefix(lines[1], "wornfit: hint: ") {
			t.Errorf("%s: %q", args, got.err)
		}
		for _, l := range lines {
			if strings.HasSuffix(l, ".") || strings.Contains(l, "*") || strings.Contains(l, "fs.") || strings.Contains(l, "panic") {
				t.Errorf("%s: %q", args, l)
			}
		}
	}
}

func TestPanicIsOnePlainLine(t *testing.T) {
	var errs bytes.Buffer
	w := world{out: io.Discard, err: &errs, env: func(string) string { return "" }, screen: func() (int, bool) { panic("tape of length 0") }, read: os.ReadFile}
	if code := run([]string{"advise", lever}, w); code != exitOurs {
		t.Errorf("exit %d", code)
	}
	if got := errs.String(); !strings.HasPrefix(got, "wornfit: error: a fault of wornfit itself: tape of length 0\nwornfit: hint: ") || strings.Count(got, "\n") != 2 {
		t.Errorf("says %q", got)
	}
}

// Safety holds for every command and every form of output: no digit but those
// of the schema, the knowledge and the name of the case.
func TestSafetyPrintsNoSize(t *testing.T) {
	for _, args := range []string{"advise", "compare", "size X", "why X"} {
		words := strings.Fields(args)
		words = append([]string{words[0], people}, words[1:]...)
		text := try(t, nil, words...)
		if first, _, _ := strings.Cut(text.out, "\n"); !strings.Contains(first, "tag it out") || strings.ContainsAny(text.out, "0123456789") {
			t.Errorf("%s:\n%s", args, text.out)
		}
		raw := try(t, nil, append(words, "--json")...)
		var a answer.Answer
		if err := json.Unmarshal([]byte(raw.out), &a); err != nil || raw.code != exitNone {
			t.Fatalf("%s: exit %d, %v", args, raw.code, err)
		}
		if a.Stop == nil || a.Stop.Kind != "safety" || len(a.Options)+len(a.Condition)+len(a.Methods) > 0 {
			t.Errorf("%s --json tells more than the stop: %s", args, raw.out)
		}
	}
}

// A purpose, a criterion and a metal are words of the rule base; any other is a
// fault with its place and the words there are.
func TestWordsTheRuleBaseLacksAreFaults(t *testing.T) {
	data, err := os.ReadFile(lever)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ was, now, says string }{
		{"purpose: oscillating", "purpose: tapered", "known here: bearing-seat, keyed-hub, oscillating, press-fit, running, sliding"},
		{"purpose: oscillating", "purpose: ocsillating", "did you mean oscillating?"},
		{"\nwishes:", "\nwishes:\n  weights: {beauty: 3}", "there is no criterion beauty"},
	} {
		text := strings.Replace(string(data), c.was, c.now, 1)
		if text == string(data) {
			t.Fatalf("the case has no %q", c.was)
		}
		file := filepath.Join(t.TempDir(), "case.yaml")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		got := try(t, nil, "advise", file)
		if got.code != exitUnknown || got.out != "" || !strings.Contains(got.err, c.says) || !strings.Contains(got.err, "^") {
			t.Errorf("%s: exit %d\n%s", c.now, got.code, got.err)
		}
	}
}

func TestWidthIsColumnsThenTheTerminalThen80(t *testing.T) {
	w := world{env: func(string) string { return "61" }, screen: func() (int, bool) { return 99, true }}
	if w.width() != 61 {
		t.Error("COLUMNS does not win")
	}
	w.env = func(string) string { return "wide" }
	if w.width() != 99 {
		t.Error("the terminal does not come second")
	}
	w.screen = func() (int, bool) { return 0, false }
	if w.width() != 80 {
		t.Error("not 80 without either")
	}
}

func TestColourOnlyOnATerminalThatWantsIt(t *testing.T) {
	screen := func(is bool) func() (int, bool) { return func() (int, bool) { return 80, is } }
	for _, c := range []struct {
		screen bool
		env    map[string]string
		flag   bool
		want   bool
	}{
		{true, nil, false, true}, {false, nil, false, false}, {true, nil, true, false},
		{true, map[string]string{"NO_COLOR": "1"}, false, false}, {true, map[string]string{"NO_COLOR": ""}, false, true},
		{true, map[string]string{"TERM": "dumb"}, false, false},
	} {
		f := flags{plain: c.flag}
		if got := f.look(world{env: func(k string) string { return c.env[k] }, screen: screen(c.screen)}).Colour; got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// The same case gives the same bytes whatever the place and language.
func TestOutputDoesNotHangOnTheWorld(t *testing.T) {
	plain := try(t, nil, "advise", lever)
	other := try(t, map[string]string{"LANG": "de_DE.ISO-8859-1", "LC_ALL": "C", "TERM": "xterm-256color", "COLUMNS": ""}, "advise", lever)
	if plain.out != other.out {
		t.Error("the output hangs on the environment")
	}
}

// The JSON has the order and verdicts of the table.
func TestJSONAgreesWithTheTable(t *testing.T) {
	var a answer.Answer
	raw := try(t, nil, "advise", lever, "--json")
	if err := json.Unmarshal([]byte(raw.out), &a); err != nil {
		t.Fatal(err)
	}
	if len(a.Options) == 0 || a.SchemaVersion != answer.Version {
		t.Fatal("no options, or another schema")
	}
	page := try(t, map[string]string{"COLUMNS": "120"}, "advise", lever, "--all").out
	_, page, _ = strings.Cut(page, "All options")
	for _, o := range a.Options {
		_, rest, ok := strings.Cut(page, o.ID)
		if !ok {
			t.Fatalf("%s is not in its place", o.ID)
		}
		line, _, _ := strings.Cut(rest, "\n")
		if !strings.HasPrefix(strings.TrimSpace(line), o.Verdict) {
			t.Errorf("%s: %s in JSON, %q in the table", o.ID, o.Verdict, line)
		}
		page = rest
	}
}

func TestJSONOfSeveralFits(t *testing.T) {
	data, err := os.ReadFile(lever)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	at := strings.Index(text, "  - id: pivot")
	end := at + strings.Index(text[at:], "\nduty:")
	file := filepath.Join(t.TempDir(), "two.yaml")
	two := text[:end] + "\n" + strings.Replace(text[at:end], "id: pivot", "id: far", 1) + text[end:]
	if err := os.WriteFile(file, []byte(two), 0o600); err != nil {
		t.Fatal(err)
	}
	var v struct{ Fits []answer.Answer }
	got := try(t, nil, "advise", file, "--json")
	if err := json.Unmarshal([]byte(got.out), &v); err != nil {
		t.Fatalf("%v: %s", err, got.err)
	}
	if len(v.Fits) != 2 || v.Fits[0].Case.Fit != "pivot" || v.Fits[1].Case.Fit != "far" {
		t.Errorf("not one object a fit, in order")
	}
	one := try(t, nil, "size", file, "bore-and-bush", "--fit", "far")
	if one.code != 0 || strings.Contains(one.out, "Fit pivot") || !strings.Contains(one.out, "Fit far") {
		t.Errorf("--fit far: exit %d\n%s", one.code, one.out)
	}
}

func TestASCIIHoldsOnStderrToo(t *testing.T) {
	file := filepath.Join(t.TempDir(), "ö.yaml")
	if err := os.WriteFile(file, []byte("schema: case/1\ntitle: \"Öse 25 µm\"\nfitz: ±3\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	got := try(t, nil, "advise", "--ascii", file)
	if got.code != exitUnknown || strings.ContainsFunc(got.err, func(r rune) bool { return r > '~' }) {
		t.Errorf("exit %d: %q", got.code, got.err)
	}
	lines := strings.Split(got.err, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, quote+"fitz") && strings.Index(l, "fitz") != strings.Index(lines[i+1], "^") {
			t.Errorf("the caret is off:\n%s\n%s", l, lines[i+1])
		}
	}
}

func TestHelpIsNarrowEnough(t *testing.T) {
	for _, args := range []string{"", "advise -h", "compare -h", "size -h", "why -h", "formula -h", "formula list -h", "formula show -h", "formula run -h", "knowledge -h", "knowledge check -h"} {
		got := try(t, nil, strings.Fields(args)...)
		if got.code != 0 || !strings.Contains(got.out, "For example:") {
			t.Errorf("%q: exit %d, no example:\n%s", args, got.code, got.out)
		}
		for _, l := range strings.Split(got.out, "\n") {
			if len([]rune(l)) > 80 || strings.TrimRight(l, " ") != l {
				t.Errorf("%q: %d wide or ragged: %q", args, len([]rune(l)), l)
			}
		}
	}
}

func TestCompletion(t *testing.T) {
	for args, want := range map[string]string{
		"__complete advise|":            "yaml",
		"__complete why|" + lever + "|": "bore-and-bush",
		"__complete advise|--speak|":    "both",
	} {
		words := strings.Split(strings.Replace(args, " ", "|", 1), "|")
		if got := try(t, nil, words...); !strings.Contains(got.out, want) {
			t.Errorf("%s: %q", args, got.out)
		}
	}
}
