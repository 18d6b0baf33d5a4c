package joints

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Coat is a sprayed coat thought of for a worn place. Thicknesses are per side.
type Coat struct {
	Round       q.Length // diameter of the place
	Undercut    q.Length // how deep the seat is turned below the finished size
	Past        q.Length // how far the undercut runs past the wear
	Hardness    float64  // HRC of the metal below; 0 where it is not hard or not known
	CopperAlloy bool     // the metal below is a copper alloy
	Carbide     bool     // a dense carbide coat

	Keyway, Edge, Thread        bool // the coat would run to one
	LineContact, Shock, Strikes bool // rollers, balls or cams run on it; blows; blows on an edge
	OldCoat, Oily, Strength     bool // plate or coat below; oil that will not come out; the coat is to carry what the shaft lost
}

// The limits of a sprayed coat, in metres, as SprayBars says them: read in what
// quotes a maker's sheet and a trade guide, but the shafts' size from memory.
const (
	leastSteel  = 0.015 * inch // undercut in steel and iron, read in a bond-coat maker's sheet
	leastCopper = 0.030 * inch // in copper alloys, read in the same
	leastPast   = 0.5 * inch   // past the wear at each end, read in the same
	mostMetal   = 0.250 * inch // arc or flame, read in a trade guide
	mostCarbide = 0.020 * inch // dense carbide, read in the same
	leastRound  = 12e-3        // common practice, no source
	hardest     = 45           // HRC that blasting still bites: from memory of AWS C2.19
)

// SprayBars returns every reason why a sprayed coat will not do at a place; none
// means that nothing known speaks against it, not that it holds.
//
//	no formula: a list of what is known to fail
//
// A bond stress is neither asked nor given: the pull-off test (ASTM C633) pulls
// square to the surface, compares coats, and says itself that it is not for stress.
//
//   - Holds for: flame, arc and fast-flame coats put on round, blasted, undercut places.
//   - Beyond: the shaft must carry its load at the undercut alone; reckon that apart. Fatigue wants a factor of its own.
//   - Source: each reason names its own; sheets and guides read as extracts, AWS C2.19 and practice from memory.
func SprayBars(c Coat) ([]basis.Note, error) {
	if err := above0("diameter of the place", mm(c.Round), float64(c.Round)); err != nil {
		return nil, err
	}
	if !(c.Undercut >= 0 && c.Undercut < c.Round/2) {
		return nil, refuse("undercut", mm(c.Undercut), "0 or more and less than half the diameter, "+mm(c.Round/2))
	}
	if !(c.Past >= 0) {
		return nil, refuse("run past the wear", mm(c.Past), "0 or more")
	}
	if !(c.Hardness >= 0 && c.Hardness <= 72) {
		return nil, refuse("hardness", fmt.Sprintf("%.4g HRC", c.Hardness), "from 0 to 72 HRC")
	}
	return append(c.misplaced(), c.missized()...), nil
}

// misplaced are the reasons that lie in the place, whatever its sizes.
func (c Coat) misplaced() []basis.Note {
	const trade, practice = "a trade guide and a standard for sprayed machine parts, from memory", "common practice, no source"
	var out []basis.Note
	for _, r := range []struct {
		is           bool
		says, source string
		grade        basis.Grade
	}{
		{c.Keyway, "a keyway in it: the side of a key chips the coat off", trade, basis.Memory},
		{c.Edge, "a bare edge: the coat lifts from it; break the edge and end the coat in an undercut", trade, basis.Memory},
		{c.Thread, "a thread: no coat stands on its flanks", practice, basis.Practice},
		{c.LineContact, "line or point contact: rollers, balls and cams roll the coat off", trade, basis.Memory},
		{c.Shock, "shock: the coat is brittle and held by its roughness", trade, basis.Memory},
		{c.Strikes, "blows on its edge: the coat shells off", trade, basis.Memory},
		{c.OldCoat, "old plate or coat below: it must come off to bare metal first", "a naval standard for plating, read as an extract, of sprayed coats; of plate, practice", basis.Practice},
		{c.Oily, "oil that will not come out: the coat does not hold on it", practice, basis.Practice},
		{c.Strength, "the coat is to add strength: it adds none", trade, basis.Memory},
	} {
		if r.is {
			out = append(out, basis.Note{Says: r.says, Source: r.source, Grade: r.grade})
		}
	}
	return out
}

