package judge

import (
	"cmp"
	"slices"
	"sort"

	"wornfit/advisor/answer"
	"wornfit/advisor/rank"
	"wornfit/rules/link"
)

// A Contest finds the best of many options without working out those that
// cannot win: the most an option may earn is known from its first look, so one
// that may earn less than a rival already does need not be worked out. Who wins
// is the same as if all had been.
type Contest struct {
	bench  *Bench
	list   []*entry
	groups [][]*entry // each wants its best known: a trade name, what buys a part
	want   int        // how many of the best are wanted over all
	width  int        // how many are worked out in a round towards that
}

// entry is an option in the contest.
type entry struct {
	Rough
	judged *Judged
}

// NewContest lines up what was looked over. wanted are ids and names to be worked
// out in any case.
func (b *Bench) NewContest(roughs []Rough, want int) *Contest {
	c := &Contest{bench: b, want: want, width: 4}
	byName := map[string]int{}
	group := func(name string, e *entry) {
		at, ok := byName[name]
		if !ok {
			at = len(c.groups)
			byName[name] = at
			c.groups = append(c.groups, nil)
		}
		c.groups[at] = append(c.groups[at], e)
	}
	for i := range roughs {
		e := &entry{Rough: roughs[i], judged: roughs[i].judged}
		c.list = append(c.list, e)
		if e.trade != nil {
			group(e.trade.ID, e)
		}
		for _, what := range bought(e.Combination) {
			group(what, e)
		}
	}
	for _, g := range append(c.groups, c.list) {
		sort.SliceStable(g, func(i, k int) bool { return g[i].before(g[k]) })
	}
	return c
}

// bought names the parts that are bought in an option.
func bought(c link.Combination) []string {
	var out []string
	for _, p := range []*link.Part{c.Shaft, c.Hub} {
		if p.Bought {
			out = append(out, "bought "+p.Side.String())
		}
	}
	return out
}

// Buys names the parts that are bought.
func (j *Judged) Buys() []string { return bought(j.Combination) }

// before puts what may earn more first, what is ruled out last.
func (e *entry) before(o *entry) bool {
	if e.Out != o.Out {
		return !e.Out
	}
	if d := e.hope().compare(o.hope()); !e.Out && d != 0 {
		return d > 0
	}
	if e.Out && e.kind == o.kind {
		if a, b := e.plainness(), o.plainness(); a[0] != b[0] || e.broken == o.broken && a != b {
			return slices.Compare(a[:], b[:]) < 0
		}
	}
	if e.Out {
		return rank.Better(e.ruledOut(), o.ruledOut(), e.broken, o.broken)
	}
	return e.Combination.ID < o.Combination.ID
}

// ruledOut is an entry as the ranking sees what is ruled out.
func (e *entry) ruledOut() *answer.Option {
	return &answer.Option{ID: e.Combination.ID, Verdict: answer.RuledOut, Kind: e.kind}
}

// standing is where an option stands among those not ruled out: whether it works,
// then its points.
type standing struct {
	works  bool
	points float64
}

func (s standing) compare(o standing) int {
	if s.works != o.works {
		if s.works {
			return 1
		}
		return -1
	}
	return cmp.Compare(s.points, o.points)
}

// hope is the best an option may yet come to.
func (e *entry) hope() standing { return standing{!e.unsure, e.Most} }

// plainness orders what is ruled out alike by who speaks best for its name: what
// the name lists first, whatever is in its way, then the parts that ask least,
// then the hold that is asked most of.
func (e *entry) plainness() [3]int {
	c, listed := e.Combination, 0
	if e.trade != nil {
		listed = max(slices.Index(e.trade.Hub, c.Hub.ID), 0) + max(slices.Index(e.trade.Shaft, c.Shaft.ID), 0)
	}
	holds := 0
	for _, h := range c.Holds {
		holds += demands(h)
	}
	return [3]int{listed, demands(c.Shaft) + demands(c.Hub), -holds}
}

func demands(p *link.Part) int { return len(p.Needs) + len(p.Limits) }

// mostOut is how many of a name are worked out when all of it is ruled out: the
// easiest to mend, as far as a first look tells.
const mostOut = 2

// mostUnsure is how many of a name are worked out when none of it can be told to
// work: those that may earn most. Points say little of what is not known to work.
const mostUnsure = 4

// Round gives the options to be worked out next; none: the contest is decided.
func (c *Contest) Round() []link.Combination {
	var next []*entry
	add := func(list []*entry) {
		for _, e := range list {
			if !slices.Contains(next, e) {
				next = append(next, e)
			}
		}
	}
	for _, e := range c.list {
		if e.judged == nil && c.bench.asked(e.Combination) {
			add([]*entry{e})
		}
	}
	for _, g := range c.groups {
		add(undecided(g, 1, 1))
	}
	add(undecided(c.list, c.want, c.width))
	var out []link.Combination
	for _, e := range next {
		out = append(out, e.Combination)
	}
	return out
}

// Take enters what was worked out.
func (c *Contest) Take(list []*Judged) {
	for _, j := range list {
		at := slices.IndexFunc(c.list, func(e *entry) bool { return e.Combination.ID == j.Combination.ID })
		c.list[at].judged = j
	}
}

// undecided are the next few to work out until the best `want` of a list, in
// order of what they may earn, are known.
func undecided(list []*entry, want, width int) []*entry {
	var found []standing
	open, known := false, false
	for _, e := range list {
		if j := e.judged; j != nil {
			known = true
			if j.Open() {
				open, found = true, append(found, standing{j.worked(), j.Mark.Points})
			}
		}
	}
	slices.SortFunc(found, func(a, b standing) int { return b.compare(a) })
	var out []*entry
	outs, unsure := 0, 0
	for _, e := range list {
		switch {
		case e.Out:
			outs++
		case e.unsure:
			unsure++
		}
		if e.judged != nil || len(out) == width {
			continue
		}
		switch {
		case e.unsure && (want > 1 || open && unsure > mostUnsure):
			return out // of what cannot be told to work a name shows its most hopeful
		case len(found) >= want && (e.Out || e.hope().compare(found[want-1]) <= 0):
			return out
		case e.Out && (open || want > 1 && known || outs > mostOut):
			return out // cannot stand before what is open
		}
		out = append(out, e)
	}
	return out
}

// Judged are all that were worked out, in order of rank.
func (c *Contest) Judged() []*Judged {
	var out []*Judged
	for _, e := range c.list {
		if e.judged != nil {
			out = append(out, e.judged)
		}
	}
	Sort(out)
	return out
}

// All lists every option in the contest that is not worked out yet.
func (c *Contest) All() []link.Combination {
	var out []link.Combination
	for _, e := range c.list {
		if e.judged == nil {
			out = append(out, e.Combination)
		}
	}
	return out
}

// asked reports an option that was named by its id, or by its trade name alone
// when that is answered by its best.
func (b *Bench) asked(c link.Combination) bool { return slices.Contains(b.Asked, c.ID) }

// Others counts the options of a trade name beside its best.
func (c *Contest) Others(name string) int {
	n := -1
	for _, e := range c.list {
		if e.trade != nil && e.trade.ID == name {
			n++
		}
	}
	return max(n, 0)
}

// IDs lists every option there is.
func (c *Contest) IDs() []string {
	var out []string
	for _, e := range c.list {
		out = append(out, e.Combination.ID)
	}
	slices.Sort(out)
	return out
}
