package condition

import (
	"cmp"
	"math"
	"slices"

	"wornfit/advisor/casefile"
	"wornfit/calc/basis"
	"wornfit/calc/cleanup"

	q "wornfit/calc/quantity"
)

// Surface is what one of the two surfaces is like. Sizes are diameters, m.
type Surface struct {
	Side                    casefile.Side
	Part                    *casefile.Part
	Readings                int
	Largest, Smallest, Mean Figure
	Taper                   Figure // difference of the means at the two ends, never negative
	LargerEnd               string // near or far, when it tapers by more than its doubt
	OutOfRound              Figure // greatest difference of sizes at one station
	OneSided                Figure // depth worn to one side
	Toward                  float64
	Directed                bool   // Toward, rad, is the line along which it is most worn; a size cannot tell which end of it
	BellMouth               Figure // ends over the middle; below 0: the middle is the larger
	Before                  Figure // the size before it wore
	BeforeFrom              string // land, nominal
	Wear                    Figure // on diameter
	Score                   Figure // depth
	Unseen                  Figure // allowed on diameter for lobes that two-point readings do not show
	UnseenFrom              string
	CleanUps                []CleanUp
}

// How far from round, on diameter, a surface may be without a two-point gauge
// showing it, by how it was made. Common practice, no source.
var lobesBy = map[string]float64{
	"turned": 4e-6, "bored": 4e-6, "ground": 2e-6, "honed": 3e-6,
	"reamed": 10e-6, "three-jaw": 20e-6, "centreless": 10e-6, "drawn": 10e-6,
}

// lobesOtherwise stands for a surface nobody says how it was made.
const lobesOtherwise = 10e-6

func (c *Condition) surface(side casefile.Side, of Expansion) Surface {
	p, f := c.Fit.Part(side), c.Fit.Surfaces[side]
	s := Surface{Side: side, Part: p, Score: stated(f.Score)}
	sizes := c.sizes(f.Readings, p, of)
	s.Readings = len(sizes)
	s.before(c, c.sizes(f.Lands, p, of))
	if len(sizes) == 0 {
		s.ring(c)
		return s
	}
	s.unseen(c, f, sizes)
	s.extremes(c, sizes)
	s.Mean = about(mean(byStation(sizes)), meanU(sizes))
	s.along(byStation(sizes))
	s.around(byStation(sizes))
	s.wear(c, sizes, c.sizes(f.Lands, p, of))
	s.oneSided(byStation(sizes), f.Seen["wear_side"])
	s.ring(c)
	return s
}

// unseen settles the allowance for lobes: none where they were looked for.
func (s *Surface) unseen(c *Condition, f *casefile.Surface, sizes []size) {
	lobes, from := lobesOtherwise, "it is not said how it was made"
	switch {
	case f.Lobes.Known:
		lobes, from = f.Lobes.Hi, "stated"
	case slices.ContainsFunc(sizes, func(z size) bool { return z.round }):
		lobes, from = 0, "read with three points, ring, vee or blue"
	case f.LobesHow != "":
		lobes, from = lobesBy[f.LobesHow], f.LobesHow
	}
	s.Unseen, s.UnseenFrom = about(lobes, 0), from
	if !f.Lobes.Known && lobes > 0 {
		c.note("common practice, no source", basis.Practice,
			"%s was read between two points only: %s is allowed for lobes they do not show (%s); a ring, a vee block or blue would settle it", s.Part.Called, c.Case.Speech().Say(lobes, q.LengthDim), from)
	}
}

// extremes are the largest and smallest readings, each with its own doubt, and
// to the outside what lies between the readings.
func (s *Surface) extremes(c *Condition, sizes []size) {
	all := cleanup.TwoPoint{Unseen: q.Length(s.Unseen.Best)}
	for _, z := range sizes {
		all.Readings = append(all.Readings, z.reading())
	}
	high, _, err := all.BoreFree() // its only note is told for both parts at once, by hiding
	if err != nil {
		return // no reading: nothing to tell
	}
	low, _, err := all.ShaftFree()
	if err != nil {
		return
	}
	c.unseenOval(s, sizes)
	most := slices.MaxFunc(sizes, func(a, b size) int { return cmp.Compare(a.value, b.value) })
	least := slices.MinFunc(sizes, func(a, b size) int { return cmp.Compare(a.value, b.value) })
	s.Largest = about(most.value, most.u()).widened(0, high.Hi-high.Lo)
	s.Smallest = about(least.value, least.u()).widened(low.Hi-low.Lo, 0)
}

// byStation groups sizes from the near end on; those without a station are one group.
func byStation(sizes []size) [][]size {
	sorted := slices.Clone(sizes)
	slices.SortStableFunc(sorted, func(a, b size) int { return cmp.Compare(a.at, b.at) })
	var out [][]size
	for i, z := range sorted {
		if i == 0 || z.at != sorted[i-1].at {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], z)
	}
	return out
}

func meanOf(sizes []size) (m float64) {
	for _, z := range sizes {
		m += z.value / float64(len(sizes))
	}
	return m
}

// mean is the mean of the stations' means, so that a station read at more
// angles counts no more.
func mean(stations [][]size) (m float64) {
	for _, st := range stations {
		m += meanOf(st) / float64(len(stations))
	}
	return m
}

// along finds taper and bell mouth from the stations' means.
func (s *Surface) along(stations [][]size) {
	n := len(stations)
	if n < 2 || !stations[0][0].placed {
		return
	}
	near, far := stations[0], stations[n-1]
	diff := meanOf(near) - meanOf(far)
	u := apartU(near, far)
	s.Taper = about(math.Abs(diff), u).atLeastNothing()
	switch {
	case diff > u:
		s.LargerEnd = "near"
	case diff < -u:
		s.LargerEnd = "far"
	}
	if n < 3 {
		return
	}
	ends := append(slices.Clone(near), far...)
	middle := slices.Concat(stations[1 : n-1]...)
	s.BellMouth = about((meanOf(near)+meanOf(far))/2-meanOf(middle), apartU(ends, middle))
}

// around finds the ovality: the greatest difference at one station. A gauge
// that touches at three points does not show it.
func (s *Surface) around(stations [][]size) {
	for _, st := range stations {
		big, small, ok := across(st)
		if !ok {
			continue
		}
		if d := big.value - small.value; !s.OutOfRound.Is || d > s.OutOfRound.Best {
			s.OutOfRound = about(d, apartU([]size{big}, []size{small})).atLeastNothing()
			worn := big
			if s.Side == casefile.Shaft {
				worn = small
			}
			s.Toward, s.Directed = worn.toward, d > s.OutOfRound.U
			if o, err := cleanup.OvalThrough(section(st)); err == nil && s.Directed {
				s.Toward = o.Angle
				if s.Side == casefile.Shaft {
					s.Toward = math.Mod(o.Angle+math.Pi/2, math.Pi)
				}
			}
		}
	}
}

func section(st []size) (out []cleanup.Reading) {
	for _, z := range st {
		if z.directed && !z.round {
			out = append(out, z.reading())
		}
	}
	return out
}

// across gives the largest and smallest two-point size of a station read at
// two angles or more.
func across(st []size) (big, small size, ok bool) {
	var two []size
	for _, z := range st {
		if z.directed && !z.round {
			two = append(two, z)
		}
	}
	if len(two) < 2 {
		return big, small, false
	}
	byValue := func(a, b size) int { return cmp.Compare(a.value, b.value) }
	return slices.MaxFunc(two, byValue), slices.MinFunc(two, byValue), true
}
