package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"wornfit/calc/basis"
	stdfits "wornfit/calc/fits" // the tests of this package have a fits of their own
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
)

// limitsAsked is what was typed after limits.
type limitsAsked struct {
	text              string
	size, near, units string
}

func newLimits(w world) *cobra.Command {
	f, a := &flags{}, limitsAsked{}
	cmd := &cobra.Command{
		Use:   "limits SIZE CLASS",
		Short: "limits of a standard class or fit; the fit nearest a clearance",
		Long: `limits looks up a tolerance class or fit of ISO 286 (25 H7, 30 k6, 25 H7/p6) or
an inch fit of ANSI B4.1 (1.000 in RC4): low and high limit of each part, how
tight and how loose a pair can come out, and what work usually holds the widths.
With --near it lists the standard fits nearest to a wanted clearance.

A bare size is in mm; an inch size or an inch fit wants its unit.`,
		Example: `  wornfit limits '25 H7/p6'
  wornfit limits '1.000 in RC4'
  wornfit limits --near '0.03 mm clearance' --size '25 mm'`,
		Args: cobra.ArbitraryArgs,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			a.text = strings.Join(args, " ") // quotes round the whole are not needed
			return runLimits(w, f, a)
		},
	}
	f.addPaper(cmd)
	s := cmd.Flags()
	s.StringVar(&a.near, "near", "", "list the standard fits nearest to this `CLEARANCE`, such as '0.03 mm clearance', '1 to 2 thou interference'")
	s.StringVar(&a.size, "size", "", "the nominal `SIZE`, if it does not stand before the class")
	s.StringVar(&a.units, "units", "", "say sizes in `UNITS`: mm, inch or both (else as typed)")
	fixed(cmd, "units", "mm", "inch", "both")
	return cmd
}

func runLimits(w world, f *flags, a limitsAsked) error {
	if a.near != "" {
		return runNear(w, f, a)
	}
	size, class, err := a.read()
	if err != nil {
		return err
	}
	found, err := lookUp(size.nominal, class)
	if err != nil {
		return in(a.text, err)
	}
	units, err := a.speak(size.inch || found.System == stdfits.Inch)
	if err != nil {
		return err
	}
	if f.json {
		return f.printJSON(w, found)
	}
	_, err = w.out.Write([]byte(render.Limits(f.look(w), found, units)))
	return err
}

func runNear(w world, f *flags, a limitsAsked) error {
	near, err := a.readNear()
	if err != nil {
		return err
	}
	list, err := stdfits.Near(near.size.nominal, near.least, near.most)
	if err != nil {
		return in(a.near, err)
	}
	units, err := a.speak(near.size.inch)
	if err != nil {
		return err
	}
	page := render.NearPage{Nominal: length(near.size.nominal), Wanted: span(near.least, near.most), OfEach: nearOfEach}
	shown := map[string]int{}
	for _, c := range list {
		if shown[c.System]++; shown[c.System] > nearOfEach {
			continue
		}
		page.Near = append(page.Near, render.NearFit{
			Name: c.Name, System: c.System, Kind: c.Kind(), Off: length(c.Off),
			Members: members(c.Fit, shaftName(c.Name, c.Fit)), Clearance: span(c.LeastClearance(), c.MostClearance()), Notes: limitNotes(c.Notes),
		})
	}
	if f.json {
		return f.printJSON(w, page)
	}
	_, err = w.out.Write([]byte(render.Near(f.look(w), page, units)))
	return err
}

// nearOfEach is how many fits of each system are listed: our choice.
const nearOfEach = 4

// speak is the units of --units, else those typed.
func (a limitsAsked) speak(inch bool) (quantity.System, error) {
	if a.units == "" {
		if inch {
			return quantity.Inch, nil
		}
		return quantity.Metric, nil
	}
	units, ok := quantity.SystemNamed(a.units)
	if !ok {
		return 0, notUnderstood("write --units mm, --units inch or --units both", "--units knows no %q", a.units)
	}
	return units, nil
}

// lookUp finds a class or a fit, ISO or inch.
func lookUp(nominal quantity.Length, class string) (render.LimitsPage, error) {
	page := render.LimitsPage{Nominal: length(nominal), System: "ISO 286"}
	var f stdfits.Fit
	if name, err := stdfits.ReadB41(class); err == nil {
		inch, notes, err := stdfits.B41(nominal, name)
		if err != nil {
			return page, err
		}
		page.System, page.Name, page.Notes = stdfits.Inch, name, limitNotes(notes)
		page.Pair(inch.Kind(), members(inch.Fit, inch.ShaftName()), span(inch.LeastClearance(), inch.MostClearance()))
		return page, nil
	}
	first, second, pair := strings.Cut(class, "/")
	a, err := stdfits.ReadClass(first)
	if err != nil {
		return page, err
	}
	page.Name = a.String()
	if !pair {
		l, notes, err := stdfits.Of(nominal, a)
		if err != nil {
			return page, err
		}
		page.Members, page.Notes = []render.LimitsMember{member(l, a.String(), a.Hole())}, limitNotes(notes)
		return page, nil
	}
	b, err := stdfits.ReadClass(second)
	if err != nil {
		return page, err
	}
	f, notes, err := stdfits.Pair(nominal, a, b)
	if err != nil {
		return page, err
	}
	page.Name, page.Notes = a.String()+"/"+b.String(), limitNotes(notes)
	page.Pair(f.Kind(), members(f, b.String()), span(f.LeastClearance(), f.MostClearance()))
	return page, nil
}

// shaftName is the shaft's class, or the fit's name where B4.1 prints no symbol.
func shaftName(fit string, f stdfits.Fit) string {
	return stdfits.InchFit{Name: fit, Fit: f}.ShaftName()
}

func members(f stdfits.Fit, shaft string) []render.LimitsMember {
	return []render.LimitsMember{member(f.Hole, f.Hole.Class.String(), true), member(f.Shaft, shaft, false)}
}

func member(l stdfits.Limits, class string, hole bool) render.LimitsMember {
	m := render.LimitsMember{Class: class, Kind: "shaft", Upper: length(l.Upper), Lower: length(l.Lower),
		Largest: length(l.Largest()), Smallest: length(l.Smallest()), Tolerance: length(l.Tolerance()), Grade: l.Grade.String(), IT: l.Class.Grade}
	held := stdfits.Class{Letter: "h", Grade: l.Class.Grade} // for the grade alone
	if hole {
		m.Kind, held.Letter = "hole", "H"
	}
	m.Usual, m.AtBest = stdfits.ProcessesFor(held)
	return m
}

func limitNotes(notes []basis.Note) []render.LimitsNote {
	var out []render.LimitsNote
	for _, n := range notes {
		out = append(out, render.LimitsNote{Says: n.Says, Source: n.Source, Grade: n.Grade.String()})
	}
	return out
}

// in puts the place before what a calculation refuses.
func in(place string, err error) error {
	var r *basis.Refusal
	if errors.As(err, &r) {
		return notUnderstood("it must be "+r.Want, "in %q: %s is %s", place, r.Name, r.Value)
	}
	return err
}
