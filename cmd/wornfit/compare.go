package main

import (
	"github.com/spf13/cobra"

	"wornfit/advisor/answer"
	"wornfit/cmd/wornfit/render"
)

// abreast is how many options compare sets side by side unless they are named.
const abreast = 3

func newCompare(w world) *cobra.Command {
	f := &flags{}
	cmd := &cobra.Command{
		Use:   "compare CASE [OPTION...]",
		Short: "options side by side: points, sizes, risks, what each needs",
		Long: `compare sets options side by side. An OPTION is an id or a trade name as advise
prints them; a name stands for its best option. With none named the best option
of each of the first three names is compared.`,
		Example:           "  wornfit compare testdata/cases/lever-eye.yaml oversize-mate bore-and-bush",
		Args:              takes("the case file", 1, -1),
		ValidArgsFunction: completeOption,
		RunE:              func(_ *cobra.Command, args []string) error { return runCompare(w, f, args[0], args[1:]) },
	}
	f.add(cmd)
	return cmd
}

func runCompare(w world, f *flags, file string, words []string) error {
	q, err := f.ask(w, file)
	if err != nil {
		return err
	}
	list, err := q.answers(words, false)
	if err != nil {
		return err
	}
	chosen := map[string][]*answer.Option{}
	for i, a := range list {
		if a.Stop != nil {
			continue
		}
		keep, err := compared(a, words)
		if err != nil {
			return err
		}
		chosen[a.Case.Fit], list[i] = keep, only(a, keep)
	}
	err = f.print(w, list, func(l render.Look, a *answer.Answer) string {
		return render.Compare(l, a, chosen[a.Case.Fit], q.voice())
	})
	if err != nil {
		return err
	}
	return worst(list)
}

// compared are the options named, each once; with none named the best of the
// first trade names.
func compared(a *answer.Answer, words []string) ([]*answer.Option, error) {
	var out []*answer.Option
	seen := map[string]bool{}
	if len(words) == 0 {
		for _, m := range a.Methods {
			if m.Best != nil && len(words) < abreast {
				words = append(words, m.Name)
			}
		}
	}
	for _, word := range words {
		o, m, err := find(a, word)
		switch {
		case err != nil:
			return nil, err
		case m != nil:
			return nil, trouble{says: word + " cannot serve this fit: " + m.Why, hint: "name another option", code: exitNone}
		case !seen[o.ID]:
			seen[o.ID] = true
			out = append(out, o)
		}
	}
	return out, nil
}
