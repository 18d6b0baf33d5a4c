package assembly

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// soakKernels are the mean temperatures that a thick part's size goes by.
func soakKernels() []kernel.Kernel {
	var out []kernel.Kernel
	for _, k := range []struct {
		name, says, half, formula string
		left                      func(bi, fo, x float64) (there, mean float64)
		worked                    func(s Soak, fromMiddle q.Length, time q.Time) (Soaked, error)
	}{
		{"bar_soak_mean", "mean temperature of a long round bar a time after it was put elsewhere", "radius",
			"mean Θ = Σ 4·Bi²/(z²·(z² + Bi²))·exp(−z²·Fo)", cylinderLeft, CylinderSoak},
		{"plate_soak_mean", "mean temperature of a wide plate a time after it was put elsewhere", "half the thickness",
			"mean Θ = Σ 4·sin²z/(z·(2·z + sin 2z))·exp(−z²·Fo)", plateLeft, PlateSoak},
	} {
		out = append(out, kernel.Make(kernel.Kernel{
			Name: k.name, Says: k.says, Result: q.TemperatureDim, Slow: true,
			Args: []kernel.Arg{
				kernel.Takes("half", k.half, q.LengthDim, 2e-3, 0.2, 0), kernel.Takes("conductivity", "mean", q.ConductivityDim, 10, 400, 0),
				kernel.Takes("density", "of the part", q.DensityDim, 2500, 9500, 0), kernel.Takes("specific_heat", "mean", q.SpecificHeatDim, 250, 1000, 0),
				kernel.Takes("film", "heat passed on by the surface", q.FilmDim, 1, 1000, 0),
				kernel.Takes("from", "temperature at first", q.TemperatureDim, 70, 1300, 0), kernel.Takes("around", "temperature it is put into", q.TemperatureDim, 70, 1300, 0),
				kernel.Takes("time", "since then", q.TimeDim, 1, 36000, 0),
			}, Source: "Carslaw and Jaeger, Conduction of Heat in Solids (from memory)", Grade: basis.Derived,
		}, k.formula,
			func(x []float64) float64 {
				s := soakOf(x)
				fo := s.perSecond() * x[7]
				if !(fo >= leastFourier) {
					return math.NaN()
				}
				_, mean := k.left(s.biot(), fo, 0)
				return float64(s.Around + (s.From-s.Around)*q.Temperature(mean))
			},
			func(x []float64) (float64, []basis.Note, error) {
				got, err := k.worked(soakOf(x), 0, q.Time(x[7]))
				return float64(got.Mean), nil, err
			}))
	}
	return out
}

func soakOf(x []float64) Soak {
	return Soak{
		Half: q.Length(x[0]), Film: q.Film(x[4]), From: q.Temperature(x[5]), Around: q.Temperature(x[6]),
		Metal: Metal{Conductivity: q.Conductivity(x[1]), Density: q.Density(x[2]), SpecificHeat: q.SpecificHeat(x[3])},
	}
}
