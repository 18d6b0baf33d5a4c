package assembly

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Entry is a shaft about to go into a hub that is too small for it at room
// temperature.
type Entry struct {
	Seat         q.Length // diameter of the joint
	Interference q.Length // on diameter, at room temperature
	Hub          q.Expansion
	Shaft        q.Expansion // not needed where the shaft stays at room temperature
	Room         q.Temperature
}

// HubTemperature returns how hot the hub must be for the shaft to enter with a
// wanted clearance.
//
//	T = room + (δ + gap + αs·d·(shaft − room)) / (αh·d)
//
// A cooled shaft makes the last term negative. A result at or below room means
// that no heat is needed; it comes with a note, and so does a heat above 200 °C.
//
//   - Holds for: parts at one temperature each; linear mean expansion between room and the temperature reached.
//   - Beyond: parts that cool on the way; frost or paste in the gap. Ten degrees can matter.
//   - Source: linear expansion; DIN 7190 uses the same form (from memory).
func HubTemperature(e Entry, gap q.Length, shaft q.Temperature) (q.Temperature, []basis.Note, error) {
	if err := e.check(gap, "clearance wanted"); err != nil {
		return 0, nil, err
	}
	if err := e.shaftAt(shaft); err != nil {
		return 0, nil, err
	}
	t := q.Temperature(hubTemperature(float64(e.Seat), float64(e.Interference), float64(gap), float64(e.Hub), float64(e.Shaft), float64(e.Room), float64(shaft)))
	if t > e.Room {
		return t, tooHot(t), nil
	}
	return t, []basis.Note{{Says: "the shaft goes in with this clearance without heating the hub", Source: "linear expansion", Grade: basis.Derived}}, nil
}

// EntryGap returns the clearance on diameter with hub and shaft at given
// temperatures. Less than 0 means that the shaft does not enter; it comes with
// a note.
//
//	gap = αh·d·(hub − room) − αs·d·(shaft − room) − δ
//
// All in SI units.
//
//   - Holds for: parts at one temperature each; linear mean expansion.
//   - Beyond: parts that cool on the way; frost or paste in the gap.
//   - Source: linear expansion.
func EntryGap(e Entry, hub, shaft q.Temperature) (q.Length, []basis.Note, error) {
	if err := e.check(0, "clearance"); err != nil {
		return 0, nil, err
	}
	if !(hub > 0) {
		return 0, nil, refuse("temperature of the hub", celsius(hub), "above absolute zero")
	}
	if err := e.shaftAt(shaft); err != nil {
		return 0, nil, err
	}
	gap := q.Length(entryGap(float64(e.Seat), float64(e.Interference), float64(e.Hub), float64(e.Shaft), float64(e.Room), float64(hub), float64(shaft)))
	if gap >= 0 {
		return gap, nil, nil
	}
	return gap, []basis.Note{{Says: "the shaft does not go in: it is still " + mm(-gap) + " too large", Source: "linear expansion", Grade: basis.Derived}}, nil
}

// ShaftTemperature returns how cold the shaft must be to enter a hub at room
// temperature with a wanted clearance.
//
//	T = room − (δ + gap) / (αs·d)
//
// All in SI units.
//
//   - Holds for: linear mean expansion between room and the cold; the mean of steel down to dry ice is 0.84 of the warm one, down to nitrogen 0.77.
//   - Beyond: what no cold reaches is refused at absolute zero; colder than dry ice or than nitrogen comes with a note.
//   - Source: linear expansion.
func ShaftTemperature(e Entry, gap q.Length) (q.Temperature, []basis.Note, error) {
	if err := e.check(gap, "clearance wanted"); err != nil {
		return 0, nil, err
	}
	if !(e.Shaft > 0) {
		return 0, nil, refuse("expansion of the shaft", perKelvin(e.Shaft), "more than 0")
	}
	t := q.Temperature(shaftTemperature(float64(e.Seat), float64(e.Interference), float64(gap), float64(e.Shaft), float64(e.Room)))
	if !(t > 0) {
		return 0, nil, refuse("interference and clearance together", mm(e.Interference+gap), "less than the shaft shrinks down to absolute zero; heat the hub as well")
	}
	return t, tooCold(t), nil
}

func (e Entry) check(gap q.Length, name string) error {
	switch {
	case !(e.Seat > 0):
		return refuse("seat", mm(e.Seat), "more than 0")
	case !(e.Interference >= 0 && e.Interference < e.Seat/10):
		return refuse("interference", mm(e.Interference), "0 or more and less than a tenth of the seat, "+mm(e.Seat))
	case !(gap >= 0 && gap < e.Seat/10):
		return refuse(name, mm(gap), "0 or more and less than a tenth of the seat, "+mm(e.Seat))
	case !(e.Hub > 0):
		return refuse("expansion of the hub", perKelvin(e.Hub), "more than 0")
	case !(e.Room > 0):
		return refuse("room temperature", celsius(e.Room), "above absolute zero")
	}
	return nil
}

func (e Entry) shaftAt(shaft q.Temperature) error {
	if !(shaft > 0) {
		return refuse("temperature of the shaft", celsius(shaft), "above absolute zero")
	}
	if shaft != e.Room && !(e.Shaft > 0) {
		return refuse("expansion of the shaft", perKelvin(e.Shaft), "more than 0 for a shaft that is not at room temperature")
	}
	return nil
}

func hubTemperature(seat, interference, gap, hub, shaft, room, shaftAt float64) float64 {
	return room + ((interference+gap)/seat+shaft*(shaftAt-room))/hub
}

func entryGap(seat, interference, hub, shaft, room, hubAt, shaftAt float64) float64 {
	return seat*(hub*(hubAt-room)-shaft*(shaftAt-room)) - interference
}

func shaftTemperature(seat, interference, gap, shaft, room float64) float64 {
	return room - (interference+gap)/(shaft*seat)
}

func refuse(name, value, want string) error {
	return &basis.Refusal{Name: name, Value: value, Want: want}
}

func mm(l q.Length) string { return fmt.Sprintf("%.6g mm", 1e3*float64(l)) }

func celsius(t q.Temperature) string { return fmt.Sprintf("%.5g °C", float64(t)-273.15) }

func perKelvin(a q.Expansion) string { return fmt.Sprintf("%.4g µm per m and K", 1e6*float64(a)) }
