package keyed

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Key is a parallel key. Depth is the height of key that presses on the
// shallower of the two keyways: half its height by the books; where the key
// stands less high in the hub, what really bears there.
type Key struct {
	Shaft, Width, Depth, Length q.Length
}

// ShearTorque returns the torque at which a parallel key shears.
//
//	T = τ·b·L·d/2
//
// All in SI units.
//
//   - Holds for: a snug key loaded evenly along its length; the length without rounded ends.
//   - Beyond: a key longer than about 1.5 shaft diameters does not load evenly: the far end idles (common practice, no source). Shock and reversals ask for a factor.
//   - Source: statics, any machine-element text.
func ShearTorque(k Key, shear q.Stress) (q.Torque, error) {
	if err := k.check(); err != nil {
		return 0, err
	}
	if err := above0("shear stress", mpa(shear), float64(shear)); err != nil {
		return 0, err
	}
	return q.Torque(shearTorque(float64(k.Shaft), float64(k.Width), float64(k.Length), float64(shear))), nil
}

// CrushTorque returns the torque at which the side of a parallel key, or of the
// keyway it presses on, is crushed.
//
//	T = p·t·L·d/2, t = h/2 by the books
//
// All in SI units.
//
//   - Holds for: a snug key loaded evenly; p of the weakest of key, shaft and hub.
//   - Beyond: a rocked or widened keyway bears on an edge and crushes sooner; measure the depth that is left sound.
//   - Source: statics, any machine-element text.
func CrushTorque(k Key, crush q.Stress) (q.Torque, error) {
	if err := k.check(); err != nil {
		return 0, err
	}
	if !(k.Depth < k.Shaft/2) {
		return 0, refuse("depth that bears", mm(k.Depth), "less than half the shaft, "+mm(k.Shaft/2))
	}
	if err := above0("crushing stress", mpa(crush), float64(crush)); err != nil {
		return 0, err
	}
	return q.Torque(shearTorque(float64(k.Shaft), float64(k.Depth), float64(k.Length), float64(crush))), nil
}

func (k Key) check() error {
	if err := above0("shaft diameter", mm(k.Shaft), float64(k.Shaft)); err != nil {
		return err
	}
	if !(k.Width > 0 && k.Width < k.Shaft) {
		return refuse("width of the key", mm(k.Width), "more than 0 and less than the shaft, "+mm(k.Shaft))
	}
	if err := above0("depth that bears", mm(k.Depth), float64(k.Depth)); err != nil {
		return err
	}
	return above0("length of the key", mm(k.Length), float64(k.Length))
}

// shearTorque is a stress over a strip along the joint, at half its diameter.
func shearTorque(joint, wide, length, stress float64) float64 {
	return stress * wide * length * joint / 2
}

func above0(name, value string, x float64) error {
	if !(x > 0) {
		return refuse(name, value, "more than 0")
	}
	return nil
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }

func mpa(p q.Stress) string { return fmt.Sprintf("%.6g MPa", float64(p)/1e6) }
