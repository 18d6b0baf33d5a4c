package render

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"wornfit/calc/quantity"
)

// LimitsPage is a class or a fit looked up in a standard; lengths in metres.
type LimitsPage struct {
	Name      string         `json:"name"`
	System    string         `json:"system"`
	Nominal   float64        `json:"nominal"`
	Members   []LimitsMember `json:"members"`
	Kind      string         `json:"kind,omitempty"` // of a fit: clearance, transition, interference
	Clearance *Span          `json:"clearance,omitempty"`
	Notes     []LimitsNote   `json:"notes"`
}

// Pair makes the page one of a hole and a shaft.
func (p *LimitsPage) Pair(kind string, members []LimitsMember, clearance Span) {
	p.Kind, p.Members, p.Clearance = kind, members, &clearance
}

// LimitsMember is a hole or a shaft.
type LimitsMember struct {
	Class     string   `json:"class"`
	Kind      string   `json:"kind"`
	Upper     float64  `json:"upper_deviation"`
	Lower     float64  `json:"lower_deviation"`
	Largest   float64  `json:"largest"`
	Smallest  float64  `json:"smallest"`
	Tolerance float64  `json:"tolerance"`
	IT        int      `json:"tolerance_grade"`
	Grade     string   `json:"grade"` // how the numbers were come by
	Usual     []string `json:"usually_held_by"`
	AtBest    []string `json:"held_at_best_by"`
}

// Span is a least and a most clearance; interference is negative.
type Span struct {
	Min float64 `json:"min"`
	Max float64 `json:"max"`
}

// LimitsNote is what a reader must know of a number.
type LimitsNote struct {
	Says   string `json:"says"`
	Source string `json:"source"`
	Grade  string `json:"grade"`
}

// NearPage lists standard fits near a wanted clearance.
type NearPage struct {
	Nominal float64   `json:"nominal"`
	Wanted  Span      `json:"wanted"`
	Near    []NearFit `json:"near"`
	OfEach  int       `json:"of_each_system"` // listed at most
}

// NearFit is one of them; Off is the farthest a pair can lie from what is wanted.
type NearFit struct {
	Name      string         `json:"name"`
	System    string         `json:"system"`
	Kind      string         `json:"kind"`
	Off       float64        `json:"off"`
	Clearance Span           `json:"clearance"`
	Members   []LimitsMember `json:"members"`
	Notes     []LimitsNote   `json:"notes"`
}

// Limits is the page of a class or a fit.
func Limits(l Look, a LimitsPage, units quantity.System) string {
	p := NewPage(l)
	systems := systemsOf(units)
	title := a.nominal(systems) + " " + a.Name
	if a.Kind != "" {
		title += ", " + a.Kind + " fit"
	}
	p.Title(title + " (" + a.System + ")")
	for _, sys := range systems {
		p.Blank()
		p.Table(a.table(sys))
	}
	if a.Clearance != nil {
		p.Head("Hole against shaft")
		p.Pairs(indent, []string{"tightest", "loosest"}, []string{a.free(systems, a.Clearance.Min), a.free(systems, a.Clearance.Max)})
	}
	a.holders(p, systems)
	if len(a.Notes) > 0 {
		p.Head("To know")
		for _, n := range a.Notes {
			p.Item(indent, "-", n.Says+" ("+n.Grade+")")
		}
	}
	p.Blank()
	p.Para(0, sourceOf[a.System])
	return p.String()
}

// sourceOf says where a system's limits are from.
var sourceOf = map[string]string{
	"ISO 286":    "Limits from ISO 286-1:2010, as other publications print them; sizes at 20 °C, rounded to the inside of their width.",
	"ANSI B4.1":  "Limits from ANSI B4.1-1967, as handbooks print them; sizes at 68 °F, rounded to the inside of their width.",
	"everything": "From ISO 286-1:2010 and ANSI B4.1-1967, as other publications print them; which pairs are recommended is from memory.",
}

func systemsOf(units quantity.System) []quantity.System {
	if units == quantity.Both {
		return []quantity.System{quantity.Inch, quantity.Metric}
	}
	return []quantity.System{units}
}

func (a LimitsPage) nominal(systems []quantity.System) string {
	var out []string
	for _, sys := range systems {
		out = append(out, plainSize(a.Nominal, sys))
	}
	return both(out)
}

// plainSize is a nominal size without noughts at its end.
func plainSize(l float64, sys quantity.System) string {
	factor, unit := unitOf(sys)
	return strconv.FormatFloat(math.Round(l/factor*1e6)/1e6, 'f', -1, 64) + " " + unit
}

func unitOf(sys quantity.System) (factor float64, unit string) {
	if sys == quantity.Inch {
		return 0.0254, "in"
	}
	return 0.001, "mm"
}

func (a LimitsPage) table(sys quantity.System) Table {
	_, unit := unitOf(sys)
	t := Table{Title: 2, Columns: []Column{{Head: "part"}, {Head: "class"}}}
	for _, head := range []string{"low limit", "high limit", "from nominal"} {
		t.Columns = append(t.Columns, Column{Head: head + ", " + unit, Right: true})
	}
	places := a.places(sys)
	speech := quantity.Speech{Units: sys}
	for _, m := range a.Members {
		low, high := speech.Limits(m.Smallest, m.Largest, places)
		t.Rows = append(t.Rows, Row{Cells: []string{m.Kind, m.Class, bare(low), bare(high), deviation(m.Lower, sys, places) + " to " + deviation(m.Upper, sys, places)}})
	}
	return t
}

