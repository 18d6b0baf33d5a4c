package rules

import (
	"crypto/sha256"
	"fmt"
	"hash"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"

	"wornfit/rules/fault"
	"wornfit/rules/yamldoc"
)

// files are the files of all layers. A path is in more than one layer only
// where the later adds to what the earlier lists.
type files struct {
	paths []string                  // in the order of the layers, then of the names
	by    map[string][]*yamldoc.Doc // by path in its layer, earliest first

	inside map[string][]string // paths by folder
	docs   []*yamldoc.Doc
	over   []*yamldoc.Doc // overrides.yaml of each layer
	later  map[*yamldoc.Doc]bool
}

// needed are the files every rule base has at its top; added are those to which
// a later layer may add.
var (
	needed = []string{"criteria.yaml", "options.yaml", "seam.yaml", "sources.yaml", "steps.yaml"}
	added  = []string{"options.yaml", "sources.yaml", "steps.yaml", "vocabulary/tables.yaml"}
)

// raw is a file before it is parsed.
type raw struct {
	path, name string // in its layer, and in faults
	data       []byte
	later      bool
	doc        *yamldoc.Doc
}

func (l *loader) read(layers []Layer) {
	l.files = files{by: map[string][]*yamldoc.Doc{}, inside: map[string][]string{}, later: map[*yamldoc.Doc]bool{}}
	sum := sha256.New()
	var all []*raw
	for i, layer := range layers {
		l.base.Layers = append(l.base.Layers, layer.Name)
		all = append(all, l.layer(layer, i > 0, sum)...)
		if i == 0 {
			unpack(layer, all, mark(sum))
		}
	}
	parse(all)
	for _, r := range all {
		l.keep(r)
	}
	for _, p := range needed {
		if len(l.files.by[p]) == 0 {
			l.faults.Add(fault.Place{File: p}, "", "the file is missing", "every rule base needs it")
		}
	}
	l.base.Hash = mark(sum)[:12]
}

// layer reads the files of a layer, unparsed, and adds them to the sum.
func (l *loader) layer(layer Layer, later bool, sum hash.Hash) []*raw {
	var all []*raw
	err := fs.WalkDir(layer.Files, ".", func(p string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && skipped(p):
			return fs.SkipDir
		case e.IsDir():
			return nil
		}
		r, err := l.file(layer, later, p)
		if r != nil {
			fmt.Fprintf(sum, "%s\x00%d\x00", p, len(r.data))
			sum.Write(r.data)
			all = append(all, r)
		}
		return err
	})
	if err != nil {
		l.faults.Add(fault.Place{File: layer.Name}, "", "cannot be read: "+err.Error(), "check the folder's name")
	}
	return all
}

// skipped are the folders that are not rules: tests, and hidden ones.
func skipped(p string) bool {
	name := path.Base(p)
	return name == "tests" || name == "testdata" || len(name) > 1 && name[0] == '.'
}

// file reads one file; nil when it is no rule file.
func (l *loader) file(layer Layer, later bool, p string) (*raw, error) {
	if path.Ext(p) == ".yml" {
		l.faults.Add(fault.Place{File: p}, "", "a file ending in .yml is not read", "call it "+strings.TrimSuffix(p, ".yml")+".yaml")
	}
	if path.Ext(p) != ".yaml" {
		return nil, nil
	}
	r := &raw{path: p, name: p, later: later}
	if later {
		r.name = path.Join(layer.Name, p)
	}
	var err error
	r.data, err = fs.ReadFile(layer.Files, p)
	return r, err
}

// parse parses the files on all cores, the longest first: reading YAML is half
// the time of a load.
func parse(all []*raw) {
	all = slices.DeleteFunc(slices.Clone(all), func(r *raw) bool { return r.doc != nil })
	slices.SortStableFunc(all, func(a, b *raw) int { return len(b.data) - len(a.data) })
	var wait sync.WaitGroup
	next := make(chan *raw)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for r := range next {
				r.doc = yamldoc.Read(r.name, r.data)
			}
		})
	}
	for _, r := range all {
		next <- r
	}
	close(next)
	wait.Wait()
}

// keep lists a file under its path.
func (l *loader) keep(r *raw) {
	f := &l.files
	if had := f.by[r.path]; len(had) > 0 && !slices.Contains(added, r.path) {
		l.faults.Add(fault.Place{File: r.name}, "", r.path+" stands in "+had[0].File+" already",
			"a new file has an id of its own; numbers are changed in overrides.yaml")
		return
	}
	f.docs = append(f.docs, r.doc)
	if r.path == "overrides.yaml" {
		f.over = append(f.over, r.doc)
		return
	}
	f.later[r.doc] = r.later
	f.by[r.path] = append(f.by[r.path], r.doc)
	if len(f.by[r.path]) == 1 {
		f.paths = append(f.paths, r.path)
		f.inside[path.Dir(r.path)] = append(f.inside[path.Dir(r.path)], r.path)
	}
}

// all are the files of one path, earliest layer first.
func (l *loader) all(p string) []*yamldoc.Doc { return l.files.by[p] }

// in lists the files of a folder by id, in the order of their names.
func (l *loader) in(folder string) (ids []string, docs []*yamldoc.Doc) {
	for _, p := range l.files.inside[folder] {
		for _, d := range l.files.by[p] {
			ids = append(ids, strings.TrimSuffix(path.Base(p), ".yaml"))
			docs = append(docs, d)
		}
	}
	return ids, docs
}

// unreadable reports that a file which all others rest on is missing or is no
// YAML: what would be told of the others then is of no use.
func (l *loader) unreadable() bool {
	for _, p := range needed {
		if len(l.files.by[p]) == 0 {
			l.base.Vocabulary = &Vocabulary{}
			return true
		}
	}
	for p, docs := range l.files.by {
		for _, d := range docs {
			if !d.Root.Present() && (slices.Contains(needed, p) || path.Dir(p) == "vocabulary") {
				l.base.Vocabulary = &Vocabulary{}
				return true
			}
		}
	}
	return false
}

// foldersKnown tells the files that nothing reads.
func (l *loader) foldersKnown() {
	folders := []string{"vocabulary", "pairings", "diagnosis"}
	for _, s := range sides {
		folders = append(folders, s.folder)
	}
	for t := range l.base.Vocabulary.Tables {
		folders = append(folders, t)
	}
	for _, p := range l.files.paths {
		at := fault.Place{File: l.files.by[p][0].File}
		dir := path.Dir(p)
		switch {
		case dir == "." && !slices.Contains(needed, p):
			l.faults.Add(at, "", "no file "+p+" is read here", fault.DidYouMean(p, append([]string{"overrides.yaml"}, needed...)))
		case dir != "." && !slices.Contains(folders, dir):
			l.faults.Add(at, "", "no folder "+dir+" is read", fault.DidYouMean(dir, sorted(folders))+"; a table has its columns in vocabulary/tables.yaml")
		}
	}
}

func sorted(list []string) []string {
	slices.Sort(list)
	return list
}
