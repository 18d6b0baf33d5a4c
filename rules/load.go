package rules

import (
	"io/fs"
	"strings"

	"wornfit/calc/kernel"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// Layer is a folder of rule files and what it is called in answers.
type Layer struct {
	Name   string
	Files  fs.FS
	Packed string // of the first layer: its files as Pack made it; "" or of other files: they are parsed
}

// loader is one run of Load.
type loader struct {
	base   *Base
	calc   map[string]kernel.Kernel
	faults fault.List
	files  files

	firstWords    map[string]bool // of the vocabulary: hub, shaft, duty
	words         map[string]*lang.Words
	pair          *lang.Func
	commonIDs     []string // steps of steps.yaml
	criteriaIDs   []string
	criterionType map[string]lang.Type

	drafts []*draft
	ids    map[string]fault.Place // of needs, limits, picks, steps, scores
	chain  []*define              // those being worked out, outermost first
	shaky  bool                   // the check going on met a name that is itself at fault

	replace map[string]*override // by the name of the number or rule
	laid    map[string]*override // those that changed a number
}

// Load reads the layers, each laid over the one before, and tells every fault.
// The Base is of use only when there is none. calc are the calculations that a
// rule may call.
func Load(layers []Layer, calc []kernel.Kernel) (*Base, fault.List) {
	l := newLoader(calc)
	l.read(layers)
	if l.unreadable() {
		return l.base, l.allFaults()
	}
	l.overrides()
	l.each("sources.yaml", l.sources)
	l.vocabulary()
	l.foldersKnown()
	l.tablesOf()
	l.each("seam.yaml", l.seam)
	l.each("criteria.yaml", l.criteriaHeads)
	l.commonHeads()
	l.parts()
	l.patterns()
	l.each("steps.yaml", l.common)
	l.each("criteria.yaml", l.criteria)
	l.each("options.yaml", l.options)
	l.finish()
	l.notMet()
	return l.base, l.allFaults()
}

func newLoader(calc []kernel.Kernel) *loader {
	l := &loader{
		base: &Base{Sources: map[string]Source{}, tables: map[string]*table{}}, calc: map[string]kernel.Kernel{},
		firstWords: map[string]bool{}, words: map[string]*lang.Words{}, criterionType: map[string]lang.Type{},
		ids: map[string]fault.Place{}, replace: map[string]*override{}, laid: map[string]*override{},
	}
	for _, k := range calc {
		l.calc[k.Name] = k
	}
	return l
}

// allFaults is every fault, in reading order.
func (l *loader) allFaults() fault.List {
	for _, d := range l.files.docs {
		l.faults = append(l.faults, d.Faults...)
	}
	l.faults.Sort()
	return l.faults
}

// each hands a file that must be there, and what later layers add to it, to its
// reader.
func (l *loader) each(p string, read func(*yamldoc.Doc)) {
	for _, d := range l.all(p) {
		if d.Root.Present() {
			read(d)
		}
	}
}

// finish hands the linker all it needs.
func (l *loader) finish() {
	in := &l.base.Input
	for _, d := range l.drafts {
		d.part.Index()
		in.Parts = append(in.Parts, d.part)
	}
	in.Index()
	in.Given = map[string]lang.Type{}
	for _, n := range l.base.Vocabulary.order {
		in.Given[n] = l.base.Vocabulary.byName[n].Type
	}
	for name, w := range l.words {
		in.Given[name] = lang.Type{Kind: lang.Word, Words: w}
	}
	in.Tables = map[string][]link.Column{}
	for name, cols := range l.base.Vocabulary.Tables {
		in.Tables[name] = nil
		for _, c := range cols {
			if c.Type.Kind != textKind {
				in.Tables[name] = append(in.Tables[name], link.Column{Name: c.Name, Type: c.Type})
			}
		}
	}
}

// tableOf is the table whose columns a list's rows have: shop.machines are
// machines, hub.datums are datums.
func tableOf(from string) string { return from[strings.LastIndexByte(from, '.')+1:] }

// beforeLast is a dotted name without its last part; ok is false when it has
// one part only.
func beforeLast(name string) (string, bool) {
	i := strings.LastIndexByte(name, '.')
	return name[:max(i, 0)], i >= 0
}