// bare is a size without its unit, which the head of the table says.
func bare(text string) string { return strings.Fields(text)[0] }

func deviation(l float64, sys quantity.System, p quantity.Places) string {
	text := bare(quantity.Speech{Units: sys}.Gap(l, p))
	switch {
	case strings.Trim(text, "0.") == "":
		return "0"
	case l > 0:
		return "+" + text
	}
	return text
}

// places are the decimals that say every limit without loss; a size that the
// other system's standard sets gets one more than is usual, its limits inward.
func (a LimitsPage) places(sys quantity.System) quantity.Places {
	factor, _ := unitOf(sys)
	usual := quantity.ByTenth.MM
	if sys == quantity.Inch {
		usual = quantity.ByTenth.Inch
	}
	for n := usual; n <= usual+1; n++ {
		exact := true
		for _, m := range a.Members {
			for _, l := range []float64{m.Smallest, m.Largest} {
				steps := l / factor * math.Pow10(n)
				exact = exact && math.Abs(steps-math.Round(steps)) < 1e-3 // under a thousandth of the last digit
			}
		}
		if exact {
			return quantity.Places{Inch: n, MM: n}
		}
	}
	return quantity.Places{Inch: usual + 1, MM: usual + 1}
}

func (a LimitsPage) free(systems []quantity.System, l float64) string {
	var out []string
	for _, sys := range systems {
		out = append(out, freeText(l, sys, a.places(sys)))
	}
	return both(out)
}

// freeText says a clearance as a fitter does: 0.041 mm free, 0.035 mm tight.
func freeText(l float64, sys quantity.System, p quantity.Places) string {
	text := quantity.Speech{Units: sys}.Gap(math.Abs(l), p)
	switch {
	case strings.Trim(bare(text), "0.") == "":
		return "line to line"
	case l < 0:
		return text + " tight"
	}
	return text + " free"
}

// holders says what usually holds each width.
func (a LimitsPage) holders(p *Page, systems []quantity.System) {
	var names, texts []string
	for _, m := range a.Members {
		var wide []string
		for _, sys := range systems {
			wide = append(wide, quantity.Speech{Units: sys}.Gap(m.Tolerance, a.places(sys)))
		}
		said := strings.Join(m.Usual, ", ")
		if len(m.AtBest) > 0 {
			said = strings.TrimPrefix(said+"; at their best ", "; ") + strings.Join(m.AtBest, ", ")
		}
		if said == "" {
			continue
		}
		names, texts = append(names, fmt.Sprintf("%s, %s wide", m.Kind, both(wide))), append(texts, said)
	}
	if len(names) > 0 {
		p.Head("What usually holds these widths (charts of ordinary production; a worn machine holds less)")
		p.Pairs(indent, names, texts)
	}
}

// Near is the page of standard fits near a wanted clearance.
func Near(l Look, a NearPage, units quantity.System) string {
	p := NewPage(l)
	systems := systemsOf(units)
	page := LimitsPage{Nominal: a.Nominal}
	for _, f := range a.Near {
		page.Members = append(page.Members, f.Members...)
	}
	wanted := plainFree(a.Wanted.Min, systems)
	if a.Wanted.Max > a.Wanted.Min {
		wanted += " to " + plainFree(a.Wanted.Max, systems)
	}
	p.Title("Standard fits nearest to " + wanted + " at " + page.nominal(systems))
	for _, sys := range systems {
		t := Table{Title: 2, Columns: []Column{{Head: "no.", Right: true}, {Head: "fit"}, {Head: "system"},
			{Head: "tightest", Right: true}, {Head: "loosest", Right: true}, {Head: "off by", Right: true}}}
		places := page.places(sys)
		for i, f := range a.Near {
			t.Rows = append(t.Rows, Row{Cells: []string{strconv.Itoa(i + 1), f.Name, f.System, freeText(f.Clearance.Min, sys, places),
				freeText(f.Clearance.Max, sys, places), offText(f.Off, sys, places)}})
		}
		p.Blank()
		p.Table(t)
	}
	p.Blank()
	p.Para(0, "Off by: the farthest a pair made to the fit can lie from what is wanted. Of equals the widest, which is the easiest to make, stands first. Listed are the nearest "+strconv.Itoa(a.OfEach)+" of each system.")
	for _, f := range a.Near {
		for _, n := range f.Notes {
			p.Item(0, "-", n.Says+" ("+n.Grade+")")
		}
	}
	p.Para(0, sourceOf["everything"])
	return p.String()
}

// plainFree is a clearance with the digits it was typed with.
func plainFree(l float64, systems []quantity.System) string {
	if l == 0 {
		return "line to line"
	}
	word := " free"
	if l < 0 {
		word = " tight"
	}
	return (LimitsPage{Nominal: math.Abs(l)}).nominal(systems) + word
}

func offText(l float64, sys quantity.System, p quantity.Places) string {
	text := quantity.Speech{Units: sys}.Gap(l, p)
	if strings.Trim(bare(text), "0.") == "" {
		return "nothing"
	}
	return text
}
