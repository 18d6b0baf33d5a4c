package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"wornfit/calc/basis"
	"wornfit/calc/catalogue"
	"wornfit/calc/kernel"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
	"wornfit/rules/fault"
)

func newFormulaRun(w world) *cobra.Command {
	f, units, worked := &flags{}, "", false
	cmd := &cobra.Command{
		Use:   "run NAME ARGUMENT=VALUE...",
		Short: "work a calculation with these numbers",
		Long: `run works a calculation. Each argument is its name, =, and a number with its
unit: seat=50mm, 'seat=2 in', interference=2thou, friction=0.12. A metal of the
shipped table gives several at once: shaft=steel-1045, hub=grey-iron-30, or
material=bronze-660 where there is only one; what is typed beside it counts.
Sizes are diameters unless the argument says otherwise.`,
		Example:           "  wornfit formula run hub-give bore=2in outside=3.5in hub=grey-iron-30",
		Args:              takes("the name of a calculation and its arguments", 1, -1),
		ValidArgsFunction: completeArguments,
		RunE: func(_ *cobra.Command, args []string) error {
			return runFormula(w, f, units, worked, args[0], args[1:])
		},
	}
	f.addLook(cmd)
	addUnits(cmd, &units, "as typed")
	cmd.Flags().BoolVar(&worked, "worked", false, "show the formula, the numbers put in and the steps")
	return cmd
}

func runFormula(w world, f *flags, units string, worked bool, name string, words []string) error {
	if _, err := spokenUnits(units, quantity.Metric); err != nil {
		return err
	}
	list := catalogue.Family(snake(name))
	if len(list) == 0 {
		k, _, err := formula(name)
		if err != nil {
			return err
		}
		list = []kernel.Kernel{k}
	}
	m := &metals{load: func() (metalTable, error) { return f.metalTable(w) }}
	puts, typed, err := readArguments(list[0], words, m)
	if err != nil {
		return err
	}
	s, err := spokenUnits(units, typed)
	if err != nil {
		return err
	}
	var all []render.Ran
	for _, k := range list { // of one family: they take the same
		r, err := work(k, puts)
		if err != nil {
			return err
		}
		_, r.Topic, _ = formula(k.Name)
		r.Sister = len(all) > 0
		r.ShowSteps = worked
		r.Told, _ = catalogue.Told(k.Name)
		all = append(all, r)
	}
	if f.json {
		return f.printJSON(w, ranJSON(all, render.Voice{Speech: s}))
	}
	for i, r := range all {
		if i > 0 {
			fmt.Fprintln(w.out)
		}
		if _, err := fmt.Fprint(w.out, render.FormulaRun(f.look(w), r, render.Voice{Speech: s})); err != nil {
			return err
		}
	}
	return nil
}

// readArguments understands what was typed after the name: every argument once,
// by itself or out of a metal. system is what the first telling unit speaks.
func readArguments(k kernel.Kernel, words []string, m *metals) (puts []render.Put, system quantity.System, err error) {
	r := &reading{k: k, puts: make([]render.Put, len(k.Args)), metals: m, sides: sides(k)}
	for i := range k.Args {
		r.puts[i] = render.Put{Arg: k.Args[i], Value: math.NaN()}
	}
	if err := r.loose(words); err != nil {
		return nil, 0, err
	}
	for _, word := range words {
		if err := r.word(word); err != nil {
			return nil, 0, err
		}
	}
	if err := r.fill(); err != nil {
		return nil, 0, err
	}
	if err := r.complete(); err != nil {
		return nil, 0, err
	}
	return r.puts, r.system, nil
}

// reading is a calculation whose arguments are being read.
type reading struct {
	k      kernel.Kernel
	puts   []render.Put
	metals *metals
	sides  map[string][]fill
	given  []givenMetal // in the order typed
	system quantity.System
	told   bool // whether a unit told the system
}

func (r *reading) name() string { return render.Dashed(r.k.Name) }

