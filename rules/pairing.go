package rules

import (
	"fmt"
	"math"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

// pairs is the lookup pair(shaft_face, bore_face) while it is read: a verdict
// for each two words of one column.
type pairs struct {
	verdicts *lang.Words
	column   *Entry
	table    string
	grid     []float64 // by shaft, then bore
	set      []pairAt  // how each came about; zero: not listed
	grade    basis.Grade
}

type pairAt struct {
	at    fault.Place
	grade basis.Grade
	later bool
}

// pairings reads the files of pairings/: the first says what is paired, any
// other adds pairs.
func (l *loader) pairings() {
	_, docs := l.in("pairings")
	var p *pairs
	for _, d := range docs {
		switch {
		case !d.Root.Present():
		case p == nil:
			if p = l.pairHead(d.Root); p == nil {
				return
			}
			l.pairRows(p, d)
		case d.Root.Keys("pairs"):
			l.pairRows(p, d)
		}
	}
	if p == nil {
		return
	}
	row := lang.FuncArg{Type: lang.Type{Kind: lang.Row, Table: p.table}, Column: p.column.Name}
	l.pair = &lang.Func{Kernel: p.kernel(), Args: []lang.FuncArg{row, row}, Result: lang.Type{Kind: lang.Word, Words: p.verdicts}}
}

func (l *loader) pairHead(n yamldoc.Node) *pairs {
	if !n.Keys("words", "column", "otherwise", "pairs") {
		return nil
	}
	p := &pairs{verdicts: &lang.Words{Name: "pair"}}
	for _, w := range n.Need("words", "list the verdicts").Items() {
		p.verdicts.List = append(p.verdicts.List, word(w))
	}
	column := n.Need("column", "name the column of words that is paired")
	for _, t := range sorted(l.tableNames()) {
		for _, c := range l.base.Vocabulary.Tables[t] {
			if c.Name == column.Text() && c.Type.Kind == lang.Word {
				p.table, p.column = t, c
			}
		}
	}
	if p.column == nil {
		column.Fault("no table has a column of words "+column.Text(), "name one of vocabulary/tables.yaml")
		return nil
	}
	many := len(p.column.Type.Words.List)
	p.grid, p.set = make([]float64, many*many), make([]pairAt, many*many)
	other, ok := code(n.Need("otherwise", "say what a pair not listed is"), p.verdicts)
	if !ok {
		return nil
	}
	for i := range p.grid {
		p.grid[i] = other
	}
	return p
}

func (l *loader) tableNames() []string {
	var out []string
	for t := range l.base.Vocabulary.Tables {
		out = append(out, t)
	}
	return out
}

// code reads a word of a closed list.
func code(n yamldoc.Node, words *lang.Words) (float64, bool) {
	return words.Code(n.Word(words.List...))
}

func (l *loader) pairRows(p *pairs, d *yamldoc.Doc) {
	for _, n := range d.Root.Need("pairs", "list the pairs").Items() {
		if !n.Keys("shaft", "bore", "verdict", "from", "seen") {
			continue
		}
		_, grade := l.sourced(n)
		p.grade = basis.Worse(p.grade, grade)
		v, ok := code(n.Need("verdict", "say how the two get on"), p.verdicts)
		for _, s := range n.Need("shaft", "list the shaft's").Items() {
			for _, b := range n.Need("bore", "list the bore's").Items() {
				i, good := code(s, p.column.Type.Words)
				j, fine := code(b, p.column.Type.Words)
				if ok && good && fine {
					l.pairSet(p, int(i), int(j), v, pairAt{n.At(), grade, l.files.later[d]}, b)
				}
			}
		}
	}
}

// pairSet takes down one pair. A later layer may replace a weak one.
func (l *loader) pairSet(p *pairs, shaft, bore int, verdict float64, now pairAt, n yamldoc.Node) {
	at := shaft*len(p.column.Type.Words.List) + bore
	had := p.set[at]
	list := p.column.Type.Words.List
	switch {
	case had.at.File == "", now.later && !had.later && had.grade.Weak():
		p.grid[at], p.set[at] = verdict, now
	case now.later && !had.later:
		n.Fault(fmt.Sprintf("%s in %s was read in a source, at %s", list[shaft], list[bore], had.at), "only pairs from memory or practice may be replaced")
	default:
		n.Fault(fmt.Sprintf("%s in %s is listed already, at %s", list[shaft], list[bore], had.at), "keep one of the two")
	}
}

// kernel reads the grid by two codes; NaN, which decides nothing, for no code.
func (p *pairs) kernel() kernel.Kernel {
	many := len(p.column.Type.Words.List)
	grid := slices.Clone(p.grid)
	codes := interval.I{Lo: 0, Hi: float64(many - 1)}
	at := func(i, j float64) float64 {
		if !(codes.Has(i) && codes.Has(j)) {
			return math.NaN()
		}
		return grid[int(i)*many+int(j)]
	}
	return kernel.Kernel{Name: "pair", Says: "which may rub on which",
		Args:  []kernel.Arg{{Name: "shaft", Says: "what runs inside", Range: codes}, {Name: "bore", Says: "what it runs in", Range: codes}},
		Value: func(x []float64) float64 { return at(x[0], x[1]) },
		Enclose: func(x []interval.I) interval.I {
			out := interval.None()
			a, b := x[0].Meet(codes), x[1].Meet(codes)
			for i := math.Ceil(a.Lo); i <= a.Hi; i++ {
				for j := math.Ceil(b.Lo); j <= b.Hi; j++ {
					out = out.Join(interval.Point(at(i, j)))
				}
			}
			return out
		},
		Source: "pairings", Grade: p.grade}
}
