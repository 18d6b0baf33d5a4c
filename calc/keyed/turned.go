package keyed

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Keyed is a parallel key in shaft and hub as first cut. Depths are those of the
// keyways at the middle of the key, from the round that was there.
type Keyed struct {
	Shaft, Bore            q.Length
	Width, Height          q.Length
	ShaftKeyway, HubKeyway q.Length
}

// Left is what is left of a keyed joint once shaft or bore are recut.
type Left struct {
	ShaftDepth q.Length // of the shaft's keyway at its middle
	InShaft    q.Length // height of the keyway's wall in the shaft that bears
	InHub      q.Length // height of the hub's wall that bears
	StandsOut  q.Length // of the key over the shaft, at its middle
	Room       q.Length // over the key, to the bottom of the hub's keyway; below 0 it holds the hub off
}

// ChordDrop returns how far the edge of a keyway lies below the middle of the
// round it is cut in. A depth gauge on the edges reads this much less.
//
//	f = d/2 − √(d²−b²)/2
//
// All in SI units.
//
//   - Holds for: any keyway narrower than its round.
//   - Beyond: refused.
//   - Source: geometry of a chord.
func ChordDrop(round, width q.Length) (q.Length, error) {
	if err := above0("diameter of the round", mm(round), float64(round)); err != nil {
		return 0, err
	}
	if !(width > 0 && width < round) {
		return 0, refuse("width of the key", mm(width), "more than 0 and less than the round, "+mm(round))
	}
	return q.Length(chordDrop(float64(round), float64(width))), nil
}

// Recut returns what bears of a key when its shaft is turned down, its bore
// opened, or both. The bottoms of the keyways stay where they were cut.
//
//	in shaft: √(D'²−b²)/2 − (D/2−t); in hub: min(D/2−t+h, B/2+th) − √(B'²−b²)/2
//
// All measured from the axis: the key sits at D/2 − t with its top h above. A wall
// in the shaft ends at the round as turned; one in the hub begins at the bore as
// opened and ends at the top of the key or the bottom of the hub's keyway.
//
//   - Holds for: round and parallel parts with the key bedded in the shaft, no edges broken: take off what is chamfered.
//   - Beyond: a key with no room over it is noted: it holds the hub off centre; file it lower. Refused where no wall is left.
//   - Source: geometry, exact.
func Recut(k Keyed, shaft, bore q.Length) (Left, []basis.Note, error) {
	if err := k.check(shaft, bore); err != nil {
		return Left{}, nil, err
	}
	bottom := k.Shaft/2 - k.ShaftKeyway
	l := Left{
		ShaftDepth: shaft/2 - bottom,
		InShaft:    q.Length(inShaft(float64(k.Shaft), float64(shaft), float64(k.Width), float64(k.ShaftKeyway))),
		InHub:      q.Length(inHub(k, float64(bore))),
		StandsOut:  bottom + k.Height - shaft/2,
		Room:       k.Bore/2 + k.HubKeyway - bottom - k.Height,
	}
	if !(l.InShaft > 0) {
		return Left{}, nil, refuse("size turned to", mm(shaft), "larger: nothing of the keyway's wall is left in the shaft")
	}
	if !(l.InHub > 0) {
		return Left{}, nil, refuse("bore opened to", mm(bore), "smaller: nothing of the keyway's wall is left in the hub")
	}
	if l.Room < 0 {
		return l, []basis.Note{{
			Says: "the key is " + mm(-l.Room) + " too high for its keyways and holds the hub off", Source: "geometry", Grade: basis.Derived,
		}}, nil
	}
	return l, nil, nil
}

// RecutTorque returns the torque at which a key in a recut shaft or hub crushes a
// keyway: less wall bears, at a smaller lever.
//
//	T = min(ps·hs, ph·hh)·L·D'/2
//
// hs and hh are the heights of wall that Recut leaves, ps and ph what shaft and
// hub (or the key, if that is weaker) stand.
//
//   - Holds for: as Recut, loaded evenly along the length.
//   - Beyond: as Recut. The key tips more in a shallow keyway and bears on its edge: measure what is sound.
//   - Source: statics and geometry.
func RecutTorque(k Keyed, shaft, bore, length q.Length, crushShaft, crushHub q.Stress) (q.Torque, []basis.Note, error) {
	l, notes, err := Recut(k, shaft, bore)
	if err != nil {
		return 0, nil, err
	}
	if err := above0("length of the key", mm(length), float64(length)); err != nil {
		return 0, nil, err
	}
	if err := above0("crushing stress of the shaft", mpa(crushShaft), float64(crushShaft)); err != nil {
		return 0, nil, err
	}
	if err := above0("crushing stress of the hub", mpa(crushHub), float64(crushHub)); err != nil {
		return 0, nil, err
	}
	line := min(float64(crushShaft)*float64(l.InShaft), float64(crushHub)*float64(l.InHub))
	return q.Torque(line * float64(length) * float64(shaft) / 2), notes, nil
}

func (k Keyed) check(shaft, bore q.Length) error {
	if err := (Key{Shaft: k.Shaft, Width: k.Width, Depth: 1, Length: 1}).check(); err != nil {
		return err
	}
	if !(k.Bore > k.Width) {
		return refuse("bore", mm(k.Bore), "more than the width of the key, "+mm(k.Width))
	}
	if !(k.ShaftKeyway > 0 && k.ShaftKeyway < k.Shaft/2) {
		return refuse("depth of the shaft's keyway", mm(k.ShaftKeyway), "more than 0 and less than half the shaft, "+mm(k.Shaft/2))
	}
	if !(k.Height > k.ShaftKeyway) {
		return refuse("height of the key", mm(k.Height), "more than its keyway in the shaft, "+mm(k.ShaftKeyway))
	}
	if err := above0("depth of the hub's keyway", mm(k.HubKeyway), float64(k.HubKeyway)); err != nil {
		return err
	}
	if !(shaft > k.Width && shaft <= k.Shaft) {
		return refuse("size turned to", mm(shaft), "more than the width of the key, "+mm(k.Width)+", and at most the shaft, "+mm(k.Shaft))
	}
	if !(bore >= k.Bore) || math.IsInf(float64(bore), 0) {
		return refuse("bore opened to", mm(bore), "at least the bore, "+mm(k.Bore))
	}
	return nil
}

// chordDrop is written so that a narrow keyway keeps its digits.
func chordDrop(round, width float64) float64 {
	return width * width / 2 / (round + math.Sqrt((round-width)*(round+width)))
}

func inShaft(was, now, width, keyway float64) float64 {
	return keyway - (was-now)/2 - chordDrop(now, width)
}

func inHub(k Keyed, bore float64) float64 {
	top := min(float64(k.Shaft)/2-float64(k.ShaftKeyway)+float64(k.Height), float64(k.Bore)/2+float64(k.HubKeyway))
	return top - bore/2 + chordDrop(bore, float64(k.Width))
}
