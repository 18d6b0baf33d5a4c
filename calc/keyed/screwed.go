package keyed

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Point is the end of a set screw that presses on the shaft.
type Point string

// The points there is a figure for.
const (
	Cup  Point = "cup"
	Cone Point = "cone"
	Flat Point = "flat"
	Oval Point = "oval"
)

// points are what a point holds of what a cup point holds: a screw maker's sheet,
// read as an extract.
var points = map[Point]float64{Cup: 1, Cone: 1.07, Flat: 0.92, Oval: 0.90}

// SetScrews are screws through a hub that press on a plain shaft.
type SetScrews struct {
	Shaft, Screw q.Length // diameter of the shaft, of the screw's thread
	Point        Point
	Count        int
}

// Holding is what set screws hold, between what two sources say: along the shaft
// or round it at its surface, not both at once.
type Holding struct {
	Least, Most             q.Force
	LeastTorque, MostTorque q.Torque
	Seating                 q.Torque // what each is tightened to for it
}

// SetScrewHolds returns what set screws hold along a shaft and round it, as a
// range. A size between those of the table counts as the next smaller one.
//
//	F = F1·k·max(1, 0.75·z), T = F·d/2
//
// F1 is the table's range for one cup point, k the point, z the number of screws.
//
//   - Holds for: alloy screws of #4 to 3/4 in, tightened to the table's torque, some 10 HRC harder than the shaft; steady load. 15 % less on a shaft as hard as the screw (a screw maker's sheet).
//   - Beyond: shaking or reversing torque loosens them; ask for several times as much, or a key (common practice, no source). Refused outside the sizes.
//   - Source: Shigley, table of holding power, from memory, for the upper end; a fastener seller's chart, read, for the lower, which is less than half of it.
func SetScrewHolds(s SetScrews) (Holding, []basis.Note, error) {
	if err := above0("shaft diameter", mm(s.Shaft), float64(s.Shaft)); err != nil {
		return Holding{}, nil, err
	}
	k, known := points[s.Point]
	if !known {
		return Holding{}, nil, refuse("point of the screw", "'"+string(s.Point)+"'", "cup, cone, flat or oval")
	}
	if s.Count < 1 {
		return Holding{}, nil, refuse("number of screws", fmt.Sprint(s.Count), "1 or more")
	}
	list := screws()
	i := screwRow(list, float64(s.Screw))
	if i < 0 {
		return Holding{}, nil, refuse("diameter of the screw", mm(s.Screw), "from "+mm(q.Length(list[0].diameter))+" to "+mm(q.Length(list[len(list)-1].diameter)))
	}
	each := k * bearing(float64(s.Count))
	h := Holding{Least: q.Force(each * list[i].least), Most: q.Force(each * list[i].most), Seating: q.Torque(list[i].seating)}
	h.LeastTorque, h.MostTorque = q.Torque(h.Least)*q.Torque(s.Shaft)/2, q.Torque(h.Most)*q.Torque(s.Shaft)/2
	return h, []basis.Note{{
		Says:   "two sources differ more than twofold; count on the lower end",
		Source: "Shigley, from memory; a fastener seller's chart", Grade: basis.Memory,
	}}, nil
}

type screw struct{ diameter, seating, least, most float64 } // SI

//go:embed screwed.csv
var screwsCSV string

// The pound-force and the inch, exact by definition.
const (
	lbf     = 4.4482216152605
	lbfInch = lbf * 0.0254
)

// screws reads the embedded copy once; it is ours, so a fault in it panics.
var screws = sync.OnceValue(func() []screw {
	all, err := csv.NewReader(strings.NewReader(screwsCSV)).ReadAll()
	if err != nil {
		panic("keyed: embedded set screws: " + err.Error())
	}
	out := make([]screw, 0, len(all))
	for _, c := range all[1:] {
		at := func(i int) float64 {
			x, err := strconv.ParseFloat(c[i], 64)
			if err != nil {
				panic("keyed: embedded set screws: " + err.Error())
			}
			return x
		}
		out = append(out, screw{at(1) * 0.0254, at(2) * lbfInch, at(3) * lbf, at(4) * lbf})
	}
	return out
})

// screwRow is the row of the largest size not over the screw, -1 outside the table.
func screwRow(list []screw, diameter float64) int {
	const slip = 1e-9 // a nanometre, so that a size of fractions belongs to its own row: our choice
	if !(diameter <= list[len(list)-1].diameter+slip) {
		return -1
	}
	i := -1
	for i+1 < len(list) && list[i+1].diameter <= diameter+slip {
		i++
	}
	return i
}
