package rules

import (
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

// tableColumns reads the columns of tables; a later layer adds to those of the
// first.
func (l *loader) tableColumns(v *Vocabulary, d *yamldoc.Doc) {
	for _, t := range d.Root.Entries() {
		v.Tables[t.Name] = append([]*Entry{}, v.Tables[t.Name]...)
		for _, c := range t.Value.Items() {
			if c.Get("all_of").Present() {
				l.allOf(v, t.Name, c)
				continue
			}
			e := l.column(t.Name, c)
			if e == nil {
				continue
			}
			for _, had := range v.Tables[t.Name] {
				if had.Name == e.Name {
					c.Get("name").Fault("the column "+e.Name+" of "+t.Name+" stands at "+had.At.String()+" already", "keep one of the two")
				}
			}
			v.Tables[t.Name] = append(v.Tables[t.Name], e)
		}
	}
}

// allOf lends a table all the columns of one before it: its rows count as rows
// of that one too, as a filler is a metal that a shaft may run on.
func (l *loader) allOf(v *Vocabulary, table string, n yamldoc.Node) {
	of := n.Get("all_of")
	columns, ok := v.Tables[of.Text()]
	if !n.Keys("all_of") || !ok || of.Text() == table {
		of.Fault("there is no table "+of.Text()+" before this one", "name a table that stands above")
		return
	}
	v.Tables[table] = append(v.Tables[table], columns...)
	v.countsAs[table] = of.Text()
}

func (l *loader) column(table string, n yamldoc.Node) *Entry {
	if !n.Keys("name", "says", "quantity", "range", "words", "table", "unknown") {
		return nil
	}
	e := &Entry{Name: n.Need("name", "every column has a name").Text(), Says: n.Need("says", "say what it means").Text(), Role: "column", At: n.At()}
	if why := lang.BadName("it." + e.Name); why != "" { // a column stands after a dot
		n.Get("name").Fault(why, "use small letters, digits and _")
	}
	l.typed(e, n)
	if u := n.Get("unknown"); u.Present() {
		l.usual(e, u)
	}
	if e.Type.Words != nil && e.Type.Words.Name == e.Name {
		e.Type.Words.Name = table + "." + e.Name
	}
	return e
}
