package gears

import (
	"fmt"
	"math"

	q "wornfit/calc/quantity"
)

// Pair is two spur gears, outside on outside. Diametral pitch P is the module 25.4 mm/P.
type Pair struct {
	Module                      q.Length
	Pinion, Wheel               int      // teeth
	Pressure                    float64  // pressure angle of the cutter, radians
	PinionOutside, WheelOutside q.Length // 0: the standard outside, two modules over the pitch circle
}

// The span of pressure angles taken: 14.5°, 20° and 25° are cut; our choice, wide of them.
const (
	leastPressure = 10 * math.Pi / 180
	mostPressure  = 35 * math.Pi / 180
)

// fewest is the fewest teeth of a wheel taken here: our choice; below it no involute is left.
const fewest = 6

// CentreDistance returns the distance of the axes at which the pitch circles of
// two wheels touch.
//
//	a0 = m·(z1 + z2)/2
//
// It is the distance the teeth are cut for, unless a cutter was moved.
//
//   - Holds for: spur gears outside on outside, cut without shift, or with shifts that cancel.
//   - Beyond: wheels cut with the cutter moved out run further apart.
//   - Source: geometry.
func CentreDistance(p Pair) (q.Length, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	return q.Length(p.centre()), nil
}

// OutOfLine returns how much further apart the axes of the second pair would
// stand than those of the first, where both are to run on the same two lines.
//
//	Δ = m2·(z3 + z4)/2 − m1·(z1 + z2)/2
//
// Nought if the last shaft lies in line with the first.
//
//   - Holds for: two pairs on parallel shafts, the first and last of them on one line; cut without shift.
//   - Beyond: see CentreDistance.
//   - Source: geometry.
func OutOfLine(first, second Pair) (q.Length, error) {
	if err := firstOf(first.check(), second.check()); err != nil {
		return 0, err
	}
	return q.Length(second.centre() - first.centre()), nil
}

func (p Pair) centre() float64 { return centre(float64(p.Module), float64(p.Pinion), float64(p.Wheel)) }

func (p Pair) check() error {
	switch {
	case !(p.Module > 0) || math.IsInf(float64(p.Module), 1):
		return refuse("module", mm(p.Module), "more than 0")
	case p.Pinion < fewest:
		return refuse("teeth of the pinion", fmt.Sprint(p.Pinion), "6 or more")
	case p.Wheel < fewest:
		return refuse("teeth of the wheel", fmt.Sprint(p.Wheel), "6 or more")
	}
	return checkPressure(p.Pressure)
}

func checkPressure(φ float64) error {
	if !(φ >= leastPressure && φ <= mostPressure) {
		return refuse("pressure angle", deg(φ), "10° to 35°, in radians: 20° is 0.349")
	}
	return nil
}

func centre(module, z1, z2 float64) float64 { return module * (z1 + z2) / 2 }

// working is the pressure angle at which wheels cut for a0 run at a0 + shift.
func working(a0, φ, shift float64) float64 { return math.Acos(a0 * math.Cos(φ) / (a0 + shift)) }

// inv is the involute of an angle.
func inv(φ float64) float64 { return math.Tan(φ) - φ }
