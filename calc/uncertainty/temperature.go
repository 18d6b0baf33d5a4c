package uncertainty

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// reference is 20 °C, at which sizes on drawings hold (ISO 1).
const reference = 293.15

// Warm is a size read away from 20 °C.
type Warm struct {
	Reading                       q.Length
	Part, Gauge                   q.Temperature
	PartExpansion, GaugeExpansion q.Expansion
}

// SizeAt20 returns the size a part will have at 20 °C. A warm part on a cold
// micrometer reads large; when both have one temperature and one metal the
// reading is right as it stands.
//
//	d20 = reading · (1 + αg·(Tg - 20 °C)) / (1 + αp·(Tp - 20 °C))
//
// Limits and source:
//
//   - Holds for: one temperature through each, expansion constant: within 100 K of 20 °C.
//   - Beyond: a note, because mean expansion changes with temperature.
//   - Source: ISO 1 (reference temperature); expansion as in JCGM 100:2008 H.1.2.
func SizeAt20(w Warm) (q.Length, []basis.Note, error) {
	for _, c := range []struct {
		ok               bool
		name, value, fit string
	}{
		{w.Reading > 0 && !math.IsInf(float64(w.Reading), 0), "reading", show(w.Reading) + " m", "above 0"},
		{w.Part > 0 && w.Part < 3000, "temperature of the part", show(w.Part) + " K", "above absolute zero and below 3000 K"},
		{w.Gauge > 0 && w.Gauge < 3000, "temperature of the gauge", show(w.Gauge) + " K", "above absolute zero and below 3000 K"},
		{math.Abs(float64(w.PartExpansion)) < 1e-3, "expansion of the part", show(w.PartExpansion) + " 1/K", "below 0.001 1/K; steel is about 12e-6"},
		{math.Abs(float64(w.GaugeExpansion)) < 1e-3, "expansion of the gauge", show(w.GaugeExpansion) + " 1/K", "below 0.001 1/K; steel is about 12e-6"},
	} {
		if !c.ok {
			return 0, nil, refuse(c.name, c.value, c.fit)
		}
	}
	part := 1 + float64(w.PartExpansion)*(float64(w.Part)-reference)
	if !(part > 0) {
		return 0, nil, refuse("temperature of the part", show(w.Part)+" K", "one at which the part has not shrunk to nothing")
	}
	size := float64(w.Reading) * (1 + float64(w.GaugeExpansion)*(float64(w.Gauge)-reference)) / part
	far := max(math.Abs(float64(w.Part)-reference), math.Abs(float64(w.Gauge)-reference))
	return q.Length(size), farNote(far), nil
}

// TemperatureChange returns by how much a size changes with temperature; with
// the difference between part and gauge it is the error of the reading.
//
//	α·d·ΔT
//
// Limits and source:
//
//   - Holds for: size above 0, changes within 100 K.
//   - Beyond: a note, because mean expansion changes with temperature.
//   - Source: JCGM 100:2008 H.1.2, first-order form.
func TemperatureChange(size q.Length, expansion q.Expansion, change q.TemperatureChange) (q.Length, []basis.Note, error) {
	switch {
	case !(size > 0) || math.IsInf(float64(size), 0):
		return 0, nil, refuse("size", show(size)+" m", "above 0")
	case !(math.Abs(float64(expansion)) < 1e-3):
		return 0, nil, refuse("expansion", show(expansion)+" 1/K", "below 0.001 1/K; steel is about 12e-6")
	case !(math.Abs(float64(change)) < 3000):
		return 0, nil, refuse("change of temperature", show(change)+" K", "a change below 3000 K")
	}
	return q.Length(float64(expansion) * float64(size) * float64(change)), farNote(math.Abs(float64(change))), nil
}

func farNote(kelvin float64) []basis.Note {
	if kelvin <= 100 {
		return nil
	}
	return []basis.Note{{Says: "more than 100 K away: use the mean expansion over that span", Source: "common practice, no source", Grade: basis.Extrapolated}}
}
