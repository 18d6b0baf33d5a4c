package bearing

import (
	"fmt"

	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// Plain is a shaft running in a bore of one piece.
type Plain struct {
	Shaft, Clearance        q.Length // clearance cold, on diameter
	ShaftExpands, HubGrows  q.Expansion
	ShaftWarmer, HubsWarmer q.TemperatureChange
}

// PlainHotClearance returns the clearance of a shaft in a one-piece hub when
// both have warmed. Less than 0 is seized and comes with a note.
//
//	hot = cold + d·(αh·Th − αs·Ts)
//
// All in SI units.
//
//   - Holds for: a hub free to grow, each part at one temperature.
//   - Beyond: a bush held in another metal needs HotClearance; a hub hot inside and cold outside grows less.
//   - Source: linear expansion.
func PlainHotClearance(p Plain) (q.Length, []basis.Note, error) {
	if err := positive("shaft", p.Shaft); err != nil {
		return 0, nil, err
	}
	if !(p.Clearance >= 0 && p.Clearance < p.Shaft/10) {
		return 0, nil, refuse("cold clearance", mm(p.Clearance), "0 or more and less than a tenth of the shaft, "+mm(p.Shaft))
	}
	if err := warmth("hub", p.HubGrows, p.HubsWarmer); err != nil {
		return 0, nil, err
	}
	if err := warmth("shaft", p.ShaftExpands, p.ShaftWarmer); err != nil {
		return 0, nil, err
	}
	hot := q.Length(plainHot(float64(p.Clearance), float64(p.Shaft), float64(p.HubGrows), float64(p.HubsWarmer), float64(p.ShaftExpands), float64(p.ShaftWarmer)))
	if hot > 0 {
		return hot, nil, nil
	}
	return hot, []basis.Note{{Says: "the warm shaft has no clearance left: it lacks " + mm(-hot), Source: "linear expansion", Grade: basis.Derived}}, nil
}

// Stiff is a thin bush in a housing so heavy that it does not give.
type Stiff struct {
	Bore, Outside              q.Length // of the bush
	Nu                         float64  // Poisson's number of the bush
	BushExpands, HousingGrows  q.Expansion
	BushWarmer, HousingsWarmer q.TemperatureChange
}

// StiffBoreGrowth returns how much the bore of a thin bush in a heavy housing
// grows on warming: the housing sets its outside, and what the wall cannot do
// outward it does inward.
//
//	Δ = αh·D·Th − (D−d)·[αb·Tb + ν·(αb·Tb − αh·Th)]
//
// All in SI units.
//
//   - Holds for: a wall up to a twenty-fifth of the outside, a steel housing of twice the bush, both equally warm: within 4 % of the layer solution.
//   - Beyond: a thicker wall is noted. A bush warmer than its housing makes it worse: 16 % low at a twenty-fifth in iron, 43 % at a tenth; in aluminium it can be high instead. HotClearance has no such limit.
//   - Source: thin ring with its outside held; worked out.
func StiffBoreGrowth(s Stiff) (q.Length, []basis.Note, error) {
	if !(s.Bore > 0 && s.Bore < s.Outside) {
		return 0, nil, refuse("bore of the bush", mm(s.Bore), "more than 0 and less than its outside diameter, "+mm(s.Outside))
	}
	if !(s.Nu >= 0 && s.Nu <= 0.5) {
		return 0, nil, refuse("Poisson's number of the bush", fmt.Sprintf("%.4g", s.Nu), "from 0 to 0.5")
	}
	if err := warmth("bush", s.BushExpands, s.BushWarmer); err != nil {
		return 0, nil, err
	}
	if err := warmth("housing", s.HousingGrows, s.HousingsWarmer); err != nil {
		return 0, nil, err
	}
	bush, housing := float64(s.BushExpands)*float64(s.BushWarmer), float64(s.HousingGrows)*float64(s.HousingsWarmer)
	grows := q.Length(stiffGrowth(float64(s.Bore), float64(s.Outside), s.Nu, bush, housing))
	if s.Outside-s.Bore <= s.Outside*2/25 {
		return grows, nil, nil
	}
	return grows, []basis.Note{{Says: "the wall is more than a twenty-fifth of the bush's outside, too thick for this shortcut", Source: "layer solution", Grade: basis.Extrapolated}}, nil
}

func plainHot(clearance, shaft, hub, hubWarmer, shaftExpands, shaftWarmer float64) float64 {
	return clearance + shaft*(hub*hubWarmer-shaftExpands*shaftWarmer)
}

func stiffGrowth(bore, outside, nu, bush, housing float64) float64 {
	return housing*outside - (outside-bore)*(bush+nu*(bush-housing))
}
