package cleanup

import (
	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// OneSided is a round part worn on one side only, as the load of a fit wears it.
type OneSided struct {
	Size   q.Length // diameter before the wear
	Wear   q.Length // depth worn off the one side; not a diameter
	Offset q.Length // how far the set-up may run out of centre (half the indicator reading)
}

func (o OneSided) check() error {
	switch {
	case !(o.Size > 0) || !finite(o.Size):
		return refuse("size before wear", showMM(o.Size), "above 0")
	case !(o.Wear >= 0):
		return refuse("wear depth", showMM(o.Wear), "0 or more")
	case !(2*o.Wear < o.Size):
		return refuse("wear depth", showMM(o.Wear), "less than half the size, "+showMM(o.Size/2))
	case !(o.Offset >= 0):
		return refuse("set-up offset", showMM(o.Offset), "0 or more")
	case !(2*o.Offset < o.Size-2*o.Wear):
		return refuse("set-up offset", showMM(o.Offset), "small enough to leave metal, below "+showMM(o.Size/2-o.Wear))
	}
	return nil
}

// deep is the share of the size above which the shape of the wear itself
// begins to matter to the forms that follow the worn surface: our choice.
const deep = 0.1

func (o OneSided) notes() []basis.Note {
	if o.Wear > deep*o.Size {
		return []basis.Note{{Says: "wear deeper than a tenth of the size: the shape of the worn side decides, take a profile", Source: source, Grade: basis.Extrapolated}}
	}
	return nil
}

func (o OneSided) size(wearTimes, offsetTimes q.Length) (q.Length, []basis.Note, error) {
	if err := o.check(); err != nil {
		return 0, nil, err
	}
	return o.Size + wearTimes*o.Wear + offsetTimes*o.Offset, o.notes(), nil
}

// ShaftKeepingAxis returns the size at which a one-sidedly worn shaft cleans up
// when it is turned about its original axis.
//
//	D - 2w - 2e
//
// Limits and source:
//
//   - Holds for: 2w below D; e at its worst, toward the worn side.
//   - Beyond: refused when no metal is left.
//   - Source: geometry: least radius D/2 - w, less the offset, doubled.
func ShaftKeepingAxis(o OneSided) (q.Length, []basis.Note, error) { return o.size(-2, -2) }

// ShaftFromWorn returns the size at which a one-sidedly worn shaft cleans up
// when it is set true by its worn surface. The axis moves by AxisShift.
//
//	D - w - 2e
//
// Limits and source:
//
//   - Holds for: one flat or hollow, w up to about a tenth of D.
//   - Beyond: deeper wear brings a note; refused when no metal is left.
//   - Source: geometry: the circle between the worn side and the sound side opposite.
func ShaftFromWorn(o OneSided) (q.Length, []basis.Note, error) { return o.size(-1, -2) }

// BoreKeepingAxis returns the size at which a one-sidedly worn bore cleans up
// when it is bored about its original axis.
//
//	D + 2w + 2e
//
// Limits and source:
//
//   - Holds for: 2w below D; e at its worst, away from the worn side.
//   - Beyond: refused.
//   - Source: geometry: greatest radius D/2 + w, plus the offset, doubled.
func BoreKeepingAxis(o OneSided) (q.Length, []basis.Note, error) { return o.size(2, 2) }

// BoreFromWorn returns the size at which a one-sidedly worn bore cleans up when
// it is set true by its worn surface. The axis moves by AxisShift.
//
//	D + w + 2e
//
// Limits and source:
//
//   - Holds for: one hollow worn by a shaft near the size of the bore, w up to about a tenth of D.
//   - Beyond: deeper wear brings a note.
//   - Source: geometry: the circle that takes in the hollow and the sound side opposite.
func BoreFromWorn(o OneSided) (q.Length, []basis.Note, error) { return o.size(1, 2) }

// AxisShift returns how far the axis moves when a one-sidedly worn part is set
// true by its worn surface: away from the wear in a shaft, toward it in a bore.
//
//	w / 2
//
// Limits and source:
//
//   - Holds for: wear on one side only, w from 0 up.
//   - Beyond: refused.
//   - Source: geometry: the middle between worn side and sound side.
func AxisShift(wear q.Length) (q.Length, error) {
	if !(wear >= 0) || !finite(wear) {
		return 0, refuse("wear depth", showMM(wear), "0 or more")
	}
	return wear / 2, nil
}

// ShaftOffset returns the size at which a round but worn shaft cleans up when
// its surface lies a known offset from the axis it is turned about.
//
//	Dw - 2e;  with the run-out t read on it, e = t/2, so Dw - t
//
// A bent shaft that is straightened first is worked with the run-out left after
// straightening.
//
//   - Holds for: a round surface, e from 0 to below Dw/2.
//   - Beyond: refused when no metal is left.
//   - Source: geometry: least radius Dw/2 - e, doubled.
func ShaftOffset(worn, offset q.Length) (q.Length, []basis.Note, error) {
	return OneSided{Size: worn, Offset: offset}.size(0, -2)
}

// BoreOffset returns the size at which a round but worn bore cleans up when its
// surface lies a known offset from the axis it is bored about.
//
//	Dw + 2e;  with the run-out t read in it, e = t/2, so Dw + t
//
// Limits and source:
//
//   - Holds for: a round surface, e from 0 to below Dw/2.
//   - Beyond: refused.
//   - Source: geometry: greatest radius Dw/2 + e, doubled.
func BoreOffset(worn, offset q.Length) (q.Length, []basis.Note, error) {
	return OneSided{Size: worn, Offset: offset}.size(0, 2)
}

// OffsetFromRunOut returns the offset of a round surface from the axis it is
// turned about, from the full reading of an indicator.
//
//	t / 2
//
// Limits and source:
//
//   - Holds for: a round surface; out-of-round adds to the reading and so errs to the safe side.
//   - Beyond: refused below 0.
//   - Source: geometry: the reading swings from r - e to r + e.
func OffsetFromRunOut(runOut q.Length) (q.Length, error) {
	if !(runOut >= 0) || !finite(runOut) {
		return 0, refuse("indicator reading", showMM(runOut), "0 or more")
	}
	return runOut / 2, nil
}
