package lang

import (
	"fmt"
	"strings"

	"wornfit/calc/quantity"
)

// kinds is how a Dim is said, and how nothing of it is written. Torque and
// energy share a Dim, and so do speed and wear rate; the commoner is said.
var kinds = []struct {
	dim              quantity.Dim
	says, unit, zero string
}{
	{quantity.Number, "a plain number", "", "0"},
	{quantity.LengthDim, "length", "mm", "0*mm"},
	{quantity.AreaDim, "area", "mm2", "0*mm**2"},
	{quantity.VolumeDim, "volume", "mm3", "0*mm*mm**2"},
	{quantity.MassDim, "mass", "kg", "0*kg"},
	{quantity.TimeDim, "time", "h", "0*h"},
	{quantity.RotationDim, "speed of rotation", "rpm", "0*rpm"},
	{quantity.SpeedDim, "speed", "m/s", "0*m/s"},
	{quantity.ForceDim, "force", "N", "0*N"},
	{quantity.TorqueDim, "torque", "Nm", "0*Nm"},
	{quantity.PowerDim, "power", "W", "0*W"},
	{quantity.StressDim, "stress", "MPa", "0*MPa"},
	{quantity.PerStressDim, "growth per stress", "1/MPa", "0/MPa"},
	{quantity.PVDim, "pressure times speed", "MPa m/s", "0*MPa*m/s"},
	{quantity.DensityDim, "density", "kg/m3", ""},
	{quantity.TemperatureDim, "temperature", "degC", "degC(0)"},
	{quantity.ChangeDim, "change of temperature", "K", "0*K"},
	{quantity.ExpansionDim, "expansion", "1/K", "0/K"},
	{quantity.ViscosityDim, "viscosity", "mPa s", ""},
	{quantity.KinematicDim, "viscosity over density", "mm2/s", ""},
	{quantity.FlowDim, "flow", "L/min", ""},
	{quantity.CoolingDim, "cooling", "W/K", ""},
	{quantity.HeatCapacityDim, "heat capacity by volume", "MJ/(m3 K)", ""},
	{quantity.MoneyDim, "money", "EUR", ""},
	{quantity.RateDim, "money by time", "EUR/h", ""},
	{quantity.PriceByMassDim, "price by mass", "EUR/kg", ""},
	{quantity.HardnessHRC, "hardness", "HRC", ""},
	{quantity.HardnessHB, "hardness", "HB", ""},
	{quantity.HardnessHV, "hardness", "HV", ""},
}

// sayDim says a kind of quantity: "length (mm)".
func sayDim(d quantity.Dim) string {
	for _, k := range kinds {
		if k.dim == d && k.unit == "" {
			return k.says
		}
		if k.dim == d {
			return k.says + " (" + k.unit + ")"
		}
	}
	return "a quantity in " + composed(d)
}

// zeroOf is how an expression writes nothing of a quantity, or "".
func zeroOf(d quantity.Dim) string {
	for _, k := range kinds {
		if k.dim == d {
			return k.zero
		}
	}
	return ""
}

func composed(d quantity.Dim) string {
	var parts []string
	for _, u := range []struct {
		power int8
		name  string
	}{{d.Mass, "kg"}, {d.Len, "m"}, {d.Time, "s"}, {d.Temp, "K"}, {d.Money, "EUR"}} {
		if u.power == 1 {
			parts = append(parts, u.name)
		} else if u.power != 0 {
			parts = append(parts, fmt.Sprintf("%s^%d", u.name, u.power))
		}
	}
	return strings.Join(parts, " ")
}

// mostPower bounds the exponents of a Dim, well inside int8.
const mostPower = 12

// scaled is a·n + b of each exponent; ok is false beyond mostPower.
func scaled(a, b quantity.Dim, n int) (d quantity.Dim, ok bool) {
	ok = true
	one := func(x, y int8) int8 {
		v := int(x)*n + int(y)
		if v > mostPower || v < -mostPower {
			ok = false
			return 0
		}
		return int8(v)
	}
	d = quantity.Dim{Len: one(a.Len, b.Len), Mass: one(a.Mass, b.Mass), Time: one(a.Time, b.Time),
		Temp: one(a.Temp, b.Temp), Money: one(a.Money, b.Money)}
	return d, ok
}

func timesDim(a, b quantity.Dim) (quantity.Dim, bool) { return scaled(a, b, 1) }
func overDim(a, b quantity.Dim) (quantity.Dim, bool)  { return scaled(b, a, -1) }
func powDim(a quantity.Dim, n int) (quantity.Dim, bool) {
	return scaled(a, quantity.Dim{}, n)
}

// rootDim halves the exponents; ok is false where one is odd.
func rootDim(a quantity.Dim) (d quantity.Dim, ok bool) {
	if (a.Len|a.Mass|a.Time|a.Temp|a.Money)&1 != 0 {
		return d, false
	}
	return quantity.Dim{Len: a.Len / 2, Mass: a.Mass / 2, Time: a.Time / 2, Temp: a.Temp / 2, Money: a.Money / 2}, true
}

// sumDim is the Dim of a + b or a - b. Two temperatures give a change; a
// change moves a temperature; hardness has no sum.
func sumDim(op Op, a, b quantity.Dim) (quantity.Dim, bool) {
	hot, change := quantity.TemperatureDim, quantity.ChangeDim
	switch {
	case a == b && a.Scale == quantity.Ratio:
		return a, true
	case op == Sub && a == hot && b == hot:
		return change, true
	case a == hot && b == change, op == Add && a == change && b == hot:
		return hot, true
	}
	return quantity.Dim{}, false
}
