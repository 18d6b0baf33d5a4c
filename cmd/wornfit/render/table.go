package render

import (
	"regexp"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// Column is a column of a table.
type Column struct {
	Head  string
	Right bool // numbers stand to the right
}

// Row is a row; Under is said below it across the whole width.
type Row struct {
	Cells []string
	Under []string
}

// Table is drawn as a table where there is room, and as one card a row where
// there is not. The first Title columns head a card.
type Table struct {
	Columns []Column
	Rows    []Row
	Title   int
}

const (
	indent = 2
	gap    = 2 // blanks between columns
)

// Table draws a table or its cards.
func (p *Page) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	t = t.plain(p.ASCII)
	if widths, fits := p.fits(t); fits {
		p.draw(t, widths)
		return
	}
	p.cards(t)
}

// fits finds the widths of a table's columns, if it is to be drawn as a table.
func (p *Page) fits(t Table) (widths []int, fits bool) {
	if p.Width < TableFrom {
		return nil, false
	}
	return t.fit(p.Width - indent)
}

func (t Table) plain(ascii bool) Table {
	out := Table{Title: t.Title, Columns: make([]Column, len(t.Columns)), Rows: make([]Row, len(t.Rows))}
	copy(out.Columns, t.Columns)
	for i := range out.Columns {
		out.Columns[i].Head = Plain(t.Columns[i].Head, ascii)
	}
	for i, r := range t.Rows {
		for _, c := range r.Cells {
			out.Rows[i].Cells = append(out.Rows[i].Cells, Plain(c, ascii))
		}
		out.Rows[i].Under = r.Under
	}
	return out
}

// fit shares the room out: every column as wide as its widest cell or head; if
// that is too much, heads wrap first, then the widest cells, and names break at
// their hyphens last. A cell wraps only where its text may break.
func (t Table) fit(room int) (widths []int, fits bool) {
	if widths, fits = t.fitTo(room, atSign); fits {
		return widths, true
	}
	return t.fitTo(room, atHyphen)
}

// fitTo is fit with words that may break at these places.
func (t Table) fitTo(room int, at *regexp.Regexp) (widths []int, fits bool) {
	room -= gap * (len(t.Columns) - 1)
	least, cells := make([]int, len(t.Columns)), make([]int, len(t.Columns))
	widths = make([]int, len(t.Columns))
	sum := 0
	for i, c := range t.Columns {
		least[i] = longest(c.Head, at)
		for _, r := range t.Rows {
			least[i] = max(least[i], longest(r.Cells[i], at))
			cells[i] = max(cells[i], width(r.Cells[i]))
		}
		widths[i] = max(cells[i], width(c.Head))
		sum += widths[i]
	}
	for ; sum > room; sum-- {
		i := givesWay(widths, least, cells)
		if i < 0 {
			return nil, false
		}
		widths[i]--
	}
	return widths, true
}

// givesWay is the column to narrow next; -1 when none has room to give.
func givesWay(widths, least, cells []int) int {
	widest := -1
	for i := range widths {
		if widths[i] <= least[i] {
			continue
		}
		if widths[i] > cells[i] { // only the head needs the room
			return i
		}
		if widest < 0 || widths[i] > widths[widest] {
			widest = i
		}
	}
	return widest
}

// draw has tablewriter set the lines of cells that are wrapped here already,
// because only here it is known what may not be broken, and puts what is said
// under a row in between.
func (p *Page) draw(t Table, widths []int) {
	var lines strings.Builder
	tab := p.tablewriter(&lines, t, widths)
	head, tall := p.cells(t, widths, heads(t))
	tab.Header(head)
	heights := []int{tall + 1} // and the rule under it
	for _, r := range t.Rows {
		cells, tall := p.cells(t, widths, r.Cells)
		if err := tab.Append(cells); err != nil {
			panic(err)
		}
		heights = append(heights, tall)
	}
	if err := tab.Render(); err != nil {
		panic(err)
	}
	drawn := strings.Split(strings.TrimRight(lines.String(), "\n"), "\n")
	for i, h := range heights {
		for _, l := range drawn[:min(h, len(drawn))] {
			p.line(indent, strings.TrimRight(l, " "))
		}
		drawn = drawn[min(h, len(drawn)):]
		if i > 0 {
			for _, u := range t.Rows[i-1].Under {
				p.Para(indent+min(widths[0]+gap, 6), u)
			}
		}
	}
}

func heads(t Table) []string {
	out := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = c.Head
	}
	return out
}

// cells wraps the cells of a row; tall is the lines the row takes.
func (p *Page) cells(t Table, widths []int, row []string) (out []any, tall int) {
	for i, c := range row {
		lines := wrap(c, widths[i])
		tall = max(tall, len(lines))
		style := styleOf(c)
		for k := range lines {
			if l := lines[k]; t.Columns[i].Right {
				lines[k] = strings.Repeat(glue, widths[i]-width(l)) + p.paint(style, l)
			} else {
				lines[k] = p.paint(style, l)
			}
		}
		out = append(out, strings.Join(lines, "\n"))
	}
	return out, tall
}

func (p *Page) tablewriter(w *strings.Builder, t Table, widths []int) *tablewriter.Table {
	rule := "─"
	if p.ASCII {
		rule = "-"
	}
	per := tw.NewMapper[int, int]()
	for i, n := range widths {
		if i < len(widths)-1 {
			n += gap
		}
		per.Set(i, n)
	}
	left := tw.CellConfig{
		Formatting:   tw.CellFormatting{AutoWrap: tw.WrapNone, AutoFormat: tw.Off},
		Alignment:    tw.CellAlignment{Global: tw.AlignLeft},
		Padding:      tw.CellPadding{Global: tw.Padding{Left: "", Right: "", Overwrite: true}},
		ColMaxWidths: tw.CellWidth{PerColumn: per},
	}
	return tablewriter.NewTable(w,
		tablewriter.WithConfig(tablewriter.Config{Header: left, Row: left, Widths: tw.CellWidth{PerColumn: per}}),
		tablewriter.WithHeaderAutoFormat(tw.Off), tablewriter.WithTrimSpace(tw.Off), tablewriter.WithEastAsian(tw.Off),
		tablewriter.WithRenderer(renderer.NewBlueprint()),
		tablewriter.WithRendition(tw.Rendition{
			Borders: tw.Border{Left: tw.Off, Right: tw.Off, Top: tw.Off, Bottom: tw.Off},
			Symbols: tw.NewSymbolCustom("rule").WithRow(rule).WithColumn("").WithCenter(rule).WithMidLeft("").WithMidRight(""),
			Settings: tw.Settings{Separators: tw.Separators{BetweenColumns: tw.Off, BetweenRows: tw.Off, ShowHeader: tw.On},
				Lines: tw.Lines{ShowHeaderLine: tw.On}},
		}))
}

// cards writes each row as a title and its cells by name.
func (p *Page) cards(t Table) {
	for i, r := range t.Rows {
		if i > 0 {
			p.Blank()
		}
		var title []string
		for _, c := range r.Cells[:t.Title] {
			if c != "" {
				title = append(title, c)
			}
		}
		p.Item(indent, "", strings.Join(title, "  "))
		var names, texts []string
		for k, c := range r.Cells[t.Title:] {
			if c != "" && c != nothing {
				names, texts = append(names, t.Columns[t.Title+k].Head), append(texts, c)
			}
		}
		p.Pairs(2*indent, names, texts)
		for _, u := range r.Under {
			p.Para(2*indent, u)
		}
	}
}

// nothing fills a cell that has nothing to say.
const nothing = "-"
