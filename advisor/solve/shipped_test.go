package solve_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"testing"

	"wornfit/advisor"
	"wornfit/advisor/answer"
	"wornfit/advisor/casefile"
	"wornfit/advisor/condition"
	"wornfit/advisor/given"
	"wornfit/advisor/judge"
	"wornfit/advisor/rank"
	"wornfit/advisor/solve"
	"wornfit/calc/interval"
	"wornfit/knowledge"
	"wornfit/rules"
	"wornfit/rules/link"
)

var shipped = []string{"lever-eye", "gear-bore", "loose-hub"}

func load(t testing.TB, name string) (*rules.Base, *casefile.Case) {
	t.Helper()
	base, faults := knowledge.Load()
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	data, err := os.ReadFile("../../testdata/cases/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(name, data, base.Vocabulary, casefile.IDs{"materials": base.IDs("materials"), "machines": base.IDs("machines")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return base, c
}

// designs works out every option of a shipped case that works, in full.
func designs(t testing.TB, name string) (out []*judge.Judged) {
	t.Helper()
	base, c := load(t, name)
	f := c.Fits[0]
	cond, _ := condition.Find(c, f, func(string) (interval.I, bool) { return interval.I{}, false })
	weights := rank.Weights{}
	for _, cr := range base.Input.Criteria {
		weights[cr.ID] = cr.Weight
	}
	bench := &judge.Bench{Base: base, Given: given.New(base, cond), Speech: c.Speech(), Weights: weights}
	for _, combination := range link.All(base.Input, base.Purpose(f.Purpose)) {
		j, err := bench.Judge(combination)
		if err != nil {
			t.Fatal(err)
		}
		if j.Verdict != answer.Works && j.Verdict != answer.WithCare {
			continue
		}
		if err := bench.Finish(j, true); err != nil {
			t.Fatal(err)
		}
		if len(j.Found.Windows) > 0 {
			out = append(out, j)
		}
	}
	return out
}

// truth sets every slot of a design to sizes that may be true: cuts anywhere in
// their tolerance, gauges and readings anywhere in their doubt.
type truth struct {
	j   *judge.Judged
	r   *rand.Rand
	reg []float64
}

func (u *truth) draw(moved int, to float64) {
	o := u.j.Option
	for i, s := range o.Slots {
		k, ok := u.j.Model.Of(i)
		if !ok {
			continue
		}
		u.reg[s.Node] = k.Best
		if k.Is && k.Value.Lo < k.Value.Hi && len(s.Words) == 0 && !s.YesNo {
			u.reg[s.Node] = u.within(k.Value.Lo, k.Value.Hi)
		}
	}
	for i, d := range o.Dims {
		w := u.j.Found.Windows[i]
		u.reg[d.Target] = w.Target
		u.reg[d.Cut], u.reg[d.Gauge] = u.within(-w.Width/2, w.Width/2), u.within(-w.Gauge, w.Gauge)
		if i == moved { // its window is for the size itself
			u.reg[d.Target], u.reg[d.Cut] = to, 0
		}
		for k, l := range o.Dims[:i] { // what suits it follows
			if l.ID == d.Suits {
				u.reg[d.Target] += u.reg[l.Target] - u.j.Found.Windows[k].Target
			}
		}
	}
	o.Program.Run(u.reg)
}

// within is most often an end: that is where rules break.
func (u *truth) within(lo, hi float64) float64 {
	switch u.r.IntN(4) {
	case 0:
		return lo
	case 1:
		return hi
	}
	return lo + (hi-lo)*u.r.Float64()
}

// Whatever the true sizes, a design keeps every limit it is said to keep, with
// each size anywhere in its tolerance; and each size may lie anywhere in its
// window while the others stand.
func TestNoTrueSizeBreaksWhatIsKept(t *testing.T) {
	proved, kept := 0, 0
	for _, name := range shipped {
		for n, j := range designs(t, name) {
			u := &truth{j, rand.New(rand.NewPCG(uint64(n), 99)), make([]float64, j.Option.Program.Len())}
			j.Option.Program.Start(u.reg)
			for _, s := range j.Found.States {
				if s.Holds == solve.Yes && s.Proved {
					proved++
				} else if s.Holds == solve.Yes {
					kept++
				}
			}
			for i := range 12_000 {
				moved, to := -1, 0.0
				if i%2 > 0 {
					moved = u.r.IntN(len(j.Found.Windows))
					w := j.Found.Windows[moved]
					to = u.within(w.Low, w.High)
				}
				u.draw(moved, to)
				for k := range j.Option.Checks {
					c, s := &j.Option.Checks[k], &j.Found.States[k]
					if c.Need || s.Applies != solve.Yes || s.Holds != solve.Yes {
						continue
					}
					// the ends of windows are bisected to 5 nm
					if m := u.reg[c.Margin]; !(m >= -1e-6*math.Max(math.Abs(u.reg[c.Left]), math.Abs(u.reg[c.Right]))-6e-9) {
						t.Fatalf("%s %s: %s is said to hold (proved %v), but comes out at %g of %g (moved %d)", name, j.Combination.ID, c.FullID, s.Proved, m, u.reg[c.Right], moved)
					}
				}
			}
		}
	}
	t.Logf("%d limits proved, %d kept and not proved", proved, kept)
	if proved < 10*kept {
		t.Errorf("only %d of %d kept limits are proved", proved, proved+kept)
	}
}

// The same case gives the same bytes on one core and on two.
func TestTheSameBytesOnOneCoreOrTwo(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, name := range shipped {
		base, c := load(t, name)
		var first string
		for _, cores := range []int{1, 2, 2, 3} {
			runtime.GOMAXPROCS(cores)
			a, err := advisor.Advise(base, c, c.Fits[0], advisor.Ask{Speech: c.Speech()})
			if err != nil {
				t.Fatal(err)
			}
			data, err := json.Marshal(a)
			if err != nil {
				t.Fatal(err)
			}
			if first == "" {
				first = string(data)
			}
			if got := string(data); got != first {
				t.Errorf("%s differs on %d cores %s", name, cores, at(first, got))
			}
		}
	}
}

func at(a, b string) string {
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("at %d: %q and %q", i, a[max(0, i-60):min(len(a), i+40)], b[max(0, i-60):min(len(b), i+40)])
		}
	}
	return "in length"
}
