package render

import "wornfit/advisor/answer"

// sides is a table of what is compared: a row a thing, a column an option.
func (p *Page) sides(a *answer.Answer, list []*answer.Option, v Voice) {
	for len(list) > 0 {
		n := len(list)
		t := comparison(a, list[:n], v)
		for n > 2 { // as many options abreast as fit
			if _, fits := p.fits(t.plain(p.ASCII)); fits {
				break
			}
			n--
			t = comparison(a, list[:n], v)
		}
		if _, fits := p.fits(t.plain(p.ASCII)); !fits {
			p.Blank()
			p.Table(turned(comparison(a, list, v)))
			return
		}
		p.Blank()
		p.Table(t)
		list = list[n:]
	}
}

// turned swaps rows and columns: for a card an option.
func turned(t Table) Table {
	out := Table{Title: 1, Columns: []Column{{}}, Rows: make([]Row, len(t.Columns)-1)}
	for _, r := range t.Rows {
		out.Columns = append(out.Columns, Column{Head: r.Cells[0]})
	}
	for i := range out.Rows {
		out.Rows[i].Cells = []string{t.Columns[i+1].Head}
		for _, r := range t.Rows {
			out.Rows[i].Cells = append(out.Rows[i].Cells, r.Cells[i+1])
		}
	}
	return out
}

func comparison(a *answer.Answer, list []*answer.Option, v Voice) Table {
	t := Table{Title: 1, Columns: []Column{{}}}
	for _, o := range list {
		t.Columns = append(t.Columns, Column{Head: o.ID})
	}
	add := func(name string, cell func(*answer.Option) string) {
		row := Row{Cells: []string{name}}
		some := false
		for _, o := range list {
			c := cell(o)
			if c == "" {
				c = nothing
			}
			some = some || c != nothing
			row.Cells = append(row.Cells, c)
		}
		if some {
			t.Rows = append(t.Rows, row)
		}
	}
	add("trade name", func(o *answer.Option) string { return deref(o.Name) })
	add("verdict", func(o *answer.Option) string { return o.Verdict })
	figure := func(name string, cell func(*answer.Option) string) {
		add(name, func(o *answer.Option) string {
			if !counted(o) {
				return nothing
			}
			return cell(o)
		})
	}
	figure("points", func(o *answer.Option) string { return Points(o.Points) })
	figure("work", work)
	for _, c := range a.Criteria {
		figure(c.ID, func(o *answer.Option) string { return v.score(o, c.ID) })
	}
	for _, name := range pickNames(list) {
		figure(name, func(o *answer.Option) string { return picked(o, name) })
	}
	for _, d := range dimensions(list) {
		add(d.Name, func(o *answer.Option) string { return v.target(o, d.ID) })
	}
	return t
}

// score says a score and the points it earns.
func (v Voice) score(o *answer.Option, id string) string {
	s, ok := o.Scores[id]
	if !ok {
		return nothing
	}
	return v.Share(s.Value, s.Dim) + ", " + Points(s.Points) + " points"
}

// dimensions are those of all the options, in the order they come.
func dimensions(list []*answer.Option) []answer.Dimension {
	var out []answer.Dimension
	seen := map[string]bool{}
	for _, o := range list {
		for _, d := range o.Dimensions {
			if !seen[d.ID] {
				seen[d.ID] = true
				out = append(out, d)
			}
		}
	}
	return out
}

func (v Voice) target(o *answer.Option, id string) string {
	for i := range o.Dimensions {
		if d := &o.Dimensions[i]; d.ID == id {
			_, t, _ := v.Limits(d.Lower, d.Target, d.Upper)
			return t
		}
	}
	return nothing
}

func deref(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}
