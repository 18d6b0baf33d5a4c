package main

import (
	"path/filepath"
	"strings"
	"testing"

	"wornfit/advisor/answer"
	"wornfit/cmd/wornfit/render"
)

// Every page of every shipped case, at every width and in every unit: no line
// wider, no tab, no blank at an end, nothing but plain characters when asked.
func TestShippedCasesFitEveryWidth(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatal("cases are missing", err)
	}
	drawn := 0
	for _, file := range files {
		for _, units := range []string{"mm", "inch", "both"} {
			q, err := (&flags{speak: units}).ask(worldAt(t), file)
			if err != nil {
				t.Fatal(err)
			}
			list, err := q.answers(nil, true)
			if err != nil {
				t.Fatal(err)
			}
			for _, a := range list {
				for _, w := range []int{36, 40, 60, 67, 68, 80, 100, 120} {
					l := render.Look{Width: w, ASCII: w%20 == 0}
					fits(t, file, l, render.Advise(l, a, q.voice(), true))
					var some []*answer.Option
					for i := range a.Options {
						o := &a.Options[i]
						drawn++
						fits(t, file, l, render.Size(l, a, o, q.voice(), true))
						if i < 5 {
							some = append(some, o)
							fits(t, file, l, render.Why(l, a, o, q.voice()))
						}
					}
					fits(t, file, l, render.Compare(l, a, some, q.voice()))
				}
			}
		}
	}
	if drawn < 100 {
		t.Errorf("only %d options drawn", drawn)
	}
}

func fits(t *testing.T, file string, l render.Look, page string) {
	t.Helper()
	for _, line := range strings.Split(strings.TrimSuffix(page, "\n"), "\n") {
		if len([]rune(line)) > l.Width || strings.TrimRight(line, " ") != line || strings.ContainsAny(line, "\t\u00a0…") ||
			l.ASCII && strings.ContainsFunc(line, func(r rune) bool { return r > '~' }) {
			t.Errorf("%s at %d: %q", filepath.Base(file), l.Width, line)
		}
	}
}
