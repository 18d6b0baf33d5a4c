package main

import (
	"errors"
	"io"
	"os"
	"slices"
	"strconv"

	"github.com/spf13/cobra"
	"golang.org/x/term"
)

// Exit codes.
const (
	exitDone    = 0 // at least one option works, with care or without
	exitOurs    = 1 // a fault of this program
	exitUnknown = 2 // a command, file or value is not understood, or the knowledge has faults
	exitNone    = 3 // understood, but no option works, or safety forbids an answer
)

// world is what the program touches outside itself.
type world struct {
	in       io.Reader
	out, err io.Writer
	env      func(string) string
	screen   func() (width int, is bool) // of out, when it is a terminal
	read     func(name string) ([]byte, error)
}

func terminal() world {
	return world{in: os.Stdin, out: os.Stdout, err: os.Stderr, env: os.Getenv, read: os.ReadFile,
		screen: func() (int, bool) {
			w, _, err := term.GetSize(int(os.Stdout.Fd()))
			return w, err == nil
		}}
}

// width is COLUMNS, else the terminal's, else 80.
func (w world) width() int {
	if n, err := strconv.Atoi(w.env("COLUMNS")); err == nil && n > 0 {
		return n
	}
	if n, is := w.screen(); is && n > 0 {
		return n
	}
	return 80
}

// exit carries a code other than 0 out of a command that has said all it had
// to say.
type exit int

func (e exit) Error() string { return "exit " + strconv.Itoa(int(e)) }

// run is the whole program: arguments in, exit code out.
func run(args []string, w world) (code int) {
	defer func() {
		if p := recover(); p != nil {
			code = ours(w, p)
		}
	}()
	if slices.Contains(args, "--ascii") {
		w.err = asciiWriter{w.err}
	}
	root := newRoot(w)
	root.SetArgs(args)
	err := root.Execute()
	var said exit
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &said):
		return int(said)
	}
	return tell(w, err)
}

func newRoot(w world) *cobra.Command {
	root := &cobra.Command{
		Use:   "wornfit",
		Short: "what to do about a worn round fit",
		Long: `wornfit takes what was measured and seen on a worn round fit (gear on stud,
pin in eye, journal in bush, hub on its shaft) and what the shop owns. It judges
every way to put the fit right, ranks them, and gives the sizes to cut to.

Round, parallel fits only. Tapers, splines, threads, slideways, ball seats and
cracked parts are beyond it. Where people can be hurt it gives no size.`,
		Example: `  wornfit advise testdata/cases/lever-eye.yaml
  wornfit why testdata/cases/lever-eye.yaml leave-and-lubricate`,
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          cobra.ArbitraryArgs,
		Version:       "set below",
	}
	root.RunE = group(root)
	root.SetVersionTemplate(versionLine())
	root.SetIn(w.in)
	root.SetOut(w.out)
	root.SetErr(w.err)
	root.SetFlagErrorFunc(unknownFlag)
	root.SetUsageTemplate(usage)
	root.AddCommand(newAdvise(w), newCompare(w), newSize(w), newWhy(w), newFormula(w), newLimits(w), newKnowledge(w))
	root.InitDefaultHelpFlag()
	root.SetHelpCommand(newHelp(root))
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Short = "a script that lets a shell complete commands, cases and options"
			c.Args, c.RunE = cobra.ArbitraryArgs, group(c)
		}
	}
	return root
}

// group is what a command that only holds others does: its help, or a fault
// when the word after it is none of theirs.
func group(c *cobra.Command) func(*cobra.Command, []string) error {
	return func(_ *cobra.Command, args []string) error {
		if len(args) > 0 {
			return unknownCommand(c, args[0])
		}
		return c.Help()
	}
}

func newHelp(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:    "help [COMMAND]",
		Short:  "the help of a command",
		Hidden: true,
		RunE: func(_ *cobra.Command, args []string) error {
			c, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return unknownCommand(c, args[len(args)-1])
			}
			return c.Help()
		},
	}
}

// usage is the help of every command, at most 80 columns wide.
const usage = `Use:
  {{if .Runnable}}{{.UseLine}}{{end}}{{if .HasAvailableSubCommands}}{{if .HasParent}}{{.CommandPath}} COMMAND{{else}}
  wornfit COMMAND ...{{end}}

Commands:{{range .Commands}}{{if .IsAvailableCommand}}
  {{rpad .Name .NamePadding}}  {{.Short}}{{end}}{{end}}{{end}}{{if .HasExample}}

For example:
{{.Example}}{{end}}{{if .HasAvailableLocalFlags}}

Flags:
{{.LocalFlags.FlagUsagesWrapped 78 | trimTrailingWhitespaces}}{{end}}

Exit codes: 0 an option works, perhaps with care; 1 a fault of this program;
2 a command, file or value is not understood; 3 understood, but no option
works, or safety forbids an answer.
`
