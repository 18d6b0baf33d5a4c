package main

import (
	"github.com/spf13/cobra"

	"wornfit/advisor/answer"
	"wornfit/cmd/wornfit/render"
)

func newAdvise(w world) *cobra.Command {
	f := &flags{}
	all := false
	cmd := &cobra.Command{
		Use:   "advise CASE",
		Short: "what was found, every way to put it right, the best one sized",
		Long: `advise reads a case file and tells how bad the fit is, what can be done about
it, best first, the sizes and steps of the best option, and the price at which
buying wins.`,
		Example:           "  wornfit advise testdata/cases/lever-eye.yaml",
		Args:              takes("the case file", 1, 1),
		ValidArgsFunction: completeCase,
		RunE:              func(_ *cobra.Command, args []string) error { return runAdvise(w, f, args[0], all) },
	}
	f.add(cmd)
	cmd.Flags().BoolVar(&all, "all", false, "list every option and mistake, not the best five only")
	return cmd
}

func runAdvise(w world, f *flags, file string, all bool) error {
	q, err := f.ask(w, file)
	if err != nil {
		return err
	}
	list, err := q.answers(nil, all || f.json)
	if err != nil {
		return err
	}
	err = f.print(w, list, func(l render.Look, a *answer.Answer) string { return render.Advise(l, a, q.voice(), all) })
	if err != nil {
		return err
	}
	return worst(list)
}

// worst is exit 3 when a fit has nothing to act on.
func worst(list []*answer.Answer) error {
	for _, a := range list {
		if none(a) {
			return exit(exitNone)
		}
	}
	return nil
}
