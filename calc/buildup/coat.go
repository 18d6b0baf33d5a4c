package buildup

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Coat is metal put on round: From is the size it is laid on, As the size it
// comes to as deposited, before any cut. RunOut is how far it is carried past
// the worn length at each end.
type Coat struct {
	From, As, Length, RunOut q.Length
}

// ShaftCoat returns the volume of metal of a coat on a shaft, from the undercut
// to the size as deposited.
//
//	V = π/4·(D²−d²)·(L + 2·e)
//
// The ends count full height: a sloped end of the undercut takes a little less.
//
//   - Holds for: a coat of even thickness all round, run out alike at both ends.
//   - Beyond: a worn, untrue shaft takes more where it is low; turn it true first. Refused where the coat adds nothing.
//   - Source: geometry.
func ShaftCoat(c Coat) (q.Volume, error) {
	if err := c.check("undercut size"); err != nil {
		return 0, err
	}
	if !(c.As > c.From) {
		return 0, refuse("size as deposited", mm(c.As), "more than the undercut size, "+mm(c.From))
	}
	return q.Volume(coat(float64(c.From), float64(c.As), float64(c.Length), float64(c.RunOut))), nil
}

// BoreCoat returns the volume of metal of a coat that builds a bore up inwards,
// from the size it is bored out to down to the size as deposited.
//
//	V = π/4·(d²−D²)·(L + 2·e)
//
// All in SI units.
//
//   - Holds for: a coat of even thickness all round; a through bore; for a blind one give half the run-out of its open end.
//   - Beyond: a coat that closes the bore is refused.
//   - Source: geometry.
func BoreCoat(c Coat) (q.Volume, error) {
	if err := c.check("size bored out to"); err != nil {
		return 0, err
	}
	if !(c.As > 0 && c.As < c.From) {
		return 0, refuse("size as deposited", mm(c.As), "more than 0 and less than the size bored out to, "+mm(c.From))
	}
	return q.Volume(coat(float64(c.As), float64(c.From), float64(c.Length), float64(c.RunOut))), nil
}

func (c Coat) check(from string) error {
	switch {
	case !(c.From > 0):
		return refuse(from, mm(c.From), "more than 0")
	case !(c.Length > 0):
		return refuse("worn length", mm(c.Length), "more than 0")
	case !(c.RunOut >= 0):
		return refuse("run-out past each end", mm(c.RunOut), "0 or more")
	}
	return nil
}

// TurnedOff returns the volume of metal a cut takes off a shaft.
//
//	V = π/4·(D²−d²)·L
//
// All in SI units.
//
//   - Holds for: a round coat cut to a round size. Weigh it as swarf or as lost filler.
//   - Beyond: a lumpy deposit gives less; its size as deposited is then the mean one.
//   - Source: geometry.
func TurnedOff(from, to, length q.Length) (q.Volume, error) {
	if !(to > 0) {
		return 0, refuse("size after turning", mm(to), "more than 0")
	}
	if !(from >= to) {
		return 0, refuse("size before turning", mm(from), "at least the size after, "+mm(to))
	}
	if !(length > 0) {
		return 0, refuse("length of cut", mm(length), "more than 0")
	}
	return q.Volume(ring(float64(to), float64(from), float64(length))), nil
}

// BoredOut returns the volume of metal a cut takes out of a bore.
//
//	V = π/4·(d²−D²)·L
//
// All in SI units.
//
//   - Holds for: a round bore cut to a round size.
//   - Beyond: a lumpy deposit gives less; its size as deposited is then the mean one.
//   - Source: geometry.
func BoredOut(from, to, length q.Length) (q.Volume, error) {
	if !(from > 0) {
		return 0, refuse("size before boring", mm(from), "more than 0")
	}
	if !(to >= from) {
		return 0, refuse("size after boring", mm(to), "at least the size before, "+mm(from))
	}
	if !(length > 0) {
		return 0, refuse("length of cut", mm(length), "more than 0")
	}
	return q.Volume(ring(float64(from), float64(to), float64(length))), nil
}

// ring is written so that a thin coat on a thick shaft keeps its digits.
func ring(small, large, length float64) float64 {
	return math.Pi / 4 * (large - small) * (large + small) * length
}

func coat(small, large, length, runOut float64) float64 { return ring(small, large, length+2*runOut) }

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }
