package main

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/spf13/cobra"
)

var update = flag.Bool("update", false, "rewrite the expected parts of testdata/script")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"wornfit": main})
}

// TestStories runs the stories of testdata/script, each a command or two with
// what they must print. They run 80 columns wide, with the shipped cases.
//
// `go test ./cmd/wornfit -run TestStories -update` rewrites what is expected;
// look at the difference as you would at a changed drawing.
func TestStories(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join("..", "..", "testdata", "script"),
		UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("COLUMNS", "80")
			for _, dir := range []string{"cases", "faults"} {
				if err := copied(filepath.Join("..", "..", "testdata", dir), filepath.Join(e.WorkDir, "testdata", dir)); err != nil {
					return err
				}
			}
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"kept": kept},
	})
}

// kept writes what was printed last (stdout or stderr) to a file, with the hash
// of the knowledge blanked: it changes with every comment in a rule file.
func kept(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("use: kept stdout|stderr FILE")
	}
	text := hash.ReplaceAllString(ts.ReadFile(args[0]), "hash HASH")
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o600))
}

var hash = regexp.MustCompile(`[Hh]ash\s+[0-9a-f]{12}`)

func copied(from, to string) error { return os.CopyFS(to, os.DirFS(from)) }

// Every example in the help is a line of a story, so that help cannot rot.
func TestExamplesAreStories(t *testing.T) {
	var stories strings.Builder
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "script", "*.txtar"))
	if err != nil || len(files) == 0 {
		t.Fatal("no stories", err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		stories.Write(data)
	}
	var look func(*cobra.Command)
	look = func(c *cobra.Command) {
		if c.Example == "" && c.Name() != "completion" {
			t.Errorf("%s has no example", c.CommandPath())
		}
		for _, line := range strings.Split(c.Example, "\n") {
			if line = strings.TrimSpace(line); line != "" && !strings.Contains(stories.String(), "\n"+line+"\n") {
				t.Errorf("no story runs %q", line)
			}
		}
		for _, sub := range c.Commands() {
			if c.Name() != "completion" && sub.Name() != "completion" {
				look(sub)
			}
		}
	}
	look(newRoot(terminal()))
}
