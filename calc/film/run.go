package film

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Film is how a bearing runs on its oil.
type Film struct {
	Numbers
	Eccentricity float64  // 0 in the middle, 1 touching
	Least        q.Length // the narrowest gap
	Coefficient  float64  // of friction
	Torque       q.Torque
	Power        q.Power // turned into heat
	Flow         q.Flow  // oil the journal draws in
	Leakage      q.Flow  // of that, what leaves at the sides and must be made up
	Pressure     q.Stress
	Peak         q.Stress // highest pressure in the film
}

// Run returns how a journal runs on a full film.
//
//	ε from S and L/D; least film = C/2·(1 − ε)
//	f = (f·r/c)·C/d, torque = f·F·d/2, power = 2π·n·torque
//	flow = Q'·(d/2)·(C/2)·n·L, leakage = its part, peak = P/(P/peak)
//
// C is the clearance on diameter; the primed numbers are those of At.
//
//   - Holds for: as At: full round, flooded at the widest gap without pressure, steady load, shaft straight and true, viscosity that of the warm oil.
//   - Beyond: as At; flow too fast to be laminar is noted, and a film thinner than TrumplerFilm. Oil pressed in adds flow; a groove under the load halves the bearing; a starved one has less of all.
//   - Source: own table, derived, calc/film/SOURCES.md; limit of laminar flow 41.3·√(r/c) from memory of DIN 31652.
func Run(j Journal) (Film, []basis.Note, error) {
	s, err := SommerfeldNumber(j)
	if err != nil {
		return Film{}, nil, err
	}
	_, notes, err := Eccentricity(s, float64(j.Length/j.Diameter))
	if err != nil {
		return Film{}, nil, err
	}
	r, _ := j.nums().run()
	return r.film(), append(append(notes, j.turbulentNote()...), thinFilmNote(r.least, float64(j.Diameter))...), nil
}

// oilDensity is for judging whether the flow is laminar, where a tenth does not
// matter: from memory of mineral oils, 860 to 920 kg/m³.
const oilDensity = 900.0

// laminar is the Reynolds number up to which a bearing's flow is, over √(r/c):
// from memory of DIN 31652.
const laminar = 41.3

func (j Journal) turbulentNote() []basis.Note {
	b := j.nums()
	re := oilDensity * math.Pi * b.diameter * b.speed * b.clearance / 2 / b.viscosity
	if re <= laminar*math.Sqrt(b.diameter/b.clearance) {
		return nil
	}
	return []basis.Note{{
		Says:   fmt.Sprintf("the oil swirls (Reynolds number %.0f): it rubs more and the film is thicker than told", re),
		Source: "DIN 31652, from memory", Grade: basis.Memory,
	}}
}

func thinFilmNote(least, diameter float64) []basis.Note {
	want := trumpler(diameter)
	if least >= want {
		return nil
	}
	return []basis.Note{{
		Says:   fmt.Sprintf("the film of %.2g µm is less than a designer allows for dirt, %.2g µm; hold it against the roughness", 1e6*least, 1e6*want),
		Source: trumplerSource, Grade: basis.Memory,
	}}
}

// running is a Film in bare numbers.
type running struct {
	Numbers
	eccentricity, least, coefficient, torque, power, flow, leakage, pressure, peak float64
}

// run is false where the table ends.
func (b bare) run() (running, bool) {
	ratio := b.length / b.diameter
	if !(ratio >= leastRatio && ratio <= mostRatio) {
		return running{}, false
	}
	s := sommerfeld(b)
	if !(s > 0 && s < mostSommerfeld) {
		return running{}, false
	}
	e := eccentricityOf(s, ratio)
	if math.IsNaN(e) {
		return running{}, false
	}
	r := running{Numbers: numbersAt(e, ratio), eccentricity: e}
	r.least = b.clearance / 2 * (1 - e)
	r.coefficient = r.Friction * b.clearance / b.diameter
	r.torque = r.coefficient * b.load * b.diameter / 2
	r.power = 2 * math.Pi * b.speed * r.torque
	r.flow = r.Flow * b.diameter / 2 * b.clearance / 2 * b.speed * b.length
	r.leakage = r.Leak * r.flow
	r.pressure = b.load / (b.diameter * b.length)
	r.peak = r.pressure / r.MeanOverPeak
	return r, true
}

func (r running) film() Film {
	return Film{
		Numbers: r.Numbers, Eccentricity: r.eccentricity, Least: q.Length(r.least), Coefficient: r.coefficient,
		Torque: q.Torque(r.torque), Power: q.Power(r.power), Flow: q.Flow(r.flow), Leakage: q.Flow(r.leakage),
		Pressure: q.Stress(r.pressure), Peak: q.Stress(r.peak),
	}
}
