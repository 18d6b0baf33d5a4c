package strength

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

// grooveKernels take the ratios the source is stated in.
func grooveKernels() []kernel.Kernel {
	args := []kernel.Arg{
		{Name: "depth_over_radius", Says: "h/r: depth of the groove on one side over the radius of its bottom", Dim: q.Number, Range: interval.Of(leastDepth, mostDepth), Trend: 1},
		{Name: "large_over_small", Says: "D/d: the shaft over the bottom of the groove", Dim: q.Number, Range: interval.Of(1.001, mostGroove), Trend: -1},
	}
	groove := func(x []float64) Groove {
		depth := q.Length(1-1/x[1]) / 2
		return Groove{Outside: 1, Depth: depth, Radius: depth / q.Length(x[0])}
	}
	const formula = "K = C1 + C2·t + C3·t² + C4·t³, t = 1 − d/D, C = a + b·√(h/r) + c·h/r"
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "groove_bending", Says: "by how much a round-bottomed groove raises the bending stress", Result: q.Number,
			Args: args, Source: peterson, Grade: basis.Secondary,
		}, formula,
			func(x []float64) float64 { return grooveBending(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(GrooveBending(groove(x))) }),
		kernel.Make(kernel.Kernel{
			Name: "groove_twisting", Says: "by how much a round-bottomed groove raises the shear stress under torque", Result: q.Number,
			Args: args, Source: peterson, Grade: basis.Secondary,
		}, formula,
			func(x []float64) float64 { return grooveTwisting(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(GrooveTwisting(groove(x))) }),
	}
}
