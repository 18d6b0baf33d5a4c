package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// StudLoad is what an idler does to the stud it turns on.
type StudLoad struct {
	Force q.Force
	Opens float64 // by how much both centre distances grow for each length the axis moves along the force; below 0 they close
}

// IdlerLoad returns the load of the teeth on the stud of an idler, and whether
// wear along it opens or closes the two meshes.
//
//	F = 2·Ft/cos(φ)·|sin(β/2 − φ)|
//
// β is the angle between the lines to its two mates, from the one that drives it
// to the one it drives, the way the idler turns: half a turn is in line. The load
// lies halfway between the two lines, so both distances change alike, by
// −cos(β/2) of the way the axis moves; by the opposite where β is under 2φ.
//
//   - Holds for: spur gears, no friction, all three of one pressure angle.
//   - Beyond: weight, and a spring or belt on the same stud, add to it. At β of 2φ the forces cancel; the load then has no direction, which is noted.
//   - Source: statics, worked out.
func IdlerLoad(tangential q.Force, pressure, between float64) (StudLoad, []basis.Note, error) {
	if err := firstOf(above0("tangential force", fmt.Sprintf("%.6g N", float64(tangential)), float64(tangential)), checkPressure(pressure)); err != nil {
		return StudLoad{}, nil, err
	}
	if !(between > 0 && between < 2*math.Pi) {
		return StudLoad{}, nil, refuse("angle between the mates", deg(between), "more than 0° and less than 360°, in radians")
	}
	load := StudLoad{Force: q.Force(idlerLoad(float64(tangential), pressure, between)), Opens: idlerOpens(pressure, between)}
	var notes []basis.Note
	if balanced := math.Abs(between/2 - pressure); balanced < near0 {
		notes = append(notes, basis.Note{
			Says:   "the two tooth forces all but cancel: weight and friction decide which way the stud wears",
			Source: "geometry", Grade: basis.Derived,
		})
	}
	return load, notes, nil
}

// near0 is how near to balance the direction is not to be trusted: our choice, 3°,
// about the angle of friction of oiled teeth.
const near0 = 3 * math.Pi / 180

func idlerLoad(tangential, φ, between float64) float64 {
	return 2 * tangential / math.Cos(φ) * math.Abs(math.Sin(between/2-φ))
}

func idlerOpens(φ, between float64) float64 {
	if between/2 < φ {
		return math.Cos(between / 2)
	}
	return -math.Cos(between / 2)
}
