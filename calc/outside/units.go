package outside

import (
	"math"
	"testing"
)

// units are the factors to SI of the units the books use, exact but for lbf and
// psi, which follow from the exact inch, pound and standard gravity.
var units = map[string]float64{
	"-": 1, "m": 1, "mm": 1e-3, "um": 1e-6, "in": inch, "s": 1, "h": 3600, "rev": 1,
	"Pa": 1, "MPa": 1e6, "psi": psi, "ksi": 1e3 * psi, "kpsi": 1e3 * psi,
	"N": 1, "kN": 1e3, "lbf": lbf, "N m": 1, "kN m": 1e3, "lbf in": lbf * inch, "kip in": 1e3 * lbf * inch,
	"mm3": 1e-9, "in3": inch * inch * inch, "g": 1e-3, "kg": 1, "lb": pound, "lb/in3": pound / (inch * inch * inch),
	"J": 1, "hp": 550 * lbf * 12 * inch, "mm/1000h": 1e-3 / (1000 * 3600),
	"rpm": 1. / 60, "rad/s": 1 / (2 * math.Pi), "ft/min": 12 * inch / 60, "psi ft/min": psi * 12 * inch / 60,
	"W/m2K": 1, "W/mK": 1, "J/kgK": 1, "m2/s": 1, "W/m2": 1, "m/m": 1, "W": 1, "kW": 1e3, "deg": math.Pi / 180, "arcmin": math.Pi / 180 / 60, "rev/s": 1,
	"mPa s": 1e-3, "cP": 1e-3, "cSt": 1e-6, "reyn": psi, "in3/s": inch * inch * inch, "L/min": 1e-3 / 60, "1/in": 1 / inch, "min": 60,
	"kg/m3": 1, "1/K": 1, "1/F": 1.8, "K": 1, "F": 1 / 1.8, "J/mm": 1e3, "J/mm3K": 1e9, "%": 1, "in3 min/(lbf ft h)": inch * inch * inch * 60 / (lbf * 12 * inch * 3600),
}

// The inch, the pound and standard gravity, exact by definition.
const (
	inch  = 0.0254
	pound = 0.45359237
	lbf   = pound * 9.80665
	psi   = lbf / (inch * inch)
)

// si is the value and its tolerance; a reading in °C becomes kelvin.
func (v Value) si(t *testing.T, id string) (value, tol float64) {
	t.Helper()
	x, err := v.Value.Float64()
	if err != nil {
		t.Fatalf("%s: %v is no number", id, v.Value)
	}
	if v.Unit == "C" {
		return x + 273.15, v.Tol
	}
	factor, ok := units[v.Unit]
	if !ok {
		t.Fatalf("%s: unknown unit %q", id, v.Unit)
	}
	return x * factor, v.Tol * factor
}
