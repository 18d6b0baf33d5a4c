package buildup

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// LineHeat is heat put in per length of bead, in J/m (which has the units of N).
type LineHeat float64

// HeatCapacity is heat per volume and warming, in J/(m³ K): density times
// specific heat. Of steel 4.4e6 suits the whole way to melting.
type HeatCapacity float64

// Parts of an arc's power that go into the work, those of EN 1011-1, read in a steel
// maker's table of it. Measured in a paper whose abstract was read: 0.67 for TIG, 0.84
// for wire and submerged arc.
const (
	TIG          = 0.6
	StickAndWire = 0.8 // covered rods and gas-shielded wire
	Submerged    = 1.0
)

// ArcHeat returns the heat an arc puts into the work per length of bead.
//
//	H = η·U·I/v
//
// U·I is the power of the arc, v the speed of travel along the bead.
//
//   - Holds for: stringer beads. In a weave, v is how fast the bead grows.
//   - Beyond: η is known to a tenth or so either way; 0.6 for TIG, 0.8 for rods and wire. A torch has no such number: most of its heat goes past the work.
//   - Source: arithmetic; the parts read in a steel maker's table, after EN 1011-1.
func ArcHeat(arc q.Power, travel q.Speed, efficiency float64) (LineHeat, error) {
	switch {
	case !(arc > 0):
		return 0, refuse("power of the arc", fmt.Sprintf("%.6g W", float64(arc)), "more than 0, volts times amperes")
	case !(travel > 0):
		return 0, refuse("speed of travel", fmt.Sprintf("%.6g mm/s", 1e3*float64(travel)), "more than 0")
	case !(efficiency > 0 && efficiency <= 1):
		return 0, refuse("part of the heat that goes in", fmt.Sprintf("%.4g", efficiency), "more than 0 and at most 1, such as 0.8")
	}
	return LineHeat(arcHeat(float64(arc), float64(travel), efficiency)), nil
}

// Plate is the metal beside a bead: how thick it is, what it stores, and how warm
// it is before the bead.
type Plate struct {
	Thickness q.Length
	Capacity  HeatCapacity
	Start     q.Temperature
}

// Peak is the highest temperature a place beside a bead passes through: it lies
// between the two.
type Peak struct{ Least, Most q.Temperature }

// PlatePeak returns the highest temperature at a distance from the middle of one
// bead on a plate, between what the two limits of thickness say.
//
//	thin: ΔT = H/(√(2πe)·ρc·h·y); thick: ΔT = 2·H/(π·e·ρc·y²)
//	the larger of the two ≤ ΔT ≤ their sum
//
// Both are those of Rosenthal for a bead laid fast; any plate's own peak lies
// between the larger and the sum (the images of the bead in the plate's faces).
//
//   - Holds for: one bead on a wide plate, at least some bead widths off; metal that does not change. Heat lost to the air is left out, so the truth is lower at far places.
//   - Beyond: near the bead it is too hot: melting takes heat. Books find the formulas within some 20 to 30 % (from memory). Next beads add what has not flowed away: take the warmth between beads as the start.
//   - Source: Rosenthal, from memory of welding texts; the bounds worked out.
func PlatePeak(h LineHeat, distance q.Length, p Plate) (Peak, []basis.Note, error) {
	if err := p.check(h); err != nil {
		return Peak{}, nil, err
	}
	if !(distance > 0) {
		return Peak{}, nil, refuse("distance from the bead", mm(distance), "more than 0")
	}
	thin := thinRise(float64(h), float64(distance), float64(p.Thickness), float64(p.Capacity))
	thick := thickRise(float64(h), float64(distance), float64(p.Capacity))
	peak := Peak{p.Start + q.Temperature(max(thin, thick)), p.Start + q.Temperature(thin+thick)}
	return peak, p.notes(peak), nil
}

// melts is about where steel melts, from memory of handbooks, in kelvin.
const melts = 1800

func (p Plate) notes(peak Peak) []basis.Note {
	out := []basis.Note{{
		Says: "no heat is lost to the air here; books find such figures within 20 to 30 %", Source: "welding texts, from memory", Grade: basis.Memory,
	}}
	if peak.Most > melts {
		out = append(out, basis.Note{Says: "so near the bead that it melts: the figure is no temperature any more", Source: "worked out", Grade: basis.Extrapolated})
	}
	return out
}

// Reach returns how far from the fused edge of a bead a thin plate still reaches
// a temperature: the width of the zone that is drawn, hardened or scaled.
//
//	y = H/(√(2πe)·ρc·h)·(1/(T − T0) − 1/(Tm − T0))
//
// Tm is the melting temperature, T0 that before the bead.
//
//   - Holds for: a bead fused through a plate, as PlatePeak; the whole thickness warm at once.
//   - Beyond: on thick metal the heat goes down as well and reaches less far. Losses to the air are left out.
//   - Source: the peak-temperature equation of welding handbooks, with a worked example read on a page.
func Reach(h LineHeat, to, melting q.Temperature, p Plate) (q.Length, error) {
	if err := p.check(h); err != nil {
		return 0, err
	}
	if !(melting > p.Start) {
		return 0, refuse("melting temperature", celsius(melting), "above that before the bead, "+celsius(p.Start))
	}
	if !(to > p.Start && to <= melting) {
		return 0, refuse("temperature reached", celsius(to), "above that before the bead, "+celsius(p.Start)+", and at most melting, "+celsius(melting))
	}
	return q.Length(reach(float64(h), float64(to), float64(melting), float64(p.Thickness), float64(p.Capacity), float64(p.Start))), nil
}

func (p Plate) check(h LineHeat) error {
	switch {
	case !(h > 0):
		return refuse("heat per length", fmt.Sprintf("%.6g J/mm", 1e-3*float64(h)), "more than 0")
	case !(p.Thickness > 0):
		return refuse("thickness of the plate", mm(p.Thickness), "more than 0")
	}
	return warmMetal(p.Capacity, p.Start)
}

func warmMetal(c HeatCapacity, start q.Temperature) error {
	switch {
	case !(c > 0):
		return refuse("heat the metal stores", fmt.Sprintf("%.6g J/(m³ K)", float64(c)), "more than 0; 4.4e6 for steel")
	case !(start > 0):
		return refuse("temperature before the bead", celsius(start), "above absolute zero")
	}
	return nil
}

// Bar is a round shaft that is built up: the heat runs along it.
type Bar struct {
	Round    q.Length
	Capacity HeatCapacity
	Start    q.Temperature
	End      bool // built up at its very end: all heat runs one way
}

// BarPeak returns the most that a place on a shaft can warm up to when a land on
// it is built up all round: as if all the heat went in at once and none was lost.
//
//	ΔT = Q/(√(2πe)·ρc·A·x), twice that at the end of the shaft
//
// Q is the heat of the whole land: heat per length times all the bead laid.
//
//   - Holds for: a long solid shaft, x from the middle of the land, at least its length. The slower it is laid, the cooler: this is the worst case.
//   - Beyond: a short shaft ends up warmer than this far away: never less than Q shared over all its metal, Q/(ρc·V). A hub or shoulder beside takes heat too.
//   - Source: conduction along a rod from a plane source, worked out.
func BarPeak(heat q.Energy, distance q.Length, b Bar) (q.Temperature, error) {
	switch {
	case !(heat > 0):
		return 0, refuse("heat of the whole land", fmt.Sprintf("%.6g J", float64(heat)), "more than 0")
	case !(distance > 0):
		return 0, refuse("distance from the land", mm(distance), "more than 0")
	case !(b.Round > 0):
		return 0, refuse("diameter of the shaft", mm(b.Round), "more than 0")
	}
	if err := warmMetal(b.Capacity, b.Start); err != nil {
		return 0, err
	}
	rise := barRise(float64(heat), float64(distance), float64(b.Round), float64(b.Capacity))
	if b.End {
		rise *= 2
	}
	return b.Start + q.Temperature(rise), nil
}

// root is √(2πe), exact: where a heat pulse that spreads one way peaks.
var root = math.Sqrt(2 * math.Pi * math.E)

func arcHeat(arc, travel, efficiency float64) float64 { return efficiency * arc / travel }

func thinRise(h, y, thickness, capacity float64) float64 {
	return h / (root * capacity * thickness * y)
}

func thickRise(h, y, capacity float64) float64 { return 2 * h / (math.Pi * math.E * capacity * y * y) }

func reach(h, to, melting, thickness, capacity, start float64) float64 {
	return h / (root * capacity * thickness) * (melting - to) / ((to - start) * (melting - start))
}

func barRise(heat, x, round, capacity float64) float64 {
	return heat / (root * capacity * math.Pi / 4 * round * round * x)
}

func celsius(t q.Temperature) string { return fmt.Sprintf("%.4g °C", float64(t)-273.15) }
