package quantity

import (
	"math"
	"strconv"
	"strings"
)

// System is which units a person speaks.
type System uint8

const (
	Metric System = iota
	Inch
	Both // inch units first, metric in brackets
)

// SystemNamed reads a word of the flag --speak: inch, mm or both.
func SystemNamed(word string) (System, bool) {
	s, ok := map[string]System{"mm": Metric, "inch": Inch, "both": Both}[word]
	return s, ok
}

// Speech prints SI values as the user speaks. Money is the currency of the
// case, such as EUR.
type Speech struct {
	Units System
	Money string
}

// Say prints a value of any kind in its usual unit with the digits a sentence
// needs: three, four from 1000 up; lengths to 0.0001 in or 0.001 mm; never a
// power of ten. An infinity or not a number is said in words.
func (s Speech) Say(v float64, d Dim) string {
	switch {
	case math.IsNaN(v):
		return "not known"
	case math.IsInf(v, 1):
		return "without limit"
	case math.IsInf(v, -1):
		return "without lower limit"
	}
	switch d {
	case MoneyDim:
		return Money(v, s.Money)
	case RateDim:
		return Money(v*3600, s.Money) + "/h"
	case PriceByMassDim:
		return s.both(func(sys System) string {
			if sys == Inch {
				return Money(v*must("lb", MassDim).Factor(), s.Money) + "/lb"
			}
			return Money(v, s.Money) + "/kg"
		})
	}
	row, ok := usual[d]
	if !ok {
		return plainFigures(v) + " " + d.String()
	}
	return s.both(func(sys System) string { return row.say(sys, v) })
}

// SayKind is Say for a word of Kinds: only it says an angle in degrees, an
// energy in joules, a wear rate and a specific wear in their own units.
func (s Speech) SayKind(v float64, kind string) string {
	row, ok := usualKinds[kind]
	if !ok || math.IsNaN(v) || math.IsInf(v, 0) {
		return s.Say(v, Kinds[kind])
	}
	return s.both(func(sys System) string { return row.say(sys, v) })
}

// both joins the two systems' texts, once if they agree.
func (s Speech) both(text func(System) string) string {
	if s.Units != Both {
		return text(s.Units)
	}
	inch, metric := text(Inch), text(Metric)
	if inch == metric {
		return inch
	}
	return inch + " (" + metric + ")"
}

// Money prints an amount: whole from 100 up, else to the hundredth.
func Money(v float64, currency string) string {
	if currency == "" {
		currency = "money"
	}
	n := fixed(v, 2)
	if math.Abs(v) >= 100 {
		n = fixed(v, 0)
	}
	n = strings.TrimSuffix(n, ".00") // 140 and 12.50, not 12.5
	return n + " " + currency
}

// step is a unit and the magnitude, in SI, from which it is used.
type step struct {
	unit Unit
	from float64
}

// usualUnits are the units a kind is spoken in, by system, smallest first.
type usualUnits struct {
	metric, inch []step
	digits       func(float64, string) string // nil: plainFigures
}

func (u usualUnits) say(sys System, v float64) string {
	steps := u.metric
	if sys == Inch {
		steps = u.inch
	}
	pick := steps[0]
	for _, st := range steps {
		if math.Abs(v) >= st.from*(1-1e-9) {
			pick = st
		}
	}
	n, name := pick.unit.From(v), pick.unit.Name
	text := plainFigures(n)
	if u.digits != nil {
		text = u.digits(n, name)
	}
	if name == "" {
		return text
	}
	return text + " " + name
}

// plainFigures writes three significant digits, four from 1000 up, whole
// numbers whole, nothing cut. Under a billionth it is 0.
func plainFigures(x float64) string {
	a := math.Abs(x)
	if a < 1e-9 {
		return "0"
	}
	exp := int(math.Floor(math.Log10(a)))
	if exp >= 3 {
		scale := math.Pow(10, float64(exp-3))
		return strconv.FormatFloat(math.Round(x/scale)*scale, 'f', 0, 64)
	}
	return trim(strconv.FormatFloat(x, 'f', 2-exp, 64))
}

// lengthFigures keeps the ten-thousandth of an inch and the thousandth of a
// millimetre, and two digits of what is smaller.
func lengthFigures(x float64, unit string) string {
	places := map[string]int{"mm": 3, "in": 4, "m": 3}[unit]
	a := math.Abs(x)
	if a > 1e-9 {
		places = max(places, 1-int(math.Floor(math.Log10(a))))
	}
	if a <= 1e-9 {
		x = 0
	}
	text := fixed(snap(x, places, nearestStep), places)
	if unit == "in" {
		return text
	}
	return trim(text)
}

// degreeFigures keeps a tenth of a degree below 100 and none above.
func degreeFigures(x float64, _ string) string {
	places := 1
	if math.Abs(x) >= 99.95 {
		places = 0
	}
	return trim(strconv.FormatFloat(x, 'f', places, 64))
}