// loose refuses a word that stands alone; most often it is the unit, cut off from
// its number by the shell.
func (r *reading) loose(words []string) error {
	for i, word := range words {
		switch {
		case strings.Contains(word, "="):
		case i > 0 && strings.Contains(words[i-1], "="):
			return notUnderstood("if it belongs to the word before, put both in quotes: '"+words[i-1]+" "+word+"'", "%s is no ARGUMENT=VALUE", asWord(word))
		default:
			return notUnderstood("write each as its name, = and its value, such as "+r.sample(), "%s is no ARGUMENT=VALUE", asWord(word))
		}
	}
	return nil
}

// word reads one ARGUMENT=VALUE.
func (r *reading) word(word string) error {
	name, text, _ := strings.Cut(word, "=")
	if strings.TrimSpace(name) == "" {
		return notUnderstood(r.wants(), "%s has no name before the =", asWord(word))
	}
	name = snake(strings.TrimSpace(name))
	i := r.index(name)
	_, isSide := r.sides[name]
	switch {
	case i < 0 && !isSide:
		return r.unknown(name, text)
	case i < 0 || isSide && r.metals.has(strings.TrimSpace(text)):
		return r.metal(name, strings.TrimSpace(text))
	case r.puts[i].Typed != "":
		return notUnderstood("give it once", "%s is given twice: %s and %s", render.Dashed(name), r.puts[i].Typed, text)
	}
	return r.number(i, text)
}

func (r *reading) index(name string) int {
	for i, a := range r.k.Args {
		if a.Name == name {
			return i
		}
	}
	return -1
}

// number reads the value of an argument.
func (r *reading) number(i int, text string) error {
	a := r.k.Args[i]
	t, err := render.ReadArg(text, a)
	var refused *quantity.Refusal
	if errors.As(err, &refused) {
		return notUnderstood(refused.Remedy+" ("+render.Dashed(a.Name)+": "+a.Says+")", "%s: %s", render.Dashed(a.Name), refused.Says)
	}
	if err != nil {
		return notUnderstood("", "%s: %v", render.Dashed(a.Name), err)
	}
	r.puts[i].Value, r.puts[i].Typed, r.puts[i].Tidy = t.Best, strings.TrimSpace(text), tidy(t, a)
	if sys, tells := speaks(t); tells && !r.told && t.Best != 0 {
		r.system, r.told = sys, true
	}
	return nil
}

// tidy is what was typed in one way of writing; "" where it is said in SI.
func tidy(t quantity.Typed, a kernel.Arg) string {
	if _, known := quantity.Kinds[render.ArgKind(a)]; !known {
		return ""
	}
	return t.String()
}

// speaks is the system of a typed unit, where it is of one system only.
func speaks(t quantity.Typed) (quantity.System, bool) {
	if sys, ok := t.Speaks(); ok {
		return sys, true
	}
	inch := strings.HasSuffix(quantity.Speech{Units: quantity.Inch}.Say(t.Best, t.Dim), " "+t.Unit.Name)
	metric := strings.HasSuffix(quantity.Speech{Units: quantity.Metric}.Say(t.Best, t.Dim), " "+t.Unit.Name)
	if inch == metric {
		return quantity.Metric, false
	}
	if inch {
		return quantity.Inch, true
	}
	return quantity.Metric, true
}

// complete asks for what is missing and holds every number to its range.
func (r *reading) complete() error {
	var missing, samples []string
	for i, p := range r.puts {
		if u := p.Arg.Unsaid; u != nil && math.IsNaN(p.Value) {
			r.puts[i].Value, r.puts[i].Unsaid = u.Value, u.Says
			continue
		}
		if math.IsNaN(p.Value) {
			missing = append(missing, render.Dashed(p.Arg.Name)+" ("+p.Arg.Says+")")
			samples = append(samples, render.Dashed(p.Arg.Name)+"="+compact(usualValue(r.k.Args[i]), p.Arg, quantity.Speech{Units: r.system}))
		}
	}
	if len(missing) > 0 {
		return notUnderstood("add, for example, "+strings.Join(samples, " ")+r.metalHint(), "%s still wants %s", r.name(), strings.Join(missing, ", "))
	}
	for _, p := range r.puts {
		if err := r.inRange(p); err != nil {
			return err
		}
	}
	return nil
}

