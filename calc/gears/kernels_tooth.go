package gears

import (
	"math"

	"wornfit/calc/basis"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const lewis = "Lewis' beam; from memory of Shigley §14-1"

func toothKernels() []kernel.Kernel {
	return append(beamKernels(), append(formKernels(), rimKernels()...)...)
}

func beamKernels() []kernel.Kernel {
	args := func(up int8, last kernel.Arg) []kernel.Arg {
		return []kernel.Arg{
			module(up), kernel.Takes("face_width", "of the teeth, along the axis", q.LengthDim, 1e-3, 1, up),
			kernel.Takes("form_factor", "Y of the tooth", q.Number, 0.1, 1, up), last,
			kernel.Takes("velocity_factor", "what speed makes of the load, 1 or more", q.Number, 1, 20, -up),
		}
	}
	tooth := func(x []float64) Tooth { return Tooth{Module: q.Length(x[0]), Face: q.Length(x[1]), Form: x[2]} }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "tooth_stress", Says: "bending stress at the root of a gear tooth", Result: q.StressDim,
			Args: args(-1, kernel.Takes("tangential_force", "on the tooth", q.ForceDim, 0, 1e7, 1)), Source: lewis, Grade: basis.Memory,
		}, "σ = velocity_factor·tangential_force/(face_width·module·form_factor)",
			func(x []float64) float64 { return toothStress(x[0], x[1], x[2], x[3], x[4]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ToothStress(tooth(x), q.Force(x[3]), x[4]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "tooth_load", Says: "tangential force that brings a gear tooth to a bending stress", Result: q.ForceDim,
			Args: args(1, kernel.Takes("bending_stress", "that the tooth may bear", q.StressDim, 1e5, 3e9, 1)), Source: lewis, Grade: basis.Memory,
		}, "Ft = bending_stress·face_width·module·form_factor/velocity_factor",
			func(x []float64) float64 { return x[3] / toothStress(x[0], x[1], x[2], 1, x[4]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(ToothLoad(tooth(x), q.Stress(x[3]), x[4]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "velocity_factor", Says: "by how much speed raises the load on gear teeth", Result: q.Number,
			Args: []kernel.Arg{
				kernel.Takes("pitch_line_speed", "how fast the pitch circles run", q.SpeedDim, 0, 50, 1),
				kernel.Takes("barth_speed", "of the quality of the teeth: 600 or 1200 ft/min, 3 m/s", q.SpeedDim, 1, 10, -1),
			}, Source: "Barth; from memory of Shigley §14-1", Grade: basis.Memory,
		}, "Kv = (barth_speed + pitch_line_speed)/barth_speed",
			func(x []float64) float64 { return velocityFactor(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return VelocityFactor(Quality{Barth: q.Speed(x[1])}, q.Speed(x[0]))
			}),
	}
}

func formKernels() []kernel.Kernel {
	cut := []kernel.Arg{
		teethOf("teeth", "teeth of the gear", 10, 0), pressureAngle(0),
		kernel.Takes("dedendum", "how deep the tool goes below the pitch circle, in modules", q.Number, 1.1, 1.4, 0),
		kernel.Takes("tip_radius", "of the tool's corner, in modules", q.Number, 0, 0.4, 0),
	}
	rack := func(x []float64) Rack { return Rack{Pressure: x[1], Addendum: 1, Dedendum: x[2], TipRadius: x[3]} }
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "form_factor", Says: "Lewis' form factor of a 20° full-depth tooth, from the table of the books", Result: q.Number,
			Args: []kernel.Arg{teethOf("teeth", "teeth of the gear", formTable[0].teeth, 1)}, Source: "from memory of Shigley table 14-2", Grade: basis.Memory,
		}, "Y from the table, between two rows evenly with 1/teeth",
			func(x []float64) float64 { return formFactor(math.Floor(x[0])) },
			func(x []float64) (float64, []basis.Note, error) { return kernel.Noted(FormFactor(int(x[0]))) }),
		kernel.Make(kernel.Kernel{
			Name: "form_factor_cut", Says: "Lewis' form factor of the tooth that a rack cuts, addendum one module", Result: q.Number,
			Args: cut, Slow: true, Source: "geometry, worked out; after Lewis' beam", Grade: basis.Derived,
		}, "Y = (2/3)·least of t²/(4·l) along the fillet",
			func(x []float64) float64 {
				r, z := rack(x), math.Floor(x[0])
				if !r.cuts(z) {
					return math.NaN()
				}
				if y := generated(r, z); y > 0 {
					return y
				}
				return math.NaN()
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(GeneratedFormFactor(rack(x), int(x[0])))
			}),
	}
}

func rimKernels() []kernel.Kernel {
	size := func(name, says string, least float64, trend int8) kernel.Arg {
		return kernel.Takes(name, says, q.LengthDim, least, 3, trend)
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{
			Name: "root_circle", Says: "diameter at the bottom of the spaces of a standard gear", Result: q.LengthDim,
			Args: []kernel.Arg{module(1), teethOf("teeth", "teeth of the gear", fewest, 1)}, Source: "ISO 53, from memory", Grade: basis.Memory,
		}, "df = module·(teeth − 2.5)",
			func(x []float64) float64 { return rootCircle(x[0], math.Floor(x[1])) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(RootCircle(q.Length(x[0]), int(x[1])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "gear_rim", Says: "metal left below the teeth of a bored gear", Result: q.LengthDim,
			Args:   []kernel.Arg{size("root_circle", "diameter at the bottom of the spaces", 1e-3, 1), size("bore", "of the gear, or of the hole its bush sits in", 0, -1), kernel.Takes("keyway_depth", "of the keyway in the gear, 0 if none", q.LengthDim, 0, 0.05, -1)},
			Source: gear, Grade: basis.Derived,
		}, "t = (root_circle − bore)/2 − keyway_depth",
			func(x []float64) float64 {
				if !(x[1] < x[0] && x[2] < (x[0]-x[1])/2) {
					return math.NaN()
				}
				return rimLeft(x[0], x[1], x[2])
			},
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(Rim(q.Length(x[0]), q.Length(x[1]), q.Length(x[2])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "rim_factor", Says: "by how much a thin rim raises the bending stress of a gear tooth", Result: q.Number,
			Args:   []kernel.Arg{size("rim", "metal below the teeth, less a keyway", 1e-4, -1), kernel.Takes("tooth_depth", "whole depth of the teeth, 2.25 modules by the standard", q.LengthDim, 0.5e-3, 0.07, 1)},
			Source: "AGMA 2001-D04, from memory", Grade: basis.Memory,
		}, "KB = 1.6·ln(2.242·tooth_depth/rim) below a rim of 1.2 times the depth, else 1",
			func(x []float64) float64 { return rimFactor(x[0], x[1]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(RimFactor(q.Length(x[0]), q.Length(x[1])))
			}),
	}
}
