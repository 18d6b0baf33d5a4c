package casefile

import (
	"wornfit/calc/interval"
	"wornfit/calc/quantity"
)

// The vocabulary asks for Brinell; testers in shops read Rockwell C. Rows are
// HRC and HB of steel, the ball of carbide above 450: ASTM E140 table 1, from
// memory of it. There is no conversion for cast iron or bronze.
var rockwell = [][2]float64{{20, 226}, {25, 253}, {30, 286}, {35, 327}, {40, 371}, {45, 421}, {50, 481}, {55, 560}, {60, 654}, {65, 739}}

// doubtful is how far a converted hardness may be out, as a share: common
// practice, no source.
const doubtful = 0.05

// brinell is a hardness typed in HRC as a range of HB; false when it was typed
// in something else or lies outside the table.
func brinell(text string) (t quantity.Typed, hb interval.I, ok bool) {
	t, err := quantity.Parse(text, quantity.HardnessHRC)
	if err != nil {
		return t, hb, false
	}
	low, okLow := fromRockwell(t.Low)
	high, okHigh := fromRockwell(t.High)
	return t, interval.I{Lo: low * (1 - doubtful), Hi: high * (1 + doubtful)}, okLow && okHigh
}

func fromRockwell(c float64) (hb float64, ok bool) {
	for i, row := range rockwell[1:] {
		if before := rockwell[i]; c >= before[0] && c <= row[0] {
			return before[1] + (c-before[0])/(row[0]-before[0])*(row[1]-before[1]), true
		}
	}
	return 0, false
}
