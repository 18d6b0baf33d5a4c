package assembly

import (
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// GrabTime returns how long a hot hub stays loose on a cold shaft.
//
//	ρ·c·∂T/∂t = (1/r)·∂/∂r(r·k·∂T/∂r) in hub and shaft
//	between them h·(Thub − Tshaft), centred h = k_air/(gap + peaks) + radiation,
//	touching h = k_air/√((gap + peaks)² − gap²) + radiation
//	gap = −δ/2 + αh·a·(mean Thub − room) − αs·a·(mean Tshaft − room)
//
// All in SI units. It grabs when the gap is 0.
//
//   - Holds for: a hub about as wide as the shaft is thick, or wider; properties as means over the span.
//   - Beyond: a thin plate on a long shaft has two or three times as long, for heat runs along the shaft: GrabTimeAlong. Tilted entry, burrs, frost, oil or paste in the gap are not in it.
//   - Source: Fourier's law in rings, worked out; our own reference solver agrees within 1.2 %, all of it from the conductivity of air, which it took a little lower in the hot and higher in the cold.
func GrabTime(j Joining, lie Lie) (q.Time, []basis.Note, error) {
	if err := j.check(lie); err != nil {
		return 0, nil, err
	}
	r := newRadial(&j, lie)
	t := r.closes()
	if math.IsNaN(t) {
		return 0, nil, j.stays()
	}
	return q.Time(t), j.notes(), nil
}

// GrabWindow returns the range in which a hot hub grabs: the least to be home in,
// touching on one side, and the most to hope for, centred all the way.
//
//   - Holds for: as GrabTime.
//   - Source: as GrabTime.
func GrabWindow(j Joining) (least, mostly q.Time, notes []basis.Note, err error) {
	if least, notes, err = GrabTime(j, Touching); err != nil {
		return 0, 0, nil, err
	}
	mostly, _, err = GrabTime(j, Centred)
	return least, mostly, notes, err
}
