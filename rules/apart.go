package rules

import (
	"maps"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"wornfit/rules/fault"
)

// apart does a piece of work for each of n files with a loader of its own, on
// all cores, and brings together what they told in the order of the files.
// Where a layer lays numbers or rules over others the files are read one by one:
// an override may be told of from any of them.
func (l *loader) apart(n int, work func(sub *loader, i int)) {
	subs := make([]*loader, n)
	if len(l.replace) > 0 {
		for i := range n {
			work(l, i)
		}
		return
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		wait.Go(func() {
			for i := next.Add(1) - 1; int(i) < n; i = next.Add(1) - 1 {
				subs[i] = l.alone()
				work(subs[i], int(i))
			}
		})
	}
	wait.Wait()
	for _, s := range subs {
		l.join(s)
	}
}

// alone is a loader that knows what this one does and tells apart from it.
func (l *loader) alone() *loader {
	sub, base := *l, *l.base
	base.Numbers = Tally{}
	sub.base, sub.faults, sub.ids, sub.chain, sub.shaky = &base, nil, map[string]fault.Place{}, nil, false
	return &sub
}

// join takes over what a loader that worked apart found.
func (l *loader) join(s *loader) {
	l.faults = append(l.faults, s.faults...)
	for g, n := range s.base.Numbers {
		l.base.Numbers[g] += n
	}
	for _, id := range slices.Sorted(maps.Keys(s.ids)) {
		at := s.ids[id]
		if had, again := l.ids[id]; again {
			l.faults = append(l.faults, twice(id, at, had))
			continue
		}
		l.ids[id] = at
	}
}

// twice is an id that two rules have.
func twice(id string, at, had fault.Place) fault.Fault {
	return fault.Fault{At: at, Key: "id", Says: "the id " + id + " stands at " + had.String() + " already",
		Remedy: "choose another: ids are never used twice", Also: []fault.Place{had}}
}
