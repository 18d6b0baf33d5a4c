package buildup

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Steel is what a steel is made of besides iron, in per cent by mass.
type Steel struct {
	Carbon, Manganese, Chromium, Molybdenum, Vanadium, Nickel, Copper float64
}

// CarbonEquivalent returns how hardenable a steel is beside a weld, as the carbon
// a plain steel would need to be the same, in per cent.
//
//	CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15
//
// All in per cent by mass, as the certificate says; a standard's upper limits give the worst.
//
//   - Holds for: carbon and low-alloy steels with 0.12 % carbon and more.
//   - Beyond: under 0.12 % it is noted: other formulas suit such steels better. Cast iron and stainless are not judged by it: over 2 % carbon is refused.
//   - Source: the IIW formula, read on several pages.
func CarbonEquivalent(s Steel) (float64, []basis.Note, error) {
	for _, e := range []struct {
		name string
		x    float64
		most float64
	}{{"carbon", s.Carbon, 2}, {"manganese", s.Manganese, 20}, {"chromium", s.Chromium, 10.5}, {"molybdenum", s.Molybdenum, 5},
		{"vanadium", s.Vanadium, 2}, {"nickel", s.Nickel, 10}, {"copper", s.Copper, 3}} {
		if !(e.x >= 0 && e.x <= e.most) {
			return 0, nil, refuse(e.name, fmt.Sprintf("%.4g %%", e.x), fmt.Sprintf("from 0 to %g %% for a steel this formula is for", e.most))
		}
	}
	var notes []basis.Note
	if s.Carbon < lowCarbon {
		notes = append(notes, basis.Note{Says: "under 0.12 % carbon this formula makes a steel out worse than it is", Source: "welding texts, from memory", Grade: basis.Memory})
	}
	return equivalent(s), notes, nil
}

// lowCarbon is where the formula stops being apt, in per cent: from memory of welding texts.
const lowCarbon = 0.12

func equivalent(s Steel) float64 {
	return s.Carbon + s.Manganese/6 + (s.Chromium+s.Molybdenum+s.Vanadium)/5 + (s.Nickel+s.Copper)/15
}

// Preheating is how warm to bring the part before the arc is struck, and to keep
// it between beads: somewhere from the one to the other.
type Preheating struct{ Least, Most q.Temperature }

// band is one step of the preheat table, up to and with a carbon equivalent.
type band struct {
	to                                 float64 // per cent
	least, most, thickLeast, thickMost float64 // °C
}

// bands, by carbon equivalent: from memory of an electrode maker's handbook (0.45 to
// 0.60: 93 to 204 °C, over: 204 to 371 °C), widened to what pages that were read say
// (0.45 % carbon steel 150 to 250 °C, thick 250 to 400 °C; 65 to 100 °C from 0.40 on).
var bands = []band{
	{0.35, 20, 20, 20, 65},
	{0.40, 20, 65, 20, 100},
	{0.45, 65, 100, 65, 150},
	{0.60, 95, 250, 150, 400},
	{1.00, 200, 370, 250, 400},
}

// Preheat returns how warm a steel should be before welding, by its carbon
// equivalent: a range, because sources differ and hydrogen and restraint count too.
//
//	a table by CE; thick or held fast takes the wider column
//
// Thick is over some 25 mm, or a part that can not give as the bead shrinks.
//
//   - Holds for: carbon and low-alloy steels up to a CE of 1.0, dry low-hydrogen rods or gas-shielded wire. Take the upper end for rutile rods.
//   - Beyond: refused. A hardened part loses its temper at the upper end. Never over 400 °C between beads (read on a page). For a code, use the code's own chart.
//   - Source: an electrode maker's handbook, from memory; welding pages, read, where they differ.
func Preheat(equivalent float64, thick bool) (Preheating, []basis.Note, error) {
	i := bandOf(equivalent)
	if i < 0 {
		return Preheating{}, nil, refuse("carbon equivalent", fmt.Sprintf("%.4g %%", equivalent), "from 0 to 1.0 %; more wants a welding engineer")
	}
	b := bands[i]
	least, most := b.least, b.most
	if thick {
		least, most = b.thickLeast, b.thickMost
	}
	return Preheating{kelvin(least), kelvin(most)}, []basis.Note{{
		Says: "preheat is a range: sources differ, and hydrogen and restraint count as much", Source: "an electrode maker's handbook, from memory; welding pages", Grade: basis.Memory,
	}}, nil
}

func bandOf(equivalent float64) int {
	const slip = 1e-9 // so that 0.45 worked out of figures is 0.45: our choice
	if !(equivalent >= 0) {
		return -1
	}
	for i, b := range bands {
		if equivalent <= b.to+slip {
			return i
		}
	}
	return -1
}

func kelvin(c float64) q.Temperature { return q.Temperature(c + 273.15) }
