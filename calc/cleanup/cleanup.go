// Package cleanup answers: at what size does a cut just remove the wear, and
// what does that depend on?
//
// It depends on the datum. Set to the worn surface itself (free axis), a shaft
// cleans up at the largest circle inside its profile and a bore at the smallest
// circle round it: Inscribed, Circumscribed. Held to an axis that must stay
// true, a shaft cleans up at twice its least radius, a bore at twice its
// greatest: ShaftAbout, BoreAbout. Start with the closed forms of onesided.go
// when wear depth is known, with those four when radii were taken all round,
// with sizes.go when a micrometer or bore gauge is all there is.
//
// Sizes are diameters in metres; wear is a depth on one side; offsets and
// run-out say so. The uncertainty of the readings is not in here: add it.
package cleanup

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Point is a point of a worn profile, square to the axis.
type Point struct{ X, Y q.Length }

// Circle is where a cut surface would lie.
type Circle struct {
	Centre   Point
	Diameter q.Length
}

// Radial is an indicator reading turned into a radius from the axis it was
// taken about.
type Radial struct {
	Angle  float64 // radians from the mark, the same way round for all
	Radius q.Length
}

// Profile places radial readings as points round the axis they were taken about.
func Profile(readings []Radial) []Point {
	out := make([]Point, len(readings))
	for i, r := range readings {
		out[i] = Point{q.Length(float64(r.Radius) * math.Cos(r.Angle)), q.Length(float64(r.Radius) * math.Sin(r.Angle))}
	}
	return out
}

// coarse is the spacing above which a note warns of what lies between points:
// eight round the circle; our choice.
const coarse = 45 * math.Pi / 180

// source of every relation here: plain geometry, worked in the doc comments.
const source = "geometry, derived in calc/cleanup"

// surround refuses a profile that does not go round its axis, and notes one
// whose points lie far apart.
func surround(profile []Point, axis Point) ([]basis.Note, error) {
	if len(profile) < 3 {
		return nil, refuse("worn profile", fmt.Sprintf("%d points", len(profile)), "at least 3 points, all round the axis")
	}
	for _, p := range profile {
		if !finite(p.X) || !finite(p.Y) {
			return nil, refuse("worn profile", fmt.Sprintf("a point at %g m, %g m", p.X, p.Y), "points with finite places")
		}
	}
	if !finite(axis.X) || !finite(axis.Y) {
		return nil, refuse("worn profile", "all in one line, or about no axis", "points all round an axis")
	}
	_, gap := spread(profile, axis)
	switch {
	case !(gap < math.Pi*(1-1e-9)):
		return nil, refuse("worn profile", fmt.Sprintf("open over %.0f° seen from its axis", gap*180/math.Pi), "read all round, no gap of 180° or more")
	case gap > coarse:
		return []basis.Note{{Says: fmt.Sprintf("points up to %.0f° apart: wear between them is not seen, the true clean-up costs more", gap*180/math.Pi), Source: source, Grade: basis.Extrapolated}}, nil
	}
	return nil, nil
}

// spread gives each point's share of the turn, seen from the axis, and the
// widest gap between neighbours in radians.
func spread(profile []Point, axis Point) (share []float64, gap float64) {
	order := make([]int, len(profile))
	angle := make([]float64, len(profile))
	for i, p := range profile {
		order[i], angle[i] = i, math.Atan2(float64(p.Y-axis.Y), float64(p.X-axis.X))
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(angle[a], angle[b]) })
	share = make([]float64, len(profile))
	for n, i := range order {
		next := order[(n+1)%len(order)]
		between := angle[next] - angle[i]
		if n == len(order)-1 {
			between += 2 * math.Pi
		}
		share[i] += between / (4 * math.Pi)
		share[next] += between / (4 * math.Pi)
		gap = max(gap, between)
	}
	return share, gap
}

// middle is the centre of the circle nearest to the points in the algebraic
// sense (Kåsa): one linear step, and right for an arc too, where the centre of
// gravity would lie inside the arc and make an open profile look closed.
func middle(profile []Point) Point {
	n := q.Length(len(profile))
	var m Point
	for _, p := range profile {
		m.X, m.Y = m.X+p.X/n, m.Y+p.Y/n
	}
	var uu, uv, vv, bu, bv float64
	for _, p := range profile {
		u, v := float64(p.X-m.X), float64(p.Y-m.Y)
		uu, uv, vv = uu+u*u, uv+u*v, vv+v*v
		bu, bv = bu+u*(u*u+v*v)/2, bv+v*(u*u+v*v)/2
	}
	det := uu*vv - uv*uv
	return Point{m.X + q.Length((bu*vv-bv*uv)/det), m.Y + q.Length((bv*uu-bu*uv)/det)}
}

func radius(p, axis Point) float64 { return math.Hypot(float64(p.X-axis.X), float64(p.Y-axis.Y)) }

func finite(x q.Length) bool { return !math.IsNaN(float64(x)) && !math.IsInf(float64(x), 0) }

func refuse(name, value, want string) *basis.Refusal {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func showMM(x q.Length) string { return fmt.Sprintf("%.6g mm", float64(x)*1e3) }
