package render

import (
	"math"
	"slices"
	"strconv"
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
	case l.Name == "score" && l.Value == 0 && l.U == 0:
		return "none"
	case l.Dim != quantity.LengthDim && l.Dim != (quantity.Dim{}):
		return v.rate(l)
	case atLimit[l.Name] && l.Value == 0:
		return "line to line"
	case atLimit[l.Name] && l.Value > 0:
		return v.Measured(l.Value, l.U, false)
	case strings.HasPrefix(l.Name, "clearance") || l.Name == "shake" || l.Name == "loosest_now" || atLimit[l.Name]:
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
	value, unit, _ := strings.Cut(say(l.Value), " ")
	doubt, same, _ := strings.Cut(say(l.U), " ")
	switch {
	case l.U <= 0:
		return say(l.Value)
	case unit == same && v.Units != quantity.Both:
		return evened(value, doubt) + " " + unit
	}
	return say(l.Value) + ", give or take " + say(l.U)
}

// evened writes a number and its doubt to the place of the doubt's first
// digit, the doubt rounded up.
func evened(value, doubt string) string {
	x, err := strconv.ParseFloat(value, 64)
	u, err2 := strconv.ParseFloat(doubt, 64)
	if err != nil || err2 != nil || !(u > 0) {
		return value + " ±" + doubt
	}
	places := -int(math.Floor(math.Log10(u)))
	step := math.Pow10(-places)
	u = math.Ceil(u/step-1e-6) * step
	x = math.Round(x/step) * step
	return strconv.FormatFloat(x, 'f', max(places, 0), 64) + " ±" + strconv.FormatFloat(u, 'f', max(places, 0), 64)
}

// found shows the surfaces side by side, then the fit.
func (p *Page) found(a *answer.Answer, v Voice) {
	var surfaces, rest []answer.Section
	for _, s := range a.Condition {
		if slices.ContainsFunc(s.Lines, func(l answer.Line) bool { return l.Name == "largest" }) {
			surfaces = append(surfaces, s)
		} else if s.Name != limitsOf {
			rest = append(rest, s)
		}
	}
	if len(a.Condition) == 0 {
		return
	}
	p.Head("What was found")
	t, cards := sideBySide(surfaces, v), false
	if _, fits := p.fits(t.plain(p.ASCII)); fits {
		p.Table(t)
	} else {
		rest, cards = append(surfaces, rest...), true
	}
	for i, s := range rest {
		if len(s.Lines) == 0 {
			continue
		}
		if i > 0 || !cards {
			p.Blank()
		}
		p.section(s, v, cards)
	}
}

// section lists the figures of a section, under its name if it is wanted.
func (p *Page) section(s answer.Section, v Voice, named bool) {
	in := indent
	if named {
		p.Para(indent, s.Name)
		in = 2 * indent
	}
	var names, texts []string
	for _, l := range s.Lines {
		names, texts = append(names, l.Says), append(texts, v.figure(l))
	}
	p.Pairs(in, names, texts)
}

// sideBySide is a row a figure and a column a surface. A figure told several
// times over, such as a clean-up size by datum, has a row each time.
func sideBySide(sections []answer.Section, v Voice) Table {
	t := Table{Columns: []Column{{}}, Title: 1}
	at := map[string]int{}
	for i, s := range sections {
		t.Columns = append(t.Columns, Column{Head: s.Name})
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
