package render

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// Ids over narrow columns break at their hyphens and are never cut short.
func TestNoHeadIsCutShort(t *testing.T) {
	ids := strings.Fields("shaft-replace+hub-replace shaft-buy+hub-replace shaft-braze+hub-true-up shaft-leave+hub-true-up shaft-true-up+hub-bush-press shaft-turn-round+hub-thin-bush")
	cells := []string{"ruled out", "-", "12.3 h", "works with care", "10 in lathe", "oversize-mate"}
	r := rand.New(rand.NewPCG(1, 2))
	for range 3000 {
		table := Table{Title: 1, Columns: []Column{{}}}
		row := Row{Cells: []string{"trade name"}}
		for range 3 + r.IntN(4) {
			table.Columns = append(table.Columns, Column{Head: ids[r.IntN(len(ids))]})
			row.Cells = append(row.Cells, cells[r.IntN(len(cells))])
		}
		table.Rows = append(table.Rows, row)
		p := NewPage(Look{Width: 60 + r.IntN(30)})
		if p.Table(table); strings.Contains(p.String(), "…") {
			t.Fatalf("at %d:\n%s", p.Width, p.String())
		}
	}
}
