package rules

import (
	"fmt"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
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

// rowTables are the folders whose files are rows.
var rowTables = []string{"materials", "fillers", "machines", "gauges", "cautions", "clearances", "ways"}

// tablesOf decodes every row. Some thirty small files cost a millisecond; were
// they ten times as many they would be decoded when first named.
func (l *loader) tablesOf() {
	for _, name := range rowTables {
		t := &table{columns: l.base.Vocabulary.Tables[name]}
		ids, docs := l.in(name)
		for i, d := range docs {
			if d.Root.Present() {
				l.row(t, name, ids[i], d)
			}
		}
		l.base.tables[name] = t
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
	if got := d.Root.Need("id", "the file's name without .yaml").Text(); got != id && got != "" {
		d.Root.Get("id").Fault("the id "+got+" is not the file's name", "write "+id)
	}
	r := link.RowValues{ID: id, Says: d.Root.Get("says").Text(), Columns: map[string]link.Known{}}
	texts := map[string]string{}
	for _, c := range t.columns {
		n := d.Root.Get(c.Name)
		if !n.Present() {
			continue
		}
		if c.Type.Kind == textKind {
			for _, x := range n.Items() {
				texts[c.Name] += x.Text() + "\n"
			}
			continue
		}
		if k, ok := l.cell(c, n); ok {
			r.Columns[c.Name] = k
		}
	}
	if name == "cautions" {
		l.from(d.Root)
		l.seen(d.Root)
	}
	t.rows = append(t.rows, r)
	t.texts = append(t.texts, texts)
}

// cell reads one value of a row.
func (l *loader) cell(c *Entry, n yamldoc.Node) (link.Known, bool) {
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
	if !n.Keys("value", "doubt", "from", "seen") {
		return link.Known{}, false
	}
	from, grade := l.from(n), l.seen(n)
	v := n.Need("value", "write the value with its unit")
	r, _, ok := amount(v, c.Kind, &c.Type.Dim)
	if ok && (r.Lo < c.Range.Lo || r.Hi > c.Range.Hi) {
		v.Fault(v.Text()+" is outside what a "+c.Name+" can be", "check the value and its unit, or widen the range in vocabulary/tables.yaml")
	}
	return link.Known{Value: r, Best: r.Mid(), Is: true, Grade: grade, Says: from}, ok
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

// pairings makes the lookup pair(shaft_face, bore_face).
func (l *loader) pairings() {
	d, ok := l.docs["pairings/faces.yaml"]
	if !ok || !d.Root.Present() || !d.Root.Keys("words", "column", "otherwise", "pairs") {
		return
	}
	words := &lang.Words{Name: "pair"}
	for _, w := range d.Root.Need("words", "list the verdicts").Items() {
		words.List = append(words.List, w.Text())
	}
	column := d.Root.Need("column", "name the column of materials that is paired").Text()
	var family *Entry
	for _, c := range l.base.Vocabulary.Tables["materials"] {
		if c.Name == column && c.Type.Kind == lang.Word {
			family = c
		}
	}
	if family == nil {
		d.Root.Get("column").Fault("materials have no column of words "+column, "name one, such as family")
		return
	}
	n := len(family.Type.Words.List)
	code := func(x yamldoc.Node, w *lang.Words) int {
		c, ok := w.Code(x.Text())
		if !ok {
			x.Fault(fmt.Sprintf("%q is not a word known here", x.Text()), fault.DidYouMean(x.Text(), w.List))
			return -1
		}
		return int(c)
	}
	grid := make([]float64, n*n)
	other := code(d.Root.Need("otherwise", "say what a pair not listed is"), words)
	for i := range grid {
		grid[i] = float64(other)
	}
	for _, p := range d.Root.Get("pairs").Items() {
		p.Keys("shaft", "bore", "verdict", "from", "seen")
		l.from(p)
		l.seen(p)
		v := code(p.Get("verdict"), words)
		for _, s := range p.Get("shaft").Items() {
			for _, b := range p.Get("bore").Items() {
				if i, j := code(s, family.Type.Words), code(b, family.Type.Words); i >= 0 && j >= 0 && v >= 0 {
					grid[i*n+j] = float64(v)
				}
			}
		}
	}
	row := lang.FuncArg{Type: lang.Type{Kind: lang.Row, Table: "materials"}, Column: column}
	l.pair = &lang.Func{Kernel: lookup("pair", n, len(words.List), grid), Args: []lang.FuncArg{row, row}, Result: lang.Type{Kind: lang.Word, Words: words}}
}

// lookup is a kernel that reads a grid of words by two codes.
func lookup(name string, n, words int, grid []float64) kernel.Kernel {
	codes := interval.I{Lo: 0, Hi: float64(n - 1)}
	at := func(x []float64) float64 {
		i, j := int(x[0]), int(x[1])
		if i < 0 || j < 0 || i >= n || j >= n {
			return float64(words) // no word: decides nothing
		}
		return grid[i*n+j]
	}
	return kernel.Kernel{Name: name, Says: "which metals may rub on which", Args: []kernel.Arg{{Name: "shaft", Range: codes}, {Name: "bore", Range: codes}},
		Value: at, Source: "pairings/faces.yaml", Grade: basis.Practice,
		Enclose: func(x []interval.I) interval.I {
			out := interval.None()
			for i := max(x[0].Lo, 0); i <= min(x[0].Hi, codes.Hi); i++ {
				for j := max(x[1].Lo, 0); j <= min(x[1].Hi, codes.Hi); j++ {
					out = out.Join(interval.Point(at([]float64{i, j})))
				}
			}
			return out
		}}
}