// missized are the reasons that lie in its sizes.
func (c Coat) missized() []basis.Note {
	var out []basis.Note
	bar := func(is bool, says, source string, grade basis.Grade) {
		if is {
			out = append(out, basis.Note{Says: says, Source: source, Grade: grade})
		}
	}
	least, by := sprayLeast(c.Round, c.CopperAlloy)
	const sheet, guide = "a bond-coat maker's sheet, read in extract", "a trade guide to coats, read in extract"
	bar(c.Undercut < least*(1-1e-9), "too thin: "+mm(c.Undercut)+" a side, "+mm(least)+" is the least", by.Source, by.Grade)
	most := q.Length(mostMetal)
	if c.Carbide {
		most = mostCarbide
	}
	bar(c.Undercut > most*(1+1e-9), "too thick: "+mm(c.Undercut)+" a side, "+mm(most)+" is the most", guide, basis.Secondary)
	bar(c.Past < leastPast*(1-1e-9), "it ends "+mm(c.Past)+" past the wear; "+mm(leastPast)+" is the least", sheet, basis.Secondary)
	bar(c.Hardness > hardest, fmt.Sprintf("too hard below: %.4g HRC; over 45 blasting hardly bites", c.Hardness), "AWS C2.19, from memory, weak", basis.Memory)
	bar(c.Round < leastRound, "too small: under 12 mm the spray misses the work or overheats it", "common practice, no source", basis.Practice)
	return out
}

// SprayLeast returns the least undercut, per side, for a sprayed coat on a shaft.
//
//	the larger of 0.38 mm (copper alloy 0.76 mm) and 0.25, 0.38, 0.51, 0.64 mm to 1, 2, 3, over 3 in
//
// In a note it says which of the two decides and how well that is known.
//
//   - Holds for: metal coats with a bond coat; the finished coat is as thick as the undercut.
//   - Beyond: over 4 in the old rule is not known further; its last step stands.
//   - Source: a bond-coat maker's sheet, read in extract; the rule by size from memory of a metallising handbook, weak.
func SprayLeast(round q.Length, copperAlloy bool) (q.Length, []basis.Note, error) {
	if !(round > 0) {
		return 0, nil, refuse("diameter of the place", mm(round), "more than 0")
	}
	least, by := sprayLeast(round, copperAlloy)
	return least, []basis.Note{by}, nil
}

func sprayLeast(round q.Length, copperAlloy bool) (q.Length, basis.Note) {
	flat := leastSteel
	if copperAlloy {
		flat = leastCopper
	}
	bySize := sprayBySize(float64(round))
	if bySize > flat {
		return q.Length(bySize), basis.Note{Says: "the old rule by size decides", Source: "a metallising handbook, from memory", Grade: basis.Memory}
	}
	return q.Length(flat), basis.Note{Says: "the maker's least decides", Source: "a bond-coat maker's sheet, read in extract", Grade: basis.Secondary}
}

// sprayBySize is the old rule, from memory of a metallising handbook: hundredths of
// an inch a side.
func sprayBySize(round float64) float64 {
	const slip = 1e-9 // a nanometre, so that 1 in made of fractions is 1 in: our choice
	switch {
	case round <= inch+slip:
		return 0.010 * inch
	case round <= 2*inch+slip:
		return 0.015 * inch
	case round <= 3*inch+slip:
		return 0.020 * inch
	}
	return 0.025 * inch
}
