package keyed

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Woodruff is a key cut from a disc, bedded in a seat milled to the same round.
// Stands is how far it stands out of the shaft at its middle: by the standard
// half its width, more once the shaft is turned down.
type Woodruff struct {
	Shaft, Width, Disc, Height, Stands q.Length
}

// WoodruffTorque are the torques at which a Woodruff key gives way.
type WoodruffTorque struct {
	Shear q.Torque // the key shears along its chord at the joint
	Hub   q.Torque // the keyway of the hub is crushed
	Seat  q.Torque // the side of the seat in the shaft is crushed
}

// WoodruffLength returns the length of the key where it passes from shaft to hub.
//
//	L = 2·√(a·(D − a)), a = h − s
//
// D is the disc, h the height of the key, s what stands out of the shaft; with
// nothing standing out it is the length of the flat top.
//
//   - Holds for: a key no higher than half its disc, which every standard one is.
//   - Beyond: a flat-bottomed key loses nothing at the joint; its seat bears a little less.
//   - Source: geometry of a chord.
func WoodruffLength(k Woodruff) (q.Length, error) {
	if err := k.form(); err != nil {
		return 0, err
	}
	return q.Length(chord(float64(k.Disc), float64(k.Height-k.Stands))), nil
}

// WoodruffHolds returns the torques at which a Woodruff key shears, and at which
// the hub's keyway and the seat in the shaft are crushed. The smallest counts.
//
//	shear: T = τ·b·L·d/2; hub: T = p·(A(h) − A(h−s))·d/2; seat: T = p·A(h−s)·d/2
//
// A(a) is the segment of the disc up to the height a; L is the chord at the joint.
//
//   - Holds for: one key snug in seat and hub, even pressure on the side, the hub's keyway as deep as the key stands.
//   - Beyond: the seat is deep and weakens the shaft more than that of a parallel key; that is not counted here. A key that rocks bears on its ends.
//   - Source: statics and geometry, worked out.
func WoodruffHolds(k Woodruff, shear, crushHub, crushShaft q.Stress) (WoodruffTorque, error) {
	if err := k.form(); err != nil {
		return WoodruffTorque{}, err
	}
	if err := above0("shaft diameter", mm(k.Shaft), float64(k.Shaft)); err != nil {
		return WoodruffTorque{}, err
	}
	if !(k.Width > 0 && k.Width < k.Shaft) {
		return WoodruffTorque{}, refuse("width of the key", mm(k.Width), "more than 0 and less than the shaft, "+mm(k.Shaft))
	}
	for _, s := range []struct {
		name string
		q.Stress
	}{{"shear stress", shear}, {"crushing stress of the hub", crushHub}, {"crushing stress of the shaft", crushShaft}} {
		if err := above0(s.name, mpa(s.Stress), float64(s.Stress)); err != nil {
			return WoodruffTorque{}, err
		}
	}
	d, disc, h, out := float64(k.Shaft), float64(k.Disc), float64(k.Height), float64(k.Stands)
	return WoodruffTorque{
		Shear: q.Torque(shearTorque(d, float64(k.Width), chord(disc, h-out), float64(shear))),
		Hub:   q.Torque(float64(crushHub) * (segment(disc, h) - segment(disc, h-out)) * d / 2),
		Seat:  q.Torque(float64(crushShaft) * segment(disc, h-out) * d / 2),
	}, nil
}

func (k Woodruff) form() error {
	if err := above0("disc of the key", mm(k.Disc), float64(k.Disc)); err != nil {
		return err
	}
	if !(k.Height > 0 && k.Height <= k.Disc/2) {
		return refuse("height of the key", mm(k.Height), "more than 0 and at most half the disc, "+mm(k.Disc/2))
	}
	if !(k.Stands >= 0 && k.Stands < k.Height) {
		return refuse("what stands out of the shaft", mm(k.Stands), "0 or more and less than the height of the key, "+mm(k.Height))
	}
	return nil
}

// WoodruffKey returns the sizes of a Woodruff key of the inch system by its
// number: the last two figures are eighths of an inch of disc, those before
// thirty-seconds of width. It stands half its width out of the shaft it was made for.
//
//   - Holds for: numbers 202 to 1212 of the table; the height is the largest of its tolerance.
//   - Beyond: refused. A worn key is lower: measure it.
//   - Source: ANSI B17.2, heights read in an extract of a machinist's handbook; see SOURCES.md.
func WoodruffKey(number int) (Woodruff, basis.Grade, error) {
	for _, k := range woodruffs() {
		if k.number == number {
			return k.Woodruff, k.grade, nil
		}
	}
	return Woodruff{}, 0, refuse("number of the key", itoa(number), "one of the table, 202 to 1212, such as 608")
}

// chord is the length of a segment's straight side, a high on a disc.
func chord(disc, a float64) float64 { return 2 * math.Sqrt(a*(disc-a)) }

// segment is the area of a disc below a chord a above its lowest point.
func segment(disc, a float64) float64 {
	r := disc / 2
	return r*r*math.Acos(1-a/r) - (r-a)*math.Sqrt(a*(disc-a))
}
