package main

import (
	"strings"

	"github.com/spf13/cobra"

	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
)

// flags are those of every command that prints results.
type flags struct {
	json, plain, ascii bool
	speak, fit         string
	knowledge          []string
}

func (f *flags) add(cmd *cobra.Command) {
	f.addLook(cmd)
	s := cmd.Flags()
	s.StringVar(&f.speak, "speak", "", "say sizes in `UNITS`: inch, mm or both (else as the case speaks)")
	s.StringVar(&f.fit, "fit", "", "answer only the fit with this `ID` (else every fit in turn)")
	fixed(cmd, "speak", "inch", "mm", "both")
}

func (f *flags) addLook(cmd *cobra.Command) {
	f.addPaper(cmd)
	s := cmd.Flags()
	s.StringArrayVar(&f.knowledge, "knowledge", nil, "lay the rule files in this `DIR` over the shipped ones; may be repeated")
	if err := cmd.MarkFlagDirname("knowledge"); err != nil {
		panic(err)
	}
}

// addPaper is for commands that read no rules.
func (f *flags) addPaper(cmd *cobra.Command) {
	s := cmd.Flags()
	s.BoolVar(&f.json, "json", false, "print JSON for programs")
	s.BoolVar(&f.plain, "no-color", false, "print without colour (as when NO_COLOR is set)")
	s.BoolVar(&f.ascii, "ascii", false, "print only plain characters")
}

func fixed(cmd *cobra.Command, flag string, words ...string) {
	err := cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	if err != nil {
		panic(err)
	}
}

// look is how pages are to look in this world.
func (f *flags) look(w world) render.Look {
	_, screen := w.screen()
	return render.Look{Width: w.width(), ASCII: f.ascii,
		Colour: screen && !f.plain && w.env("NO_COLOR") == "" && w.env("TERM") != "dumb"}
}

// speech is the case's own unless --speak says otherwise.
func (f *flags) speech(of quantity.Speech) (quantity.Speech, error) {
	if f.speak == "" {
		return of, nil
	}
	units, ok := quantity.SystemNamed(f.speak)
	if !ok {
		return of, notUnderstood("write --speak inch, --speak mm or --speak both", "--speak knows no %q", strings.TrimSpace(f.speak))
	}
	of.Units = units
	return of, nil
}
