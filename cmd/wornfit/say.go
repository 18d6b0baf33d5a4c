package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"wornfit/cmd/wornfit/render"
	"wornfit/rules/fault"
)

// Tone of what is said on stderr: one line for what is wrong, naming the thing
// and the value; one line for what to do, if there is something. Lower case, no
// full stop, no name of a type or function. Faults of a file a person wrote are
// all told, each with its place, its line and a caret.

// trouble is an error with what to do about it.
type trouble struct {
	says, hint string
	code       int
}

func (t trouble) Error() string { return t.says }

func notUnderstood(hint, format string, args ...any) error {
	return trouble{says: fmt.Sprintf(format, args...), hint: hint, code: exitUnknown}
}

// tell says an error and returns its exit code.
func tell(w world, err error) int {
	var t trouble
	if !errors.As(err, &t) {
		t = trouble{says: err.Error(), code: exitUnknown}
	}
	fmt.Fprintln(w.err, "wornfit: error: "+oneLine(t.says))
	if t.hint != "" {
		fmt.Fprintln(w.err, "wornfit: hint: "+oneLine(t.hint))
	}
	return t.code
}

// ours says a fault of this program in one plain line.
func ours(w world, p any) int {
	return tell(w, trouble{says: fmt.Sprintf("a fault of wornfit itself: %v", p), hint: "please report it with the case file; nothing was written", code: exitOurs})
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

func unknownCommand(root *cobra.Command, word string) error {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	return notUnderstood(fault.DidYouMean(word, names), "there is no command %s", word)
}

func unknownFlag(cmd *cobra.Command, err error) error {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	_, word, isLong := strings.Cut(err.Error(), "--")
	if isLong && strings.HasPrefix(err.Error(), "unknown flag") {
		if c := commandWith(cmd, word); c != nil {
			return notUnderstood("put it after the command, as in "+cmd.CommandPath()+" "+c.Use+" --"+word, "--%s cannot stand before the command", word)
		}
		if near := fault.Nearest(word, names); near != "" {
			return notUnderstood("did you mean --"+near+"?", "there is no flag --%s", word)
		}
		return notUnderstood(cmd.CommandPath()+" --help lists the flags", "there is no flag --%s", word)
	}
	return notUnderstood(cmd.CommandPath()+" --help lists the flags", "%s", err)
}

// commandWith is the first command below this one that has a flag.
func commandWith(cmd *cobra.Command, flag string) *cobra.Command {
	for _, c := range cmd.Commands() {
		if c.Flags().Lookup(flag) != nil {
			return c
		}
	}
	return nil
}

// faults tells every fault of the files, with the lines they stand in, and
// returns the exit code.
func faults(w world, what string, list fault.List, lines func(file string) []string) error {
	for _, f := range list {
		place := f.At.String()
		if f.Key != "" {
			place += ": " + f.Key
		}
		fmt.Fprintln(w.err, place+": "+oneLine(f.Says))
		if text, caret, ok := pointed(f.At, lines(f.At.File), max(w.width()-len(quote), 32)); ok {
			fmt.Fprintln(w.err, text)
			fmt.Fprintln(w.err, caret)
		}
		if f.Remedy != "" {
			fmt.Fprintln(w.err, "    "+oneLine(f.Remedy))
		}
	}
	return trouble{says: count(len(list), "fault") + " in " + what, code: exitUnknown}
}

// pointed is the line a fault stands in, and a caret under the place. Of a line
// longer than room the part round the place is shown.
func pointed(at fault.Place, lines []string, room int) (text, caret string, ok bool) {
	if at.Line < 1 || at.Line > len(lines) {
		return "", "", false
	}
	line := []rune(strings.Map(tabToBlank, strings.TrimRight(lines[at.Line-1], "\r")))
	column := min(max(at.Column, 1), len(line)+1)
	wide := min(max(at.Width, 1), max(len(line)-column+1, 1))
	cut := 0
	if len(line) > room {
		cut = max(column-room/2, 0)
	}
	shown := line[cut:min(cut+room, len(line))]
	return strings.TrimRight(quote+string(shown), " "),
		quote + strings.Repeat(" ", column-1-cut) + strings.Repeat("^", min(wide, max(room-(column-1-cut), 1))), true
}

// quote stands before the line of a file.
const quote = "        "

func tabToBlank(r rune) rune {
	if r == '\t' {
		return ' '
	}
	return r
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// asciiWriter keeps the promise of --ascii on stderr. The line of a file stays
// as long as it is, so that the caret under it points true.
type asciiWriter struct{ to io.Writer }

func (a asciiWriter) Write(b []byte) (int, error) {
	text := string(b)
	if strings.HasPrefix(text, quote) {
		text = strings.Map(func(r rune) rune {
			if r > '~' {
				return '?'
			}
			return r
		}, text)
	}
	_, err := io.WriteString(a.to, render.ASCII(text))
	return len(b), err
}
