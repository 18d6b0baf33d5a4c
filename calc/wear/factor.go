package wear

import (
	"fmt"
	"math"

	q "wornfit/calc/quantity"
)

// Factor is how much a material wears: volume lost per load and distance, in
// m³/(N m), which is 1/Pa. Books print it in odd units: 1 in³·min/(lbf·ft·h) is
// 2.01e-7.
type Factor float64

// Depth returns the wear of a rubbing face from pressure, sliding speed and time.
//
//	w = K·p·v·t
//
// All in SI units.
//
//   - Holds for: steady rubbing within the material's p, v and pv limits.
//   - Beyond: K varies ten-fold between tests; an order of magnitude, no more.
//   - Source: Archard's law, any text on wear.
func Depth(k Factor, pressure q.Stress, speed q.Speed, time q.Time) (q.Length, error) {
	switch {
	case !(k > 0):
		return 0, refuse("wear factor", perPa(k), "more than 0")
	case !(pressure >= 0):
		return 0, refuse("pressure", fmt.Sprintf("%.6g MPa", float64(pressure)/1e6), "0 or more")
	case !(speed >= 0):
		return 0, refuse("sliding speed", fmt.Sprintf("%.6g m/s", float64(speed)), "0 or more")
	case !(time >= 0):
		return 0, refuse("time", hours(time), "0 or more")
	}
	return q.Length(depth(float64(k), float64(pressure), float64(speed), float64(time))), nil
}

// Bush is a plain bush that rubs without a film.
type Bush struct {
	Bore, Length q.Length
	Load         q.Force
	Speed        q.Speed // sliding
	K            Factor
	Motion       float64 // f1: 1 and more for hard going, 1.0 to 1.5 as motion and load ask
	Surroundings float64 // f2: 1.0 clean and cool, more when hot or dirty
}

// BushLife returns the time until the bush has worn by a depth on the loaded
// side, the wear spread as a cosine round half the bore.
//
//	t = π·d·L·w/(4·f1·f2·K·v·F)
//
// All in SI units.
//
//   - Holds for: boundary-lubricated or dry bushes within the material's p, v and pv limits.
//   - Beyond: K, f1 and f2 are rough; an order of magnitude, no more.
//   - Source: Shigley's Mechanical Engineering Design, chapter 12 (from memory).
func BushLife(b Bush, wear q.Length) (q.Time, error) {
	switch {
	case !(b.Bore > 0):
		return 0, refuse("bore", mm(b.Bore), "more than 0")
	case !(b.Length > 0):
		return 0, refuse("length", mm(b.Length), "more than 0")
	case !(b.Load > 0):
		return 0, refuse("load", fmt.Sprintf("%.6g N", float64(b.Load)), "more than 0")
	case !(b.Speed > 0):
		return 0, refuse("sliding speed", fmt.Sprintf("%.6g m/s", float64(b.Speed)), "more than 0")
	case !(b.K > 0):
		return 0, refuse("wear factor", perPa(b.K), "more than 0")
	case !(b.Motion >= 1):
		return 0, refuse("motion factor", fmt.Sprintf("%.4g", b.Motion), "1 or more")
	case !(b.Surroundings >= 1):
		return 0, refuse("surroundings factor", fmt.Sprintf("%.4g", b.Surroundings), "1 or more")
	case !(wear >= 0):
		return 0, refuse("wear", mm(wear), "0 or more")
	}
	hard := b.Motion * b.Surroundings
	return q.Time(bushLife(float64(b.Bore), float64(b.Length), float64(b.Load), float64(b.Speed), float64(b.K)*hard, float64(wear))), nil
}

func depth(k, pressure, speed, time float64) float64 { return k * pressure * speed * time }

func bushLife(bore, length, load, speed, k, wear float64) float64 {
	return math.Pi * bore * length * wear / (4 * k * speed * load)
}

func perPa(k Factor) string { return fmt.Sprintf("%.4g m³/(N m)", float64(k)) }
