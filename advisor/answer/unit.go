package answer

import "wornfit/calc/quantity"

// units are the SI units in which numbers of each kind stand in the JSON.
var units = map[quantity.Dim]string{
	quantity.Number: "1", quantity.LengthDim: "m", quantity.AreaDim: "m2", quantity.VolumeDim: "m3", quantity.MassDim: "kg",
	quantity.TimeDim: "s", quantity.RotationDim: "1/s", quantity.SpeedDim: "m/s", quantity.ForceDim: "N", quantity.TorqueDim: "N m",
	quantity.PowerDim: "W", quantity.StressDim: "Pa", quantity.PerStressDim: "1/Pa", quantity.PVDim: "Pa m/s", quantity.DensityDim: "kg/m3",
	quantity.TemperatureDim: "K", quantity.ChangeDim: "K", quantity.ExpansionDim: "1/K", quantity.MoneyDim: "money",
	quantity.RateDim: "money/s", quantity.PriceByMassDim: "money/kg", quantity.HardnessHRC: "HRC", quantity.HardnessHB: "HB", quantity.HardnessHV: "HV",
	quantity.ViscosityDim: "Pa s", quantity.KinematicDim: "m2/s", quantity.FlowDim: "m3/s", quantity.CoolingDim: "W/K",
}

// Unit is the unit of a kind of number; what has no name of its own is said in
// words.
func Unit(d quantity.Dim) string {
	if u, ok := units[d]; ok {
		return u
	}
	return d.String()
}
