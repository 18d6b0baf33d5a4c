package assembly

import (
	"math"

	q "wornfit/calc/quantity"
)

// Soak is a long round bar or a wide plate put from one temperature into another.
type Soak struct {
	Metal  Metal
	Half   q.Length // radius of the bar, half the thickness of the plate
	Film   q.Film
	From   q.Temperature
	Around q.Temperature
}

// Soaked is how far a part has come.
type Soaked struct {
	There q.Temperature // at the place asked for
	Mean  q.Temperature // over the whole section: what its size goes by
}

// terms is the most roots the series are given: enough to 1e-12 from a Fourier
// number of 1e-4 up, our choice.
const terms = 200

// leastFourier is our choice: before it heat has reached a hundredth of the way in.
const leastFourier = 1e-4

// CylinderSoak returns the temperature of a long round bar at a distance from its
// middle, and its mean, a time after it was put elsewhere.
//
//	Θ = Σ 2·Bi / ((z² + Bi²)·J0(z)) · J0(z·r/R) · exp(−z²·Fo),  z·J1(z) = Bi·J0(z)
//	mean Θ = Σ 4·Bi² / (z²·(z² + Bi²)) · exp(−z²·Fo)
//
// Bi = h·R/k, Fo = k·t/(ρ·c·R²), Θ the part of the difference that is left.
//
//   - Holds for: a bar of four diameters or longer; one film all round; properties that do not change.
//   - Beyond: a short bar is quicker, through its ends. A time too short for the series (Fo below 0.0001) is refused.
//   - Source: Carslaw and Jaeger, Conduction of Heat in Solids (from memory); Holman, Example 4.7, agrees as near as charts are read.
func CylinderSoak(s Soak, fromMiddle q.Length, time q.Time) (Soaked, error) {
	return s.soak(fromMiddle, time, cylinderLeft)
}

// PlateSoak returns the temperature of a wide plate at a distance from its middle,
// and its mean, a time after it was put elsewhere.
//
//	Θ = Σ 4·sin z / (2·z + sin 2z) · cos(z·x/L) · exp(−z²·Fo),  z·tan z = Bi
//	mean Θ = Σ 4·sin²z / (z·(2·z + sin 2z)) · exp(−z²·Fo)
//
// Bi = h·L/k, Fo = k·t/(ρ·c·L²), L half the thickness. A plate with one face
// insulated is half of one twice as thick.
//
//   - Holds for: a plate four times as wide as thick; the same film on both faces; properties that do not change.
//   - Beyond: edges are quicker. A time too short for the series (Fo below 0.0001) is refused.
//   - Source: Carslaw and Jaeger, Conduction of Heat in Solids (from memory); Incropera, Example 5.4, and Cengel, Example 4-4, agree.
func PlateSoak(s Soak, fromMiddle q.Length, time q.Time) (Soaked, error) {
	return s.soak(fromMiddle, time, plateLeft)
}

func (s Soak) soak(at q.Length, time q.Time, left func(bi, fo, x float64) (there, mean float64)) (Soaked, error) {
	if err := (Body{Metal: s.Metal, Depth: s.Half, Film: s.Film}).check(); err != nil {
		return Soaked{}, err
	}
	if err := aboveZero(map[string]q.Temperature{"temperature at first": s.From, "temperature around": s.Around}); err != nil {
		return Soaked{}, err
	}
	if !(at >= 0 && at <= s.Half) {
		return Soaked{}, refuse("distance from the middle", mm(at), "from 0 to the surface, "+mm(s.Half))
	}
	fo := s.perSecond() * float64(time)
	if !(fo >= leastFourier) || math.IsInf(fo, 1) {
		return Soaked{}, refuse("time", seconds(time), "long enough for heat to be on its way in, at least "+seconds(q.Time(leastFourier/s.perSecond())))
	}
	there, mean := left(s.biot(), fo, float64(at/s.Half))
	apart := s.From - s.Around
	return Soaked{There: s.Around + apart*q.Temperature(there), Mean: s.Around + apart*q.Temperature(mean)}, nil
}

// perSecond is by how much the Fourier number grows in a second.
func (s Soak) perSecond() float64 {
	return float64(s.Metal.Conductivity) / s.Metal.heat() / float64(s.Half*s.Half)
}

func (s Soak) biot() float64 {
	return float64(s.Film) * float64(s.Half) / float64(s.Metal.Conductivity)
}

func cylinderLeft(bi, fo, x float64) (there, mean float64) {
	off := func(z float64) float64 { return z*math.J1(z) - bi*math.J0(z) }
	for n := range terms {
		// One root lies between each multiple of π and the next: past the zero
		// of J1, before that of J0.
		z := root(off, float64(n)*math.Pi, float64(n+1)*math.Pi)
		fades := math.Exp(-z * z * fo)
		there += 2 * bi / ((z*z + bi*bi) * math.J0(z)) * math.J0(z*x) * fades
		mean += 4 * bi * bi / (z * z * (z*z + bi*bi)) * fades
		if fades < 1e-14 {
			break
		}
	}
	return there, mean
}

func plateLeft(bi, fo, x float64) (there, mean float64) {
	off := func(z float64) float64 { return z*math.Sin(z) - bi*math.Cos(z) }
	for n := range terms {
		z := root(off, float64(n)*math.Pi, (float64(n)+0.5)*math.Pi)
		fades := math.Exp(-z * z * fo)
		weight := 4 * math.Sin(z) / (2*z + math.Sin(2*z)) * fades
		there += weight * math.Cos(z*x)
		mean += weight * math.Sin(z) / z
		if fades < 1e-14 {
			break
		}
	}
	return there, mean
}

// root halves the bracket until nothing is left of it.
func root(f func(float64) float64, lo, hi float64) float64 {
	below := f(hi) < 0
	for range 60 {
		mid := (lo + hi) / 2
		if f(mid) < 0 == below {
			hi = mid
		} else {
			lo = mid
		}
	}
	return (lo + hi) / 2
}
