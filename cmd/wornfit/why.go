package main

import (
	"github.com/spf13/cobra"

	"wornfit/advisor/answer"
	"wornfit/cmd/wornfit/render"
)

func newWhy(w world) *cobra.Command {
	f := &flags{}
	cmd := &cobra.Command{
		Use:   "why CASE OPTION",
		Short: "the reasons for and against an option, with their sources",
		Long: `why tells every rule an option was judged by: what is in the way, what speaks
against it, what is kept and by how much, what would settle it, and where each
rule comes from. An OPTION is an id or a trade name; a name stands for its best.`,
		Example:           "  wornfit why testdata/cases/lever-eye.yaml leave-and-lubricate",
		Args:              takes("the case file and an option", 2, 2),
		ValidArgsFunction: completeOption,
		RunE:              func(_ *cobra.Command, args []string) error { return one(w, f, args[0], args[1], render.Why, false) },
	}
	f.add(cmd)
	return cmd
}

// optionPage draws one option.
type optionPage func(render.Look, *answer.Answer, *answer.Option, render.Voice) string

// one answers about one option of each fit. refuses: an option that does not
// work is exit 3; a stop for safety always is.
func one(w world, f *flags, file, word string, draw optionPage, refuses bool) error {
	q, err := f.ask(w, file)
	if err != nil {
		return err
	}
	list, err := q.answers([]string{word})
	if err != nil {
		return err
	}
	chosen := map[string]*answer.Option{}
	cannot := map[string]*answer.Method{}
	code := exitDone
	for i, a := range list {
		if a.Stop != nil {
			code = exitNone
			continue
		}
		o, m, err := find(a, word)
		if err != nil {
			return err
		}
		if m != nil {
			cannot[a.Case.Fit], list[i] = m, only(a, nil)
		} else {
			chosen[a.Case.Fit], list[i] = o, only(a, []*answer.Option{o})
		}
		if refuses && none(list[i]) {
			code = exitNone
		}
	}
	err = f.print(w, list, func(l render.Look, a *answer.Answer) string {
		if m := cannot[a.Case.Fit]; m != nil {
			return render.Cannot(l, a, m)
		}
		return draw(l, a, chosen[a.Case.Fit], q.voice())
	})
	if err == nil && code != exitDone {
		return exit(code)
	}
	return err
}
