package rules

import (
	"fmt"
	"slices"

	"wornfit/calc/interval"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// table is the rows of a folder.
type table struct {
	columns []*Entry
	rows    []link.RowValues
	texts   []map[string]string // of text columns, by row
}

// tablesOf decodes every row. Some seventy small files cost two milliseconds;
// were they ten times as many they would be decoded when first named.
func (l *loader) tablesOf() {
	names := sorted(l.tableNames())
	tables := make([]*table, len(names))
	l.apart(len(names), func(sub *loader, k int) {
		tables[k] = &table{columns: l.base.Vocabulary.Tables[names[k]]}
		ids, docs := l.in(names[k])
		for i, d := range docs {
			if d.Root.Present() {
				sub.row(tables[k], names[k], ids[i], d)
			}
		}
	})
	for k, name := range names {
		l.base.tables[name] = tables[k]
	}
	l.pairings()
}

func (l *loader) row(t *table, name, id string, d *yamldoc.Doc) {
	keys := []string{"id", "says", "also", "notes", "from", "seen"}
	for _, c := range t.columns {
		keys = append(keys, c.Name)
	}
	if !d.Root.Keys(keys...) {
		return
	}
	l.named(d.Root, id)
	r := link.RowValues{ID: id, Says: d.Root.Get("says").Text(), Columns: map[string]link.Known{}}
	texts := map[string]string{}
	for _, c := range t.columns {
		n := d.Root.Get(c.Name)
		if !n.Present() {
			if c.Usual != nil {
				r.Columns[c.Name] = link.Known{Value: c.Usual.Range, Best: c.Usual.Range.Mid(), Is: true, Grade: c.Usual.Grade, Says: "not listed; usual"}
			}
			continue
		}
		if c.Type.Kind == textKind {
			for _, x := range n.Items() {
				texts[c.Name] += x.Text() + "\n"
			}
			continue
		}
		if k, ok := l.cell(c, n, name+"/"+id+"."+c.Name); ok {
			r.Columns[c.Name] = k
		}
	}
	if name == "cautions" {
		l.sourced(d.Root)
	}
	t.rows = append(t.rows, r)
	t.texts = append(t.texts, texts)
}

// cell reads one value of a row.
func (l *loader) cell(c *Entry, n yamldoc.Node, key string) (k link.Known, ok bool) {
	switch c.Type.Kind {
	case lang.YesNo:
		yes, given := n.YesNo()
		v := 0.0
		if yes {
			v = 1
		}
		return link.Known{Value: interval.Point(v), Best: v, Is: true, Says: "listed"}, given
	case lang.Word:
		code, ok := c.Type.Words.Code(n.Text())
		if !ok {
			n.Fault(fmt.Sprintf("%q is no %s", n.Text(), c.Name), fault.DidYouMean(n.Text(), c.Type.Words.List))
		}
		return link.Known{Value: interval.Point(code), Best: code, Is: true, Says: "listed"}, ok
	}
	if n.IsScalar() {
		n.Fault("the number "+n.Text()+" has no source", "write {value: "+n.Text()+", from: KEY, seen: page}; see sources.yaml")
		return k, false
	}
	if c.bad || !n.Keys("value", "doubt", "from", "seen") {
		return k, false
	}
	from, grade := l.sourced(n)
	v := n.Need("value", "write the value with its unit")
	r, dim, ok := amount(v, c.Kind)
	if !ok {
		return k, false
	}
	doubt(n, r, dim)
	k = link.Known{Value: r, Best: r.Mid(), Is: true, Grade: grade, Says: from}
	l.cellReplaced(key, &k, c.Kind, dim)
	if !c.Range.Covers(k.Value) {
		v.Fault(v.Text()+" is outside what a "+c.Name+" can be", "check the value and its unit, or widen the range in vocabulary/tables.yaml")
		return k, false
	}
	l.base.Numbers[k.Grade]++
	return k, true
}

// Rows are the rows of a table, in the order of their files.
func (b *Base) Rows(name string) []link.RowValues {
	if t := b.tables[name]; t != nil {
		return t.rows
	}
	return nil
}

// Says is what a row is called in print; its id when it has no line.
func (b *Base) Says(name, id string) string {
	for _, r := range b.Rows(name) {
		if r.ID == id && r.Says != "" {
			return r.Says
		}
	}
	return id
}

// Has reports whether a table has a row.
func (b *Base) Has(name, id string) bool {
	return slices.ContainsFunc(b.Rows(name), func(r link.RowValues) bool { return r.ID == id })
}

// IDs lists the rows of a table.
func (b *Base) IDs(name string) []string {
	var out []string
	for _, r := range b.Rows(name) {
		out = append(out, r.ID)
	}
	return out
}

// Text is a text column of a row, "" when it has none.
func (b *Base) Text(name, id, column string) string {
	t := b.tables[name]
	if t == nil {
		return ""
	}
	for i, r := range t.rows {
		if r.ID == id {
			s := t.texts[i][column]
			if len(s) > 0 {
				s = s[:len(s)-1]
			}
			return s
		}
	}
	return ""
}
