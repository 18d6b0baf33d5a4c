package interference

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const turningDisc = "rotating disc, any strength text; worked out"

// turningKernels are the speeds and stresses of a hub that turns, and what a hub
// stands.
func turningKernels() []kernel.Kernel {
	bore := func(trend int8) kernel.Arg { return diameter("bore", "bore of the hub", 1e-4, trend) }
	outside := func(trend int8) kernel.Arg { return diameter("outside", "outside of the hub", 1e-4, trend) }
	density := func(trend int8) kernel.Arg {
		return kernel.Arg{Name: "density", Says: "of the hub", Dim: q.DensityDim, Range: interval.Of(500, 25000), Trend: trend}
	}
	strength := func(name, says string) kernel.Arg {
		return kernel.Arg{Name: name, Says: says, Dim: q.StressDim, Range: interval.Of(1e6, 3e9), Trend: 1}
	}
	speed := kernel.Arg{Name: "speed", Says: "of the hub", Dim: q.RotationDim, Range: interval.Of(0, 1000), Trend: 1}
	presses := kernel.Arg{Name: "pressure", Says: "in the bore", Dim: q.StressDim, Range: interval.Of(1e3, 2e9), Trend: -1}
	hub := func(x []float64) (b, o q.Length) { return q.Length(x[0]), q.Length(x[1]) }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "disc_hoop", Says: "stress round the bore of a turning hub from its own mass", Result: q.StressDim,
			Args: []kernel.Arg{bore(1), outside(1), poisson("poisson", 1), density(1), speed}, Source: turningDisc, Grade: basis.Derived,
		}, "σ = ρ·ω²·[(3+ν)·D² + (1−ν)·d²]/16",
			ringed(func(x []float64) float64 {
				w := 2 * math.Pi * x[4]
				return x[3] * w * w * discHoop(x[0], x[1], x[2])
			}),
			func(x []float64) (float64, []basis.Note, error) {
				b, o := hub(x)
				return kernel.Plain(DiscHoop(b, o, x[2], q.Density(x[3]), q.Rotation(x[4])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "disc_yield_speed", Says: "speed at which the bore of a turning hub yields from its own mass", Result: q.RotationDim,
			Args: []kernel.Arg{bore(-1), outside(-1), poisson("poisson", -1), density(-1), strength("yield", "yield strength")}, Source: turningDisc, Grade: basis.Derived,
		}, "ω = √{16·Re/(ρ·[(3+ν)·D² + (1−ν)·d²])}",
			ringed(func(x []float64) float64 { return math.Sqrt(x[4]/(x[3]*discHoop(x[0], x[1], x[2]))) / (2 * math.Pi) }),
			func(x []float64) (float64, []basis.Note, error) {
				b, o := hub(x)
				return kernel.Plain(DiscYieldSpeed(b, o, x[2], q.Density(x[3]), q.Stress(x[4])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "disc_burst_speed", Says: "speed at which all of a ductile turning hub has yielded", Result: q.RotationDim,
			Args: []kernel.Arg{bore(-1), outside(-1), density(-1), strength("yield", "yield strength")}, Source: turningDisc, Grade: basis.Derived,
		}, "ω = √{12·Re·(D − d)/(ρ·(D³ − d³))}",
			ringed(func(x []float64) float64 { return discBurst(x[0], x[1], x[2], x[3]) }),
			func(x []float64) (float64, []basis.Note, error) {
				b, o := hub(x)
				return kernel.Plain(DiscBurstSpeed(b, o, q.Density(x[2]), q.Stress(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "ductile_hub_safety", Says: "how many times the pressure in its bore a ductile hub stands", Result: q.Number,
			Args: []kernel.Arg{bore(-1), outside(1), presses, strength("yield", "yield strength")}, Source: lame, Grade: basis.Derived,
		}, "n = Re·(1−Q²)/(p·√(3+Q⁴)), Q = d/D",
			ringed(func(x []float64) float64 { return hubYield(x[0], x[1], x[3]) / x[2] }),
			func(x []float64) (float64, []basis.Note, error) {
				b, o := hub(x)
				return kernel.Noted(HubSafety(b, o, q.Stress(x[2]), Strength{Yield: q.Stress(x[3])}))
			}),
		kernel.Make(kernel.Kernel{
			Name: "brittle_hub_safety", Says: "how many times the pressure in its bore an iron hub stands", Result: q.Number,
			Args: []kernel.Arg{bore(-1), outside(1), presses, strength("tensile", "tensile strength")}, Source: lame, Grade: basis.Derived,
		}, "n = Rm·(1−Q²)/(p·(1+Q²)), Q = d/D",
			ringed(func(x []float64) float64 { return x[3] / (x[2] * thick(x[0], x[1])) }),
			func(x []float64) (float64, []basis.Note, error) {
				b, o := hub(x)
				return kernel.Noted(HubSafety(b, o, q.Stress(x[2]), Strength{Tensile: q.Stress(x[3]), Brittle: true}))
			}),
	}
}
