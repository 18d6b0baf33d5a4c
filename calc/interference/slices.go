package interference

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/quantity"
)

// Slice is a length of a hub over which its outside does not change.
type Slice struct {
	Length  quantity.Length
	Outside quantity.Length // diameter
}

// Sliced is what a stepped hub comes to.
type Sliced struct {
	Mean  quantity.Stress   // pressure over the whole joint: for grip and press force
	Each  []quantity.Stress // pressure of each slice
	Hoop  []quantity.Stress // stress round the bore of each slice
	Least quantity.Stress   // of Each
}

// SlicePressure returns the pressure of a shaft in a hub whose outside has steps
// (a disc with bosses, a gear with a long hub): each slice by its own outside as
// if it stood alone, the mean by their lengths.
//
//	p mean = Σ(p·L)/ΣL
//
// The shaft may be hollow. The pair's own outside is not looked at.
//
//   - Holds for: straight seat, even interference, slices not shorter than their walls are thick; finite elements (CalculiX, frictionless) give a mean 1.6 % higher for a 100 mm disc in the middle of a 48 mm hub on 30 mm. The smallest outside alone is 16 % low.
//   - Beyond: the pressure does not jump at a step: it runs from one slice to the next over about a wall; take Each as a guide, Mean as good.
//   - Source: Lamé's thick ring by slices; own finite elements.
func SlicePressure(p Pair, interference quantity.Length, slices []Slice) (Sliced, []basis.Note, error) {
	if len(slices) == 0 {
		return Sliced{}, nil, refuse("slices", "none", "one for each outside diameter of the hub")
	}
	var out Sliced
	var load, long float64
	var notes []basis.Note
	for i, s := range slices {
		if !(s.Length > 0) {
			return Sliced{}, nil, refuse(fmt.Sprintf("length of slice %d", i+1), mm(s.Length), "more than 0")
		}
		p.Outside = s.Outside
		each, err := ContactPressure(p, interference)
		if err != nil {
			return Sliced{}, nil, fmt.Errorf("slice %d: %w", i+1, err)
		}
		hoop, err := HubHoop(p.Seat, s.Outside, each)
		if err != nil {
			return Sliced{}, nil, fmt.Errorf("slice %d: %w", i+1, err)
		}
		out.Each, out.Hoop = append(out.Each, each), append(out.Hoop, hoop)
		load, long = load+float64(each)*float64(s.Length), long+float64(s.Length)
		if i == 0 || each < out.Least {
			out.Least = each
		}
		if s.Length < (s.Outside-p.Seat)/2 && len(slices) > 1 {
			notes = append(notes, basis.Note{Says: fmt.Sprintf("slice %d is shorter than its wall is thick: its pressure spreads into its neighbours", i+1), Source: "own finite elements", Grade: basis.Derived})
		}
	}
	out.Mean = quantity.Stress(load / long)
	return out, notes, nil
}

// ShortHub returns by how much a hub shorter than its shaft is worse off than the
// even pressure of ContactPressure says: factors on the mean pressure and on the
// stress round the bore. Ends that stand free of the hub stiffen the shaft.
//
//	pressure and hoop are read between 1.00 and 1.00 (equal lengths), 1.02 and 1.02 (L/d 1), 1.11 and 1.18 (L/d 0.24)
//
// in the length over the seat, straight between them, and nothing from L/d 2 on.
//
//   - Holds for: a shaft that stands out on both sides, or on neither (through false), L/d 0.24 and more; steel plates and aluminium hubs of one and a half to two and a half bores.
//   - Beyond: shorter than L/d 0.24 the last figures stand, with a note: no element model was made.
//   - Source: own finite elements (CalculiX): a 25 mm long hub on 25 mm, a 6 mm plate on 25 mm.
func ShortHub(seat, length quantity.Length, through bool) (pressure, hoop float64, notes []basis.Note, err error) {
	switch {
	case !(seat > 0):
		return 0, 0, nil, refuse("seat", mm(seat), "more than 0")
	case !(length > 0):
		return 0, 0, nil, refuse("length", mm(length), "more than 0")
	case !through:
		return 1, 1, nil, nil
	}
	long := float64(length / seat)
	if long < shortest {
		notes = []basis.Note{{Says: fmt.Sprintf("shorter than %.2g of the seat, where no element model was made", shortest), Source: "own finite elements", Grade: basis.Derived}}
	}
	return between(long, shortPressure, longPressure), between(long, shortHoop, longPressure), notes, nil
}

// What finite elements gave for a hub on a shaft that stands out of it:
// testdata/published/mechanics/fe_press.json, F7 and F8.
const (
	shortest      = 0.24 // length over seat; derived: F8
	shortPressure = 1.11 // derived: F8, own finite elements
	shortHoop     = 1.18 // derived: F8, own finite elements
	longPressure  = 1.02 // derived: F7, at a length of one seat; the hoop rises with it
)

// between runs straight from short at the shortest to long at one seat, and on to
// nothing at two.
func between(l, short, long float64) float64 {
	switch {
	case l <= shortest:
		return short
	case l <= 1:
		return short + (long-short)*(l-shortest)/(1-shortest)
	case l <= 2:
		return long + (1-long)*(l-1)
	}
	return 1
}