func (r *reading) inRange(p render.Put) error {
	if p.Arg.Range.Has(p.Value) {
		return nil
	}
	v := render.Voice{Speech: quantity.Speech{Units: r.system}}
	low, high := v.Range(p.Arg)
	is := p.Typed
	if is == "" {
		is = v.SaidArg(p.Value, p.Arg) + ", the " + p.Metal + "'s"
	}
	over := "over"
	if p.Value < p.Arg.Range.Lo {
		over = "under"
	}
	return notUnderstood(
		fmt.Sprintf("look at its unit and its point, and give one within that range (%s: %s); beyond it the formula is not promised", render.Dashed(p.Arg.Name), p.Arg.Says),
		"%s is %s, %s what %s is for: %s to %s", render.Dashed(p.Arg.Name), is, over, r.name(), low, high)
}

func (r *reading) unknown(name, text string) error {
	if r.metals.has(strings.TrimSpace(text)) {
		hint := r.name() + " takes no metal; " + r.wants()
		if len(r.sides) > 0 {
			hint = "write " + strings.Join(sideNames(r.sides), "=METAL or ") + "=METAL"
		}
		return notUnderstood(hint, "%s wants no metal of %s", r.name(), render.Dashed(name))
	}
	known := sideNames(r.sides)
	for _, a := range r.k.Args {
		known = append(known, render.Dashed(a.Name))
	}
	if near := fault.Nearest(render.Dashed(name), known); near != "" {
		return notUnderstood("did you mean "+near+"?", "%s wants no %s", r.name(), render.Dashed(name))
	}
	return notUnderstood(r.wants(), "%s wants no %s", r.name(), asWord(render.Dashed(name)))
}

// wants names all arguments, and the metals that fill some.
func (r *reading) wants() string {
	var names []string
	for _, a := range r.k.Args {
		names = append(names, render.Dashed(a.Name))
	}
	return "it wants " + strings.Join(names, ", ") + r.metalHint()
}

func (r *reading) metalHint() string {
	var open []string
	told := map[fill]bool{}
	for _, side := range sideNames(r.sides) {
		for _, f := range r.sides[side] {
			if math.IsNaN(r.puts[f.arg].Value) && !told[r.sides[side][0]] {
				told[r.sides[side][0]] = true
				open = append(open, side+"="+usualMetal(side))
			}
		}
	}
	if len(open) == 0 {
		return ""
	}
	return "; or take numbers from a metal: " + strings.Join(open, " ")
}

func (r *reading) sample() string {
	a := r.k.Args[0]
	return render.Dashed(a.Name) + "=" + compact(usualValue(a), a, quantity.Speech{})
}

// work does the calculation. What it refuses, it names.
func work(k kernel.Kernel, puts []render.Put) (render.Ran, error) {
	x := make([]float64, len(puts))
	r := render.Ran{Kernel: k, Puts: puts, Grade: k.Grade}
	for i, p := range puts {
		x[i] = p.Value
		if p.Metal != "" {
			r.Grade = basis.Worse(r.Grade, p.Grade)
		}
	}
	r.Result = k.Value(x)
	if k.Worked != nil {
		sheet, err := k.Worked(x)
		var refused *basis.Refusal
		switch {
		case errors.As(err, &refused):
			return r, notUnderstood("it must be "+refused.Want, "%s cannot be worked: %s is %s", render.Dashed(k.Name), refused.Name, refused.Value)
		case err != nil:
			return r, notUnderstood("", "%s cannot be worked: %v", render.Dashed(k.Name), err)
		}
		r.Steps, r.Notes = sheet.Steps, sheet.Notes
		for _, n := range sheet.Notes {
			r.Grade = basis.Worse(r.Grade, n.Grade)
		}
	}
	if math.IsNaN(r.Result) {
		return r, notUnderstood("look at the sizes: something must be smaller or larger than something else", "%s has no answer for these numbers", render.Dashed(k.Name))
	}
	r.Notes = append(r.Notes, brittleNotes(puts)...)
	return r, nil
}

func completeArguments(cmd *cobra.Command, args []string, start string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return completeFormula(cmd, args, start)
	}
	k, _, err := formula(args[0])
	if err != nil {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var names []string
	for _, a := range k.Args {
		names = append(names, render.Dashed(a.Name)+"=\t"+a.Says)
	}
	for _, side := range sideNames(sides(k)) {
		names = append(names, side+"=\ta metal")
	}
	return names, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
