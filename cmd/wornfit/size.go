package main

import (
	"github.com/spf13/cobra"

	"wornfit/advisor/answer"
	"wornfit/cmd/wornfit/render"
)

func newSize(w world) *cobra.Command {
	f := &flags{}
	worked := false
	cmd := &cobra.Command{
		Use:   "size CASE OPTION",
		Short: "every size of an option: limits, target, range and its ends",
		Long: `size gives every dimension of an option in the order it is cut: low limit,
target, high limit, the range it may lie in, the rules that end that range, and
the margins. An OPTION is an id or a trade name; a name stands for its best.`,
		Example:           "  wornfit size testdata/cases/lever-eye.yaml true-shaft-bush-bore",
		Args:              takes("the case file and an option", 2, 2),
		ValidArgsFunction: completeOption,
		RunE:              func(_ *cobra.Command, args []string) error { return runSize(w, f, args[0], args[1], worked) },
	}
	f.add(cmd)
	cmd.Flags().BoolVar(&worked, "worked", false, "show the numbers behind the sizes with their formulas")
	return cmd
}

func runSize(w world, f *flags, file, word string, worked bool) error {
	return one(w, f, file, word, func(l render.Look, a *answer.Answer, o *answer.Option, v render.Voice) string {
		return render.Size(l, a, o, v, worked)
	}, true)
}
