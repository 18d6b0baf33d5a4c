package cleanup

import (
	"fmt"
	"math"
	"slices"

	"wornfit/calc/basis"
	"wornfit/calc/interval"
	q "wornfit/calc/quantity"
)

// Reading is a size between two points: a micrometer across a shaft, a bore
// gauge across a hole.
type Reading struct {
	Station q.Length // along the axis; readings of one section share it
	Angle   float64  // radians from the mark; θ and θ+π are one place
	Size    q.Length
}

// TwoPoint is what sizes alone can tell, and what must be granted for the rest.
//
// Sizes alone see ovality, taper and the deepest place. They do not see odd
// lobes (a three-lobed shaft reads the same all round), nor on which side metal
// is missing, nor an offset from any axis.
type TwoPoint struct {
	Readings []Reading
	Unseen   q.Length // on diameter, granted for lobes between the points; 0 if a ring, vee or three-point gauge found none
	Unworn   q.Length // size before the wear; used by the fixed-axis answers only
}

// ShaftFree returns the range in which the clean-up size of a shaft lies when it
// is set true by its worn surface.
//
//	from  smallest - unseen  to  smallest reading
//
// The low edge takes the smallest size of the oval through each section's
// readings where that is less than the smallest reading.
//
//   - Holds for: any readings; with fewer than three angles at a section an oval may hide between them.
//   - Beyond: fewer than three angles brings a note.
//   - Source: geometry: no circle inside the profile is wider than the least distance across it.
func (t TwoPoint) ShaftFree() (interval.I, []basis.Note, error) {
	low, _, notes, err := t.extremes()
	if err != nil {
		return interval.None(), nil, err
	}
	return interval.I{Lo: float64(low.deep - t.Unseen), Hi: float64(low.read)}, notes, nil
}

// ShaftFixed returns the range in which the clean-up size of a shaft lies when
// it is turned about its original axis.
//
//	from  2·smallest - unworn - unseen  (all worn off one side)  to  smallest reading  (worn evenly)
//
// Limits and source:
//
//   - Holds for: metal only lost, none raised, from a surface that was true to the axis.
//   - Beyond: fewer than three angles brings a note; an unworn size below the readings is refused.
//   - Source: geometry: the far end of a diameter reaches no farther than (unworn + unseen)/2.
func (t TwoPoint) ShaftFixed() (interval.I, []basis.Note, error) {
	low, high, notes, err := t.extremes()
	if err != nil {
		return interval.None(), nil, err
	}
	if !(t.Unworn >= high.read) {
		return interval.None(), nil, refuse("unworn shaft size", showMM(t.Unworn), "at least the largest reading, "+showMM(high.read))
	}
	return interval.I{Lo: float64(2*low.deep - t.Unworn - t.Unseen), Hi: float64(low.read)}, notes, nil
}

// BoreFree returns the range in which the clean-up size of a bore lies when it
// is set true by its worn surface.
//
//	from  largest reading  to  largest + unseen
//
// Limits and source:
//
//   - Holds for: any readings; with fewer than three angles at a section an oval may hide between them.
//   - Beyond: fewer than three angles brings a note.
//   - Source: geometry: no circle round the profile is narrower than the greatest distance across it.
func (t TwoPoint) BoreFree() (interval.I, []basis.Note, error) {
	_, high, notes, err := t.extremes()
	if err != nil {
		return interval.None(), nil, err
	}
	return interval.I{Lo: float64(high.read), Hi: float64(high.deep + t.Unseen)}, notes, nil
}

// BoreFixed returns the range in which the clean-up size of a bore lies when it
// is bored about its original axis.
//
//	from  largest reading  (worn evenly)  to  2·largest - unworn + unseen  (all worn off one side)
//
// Limits and source:
//
//   - Holds for: metal only lost, none closed in, from a surface that was true to the axis.
//   - Beyond: fewer than three angles brings a note; an unworn size above the readings is refused.
//   - Source: geometry: the far end of a diameter lies no nearer than (unworn - unseen)/2.
func (t TwoPoint) BoreFixed() (interval.I, []basis.Note, error) {
	low, high, notes, err := t.extremes()
	if err != nil {
		return interval.None(), nil, err
	}
	if !(t.Unworn > 0 && t.Unworn <= low.read) {
		return interval.None(), nil, refuse("unworn bore size", showMM(t.Unworn), "above 0 and at most the smallest reading, "+showMM(low.read))
	}
	return interval.I{Lo: float64(high.read), Hi: float64(2*high.deep - t.Unworn + t.Unseen)}, notes, nil
}

