package knowledge_test

import (
	"errors"
	"fmt"
	"strings"

	"wornfit/knowledge"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// written finds the text of an expression in its file.
type written map[string][]string

func (w written) text(at fault.Place) (string, error) {
	lines, ok := w[at.File]
	if !ok {
		data, err := knowledge.Embedded.ReadFile(at.File)
		if err != nil {
			return "", err
		}
		lines = strings.Split(string(data), "\n")
		w[at.File] = lines
	}
	if at.Line < 1 || at.Line > len(lines) {
		return "", fmt.Errorf("%s has no line %d", at.File, at.Line)
	}
	runes := []rune(lines[at.Line-1])
	from, to := at.Column-1, at.Column-1+max(at.Width, 1)
	if from < 0 || to > len(runes) {
		return "", fmt.Errorf("%s is outside its line", at)
	}
	return string(runes[from:to]), nil
}

// meant is the scope an expression was checked in, as its own nodes tell it.
type meant struct {
	names  map[string]lang.Type
	funcs  map[string]*lang.Func
	tables map[string][]link.Column
}

func meaning(e *lang.Expr, in *link.Input) meant {
	m := meant{map[string]lang.Type{}, map[string]*lang.Func{}, in.Tables}
	var walk func(*lang.Expr)
	walk = func(e *lang.Expr) {
		switch e.Op {
		case lang.Name:
			m.names[e.Name] = e.Type
		case lang.Call:
			m.funcs[e.Name] = e.Func
		}
		for _, a := range e.Args {
			walk(a)
		}
	}
	walk(e)
	return m
}

func (m meant) Name(n string) (lang.Type, bool) {
	if t, ok := m.names[n]; ok {
		return t, true
	}
	i := strings.LastIndexByte(n, '.')
	if i < 0 {
		return lang.Type{}, false
	}
	row, ok := m.names[n[:i]]
	if !ok || row.Kind != lang.Row {
		return lang.Type{}, false
	}
	for _, c := range m.tables[row.Table] {
		if c.Name == n[i+1:] {
			return c.Type, true
		}
	}
	return lang.Type{}, false
}

func (m meant) Func(n string) (*lang.Func, bool) { f, ok := m.funcs[n]; return f, ok }
func (m meant) Near() []string                   { return nil }

// referee is expr's own VM over the text as it stands in the file.
type referee struct {
	judge  *lang.Judge
	names  []string
	types  []lang.Type
	values map[string]any
	words  *lang.Words // of the result, when it is a word
}

// refereeOf compiles what an expression says in its file. What no file says, a
// need made of a feature, is `not` and its name.
func refereeOf(w written, x *link.Lowered, in *link.Input) (*referee, error) {
	text, err := w.text(x.Expr.At)
	if err != nil {
		return nil, err
	}
	if e := x.Expr; e.Op == lang.Not && e.Args[0].Op == lang.Name && e.Args[0].At == e.At {
		text = "not " + e.Args[0].Name
	}
	src, faults := lang.Parse(lang.Text{Source: text, At: x.Expr.At})
	if err := faults.Err(); err != nil {
		return nil, fmt.Errorf("%q: %w", text, err)
	}
	r := &referee{values: map[string]any{}, words: x.Expr.Type.Words}
	if r.judge, err = src.RefereeAs(meaning(x.Expr, in), x.Expr.Type); err != nil {
		return nil, fmt.Errorf("%q: %w", text, err)
	}
	r.judge.Names(func(name string, of lang.Type) { r.names, r.types = append(r.names, name), append(r.types, of) })
	return r, nil
}

// run gives the VM's value for the names' registers, words as their codes;
// decided is false where nothing finite comes out.
func (r *referee) run(x *link.Lowered, reg []float64) (v float64, decided bool, err error) {
	for i, name := range r.names {
		at := 0.0 // of a branch that is shut off in this option: not looked at
		if n, ok := x.Names[name]; ok {
			at = reg[n]
		}
		switch t := r.types[i]; t.Kind {
		case lang.YesNo:
			if at != at {
				return 0, false, nil
			}
			r.values[name] = at > 0
		case lang.Word:
			if !(at >= 0 && int(at) < len(t.Words.List)) {
				return 0, false, nil
			}
			r.values[name] = t.Words.List[int(at)]
		default:
			r.values[name] = at
		}
	}
	out, err := r.judge.Run(r.values)
	switch {
	case errors.Is(err, lang.ErrUndecided):
		return 0, false, nil
	case err != nil:
		return 0, false, err
	}
	switch out := out.(type) {
	case float64:
		return out, true, nil
	case bool:
		if out {
			return 1, true, nil
		}
		return 0, true, nil
	case string:
		code, ok := r.words.Code(out)
		if !ok {
			return 0, false, fmt.Errorf("%q is no word of %s", out, r.words.Name)
		}
		return code, true, nil
	}
	return 0, false, fmt.Errorf("the VM gave %T", out)
}
