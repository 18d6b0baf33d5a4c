package film_test

import (
	"runtime"
	"testing"

	"wornfit/calc/film"
	"wornfit/calc/kernel"
	"wornfit/calc/kernel/kerneltest"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, film.Kernels()) }

// typical is a place in each kernel's ranges with an answer.
var typical = map[string][]float64{
	"sommerfeld_at": {0.6, 0.8}, "film_attitude": {0.6, 0.8}, "film_eccentricity": {0.17, 0.8},
	"petroff_torque": {0.05, 0.04, 60e-6, 5, 0.05}, "petroff_power": {0.05, 0.04, 60e-6, 5, 0.05},
	"viscosity_for_film": {2000, 0.05, 0.04, 60e-6, 5, 13e-6}, "film_ratio": {5e-6, 5e-7, 8e-7}, "trumpler_film": {0.05}, "oil_viscosity": {68e-6, 8.7e-6, 880, 330}, "oil_rise": {100, 1e-5, 5e-6},
	"fed_temperature": {2000, 0.05, 0.04, 60e-6, 5, 68e-6, 8.7e-6, 880, 313}, "housed_temperature": {2000, 0.05, 0.04, 60e-6, 5, 68e-6, 8.7e-6, 880, 293, 0.8},
}

func BenchmarkKernels(b *testing.B) {
	for _, k := range film.Kernels() {
		b.Run(k.Name, func(b *testing.B) { benchmark(b, k) })
	}
}

func benchmark(b *testing.B, k kernel.Kernel) {
	x, ok := typical[k.Name]
	if !ok { // all others take a running bearing
		x = []float64{2000, 0.05, 0.04, 60e-6, 5, 0.05}
	}
	if v := k.Value(x); v != v {
		b.Fatalf("%v has no answer", x)
	}
	b.ReportAllocs()
	for b.Loop() {
		runtime.KeepAlive(k.Value(x))
	}
}
