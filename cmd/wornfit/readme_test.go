package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// An output in the README is a piece of what a command prints, between two
// lines that begin as said:
//
//	<!-- output: why CASE OPTION | from "In the way" until "Kept" -->
var block = regexp.MustCompile("(?s)<!-- output: ([^\n]*?) \\| from \"([^\"\n]*)\" until \"([^\"\n]*)\" -->\n```\n(.*?)```\n")

// quoted are the words of a command; what stands in quotes is one.
var quoted = regexp.MustCompile(`'[^']*'|\S+`)

// Every output the README shows is what the command prints today, 80 columns
// wide. `go test ./cmd/wornfit -run README -update` writes it anew.
func TestREADMEShowsWhatIsPrinted(t *testing.T) {
	const file = "../../README.md"
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text := string(raw)
	if marks, blocks := strings.Count(text, "<!-- output:"), len(block.FindAllString(text, -1)); blocks < 2 || marks != blocks {
		t.Fatalf("the README has %d marks of an output and %d that can be read; the two commands it explains should be there", marks, blocks)
	}
	t.Chdir("../..")
	now := block.ReplaceAllStringFunc(text, func(b string) string {
		part := block.FindStringSubmatch(b)
		got := between(t, printed(t, part[1]), part[2], part[3])
		if got != part[4] && !*update {
			t.Errorf("`wornfit %s` no longer prints what the README shows; run with -update and read the difference", part[1])
		}
		return strings.TrimSuffix(b, part[4]+"```\n") + got + "```\n"
	})
	if *update && now != text && !t.Failed() {
		if err := os.WriteFile("README.md", []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// printed is what a command prints in the repository's folder. The hash of the
// knowledge, which changes with every comment, is masked.
func printed(t *testing.T, args string) string {
	t.Helper()
	words := quoted.FindAllString(args, -1)
	for i, w := range words {
		words[i] = strings.Trim(w, "'")
	}
	got := try(t, map[string]string{"COLUMNS": "80"}, words...)
	if got.code != exitDone {
		t.Fatalf("wornfit %s: exit %d: %s", args, got.code, got.err)
	}
	return hash.ReplaceAllString(got.out, "hash HASH")
}

// between are the lines from the first that begins with one text to the next
// that begins with another, that one and the blank before it left out.
func between(t *testing.T, page, from, until string) string {
	t.Helper()
	lines := strings.SplitAfter(page, "\n")
	first := -1
	for i, l := range lines {
		switch {
		case first < 0 && strings.HasPrefix(l, from):
			first = i
		case first >= 0 && strings.HasPrefix(l, until):
			return strings.TrimRight(strings.Join(lines[first:i], ""), "\n") + "\n"
		}
	}
	t.Fatalf("no line begins with %q and a later one with %q:\n%s", from, until, page)
	return ""
}
