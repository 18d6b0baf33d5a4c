package strength

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Section is a round bar or tube.
type Section struct {
	Bore    q.Length // 0 if solid
	Outside q.Length
}

// Bending returns the stress at the outside of a shaft under a bending moment.
//
//	σ = 32·M·d/(π·(d⁴−b⁴)); solid: 32·M/(π·d³)
//
// All in SI units.
//
//   - Holds for: a straight elastic shaft, away from shoulders, grooves and keyways.
//   - Beyond: at a shoulder multiply by FilletBending; a pressed-on hub's edge raises it too.
//   - Source: beam theory, any strength text.
func Bending(s Section, moment q.Torque) (q.Stress, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	if !(moment >= 0) {
		return 0, refuse("bending moment", nm(moment), "0 or more")
	}
	return q.Stress(bending(float64(s.Bore), float64(s.Outside), float64(moment))), nil
}

// Twisting returns the shear stress at the outside of a shaft under a torque.
//
//	τ = 16·T·d/(π·(d⁴−b⁴)); solid: 16·T/(π·d³)
//
// All in SI units.
//
//   - Holds for: a straight elastic shaft, away from shoulders, grooves and keyways.
//   - Beyond: at a shoulder multiply by FilletTwisting; a keyway raises it too.
//   - Source: torsion of a round bar, any strength text.
func Twisting(s Section, torque q.Torque) (q.Stress, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	if !(torque >= 0) {
		return 0, refuse("torque", nm(torque), "0 or more")
	}
	return q.Stress(bending(float64(s.Bore), float64(s.Outside), float64(torque)) / 2), nil
}

// VonMises returns the one stress that a bending and a shear stress together
// are worth, for ductile metal.
//
//	σv = √(σ² + 3τ²)
//
// All in SI units.
//
//   - Holds for: ductile metal at a surface, both stresses at the same place and time.
//   - Beyond: brittle iron breaks by GreatestNormal.
//   - Source: von Mises' yield condition, any strength text.
func VonMises(normal, shear q.Stress) (q.Stress, error) {
	if err := stresses(normal, shear); err != nil {
		return 0, err
	}
	return q.Stress(vonMises(float64(normal), float64(shear))), nil
}

// GreatestShear returns the greatest shear stress under both, as Tresca judges.
//
//	τ = √((σ/2)² + τ²)
//
// All in SI units.
//
//   - Holds for: both stresses at the same place and time.
//   - Beyond: up to 15 % safer than VonMises for ductile metal.
//   - Source: Mohr's circle, any strength text.
func GreatestShear(normal, shear q.Stress) (q.Stress, error) {
	if err := stresses(normal, shear); err != nil {
		return 0, err
	}
	return q.Stress(math.Hypot(float64(normal)/2, float64(shear))), nil
}

// GreatestNormal returns the greatest pulling stress under both, which brittle
// iron is judged by.
//
//	σ = σ/2 + √((σ/2)² + τ²)
//
// All in SI units.
//
//   - Holds for: both stresses at the same place and time.
//   - Beyond: ductile metal yields first, see VonMises.
//   - Source: Mohr's circle, any strength text.
func GreatestNormal(normal, shear q.Stress) (q.Stress, error) {
	if err := stresses(normal, shear); err != nil {
		return 0, err
	}
	return normal/2 + q.Stress(math.Hypot(float64(normal)/2, float64(shear))), nil
}

func (s Section) check() error {
	if !(s.Outside > 0) {
		return refuse("outside diameter", mm(s.Outside), "more than 0")
	}
	if !(s.Bore >= 0 && s.Bore < s.Outside) {
		return refuse("bore", mm(s.Bore), "0 (solid) or more and less than the outside diameter, "+mm(s.Outside))
	}
	return nil
}

func stresses(normal, shear q.Stress) error {
	if !(normal >= 0) {
		return refuse("bending stress", mpa(normal), "0 or more")
	}
	if !(shear >= 0) {
		return refuse("shear stress", mpa(shear), "0 or more")
	}
	return nil
}

func bending(bore, outside, moment float64) float64 {
	hole := bore / outside
	hole *= hole
	return 32 * moment / (math.Pi * outside * outside * outside * (1 - hole*hole))
}

func vonMises(normal, shear float64) float64 { return math.Hypot(normal, math.Sqrt(3)*shear) }

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }

func mpa(s q.Stress) string { return fmt.Sprintf("%.6g MPa", float64(s)/1e6) }

func nm(t q.Torque) string { return fmt.Sprintf("%.6g N m", float64(t)) }
