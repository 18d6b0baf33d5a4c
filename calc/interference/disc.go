package interference

import (
	"fmt"
	"math"

	q "wornfit/calc/quantity"
)

// DiscHoop returns the stress round the bore of a turning hub from its own mass,
// the greatest in it. What the shaft presses adds to it.
//
//	σ = ρ·ω²·[(3+ν)·D² + (1−ν)·d²]/16
//
// With diameters; in radii the divisor is 4.
//
//   - Holds for: an elastic disc of even thickness with a hole, free of its shaft; plane stress.
//   - Beyond: rim weights, blades and teeth add to it.
//   - Source: rotating disc, any strength text; worked out.
func DiscHoop(bore, outside q.Length, nu float64, density q.Density, speed q.Rotation) (q.Stress, error) {
	if err := disc(bore, outside, nu, density); err != nil {
		return 0, err
	}
	if !(speed >= 0) {
		return 0, refuse("speed", fmt.Sprintf("%.6g rpm", 60*float64(speed)), "0 or more")
	}
	ω := 2 * math.Pi * float64(speed)
	return q.Stress(float64(density) * ω * ω * discHoop(float64(bore), float64(outside), nu)), nil
}

// DiscYieldSpeed returns the speed at which the bore of a turning hub first yields.
//
//	ω = √{16·Re/(ρ·[(3+ν)·D² + (1−ν)·d²])}
//
// All in SI units.
//
//   - Holds for: as DiscHoop, of a ductile metal; the other stress at the bore is nought.
//   - Beyond: what the shaft presses adds, and it yields earlier.
//   - Source: rotating disc, any strength text; worked out.
func DiscYieldSpeed(bore, outside q.Length, nu float64, density q.Density, yield q.Stress) (q.Rotation, error) {
	if err := discYields(bore, outside, nu, density, yield); err != nil {
		return 0, err
	}
	ω := math.Sqrt(float64(yield) / (float64(density) * discHoop(float64(bore), float64(outside), nu)))
	return q.Rotation(ω / (2 * math.Pi)), nil
}

// DiscBurstSpeed returns the speed at which all of a ductile hub has yielded: it
// grows without end.
//
//	ω = √{12·Re·(D − d)/(ρ·(D³ − d³))}
//
// All in SI units.
//
//   - Holds for: a ductile disc of even thickness with a hole; perfectly plastic.
//   - Beyond: metal that hardens bears a little more, brittle metal breaks at its tensile strength by DiscHoop.
//   - Source: equilibrium of a half disc at yield, any strength text; worked out.
func DiscBurstSpeed(bore, outside q.Length, density q.Density, yield q.Stress) (q.Rotation, error) {
	if err := discYields(bore, outside, 0, density, yield); err != nil {
		return 0, err
	}
	return q.Rotation(discBurst(float64(bore), float64(outside), float64(density), float64(yield))), nil
}

// discBurst divides D − d out, so that a thin ring is no nought over nought.
func discBurst(d, D, density, yield float64) float64 {
	return math.Sqrt(12*yield/(density*(D*D+D*d+d*d))) / (2 * math.Pi)
}

// discHoop is the stress at the bore per density and ω².
func discHoop(d, D, nu float64) float64 { return ((3+nu)*D*D + (1-nu)*d*d) / 16 }

func disc(bore, outside q.Length, nu float64, density q.Density) error {
	switch {
	case !(bore > 0 && bore < outside):
		return refuse("bore", mm(bore), "more than 0 and less than the outside diameter, "+mm(outside))
	case !(nu >= 0 && nu <= 0.5):
		return refuse("Poisson's number", fmt.Sprintf("%.4g", nu), "from 0 to 0.5")
	case !(density > 0):
		return refuse("density", fmt.Sprintf("%.6g kg/m³", float64(density)), "more than 0")
	}
	return nil
}

func discYields(bore, outside q.Length, nu float64, density q.Density, yield q.Stress) error {
	if err := disc(bore, outside, nu, density); err != nil {
		return err
	}
	if !(yield > 0) {
		return refuse("yield strength", mpa(yield), "more than 0")
	}
	return nil
}
