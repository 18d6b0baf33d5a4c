package film_test

import (
	"fmt"
	"math"

	"wornfit/calc/film"
)

func ExampleSommerfeldNumber() {
	// A pump journal 40 by 40, 0.05 loose, 1.6 kN, 1500 rpm, oil of 25 mPa s: 800²·0.025·25·0.0016/1600.
	s, err := film.SommerfeldNumber(film.Journal{Diameter: 0.040, Length: 0.040, Clearance: 50e-6, Load: 1600, Speed: 25, Viscosity: 0.025})
	fmt.Printf("S = %.2f %v\n", s, err)
	// Output: S = 0.40 <nil>
}

func ExampleAt() {
	// Half as long as thick, six tenths off the middle, a row of the table: friction 2π²·0.3189/0.8 + 0.3·sin 48.05°.
	n, _, err := film.At(0.6, 0.5)
	fmt.Printf("S %.4f, narrowest %.0f° from the load, friction %.2f of C/d %v\n", n.Sommerfeld, n.Attitude*180/math.Pi, n.Friction, err)
	// Output: S 0.3189, narrowest 48° from the load, friction 8.09 of C/d <nil>
}

func ExampleEccentricity() {
	// As long as thick, the table has 0.04452 at 0.8; the gap is 25 µm all round when centred: 25·(1 − 0.8).
	e, _, err := film.Eccentricity(0.04452, 1)
	fmt.Printf("%.2f off the middle, of 50 µm on diameter a film of %.1f µm is left %v\n", e, 25*(1-e), err)
	// Output: 0.80 off the middle, of 50 µm on diameter a film of 5.0 µm is left <nil>
}

func ExampleViscosityFor() {
	// A pump bush 40 by 20, 0.06 loose, 500 N, 1200 rpm, 12 µm wanted: ε = 1 − 24/60; 0.3189·500·0.0015²/(20·0.04·0.02).
	μ, _, err := film.ViscosityFor(12e-6, film.Journal{Diameter: 0.040, Length: 0.020, Clearance: 60e-6, Load: 500, Speed: 20})
	fmt.Printf("oil of %.1f mPa s, as warm as it runs %v\n", 1e3*μ, err)
	// Output: oil of 22.4 mPa s, as warm as it runs <nil>
}

func ExampleClosedLoad() {
	// ε 0.6, B/D 0.5: 0.1831·3.475·0.7734; the table's is 1/(2π·0.3189).
	so, err := film.ClosedLoad(0.6, 0.5)
	n, _, _ := film.At(0.6, 0.5)
	fmt.Printf("So %.3f by the formula, %.3f by the table %v\n", so, 1/(2*math.Pi*n.Sommerfeld), err)
	// Output: So 0.492 by the formula, 0.499 by the table <nil>
}

func ExampleOil_ViscosityAt() {
	// An oil VG 32 at 60 °C: log log = 0.1803 − 3.7466·0.02689 makes 15.19 mm²/s, times 870·(1 − 0.00065·45) kg/m³.
	oil := film.Oil{Cool: film.Reading{At: 313.15, Viscosity: 32e-6}, Warm: film.Reading{At: 373.15, Viscosity: 5.4e-6}, Density: 870}
	μ, _, err := oil.ViscosityAt(333.15)
	fmt.Printf("%.1f mPa s %v\n", 1e3*μ, err)
	// Output: 12.8 mPa s <nil>
}

func ExampleFilmRatio() {
	// A film of 12 µm between a ground pin of Rq 0.5 and a reamed bush of Rq 1.2: 12/1.3.
	λ, err := film.FilmRatio(12e-6, 0.5e-6, 1.2e-6)
	fmt.Printf("%.1f times the roughness %v\n", λ, err)
	// Output: 9.2 times the roughness <nil>
}

func ExampleRegimeOf() {
	// The same pin and bush as the oil warms, 12, 2 and 1 µm of film: 9.2, 1.5 and 0.8 times the roughness.
	for _, least := range []float64{12, 2, 1} {
		regime, _, err := film.RegimeOf(least / 1.3)
		fmt.Printf("%.0f µm: %s %v\n", least, regime, err)
	}
	// Output:
	// 12 µm: full <nil>
	// 2 µm: mixed <nil>
	// 1 µm: boundary <nil>
}

func ExampleTrumplerFilm() {
	// A ground spindle of 50: 5 + 0.04·50 µm.
	h, _, err := film.TrumplerFilm(0.050)
	fmt.Printf("%.0f µm or more %v\n", 1e6*h, err)
	// Output: 7 µm or more <nil>
}

func ExampleOilRise() {
	// 42 W into 0.12 L/min, half of which leaves at the sides: 42/(1.51·0.09/0.06) K.
	ΔT, err := film.OilRise(42, 0.12/6e4, 0.06/6e4)
	fmt.Printf("the oil leaves %.1f K warmer %v\n", ΔT, err)
	// Output: the oil leaves 18.5 K warmer <nil>
}

func ExampleFedTemperature() {
	// A blower journal, VG 46 fed at 56 °C; a search, worked back from ε 0.6: 14.68 mPa s at 65.1 °C; 68 W in 0.224·(1 − 0.34) L/min, 18.2 K.
	oil := film.Oil{Cool: film.Reading{At: 313.15, Viscosity: 46e-6}, Warm: film.Reading{At: 373.15, Viscosity: 6.8e-6}, Density: 875}
	w, _, err := film.FedTemperature(film.Journal{Diameter: 0.060, Length: 0.060, Clearance: 60e-6, Load: 7000, Speed: 16}, oil, 329.15)
	fmt.Printf("%.0f °C in the gap, %.0f leaving, film %.0f µm, %.0f W %v\n", w.Temperature-273.15, w.Leaving-273.15, 1e6*w.Film.Least, w.Film.Power, err)
	// Output: 65 °C in the gap, 74 leaving, film 12 µm, 68 W <nil>
}

func ExampleHalfOf() {
	// A 50 by 50 bearing with a groove 6 wide all round: two of 22, each with half of 2 kN.
	half, err := film.HalfOf(film.Journal{Diameter: 0.05, Length: 0.05, Clearance: 50e-6, Load: 2000, Speed: 10, Viscosity: 0.04}, 0.006)
	fmt.Printf("%.0f mm, %.0f N, %v\n", 1e3*half.Length, half.Load, err)
	// Output: 22 mm, 1000 N, <nil>
}

func ExampleHoleLies() {
	// A grease hole a quarter turn before the load.
	carries, _, err := film.HoleLies(-math.Pi / 2)
	fmt.Println(carries, err)
	// Output: false <nil>
}
