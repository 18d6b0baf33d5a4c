package kernel

import (
	"fmt"
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// Make gives a kernel whose result is one formula its Value, NaN outside the
// ranges, and its Worked: the documented function with the formula shown.
func Make(k Kernel, formula string, value func(x []float64) float64, worked func(x []float64) (float64, []basis.Note, error)) Kernel {
	k.Value = Within(k.Args, value)
	k.Worked = func(x []float64) (Sheet, error) {
		v, notes, err := worked(x)
		return Work(formula, k.Args, x, v, k.Result, notes, err)
	}
	return k
}

// Plain is what a documented function without notes returns, as Make wants it.
func Plain[T ~float64](v T, err error) (float64, []basis.Note, error) { return float64(v), nil, err }

// Noted is what a documented function with notes returns, as Make wants it.
func Noted[T ~float64](v T, notes []basis.Note, err error) (float64, []basis.Note, error) {
	return float64(v), notes, err
}

// Work is the Sheet of a one-line formula: the formula, the numbers put in and
// what comes out, in SI. Where the calculation refused, its error goes through.
func Work(formula string, args []Arg, x []float64, result float64, unit quantity.Dim, notes []basis.Note, err error) (Sheet, error) {
	if err != nil {
		return Sheet{}, err
	}
	with := make([]string, len(args))
	for i, a := range args {
		with[i] = a.Name + " = " + number(x[i], a.Dim)
	}
	return Sheet{
		Result: result,
		Steps:  []string{formula, "with " + strings.Join(with, ", "), "gives " + number(result, unit)},
		Notes:  notes,
	}, nil
}

func number(v float64, d quantity.Dim) string {
	return strings.TrimSpace(fmt.Sprintf("%.6g %s", v, siUnits[d]))
}

// SIUnit names the unit a kernel's numbers of a kind are in; "" for plain numbers.
func SIUnit(d quantity.Dim) string {
	if unit, ok := siUnits[d]; ok || d == quantity.Number {
		return unit
	}
	return d.String()
}

// siUnits are the units a Sheet is worked in, exact by definition; plain numbers have none.
var siUnits = map[quantity.Dim]string{
	quantity.LengthDim: "m", quantity.AreaDim: "m²", quantity.VolumeDim: "m³",
	quantity.MassDim: "kg", quantity.TimeDim: "s", quantity.RotationDim: "1/s",
	quantity.SpeedDim: "m/s", quantity.ForceDim: "N", quantity.TorqueDim: "N m",
	quantity.PowerDim: "W", quantity.StressDim: "Pa", quantity.PerStressDim: "1/Pa",
	quantity.PVDim: "Pa m/s", quantity.DensityDim: "kg/m³", quantity.TemperatureDim: "K",
	quantity.ChangeDim: "K", quantity.ExpansionDim: "1/K",
	quantity.ConductivityDim: "W/(m K)", quantity.SpecificHeatDim: "J/(kg K)", quantity.FilmDim: "W/(m² K)",
	{Len: -1, Mass: 1, Time: -2, Temp: -1}: "J/(m³ K)",
	quantity.ViscosityDim:                  "Pa s", quantity.KinematicDim: "m²/s", quantity.FlowDim: "m³/s", quantity.CoolingDim: "W/K",
	quantity.HardnessHRC: "HRC", quantity.HardnessHB: "HB", quantity.HardnessHV: "HV",
}
