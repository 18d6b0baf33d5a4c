package strength

import (
	"math"

	q "wornfit/calc/quantity"
)

// Swing is a stress that goes up and down: half of its range, and the middle
// it swings about. A shaft turning under a steady side load has the mean 0.
type Swing struct{ Amplitude, Mean q.Stress }

// Between returns the swing from one stress to another.
func Between(low, high q.Stress) Swing {
	return Swing{Amplitude: (high - low) / 2, Mean: (high + low) / 2}
}

// VonMisesSwing joins a bending and a shear swing to one. Give each with its
// fatigue factor already in it.
//
//	σa = √(σa² + 3τa²), σm = √(σm² + 3τm²)
//
// All in SI units.
//
//   - Holds for: ductile metal, both at the same place, peaks at the same time or not: it is on the safe side.
//   - Beyond: a mean that presses counts as one that pulls, on the safe side.
//   - Source: von Mises' condition for amplitude and mean apart, Shigley, from memory.
func VonMisesSwing(bending, shear Swing) (Swing, error) {
	if err := bending.check("bending"); err != nil {
		return Swing{}, err
	}
	if err := shear.check("shear"); err != nil {
		return Swing{}, err
	}
	return Swing{
		Amplitude: q.Stress(vonMises(float64(bending.Amplitude), float64(shear.Amplitude))),
		Mean:      q.Stress(vonMises(float64(bending.Mean), float64(shear.Mean))),
	}, nil
}

// GoodmanSafety returns how many times the swing could grow before fatigue
// breaks the shaft.
//
//	1/n = σa/Se + σm/Su
//
// All in SI units.
//
//   - Holds for: steel, any number of turns, Se the shaft's own limit by EnduranceLimit.
//   - Beyond: the first turn may yield before; see YieldSafety.
//   - Source: Goodman's line, any strength text.
func GoodmanSafety(s Swing, limit, tensile q.Stress) (float64, error) {
	if err := s.against(limit, tensile, "tensile strength"); err != nil {
		return 0, err
	}
	return lineSafety(float64(s.Amplitude), float64(s.Mean), float64(limit), float64(tensile)), nil
}

// SoderbergSafety returns how many times the swing could grow before fatigue
// breaks the shaft or it yields.
//
//	1/n = σa/Se + σm/Sy
//
// Some books weigh the amplitude with Su/Se against Sy; that is neither line.
//
//   - Holds for: steel, any number of turns. Safer than GoodmanSafety.
//   - Beyond: nothing; it covers yielding as well.
//   - Source: Soderberg's line, any strength text.
func SoderbergSafety(s Swing, limit, yield q.Stress) (float64, error) {
	if err := s.against(limit, yield, "yield strength"); err != nil {
		return 0, err
	}
	return lineSafety(float64(s.Amplitude), float64(s.Mean), float64(limit), float64(yield)), nil
}

// GerberSafety returns how many times the swing could grow on the curve that
// runs through the middle of tests, where Goodman's line runs below them.
//
//	n·σa/Se + (n·σm/Su)² = 1
//
// All in SI units.
//
//   - Holds for: ductile steel, any number of turns; half of all shafts lie below.
//   - Beyond: to be safe use GoodmanSafety.
//   - Source: Gerber's parabola, any strength text.
func GerberSafety(s Swing, limit, tensile q.Stress) (float64, error) {
	if err := s.against(limit, tensile, "tensile strength"); err != nil {
		return 0, err
	}
	return gerberSafety(float64(s.Amplitude), float64(s.Mean), float64(limit), float64(tensile)), nil
}

// YieldSafety returns how many times both swings could grow before their common
// peak yields.
//
//	n = Sy/√((σa+σm)² + 3·(τa+τm)²)
//
// All in SI units.
//
//   - Holds for: ductile metal, both peaks at once.
//   - Beyond: brittle iron does not yield, see GreatestNormal.
//   - Source: von Mises' yield condition, any strength text.
func YieldSafety(bending, shear Swing, yield q.Stress) (float64, error) {
	if err := bending.check("bending"); err != nil {
		return 0, err
	}
	if err := shear.check("shear"); err != nil {
		return 0, err
	}
	peak := vonMises(float64(bending.Amplitude+bending.Mean), float64(shear.Amplitude+shear.Mean))
	if !(peak >= leastStress) {
		return 0, refuse("bending amplitude", mpa(bending.Amplitude), "more than 0 unless another stress is: a shaft without stress has no safety to tell")
	}
	if !(yield > 0 && yield <= 4e9) {
		return 0, refuse("yield strength", mpa(yield), "more than 0 and no more than 4000 MPa")
	}
	return float64(yield) / peak, nil
}

// leastStress in Pa is the stress below which there is none: our choice, so that
// a safety is always a finite number.
const leastStress = 1e-3

func (s Swing) check(what string) error {
	if !(s.Amplitude >= 0 && s.Amplitude <= 1e11) {
		return refuse(what+" amplitude", mpa(s.Amplitude), "0 or more, and a real stress")
	}
	if !(s.Mean >= 0 && s.Mean <= 1e11) {
		return refuse(what+" mean", mpa(s.Mean), "0 or more, and a real stress; give a mean that presses without its sign")
	}
	return nil
}

func (s Swing) against(limit, strength q.Stress, name string) error {
	if err := s.check("stress"); err != nil {
		return err
	}
	if !(limit > 0 && limit <= 4e9) {
		return refuse("endurance limit", mpa(limit), "more than 0 and no more than 4000 MPa")
	}
	if !(strength > 0 && strength <= 4e9) {
		return refuse(name, mpa(strength), "more than 0 and no more than 4000 MPa")
	}
	if s.Amplitude+s.Mean < leastStress {
		return refuse("stress amplitude", mpa(s.Amplitude), "more than 0 unless the mean is: a shaft without stress has no safety to tell")
	}
	return nil
}

func lineSafety(amplitude, mean, limit, strength float64) float64 {
	return 1 / (amplitude/limit + mean/strength)
}

// gerberSafety is the root written so that no mean and no amplitude both work.
func gerberSafety(amplitude, mean, limit, tensile float64) float64 {
	x, y := amplitude/limit, mean/tensile
	return 2 / (x + math.Sqrt(x*x+4*y*y))
}
