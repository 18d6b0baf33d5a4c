package rules

import (
	"strings"

	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/yamldoc"
)

var entryKeys = []string{"name", "says", "role", "quantity", "range", "words", "table", "unknown", "changeable", "ask", "with", "example"}

func (l *loader) entry(v *Vocabulary, n yamldoc.Node) {
	if !n.Keys(entryKeys...) {
		return
	}
	e := &Entry{Name: n.Need("name", "every entry has a dotted name").Text(), Says: n.Need("says", "say what it means in a line").Text(),
		Role: n.Need("role", "write given, reading, shop or wish").Word("given", "reading", "shop", "wish"),
		Ask:  n.Get("ask").Text(), With: n.Get("with").Text(), Example: n.Get("example").Text(), At: n.At()}
	if e.Name == "" {
		return
	}
	first, _, dotted := strings.Cut(e.Name, ".")
	switch why := lang.BadName(e.Name); {
	case why != "":
		n.Get("name").Fault(why, "")
	case !dotted || first == "it" || first == "joint" || first == "option" || first == "total" || first == "joined":
		n.Get("name").Fault("the name "+e.Name+" does not say whose it is", "write it with a dot, such as hub."+e.Name[strings.LastIndexByte(e.Name, '.')+1:])
	}
	if had, again := v.byName[e.Name]; again {
		n.Get("name").Fault(e.Name+" stands at "+had.At.String()+" already", "keep one of the two")
		return
	}
	l.typed(e, n)
	if c := n.Get("changeable").Text(); c != "no" {
		e.Changeable = c
	}
	switch u := n.Need("unknown", "write whole range, or {value: ..., from: ..., seen: ...}"); {
	case u.IsMap():
		l.usual(e, u)
	default:
		u.Word("whole range", "every word", "every row")
	}
	l.example(e, n.Get("example"))
	v.byName[e.Name] = e
	v.order = append(v.order, e.Name)
	l.firstWords[first] = true
}

// example tells an example that a case could not say.
func (l *loader) example(e *Entry, n yamldoc.Node) {
	if !n.Present() || e.bad {
		return
	}
	switch e.Type.Kind {
	case lang.YesNo:
		n.YesNo()
	case lang.Word:
		n.Word(e.Type.Words.List...)
	case lang.NumberKind:
		if r, _, ok := amount(n, e.Kind); ok && !e.Range.Covers(r) {
			n.Fault("the example "+n.Text()+" is outside the range "+e.Name+" may have", "correct one of the two")
		}
	}
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
		}
		if !ok {
			e.bad = true
			return
		}
		e.Kind = kind
		e.Type = lang.Type{Kind: lang.NumberKind, Dim: dim}
		if r, _, ok := amount(n.Need("range", "write the sane range, such as 3 mm to 2 m"), kind); ok {
			e.Range = r
		} else {
			e.bad = true
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
		if table, column, ok := strings.Cut(n.Text(), "."); ok {
			for _, c := range l.base.Vocabulary.Tables[table] {
				if c.Name == column && c.Type.Words != nil {
					e.Range, e.WordSays = c.Range, c.WordSays
					return c.Type.Words
				}
			}
		}
		n.Fault("there is no list of words "+n.Text(), fault.DidYouMean(n.Text(), l.base.Vocabulary.order))
		return &lang.Words{Name: e.Name}
	}
	w := &lang.Words{Name: e.Name}
	e.WordSays = map[string]string{}
	for _, x := range n.Entries() {
		if says, remedy := badWord(x.Name); says != "" {
			l.faults.Add(x.KeyAt, x.Value.Key, says, remedy)
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
	u := &Usual{}
	u.From, u.Grade = l.sourced(n)
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
		r, _, ok := amount(v, e.Kind)
		if !ok {
			return
		}
		u.Range = r
		l.base.Numbers[u.Grade]++
	}
	e.Usual = u
}
