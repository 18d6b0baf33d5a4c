package film

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// HalfOf returns one of the two bearings that a groove all round the middle of a
// bore makes of one: half of what is left of the length, with half of the load.
// Run tells how it runs; each half takes the torque and the oil it says.
//
//	L' = (L − groove)/2, F' = F/2
//
// A groove all round costs dearly: the oil pressure is nought in it, so that a
// bearing of one diameter becomes two of less than half, each carrying far less
// than half at the same film.
//
//   - Holds for: a groove in the middle, deep against the film, the load in the middle too.
//   - Beyond: oil under pressure in the groove adds its push, which is small beside the film's.
//   - Source: the film pressure is nought where the groove is; any text on plain bearings; worked out.
func HalfOf(j Journal, groove q.Length) (Journal, error) {
	if err := j.check(0); err != nil {
		return Journal{}, err
	}
	if !(groove > 0 && groove < j.Length) {
		return Journal{}, refuse("width of the groove", mm(groove), "more than 0 and less than the bearing's length, "+mm(j.Length))
	}
	j.Length, j.Load = (j.Length-groove)/2, j.Load/2
	return j, nil
}

// Where a hole or an axial groove lies from the line of the load, in the way the
// shaft turns: from memory of designers' guides to plain bearings, to the safe side;
// the film builds up before the load and ends a little behind its thinnest place.
const (
	carriesFrom = -math.Pi / 3 // rad
	carriesTo   = math.Pi / 2  // rad
)

// HoleLies tells whether a hole or a groove along the bore stands where the film
// carries. at is its angle from the line of the load to the bore, positive the way
// the shaft turns; 180° is straight opposite, where it belongs. In a note it says
// what comes of it.
//
//	it carries from 60° before the load to 90° behind it
//
// All angles in radians.
//
//   - Holds for: a steady load, a shaft that turns one way.
//   - Beyond: a load that turns with the shaft meets a hole in the bore once a turn: drill the shaft instead. Where the shaft turns both ways keep 90° on both sides clear.
//   - Source: from memory of designers' guides to plain bearings.
func HoleLies(at float64) (carries bool, notes []basis.Note, err error) {
	if !(math.Abs(at) <= math.Pi) {
		return false, nil, refuse("angle from the load", degrees(at), "-180° to 180°, in radians")
	}
	if at < carriesFrom || at > carriesTo {
		return false, nil, nil
	}
	return true, []basis.Note{{
		Says:   "the film carries here: a hole or groove lets its pressure out, and the shaft sinks through; put it on the unloaded side",
		Source: "designers' guides to plain bearings", Grade: basis.Memory,
	}}, nil
}
