package assembly

import (
	"math"
	"strconv"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Joining is a hot hub that has just been slid over a cold shaft: the clock starts
// here. What was lost on the way to the shaft is for Carried to say.
type Joining struct {
	Seat           q.Length // diameter of the joint
	ShaftBore      q.Length // 0 for a solid shaft
	Outside, Width q.Length // of the hub; the width is along the shaft
	Interference   q.Length // on diameter, at room temperature
	Rough          q.Length // the gap that peaks of roughness leave where the parts touch: Peaks
	Hub, Shaft     Metal
	Film           q.Film // what rim and faces of the hub lose to the air: StillAir, or 0 for nothing
	HubAt, ShaftAt q.Temperature
	Room           q.Temperature // at which the interference was gauged; the air too
}

// Lie is how the hub lies over the shaft while its bore closes.
type Lie uint8

const (
	Centred  Lie = iota // an even gap of air all round: the most to hope for
	Touching            // on one side, as parts mostly do: the time to be home in
	Bare                // metal on metal all round: the least there can be
)

// Peaks is the residual gap of turned or ground faces: common practice, no source.
// With 1 or 8 µm in its place a centred hub has a tenth less or a quarter more
// time, one that touches a third less or half as much again.
const Peaks q.Length = 3e-6

// Gap conductance. Air: 0.0263 W/(m K) at 300 K, growing as its temperature to the
// power 0.85: within 3 % of 0.0181 at 200 K, 0.0338 at 400 and 0.0469 at 600, from
// memory of Incropera's table of air. Radiation: Stefan and
// Boltzmann's number, from memory of CODATA; two dull faces pass on about half of
// what black ones do, common practice, no source.
const (
	airAt300 = 0.0263   // W/(m K), from memory of Incropera's table of air
	airGrows = 0.85     // from memory of the same table
	stefan   = 5.670e-8 // W/(m² K⁴), from memory of CODATA
	dull     = 0.5      // common practice, no source
)

// film is what a square metre of the gap passes on for each kelvin, with the gap
// on radius; infinite for bare metal.
func (l Lie) film(gap, rough, hub, shaft float64) float64 {
	mid := (hub + shaft) / 2
	air := airAt300 * math.Pow(mid/300, airGrows)
	glow := dull * stefan * (hub*hub + shaft*shaft) * (hub + shaft)
	gap = max(gap, 0)
	switch l {
	case Centred:
		return air/(gap+rough) + glow
	case Touching:
		return air/math.Sqrt(rough*(rough+2*gap)) + glow
	}
	return math.Inf(1)
}

// gap is the gap on radius when the two are at these mean temperatures: for a
// ring free of stress exact whatever its temperature is from bore to rim.
func (j *Joining) gap(hub, shaft float64) float64 {
	a, room := float64(j.Seat)/2, float64(j.Room)
	return a*(float64(j.Hub.Expansion)*(hub-room)-float64(j.Shaft.Expansion)*(shaft-room)) - float64(j.Interference)/2
}

// lag is how far the mean of a ring or solid shaft trails behind the face that
// passes the heat, for each watt to the square metre of it, once the heat has
// spread: face is the radius it passes at, far the one it does not.
func lag(face, far, conductivity float64) float64 {
	if far == 0 {
		return face / (4 * conductivity)
	}
	f2, r2 := face*face, far*far
	trails := r2*r2*math.Log(face/far) - (3*r2-f2)*(f2-r2)/4
	return face / conductivity * math.Abs(trails) / ((f2 - r2) * (f2 - r2)) // below 0 where the face is the inner one
}

func (j *Joining) check(lie Lie) error {
	switch {
	case lie > Bare:
		return refuse("lie", strconv.Itoa(int(lie)), "Centred, Touching or Bare")
	case !(j.Seat > 0):
		return refuse("seat", mm(j.Seat), "more than 0")
	case !(j.ShaftBore >= 0 && j.ShaftBore <= j.Seat*9/10):
		return refuse("bore of the shaft", mm(j.ShaftBore), "0 or more and no more than nine tenths of the seat, "+mm(j.Seat))
	case !(j.Outside >= j.Seat*11/10):
		return refuse("outside of the hub", mm(j.Outside), "at least 1.1 times the seat, "+mm(j.Seat))
	case !(j.Width > 0):
		return refuse("width of the hub", mm(j.Width), "more than 0")
	case !(j.Interference > 0 && j.Interference < j.Seat/10):
		return refuse("interference", mm(j.Interference), "more than 0, or nothing grabs, and less than a tenth of the seat, "+mm(j.Seat))
	case !(j.Rough > 0 && j.Rough < j.Seat/100):
		return refuse("gap of the roughness", mm(j.Rough), "more than 0 and less than a hundredth of the seat, "+mm(j.Seat))
	case !(j.Film >= 0):
		return refuse("film", film(j.Film), "0 or more")
	case !(j.Hub.Expansion > 0):
		return refuse("expansion of the hub", perKelvin(j.Hub.Expansion), "more than 0")
	case !(j.Shaft.Expansion > 0):
		return refuse("expansion of the shaft", perKelvin(j.Shaft.Expansion), "more than 0")
	}
	if err := j.Hub.conducts("hub"); err != nil {
		return err
	}
	if err := j.Shaft.conducts("shaft"); err != nil {
		return err
	}
	return j.enters()
}

func (j *Joining) enters() error {
	if err := aboveZero(map[string]q.Temperature{"room temperature": j.Room, "temperature of the hub": j.HubAt, "temperature of the shaft": j.ShaftAt}); err != nil {
		return err
	}
	if !(j.HubAt > j.ShaftAt) {
		return refuse("temperature of the hub", celsius(j.HubAt), "hotter than the shaft, "+celsius(j.ShaftAt))
	}
	if !(j.gap(float64(j.HubAt), float64(j.ShaftAt)) > 0) {
		least := hubTemperature(float64(j.Seat), float64(j.Interference), 0, float64(j.Hub.Expansion), float64(j.Shaft.Expansion), float64(j.Room), float64(j.ShaftAt))
		return refuse("temperature of the hub", celsius(j.HubAt), "more than "+celsius(q.Temperature(least))+", or it does not go on")
	}
	return nil
}

// stays is the refusal of a joint that does not close.
func (j *Joining) stays() error {
	return refuse("interference", mm(j.Interference), "enough to close the gap while the hub cools; here it stays open")
}

const grabs = "radial conduction through the closing gap; worked out"

func (j *Joining) notes() []basis.Note {
	if j.HubAt <= 773.15 && j.ShaftAt >= 70 {
		return nil
	}
	return []basis.Note{{Says: "hub or shaft is beyond -200 to 500 °C, for which mean properties were tried", Source: grabs, Grade: basis.Extrapolated}}
}
