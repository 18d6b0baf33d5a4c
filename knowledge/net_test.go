package knowledge_test

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"wornfit/rules"
	"wornfit/rules/lang"
	"wornfit/rules/link"
)

// The safety net: every shipped expression, drawn over what the vocabulary
// allows, comes to the same in every way the program is run, and the same as
// expr's own VM makes of the text in the file.

// traced links every option of every purpose with a list of what was lowered, and
// each lock once on each joint it may have.
func traced(t *testing.T, base *rules.Base) []*link.Option {
	t.Helper()
	in := base.Input
	in.Trace = true
	var out []*link.Option
	for _, p := range in.Parts {
		if p.Side != link.Purpose {
			continue
		}
		locked := map[string]bool{}
		for _, c := range link.Every(in, p) {
			if again := lockedAs(c, p); again != "" && locked[again] {
				continue
			} else {
				locked[again] = true
			}
			o, err := c.Link(in)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, o)
		}
	}
	return out
}

// lockedAs names the lock that a combination has beyond what its purpose asks for,
// and on which joint; "" when it has none.
func lockedAs(c link.Combination, p *link.Part) string {
	for joint, lock := range c.Locks {
		if !slices.Contains(p.Locks, lock.ID) {
			return joint + " " + lock.ID
		}
	}
	return ""
}

// onAllCores does the work for 0 to n-1.
func onAllCores(n int, work func(i int)) {
	next := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wg.Wait()
}

// tally counts what was looked at, so that a test that looks at nothing fails.
type tally struct {
	mu     sync.Mutex
	counts map[string]int
}

func (t *tally) add(what string, n int) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.counts == nil {
		t.counts = map[string]int{}
	}
	t.counts[what] += n
}

const (
	leastFinite = 300 // of the draws of an expression: the rest decide nothing
	near        = 1e-12
)

// Plain values are what expr's VM makes of the text.
func TestEveryExpressionIsWhatTheVMSays(t *testing.T) {
	base := shipped(t)
	options := traced(t, base)
	type key struct {
		e     *lang.Expr
		joint string
	}
	finite := map[key]int{}
	files, seen := written{}, 0
	for _, o := range options {
		for _, l := range lots(o) {
			d := newDrawer(base, l.name)
			var regs [][]float64
			for i := range l.lowered {
				x := &l.lowered[i]
				k := key{x.Expr, x.Joint}
				if finite[k] >= leastDraws/2 {
					continue
				}
				if regs == nil {
					regs, _ = d.draws(&l)
				}
				n, err := compare(files, x, &base.Input, regs)
				if err != nil {
					t.Errorf("%s, %s: %v", l.name, x.Expr.At, err)
					n = leastDraws
				}
				finite[k] += n
				seen += n
			}
		}
	}
	for k, n := range finite {
		if n < leastFinite {
			t.Errorf("%s: only %d draws were finite; %d are wanted", k.e.At, n, leastFinite)
		}
	}
	t.Logf("%d expressions in %d options, %d finite draws", len(finite), len(options), seen)
}

// compare counts the draws in which the VM decides, and tells the first where
// the program differs.
func compare(files written, x *link.Lowered, in *link.Input, regs [][]float64) (decided int, err error) {
	r, err := refereeOf(files, x, in)
	if err != nil {
		return 0, err
	}
	for _, reg := range regs {
		want, ok, err := r.run(x, reg)
		switch got := reg[x.Node]; {
		case err != nil:
			return decided, err
		case !ok:
		case !(math.Abs(got-want) <= near*max(math.Abs(got), math.Abs(want))):
			return decided, fmt.Errorf("the program gives %v, the VM %v, for %v", got, want, r.values)
		default:
			decided++
		}
	}
	return decided, nil
}
