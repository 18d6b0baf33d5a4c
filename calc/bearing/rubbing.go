package bearing

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Pressure returns the load of a bearing over its projected area.
//
//	p = F/(d·L)
//
// All in SI units.
//
//   - Holds for: a load square to the axis, along the whole length.
//   - Beyond: a bent or tilted shaft presses on the edges with several times this.
//   - Source: definition, any machine-element text.
func Pressure(load q.Force, diameter, length q.Length) (q.Stress, error) {
	if !(load >= 0) {
		return 0, refuse("load", fmt.Sprintf("%.6g N", float64(load)), "0 or more")
	}
	if err := positive("diameter", diameter); err != nil {
		return 0, err
	}
	if err := positive("length", length); err != nil {
		return 0, err
	}
	return q.Stress(pressure(float64(load), float64(diameter), float64(length))), nil
}

// SlidingSpeed returns how fast a turning shaft slides in its bearing.
//
//	v = π·d·n
//
// All in SI units.
//
//   - Holds for: steady turning, either way round.
//   - Beyond: a shaft that swings has SwingSpeed.
//   - Source: geometry.
func SlidingSpeed(diameter q.Length, speed q.Rotation) (q.Speed, error) {
	if err := positive("diameter", diameter); err != nil {
		return 0, err
	}
	if !(speed >= 0) {
		return 0, refuse("speed", fmt.Sprintf("%.6g rpm", 60*float64(speed)), "0 or more")
	}
	return q.Speed(slidingSpeed(float64(diameter), float64(speed))), nil
}

// SwingSpeed returns how fast a pin slides on average when it swings by half to
// either side of the middle, in radians, so many full cycles a second.
//
//	v = 2·half·d·f
//
// All in SI units.
//
//   - Holds for: the mean over a cycle; wear and heat go by it.
//   - Beyond: the fastest is π/2 times the mean for an even swing; very small swings (under a few degrees) fret instead.
//   - Source: four quarter swings a cycle; worked out.
func SwingSpeed(diameter q.Length, half float64, cycles q.Rotation) (q.Speed, error) {
	if err := positive("diameter", diameter); err != nil {
		return 0, err
	}
	if !(half >= 0 && half <= 2*math.Pi) {
		return 0, refuse("half swing", fmt.Sprintf("%.4g radians", half), "from 0 to a full turn, 6.283")
	}
	if !(cycles >= 0) {
		return 0, refuse("cycles", fmt.Sprintf("%.6g a minute", 60*float64(cycles)), "0 or more")
	}
	return q.Speed(swingSpeed(float64(diameter), half, float64(cycles))), nil
}

// PressureSpeed returns the product by which dry and boundary-lubricated bushes
// are chosen: it stands for the heat per area.
//
//	pv = p·v
//
// All in SI units.
//
//   - Holds for: judging a bush against its material's pv limit, with p and v each judged as well.
//   - Beyond: a bush with a full film heats by the oil, not by this. Limits differ three-fold between texts.
//   - Source: definition, any machine-element text.
func PressureSpeed(pressure q.Stress, speed q.Speed) (q.PV, error) {
	if !(pressure >= 0) {
		return 0, refuse("pressure", fmt.Sprintf("%.6g MPa", float64(pressure)/1e6), "0 or more")
	}
	if !(speed >= 0) {
		return 0, refuse("sliding speed", fmt.Sprintf("%.6g m/s", float64(speed)), "0 or more")
	}
	return q.PV(float64(pressure) * float64(speed)), nil
}

func pressure(load, diameter, length float64) float64 { return load / (diameter * length) }

func slidingSpeed(diameter, speed float64) float64 { return math.Pi * diameter * speed }

func swingSpeed(diameter, half, cycles float64) float64 { return 2 * half * diameter * cycles }

func positive(name string, l q.Length) error {
	if !(l > 0) {
		return refuse(name, mm(l), "more than 0")
	}
	return nil
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }
