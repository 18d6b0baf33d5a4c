package judge

import (
	"math"
	"slices"
	"strings"

	"wornfit/advisor/answer"
	"wornfit/advisor/given"
	"wornfit/advisor/solve"
	"wornfit/advisor/why"
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
	"wornfit/rules"
	"wornfit/rules/link"
	"wornfit/rules/tape"
)

// dress links the option again with its words; what was found stays.
func (j *Judged) dress() error {
	if len(j.Option.Checks) == 0 || j.Option.Checks[0].Why != nil {
		return nil
	}
	c := j.Combination
	c.Locks = j.Option.Locks
	o, err := c.Link(j.bench.Base.Input)
	if err != nil {
		return err
	}
	known := j.bench.Given.Fill(o.Slots)
	m := j.bench.model(o, known, j.Set)
	reg := make([]float64, o.Program.Len())
	o.Program.Start(reg)
	for i := range o.Slots {
		s := &o.Slots[i]
		switch {
		case i < len(j.Option.Slots):
			reg[s.Node] = j.Found.Reg[s.Node]
		default:
			k, _ := m.Of(i)
			reg[s.Node] = k.Best
		}
	}
	o.Program.Run(reg)
	for i, f := range j.Set.Failed {
		for k := range o.Picks {
			if o.Picks[k].Failed.FullID == f.FullID {
				j.Set.Failed[i] = &o.Picks[k].Failed
			}
		}
	}
	j.Option, j.Found.Reg = o, reg
	j.Model.Option, j.Model.Known, j.Model.Picked = o, m.Known, m.Picked
	return nil
}

// word turns what was found into the answer's option.
func (j *Judged) word() answer.Option {
	o, b := j.Option, j.bench
	w := &why.Writer{Speech: b.Speech, Option: o, Reg: j.Found.Reg, Rows: b.rowNames(j), Called: b.Called, Unknown: j.unknown(), Ranged: j.ranged()}
	a := answer.Option{ID: j.Combination.ID, Shaft: o.Shaft.ID, Hub: o.Hub.ID, Purpose: o.Purpose.ID, DoneBy: j.doneBy(),
		Says:  o.Shaft.Says + "; " + o.Hub.Says,
		Holds: map[string]string{}, Locks: map[string]string{}, Picks: map[string]string{}, Scores: map[string]answer.Score{},
		Verdict: j.Verdict, Kind: j.Kind, Points: j.Mark.Points, Broken: j.Mark.Off,
		Dimensions: []answer.Dimension{}, Values: []answer.Value{}, Reasons: []answer.Reason{}, Conflict: []string{}, Changes: []string{},
		Missing: []answer.Missing{}, Steps: []answer.Step{}, Mistakes: []answer.Mistake{}, Neighbours: []string{}}
	if j.trade != nil {
		a.Name = &j.trade.ID
	}
	for _, joint := range slices.Sorted(mapKeys(o.Holds)) {
		a.Holds[joint] = o.Holds[joint].ID
		if joint == link.Fit {
			a.Says += "; fit " + o.Holds[joint].Says
		} else {
			a.Says += ", " + joint + " " + o.Holds[joint].Says
		}
	}
	for _, joint := range slices.Sorted(mapKeys(o.Locks)) {
		a.Locks[joint] = o.Locks[joint].ID
		a.Says += ", " + joint + " " + o.Locks[joint].Says
	}
	for i := range o.Picks {
		if row := j.Set.Row(o.Picks[i].Full); row != "" {
			a.Picks[o.Picks[i].Full] = row
		}
	}
	a.Reasons = why.Decisive(append(j.noRows(b, w), w.Reasons(b.Base, &j.Found)...), j.Kind)
	a.Conflict = append(a.Conflict, why.Conflict(a.Reasons)...)
	a.Missing = append(a.Missing, b.missing(j)...)
	j.scores(b, &a)
	a.Care = j.care()
	a.Values = append(a.Values, j.values(w)...)
	a.Mistakes = append(a.Mistakes, w.Mistakes()...)
	a.Neighbours = append(a.Neighbours, w.Neighbours(b.Near)...)
	a.Steps = append(a.Steps, w.Steps(b.Base)...)
	for _, win := range j.Found.Windows {
		a.Dimensions = append(a.Dimensions, j.dimension(win, w))
	}
	return a
}

// doneBy names the firms that do part of the work, or says here.
func (j *Judged) doneBy() string {
	var firms []string
	for i := range j.Option.Picks {
		p := &j.Option.Picks[i]
		if k, ok := j.Set.Column(p.Full, link.SentOut); ok && k.Best == 1 && !slices.Contains(firms, j.Set.Row(p.Full)) {
			firms = append(firms, j.Set.Row(p.Full))
		}
	}
	if len(firms) == 0 {
		return "here"
	}
	return strings.Join(firms, ", ")
}

// unknown are the inputs that nobody stated, and the columns of rows that were
// not found.
func (j *Judged) unknown() map[tape.Node]interval.I {
	out := map[tape.Node]interval.I{}
	for i := range j.Option.Slots {
		s := &j.Option.Slots[i]
		k, ok := j.Model.Of(i)
		if s.Kind == link.PickSlot {
			k, _ = j.Set.Column(s.Pick, s.Column)
		}
		if ok && !k.Is {
			if out[s.Node] = k.Value; k.Value == (interval.I{}) {
				out[s.Node] = interval.Whole()
			}
		}
	}
	return out
}

// ranged are the inputs that the case states as a range, or the vocabulary has as one.
func (j *Judged) ranged() map[tape.Node]interval.I {
	out := map[tape.Node]interval.I{}
	for i := range j.Option.Slots {
		s := &j.Option.Slots[i]
		k, ok := j.Model.Of(i)
		if ok && s.Kind == link.GivenSlot && k.Is && (k.Says == "stated" || k.Says == given.Usual) && k.Value.Lo < k.Value.Hi && !s.YesNo && len(s.Words) == 0 {
			out[s.Node] = k.Value
		}
	}
	return out
}

// noRows words the picks for which there is no row.
func (j *Judged) noRows(b *Bench, w *why.Writer) []answer.Reason {
	out := []answer.Reason{}
	no := false
	for _, c := range j.Set.Failed {
		out = append(out, answer.Reason{Rule: c.FullID, What: "need", Strength: rules.StrengthWord(c.Strength), Ground: rules.GroundWord(c.Ground),
			Holds: &no, Text: w.Sentence(c.Why), Remedy: w.Sentence(c.Remedy), Source: b.Base.Cite(c.From, c.Grade), Grade: c.Grade.String(),
			Proved: true, Blocks: c.Strength == link.Must && !b.unstated(j, c)})
	}
	return out
}

// rowNames is what each picked row, and each row of the case, is called.
func (b *Bench) rowNames(j *Judged) map[string]string {
	out := map[string]string{}
	for i := range j.Option.Picks {
		p := &j.Option.Picks[i]
		id := j.Set.Row(p.Full)
		if id == "" {
			continue
		}
		out[p.Full] = id
		for _, r := range b.Given.Rows(p.From) {
			if r.ID == id && r.Says != "" {
				out[p.Full] = r.Says
			}
		}
	}
	for _, side := range []string{"shaft", "hub"} {
		out[side+".material"] = b.Given.Material(side)
	}
	return out
}

// missing asks for what would settle the option, each thing once.
func (b *Bench) missing(j *Judged) []answer.Missing {
	var out []answer.Missing
	seen := map[string]bool{}
	add := func(slots []string) {
		for _, s := range slots {
			name, ask, with := b.Given.Missing(s)
			if k, ok := b.Given.Value(name); ok && k.Is && k.Value.Lo < k.Value.Hi {
				ask = "known only from " + b.Speech.Say(k.Value.Lo, b.Given.Dim(name)) + " to " + b.Speech.Say(k.Value.Hi, b.Given.Dim(name)) + "; find it closer. " + ask
			}
			if !seen[name] {
				seen[name] = true
				out = append(out, answer.Missing{Name: name, Ask: ask, With: with})
			}
		}
	}
	add(j.Found.Missing)
	for i := range j.Found.States {
		if s := &j.Found.States[i]; s.Holds == solve.Depends && s.Applies != solve.No {
			add(s.Of)
		}
	}
	return append(out, b.takenWords(j)...)
}

// takenWords asks for the words that nobody said and that were taken as is
// usual, where another word would pick another row.
func (b *Bench) takenWords(j *Judged) []answer.Missing {
	var out []answer.Missing
	value := func(s link.Slot) link.Known { k, _ := b.Given.Value(s.Name); return k }
	for _, s := range j.Option.Asks() {
		k := value(s)
		if len(s.Words) == 0 || k.Says != given.Usual {
			continue
		}
		if slices.ContainsFunc(j.Option.Picks, func(p link.LinkedPick) bool { return p.HangsOn(s.Name, b.Base.Rows(p.From), value) }) {
			name, ask, with := b.Given.Missing(s.Name)
			out = append(out, answer.Missing{Name: name, Ask: "not stated; taken as " + s.Words[int(k.Best)] + ". " + ask, With: with})
		}
	}
	return out
}

func (j *Judged) scores(b *Bench, a *answer.Option) {
	for _, c := range b.Base.Input.Criteria {
		if j.Option.Criteria[c.ID] == 0 { // ruled out before it was worked out
			continue
		}
		e := j.Mark.Scores[c.ID]
		s := answer.Score{Value: finite(e.Value), Unit: answer.Unit(c.Dim), Points: e.Points, Parts: []answer.Part{}, Dim: c.Dim}
		for _, p := range j.Option.Scores {
			if p.Criterion == c.ID && p.Node != 0 {
				s.Parts = append(s.Parts, part(p.Says, j.Found.Reg[p.Node], c.Dim))
			}
		}
		for _, t := range []struct {
			id, says, of string
			dim          quantity.Dim
		}{{"cost", "bench hours", "total.hours", quantity.TimeDim}, {"cost", "bought and used up", "total.costs", quantity.MoneyDim},
			{"out-of-service", "at the bench", "total.hours", quantity.TimeDim}, {"out-of-service", "waiting", "total.wait", quantity.TimeDim}} {
			if n := j.Option.Totals[t.of]; t.id == c.ID && n != 0 {
				s.Parts = append(s.Parts, part(t.says, j.Found.Reg[n], t.dim))
			}
		}
		a.Scores[c.ID] = s
	}
}

func part(says string, v float64, d quantity.Dim) answer.Part {
	return answer.Part{Says: says, Value: finite(v), Unit: answer.Unit(d), Dim: d}
}

// values are the worked values of the design that have a meaning for a reader;
// what rests on something not known has none.
func (j *Judged) values(w *why.Writer) []answer.Value {
	var out []answer.Value
	names := j.names()
	for i := range j.Option.Named {
		n := &j.Option.Named[i]
		if n.Node == 0 || n.Says == "" || w.Rests(n.Node) {
			continue
		}
		v := j.Found.Reg[n.Node]
		if math.IsNaN(v) || math.IsInf(v, 0) {
			continue
		}
		out = append(out, answer.Value{Name: n.Name, Says: n.Says, Joint: n.Joint, Told: n.Told, Value: v, Unit: answer.Unit(n.Dim), Dim: n.Dim, Formula: j.formula(n.Node, names)})
	}
	return out
}

// names are what nodes are called in formulas: sizes by their own names, what
// has a name of its own by that. A node that rests on no input is a number.
func (j *Judged) names() map[tape.Node]string {
	p, names := j.Option.Program, map[tape.Node]string{}
	for i := range j.Option.Named {
		x := &j.Option.Named[i]
		if _, had := names[x.Node]; !had && len(p.Uses(x.Node)) > 0 {
			names[x.Node] = short(x.Name)
		}
	}
	for i := range j.Option.Dims {
		names[j.Option.Dims[i].Value] = j.Option.Dims[i].ID
	}
	return names
}

// formula spells a value by the names it is worked out from.
func (j *Judged) formula(n tape.Node, names map[tape.Node]string) string {
	p := j.Option.Program
	text := p.Formula(n, func(s tape.Node) string {
		if name, ok := names[s]; ok && s != n {
			return name
		}
		return short(p.SlotName(s))
	})
	return pies.Replace(text)
}

var pies = strings.NewReplacer("3.141592653589793", "pi", "0.7853981633974483", "pi/4")

// short drops the file's name before a private name: hub/bush.wall is wall.
func short(name string) string {
	if i := strings.IndexByte(name, '/'); i >= 0 {
		if k := strings.IndexByte(name[i:], '.'); k >= 0 {
			end := ""
			if strings.HasSuffix(name, ")") && strings.Contains(name[:i], "(") {
				end = name[:strings.IndexByte(name, '(')+1]
			}
			return end + name[i+k+1:]
		}
	}
	return name
}

func (j *Judged) dimension(w solve.Window, words *why.Writer) answer.Dimension {
	d := answer.Dimension{ID: w.ID, Low: answer.Edge{Value: w.Low, By: list(w.LowBy), Slope: map[string]float64{}},
		High:   answer.Edge{Value: w.High, By: list(w.HighBy), Slope: map[string]float64{}},
		Target: w.Target, Lower: w.Lower, Upper: w.Upper, Gauge: w.Gauge, Holds: w.Machine, Made: w.Held}
	for i := range j.Option.Dims {
		if x := &j.Option.Dims[i]; x.ID == w.ID {
			d.Name, d.Part, d.Suits, d.On = x.Says, x.Part, x.Suits, words.Rows[x.By]
		}
	}
	return d
}

func list(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

// finite keeps JSON readable: what cannot be counted is told as the largest number there is.
func finite(v float64) float64 {
	switch {
	case math.IsNaN(v):
		return 0
	case math.IsInf(v, 1):
		return math.MaxFloat64
	case math.IsInf(v, -1):
		return -math.MaxFloat64
	}
	return v
}

func mapKeys[V any](m map[string]V) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}
