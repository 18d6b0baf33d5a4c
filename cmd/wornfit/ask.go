package main

import (
	"errors"
	"io/fs"
	"os"
	"runtime"
	"strings"

	"wornfit/advisor"
	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
	"wornfit/calc/quantity"
	"wornfit/cmd/wornfit/render"
	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/fault"
)

// asked is a case read, and how it is to be answered.
type asked struct {
	base   *rules.Base
	c      *casefile.Case
	fits   []*casefile.Fit
	speech quantity.Speech
}

// load reads the rule base with the overlays asked for.
func (f *flags) load(w world) (*rules.Base, error) {
	for _, dir := range f.knowledge {
		if err := folder(dir); err != nil {
			return nil, err
		}
	}
	base, list := knowledge.Load(f.knowledge...)
	if len(list) > 0 {
		return nil, faults(w, "the knowledge", list, ruleLines(w, f.knowledge))
	}
	runtime.GC() // little is left of a load: collected now it is quick, and not in the way later
	return base, nil
}

func folder(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case err != nil:
		return notUnderstood("give the folder the rule files stand in", "there is no folder %s", dir)
	case !info.IsDir():
		return notUnderstood("give the folder it stands in", "%s is no folder", dir)
	}
	return nil
}

// ask reads the rule base and the case.
func (f *flags) ask(w world, file string) (*asked, error) {
	base, err := f.load(w)
	if err != nil {
		return nil, err
	}
	data, err := w.read(file)
	if err != nil {
		return nil, unreadable(file, err)
	}
	c, list := casefile.Read(file, data, base.Vocabulary, named(base))
	if len(list) > 0 {
		return nil, faults(w, file, list, func(string) []string { return strings.Split(string(data), "\n") })
	}
	a := &asked{base: base, c: c, fits: c.Fits}
	if a.speech, err = f.speech(c.Speech()); err != nil {
		return nil, err
	}
	if f.fit != "" {
		fit, ok := c.Fit(f.fit)
		if !ok {
			return nil, notUnderstood(fault.DidYouMean(f.fit, fitIDs(c)), "the case has no fit %s", f.fit)
		}
		a.fits = []*casefile.Fit{fit}
	}
	return a, nil
}

// named are the ids of the rule base that a case may name.
func named(base *rules.Base) casefile.IDs {
	ids := casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")}
	for _, p := range base.Input.Parts {
		if side := p.Side.String(); side == "purpose" {
			ids[side] = append(ids[side], p.ID)
		}
	}
	for _, c := range base.Input.Criteria {
		ids["criteria"] = append(ids["criteria"], c.ID)
	}
	return ids
}

func unreadable(file string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return notUnderstood("give the path of a case file, such as testdata/cases/lever-eye.yaml", "there is no file %s", file)
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return notUnderstood("", "%s cannot be read: %v", file, err)
}

func fitIDs(c *casefile.Case) []string {
	var out []string
	for _, f := range c.Fits {
		out = append(out, f.ID)
	}
	return out
}

// answers asks the advisor about each fit.
func (a *asked) answers(only []string, all bool) ([]*answer.Answer, error) {
	var out []*answer.Answer
	speech := a.speech
	if speech.Money == "" {
		speech.Money = "in your money"
	}
	for _, f := range a.fits {
		x, err := advisor.Advise(a.base, a.c, f, advisor.Ask{Speech: speech, Only: only, All: all})
		if err != nil {
			return nil, trouble{says: err.Error(), hint: "this is a fault of wornfit itself; please report it with the case file", code: exitOurs}
		}
		out = append(out, x)
	}
	return out, nil
}

func (a *asked) voice() render.Voice { return render.Voice{Speech: a.speech} }
