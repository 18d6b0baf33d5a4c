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
	list, err := q.answers([]string{word}, false)
	if err != nil {
		return err
	}
	p, err := choose(list, word)
	if err != nil {
		return err
	}
	err = f.print(w, p.list, func(l render.Look, a *answer.Answer) string {
		if m := p.cannot[a.Case.Fit]; m != nil {
			return render.Cannot(l, a, m)
		}
		return draw(l, a, p.option[a.Case.Fit], q.voice())
	})
	if err != nil {
		return err
	}
	for _, a := range p.list {
		if a.Stop != nil || refuses && none(a) {
			return exit(exitNone)
		}
	}
	return nil
}

// picked is what a word means for each fit, by the fit's id.
type picked struct {
	list   []*answer.Answer
	option map[string]*answer.Option
	cannot map[string]*answer.Method
}

// choose finds the option in each fit; a fit that has no such option is left
// out as long as another has it.
func choose(list []*answer.Answer, word string) (picked, error) {
	p := picked{option: map[string]*answer.Option{}, cannot: map[string]*answer.Method{}}
	var missed error
	for _, a := range list {
		if a.Stop != nil {
			p.list = append(p.list, a)
			continue
		}
		o, m, err := find(a, word)
		switch {
		case err != nil:
			missed = err
		case m != nil:
			p.cannot[a.Case.Fit] = m
			p.list = append(p.list, only(a, nil))
		default:
			p.option[a.Case.Fit] = o
			p.list = append(p.list, only(a, []*answer.Option{o}))
		}
	}
	if len(p.list) == 0 {
		return p, missed
	}
	return p, nil
}
