package quantity

import (
	"math/big"
	"strings"
)

// The exact sizes everything else is made of. Inch, pound and standard gravity
// are exact by definition: NIST SP 811 (2008), appendix B.8, from memory of it.
var (
	inch   = rat("0.0254")
	foot   = rat("0.3048")
	thou   = rat("0.0000254")
	pound  = rat("0.45359237")
	gee    = rat("9.80665")
	lbf    = product(pound, gee)
	psi    = quotient(lbf, product(inch, inch))
	minute = rat("60")
	hour   = rat("3600")
	day    = rat("86400")
	year   = rat("31557600") // 365.25 days
	micro  = rat("0.000001")
	toKelv = rat("5/9")
	// pi/180 to more digits than a float64 keeps.
	degree = quotient(rat("3.14159265358979323846264338327950288"), rat("180"))
)

// units is every unit a size, force or temperature may be typed in. The first
// row of a Dim is named in refusals. A mechanical horsepower is 550 lbf ft/s,
// 745.7 W; a year is 365.25 days.
var units = []unitRow{
	{name: "mm", dim: LengthDim, factor: rat("0.001"), spelled: words("millimetre millimetres millimeter millimeters")},
	{name: "in", dim: LengthDim, factor: inch, inches: true, fraction: true, spelled: words(`" inch inches ''`)},
	{name: "thou", dim: LengthDim, factor: thou, inches: true, small: true, spelled: words("thous thousandths")},
	{name: "tenths", dim: LengthDim, factor: rat("0.00000254"), inches: true, small: true, spelled: words("tenth")},
	{name: "um", dim: LengthDim, factor: micro, small: true, spelled: words("micron microns micrometre micrometres")},
	{name: "uin", dim: LengthDim, factor: rat("0.0000000254"), inches: true, small: true},
	{name: "cm", dim: LengthDim, factor: rat("0.01")},
	{name: "m", dim: LengthDim, factor: one, spelled: words("metre metres meter meters")},
	{name: "ft", dim: LengthDim, factor: foot, inches: true, fraction: true, spelled: words("foot feet")},

	{name: "mm2", dim: AreaDim, factor: rat("0.000001")},
	{name: "cm2", dim: AreaDim, factor: rat("0.0001")},
	{name: "m2", dim: AreaDim, factor: one},
	{name: "in2", dim: AreaDim, factor: product(inch, inch), fraction: true},
	{name: "cm3", dim: VolumeDim, factor: micro},
	{name: "mm3", dim: VolumeDim, factor: rat("0.000000001")},
	{name: "m3", dim: VolumeDim, factor: one},
	{name: "in3", dim: VolumeDim, factor: product(inch, inch, inch), fraction: true},

	{name: "N", dim: ForceDim, factor: one},
	{name: "kN", dim: ForceDim, factor: rat("1000")},
	{name: "MN", dim: ForceDim, factor: rat("1000000")},
	{name: "lbf", dim: ForceDim, factor: lbf},
	{name: "kgf", dim: ForceDim, factor: gee},
	{name: "short-ton-force", dim: ForceDim, factor: product(rat("2000"), lbf), spelled: words("short-tons-force")},
	{name: "long-ton-force", dim: ForceDim, factor: product(rat("2240"), lbf), spelled: words("long-tons-force")},
	{name: "tonne-force", dim: ForceDim, factor: product(rat("1000"), gee), spelled: words("tonnes-force")},

	{name: "N m", dim: TorqueDim, factor: one, spelled: words("Nm N-m")},
	{name: "kN m", dim: TorqueDim, factor: rat("1000"), spelled: words("kNm")},
	{name: "lbf ft", dim: TorqueDim, factor: product(lbf, foot), spelled: listed("lbf-ft", "ft lbf", "ft-lbf")},
	{name: "lbf in", dim: TorqueDim, factor: product(lbf, inch), spelled: listed("lbf-in", "in lbf", "in-lbf")},
	{name: "J", dim: EnergyDim, factor: one, kind: "energy"},
	{name: "kJ", dim: EnergyDim, factor: rat("1000"), kind: "energy"},

	{name: "MPa", dim: StressDim, factor: rat("1000000"), spelled: words("N/mm2")},
	{name: "psi", dim: StressDim, factor: psi, spelled: words("lbf/in2")},
	{name: "ksi", dim: StressDim, factor: product(rat("1000"), psi)},
	{name: "Mpsi", dim: StressDim, factor: product(rat("1000000"), psi)},
	{name: "GPa", dim: StressDim, factor: rat("1000000000")},
	{name: "kPa", dim: StressDim, factor: rat("1000")},
	{name: "Pa", dim: StressDim, factor: one},
	{name: "bar", dim: StressDim, factor: rat("100000")},

	{name: "°C", dim: TemperatureDim, factor: one, zero: rat("273.15"), spelled: words("degC C")},
	{name: "°F", dim: TemperatureDim, factor: toKelv, zero: rat("459.67"), spelled: words("degF F")},
	{name: "K", dim: TemperatureDim, factor: one},
	{name: "K", dim: ChangeDim, factor: one, spelled: listed("K change", "K-change")},
	{name: "°C change", dim: ChangeDim, factor: one, spelled: listed("degC", "C", "°C", "degC-change", "degC change", "C change", "°C-change")},
	{name: "°F change", dim: ChangeDim, factor: toKelv, spelled: listed("degF", "F", "°F", "degF-change", "degF change", "F change", "°F-change")},

	{name: "HRC", dim: HardnessHRC, factor: one},
	{name: "HB", dim: HardnessHB, factor: one, spelled: words("HBW BHN")},
	{name: "HV", dim: HardnessHV, factor: one, spelled: words("HV10 HV30")},

	{name: "rpm", dim: RotationDim, factor: quotient(one, minute), spelled: words("1/min rev/min r/min")},
	{name: "1/s", dim: RotationDim, factor: one, spelled: words("rev/s")},
	{name: "strokes/min", dim: RotationDim, factor: quotient(one, minute), spelled: words("stroke/min")},
	{name: "strokes/h", dim: RotationDim, factor: quotient(one, hour), spelled: words("stroke/h")},

	{name: "m/s", dim: SpeedDim, factor: one},
	{name: "m/min", dim: SpeedDim, factor: quotient(one, minute)},
	{name: "mm/s", dim: SpeedDim, factor: rat("0.001")},
	{name: "mm/min", dim: SpeedDim, factor: quotient(rat("0.001"), minute)},
	{name: "ft/min", dim: SpeedDim, factor: quotient(foot, minute)},
	{name: "in/min", dim: SpeedDim, factor: quotient(inch, minute)},
	{name: "um/h", dim: WearRateDim, factor: quotient(micro, hour), kind: "wear-rate"},
	{name: "mm/year", dim: WearRateDim, factor: quotient(rat("0.001"), year), kind: "wear-rate"},
	{name: "um/year", dim: WearRateDim, factor: quotient(micro, year), kind: "wear-rate"},
	{name: "thou/h", dim: WearRateDim, factor: quotient(thou, hour), kind: "wear-rate"},
	{name: "thou/year", dim: WearRateDim, factor: quotient(thou, year), kind: "wear-rate"},

	{name: "h", dim: TimeDim, factor: hour, spelled: words("hour hours")},
	{name: "min", dim: TimeDim, factor: minute, spelled: words("minute minutes")},
	{name: "s", dim: TimeDim, factor: one, spelled: words("second seconds sec")},
	{name: "days", dim: TimeDim, factor: day, spelled: words("day")},
	{name: "weeks", dim: TimeDim, factor: product(rat("7"), day), spelled: words("week")},
	{name: "years", dim: TimeDim, factor: year, spelled: words("year")},

	{name: "kg", dim: MassDim, factor: one},
	{name: "g", dim: MassDim, factor: rat("0.001")},
	{name: "lb", dim: MassDim, factor: pound, spelled: words("lbs")},

	{name: "kW", dim: PowerDim, factor: rat("1000")},
	{name: "W", dim: PowerDim, factor: one},
	{name: "hp", dim: PowerDim, factor: product(rat("550"), lbf, foot)},

	{name: "deg", dim: Number, factor: degree, kind: "angle", spelled: words("° degree degrees")},
	{name: "rad", dim: Number, factor: one, kind: "angle"},
	{name: "%", dim: Number, factor: rat("0.01"), spelled: words("percent")},

	{name: "um/m/K", dim: ExpansionDim, factor: micro, spelled: words("um/m/degC um/m/°C")},
	{name: "uin/in/°F", dim: ExpansionDim, factor: quotient(micro, toKelv), spelled: words("uin/in/degF uin/in/F")},
	{name: "1/K", dim: ExpansionDim, factor: one, spelled: words("1/degC 1/°C")},
	{name: "1/°F", dim: ExpansionDim, factor: quotient(one, toKelv), spelled: words("1/degF 1/F")},

	{name: "kg/m3", dim: DensityDim, factor: one},
	{name: "g/cm3", dim: DensityDim, factor: rat("1000")},
	{name: "lb/in3", dim: DensityDim, factor: quotient(pound, product(inch, inch, inch))},

	{name: "mPa s", dim: ViscosityDim, factor: rat("0.001"), spelled: listed("cP")},
	{name: "Pa s", dim: ViscosityDim, factor: one},
	{name: "reyn", dim: ViscosityDim, factor: psi, spelled: listed("lbf s/in2")},
	{name: "mm2/s", dim: KinematicDim, factor: micro, spelled: listed("cSt")},
	{name: "m2/s", dim: KinematicDim, factor: one},
	{name: "L/min", dim: FlowDim, factor: quotient(rat("0.001"), minute), spelled: listed("l/min")},
	{name: "in3/min", dim: FlowDim, factor: quotient(product(inch, inch, inch), minute)},
	{name: "m3/s", dim: FlowDim, factor: one},
	{name: "W/K", dim: CoolingDim, factor: one},
	{name: "J/(m3 K)", dim: HeatCapacityDim, factor: one, spelled: listed("J/m3/K", "J/m3K")},
	{name: "MJ/(m3 K)", dim: HeatCapacityDim, factor: rat("1000000"), spelled: listed("MJ/m3/K", "MJ/m3K")},
	{name: "J/(mm3 K)", dim: HeatCapacityDim, factor: rat("1000000000"), spelled: listed("J/mm3/K", "J/mm3K")},
	{name: "J/mm", dim: LineHeatDim, factor: rat("1000"), kind: "line-heat"},
	{name: "kJ/mm", dim: LineHeatDim, factor: rat("1000000"), kind: "line-heat"},
	{name: "J/in", dim: LineHeatDim, factor: quotient(one, inch), kind: "line-heat"},
	{name: "kJ/in", dim: LineHeatDim, factor: quotient(rat("1000"), inch), kind: "line-heat"},
	{name: "J/m", dim: LineHeatDim, factor: one, kind: "line-heat"},

	{name: "MPa m/s", dim: PVDim, factor: rat("1000000")},
	{name: "psi ft/min", dim: PVDim, factor: quotient(product(psi, foot), minute)},

	{name: "um/m/MPa", dim: PerStressDim, factor: quotient(micro, rat("1000000"))},
	{name: "uin/in/psi", dim: PerStressDim, factor: quotient(micro, psi)},
	{name: "1/Pa", dim: PerStressDim, factor: one},
	{name: "1/MPa", dim: PerStressDim, factor: micro},
	{name: "1/GPa", dim: PerStressDim, factor: rat("0.000000001")},
	{name: "1/psi", dim: PerStressDim, factor: quotient(one, psi)},
	{name: "mm3/N/m", dim: SpecificWearDim, factor: rat("0.000000001"), kind: "specific-wear", spelled: listed("mm3/(N m)", "mm3/Nm")},
}

var bySpelling = spellings()

func spellings() map[string][]*unitRow {
	out := map[string][]*unitRow{}
	for i := range units {
		r := &units[i]
		out[r.name] = append(out[r.name], r)
		for _, s := range r.spelled {
			out[s] = append(out[s], r)
		}
	}
	return out
}

func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("quantity: no number " + s)
	}
	return r
}

func product(fs ...*big.Rat) *big.Rat {
	out := big.NewRat(1, 1)
	for _, f := range fs {
		out.Mul(out, f)
	}
	return out
}

func quotient(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

func words(s string) []string           { return strings.Fields(s) }
func listed(spelled ...string) []string { return spelled }
