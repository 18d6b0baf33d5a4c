package strength

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Shoulder is the step a turned-down journal leaves.
type Shoulder struct {
	Large, Small, Radius q.Length // two diameters and the fillet's radius
}

// Where own finite elements confirmed the fillet formulas: testdata/published/mechanics,
// fe_fillets.json and its SOURCES.md.
const (
	leastStep, mostStep     = 1.01, 2.0
	leastRadius, mostRadius = 0.02, 0.25
)

// FilletBending returns by how much a shoulder raises the nominal bending stress
// of the small diameter.
//
//	K = 0.632 + 0.377/k^4.4 + q^−0.5·√[(−0.14−0.363k²+0.503k⁴)/(1−2.39k²+3.368k⁴)]
//
// with k = D/d and q = r/d.
//
//   - Holds for: D/d 1.01 to 2.0, r/d 0.02 to 0.25, radius up to four times the step's height; own finite elements agree within 1.0 %.
//   - Beyond: noted as extrapolated. A sprayed, plated or welded surface and a pressed-on edge have factors of their own.
//   - Source: Tipton, Sorem and Rolovic, J. Mech. Design 118 (1996), from memory, confirmed by own finite elements.
func FilletBending(s Shoulder) (float64, []basis.Note, error) {
	if err := s.check(); err != nil {
		return 0, nil, err
	}
	k, q := s.ratios()
	return filletBending(k, q), s.notes(), nil
}

// FilletTwisting returns by how much a shoulder raises the nominal shear stress
// of the small diameter under torque.
//
//	K = 0.78 + 0.2/k^10 + q^−0.46·√[(0.002−0.125k²+0.123k⁴)/(1−2.75k²+2.55k⁴)]
//
// with k = D/d and q = r/d.
//
//   - Holds for: D/d 1.01 to 2.0, r/d 0.02 to 0.25, radius up to four times the step's height; own finite elements agree within 1.4 %.
//   - Beyond: noted as extrapolated.
//   - Source: Tipton, Sorem and Rolovic, J. Mech. Design 118 (1996), from memory, confirmed by own finite elements.
func FilletTwisting(s Shoulder) (float64, []basis.Note, error) {
	if err := s.check(); err != nil {
		return 0, nil, err
	}
	k, q := s.ratios()
	return filletTwisting(k, q), s.notes(), nil
}

func (s Shoulder) ratios() (k, q float64) {
	return float64(s.Large / s.Small), float64(s.Radius / s.Small)
}

func (s Shoulder) check() error {
	switch {
	case !(s.Small > 0):
		return refuse("small diameter", mm(s.Small), "more than 0")
	case !(s.Large >= 1.0001*s.Small && s.Large < 1000*s.Small):
		return refuse("large diameter", mm(s.Large), "1.0001 to 1000 times the small one, "+mm(s.Small)+"; without a step there is no fillet")
	case !(s.Radius > 0 && s.Radius < s.Small):
		return refuse("radius of the fillet", mm(s.Radius), "more than 0 and less than the small diameter, "+mm(s.Small))
	}
	return nil
}

func (s Shoulder) notes() []basis.Note {
	k, q := s.ratios()
	var says string
	switch {
	case !(k >= leastStep && k <= mostStep):
		says = fmt.Sprintf("D/d is %.4g; the fillet factor is confirmed from %g to %g", k, leastStep, mostStep)
	case !(q >= leastRadius && q <= mostRadius):
		says = fmt.Sprintf("r/d is %.4g; the fillet factor is confirmed from %g to %g", q, leastRadius, mostRadius)
	case q > 2*(k-1)*(1+1e-9):
		says = fmt.Sprintf("the radius is %.3g times the height of the step; the fillet factor is confirmed up to 4", 2*q/(k-1))
	default:
		return nil
	}
	return []basis.Note{{Says: says, Source: "Tipton, Sorem and Rolovic 1996", Grade: basis.Extrapolated}}
}

func filletBending(k, q float64) float64 {
	k2 := k * k
	k4 := k2 * k2
	return 0.632 + 0.377*math.Pow(k, -4.4) + math.Sqrt((-0.14-0.363*k2+0.503*k4)/(1-2.39*k2+3.368*k4)/q)
}

func filletTwisting(k, q float64) float64 {
	k2 := k * k
	k4 := k2 * k2
	return 0.78 + 0.2*math.Pow(k, -10) + math.Pow(q, -0.46)*math.Sqrt((0.002-0.125*k2+0.123*k4)/(1-2.75*k2+2.55*k4))
}
