package rules

import (
	"slices"

	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// draft is a part file while it is read.
type draft struct {
	part    *link.Part
	doc     *yamldoc.Doc
	side    string
	numbers map[string]*link.Number
	picks   map[string]string // the table or list each is from
	dims    map[string]bool
	defines map[string]*define
	joints  map[string]bool
	bad     map[string]bool // names that are at fault themselves
}

var sides = []struct {
	folder, schema string
	side           link.Side
}{{"shaft", "part/1", link.Shaft}, {"hub", "part/1", link.Hub}, {"hold", "hold/1", link.Hold}, {"lock", "lock/1", link.Lock}, {"purpose", "purpose/1", link.Purpose}}

// parts reads every part file: first all their names, then what is said of them.
func (l *loader) parts() {
	type file struct {
		folder, schema string
		side           link.Side
		id             string
		doc            *yamldoc.Doc
	}
	var files []file
	for _, s := range sides {
		ids, docs := l.in(s.folder)
		for i, d := range docs {
			if d.Root.Present() {
				files = append(files, file{s.folder, s.schema, s.side, ids[i], d})
			}
		}
	}
	l.drafts = make([]*draft, len(files))
	l.apart(len(files), func(sub *loader, i int) {
		f := files[i]
		l.drafts[i] = sub.draft(f.folder, f.schema, f.side, f.id, f.doc)
	})
	l.apart(len(files), func(sub *loader, i int) { sub.fill(l.drafts[i]) })
}

// pulls are what a lock may take off a hold.
var pulls = []string{"torque", "thrust"}

var partKeys = map[link.Side][]string{
	link.Shaft:   {"side", "metal", "finishes", "bought", "choose", "joints", "aim", "features"},
	link.Hub:     {"side", "metal", "finishes", "bought", "choose", "joints", "aim", "features"},
	link.Hold:    {"choose", "aim", "fit_only"},
	link.Lock:    {"choose", "aim", "fit_only", "carries"},
	link.Purpose: {"holds", "aim", "locks"},
}

var everyPart = []string{"schema", "id", "says", "numbers", "needs", "pick", "define", "limits", "scores", "steps", "mistakes", "cautions"}

func (l *loader) draft(folder, schema string, side link.Side, id string, doc *yamldoc.Doc) *draft {
	root := doc.Root
	d := newDraft(doc, folder, side, id)
	root.Keys(append(slices.Clone(everyPart), partKeys[side]...)...)
	root.Need("schema", "write "+schema).Word(schema)
	l.named(root, id)
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
	if side == link.Lock {
		for _, n := range root.Need("carries", "write what it takes off the hold: [torque], or [torque, thrust]").Items() {
			d.part.Carries = append(d.part.Carries, n.Word(pulls...))
		}
	}
	locks, _ := l.in("lock")
	for _, n := range root.Get("locks").Items() {
		d.part.Locks = append(d.part.Locks, n.Word(locks...))
	}
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
	d.part.Bought, _ = root.Get("bought").YesNo()
	if f := d.part.Finishes; f != "" && !root.Get("choose").Get(f).Present() {
		root.Get("finishes").Fault(f+" is not chosen in this file", "name a dimension under choose")
	}
}

// fill reads what is said of the names.
func (l *loader) fill(d *draft) {
	p, root := d.part, d.doc.Root
	sc := &scope{l: l, d: d}
	for _, e := range root.Get("define").Entries() {
		if def := d.defines[e.Name]; def != nil {
			sc.keep(def)
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

// named tells an id that is not the file's name, or is no plain text.
func (l *loader) named(root yamldoc.Node, id string) {
	n := root.Need("id", "write the file's name without .yaml")
	if says, remedy := badWord(id); says != "" {
		l.faults.Add(n.At(), "id", says, remedy)
	} else if got := n.Text(); got != id && got != "" {
		n.Fault("the id "+got+" is not the file's name", "write "+id)
	}
}
