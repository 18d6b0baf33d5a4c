package bearing

import (
	"fmt"

	"wornfit/calc/basis"
	"wornfit/calc/interference"
	q "wornfit/calc/quantity"
)

// Bushed is a shaft running in a bush pressed into a housing. Sizes are those
// at gauging temperature with the bush in place; Warmer is above it.
type Bushed struct {
	Shaft     q.Length
	Clearance q.Length // cold, on diameter
	Press     q.Length // interference of bush in housing

	Bush          interference.Ring
	Housing       q.Length // outside diameter of the housing round the bush
	HousingMetal  interference.Elastic
	ShaftExpands  q.Expansion
	BushWarmer    q.TemperatureChange
	HousingWarmer q.TemperatureChange
	ShaftWarmer   q.TemperatureChange
}

// Running is what a warm bearing has come to.
type Running struct {
	Clearance  q.Length // hot; less than 0 is seized
	BoreGrows  q.Length
	ShaftGrows q.Length
	Press      q.Stress // bush on housing, hot
	PressCold  q.Stress
}

// HotClearance returns the clearance a bushed bearing runs with when bush,
// housing and shaft have warmed by different amounts. A bush held in a housing
// that expands less cannot grow as a free one would: it takes clearance.
//
//	hot = cold + bore·[αb·Tb − (p hot − p cold)·(k+1)/Eb] − αs·shaft·Ts
//	p = (press/b + αb·Tb − αh·Th) / (bush give + housing give), 0 if less
//
// All in SI units.
//
//   - Holds for: elastic parts, each at one temperature, housing of even wall and as long as the bush; plane stress.
//   - Beyond: a bush that comes loose or a shaft that seizes is noted. A bush that yields hot is loose when cold again.
//   - Source: Lamé's thick ring with heat; worked out, held to interference.Press by a test.
func HotClearance(b Bushed) (Running, []basis.Note, error) {
	r, err := b.run()
	if err != nil {
		return Running{}, nil, err
	}
	return r, r.notes(), nil
}

func (b Bushed) run() (Running, error) {
	if err := b.check(); err != nil {
		return Running{}, err
	}
	bush, err := interference.ShaftGive(b.Bush)
	if err != nil {
		return Running{}, err
	}
	housing, err := interference.HubGive(interference.Ring{Bore: b.Bush.Outside, Outside: b.Housing, Elastic: b.HousingMetal})
	if err != nil {
		return Running{}, err
	}
	grip := seated{
		bore: float64(b.Bush.Bore), outside: float64(b.Bush.Outside), e: float64(b.Bush.E),
		gives: float64(bush + housing), press: float64(b.Press),
	}
	free := float64(b.Bush.Alpha) * float64(b.BushWarmer)
	cold, hot, grows := grip.warm(free, float64(b.HousingMetal.Alpha)*float64(b.HousingWarmer))
	r := Running{
		BoreGrows:  q.Length(grows),
		ShaftGrows: b.Shaft * q.Length(float64(b.ShaftExpands)*float64(b.ShaftWarmer)),
		Press:      q.Stress(hot), PressCold: q.Stress(cold),
	}
	r.Clearance = b.Clearance + r.BoreGrows - r.ShaftGrows
	return r, nil
}

func (r Running) notes() []basis.Note {
	var notes []basis.Note
	if r.Press == 0 {
		notes = append(notes, basis.Note{Says: "the warm bush no longer presses on its housing", Source: "layer solution", Grade: basis.Derived})
	}
	if r.Clearance <= 0 {
		notes = append(notes, basis.Note{Says: "the warm shaft has no clearance left: it lacks " + mm(-r.Clearance), Source: "layer solution", Grade: basis.Derived})
	}
	return notes
}

func (b Bushed) check() error {
	if err := positive("shaft", b.Shaft); err != nil {
		return err
	}
	if !(b.Clearance >= 0 && b.Clearance < b.Shaft/10) {
		return refuse("cold clearance", mm(b.Clearance), "0 or more and less than a tenth of the shaft, "+mm(b.Shaft))
	}
	if !(b.Bush.Bore > 0) {
		return refuse("bore of the bush", mm(b.Bush.Bore), "more than 0")
	}
	if !(b.Press >= 0 && b.Press < b.Bush.Outside/10) {
		return refuse("interference of the bush", mm(b.Press), "0 or more and less than a tenth of its outside diameter, "+mm(b.Bush.Outside))
	}
	for _, p := range []struct {
		name string
		α    q.Expansion
		t    q.TemperatureChange
	}{
		{"bush", b.Bush.Alpha, b.BushWarmer},
		{"housing", b.HousingMetal.Alpha, b.HousingWarmer},
		{"shaft", b.ShaftExpands, b.ShaftWarmer},
	} {
		if err := warmth(p.name, p.α, p.t); err != nil {
			return err
		}
	}
	return nil
}

// warmth refuses what is no expansion, and heat that would melt anything.
func warmth(part string, α q.Expansion, t q.TemperatureChange) error {
	if !(α >= 0) {
		return refuse("expansion of the "+part, fmt.Sprintf("%.4g µm per m and K", 1e6*float64(α)), "0 or more")
	}
	if grows := float64(α) * float64(t); !(grows > -0.1 && grows < 0.1) {
		return refuse("heat growth of the "+part, fmt.Sprintf("%.4g of its size", grows), "between -0.1 and 0.1")
	}
	return nil
}

// seated is a bush in its housing, in bare numbers.
type seated struct{ bore, outside, e, gives, press float64 }

// warm returns the pressures cold and hot and what the bore has grown between,
// for free heat growth of bush and housing per diameter.
func (s seated) warm(bush, housing float64) (cold, hot, grows float64) {
	cold = s.press / s.outside / s.gives
	hot = max(0, (s.press/s.outside+bush-housing)/s.gives)
	w := s.bore / s.outside
	squeeze := 2 / (1 - w*w) / s.e // (k+1)/E
	return cold, hot, s.bore * (bush - (hot-cold)*squeeze)
}
