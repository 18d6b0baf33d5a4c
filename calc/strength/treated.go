package strength

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	q "wornfit/calc/quantity"
)

// Treatment is what a repair does to the endurance limit in bending, against a
// plain machined shaft of the same diameter and steel.
type Treatment struct {
	Name, Says string
	Kept       interval.I // part of the limit that is left, from poor work to good
	Source     string
	Grade      basis.Grade
}

const practice = "common practice, no source"

// treatments are ranges, wide because tests are: from memory of the named texts,
// or common practice, row by row.
var treatments = []Treatment{
	{"welded", "built up by welding and turned, not stress-relieved", interval.Of(0.35, 0.7), practice, basis.Practice},
	{"welded-relieved", "built up by welding, stress-relieved, turned and tested for cracks", interval.Of(0.6, 0.9), practice, basis.Practice},
	{"brazed", "built up with bronze: the steel is annealed and bronze has no limit of its own", interval.Of(0.4, 0.8), practice, basis.Practice},
	{"sprayed", "sprayed over a grit-blasted seat", interval.Of(0.7, 0.9), "Shigley (14 % lost in a few tests), from memory", basis.Memory},
	{"sprayed-threaded", "sprayed over a rough-threaded or grooved undercut", interval.Of(0.4, 0.7), practice, basis.Practice},
	{"chromium-plated", "hard chromium, neither peened nor rolled before", interval.Of(0.4, 0.8), "Shigley (up to half lost), from memory", basis.Memory},
	{"nickel-plated", "nickel from a tank or a brush", interval.Of(0.5, 0.95), "Shigley (up to half lost), from memory", basis.Memory},
	{"knurled", "knurled to grow", interval.Of(0.4, 0.7), practice, basis.Practice},
	{"pressed-edge", "at the edge of a pressed-on hub or sleeve that passes the load on: it frets there", interval.Of(0.25, 0.45), "Peterson after Horger (Kf 2.2 to 4), from memory", basis.Memory},
	{"pressed-edge-idle", "at the edge of a pressed-on sleeve that passes no load on", interval.Of(0.45, 0.6), "Peterson after Horger (Kf 1.7 to 2.2), from memory", basis.Memory},
}

// Treatments returns all of them.
func Treatments() []Treatment { return slices.Clone(treatments) }

// TreatmentFor returns the treatment of a name, with a note of how weak it is.
//
//   - Holds for: bending of steel shafts, sound work; take the low end where a break hurts somebody.
//   - Beyond: several at one place multiply. Nothing here heals a shaft that is cracked already.
//   - Source: each row names its own; most are from memory or common practice.
func TreatmentFor(name string) (Treatment, []basis.Note, error) {
	names := make([]string, len(treatments))
	for i, t := range treatments {
		if t.Name == name {
			says := fmt.Sprintf("%s: %g to %g of the endurance limit is left", t.Says, t.Kept.Lo, t.Kept.Hi)
			return t, []basis.Note{{Says: says, Source: t.Source, Grade: t.Grade}}, nil
		}
		names[i] = t.Name
	}
	return Treatment{}, nil, refuse("treatment", "'"+name+"'", "one of "+strings.Join(names, ", "))
}

// EdgeFactors are fatigue factors Kf on the nominal stress of the shaft.
type EdgeFactors struct{ Bending, Twisting float64 }

// Where the seat factors hold: Pa, from memory of DIN 743-2.
const softestSeat, hardestSeat = 400e6, 1.2e9

const din743 = "DIN 743-2, from memory"

// PressedEdge returns the fatigue factors at the edge of a pressed-on hub.
//
//	bending: 2.7·(Su/1000 MPa)^0.43; twisting: 0.65 of it
//
// All in SI units.
//
//   - Holds for: steel of 400 to 1200 MPa, shafts about 40 mm, no relief groove and no overhang.
//   - Beyond: other strengths are noted as extrapolated. A larger shaft has a little more; a rounded or overhanging hub less. Older tests found 2.2 to 4 where the hub passes the load on, see TreatmentFor: the sources disagree.
//   - Source: DIN 743-2, from memory.
func PressedEdge(tensile q.Stress) (EdgeFactors, []basis.Note, error) {
	if err := steel(tensile); err != nil {
		return EdgeFactors{}, nil, err
	}
	b := pressedEdge(float64(tensile))
	return EdgeFactors{b, pressedTwist(b)}, seatNotes(tensile), nil
}

// KeyedHub returns the fatigue factors of a shaft under a hub with a parallel
// key, keyway and edge of the hub together.
//
//	bending: 3·(Su/1000 MPa)^0.38; twisting: 0.56 of it + 0.1
//
// All in SI units, on the full diameter.
//
//   - Holds for: steel of 400 to 1200 MPa, shafts about 40 mm, an end-milled keyway.
//   - Beyond: other strengths are noted as extrapolated. Two keyways have 1.15 times as much, from memory.
//   - Source: DIN 743-2, from memory.
func KeyedHub(tensile q.Stress) (EdgeFactors, []basis.Note, error) {
	if err := steel(tensile); err != nil {
		return EdgeFactors{}, nil, err
	}
	b := keyedHub(float64(tensile))
	return EdgeFactors{b, keyedTwist(b)}, seatNotes(tensile), nil
}

func seatNotes(tensile q.Stress) []basis.Note {
	if tensile >= softestSeat && tensile <= hardestSeat {
		return nil
	}
	return []basis.Note{{Says: "the factor of a seat is known from " + mpa(softestSeat) + " to " + mpa(hardestSeat) + " tensile strength", Source: din743, Grade: basis.Extrapolated}}
}

func pressedEdge(tensile float64) float64  { return 2.7 * math.Pow(tensile/1e9, 0.43) }
func keyedHub(tensile float64) float64     { return 3 * math.Pow(tensile/1e9, 0.38) }
func pressedTwist(bending float64) float64 { return 0.65 * bending }
func keyedTwist(bending float64) float64   { return 0.56*bending + 0.1 }