// extreme is the size read and the size an oval through the readings reaches.
type extreme struct{ read, deep q.Length }

func (t TwoPoint) extremes() (low, high extreme, notes []basis.Note, err error) {
	if len(t.Readings) == 0 {
		return low, high, nil, refuse("readings", "none", "at least one size")
	}
	if !(t.Unseen >= 0) || !finite(t.Unseen) {
		return low, high, nil, refuse("allowance for unseen lobes", showMM(t.Unseen), "0 or more")
	}
	low.read, high.read = t.Readings[0].Size, t.Readings[0].Size
	sections := map[q.Length][]Reading{}
	for _, r := range t.Readings {
		if !(r.Size > 0) || !finite(r.Size) {
			return low, high, nil, refuse("reading", showMM(r.Size), "above 0")
		}
		low.read, high.read = min(low.read, r.Size), max(high.read, r.Size)
		sections[r.Station] = append(sections[r.Station], r)
	}
	low.deep, high.deep = low.read, high.read
	few := 0
	for _, section := range sections {
		o, err := OvalThrough(section)
		if err != nil {
			few++
			continue
		}
		low.deep, high.deep = min(low.deep, o.Mean-o.Swing), max(high.deep, o.Mean+o.Swing)
	}
	if few > 0 {
		which := fmt.Sprintf("%d of %d sections read", few, len(sections))
		if len(sections) == 1 {
			which = "its one section is read"
		}
		notes = append(notes, basis.Note{
			Says:   which + " at fewer than three angles: an oval may hide between them",
			Source: source, Grade: basis.Extrapolated,
		})
	}
	return low, high, notes, nil
}

// apart is how far two angles must lie from each other to count as two: closer
// ones would blow up the error of the readings. Our choice.
const apart = 20 * math.Pi / 180 * (1 - 1e-9)

// Oval is the even oval nearest to a section's sizes: Mean ± Swing, largest at Angle.
type Oval struct {
	Mean, Swing q.Length
	Angle       float64 // radians, 0 to π
}

// OvalThrough returns the even oval through the sizes of one section, by least
// squares when there are more than three.
//
//	size(θ) = Mean + Swing·cos 2(θ - Angle)
//
// Two readings at right angles can miss an oval altogether (both read the mean
// when it lies at 45°); three angles 60° apart can not.
//
//   - Holds for: three or more angles 20° apart (θ and θ+π are one), ovality small against the size.
//   - Beyond: refused; lobes of any other number are not seen.
//   - Source: geometry (Fourier's second harmonic); same algebra as a three-gauge strain rosette.
func OvalThrough(section []Reading) (Oval, error) {
	var angles []float64
	for _, r := range section {
		if !finite(r.Size) || !finite(q.Length(r.Angle)) {
			return Oval{}, refuse("reading", fmt.Sprintf("%g m at %g rad", r.Size, r.Angle), "finite")
		}
		same := func(a float64) bool { return math.Abs(math.Remainder(a-r.Angle, math.Pi)) < apart }
		if !slices.ContainsFunc(angles, same) {
			angles = append(angles, r.Angle)
		}
	}
	if len(angles) < 3 {
		return Oval{}, refuse("angles of a section", fmt.Sprint(len(angles)), "at least 3, 20° or more apart, to see an oval")
	}
	mean, c, s := harmonics(section)
	return Oval{q.Length(mean), q.Length(math.Hypot(c, s)), math.Mod(math.Atan2(s, c)/2+math.Pi, math.Pi)}, nil
}

// harmonics solves the normal equations of size = mean + c·cos 2θ + s·sin 2θ.
func harmonics(section []Reading) (mean, c, s float64) {
	base := float64(section[0].Size) // sizes less the first keep their digits
	var m [3][4]float64
	for _, r := range section {
		sin, cos := math.Sincos(2 * r.Angle)
		row := [4]float64{1, cos, sin, float64(r.Size) - base}
		for i := range 3 {
			for j := range 4 {
				m[i][j] += row[i] * row[j]
			}
		}
	}
	for i := range 3 { // the matrix is positive: no pivoting needed
		for k := range 3 {
			if k == i {
				continue
			}
			f := m[k][i] / m[i][i]
			for j := range 4 {
				m[k][j] -= f * m[i][j]
			}
		}
	}
	return base + m[0][3]/m[0][0], m[1][3] / m[1][1], m[2][3] / m[2][2]
}
