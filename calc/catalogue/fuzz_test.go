package catalogue_test

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/catalogue"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
)

// FuzzKernels tries every calculation with every sort of number: nothing panics,
// and fault finds nothing. Plain `go test` runs the seeds; to hunt:
//
//	go test ./calc/catalogue -fuzz FuzzKernels -fuzztime 1m
//
// Kernels are counted, so a find kept as a file tries another one when the list
// has grown; put it into its topic's tests by name.
func FuzzKernels(f *testing.F) {
	all := catalogue.All()
	for i, k := range all {
		for _, places := range seeds(len(k.Args)) {
			f.Add(encode(i, places))
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		k, x := decode(all, data)
		if err := fault(k, x); err != nil {
			t.Errorf("%s: %v", k.Name, err)
		}
	})
}

// fault tells what a kernel does wrong at a place. In its ranges Value is finite
// and what Worked gives, or NaN just where Worked refuses; outside them it is NaN.
// Anywhere, a refusal says what, how much and what is wanted, and Worked gives
// neither NaN for numbers nor a number for NaN.
func fault(k kernel.Kernel, x []float64) error {
	inside := true
	for i, a := range k.Args {
		inside = inside && a.Range.Has(x[i])
	}
	got := k.Value(x)
	sheet, err := k.Worked(x)
	if err != nil {
		if bad := unclear(err); bad != nil {
			return fmt.Errorf("%v: %w", x, bad)
		}
	}
	switch {
	case !inside && !math.IsNaN(got):
		return fmt.Errorf("%v is outside the ranges, yet the value is %v; it must be NaN", x, got)
	case !inside && err == nil && sane(x) && math.IsNaN(sheet.Result):
		return fmt.Errorf("%v is outside the ranges and Worked gives NaN for it; it must refuse", x)
	case err == nil && slices.ContainsFunc(x, math.IsNaN):
		return fmt.Errorf("%v holds what is no number, yet Worked gives %v for it; it must refuse", x, sheet.Result)
	case !inside:
		return nil
	case math.IsInf(got, 0):
		return fmt.Errorf("%v gives %v; it must be finite or NaN", x, got)
	case math.IsNaN(got) && err == nil:
		return fmt.Errorf("%v gives NaN, but Worked gives %v; it must refuse too", x, sheet.Result)
	case math.IsNaN(got):
		return nil
	case err != nil:
		return fmt.Errorf("%v gives %v, but Worked refuses: %w", x, got, err)
	case !(math.Abs(got-sheet.Result) <= 1e-12*max(math.Abs(got), math.Abs(sheet.Result))): // two ways of writing one formula
		return fmt.Errorf("%v gives %v, but Worked gives %v", x, got, sheet.Result)
	case len(sheet.Steps) == 0:
		return fmt.Errorf("at %v Worked shows no steps", x)
	}
	return nil
}

// sane reports whether numbers are small enough that no formula of theirs runs
// out of float64: 30 powers of ten to either side, our choice.
func sane(x []float64) bool {
	return !slices.ContainsFunc(x, func(v float64) bool { return v != 0 && !(math.Abs(v) > 1e-30 && math.Abs(v) < 1e30) })
}

// unclear tells what a reader would miss in an error.
func unclear(err error) error {
	var r *basis.Refusal
	if !errors.As(err, &r) {
		return fmt.Errorf("the error %q is no refusal", err)
	}
	for _, part := range []string{r.Name, r.Value, r.Want} {
		if strings.TrimSpace(part) == "" || strings.Contains(part, "%!") {
			return fmt.Errorf("the refusal must name what it blames, its value and what is wanted: %q", *r)
		}
	}
	return nil
}

