package rules

import (
	"fmt"

	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

// vocabulary reads the names, the tables' columns and the kinds of neighbour.
func (l *loader) vocabulary() {
	v := &Vocabulary{byName: map[string]*Entry{}, Tables: map[string][]*Entry{}}
	l.base.Vocabulary = v
	ids, docs := l.in("vocabulary")
	for i, d := range docs {
		switch {
		case !d.Root.Present():
		case ids[i] == "tables":
			for _, t := range d.Root.Entries() {
				for _, c := range t.Value.Items() {
					if e := l.column(t.Name, c); e != nil {
						v.Tables[t.Name] = append(v.Tables[t.Name], e)
					}
				}
			}
		case ids[i] == "near":
			for _, k := range d.Root.Get("kinds").Items() {
				l.base.Kinds = append(l.base.Kinds, k.Text())
			}
		default:
			for _, n := range d.Root.Items() {
				l.entry(v, n)
			}
		}
	}
	l.optionWords()
}

func (l *loader) entry(v *Vocabulary, n yamldoc.Node) {
	if !n.Keys("name", "says", "role", "quantity", "range", "words", "table", "unknown", "changeable", "ask", "with", "example") {
		return
	}
	e := &Entry{Name: n.Need("name", "every entry has a dotted name").Text(), Says: n.Need("says", "say what it means in a line").Text(),
		Role: n.Need("role", "write given, reading, shop or wish").Word("given", "reading", "shop", "wish"),
		Ask:  n.Get("ask").Text(), With: n.Get("with").Text(), Example: n.Get("example").Text(), At: n.At()}
	if why := lang.BadName(e.Name); why != "" {
		n.Get("name").Fault(why, "use small letters, digits and _")
	}
	if had, again := v.byName[e.Name]; again {
		n.Get("name").Fault(e.Name+" stands in "+had.At.String()+" already", "keep one of the two")
		return
	}
	l.typed(e, n)
	if c := n.Get("changeable").Text(); c != "no" {
		e.Changeable = c
	}
	if u := n.Get("unknown"); u.IsMap() {
		l.usual(e, u)
	}
	v.byName[e.Name] = e
	v.order = append(v.order, e.Name)
}

// typed reads what kind of value an entry or column is.
func (l *loader) typed(e *Entry, n yamldoc.Node) {
	kind := n.Need("quantity", "write a kind of quantity, word, yes-no or row").Text()
	switch kind {
	case "word":
		e.Type = lang.Type{Kind: lang.Word, Words: l.list(e, n.Need("words", "list the words with what each means"))}
	case "yes-no":
		e.Type = lang.Type{Kind: lang.YesNo}
		e.Range = interval.I{Lo: 0, Hi: 1}
	case "row":
		e.Type = lang.Type{Kind: lang.Row, Table: n.Need("table", "name the table").Text()}
	case "text":
		e.Type = lang.Type{Kind: textKind}
	default:
		dim, ok := quantity.Kinds[kind]
		if !ok && kind != "" {
			n.Get("quantity").Fault("there is no kind of quantity "+kind, fault.DidYouMean(kind, kindWords()))
			return
		}
		e.Kind = kind
		e.Type = lang.Type{Kind: lang.NumberKind, Dim: dim}
		if r, _, ok := amount(n.Need("range", "write the sane range, such as 3 mm to 2 m"), kind, &dim); ok {
			e.Range = r
		}
	}
}

// textKind marks a column that is only printed.
const textKind = lang.Kind(255)

func kindWords() []string {
	out := []string{"word", "yes-no", "row"}
	for k := range quantity.Kinds {
		out = append(out, k)
	}
	return sorted(out)
}

func (l *loader) list(e *Entry, n yamldoc.Node) *lang.Words {
	if n.IsScalar() { // the list of another entry
		if of, ok := l.base.Vocabulary.byName[n.Text()]; ok && of.Type.Words != nil {
			e.Range, e.WordSays = of.Range, of.WordSays
			return of.Type.Words
		}
		n.Fault("there is no list of words "+n.Text(), fault.DidYouMean(n.Text(), l.base.Vocabulary.order))
		return &lang.Words{Name: e.Name}
	}
	w := &lang.Words{Name: e.Name}
	e.WordSays = map[string]string{}
	for _, x := range n.Entries() {
		if yamlWord(x.Name) {
			l.faults.Add(x.KeyAt, n.Key, x.Name+" is no text to YAML", "choose another word")
		}
		w.List = append(w.List, x.Name)
		e.WordSays[x.Name] = x.Value.Text()
	}
	e.Range = interval.I{Lo: 0, Hi: float64(len(w.List) - 1)}
	return w
}

// usual reads what an unknown stands for in place of its whole range.
func (l *loader) usual(e *Entry, n yamldoc.Node) {
	if !n.Keys("value", "from", "seen") {
		return
	}
	u := &Usual{From: l.from(n), Grade: l.seen(n)}
	v := n.Need("value", "write what it usually is")
	switch e.Type.Kind {
	case lang.YesNo:
		yes, _ := v.YesNo()
		if yes {
			u.Range = interval.Point(1)
		}
	case lang.Word:
		c, ok := e.Type.Words.Code(v.Text())
		if !ok {
			v.Fault(v.Text()+" is no word of "+e.Name, fault.DidYouMean(v.Text(), e.Type.Words.List))
		}
		u.Range = interval.Point(c)
	default:
		r, _, ok := amount(v, e.Kind, &e.Type.Dim)
		if !ok {
			return
		}
		u.Range = r
	}
	e.Usual = u
}

func (l *loader) column(table string, n yamldoc.Node) *Entry {
	if !n.Keys("name", "says", "quantity", "range", "words", "table") {
		return nil
	}
	e := &Entry{Name: n.Need("name", "every column has a name").Text(), Says: n.Need("says", "say what it means").Text(), Role: "column", At: n.At()}
	if why := lang.BadName(e.Name); why != "" {
		n.Get("name").Fault(why, "use small letters, digits and _")
	}
	l.typed(e, n)
	if e.Type.Words != nil && e.Type.Words.Name == e.Name {
		e.Type.Words.Name = table + "." + e.Name
	}
	return e
}

// yamlWord reports whether YAML or expr may read a word as something else.
func yamlWord(w string) bool {
	switch w {
	case "yes", "no", "on", "off", "true", "false", "null", "~", "y", "n":
		return true
	}
	return w == "" || w[0] >= '0' && w[0] <= '9'
}

// optionWords are the words that tell which parts an option is made of.
func (l *loader) optionWords() {
	for side, name := range map[string]string{"shaft": "option.shaft", "hub": "option.hub", "purpose": "option.purpose"} {
		ids, _ := l.in(side)
		l.words[name] = &lang.Words{Name: name, List: ids}
	}
	holds, _ := l.in("hold")
	for _, joint := range []string{"fit", "bush", "sleeve"} {
		name := fmt.Sprintf("option.%s", joint)
		l.words[name] = &lang.Words{Name: name, List: append([]string{"none"}, holds...)}
	}
}
