package knowledge_test

import (
	"testing"

	"wornfit/calc/interference"
	"wornfit/calc/keyed"
	q "wornfit/calc/quantity"
	"wornfit/calc/rolling"
)

func (f figures) key() keyed.Key {
	return keyed.Key{Shaft: f.l("shaft.smallest"), Width: f.l("fit.lock.width"), Depth: f.l("fit.lock.bears"), Length: f.l("fit.lock.length")}
}

var keyedHub = []formula{
	{"fit.lock.shear_torque", func(f figures) (float64, bool) {
		k := f.key()
		k.Depth = 1 // it shears however deep it bears
		return val(keyed.ShearTorque(k, q.Stress(f.v("fit.lock.shear"))))
	}},
	{"fit.lock.crush_torque", func(f figures) (float64, bool) {
		return val(keyed.CrushTorque(f.key(), q.Stress(f.v("fit.lock.weakest"))))
	}},
}

// A key as it stands in two sound keyways bears by what calc's table has.
func TestASoundKeyBearsAsTheTableSays(t *testing.T) {
	base := shipped(t)
	for _, row := range base.Rows("keys") {
		at := func(c string) float64 { return row.Columns[c].Best }
		system := keyed.Metric
		if row.ID[0] == 'i' {
			system = keyed.Inch
		}
		k, _, err := keyed.KeyFor(q.Length((at("over")+at("to"))/2), system)
		if err != nil {
			t.Fatalf("%s: %v", row.ID, err)
		}
		for what, pair := range map[string][2]float64{
			"width": {at("width"), float64(k.Width)}, "height": {at("height"), float64(k.Height)}, "over": {at("over"), float64(k.Over)}, "to": {at("to"), float64(k.To)},
			"shaft_depth": {at("shaft_depth"), float64(k.ShaftKeyway)}, "hub_depth": {at("hub_depth"), float64(k.HubKeyway)},
			"in the hub": {at("height") - at("shaft_depth"), float64(k.HubDepth())},
		} {
			if d := pair[0] - pair[1]; d > 1e-9 || d < -1e-9 {
				t.Errorf("%s, %s: %g in the rules, %g in calc", row.ID, what, pair[0], pair[1])
			}
		}
	}
}

func pinsOf(f figures) keyed.RoundPins {
	return keyed.RoundPins{Joint: f.l("hub.smallest"), Pin: f.l("fit.lock.pin.size"), Length: f.l("fit.lock.length"), Count: int(f.v("fit.lock.pins.count"))}
}

// whole reports a draw with a whole number of pins and the share that calc has.
func whole(f figures) bool {
	n := f.v("fit.lock.pins.count")
	return n == float64(int(n))
}

var pinnedHub = []formula{
	{"fit.lock.shear_torque", func(f figures) (float64, bool) {
		v, ok := noted(keyed.PinShearTorque(pinsOf(f), q.Stress(f.v("fit.lock.shear"))))
		return v * f.share(), ok && whole(f)
	}},
	{"fit.lock.crush_torque", func(f figures) (float64, bool) {
		v, ok := noted(keyed.PinCrushTorque(pinsOf(f), q.Stress(f.v("fit.lock.weakest"))))
		return v * f.share(), ok && whole(f)
	}},
}

// share is what a draw counts several pins for, over calc's three quarters: the
// number of the rule is drawn over its doubt.
func (f figures) share() float64 {
	n := f.v("fit.lock.pins.count")
	return max(1, f.v("lock/axial-pins.sharing")*n) / max(1, 0.75*n)
}

// tightSeat is a ring that is tight by some of its size, of the steel that calc has.
func tightSeat(f figures) {
	f.put("shaft.largest", 1.0004*f.v("hub.smallest"))
	f.put("purpose/bearing-seat.ring_modulus", 206e9)
	f.put("purpose/bearing-seat.ring_nu", 0.3)
	f.put("purpose/bearing-seat.ring_expansion", 12.5e-6)
}

// takes is what becomes of the clearance of a bearing of these outer sizes.
func takes(bore, outside q.Length, s rolling.Seats) (rolling.Left, bool) {
	s.Bore, s.Outside, s.Internal = bore, outside, 1e-3 // any clearance: what is taken does not rest on it
	l, _, err := rolling.Working(s)
	return l, err == nil
}

const stiff = interference.Give(1e-11) // any: not asked about

var bearingSeat = []formula{
	{"purpose/bearing-seat.flattened", func(f figures) (float64, bool) {
		v, ok := val(rolling.Smoothed(f.l("fit.nominal"), f.l("purpose/bearing-seat.tightest_cold"), f.l("low(purpose/bearing-seat.smoothing)")))
		return v, ok && v > 0
	}},
	{"purpose/bearing-seat.inner_takes", func(f figures) (float64, bool) {
		d, race := f.l("fit.nominal"), f.l("fit.raceway")
		l, ok := takes(d, 5*race-4*d, rolling.Seats{OnShaft: f.l("purpose/bearing-seat.flattened"), ShaftGive: interference.Give(f.v("shaft/leave.shaft_give")), HousingGive: stiff})
		return float64(l.InnerGrows), ok && l.InnerGrows > 0
	}},
	{"purpose/bearing-seat.outer_takes", func(f figures) (float64, bool) {
		o, race := f.l("fit.nominal"), f.l("fit.raceway")
		l, ok := takes(5*race-4*o, o, rolling.Seats{InHousing: f.l("purpose/bearing-seat.flattened"), HousingGive: interference.Give(f.v("hub/leave.bore_give")), ShaftGive: stiff})
		return float64(l.OuterShrinks), ok && l.OuterShrinks > 0
	}},
	{"purpose/bearing-seat.heat_takes", func(f figures) (float64, bool) {
		race := f.l("fit.outer_raceway") // (4 outside + bore)/5 of these two
		l, ok := takes(0.6*race, 1.1*race, rolling.Seats{InnerHotter: q.TemperatureChange(f.v("fit.inner_hotter")), ShaftGive: stiff, HousingGive: stiff})
		return float64(l.Heat), ok
	}},
}

// What locks and seats write out is what calc works out.
func TestLocksAndSeatsAreThoseOfCalc(t *testing.T) {
	held(t, "shaft-leave+hub-leave+fit-slip", "keyed-hub", keyedHub, 200)
	heldLocked(t, "shaft-leave+hub-leave+fit-slip", "press-fit", map[string]string{"fit": "axial-pins"}, pinnedHub, 200, nil)
	heldLocked(t, "shaft-leave+hub-leave+fit-press", "bearing-seat", nil, bearingSeat, 100, tightSeat)
}

// The wall that a lock reads off a ring's stress is the ring's wall.
func TestAPinKnowsTheWallByItsStress(t *testing.T) {
	heldLocked(t, "shaft-leave+hub-leave+fit-slip", "press-fit", map[string]string{"fit": "axial-pins"}, []formula{
		{"fit.lock.inner_wall", func(f figures) (float64, bool) {
			large, bore := f.v("shaft.largest"), f.v("shaft.bore")
			return (large - bore) / 2, bore < 0.95*large
		}},
		{"fit.lock.outer_wall", func(f figures) (float64, bool) {
			bore := f.v("hub.smallest")
			return (f.v("hub.outside") - bore) / 2, f.v("hub.outside") > 1.05*bore
		}},
	}, 200, func(f figures) { // surfaces of one size
		f.put("shaft.smallest", f.v("shaft.largest"))
		f.put("hub.largest", f.v("hub.smallest"))
	})
}
