package assembly

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Body is a part that cools or warms all through at once.
type Body struct {
	Metal Metal
	Depth q.Length // its volume over the surface that passes heat: PlateDepth, BarDepth, RingDepth
	Film  q.Film   // StillAir for a part carried in the hand
}

// PlateDepth is the volume over the surface of a plate cooled on both faces.
func PlateDepth(thickness q.Length) q.Length { return thickness / 2 }

// BarDepth is the volume over the surface of a long round bar.
func BarDepth(diameter q.Length) q.Length { return diameter / 4 }

// BallDepth is the volume over the surface of a ball.
func BallDepth(diameter q.Length) q.Length { return diameter / 6 }

// RingDepth is the volume over the surface of a ring cooled on its faces, its rim
// and in its bore.
func RingDepth(bore, outside, width q.Length) q.Length {
	return q.Length(1 / (2/float64(width) + 4/float64(outside-bore)))
}

// TimeConstant returns how long a part takes for the first 63 % of its way to the
// temperature around it.
//
//	τ = ρ·c·depth / h
//
// All in SI units. A part not of one temperature, by its Biot number, is noted.
//
//   - Holds for: Biot number h·depth/k below 0.1; one film all over.
//   - Beyond: thick parts or fierce films (quenching) lag inside, and the time comes out short: use CylinderSoak or PlateSoak.
//   - Source: lumped heat balance, any text on heat transfer.
func TimeConstant(b Body) (q.Time, []basis.Note, error) {
	if err := b.check(); err != nil {
		return 0, nil, err
	}
	return q.Time(timeConstant(b.Metal.heat(), float64(b.Depth), float64(b.Film))), b.notes(), nil
}

// Biot returns how much a part lags inside: the resistance of its metal over that
// of its surface.
//
//	Bi = h·depth / k
//
// All in SI units.
//
//   - Holds for: any body; below 0.1 the inside is within about 5 % of the surface.
//   - Source: definition, any text on heat transfer.
func Biot(b Body) (float64, error) {
	if err := b.check(); err != nil {
		return 0, err
	}
	return float64(b.Film) * float64(b.Depth) / float64(b.Metal.Conductivity), nil
}

// CoolingTime returns how long a part takes from one temperature to another,
// hotter or colder: on the way from the oven, or in it.
//
//	t = τ·ln((from − around)/(to − around))
//
// All in SI units, τ of TimeConstant.
//
//   - Holds for: as TimeConstant; what is around stays at one temperature.
//   - Beyond: radiation grows faster than the difference; with a mean film for the span the time is good to about a quarter. An oven opened often is slower.
//   - Source: lumped heat balance, any text on heat transfer.
func CoolingTime(b Body, from, to, around q.Temperature) (q.Time, []basis.Note, error) {
	tau, notes, err := TimeConstant(b)
	if err != nil {
		return 0, nil, err
	}
	if err := aboveZero(map[string]q.Temperature{"temperature at first": from, "temperature reached": to, "temperature around": around}); err != nil {
		return 0, nil, err
	}
	if left := (to - around) / (from - around); !(left > 0 && left <= 1) {
		return 0, nil, refuse("temperature reached", celsius(to), "between the one at first, "+celsius(from)+", and the one around, "+celsius(around)+", which is never quite reached")
	}
	return q.Time(coolingTime(float64(tau), float64(from), float64(to), float64(around))), notes, nil
}

// Carried returns how warm a part still is after a wait.
//
//	T = around + (from − around)·exp(−t/τ)
//
// All in SI units, τ of TimeConstant. A 6 mm steel plate at 300 °C loses 0.6 °C
// in every second.
//
//   - Holds for: as TimeConstant.
//   - Beyond: tongs and a cold bench take more than the air.
//   - Source: lumped heat balance, any text on heat transfer.
func Carried(b Body, from, around q.Temperature, wait q.Time) (q.Temperature, []basis.Note, error) {
	tau, notes, err := TimeConstant(b)
	if err != nil {
		return 0, nil, err
	}
	if err := aboveZero(map[string]q.Temperature{"temperature at first": from, "temperature around": around}); err != nil {
		return 0, nil, err
	}
	if !(wait >= 0) {
		return 0, nil, refuse("wait", seconds(wait), "0 or more")
	}
	return q.Temperature(carried(float64(tau), float64(from), float64(around), float64(wait))), notes, nil
}

func (b Body) check() error {
	if err := b.Metal.conducts("part"); err != nil {
		return err
	}
	if !(b.Depth > 0) {
		return refuse("volume over surface", mm(b.Depth), "more than 0")
	}
	if !(b.Film > 0) {
		return refuse("film", film(b.Film), "more than 0")
	}
	return nil
}

func (b Body) notes() []basis.Note {
	bi := float64(b.Film) * float64(b.Depth) / float64(b.Metal.Conductivity)
	if bi < 0.1 {
		return nil
	}
	return []basis.Note{{
		Says:   fmt.Sprintf("the part is not of one temperature: its Biot number is %.2g, more than 0.1", bi),
		Source: "lumped heat balance", Grade: basis.Extrapolated,
	}}
}

// aboveZero blames the first, by name, that is no absolute temperature.
func aboveZero(all map[string]q.Temperature) error {
	blamed := ""
	for name, t := range all {
		if !(t > 0) && (blamed == "" || name < blamed) {
			blamed = name
		}
	}
	if blamed == "" {
		return nil
	}
	return refuse(blamed, celsius(all[blamed]), "above absolute zero")
}

func timeConstant(heat, depth, film float64) float64 { return heat * depth / film }

func coolingTime(tau, from, to, around float64) float64 {
	return tau * math.Log((from-around)/(to-around))
}

func carried(tau, from, around, wait float64) float64 {
	return around + (from-around)*math.Exp(-wait/tau)
}
