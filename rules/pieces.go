package rules

import (
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// pieces parts a sentence into words and {values}: {wall}, {datum.id}.
func (l *loader) pieces(sc *scope, n yamldoc.Node) []link.Piece {
	var out []link.Piece
	at, straight := n.TextAt(), n.Straight()
	for text := n.Text(); text != ""; {
		before, rest, open := strings.Cut(text, "{")
		if before != "" {
			out = append(out, link.Piece{Text: before})
		}
		if !open {
			break
		}
		value, after, closed := strings.Cut(rest, "}")
		if !closed {
			n.Fault("a { is not closed", "write {name}")
			break
		}
		at.Column += len([]rune(before)) + 1
		from := at
		if !straight {
			from = n.At()
		}
		if p, ok := l.piece(sc, value, from, n.Key); ok {
			out = append(out, p)
		}
		at.Column += len([]rune(value)) + 1
		text = after
	}
	return out
}

// piece reads one {value}: an expression, or ROW.id.
func (l *loader) piece(sc *scope, value string, at fault.Place, key string) (p link.Piece, ok bool) {
	at.Width = len([]rune(value))
	if row, is := strings.CutSuffix(value, ".id"); is {
		ok = l.quietly(func() (faults fault.List) {
			if t, known := sc.Name(row); !known || t.Kind != lang.Row {
				faults.Add(at, key, row+" is no row of a table", fault.DidYouMean(row, sc.rows()))
			}
			return faults
		})
		return link.Piece{Row: row}, ok
	}
	src, faults := lang.Parse(lang.Text{Source: value, At: at, Key: key})
	if l.faults = append(l.faults, faults...); len(faults) > 0 {
		return p, false
	}
	p.Value = sc.check(src, func(src *lang.Source) (*lang.Expr, fault.List) { return src.Infer(sc) })
	if p.Value != nil && p.Value.Type.Kind == lang.Row {
		l.faults.Add(at, key, value+" is a row of "+p.Value.Type.Table, "write {"+value+".id}, or name a column")
		return p, false
	}
	return p, p.Value != nil
}
