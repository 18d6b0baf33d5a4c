package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"wornfit/calc/catalogue"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
	"wornfit/rules/fault"
)

// The formula command knows no calculation by name: it shows and runs whatever
// the catalogue lists.

func newFormula(w world) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "formula",
		Short: "every calculation at hand: find it, read it, work it",
		Long: `formula works single calculations of fit repair: pressures, heats, sizes,
strengths, times. Each tells where it holds and where it is from.`,
		Example: `  wornfit formula list roughness
  wornfit formula show grip-torque
  wornfit formula run grip-torque seat=2in length=1in pressure=4ksi friction=.12`,
		Args: cobra.ArbitraryArgs,
	}
	cmd.RunE = group(cmd)
	cmd.AddCommand(newFormulaList(w), newFormulaShow(w), newFormulaRun(w))
	return cmd
}

func newFormulaList(w world) *cobra.Command {
	f := &flags{}
	cmd := &cobra.Command{
		Use:   "list [WORD...]",
		Short: "the calculations by topic, or those about a word",
		Long: `list names every calculation with what it answers, topic by topic. With words it
keeps those that have all of them in topic, name, meaning or arguments.`,
		Example: "  wornfit formula list keyway",
		Args:    cobra.ArbitraryArgs,
		RunE:    func(_ *cobra.Command, args []string) error { return runFormulaList(w, f, args) },
	}
	f.addPaper(cmd)
	return cmd
}

func runFormulaList(w world, f *flags, words []string) error {
	var list []catalogue.Topic
	for _, t := range catalogue.Topics() {
		some := catalogue.Topic{Name: t.Name}
		for _, k := range t.Kernels {
			if about(t.Name, k, words) {
				some.Kernels = append(some.Kernels, k)
			}
		}
		if len(some.Kernels) > 0 {
			list = append(list, some)
		}
	}
	if len(list) == 0 {
		return notUnderstood(nearestWord(words), "no calculation is about %s", strings.Join(words, " "))
	}
	if f.json {
		return f.printJSON(w, listedJSON(list))
	}
	_, err := fmt.Fprint(w.out, render.FormulaList(f.look(w), list))
	return err
}

// about reports whether a calculation has every word, in whatever case and
// however its names are joined.
func about(topic string, k kernel.Kernel, words []string) bool {
	text := topic + " " + k.Name + " " + k.Says
	for _, a := range k.Args {
		text += " " + a.Name + " " + a.Says
	}
	text = plainWords(text)
	for _, word := range words {
		if !strings.Contains(text, plainWords(word)) {
			return false
		}
	}
	return true
}

func plainWords(text string) string {
	return strings.ToLower(strings.NewReplacer("_", " ", "-", " ").Replace(text))
}

// nearestWord is what to try in place of words that nothing is about.
func nearestWord(words []string) string {
	var known []string
	for _, t := range catalogue.Topics() {
		known = append(known, t.Name)
		for _, k := range t.Kernels {
			known = append(known, strings.Fields(plainWords(k.Name+" "+k.Says))...)
		}
	}
	for _, word := range words {
		if near := fault.Nearest(plainWords(word), known); near != "" && near != plainWords(word) {
			return "did you mean " + near + "?"
		}
	}
	return "wornfit formula list, without a word, names them all"
}

func newFormulaShow(w world) *cobra.Command {
	f, units := &flags{}, ""
	cmd := &cobra.Command{
		Use:   "show NAME",
		Short: "what a calculation answers, what it wants, where it holds",
		Long: `show tells what a calculation answers, each argument with its meaning and range
and which way the result goes as it grows, the source, and a call to copy.`,
		Example:           "  wornfit formula show contact-pressure --units inch",
		Args:              takes("the name of a calculation", 1, 1),
		ValidArgsFunction: completeFormula,
		RunE:              func(_ *cobra.Command, args []string) error { return runFormulaShow(w, f, units, args[0]) },
	}
	f.addPaper(cmd)
	addUnits(cmd, &units, "mm")
	return cmd
}

func runFormulaShow(w world, f *flags, units, name string) error {
	k, topic, err := formula(name)
	if err != nil {
		return err
	}
	s, err := spokenUnits(units, quantity.Metric)
	if err != nil {
		return err
	}
	m := &metals{load: func() (metalTable, error) { return f.metalTable(w) }}
	page := render.Formula{Kernel: k, Topic: topic, Example: example(k, s, m)}
	page.Told, _ = catalogue.Told(k.Name)
	if f.json {
		return f.printJSON(w, shownJSON(page))
	}
	_, err = fmt.Fprint(w.out, render.FormulaShow(f.look(w), page, render.Voice{Speech: s}))
	return err
}

// formula finds a calculation by its name, written with - or _.
func formula(name string) (kernel.Kernel, string, error) {
	if k, ok := catalogue.Find(snake(name)); ok {
		for _, t := range catalogue.Topics() {
			for _, one := range t.Kernels {
				if one.Name == k.Name {
					return k, t.Name, nil
				}
			}
		}
	}
	var known, holding []string
	for _, k := range catalogue.All() {
		known = append(known, render.Dashed(k.Name))
		if name != "" && strings.Contains(plainWords(k.Name), plainWords(name)) {
			holding = append(holding, render.Dashed(k.Name))
		}
	}
	hint := "wornfit formula list names them all"
	if near := fault.Nearest(render.Dashed(snake(name)), known); near != "" {
		hint = "did you mean " + near + "?"
	} else if n := len(holding); n > 0 && n <= 6 {
		hint = "there is " + strings.Join(holding, ", ")
	}
	return kernel.Kernel{}, "", notUnderstood(hint, "there is no calculation %s", asWord(name))
}

// asWord is a word as typed, in quotes where it would not stand out.
func asWord(word string) string {
	if word == "" || strings.ContainsAny(word, " \t\n") {
		return fmt.Sprintf("%q", word)
	}
	return word
}

func snake(name string) string { return strings.ReplaceAll(strings.ToLower(name), "-", "_") }

func completeFormula(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var names []string
	for _, k := range catalogue.All() {
		names = append(names, render.Dashed(k.Name)+"\t"+k.Says)
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}

func addUnits(cmd *cobra.Command, units *string, otherwise string) {
	cmd.Flags().StringVar(units, "units", "", "say sizes in `UNITS`: inch, mm or both (else "+otherwise+")")
	fixed(cmd, "units", "inch", "mm", "both")
	cmd.Flags().SetNormalizeFunc(func(_ *pflag.FlagSet, name string) pflag.NormalizedName {
		if name == "speak" { // what it is called where a case speaks
			name = "units"
		}
		return pflag.NormalizedName(name)
	})
}

// spokenUnits is how to speak: as asked, else as the numbers put in do.
func spokenUnits(asked string, otherwise quantity.System) (quantity.Speech, error) {
	f := flags{speak: asked}
	s, err := f.speech(quantity.Speech{Units: otherwise})
	if err != nil {
		return s, notUnderstood("write --units inch, --units mm or --units both", "--units knows no %q", strings.TrimSpace(asked))
	}
	return s, nil
}
