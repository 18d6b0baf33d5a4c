// Package kerneltest holds every kernel to what it promises: Check tries it all
// over its ranges, at their edges and beyond them. It knows no formula, so it
// finds a broken promise, never a wrong textbook.
package kerneltest

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"runtime"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
)

// Tries is how many points of a kernel's ranges Check looks at, besides their corners:
// our choice, a fraction of a second for the slowest.
const Tries = 2000

// Check fails t for every promise of kernel.Kernel that one of ks breaks.
//
// In its ranges a Value is finite, or NaN exactly where Worked refuses the parts
// as impossible; elsewhere it gives the number Worked gives. Outside a range, and
// for NaN, it is NaN. It allocates nothing. Trends, Slopes and Enclose hold.
func Check(t *testing.T, ks []kernel.Kernel) {
	t.Helper()
	if len(ks) == 0 {
		t.Fatal("no kernels to check")
	}
	seen := map[string]bool{}
	for _, k := range ks {
		t.Run(k.Name, func(t *testing.T) {
			if seen[k.Name] {
				t.Fatalf("two kernels are named %s", k.Name)
			}
			seen[k.Name] = true
			for _, broken := range faults(k) {
				t.Error(broken)
			}
		})
	}
}

func faults(k kernel.Kernel) []error {
	if err := labels(k); err != nil {
		return []error{err}
	}
	points := sample(k.Args)
	var all []error
	for _, check := range []func(kernel.Kernel, [][]float64) error{values, outside, trends, slopes, enclosures, allocations} {
		if err := check(k, points); err != nil {
			all = append(all, err)
		}
	}
	return all
}

var snake = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

func labels(k kernel.Kernel) error {
	if !snake.MatchString(k.Name) || k.Says == "" || k.Source == "" || k.Value == nil || k.Worked == nil || len(k.Args) == 0 {
		return fmt.Errorf("%q needs a snake_case name, says, source, arguments, Value and Worked", k.Name)
	}
	names := map[string]bool{}
	for _, a := range k.Args {
		if !snake.MatchString(a.Name) || a.Says == "" || names[a.Name] {
			return fmt.Errorf("argument %q needs a snake_case name of its own and a meaning", a.Name)
		}
		names[a.Name] = true
		if w := a.Range.Width(); !(w > 0) || math.IsInf(w, 0) {
			return fmt.Errorf("argument %s has the range %v; it must have two ends, both finite", a.Name, a.Range)
		}
		if a.Trend < -1 || a.Trend > 1 {
			return fmt.Errorf("argument %s has the trend %d; it must be -1, 0 or 1", a.Name, a.Trend)
		}
	}
	return nil
}

// values holds Value to Worked, and asks that enough of the ranges has an answer
// for the other checks to mean something.
func values(k kernel.Kernel, points [][]float64) error {
	answered := 0
	for _, x := range points {
		got := k.Value(x)
		sheet, err := k.Worked(x)
		var refusal *basis.Refusal
		switch {
		case math.IsInf(got, 0):
			return fmt.Errorf("%v gives %v; it must be finite or NaN", x, got)
		case math.IsNaN(got) && !errors.As(err, &refusal):
			return fmt.Errorf("%v gives NaN, but Worked gives %v and the error %v; it must refuse too", x, sheet.Result, err)
		case math.IsNaN(got):
			continue
		case err != nil:
			return fmt.Errorf("%v gives %v, but Worked refuses: %v", x, got, err)
		case !near(got, sheet.Result, 1e-12):
			return fmt.Errorf("%v gives %v, but Worked gives %v", x, got, sheet.Result)
		case len(sheet.Steps) == 0:
			return fmt.Errorf("at %v Worked shows no steps", x)
		}
		answered++
	}
	if answered*20 < len(points) {
		return fmt.Errorf("only %d of %d points have an answer; narrow the ranges", answered, len(points))
	}
	return nil
}

