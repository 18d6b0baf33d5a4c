package gears

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
)

// formTable is Lewis' form factor Y of full-depth 20° teeth with the load at the
// tip, from memory of Shigley table 14-2. The last row is a rack.
var formTable = [...]struct{ teeth, y float64 }{
	{12, 0.245}, {13, 0.261}, {14, 0.277}, {15, 0.290}, {16, 0.296}, {17, 0.303}, {18, 0.309}, {19, 0.314},
	{20, 0.322}, {21, 0.328}, {22, 0.331}, {24, 0.337}, {26, 0.346}, {28, 0.353}, {30, 0.359}, {34, 0.371},
	{38, 0.384}, {43, 0.397}, {50, 0.409}, {60, 0.422}, {75, 0.435}, {100, 0.447}, {150, 0.460}, {300, 0.472},
	{math.Inf(1), 0.485},
}

// FormFactor returns Lewis' form factor Y from the table of the books.
//
//	Y between two rows goes evenly with 1/z
//
// The table reads 1 to 9 % above what a rack really cuts, the more for few
// teeth: GeneratedFormFactor is on the safe side of it.
//
//   - Holds for: 12 teeth and more, 20°, full depth, load at the tip.
//   - Beyond: fewer teeth are refused. Stub teeth and 14.5° have tables of their own.
//   - Source: from memory of Shigley table 14-2.
func FormFactor(teeth int) (float64, []basis.Note, error) {
	if float64(teeth) < formTable[0].teeth {
		return 0, nil, refuse("number of teeth", fmt.Sprint(teeth), "12 or more, as the table goes")
	}
	return formFactor(float64(teeth)), []basis.Note{{
		Says:   "the form factor is of a table not at hand, for 20° full-depth teeth",
		Source: "Shigley table 14-2, from memory", Grade: basis.Memory,
	}}, nil
}

func formFactor(teeth float64) float64 {
	i := 1
	for teeth > formTable[i].teeth {
		i++
	}
	lo, hi := formTable[i-1], formTable[i]
	return hi.y + (lo.y-hi.y)*(1/teeth-1/hi.teeth)/(1/lo.teeth-1/hi.teeth)
}

// Rack is the tool that cuts a tooth, lengths in modules.
type Rack struct {
	Pressure  float64 // radians
	Addendum  float64 // of the tooth that is cut, 1 by the standard
	Dedendum  float64 // how deep the tool goes below the pitch circle
	TipRadius float64 // of the tool's corner, which leaves the fillet
}

// GeneratedFormFactor returns Lewis' form factor Y of the tooth that a rack cuts.
//
//	Y = (2/3)·least of t²/(4·l) along the fillet, lengths in modules
//
// The load stands square to the flank at the tip; its line meets the middle of
// the tooth at the point from which l goes down to the section of thickness t.
// The fillet is what the tool's round corner sweeps out as rack and wheel roll.
//
//   - Holds for: teeth cut by a rack or hob without shift, 10 teeth and more; undercut counts.
//   - Beyond: teeth of a form cutter or a shaper leave another fillet. Over some 150 teeth the beam is weakest on the flank and not in the fillet, by 1.2 % at 300 teeth and 2.7 % at 1000; noted.
//   - Source: geometry, worked out; after Lewis' beam.
func GeneratedFormFactor(r Rack, teeth int) (float64, []basis.Note, error) {
	const fewestCut, onFillet = 10, 150 // worked out: fewer have little fillet left; over 150 see Beyond
	if teeth < fewestCut {
		return 0, nil, refuse("number of teeth", fmt.Sprint(teeth), "10 or more")
	}
	if err := r.check(float64(teeth)); err != nil {
		return 0, nil, err
	}
	y := generated(r, float64(teeth))
	if !(y > 0) {
		return 0, nil, refuse("tool", fmt.Sprintf("%.3g modules deep", r.Dedendum), "one that leaves a tooth of this number")
	}
	var notes []basis.Note
	if teeth > onFillet {
		notes = append(notes, basis.Note{
			Says:   "with so many teeth the weakest section lies on the flank: the form factor is up to 4 % less",
			Source: "geometry", Grade: basis.Derived,
		})
	}
	return y, notes, nil
}

func (r Rack) check(teeth float64) error {
	if err := firstOf(checkPressure(r.Pressure), above0("addendum", plain(r.Addendum)+" modules", r.Addendum),
		above0("dedendum", plain(r.Dedendum)+" modules", r.Dedendum)); err != nil {
		return err
	}
	if !r.cornered() {
		return refuse("corner radius of the tool", plain(r.TipRadius)+" modules", "0 or more and small enough for the width of the tool's tip")
	}
	if _, half := r.load(teeth); !(half >= 0) {
		return refuse("addendum", plain(r.Addendum)+" modules", "less: the teeth would be pointed before that")
	}
	return nil
}

// cuts reports, without a word and so without allocating, whether check lets a
// tool of this range pass.
func (r Rack) cuts(teeth float64) bool {
	_, half := r.load(teeth)
	return r.cornered() && half >= 0
}

func (r Rack) cornered() bool {
	return r.TipRadius >= 0 && r.TipRadius < r.Dedendum && r.corner() >= 0
}

// corner is how far the middle of the tool's corner stands from the middle of its tooth.
func (r Rack) corner() float64 {
	return math.Pi/4 - (r.Dedendum-r.TipRadius)*math.Tan(r.Pressure) - r.TipRadius/math.Cos(r.Pressure)
}

// load is the height over the wheel's middle at which the line of a load at the
// tip meets the middle of the tooth, and half the angle the tip fills.
func (r Rack) load(teeth float64) (apex, half float64) {
	base := teeth / 2 * math.Cos(r.Pressure)
	at := math.Acos(base / (teeth/2 + r.Addendum))
	half = math.Pi/(2*teeth) + inv(r.Pressure) - inv(at)
	return base / math.Cos(at-half), half
}

// parabola is t²/(4l) at a point of the fillet: where the tool's corner touches
// it square at the angle α to the pitch line.
func (r Rack) parabola(teeth, apex, α float64) float64 {
	sin, cos := math.Sincos(α)
	deep := r.Dedendum - r.TipRadius
	from := deep/sin + r.TipRadius // from the pitch point, square to the fillet
	x, y := from*cos, teeth/2-from*sin
	rolled := (deep*cos/sin - r.corner()) / (teeth / 2)
	sin, cos = math.Sincos(rolled + math.Pi/teeth - math.Atan2(x, y))
	across := math.Hypot(x, y)
	half, l := across*sin, apex-across*cos
	if !(l > 0) {
		return math.Inf(1) // above the load nothing bends
	}
	return half * math.Abs(half) / l // below 0: the tool cuts the tooth off
}

// generated narrows the angle at which the fillet is weakest by the golden
// section; t²/(4l) falls and rises once along it.
func generated(r Rack, teeth float64) float64 {
	const golden, steps = 0.6180339887498949, 40 // (√5−1)/2, arithmetic; 40 leave 5e-9 of the arc
	apex, _ := r.load(teeth)
	lo, hi := r.Pressure, math.Pi/2
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := r.parabola(teeth, apex, a), r.parabola(teeth, apex, b)
	for range steps {
		if fa < fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = r.parabola(teeth, apex, a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = r.parabola(teeth, apex, b)
		}
	}
	return 2. / 3 * min(fa, fb, r.parabola(teeth, apex, r.Pressure))
}
