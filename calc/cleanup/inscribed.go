package cleanup

import (
	"cmp"
	"slices"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Inscribed returns the largest circle inside a worn shaft's profile: what is
// left when the shaft is set to run true by its own worn surface.
//
//	centre in the profile's hull, diameter = 2·min |point - centre|, the largest there is
//
// The least distance has several local maxima, so none is climbed: every
// candidate is visited (the corners of each point's own region of the plane,
// cut to the hull). Points of several stations may be given together, laid on
// one plane square to the axis; the cut is then one cylinder.
//
//   - Holds for: points all round, no gap of 180° or more; few points overstate what is left.
//   - Beyond: gaps over 45° bring a note; 180° and more are refused.
//   - Source: geometry; reference profiles in testdata/published/roundness.
func Inscribed(profile []Point) (Circle, []basis.Note, error) {
	notes, err := surround(profile, middle(profile))
	if err != nil {
		return Circle{}, nil, err
	}
	outline := hull(profile)
	var best Circle
	for i, p := range profile {
		region := slices.Clone(outline)
		for n := 1; n < len(profile) && len(region) > 0; n++ {
			region = nearer(region, p, profile[beside(i, n, len(profile))])
		}
		for _, c := range region {
			if d := q.Length(2 * radius(p, c)); d > best.Diameter {
				best = Circle{c, d}
			}
		}
	}
	return best, notes, nil
}

// beside counts the neighbours outward from i, one side and the other: the
// nearest leave little of the region for the rest.
func beside(i, n, of int) int {
	step := (n + 1) / 2
	if n%2 == 0 {
		step = -step
	}
	return (i + step + of) % of
}

// nearer cuts a convex region down to what lies no farther from a than from b.
func nearer(region []Point, a, b Point) []Point {
	if a == b {
		return region
	}
	// side grows across the line half-way between a and b, 0 on it
	side := func(p Point) float64 {
		return float64((p.X-(a.X+b.X)/2)*(b.X-a.X) + (p.Y-(a.Y+b.Y)/2)*(b.Y-a.Y))
	}
	var out []Point
	for i, p := range region {
		r := region[(i+1)%len(region)]
		sp, sr := side(p), side(r)
		if sp <= 0 {
			out = append(out, p)
		}
		if sp < 0 && sr > 0 || sp > 0 && sr < 0 {
			t := q.Length(sp / (sp - sr))
			out = append(out, Point{p.X + t*(r.X-p.X), p.Y + t*(r.Y-p.Y)})
		}
	}
	return out
}

// hull is the rubber band round the points, counter-clockwise.
func hull(profile []Point) []Point {
	ps := slices.Clone(profile)
	slices.SortFunc(ps, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	half := func(ps []Point) (h []Point) {
		for _, p := range ps {
			for len(h) >= 2 && turn(h[len(h)-2], h[len(h)-1], p) <= 0 {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		return h[:len(h)-1]
	}
	lower := half(ps)
	slices.Reverse(ps)
	return append(lower, half(ps)...)
}

func turn(a, b, c Point) float64 {
	return float64((b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X))
}

// Circumscribed returns the smallest circle round a worn bore's profile: the
// bore that just cleans up when set to run true by its own worn surface.
//
//	diameter = the least of 2·max |point - centre| over all centres
//
// Limits and source:
//
//   - Holds for: points all round, no gap of 180° or more; few points understate the cut.
//   - Beyond: gaps over 45° bring a note; 180° and more are refused.
//   - Source: geometry; reference profiles in testdata/published/roundness.
func Circumscribed(profile []Point) (Circle, []basis.Note, error) {
	notes, err := surround(profile, middle(profile))
	if err != nil {
		return Circle{}, nil, err
	}
	// A point outside the circle so far lies on the new one: at most three do.
	ps := mixed(profile)
	c := Circle{ps[0], 0}
	for i := range ps {
		if inside(c, ps[i]) {
			continue
		}
		c = Circle{ps[i], 0}
		for j := range i {
			if inside(c, ps[j]) {
				continue
			}
			c = acrossTwo(ps[i], ps[j])
			for k := range j {
				if !inside(c, ps[k]) {
					c = throughThree(ps[i], ps[j], ps[k])
				}
			}
		}
	}
	return c, notes, nil
}

// mixed reorders the points by a fixed stride, so that neighbours do not follow
// each other and few circles are tried; same points, same order.
func mixed(profile []Point) []Point {
	n := len(profile)
	stride := max(1, int(float64(n)*0.618))
	for gcd(stride, n) != 1 {
		stride++
	}
	out := make([]Point, n)
	for i := range out {
		out[i] = profile[i*stride%n]
	}
	return out
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func inside(c Circle, p Point) bool {
	return 2*radius(p, c.Centre) <= float64(c.Diameter)*(1+1e-13)
}

func acrossTwo(a, b Point) Circle {
	return Circle{Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, q.Length(radius(a, b))}
}

func throughThree(a, b, c Point) Circle {
	bx, by, cx, cy := b.X-a.X, b.Y-a.Y, c.X-a.X, c.Y-a.Y
	d := 2 * (bx*cy - by*cx)
	if d == 0 { // in line: the farthest two span it
		return slices.MaxFunc([]Circle{acrossTwo(a, b), acrossTwo(b, c), acrossTwo(a, c)}, func(x, y Circle) int {
			return cmp.Compare(x.Diameter, y.Diameter)
		})
	}
	b2, c2 := bx*bx+by*by, cx*cx+cy*cy
	o := Point{a.X + (cy*b2-by*c2)/d, a.Y + (bx*c2-cx*b2)/d}
	return Circle{o, q.Length(2 * radius(a, o))}
}
