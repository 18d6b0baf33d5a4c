// Package machining answers: how long does the tool cut?
//
// Start with TurnDown and BoreOut for a whole cut from one size to another,
// with PassTime where the lathe's speed is set by hand. Only the time in the cut
// is given: setting up, measuring and changing tools are steps of their own.
// Lengths should include the tool's run-up and run-out. What speed, feed and
// depth a metal and a machine stand is not answered here.
package machining

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Cut is a cylinder cut from one diameter to another at one cutting speed.
type Cut struct {
	From, To, Length q.Length // diameters before and after; length with run-up and run-out
	Speed            q.Speed  // cutting speed at the surface
	Feed             q.Length // per revolution
	Depth            q.Length // of one pass, per side
}

const source = "arithmetic: length over feed times turns; form as in Kyocera catalogue 2021-2022, basic formulas for turning"

// Turns returns how fast the work must turn for a cutting speed at a diameter.
//
//	n = V / (π·D)
//
// Limits and source:
//
//   - Holds for: any diameter above 0; V at that diameter.
//   - Beyond: a cutting speed over 20 m/s (1200 m/min) brings a note: it may have been meant per minute.
//   - Source: arithmetic; Groover, Fundamentals of Modern Manufacturing, ch. 22.
func Turns(diameter q.Length, speed q.Speed) (q.Rotation, []basis.Note, error) {
	if err := first(above0("diameter", showMM, diameter), above0("cutting speed", showSpeed, speed)); err != nil {
		return 0, nil, err
	}
	return q.Rotation(float64(speed) / (math.Pi * float64(diameter))), doubts(speed, 0), nil
}

// CuttingSpeed returns the speed of the surface under the tool.
//
//	V = π·D·n
//
// Limits and source:
//
//   - Holds for: any diameter and speed of rotation above 0.
//   - Beyond: refused.
//   - Source: arithmetic; Mitsubishi Materials, formulas for turning.
func CuttingSpeed(diameter q.Length, turns q.Rotation) (q.Speed, error) {
	if err := first(above0("diameter", showMM, diameter), above0("speed of rotation", showTurns, turns)); err != nil {
		return 0, err
	}
	return q.Speed(math.Pi * float64(diameter) * float64(turns)), nil
}

// PassTime returns the time of one pass of a tool at a set speed of rotation:
// turning, boring, drilling or reaming alike.
//
//	t = L / (f·n)
//
// Limits and source:
//
//   - Holds for: L, f and n above 0.
//   - Beyond: a feed over 2 mm per turn brings a note.
//   - Source: arithmetic; Mitsubishi Materials, formulas for turning.
func PassTime(length, feed q.Length, turns q.Rotation) (q.Time, []basis.Note, error) {
	err := first(above0("length of cut", showMM, length), above0("feed per turn", showMM, feed), above0("speed of rotation", showTurns, turns))
	if err != nil {
		return 0, nil, err
	}
	return q.Time(float64(length) / (float64(feed) * float64(turns))), doubts(0, feed), nil
}

// Passes returns how many passes take off a stock at no more than a depth each.
//
//	N = stock / (2·depth), rounded up
//
// The stock is on diameter, the depth per side.
//
//   - Holds for: stock from 0 up, depth above 0.
//   - Beyond: refused; more than 1000 passes too.
//   - Source: arithmetic; Kyocera catalogue 2021-2022, basic formulas for turning.
func Passes(stock, depth q.Length) (int, error) {
	if !(stock >= 0) || math.IsInf(float64(stock), 0) {
		return 0, refuse("stock on diameter", showMM(stock), "0 or more")
	}
	if err := above0("depth of a pass", showMM, depth); err != nil {
		return 0, err
	}
	n := passes(float64(stock), float64(depth))
	if !(n <= 1000) {
		return 0, refuse("depth of a pass", showMM(depth), "deep enough for 1000 passes, "+showMM(stock/2000)+" or more")
	}
	return int(n), nil
}

// passes forgives a billionth of a pass, so that 0.6 in three 0.1 deep stays three.
func passes(stock, depth float64) float64 { return math.Ceil(stock/(2*depth) - 1e-9) }

// TurnDown returns the time in the cut of turning a shaft down at one cutting
// speed, all passes alike.
//
//	t = N·π·L·(D1+D2)/2 / (f·V),  N = (D1-D2)/(2·depth) rounded up
//
// Limits and source:
//
//   - Holds for: D1 at least D2; a lathe that keeps the cutting speed. At a fixed
//     speed of rotation count Passes times PassTime.
//   - Beyond: refused; doubtful speeds and feeds bring a note.
//   - Source: Kyocera catalogue 2021-2022, basic formulas for turning, multi-pass at constant cutting speed.
func TurnDown(c Cut) (q.Time, []basis.Note, error) {
	if !(c.To <= c.From) {
		return 0, nil, refuse("size after turning", showMM(c.To), "at most the size before, "+showMM(c.From))
	}
	return c.time(c.From - c.To)
}

// BoreOut returns the time in the cut of boring a hole out at one cutting
// speed, all passes alike.
//
//	t = N·π·L·(D1+D2)/2 / (f·V),  N = (D2-D1)/(2·depth) rounded up
//
// Limits and source:
//
//   - Holds for: D2 at least D1, the hole through or the length to its bottom.
//   - Beyond: refused; doubtful speeds and feeds bring a note.
//   - Source: Kyocera catalogue 2021-2022, basic formulas for turning, multi-pass at constant cutting speed.
func BoreOut(c Cut) (q.Time, []basis.Note, error) {
	if !(c.To >= c.From) {
		return 0, nil, refuse("size after boring", showMM(c.To), "at least the size before, "+showMM(c.From))
	}
	return c.time(c.To - c.From)
}

func (c Cut) time(stock q.Length) (q.Time, []basis.Note, error) {
	err := first(
		above0("size before the cut", showMM, c.From), above0("size after the cut", showMM, c.To),
		above0("length of cut", showMM, c.Length), above0("cutting speed", showSpeed, c.Speed), above0("feed per turn", showMM, c.Feed),
	)
	if err != nil {
		return 0, nil, err
	}
	n, err := Passes(stock, c.Depth)
	if err != nil {
		return 0, nil, err
	}
	mean := float64(c.From+c.To) / 2
	return q.Time(float64(n) * math.Pi * float64(c.Length) * mean / (float64(c.Feed) * float64(c.Speed))), doubts(c.Speed, c.Feed), nil
}

// Above these a slip of units is likelier than a cut: common practice, no source.
const (
	fastest = 20   // m/s
	coarse  = 2e-3 // m per turn
)

func doubts(speed q.Speed, feed q.Length) (out []basis.Note) {
	if speed > fastest {
		out = append(out, basis.Note{Says: showSpeed(speed) + " is faster than lathe tools cut: was it meant per minute?", Source: "common practice, no source", Grade: basis.Practice})
	}
	if feed > coarse {
		out = append(out, basis.Note{Says: showMM(feed) + " per turn is coarser than lathes feed", Source: "common practice, no source", Grade: basis.Practice})
	}
	return out
}

func above0[T ~float64](name string, show func(T) string, x T) error {
	if !(x > 0) || math.IsInf(float64(x), 0) {
		return refuse(name, show(x), "above 0")
	}
	return nil
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func showMM(x q.Length) string      { return fmt.Sprintf("%.6g mm", float64(x)*1e3) }
func showSpeed(v q.Speed) string    { return fmt.Sprintf("%.6g m/min", float64(v)*60) }
func showTurns(n q.Rotation) string { return fmt.Sprintf("%.6g rpm", float64(n)*60) }
