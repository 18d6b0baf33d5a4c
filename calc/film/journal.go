package film

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Journal is a shaft that turns in a full plain bearing with oil between.
type Journal struct {
	Diameter, Length q.Length
	Clearance        q.Length // on diameter, as it runs: warm
	Load             q.Force  // steady, square to the axis
	Speed            q.Rotation
	Viscosity        q.Viscosity // of the oil as warm as it is in the gap
}

// Rubbing is what turning against the oil takes.
type Rubbing struct {
	Torque q.Torque
	Power  q.Power
}

// Petroff returns what turning a journal in the middle of its bearing takes: the
// oil is sheared evenly all round.
//
//	T = π²·μ·d³·L·n/C, power = 2π·n·T
//
// C is the clearance on diameter; the load has no part in it.
//
//   - Holds for: no load or a light one (eccentricity under 0.2), gap full of oil, laminar flow.
//   - Beyond: a journal that runs further off the middle is noted, with what it takes by the table.
//   - Source: Petroff's law, any machine-element text; worked out.
func Petroff(j Journal) (Rubbing, []basis.Note, error) {
	if err := j.check(0); err != nil {
		return Rubbing{}, nil, err
	}
	torque := petroff(j.nums())
	r := Rubbing{Torque: q.Torque(torque), Power: q.Power(2 * math.Pi * float64(j.Speed) * torque)}
	return r, j.heavyNote(torque), nil
}

// light is the eccentricity up to which Petroff is good, from memory of
// machine-element texts; the friction is then 4 % more at the most when L/D is 1.
const light = 0.2

func (j Journal) heavyNote(torque float64) []basis.Note {
	b := j.nums()
	says := ""
	switch r := b.length / b.diameter; {
	case b.load == 0 || b.speed == 0 || sommerfeld(b) >= mostSommerfeld:
		return nil
	case r < leastRatio || r > mostRatio:
		says = "the table does not reach this length, so whether the load is light was not looked at"
	default:
		f, ok := b.run()
		if ok && f.eccentricity <= light {
			return nil
		}
		says = "the load is not light: the film all but breaks, and this is too little"
		if ok {
			says = fmt.Sprintf("the load is not light (eccentricity %.2f): by the table turning takes %.2f times this", f.eccentricity, f.torque/torque)
		}
	}
	return []basis.Note{{Says: says, Source: tableSource, Grade: basis.Extrapolated}}
}

// SommerfeldNumber returns the one number that decides how a full bearing of a
// length ratio runs: large is light, fast or thick oil.
//
//	S = (d/C)²·μ·n·d·L/F
//
// C is the clearance on diameter, so d/C is r/c; n is in turns a second.
//
//   - Holds for: any full bearing; only bearings of one L/D compare.
//   - Beyond: the European number So = F·ψ²/(d·L·μ·ω) is 1/(2π·S).
//   - Source: definition, any machine-element text.
func SommerfeldNumber(j Journal) (float64, error) {
	if err := j.check(leastLoad); err != nil {
		return 0, err
	}
	if !(j.Speed > 0) {
		return 0, refuse("speed", fmt.Sprintf("%.6g rpm", 60*float64(j.Speed)), "more than 0; a shaft that stands has no film")
	}
	return sommerfeld(j.nums()), nil
}

// ViscosityFor returns how thick the oil must be, as warm as it runs, for a film
// of a wanted least thickness. The viscosity in j is not used.
//
//	ε = 1 − 2·h/C, μ = S(ε, L/D)·F·(C/d)²/(n·d·L)
//
// C is the clearance on diameter.
//
//   - Holds for: as At.
//   - Beyond: as At; a film thicker than half the clearance cannot be.
//   - Source: own table, derived, calc/film/SOURCES.md.
func ViscosityFor(leastFilm q.Length, j Journal) (q.Viscosity, []basis.Note, error) {
	j.Viscosity = 1 // Pa s, so that S is what one of it gives
	s, err := SommerfeldNumber(j)
	if err != nil {
		return 0, nil, err
	}
	if !(leastFilm > 0 && leastFilm < j.Clearance/2) {
		return 0, nil, refuse("least film", mm(leastFilm), "more than 0 and less than half the clearance, "+mm(j.Clearance/2))
	}
	n, notes, err := At(1-2*float64(leastFilm/j.Clearance), float64(j.Length/j.Diameter))
	if err != nil {
		return 0, nil, err
	}
	return q.Viscosity(n.Sommerfeld / s), notes, nil
}

// leastLoad is less than any bearing carries: our choice, so that a number can be given.
const leastLoad q.Force = 1e-6

func (j Journal) check(least q.Force) error {
	switch {
	case !(j.Diameter > 0):
		return refuse("diameter", mm(j.Diameter), "more than 0")
	case !(j.Length > 0):
		return refuse("length", mm(j.Length), "more than 0")
	case !(j.Clearance > 0 && j.Clearance < j.Diameter/10):
		return refuse("clearance", mm(j.Clearance), "more than 0 and less than a tenth of the diameter, "+mm(j.Diameter))
	case !(j.Load >= least):
		return refuse("load", fmt.Sprintf("%.6g N", float64(j.Load)), fmt.Sprintf("%g N or more", float64(least)))
	case !(j.Speed >= 0):
		return refuse("speed", fmt.Sprintf("%.6g rpm", 60*float64(j.Speed)), "0 or more")
	case !(j.Viscosity > 0):
		return refuse("viscosity", fmt.Sprintf("%.6g mPa s", 1e3*float64(j.Viscosity)), "more than 0")
	}
	return nil
}

// bare is a Journal in bare numbers.
type bare struct{ diameter, length, clearance, load, speed, viscosity float64 }

func (j Journal) nums() bare {
	return bare{float64(j.Diameter), float64(j.Length), float64(j.Clearance), float64(j.Load), float64(j.Speed), float64(j.Viscosity)}
}

func petroff(b bare) float64 {
	return math.Pi * math.Pi * b.viscosity * b.diameter * b.diameter * b.diameter * b.length * b.speed / b.clearance
}

func sommerfeld(b bare) float64 {
	r := b.diameter / b.clearance
	return r * r * b.viscosity * b.speed * b.diameter * b.length / b.load
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }
