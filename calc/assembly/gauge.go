package assembly

import (
	"wornfit/calc/basis"
	q "wornfit/calc/quantity"
)

// GoGauge is a plug turned at the bench to try a hot bore with: where it drops in,
// the hub is hot enough.
type GoGauge struct {
	Shaft       q.Length            // largest over its seat, at room temperature
	Gap         q.Length            // clearance wanted when the hub goes on, on diameter
	Lost        q.TemperatureChange // that the hub cools between trying it and putting it on
	HubExpands  q.Expansion
	Shafts      q.Expansion // and how much warmer the shaft is than the room; below 0 for one out of the cold
	ShaftWarmer q.TemperatureChange
	Plugs       q.Expansion // and how much warmer the plug has got when it is tried
	PlugWarmer  q.TemperatureChange
}

// HotGoGauge returns the size to turn the plug to, at room temperature.
//
//	plug = (d·(1 + αs·Ts) + gap + αh·d·lost) / (1 + αp·Tp)
//
// All in SI units, Ts and Tp above room temperature.
//
//   - Holds for: a plug tried quickly, in and out. With little air round it one of 25 mm warms by 10 to 30 degrees in each second, and 10 degrees are 0.003 mm.
//   - Beyond: a plug left in the bore is grabbed as the shaft would be. A bore that is oval or tapered must be tried from both ends.
//   - Source: linear expansion; worked out.
func HotGoGauge(g GoGauge) (q.Length, []basis.Note, error) {
	if err := g.check(); err != nil {
		return 0, nil, err
	}
	plug := q.Length(hotGoGauge(float64(g.Shaft), float64(g.Gap), float64(g.Lost), float64(g.HubExpands), float64(g.Shafts)*float64(g.ShaftWarmer), float64(g.Plugs)*float64(g.PlugWarmer)))
	if plug >= g.Shaft {
		return plug, nil, nil
	}
	return plug, []basis.Note{{Says: "the plug is smaller than the shaft is at room temperature: it tells nothing unless the shaft is as cold as stated", Source: "linear expansion", Grade: basis.Derived}}, nil
}

func (g GoGauge) check() error {
	switch {
	case !(g.Shaft > 0):
		return refuse("shaft", mm(g.Shaft), "more than 0")
	case !(g.Gap >= 0 && g.Gap < g.Shaft/10):
		return refuse("clearance wanted", mm(g.Gap), "0 or more and less than a tenth of the shaft, "+mm(g.Shaft))
	case !(g.Lost >= 0 && g.Lost <= mostWarmer):
		return refuse("heat lost on the way", kelvins(g.Lost), "from 0 to "+kelvins(mostWarmer))
	}
	if err := grows("hub", g.HubExpands, 0); err != nil {
		return err
	}
	if err := grows("shaft", g.Shafts, g.ShaftWarmer); err != nil {
		return err
	}
	return grows("plug", g.Plugs, g.PlugWarmer)
}

// The span of temperatures a mean expansion may be used over here, and the
// largest expansion of any metal with room to spare: our choice.
const (
	mostWarmer  q.TemperatureChange = 700
	mostExpands q.Expansion         = 200e-6
)

func grows(whose string, a q.Expansion, warmer q.TemperatureChange) error {
	if !(a >= 0 && a <= mostExpands) {
		return refuse("expansion of the "+whose, perKelvin(a), "from 0 to "+perKelvin(mostExpands))
	}
	if !(warmer >= -mostWarmer && warmer <= mostWarmer) {
		return refuse("warmth of the "+whose+" above room", kelvins(warmer), "within "+kelvins(mostWarmer))
	}
	return nil
}

func hotGoGauge(shaft, gap, lost, hub, shaftGrown, plugGrown float64) float64 {
	return (shaft*(1+shaftGrown) + gap + hub*shaft*lost) / (1 + plugGrown)
}
