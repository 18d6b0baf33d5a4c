package lang

import "wornfit/calc/quantity"

// Unit is a unit as an expression writes it: a factor with a dimension. Factor
// is SI for one of it.
type Unit struct {
	Name   string
	Dim    quantity.Dim
	Factor float64
}

// unitTable is every unit of the language. `in` and `min` are words of expr, so
// the units are inch and minute. Inch, pound and standard gravity are exact by
// definition (NIST SP 811, from memory of it); a test holds each row to package
// quantity.
var unitTable = []Unit{
	{"mm", quantity.LengthDim, 1e-3},
	{"um", quantity.LengthDim, 1e-6},
	{"m", quantity.LengthDim, 1},
	{"inch", quantity.LengthDim, 0.0254},
	{"thou", quantity.LengthDim, 0.0000254},
	{"N", quantity.ForceDim, 1},
	{"kN", quantity.ForceDim, 1e3},
	{"lbf", quantity.ForceDim, poundForce},
	{"Nm", quantity.TorqueDim, 1},
	{"Pa", quantity.StressDim, 1},
	{"MPa", quantity.StressDim, 1e6},
	{"GPa", quantity.StressDim, 1e9},
	{"psi", quantity.StressDim, poundForce / (0.0254 * 0.0254)},
	{"ksi", quantity.StressDim, 1000 * poundForce / (0.0254 * 0.0254)},
	{"K", quantity.ChangeDim, 1},
	{"s", quantity.TimeDim, 1},
	{"minute", quantity.TimeDim, 60},
	{"h", quantity.TimeDim, 3600},
	{"days", quantity.TimeDim, 86400},
	{"rpm", quantity.RotationDim, 1.0 / 60},
	{"kg", quantity.MassDim, 1},
	{"g", quantity.MassDim, 1e-3},
	{"W", quantity.PowerDim, 1},
	{"kW", quantity.PowerDim, 1e3},
	{"deg", quantity.Number, pi / 180},
}

const poundForce = 0.45359237 * 9.80665 // N

var unitByName = func() map[string]*Unit {
	out := map[string]*Unit{}
	for i := range unitTable {
		out[unitTable[i].Name] = &unitTable[i]
	}
	return out
}()

func unitNamed(name string) (*Unit, bool) {
	u, ok := unitByName[name]
	return u, ok
}

// Units lists the names of the units, in the order of the table.
func Units() []string {
	out := make([]string, len(unitTable))
	for i, u := range unitTable {
		out[i] = u.Name
	}
	return out
}

// UnitNamed returns a unit of the language.
func UnitNamed(name string) (Unit, bool) {
	if u, ok := unitByName[name]; ok {
		return *u, true
	}
	return Unit{}, false
}
