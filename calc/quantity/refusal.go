package quantity

import (
	"fmt"
	"sort"
	"strings"
)

// Refusal says why a typed text is not taken and what to write instead.
type Refusal struct {
	Text   string // as typed
	Says   string // what is wrong, naming the text
	Remedy string // what to write
}

func (r *Refusal) Error() string { return r.Says + "; " + r.Remedy }

// refuse builds a Refusal. Remedies are whole advice, such as `write 25 mm`.
func refuse(text, remedy, format string, args ...any) *Refusal {
	return &Refusal{Text: text, Says: fmt.Sprintf(format, args...), Remedy: remedy}
}

// String names the kind of quantity, as a vocabulary entry would.
func (d Dim) String() string {
	if name, ok := kindNames[d]; ok {
		return name
	}
	out := ""
	for _, p := range []struct {
		unit string
		n    int8
	}{{"m", d.Len}, {"kg", d.Mass}, {"s", d.Time}, {"K", d.Temp}, {"money", d.Money}} {
		switch {
		case p.n == 1:
			out += " " + p.unit
		case p.n != 0:
			out += fmt.Sprintf(" %s^%d", p.unit, p.n)
		}
	}
	if out == "" {
		return "number"
	}
	return out[1:]
}

// kindNames gives each Dim its one name; of names that share a Dim the plainest.
var kindNames = nameKinds()

func nameKinds() map[Dim]string {
	shadow := map[string]bool{"energy": true, "wear-rate": true, "angle": true, "specific-wear": true, "line-heat": true}
	names := make([]string, 0, len(Kinds))
	for k := range Kinds {
		names = append(names, k)
	}
	sort.Strings(names)
	out := map[Dim]string{}
	for _, k := range names {
		if _, taken := out[Kinds[k]]; !taken && !shadow[k] {
			out[Kinds[k]] = k
		}
	}
	return out
}

// examples are the units named when a unit is missing or of the wrong kind.
var examples = map[string][]string{
	"length": {"mm", "in"}, "area": {"mm2", "in2"}, "volume": {"cm3", "in3"},
	"mass": {"kg", "lb"}, "time": {"h", "days"}, "rotation": {"rpm", "strokes/min"},
	"speed": {"m/s", "ft/min"}, "wear-rate": {"um/h", "thou/year"}, "force": {"N", "lbf"},
	"torque": {"N m", "lbf ft"}, "energy": {"J", "kJ"}, "power": {"kW", "hp"},
	"stress": {"MPa", "psi"}, "per-stress": {"um/m/MPa", "uin/in/psi"}, "specific-wear": {"mm3/N/m", "1/Pa"},
	"pv": {"MPa m/s", "psi ft/min"}, "density": {"kg/m3", "lb/in3"}, "temperature": {"°C", "°F"},
	"temperature-change": {"K", "°F change"}, "expansion": {"um/m/K", "uin/in/°F"},
	"money": {"EUR", "USD"}, "rate": {"EUR/h", "USD/h"}, "price-by-mass": {"EUR/kg", "USD/lb"}, "angle": {"deg", "rad"},
	"hardness-hrc": {"HRC"}, "hardness-hb": {"HB"}, "hardness-hv": {"HV"}, "number": {"plain figures", "%"},
	"viscosity":           {"mPa s", "reyn"},
	"kinematic-viscosity": {"mm2/s", "m2/s"},
	"flow":                {"L/min", "in3/min"},
	"cooling":             {"W/K"},
	"heat-capacity":       {"MJ/(m3 K)", "J/(mm3 K)"},
	"line-heat":           {"J/mm", "kJ/in"},
}

// writeIn is the advice to use the units of a kind; a text is repeated with
// each, so that it may be copied.
func writeIn(text, kind string) string {
	ex := examples[kind]
	if len(ex) == 0 {
		return "write the number and a unit of " + kind
	}
	if text == "" {
		return "write it in " + strings.Join(ex, " or ")
	}
	return "write " + text + " " + strings.Join(ex, " or "+text+" ")
}
