package interference

import (
	"wornfit/calc/basis"
	"wornfit/calc/interval"
	"wornfit/calc/kernel"
	q "wornfit/calc/quantity"
)

const friction = "friction on a cylinder; any machine-element text"

func gripKernels() []kernel.Kernel {
	seat := diameter("seat", "diameter of the joint", 1e-4, 1)
	length := diameter("length", "length that grips", 1e-5, 1)
	mu := kernel.Arg{Name: "friction", Says: "coefficient of friction", Dim: q.Number, Range: interval.Of(0.01, 0.9), Trend: 1}
	args := []kernel.Arg{seat, length, pressureArg("in the joint"), mu}
	depth := func(name string) kernel.Arg {
		return kernel.Arg{Name: name, Says: "roughness depth Rz", Dim: q.LengthDim, Range: interval.Of(0, 1e-4), Trend: -1}
	}
	return []kernel.Kernel{
		kernel.Make(kernel.Kernel{Name: "grip_thrust", Says: "axial force a joint holds", Result: q.ForceDim, Args: args, Source: friction, Grade: basis.Derived},
			"F = µ·π·d·L·p",
			func(x []float64) float64 { return gripThrust(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(GripThrust(q.Length(x[0]), q.Length(x[1]), q.Stress(x[2]), x[3]))
			}),
		kernel.Make(kernel.Kernel{Name: "grip_torque", Says: "torque a joint holds", Result: q.TorqueDim, Args: args, Source: friction, Grade: basis.Derived},
			"T = µ·π·d²·L·p/2",
			func(x []float64) float64 { return gripTorque(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(GripTorque(q.Length(x[0]), q.Length(x[1]), q.Stress(x[2]), x[3]))
			}),
		kernel.Make(kernel.Kernel{Name: "press_force", Says: "force to press on when this length is in the hub", Result: q.ForceDim, Args: args, Source: friction, Grade: basis.Derived},
			"F = µ·π·d·engaged·p",
			func(x []float64) float64 { return gripThrust(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				in := q.Length(x[1])
				return kernel.Plain(PressForce(Stroke{Seat: q.Length(x[0]), SeatLength: in, HubLength: in, Travel: in}, q.Stress(x[2]), x[3]))
			}),
		kernel.Make(kernel.Kernel{
			Name: "grip_used", Says: "part of the grip that torque and thrust together use up", Result: q.Number,
			Args: []kernel.Arg{
				diameter("seat", "diameter of the joint", 1e-4, -1),
				{Name: "torque", Says: "through the joint", Dim: q.TorqueDim, Range: interval.Of(0, 1e6), Trend: 1},
				{Name: "thrust", Says: "along the joint", Dim: q.ForceDim, Range: interval.Of(0, 1e8), Trend: 1},
				{Name: "holds", Says: "axial force the joint holds", Dim: q.ForceDim, Range: interval.Of(1e-3, 1e9), Trend: -1},
			}, Source: friction, Grade: basis.Derived,
		}, "used = √((2T/d)² + F²)/holds",
			func(x []float64) float64 { return gripUsed(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Plain(GripUsed(q.Length(x[0]), q.Torque(x[1]), q.Force(x[2]), q.Force(x[3])))
			}),
		kernel.Make(kernel.Kernel{
			Name: "effective_interference", Says: "interference left after the roughness is pressed flat", Result: q.LengthDim,
			Args: []kernel.Arg{
				{Name: "interference", Says: "on diameter", Dim: q.LengthDim, Range: interval.Of(0, 1e-2), Trend: 1},
				depth("rz_shaft"), depth("rz_hub"),
				{Name: "loss", Says: "part of the depths that is lost: 0.8 (2001), 0.4 (2017)", Dim: q.Number, Range: interval.Of(0, 1), Trend: -1},
			}, Source: "DIN 7190:2001, from memory", Grade: basis.Memory,
		}, "δeff = δ − loss·(Rz shaft + Rz hub)",
			func(x []float64) float64 { return effective(x[0], x[1], x[2], x[3]) },
			func(x []float64) (float64, []basis.Note, error) {
				return kernel.Noted(Effective(q.Length(x[0]), q.Length(x[1]), q.Length(x[2]), x[3]))
			}),
	}
}