// trim drops the noughts after a decimal point and the sign of nothing.
func trim(s string) string {
	if strings.IndexByte(s, '.') >= 0 {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

func steps(d Dim, named ...any) []step {
	var out []step
	for i := 0; i < len(named); i += 2 {
		out = append(out, step{must(named[i].(string), d), named[i+1].(float64)})
	}
	return out
}

// alike is a kind spoken in the same units in both systems.
func alike(d Dim, named ...any) usualUnits {
	s := steps(d, named...)
	return usualUnits{metric: s, inch: s}
}

func apart(metric, inch []step) usualUnits { return usualUnits{metric: metric, inch: inch} }

// usual is the unit each kind is spoken in. Money stands apart: its unit is the
// case's currency. Where a kind goes over to a larger unit is our choice.
var usual = map[Dim]usualUnits{
	Number:          {metric: []step{{}}, inch: []step{{}}},
	LengthDim:       {steps(LengthDim, "mm", 0.0, "m", 2.0), steps(LengthDim, "in", 0.0), lengthFigures},
	AreaDim:         apart(steps(AreaDim, "mm2", 0.0, "m2", 0.1), steps(AreaDim, "in2", 0.0)),
	VolumeDim:       apart(steps(VolumeDim, "mm3", 0.0, "cm3", 1e-6, "m3", 0.1), steps(VolumeDim, "in3", 0.0)),
	MassDim:         apart(steps(MassDim, "g", 0.0, "kg", 1.0), steps(MassDim, "lb", 0.0)),
	TimeDim:         alike(TimeDim, "s", 0.0, "min", 120.0, "h", 3600.0, "years", 63115200.0),
	RotationDim:     alike(RotationDim, "rpm", 0.0),
	SpeedDim:        apart(steps(SpeedDim, "m/s", 0.0, "um/h", 1e-18, "mm/s", 1e-6, "m/s", 0.1), steps(SpeedDim, "ft/min", 0.0, "thou/h", 1e-18, "ft/min", 1e-6)), // standing still is no wear rate,
	ForceDim:        apart(steps(ForceDim, "N", 0.0, "kN", 1000.0), steps(ForceDim, "lbf", 0.0)),
	TorqueDim:       apart(steps(TorqueDim, "N m", 0.0, "kN m", 10000.0), steps(TorqueDim, "lbf in", 0.0, "lbf ft", 2.0)),
	PowerDim:        apart(steps(PowerDim, "W", 0.0, "kW", 1000.0), steps(PowerDim, "hp", 0.0)),
	StressDim:       apart(steps(StressDim, "MPa", 0.0, "GPa", 1e10), steps(StressDim, "psi", 0.0, "Mpsi", 1e10)),
	PerStressDim:    apart(steps(PerStressDim, "um/m/MPa", 0.0), steps(PerStressDim, "uin/in/psi", 0.0)),
	PVDim:           apart(steps(PVDim, "MPa m/s", 0.0), steps(PVDim, "psi ft/min", 0.0)),
	DensityDim:      apart(steps(DensityDim, "kg/m3", 0.0), steps(DensityDim, "lb/in3", 0.0)),
	TemperatureDim:  {steps(TemperatureDim, "°C", 0.0), steps(TemperatureDim, "°F", 0.0), degreeFigures},
	ChangeDim:       apart(steps(ChangeDim, "K", 0.0), steps(ChangeDim, "°F change", 0.0)),
	ExpansionDim:    apart(steps(ExpansionDim, "um/m/K", 0.0), steps(ExpansionDim, "uin/in/°F", 0.0)),
	ViscosityDim:    alike(ViscosityDim, "mPa s", 0.0),
	KinematicDim:    alike(KinematicDim, "mm2/s", 0.0),
	FlowDim:         apart(steps(FlowDim, "L/min", 0.0), steps(FlowDim, "in3/min", 0.0)),
	HeatCapacityDim: alike(HeatCapacityDim, "MJ/(m3 K)", 0.0),
	CoolingDim:      alike(CoolingDim, "W/K", 0.0),
	HardnessHRC:     alike(HardnessHRC, "HRC", 0.0),
	HardnessHB:      alike(HardnessHB, "HB", 0.0),
	HardnessHV:      alike(HardnessHV, "HV", 0.0),
}

// usualKinds are the kinds that share their Dim with a plainer one; the steps are
// our choice.
var usualKinds = map[string]usualUnits{
	"angle":         alike(Number, "deg", 0.0),
	"line-heat":     apart(steps(LineHeatDim, "J/mm", 0.0), steps(LineHeatDim, "kJ/in", 0.0)),
	"energy":        alike(EnergyDim, "J", 0.0, "kJ", 10000.0),
	"wear-rate":     apart(steps(WearRateDim, "um/h", 0.0), steps(WearRateDim, "thou/h", 0.0)),
	"specific-wear": alike(SpecificWearDim, "mm3/N/m", 0.0),
}
