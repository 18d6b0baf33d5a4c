package cleanup

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// LeastSquares returns the circle nearest to all points at once, and the
// roundness: greatest less least radius from its centre. It is where an
// indicator swept round the worn surface centres it.
//
//	minimise Σ (|point - centre| - r)²;  roundness = max |point - centre| - min |point - centre|
//
// Limits and source:
//
//   - Holds for: points all round, no gap of 180° or more, form errors small against the size.
//   - Beyond: gaps over 45° bring a note; a fit that does not settle is refused.
//   - Source: geometry (Gauss-Newton steps); reference profiles in testdata/published/roundness.
func LeastSquares(profile []Point) (Circle, q.Length, []basis.Note, error) {
	c := middle(profile)
	notes, err := surround(profile, c)
	if err != nil {
		return Circle{}, 0, nil, err
	}
	for range 100 {
		dx, dy := stepTo(profile, c)
		c.X, c.Y = c.X+q.Length(dx), c.Y+q.Length(dy)
		if r := meanRadius(profile, c); math.Hypot(dx, dy) <= 1e-13*r {
			least, most := extremes(profile, c)
			return Circle{c, q.Length(2 * r)}, q.Length(most - least), notes, nil
		}
	}
	return Circle{}, 0, nil, refuse("worn profile", "too far from round to settle a centre", "near enough to a circle to centre on")
}

// stepTo is one Gauss-Newton step of the centre.
func stepTo(profile []Point, c Point) (dx, dy float64) {
	n, mean := float64(len(profile)), meanRadius(profile, c)
	var ux, uy, xx, xy, yy, bx, by float64
	for _, p := range profile {
		r := radius(p, c)
		if r == 0 {
			continue
		}
		x, y := float64(p.X-c.X)/r, float64(p.Y-c.Y)/r
		ux, uy = ux+x/n, uy+y/n
		xx, xy, yy = xx+x*x/n, xy+x*y/n, yy+y*y/n
		bx, by = bx+x*(r-mean)/n, by+y*(r-mean)/n
	}
	xx, xy, yy = xx-ux*ux, xy-ux*uy, yy-uy*uy
	det := xx*yy - xy*xy
	return (bx*yy - by*xy) / det, (by*xx - bx*xy) / det
}

func meanRadius(profile []Point, c Point) (mean float64) {
	for _, p := range profile {
		mean += radius(p, c) / float64(len(profile))
	}
	return mean
}

func extremes(profile []Point, c Point) (least, most float64) {
	least = math.Inf(1)
	for _, p := range profile {
		r := radius(p, c)
		least, most = min(least, r), max(most, r)
	}
	return least, most
}
