package render

import (
	"slices"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/calc/quantity"
)

// diameters are the figures written as a drawing writes a size; all other
// lengths are gaps, depths and differences.
var diameters = []string{"largest", "smallest", "mean", "before", "clean_up"}

func (v Voice) figure(l answer.Line) string {
	switch {
	case l.Words != "":
		return l.Words
	case l.Dim != quantity.LengthDim && l.Dim != (quantity.Dim{}):
		return v.rate(l)
	case strings.HasPrefix(l.Name, "clearance") || l.Name == "shake":
		return v.Free(l.Value, l.U)
	}
	return v.Measured(l.Value, l.U, slices.Contains(diameters, l.Name))
}

// rate says a figure that is no length with its doubt in the same words.
func (v Voice) rate(l answer.Line) string {
	kind := ""
	if l.Dim == quantity.WearRateDim {
		kind = "wear-rate"
	}
	say := func(x float64) string {
		if kind != "" {
			return v.SayKind(x, kind)
		}
		return v.Value(x, l.Dim)
	}
	if l.U <= 0 {
		return say(l.Value)
	}
	return say(l.Value) + ", give or take " + say(l.U)
}

// found shows the surfaces side by side, then the fit.
func (p *Page) found(a *answer.Answer, v Voice) {
	var surfaces, rest []answer.Section
	for _, s := range a.Condition {
		if slices.ContainsFunc(s.Lines, func(l answer.Line) bool { return l.Name == "largest" }) {
			surfaces = append(surfaces, s)
		} else {
			rest = append(rest, s)
		}
	}
	if len(a.Condition) == 0 {
		return
	}
	p.Head("What was found")
	p.Table(sideBySide(surfaces, v))
	for _, s := range rest {
		if len(s.Lines) == 0 {
			continue
		}
		p.Blank()
		at := 0
		for _, l := range s.Lines {
			at = max(at, width(p.plain(l.Says))+2)
		}
		for _, l := range s.Lines {
			p.Pair(indent, min(at, p.Width/2+6), l.Says, v.figure(l))
		}
	}
}

// sideBySide is a row a figure and a column a surface. A figure told several
// times over, such as a clean-up size by datum, has a row each time.
func sideBySide(sections []answer.Section, v Voice) Table {
	t := Table{Columns: []Column{{Wraps: true}}, Title: 1}
	at := map[string]int{}
	for i, s := range sections {
		t.Columns = append(t.Columns, Column{Head: s.Name, Wraps: true})
		for _, l := range s.Lines {
			row, ok := at[l.Name+l.Says]
			if !ok {
				row = place(t.Rows, sections, i, l.Name, at)
				for k, r := range at {
					if r >= row {
						at[k] = r + 1
					}
				}
				at[l.Name+l.Says] = row
				cells := make([]string, len(sections)+1)
				for k := range cells {
					cells[k] = nothing
				}
				cells[0] = l.Says
				t.Rows = slices.Insert(t.Rows, row, Row{Cells: cells})
			}
			t.Rows[row].Cells[i+1] = v.figure(l)
		}
	}
	return t
}

// place is the row a new figure goes to: behind the last of its own name.
func place(rows []Row, sections []answer.Section, upTo int, name string, at map[string]int) int {
	last := -1
	for _, s := range sections[:upTo+1] {
		for _, l := range s.Lines {
			if r, ok := at[l.Name+l.Says]; ok && l.Name == name {
				last = max(last, r)
			}
		}
	}
	if last < 0 {
		return len(rows)
	}
	return last + 1
}

// howBad says what leaving the fit as it is would come to.
func (p *Page) howBad(a *answer.Answer, v Voice) {
	left := asItIs(a)
	if left == nil {
		return
	}
	var says []string
	for _, r := range left.Reasons {
		if r.Holds != nil && *r.Holds || r.Strength != "must" {
			continue
		}
		says = append(says, sentence(r.Text))
	}
	p.Head("How bad it is")
	switch {
	case len(says) > 0:
		for _, s := range says {
			p.Para(indent, "Left as it is: "+s)
		}
	default:
		p.Para(indent, "Nothing that must be kept is broken if it is left as it is: "+verdict(left.Verdict, left.Kind)+".")
	}
}

// asItIs is the option that does nothing to either part.
func asItIs(a *answer.Answer) *answer.Option {
	for i := range a.Options {
		o := &a.Options[i]
		if fit := o.Holds["fit"]; o.Shaft == "leave" && o.Hub == "leave" && (fit == "" || fit == "press") {
			return o
		}
	}
	return nil
}

// cause tells why it wore, and what to cure first.
func (p *Page) cause(a *answer.Answer) {
	if len(a.Diagnosis) == 0 {
		return
	}
	p.Head("Why it wore: cure this first")
	for _, f := range a.Diagnosis {
		p.Item(indent, "-", sentence(f.Says)+" "+sentence(f.Cure)+source(f.Source, ""))
	}
}

func (p *Page) notes(a *answer.Answer) {
	if len(a.Notes) == 0 {
		return
	}
	p.Head("Notes on the readings")
	for _, n := range a.Notes {
		p.Item(indent, "-", sentence(n))
	}
}

// sentence starts with a capital and ends with a stop.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") {
		return upperFirst(s)
	}
	return upperFirst(s) + "."
}

func verdict(word, kind string) string {
	if kind != "" {
		return word + ", " + kind
	}
	return word
}

func source(from, grade string) string {
	switch {
	case from == "":
		return ""
	case grade == "" || grade == "practice" || grade == "memory": // said in the source
		return " [" + from + "]"
	}
	return " [" + from + "; " + grade + "]"
}
