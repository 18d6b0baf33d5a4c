package kerneltest

import (
	"math"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
)

// square is a sound kernel: x² between 1 and 3.
func square() kernel.Kernel {
	args := []kernel.Arg{{Name: "side", Says: "side of the square", Range: interval.Of(1, 3), Trend: 1}}
	return kernel.Kernel{
		Name: "square", Says: "area", Args: args, Source: "Euclid",
		Value:   kernel.Within(args, func(x []float64) float64 { return x[0] * x[0] }),
		Slopes:  func(x, out []float64) { out[0] = 2 * x[0] },
		Enclose: func(x []interval.I) interval.I { return x[0].Sqr() },
		Worked: func(x []float64) (kernel.Sheet, error) {
			return kernel.Sheet{Result: x[0] * x[0], Steps: []string{"side times side"}}, nil
		},
	}
}

func TestASoundKernelPasses(t *testing.T) {
	Check(t, []kernel.Kernel{square()})
}

func TestEveryBrokenPromiseIsFound(t *testing.T) {
	for _, c := range []struct {
		promise string
		spoil   func(*kernel.Kernel)
		says    string
	}{
		{"no name", func(k *kernel.Kernel) { k.Name = "Square" }, "snake_case"},
		{"an argument without meaning", func(k *kernel.Kernel) { k.Args[0].Says = "" }, "meaning"},
		{"an endless range", func(k *kernel.Kernel) { k.Args[0].Range.Hi = math.Inf(1) }, "both finite"},
		{"clamps instead of NaN", func(k *kernel.Kernel) {
			k.Value = func(x []float64) float64 { return min(max(x[0], 1), 3) * min(max(x[0], 1), 3) }
		}, "must be NaN"},
		{"infinite", func(k *kernel.Kernel) {
			k.Value = kernel.Within(k.Args, func(x []float64) float64 { return 1 / (x[0] - 1) })
		}, "finite or NaN"},
		{"another number than the worked one", func(k *kernel.Kernel) {
			k.Value = kernel.Within(k.Args, func(x []float64) float64 { return x[0] * x[0] * 1.0001 })
		}, "but Worked gives"},
		{"NaN where Worked answers", func(k *kernel.Kernel) {
			k.Value = kernel.Within(k.Args, func(x []float64) float64 { return math.Sqrt(x[0]-2) * 0 })
		}, "must refuse too"},
		{"a number where Worked refuses", func(k *kernel.Kernel) {
			k.Worked = func([]float64) (kernel.Sheet, error) { return kernel.Sheet{}, &basis.Refusal{} }
		}, "Worked refuses"},
		{"falls where it should rise", func(k *kernel.Kernel) { k.Args[0].Trend = -1 }, "trend -1"},
		{"a wrong slope", func(k *kernel.Kernel) { k.Slopes = func(_, out []float64) { out[0] = 2 } }, "slope"},
		{"an enclosure that does not enclose", func(k *kernel.Kernel) {
			k.Enclose = func(x []interval.I) interval.I { return interval.Point(x[0].Mid() * x[0].Mid()) }
		}, "enclosure"},
		{"allocates", func(k *kernel.Kernel) {
			k.Value = kernel.Within(k.Args, func(x []float64) float64 { kept := append([]float64(nil), x...); return kept[0] * kept[0] })
		}, "allocate"},
	} {
		t.Run(c.promise, func(t *testing.T) {
			k := square()
			k.Args = append([]kernel.Arg(nil), k.Args...)
			c.spoil(&k)
			for _, err := range faults(k) {
				if strings.Contains(err.Error(), c.says) {
					return
				}
			}
			t.Errorf("faults = %v; want one that says %q", faults(k), c.says)
		})
	}
}
