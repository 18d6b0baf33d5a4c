package film

import (
	"fmt"
	"math"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// OilHeat is what warms a cubic metre of mineral oil by a kelvin: from memory,
// 1.5 in American texts to 1.8 MJ in DIN 31652. The low end tells the oil warmer.
const OilHeat = 1.51e6 // J/(m³ K), from memory

// OilRise returns how much warmer oil leaves a bearing than it comes in, if it
// carries all the heat: what leaves at the sides has taken half the rise on the way.
//
//	ΔT = power/(ρc·(flow − leakage/2))
//
// ρc is OilHeat.
//
//   - Holds for: cool oil for all that the journal draws in.
//   - Beyond: a housing that sheds heat makes it less; oil that goes round again makes it more, see HousedTemperature.
//   - Source: balance of heat; half the rise at the sides from memory of Raimondi and Boyd, as in Shigley.
func OilRise(power q.Power, flow, leakage q.Flow) (q.TemperatureChange, error) {
	switch {
	case !(power >= 0):
		return 0, refuse("power", fmt.Sprintf("%.6g W", float64(power)), "0 or more")
	case !(flow > 0):
		return 0, refuse("flow", fmt.Sprintf("%.6g L/min", 6e4*float64(flow)), "more than 0")
	case !(leakage >= 0 && leakage <= flow):
		return 0, refuse("leakage", fmt.Sprintf("%.6g L/min", 6e4*float64(leakage)), "from 0 to the flow")
	}
	return q.TemperatureChange(oilRise(float64(power), float64(flow), float64(leakage))), nil
}

func oilRise(power, flow, leakage float64) float64 { return power / (OilHeat * (flow - leakage/2)) }

// Warm is a bearing that has come to its running temperature.
type Warm struct {
	Film        Film
	Temperature q.Temperature // of the oil in the gap
	Leaving     q.Temperature // of the oil that comes out
	Viscosity   q.Viscosity
}

// FedTemperature returns how warm a bearing runs that is fed with oil of a known
// temperature, which carries all its heat away. The viscosity in j is not used: it
// is that of the oil at the temperature found.
//
//	T = T in + ΔT(μ(T))/2, leaving at T in + ΔT
//
// Halved until it meets; friction falls as the oil warms, so there is one answer.
//
//   - Holds for: as Run and OilRise; clearance as it is when warm.
//   - Beyond: an oil so thin that the film is less than a twentieth of the gap before the heat balances is refused; so is over 200 °C.
//   - Source: balance of heat, worked out; OilRise and Oil.ViscosityAt for what it rests on.
func FedTemperature(j Journal, oil Oil, inlet q.Temperature) (Warm, []basis.Note, error) {
	return settle(j, oil, inlet, "temperature of the oil fed", balance{from: float64(inlet)})
}

// HousedTemperature returns how warm a bearing runs that keeps its oil (ring,
// wick, sump) and sheds all its heat through the housing. The viscosity in j is not
// used: it is that of the oil at the temperature found.
//
//	power(μ(T)) = cooling·(T − T air)
//
// Cooling is about 15 to 20 W/K for a square metre of outside in still air (from
// memory of DIN 31652). Halved until it meets.
//
//   - Holds for: as Run; all parts as warm as the oil, clearance as it is when warm.
//   - Beyond: as FedTemperature. The housing is cooler than the film: a cooling on the low side makes up for it. Sun, a hot machine behind or a draught change it more than any formula.
//   - Source: balance of heat, worked out; still air from memory of DIN 31652.
func HousedTemperature(j Journal, oil Oil, air q.Temperature, cooling q.Cooling) (Warm, []basis.Note, error) {
	if !(cooling > 0) {
		return Warm{}, nil, refuse("cooling", fmt.Sprintf("%.4g W/K", float64(cooling)), "more than 0; still air takes 15 to 20 W/K for a square metre")
	}
	return settle(j, oil, air, "temperature of the air", balance{from: float64(air), cooling: float64(cooling)})
}

// balance is what the heat goes into: a housing, or the oil fed where cooling is 0.
type balance struct{ from, cooling float64 }

// rise is how much warmer than from the oil in the gap gets.
func (b balance) rise(r running) float64 {
	if b.cooling > 0 {
		return r.power / b.cooling
	}
	return oilRise(r.power, r.flow, r.leakage) / 2
}

// find halves between from and the hottest. It is NaN where the film ends, or the
// oil does not flow, or the heat has not balanced before.
func (b balance) find(at bare, w law) float64 {
	lo, hi := b.from, float64(hottest)
	at.viscosity = w.viscosity(lo)
	if math.IsNaN(at.viscosity) {
		return math.NaN()
	}
	if _, ok := at.run(); !ok {
		return math.NaN()
	}
	met := false   // whether the upper end is known to shed more than it gets
	for range 45 { // to a hundred-millionth of a kelvin and closer
		mid := lo + (hi-lo)/2
		at.viscosity = w.viscosity(mid)
		r, ok := at.run()
		switch {
		case !ok:
			hi, met = mid, false
		case b.from+b.rise(r) > mid:
			lo = mid
		default:
			hi, met = mid, true
		}
	}
	if !met {
		return math.NaN()
	}
	return lo + (hi-lo)/2
}

func settle(j Journal, oil Oil, from q.Temperature, fromName string, b balance) (Warm, []basis.Note, error) {
	w, err := oil.law()
	if err != nil {
		return Warm{}, nil, err
	}
	start, _, err := oil.ViscosityAt(from)
	if err != nil {
		return Warm{}, nil, refuse(fromName, celsius(from), "one at which the oil flows, from "+celsius(coldest)+" to "+celsius(hottest))
	}
	j.Viscosity = start
	if _, _, err := Run(j); err != nil {
		return Warm{}, nil, err
	}
	t := b.find(j.nums(), w)
	if math.IsNaN(t) {
		return Warm{}, nil, refuse("heat", "more than the bearing sheds before its film is thin", "less: cooler or more oil, more cooling, less load or speed")
	}
	j.Viscosity = q.Viscosity(w.viscosity(t))
	f, notes, err := Run(j)
	if err != nil {
		return Warm{}, nil, err
	}
	out := Warm{Film: f, Temperature: q.Temperature(t), Viscosity: j.Viscosity, Leaving: q.Temperature(t)}
	if b.cooling == 0 {
		out.Leaving = q.Temperature(2*t) - from
	}
	return out, append(notes, oil.thinNote(w, q.Temperature(t))...), nil
}
