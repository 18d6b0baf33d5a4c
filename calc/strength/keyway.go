package strength

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	q "wornfit/calc/quantity"
)

// Where Moore's line holds, from memory of his tests.
const (
	widestKeyway  = 0.5    // of the diameter, from memory of Moore
	deepestKeyway = 0.1875 // of the diameter, from memory of Moore
	refusedKeyway = 0.25   // of the diameter: our choice, far beyond any standard key
)

const moore = "Moore, University of Illinois Bulletin 42 (1909), from memory"

// Keyway is the slot of a key in a shaft.
type Keyway struct {
	Diameter, Width, Depth q.Length // of the shaft; across; from the surface to the bottom
}

// KeywayStrengthLeft returns the part of its strength against yielding, in
// bending and torsion, that a shaft keeps with a keyway in it.
//
//	left = 1 − 0.2·w/d − 1.1·h/d
//
// A keyway of the usual size, w = d/4 and h = d/8, leaves 0.81.
//
//   - Holds for: one keyway, w/d up to 0.5, h/d up to 0.19, the first yielding under steady load.
//   - Beyond: deeper, to a quarter of the diameter, is noted as extrapolated. Swinging load feels more, see KeywayFatigue. Turning the shaft down makes w/d grow.
//   - Source: Moore, University of Illinois Bulletin 42 (1909), from memory.
func KeywayStrengthLeft(k Keyway) (float64, []basis.Note, error) {
	switch {
	case !(k.Diameter > 0 && k.Diameter <= 10):
		return 0, nil, refuse("diameter", mm(k.Diameter), "more than 0 and no more than "+mm(10))
	case !(k.Width >= 0 && k.Width <= widestKeyway*k.Diameter):
		return 0, nil, refuse("width of the keyway", mm(k.Width), "0 or more and no more than half the diameter, "+mm(widestKeyway*k.Diameter))
	case !(k.Depth >= 0 && k.Depth <= refusedKeyway*k.Diameter):
		return 0, nil, refuse("depth of the keyway", mm(k.Depth), "0 or more and no more than a quarter of the diameter, "+mm(refusedKeyway*k.Diameter))
	}
	var notes []basis.Note
	if k.Depth > deepestKeyway*k.Diameter {
		says := fmt.Sprintf("the keyway is %.3g of the diameter deep; tests went to %.3g", k.Depth/k.Diameter, deepestKeyway)
		notes = []basis.Note{{Says: says, Source: moore, Grade: basis.Extrapolated}}
	}
	return keywayLeft(float64(k.Diameter), float64(k.Width), float64(k.Depth)), notes, nil
}

// KeywayCut is how a keyway was made.
type KeywayCut string

// The two cuts: an end mill leaves a square end, a disc cutter runs out.
const (
	EndMilled  KeywayCut = "end-milled"
	SledRunner KeywayCut = "sled-runner"
)

// KeywayFactors are ranges of fatigue factors on the nominal stress of the whole
// shaft: from what tests found to the factor of the shape in full.
type KeywayFactors struct{ Bending, Twisting interval.I }

// keywayTable: low ends are Kf of tests by Lipson, Noll and Clock as Juvinall
// prints them, from memory; high ends Kt at r/d 0.02 as Shigley prints them from
// Peterson, from memory. That of the sled-runner in torsion is the end-milled one:
// the bottom corner is the same, our choice.
var keywayTable = map[KeywayCut]struct{ soft, hard KeywayFactors }{
	EndMilled: {
		soft: KeywayFactors{interval.Of(1.6, 2.14), interval.Of(1.3, 3.0)},
		hard: KeywayFactors{interval.Of(2.0, 2.14), interval.Of(1.6, 3.0)},
	},
	SledRunner: {
		soft: KeywayFactors{interval.Of(1.3, 1.7), interval.Of(1.3, 3.0)},
		hard: KeywayFactors{interval.Of(1.6, 1.7), interval.Of(1.6, 3.0)},
	},
}

// hardened is where Juvinall's table changes columns, from memory: 200 HB, which
// is 690 MPa.
const hardened = 690e6

// KeywayFatigue returns the range of fatigue factors of a keyway by its cut and
// the steel. Under a hub take KeyedHub, which has the hub's edge in it.
//
//   - Holds for: keyways of standard size with r/d about 0.02 at the bottom; on the full diameter.
//   - Beyond: a sharper bottom has more. The note is always there: the figures are from memory.
//   - Source: Lipson, Noll and Clock in Juvinall's table and Peterson in Shigley's, from memory.
func KeywayFatigue(cut KeywayCut, tensile q.Stress) (KeywayFactors, []basis.Note, error) {
	row, known := keywayTable[cut]
	if !known {
		return KeywayFactors{}, nil, refuse("cut of the keyway", "'"+string(cut)+"'", "end-milled or sled-runner")
	}
	if err := steel(tensile); err != nil {
		return KeywayFactors{}, nil, err
	}
	f := row.soft
	if tensile >= hardened {
		f = row.hard
	}
	says := fmt.Sprintf("a keyway's fatigue factor is %g to %g in bending and %g to %g in torsion", f.Bending.Lo, f.Bending.Hi, f.Twisting.Lo, f.Twisting.Hi)
	return f, []basis.Note{{Says: says, Source: "Juvinall after Lipson, Noll and Clock, and Shigley after Peterson, from memory", Grade: basis.Memory}}, nil
}

func keywayLeft(d, width, depth float64) float64 { return 1 - 0.2*width/d - 1.1*depth/d }
