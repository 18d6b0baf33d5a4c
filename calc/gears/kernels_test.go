package gears_test

import (
	"testing"

	"wornfit/calc/gears"
	"wornfit/calc/kernel/kerneltest"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, gears.Kernels()) }

// At the middle of every range; the report must say 0 allocs.
func BenchmarkKernels(b *testing.B) {
	for _, k := range gears.Kernels() {
		x := make([]float64, len(k.Args))
		for i, a := range k.Args {
			x[i] = a.Range.Mid()
			if a.Name == "centre_shift" {
				x[i] = 0.1e-3 // the middle of its range is out of reach of most teeth
			}
		}
		b.Run(k.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				k.Value(x)
			}
		})
	}
}
