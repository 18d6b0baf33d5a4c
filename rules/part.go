package rules

import (
	"fmt"
	"slices"
	"strings"

	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// draft is a part file while it is read.
type draft struct {
	part    *link.Part
	doc     *yamldoc.Doc
	side    string
	schema  string
	numbers map[string]*link.Number
	picks   map[string]string // the table or list each is from
	dims    map[string]bool
	defines map[string]*define
	joints  map[string]bool
}

// define is a named value: its type is what its expression comes to.
type define struct {
	id    string
	node  yamldoc.Node
	src   *lang.Source
	row   string
	expr  *lang.Expr
	state int // 0 not yet looked at, 1 being looked at, 2 done
}

var sides = []struct {
	folder, schema string
	side           link.Side
}{{"shaft", "part/1", link.Shaft}, {"hub", "part/1", link.Hub}, {"hold", "hold/1", link.Hold}, {"purpose", "purpose/1", link.Purpose}}

// parts reads every part file: first all their names, then what is said of them.
func (l *loader) parts() {
	for _, s := range sides {
		ids, docs := l.in(s.folder)
		for i, d := range docs {
			if d.Root.Present() {
				l.drafts = append(l.drafts, l.draft(s.folder, s.schema, s.side, ids[i], d))
			}
		}
	}
	l.common()
	for _, d := range l.drafts {
		l.fill(d)
	}
}

var partKeys = map[link.Side][]string{
	link.Shaft:   {"side", "metal", "finishes", "choose", "joints", "aim", "features"},
	link.Hub:     {"side", "metal", "finishes", "choose", "joints", "aim", "features"},
	link.Hold:    {"choose", "aim", "fit_only"},
	link.Purpose: {"holds", "aim"},
}

var everyPart = []string{"schema", "id", "says", "numbers", "needs", "pick", "define", "limits", "scores", "steps", "mistakes", "cautions"}

func (l *loader) draft(folder, schema string, side link.Side, id string, doc *yamldoc.Doc) *draft {
	root := doc.Root
	d := &draft{doc: doc, side: folder, schema: schema, numbers: map[string]*link.Number{}, picks: map[string]string{},
		dims: map[string]bool{}, defines: map[string]*define{}, joints: map[string]bool{},
		part: &link.Part{ID: id, File: doc.File, Side: side}}
	root.Keys(append(slices.Clone(everyPart), partKeys[side]...)...)
	root.Need("schema", "write "+schema).Word(schema)
	if got := root.Need("id", "the file's name without .yaml").Text(); got != "" && got != id {
		root.Get("id").Fault("the id "+got+" is not the file's name", "write "+id)
	}
	if yamlWord(id) || lang.Reserved(id) {
		root.Get("id").Fault("the id "+id+" is no text to YAML, or a word of the language", "choose another name")
	}
	d.part.Says = root.Need("says", "say what is done in a line").Text()
	if side == link.Shaft || side == link.Hub {
		root.Need("side", "write "+folder).Word(folder)
		d.metal(root)
	}
	if side == link.Purpose {
		h := root.Need("holds", "write fit when the finished fit is held, none when it runs").Word("fit", "none")
		d.part.Static = h == "fit"
	}
	d.part.FitOnly, _ = root.Get("fit_only").YesNo()
	l.names(d)
	return d
}

func (d *draft) metal(root yamldoc.Node) {
	words := []string{"kept", "less", "more"}
	w := root.Need("metal", "write kept, less or more").Word(words...)
	if i := slices.Index(words, w); i >= 0 {
		d.part.Metal = link.Metal(i)
	}
	d.part.Finishes = root.Get("finishes").Text()
	if f := d.part.Finishes; f != "" && !root.Get("choose").Get(f).Present() {
		root.Get("finishes").Fault(f+" is not chosen in this file", "name a dimension under choose")
	}
}

// names takes down every private name, so that expressions may use them in any order.
func (l *loader) names(d *draft) {
	root := d.doc.Root
	taken := map[string]fault.Place{}
	name := func(e yamldoc.Entry) bool {
		if why := lang.BadName(e.Name); why != "" {
			l.faults.Add(e.KeyAt, e.Value.Key, why, "use small letters, digits and _")
			return false
		}
		if lang.Reserved(e.Name) {
			l.faults.Add(e.KeyAt, e.Value.Key, e.Name+" is a word of the rule language", "choose another name")
			return false
		}
		if _, ok := l.base.Vocabulary.Entry(e.Name); ok {
			l.faults.Add(e.KeyAt, e.Value.Key, e.Name+" is a name of the vocabulary", "choose another name")
		}
		if had, again := taken[e.Name]; again {
			l.faults.Add(e.KeyAt, e.Value.Key, fmt.Sprintf("%s is already the name of something on line %d", e.Name, had.Line), "choose another name")
			return false
		}
		taken[e.Name] = e.KeyAt
		return true
	}
	for _, e := range root.Get("numbers").Entries() {
		if name(e) {
			if n, ok := l.number(e.Name, e.Value); ok {
				d.part.Numbers = append(d.part.Numbers, n)
			}
		}
	}
	for i := range d.part.Numbers {
		d.numbers[d.part.Numbers[i].ID] = &d.part.Numbers[i]
	}
	for _, e := range root.Get("pick").Entries() {
		if name(e) {
			d.picks[e.Name] = e.Value.Need("from", "name a table, or shop.machines").Text()
		}
	}
	for _, e := range root.Get("choose").Entries() {
		if name(e) {
			d.dims[e.Name] = true
		}
	}
	for _, e := range root.Get("joints").Entries() {
		if name(e) {
			d.joints[e.Name] = true
		}
	}
	for _, e := range root.Get("define").Entries() {
		if name(e) {
			d.defines[e.Name] = l.defined(d, e)
		}
	}
}

func (l *loader) defined(d *draft, e yamldoc.Entry) *define {
	e.Value.Keys("is", "says", "row")
	out := &define{id: e.Name, node: e.Value}
	if r := e.Value.Get("row"); r.Present() {
		out.row = r.Text()
		return out
	}
	out.src = l.parse(e.Value.Need("is", "write an expression, or row: NAME"))
	return out
}

// parse reads a scalar as an expression.
func (l *loader) parse(n yamldoc.Node) *lang.Source {
	text := n.Text()
	at := n.At()
	if n.Quoted() {
		at.Column++
	}
	if n.Block() {
		n.Fault("an expression stands in a block", "write it on one line in single quotes")
	}
	if n.Comment() != "" && !n.Quoted() {
		n.Fault("a comment ends an expression that is not quoted: part of it may be lost", "put the expression in single quotes")
	}
	if text == "" {
		return nil
	}
	src, faults := lang.Parse(lang.Text{Source: text, At: at, Key: n.Key})
	l.faults = append(l.faults, faults...)
	if len(faults) > 0 {
		return nil
	}
	return src
}

// fill reads what is said of the names.
func (l *loader) fill(d *draft) {
	p, root := d.part, d.doc.Root
	sc := &scope{l: l, d: d}
	p.Types = map[string]lang.Type{}
	for _, e := range root.Get("define").Entries() {
		if def := d.defines[e.Name]; def != nil {
			l.define(sc, def)
		}
	}
	for _, e := range root.Get("pick").Entries() {
		if d.picks[e.Name] != "" {
			l.pick(sc, e)
		}
	}
	l.choose(sc)
	l.joints(sc)
	for _, n := range root.Get("needs").Items() {
		l.need(sc, n)
	}
	for _, n := range root.Get("limits").Items() {
		l.limit(sc, n)
	}
	for _, n := range root.Get("aim").Items() {
		l.aim(sc, n)
	}
	for _, n := range root.Get("scores").Items() {
		l.score(sc, n)
	}
	for _, n := range root.Get("steps").Items() {
		l.step(sc, n)
	}
	l.features(d)
	for _, n := range root.Get("mistakes").Items() {
		n.Keys("says", "instead")
		p.Mistakes = append(p.Mistakes, link.Mistake{Says: n.Need("says", "say what is done wrong").Text(), Instead: n.Need("instead", "say what to do").Text()})
	}
	for _, n := range root.Get("cautions").Items() {
		p.Cautions = append(p.Cautions, l.caution(n))
	}
	l.seamKept(d)
}

func (l *loader) define(sc *scope, def *define) {
	t, _ := sc.typeOf(def)
	sc.d.part.Types[def.id] = t
	sc.d.part.Defines = append(sc.d.part.Defines, link.Define{ID: def.id, Says: def.node.Get("says").Text(), Is: def.expr, Row: def.row, At: def.node.At()})
}

// features reads what the file does about each kind of neighbour.
func (l *loader) features(d *draft) {
	if d.part.Side != link.Shaft && d.part.Side != link.Hub {
		return
	}
	n := d.doc.Root.Need("features", "answer every kind of neighbour: keep clear, restore, accept or ruled out")
	for _, e := range n.Entries() {
		if !slices.Contains(l.base.Kinds, e.Name) {
			l.faults.Add(e.KeyAt, e.Value.Key, "there is no kind of neighbour "+e.Name, fault.DidYouMean(e.Name, l.base.Kinds))
		}
		e.Value.Keys("answer", "why")
		d.part.Features = append(d.part.Features, link.Feature{Kind: e.Name, At: e.Value.At(),
			Answer: e.Value.Need("answer", "write keep clear, restore, accept or ruled out").Word("keep clear", "restore", "accept", "ruled out"),
			Why:    e.Value.Need("why", "say why").Text()})
	}
	for _, k := range l.base.Kinds {
		if n.Present() && !n.Get(k).Present() {
			n.Fault("no answer for a "+strings.ReplaceAll(k, "-", " ")+" beside the fit", "say what this treatment does about it: keep clear, restore, accept or ruled out")
		}
	}
}

// seamKept tells a file that does not define what the seam asks of it.
func (l *loader) seamKept(d *draft) {
	seam := &l.base.Input.Seam
	for _, s := range map[link.Side][]link.SeamName{link.Shaft: seam.Shaft, link.Hub: seam.Hub, link.Hold: seam.Hold, link.Purpose: seam.Purpose}[d.part.Side] {
		def, ok := d.defines[s.Name]
		if !ok {
			d.doc.Root.Get("define").Fault(fmt.Sprintf("%s is not defined, and seam.yaml asks it of every %s file", s.Name, d.side), "define it")
			continue
		}
		if t := d.part.Types[s.Name]; (t.Kind != s.Type.Kind || t.Dim != s.Type.Dim || t.Table != s.Type.Table) && def.state == 2 && (def.expr != nil || def.row != "") {
			def.node.Fault(fmt.Sprintf("%s comes to %s, and the seam wants %s", s.Name, typeWords(t), typeWords(s.Type)), "check the units")
		}
	}
}

func typeWords(t lang.Type) string {
	switch t.Kind {
	case lang.NumberKind, lang.RangeKind:
		return t.Dim.String()
	case lang.Row:
		return "a row of " + t.Table
	case lang.YesNo:
		return "yes or no"
	}
	return "a word"
}
