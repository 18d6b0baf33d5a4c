package rules

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"wornfit/calc/kernel"
	"wornfit/rules/fault"
	"wornfit/rules/lang"
	"wornfit/rules/link"
	"wornfit/rules/yamldoc"
)

// Layer is a folder of rule files and what it is called in answers.
type Layer struct {
	Name  string
	Files fs.FS
}

// loader is one run of Load.
type loader struct {
	base   *Base
	calc   map[string]kernel.Kernel
	faults fault.List
	docs   map[string]*yamldoc.Doc // by path, the later layer's over the earlier's
	order  []string
	over   []*yamldoc.Doc         // overrides.yaml of each layer
	ids    map[string]fault.Place // of needs, limits, steps, scores
	drafts []*draft
	words  map[string]*lang.Words
	pair   *lang.Func
}

// Load reads the layers, each laid over the one before, and tells every fault.
// The Base is of use only when there is none. calc are the calculations that a
// rule may call.
func Load(layers []Layer, calc []kernel.Kernel) (*Base, fault.List) {
	l := &loader{base: &Base{Sources: map[string]Source{}, tables: map[string]*table{}}, calc: map[string]kernel.Kernel{},
		docs: map[string]*yamldoc.Doc{}, ids: map[string]fault.Place{}, words: map[string]*lang.Words{}}
	for _, k := range calc {
		l.calc[k.Name] = k
	}
	l.read(layers)
	l.single("sources.yaml", l.sources)
	l.vocabulary()
	l.tablesOf()
	l.single("seam.yaml", l.seam)
	l.parts()
	l.single("criteria.yaml", l.criteria)
	l.single("options.yaml", l.options)
	l.finish()
	l.overrides()
	for _, d := range l.docs {
		l.faults = append(l.faults, d.Faults...)
	}
	for _, d := range l.over {
		l.faults = append(l.faults, d.Faults...)
	}
	l.faults.Sort()
	return l.base, l.faults
}

// Folders whose files are rows or parts; what stands elsewhere is told.
var folders = []string{"vocabulary", "shaft", "hub", "hold", "purpose", "materials", "fillers", "machines", "gauges", "pairings",
	"cautions", "clearances", "ways", "diagnosis"}

func (l *loader) read(layers []Layer) {
	sum := sha256.New()
	for i, layer := range layers {
		l.base.Layers = append(l.base.Layers, layer.Name)
		err := fs.WalkDir(layer.Files, ".", func(p string, e fs.DirEntry, err error) error {
			if err != nil || e.IsDir() {
				if e != nil && e.IsDir() && (p == "tests" || p == "testdata") {
					return fs.SkipDir
				}
				return err
			}
			if path.Ext(p) != ".yaml" {
				return nil
			}
			data, err := fs.ReadFile(layer.Files, p)
			if err != nil {
				return err
			}
			fmt.Fprintf(sum, "%s\x00%d\x00", p, len(data))
			sum.Write(data)
			name := p
			if i > 0 {
				name = path.Join(layer.Name, p)
			}
			l.file(p, name, data, i > 0)
			return nil
		})
		if err != nil {
			l.faults.Add(fault.Place{File: layer.Name}, "", "cannot be read: "+err.Error(), "check the folder's name")
		}
	}
	l.base.Hash = hex.EncodeToString(sum.Sum(nil))[:12]
}

func (l *loader) file(p, name string, data []byte, over bool) {
	if p == "overrides.yaml" {
		l.over = append(l.over, yamldoc.Read(name, data))
		return
	}
	dir := path.Dir(p)
	if dir != "." && !slices.Contains(folders, dir) {
		l.faults.Add(fault.Place{File: name}, "", "no folder "+dir+" is read", fault.DidYouMean(dir, folders))
		return
	}
	if had, again := l.docs[p]; again && over {
		l.faults.Add(fault.Place{File: name}, "", p+" stands in "+had.File+" already",
			"give the new file an id of its own; numbers are changed in overrides.yaml")
		return
	}
	l.docs[p] = yamldoc.Read(name, data)
	l.order = append(l.order, p)
}

// single hands a file that must be there to its reader.
func (l *loader) single(p string, read func(*yamldoc.Doc)) {
	d, ok := l.docs[p]
	if !ok {
		l.faults.Add(fault.Place{File: p}, "", "the file is missing", "every rule base needs it")
		return
	}
	if d.Root.Present() {
		read(d)
	}
}

// in lists the files of a folder by id, in the order of their names.
func (l *loader) in(folder string) (ids []string, docs []*yamldoc.Doc) {
	for _, p := range l.order {
		if path.Dir(p) == folder {
			ids = append(ids, strings.TrimSuffix(path.Base(p), ".yaml"))
			docs = append(docs, l.docs[p])
		}
	}
	return ids, docs
}

// finish hands the linker all it needs.
func (l *loader) finish() {
	in := &l.base.Input
	for _, d := range l.drafts {
		in.Parts = append(in.Parts, d.part)
	}
	in.Given = map[string]lang.Type{}
	for _, n := range l.base.Vocabulary.order {
		in.Given[n] = l.base.Vocabulary.byName[n].Type
	}
	for name, w := range l.words {
		in.Given[name] = lang.Type{Kind: lang.Word, Words: w}
	}
	in.Tables = map[string][]link.Column{}
	for name, cols := range l.base.Vocabulary.Tables {
		for _, c := range cols {
			in.Tables[name] = append(in.Tables[name], link.Column{Name: c.Name, Type: c.Type})
		}
	}
}

func sorted(list []string) []string {
	slices.Sort(list)
	return list
}