func outside(k kernel.Kernel, points [][]float64) error {
	x := answeredPoint(k, points)
	for i, a := range k.Args {
		step := 1e-6 * a.Range.Width()
		for _, beyond := range []float64{a.Range.Lo - step, a.Range.Hi + step, math.Inf(-1), math.Inf(1), math.NaN()} {
			if got := k.Value(with(x, i, beyond)); !math.IsNaN(got) {
				return fmt.Errorf("%s = %v is outside %v, yet the value is %v; it must be NaN", a.Name, beyond, a.Range, got)
			}
		}
	}
	return nil
}

func trends(k kernel.Kernel, points [][]float64) error {
	for n, x := range points {
		was := k.Value(x)
		for i, a := range k.Args {
			if a.Trend == 0 || math.IsNaN(was) {
				continue // nothing promised; a slow kernel is not run for nothing
			}
			y := with(x, i, points[(n+7*i+1)%len(points)][i])
			now := k.Value(y)
			if math.IsNaN(now) {
				continue
			}
			rise := (now - was) * float64(a.Trend)
			if y[i] < x[i] {
				rise = -rise
			}
			if rise < -1e-12*max(math.Abs(now), math.Abs(was)) {
				return fmt.Errorf("trend %+d of %s is broken: %v at %v, %v at %v", a.Trend, a.Name, was, x, now, y)
			}
		}
	}
	return nil
}

// slopes compares with central differences over a millionth of each range.
func slopes(k kernel.Kernel, points [][]float64) error {
	if k.Slopes == nil {
		return nil
	}
	out := make([]float64, len(k.Args))
	for _, x := range points {
		if math.IsNaN(k.Value(x)) {
			continue
		}
		k.Slopes(x, out)
		for i, a := range k.Args {
			h := 1e-6 * a.Range.Width()
			lo, hi := k.Value(with(x, i, x[i]-h)), k.Value(with(x, i, x[i]+h))
			if math.IsNaN(lo) || math.IsNaN(hi) {
				continue
			}
			slope := (hi - lo) / (2 * h)
			if math.Abs(slope-out[i]) > 1e-4*max(math.Abs(slope), math.Abs(out[i]))+1e-9*math.Abs(k.Value(x))/h {
				return fmt.Errorf("slope over %s at %v is %v, by differences %v", a.Name, x, out[i], slope)
			}
		}
	}
	return nil
}

// enclosures draws boxes and asks that none of their points has a value outside.
func enclosures(k kernel.Kernel, _ [][]float64) error {
	if k.Enclose == nil {
		return nil
	}
	d := drawing(len(k.Args))
	box := make([]interval.I, len(k.Args))
	x := make([]float64, len(k.Args))
	for try := range 200 {
		mid, half := d.next(), math.Pow(10, -float64(try%6))
		for i, a := range k.Args {
			box[i] = interval.Around(at(a, mid[i], false), half*a.Range.Width()/2).Meet(a.Range)
		}
		bound := k.Enclose(box)
		for range 20 {
			for i, u := range d.next() {
				x[i] = min(max(box[i].Lo+u*(box[i].Hi-box[i].Lo), box[i].Lo), box[i].Hi)
			}
			if v := k.Value(x); !math.IsNaN(v) && !bound.Has(v) {
				return fmt.Errorf("%v lies in the box %v and gives %v, outside its enclosure %v", x, box, v, bound)
			}
		}
	}
	return nil
}

// allocations counts over all points at once: testing rounds an average down.
func allocations(k kernel.Kernel, points [][]float64) error {
	if all := testing.AllocsPerRun(1, func() {
		for _, x := range points {
			runtime.KeepAlive(k.Value(x))
		}
	}); all != 0 {
		return fmt.Errorf("%d calls of Value allocate %v times; they must not", len(points), all)
	}
	return nil
}

func near(a, b, rel float64) bool {
	return math.Abs(a-b) <= rel*max(math.Abs(a), math.Abs(b))
}
