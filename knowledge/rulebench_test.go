package knowledge_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"

	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/advisor/given"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// ruleBench holds an option at one design and looks at it with this or that
// changed. Readings stand at their best value and sizes at their targets.
type ruleBench struct {
	base  *rules.Base
	opt   *link.Option
	src   *given.Source
	known map[string]link.Known
	picks map[string]string // rows to be taken where several may be
	sizes map[string]float64
	held  *link.PickSet // of the base case, for a pick that finds no row
}

func newRuleBench(base *rules.Base, r ruleTest) (*ruleBench, error) {
	src, purpose, err := readCase(base, filepath.Join("..", r.base))
	if err != nil {
		return nil, err
	}
	opt, err := linkLocked(base, r.option, purpose, r.locks)
	if err != nil {
		return nil, err
	}
	b := &ruleBench{base: base, opt: opt, src: src, known: byName(src, opt), picks: r.picks}
	if b.sizes, err = b.lengths(r.sizes); err != nil {
		return nil, err
	}
	for _, d := range opt.Dims {
		if _, ok := b.sizes[d.ID]; !ok {
			return nil, fmt.Errorf("%s has no size; write it under sizes", d.ID)
		}
	}
	w := b.world(nil)
	if err := w.change(r.given); err != nil {
		return nil, err
	}
	b.known = w.known
	set, err := w.pick()
	if err != nil {
		return nil, err
	}
	b.held = set
	return b, b.allSaid()
}

// byName is all that is known of what an option and its picks ask for.
func byName(src *given.Source, opt *link.Option) map[string]link.Known {
	out := map[string]link.Known{}
	for _, s := range append(slices.Clone(opt.Slots), opt.Asks()...) {
		if k, ok := src.Knows(&s); ok {
			out[s.Name] = k
		}
	}
	return out
}

// allSaid tells a rule that may apply and rests on what the case does not say.
func (b *ruleBench) allSaid() error {
	reg := make([]interval.I, b.opt.Program.Len())
	b.opt.Program.StartI(reg)
	for _, s := range b.opt.Slots {
		if reg[s.Node] = interval.Whole(); b.known[s.Name].Is {
			reg[s.Node] = b.known[s.Name].Value
		}
	}
	b.opt.Program.Enclose(reg)
	for _, c := range b.opt.Checks {
		if c.When != 0 && tape.No(reg[c.When]) {
			continue
		}
		for _, s := range b.opt.Uses(c.Margin) {
			if k, ok := b.known[s.Name]; ok && !k.Is {
				return fmt.Errorf("%s rests on %s, which the case does not say; state it", c.FullID, s.Name)
			}
		}
	}
	return nil
}

func readCase(base *rules.Base, file string) (src *given.Source, purpose string, err error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, "", err
	}
	c, faults := casefile.Read(file, data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")})
	if err := faults.Err(); err != nil {
		return nil, "", err
	}
	cond, faults := condition.Find(c, c.Fits[0], func(material string) (interval.I, bool) {
		for _, r := range base.Rows("materials") {
			if r.ID == material {
				return r.Columns["expansion"].Value, true
			}
		}
		return interval.I{}, false
	})
	return given.New(base, cond), c.Fits[0].Purpose, faults.Err()
}

func linkNamed(base *rules.Base, id, purpose string) (*link.Option, error) {
	return linkLocked(base, id, purpose, nil)
}

// linkLocked links an option with a lock on some of its joints.
func linkLocked(base *rules.Base, id, purpose string, locks map[string]string) (*link.Option, error) {
	p := base.Purpose(purpose)
	if p == nil {
		return nil, fmt.Errorf("there is no purpose %s", purpose)
	}
	for _, c := range link.All(base.Input, p) {
		if c.ID != id {
			continue
		}
		for joint, lock := range locks {
			at := slices.IndexFunc(base.Input.Parts, func(p *link.Part) bool { return p.Side == link.Lock && p.ID == lock })
			if at < 0 {
				return nil, fmt.Errorf("there is no lock %s", lock)
			}
			c = c.With(joint, base.Input.Parts[at])
		}
		return c.Link(base.Input)
	}
	return nil, fmt.Errorf("there is no option %s for %s", id, purpose)
}

func (b *ruleBench) lengths(texts map[string]string) (map[string]float64, error) {
	out := map[string]float64{}
	for id, text := range texts {
		if !slices.ContainsFunc(b.opt.Dims, func(d link.Dim) bool { return d.ID == id }) {
			return nil, fmt.Errorf("the option has no size %s", id)
		}
		v, err := quantity.Parse(text, quantity.LengthDim)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", id, err)
		}
		out[id] = v.Best
	}
	return out, nil
}

// broken gives the rules that break, in order, with a line's changes made.
func (b *ruleBench) broken(l ruleLine) ([]string, error) {
	sizes, err := b.lengths(l.sizes)
	if err != nil {
		return nil, err
	}
	w := b.world(maps.Clone(b.sizes))
	maps.Copy(w.sizes, sizes)
	w.unasked = len(l.breaks) == 0
	if err := w.change(l.change); err != nil {
		return nil, err
	}
	return w.judge()
}

// judge runs the option's program and reads every need and limit off it.
func (w *world) judge() ([]string, error) {
	set, err := w.pick()
	if err != nil {
		return nil, err
	}
	var out []string
	for _, c := range set.Failed {
		out = append(out, c.FullID)
	}
	prog := w.opt.Program
	reg := make([]float64, prog.Len())
	prog.Start(reg)
	for _, s := range w.opt.Slots {
		if reg[s.Node], err = w.value(s, set); err != nil {
			return nil, err
		}
	}
	prog.Run(reg)
	for _, c := range w.opt.Checks {
		switch {
		case c.When != 0 && reg[c.When] == 0:
		case c.When != 0 && reg[c.When] != 1, reg[c.Margin] != reg[c.Margin]:
			return nil, fmt.Errorf("%s is undecided", c.FullID)
		case !prog.Keeps(reg, c.Margin):
			out = append(out, c.FullID)
		}
	}
	sort.Strings(out)
	return out, nil
}

// value is what a slot holds: a size on its target, neither cut nor gauged amiss.
func (w *world) value(s link.Slot, set *link.PickSet) (float64, error) {
	switch s.Kind {
	case link.CutSlot, link.GaugeSlot:
		return 0, nil
	case link.TargetSlot:
		return w.sizes[strings.TrimSuffix(s.Name, ".target")], nil
	case link.PickSlot:
		if k, ok := w.columns[s.Name]; ok {
			return k.Best, nil
		}
		if k, ok := set.Column(s.Pick, s.Column); ok {
			return k.Best, nil
		}
		if w.held != nil {
			if k, ok := w.held.Column(s.Pick, s.Column); ok {
				return k.Best, nil
			}
		}
		return 0, fmt.Errorf("no row gives %s", s.Name)
	}
	k, ok := w.known[s.Name]
	if !ok {
		return 0, fmt.Errorf("nothing says %s", s.Name)
	}
	return k.Best, nil
}

// numbered are the registers of an option with the numbers of its files at their low ends.
func numbered(o *link.Option) []float64 {
	reg := make([]float64, o.Program.Len())
	o.Program.Start(reg)
	for _, s := range o.Slots {
		if s.Kind == link.NumberSlot {
			reg[s.Node] = s.Number.Low
		}
	}
	return reg
}