func TestTheFuzzCanFail(t *testing.T) {
	args := []kernel.Arg{{Name: "side", Says: "side of the square", Range: interval.Of(1, 3)}}
	area := func(x []float64) float64 { return x[0] * x[0] }
	refuses := func(r basis.Refusal) func([]float64) (kernel.Sheet, error) {
		return func([]float64) (kernel.Sheet, error) { return kernel.Sheet{}, &r }
	}
	answers := func(result float64, steps ...string) func([]float64) (kernel.Sheet, error) {
		return func([]float64) (kernel.Sheet, error) {
			return kernel.Sheet{Result: result, Steps: steps}, nil
		}
	}
	gives := func(v float64) func([]float64) float64 { return func([]float64) float64 { return v } }
	whole := basis.Refusal{Name: "side", Value: "2 m", Want: "another"}
	for _, c := range []struct {
		what   string
		side   float64
		value  func([]float64) float64
		worked func([]float64) (kernel.Sheet, error)
		says   string
	}{
		{"sound", 2, area, answers(4, "2·2"), ""},
		{"refused as it should", 2, gives(math.NaN()), refuses(whole), ""},
		{"answered outside", 4, area, answers(16, "4·4"), "it must be NaN"},
		{"endless", 2, gives(math.Inf(1)), answers(math.Inf(1), "2·2"), "finite or NaN"},
		{"no value for what is worked", 2, gives(math.NaN()), answers(4, "2·2"), "must refuse too"},
		{"a value for what is refused", 2, area, refuses(whole), "Worked refuses"},
		{"two values", 2, area, answers(4.1, "2·2"), "Worked gives 4.1"},
		{"no steps", 2, area, answers(4), "no steps"},
		{"blames nothing", 2, gives(math.NaN()), refuses(basis.Refusal{Name: " ", Value: "2 m", Want: "another"}), "must name"},
		{"shows no value", 2, gives(math.NaN()), refuses(basis.Refusal{Name: "side", Want: "another"}), "must name"},
		{"wants nothing", 2, gives(math.NaN()), refuses(basis.Refusal{Name: "side", Value: "2 m"}), "must name"},
		{"misprinted", 2, gives(math.NaN()), refuses(basis.Refusal{Name: "side", Value: "%!g(string=2) m", Want: "another"}), "must name"},
		{"outside too", 4, gives(math.NaN()), refuses(basis.Refusal{Name: "side", Value: "4 m"}), "must name"},
		{"not a refusal", 2, gives(math.NaN()), func([]float64) (kernel.Sheet, error) { return kernel.Sheet{}, errors.New("bad") }, "no refusal"},
		{"NaN for a number", 4, gives(math.NaN()), answers(math.NaN(), "4·4"), "must refuse"},
		{"a number for NaN", math.NaN(), gives(math.NaN()), answers(0, "0"), "must refuse"},
	} {
		err := fault(kernel.Kernel{Name: "square", Args: args, Value: c.value, Worked: c.worked}, []float64{c.side})
		if got := fmt.Sprint(err); (c.says == "") != (err == nil) || !strings.Contains(got, c.says) && c.says != "" {
			t.Errorf("%s: fault says %q, want %q", c.what, got, c.says)
		}
	}
}

// place is how an argument is found in or about its range: a way, and eight
// bytes that say how far. An argument takes nine bytes.
type place struct {
	way byte
	far uint64
}

const (
	evenly   = iota // far of 2^64 through the range
	byRatio         // the same by ratio, where the range spans decades
	lowEnd          // the range takes in its ends
	highEnd         //
	under           // the next number below the range
	over            // the next above
	beside          // as near as float64 goes to the argument before: a wall of nothing
	anything        // far is the number's own bits: NaN, infinities, the smallest
	ways
)

func (p place) in(r interval.I, before float64) float64 {
	u := float64(p.far) / (1 << 64)
	x := r.Lo + u*(r.Hi-r.Lo)
	switch p.way % ways {
	case byRatio:
		if r.Lo > 0 {
			x = r.Lo * math.Pow(r.Hi/r.Lo, u)
		}
	case lowEnd:
		return r.Lo
	case highEnd:
		return r.Hi
	case under:
		return math.Nextafter(r.Lo, math.Inf(-1))
	case over:
		return math.Nextafter(r.Hi, math.Inf(1))
	case beside:
		return math.Float64frombits(math.Float64bits(before) + p.far%8 - 4)
	case anything:
		return math.Float64frombits(p.far)
	}
	return min(max(x, r.Lo), r.Hi)
}

func bits(x float64) place { return place{anything, math.Float64bits(x)} }

// encode and decode put a kernel's number and its arguments' places into bytes;
// bytes that are missing are noughts.
func encode(number int, places []place) []byte {
	out := binary.BigEndian.AppendUint16(nil, uint16(number))
	for _, p := range places {
		out = binary.BigEndian.AppendUint64(append(out, p.way), p.far)
	}
	return out
}

func decode(all []kernel.Kernel, data []byte) (kernel.Kernel, []float64) {
	take := func(n int) []byte {
		out := make([]byte, n)
		data = data[copy(out, data):]
		return out
	}
	k := all[int(binary.BigEndian.Uint16(take(2)))%len(all)]
	x := make([]float64, len(k.Args))
	before := 0.0
	for i, a := range k.Args {
		b := take(9)
		x[i] = place{b[0], binary.BigEndian.Uint64(b[1:])}.in(a.Range, before)
		before = x[i]
	}
	return k, x
}

// seeds are the first corners of the ranges, some places spread through them, and
// the first of those again with one argument astray.
func seeds(args int) [][]place {
	var out [][]place
	for corner := range 1 << min(args, 4) {
		places := make([]place, args)
		for i := range places {
			places[i].way = lowEnd + byte(corner>>i&1)
		}
		out = append(out, places)
	}
	const golden = 0x9e3779b97f4a7c15 // 2^64 over the golden ratio: steps that spread evenly
	spread := len(out)
	for n := range 12 {
		places := make([]place, args)
		for i := range places {
			places[i] = place{byte(n % 2), golden * uint64(1+n*args+i)}
		}
		out = append(out, places)
	}
	for i := range args {
		for _, astray := range []place{{way: under}, {way: over}, {beside, 3}, {beside, 4}, {beside, 5}, bits(-1), bits(0), bits(1000), bits(math.NaN()), bits(math.Inf(1))} {
			places := append([]place(nil), out[spread]...)
			places[i] = astray
			out = append(out, places)
		}
	}
	return out
}
