package interference_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"wornfit/calc/interference"
	q "wornfit/calc/quantity"
)

// A hundred nests of invented sizes and materials: the gives of the rules and
// the layer solution must tell the same story.
func TestGivesAgreeWithTheLayers(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	between := func(lo, hi float64) float64 { return lo + r.Float64()*(hi-lo) }
	metal := func() interference.Elastic {
		return interference.Elastic{E: q.Stress(between(3e9, 220e9)), Nu: between(0.2, 0.45)}
	}
	for n := range 100 {
		a := between(0.005, 0.1)
		b, D := a*between(1.05, 1.8), 0.0
		D = b * between(1.1, 3)
		shaft := interference.Ring{Bore: q.Length(between(0, 0.9) * a), Outside: q.Length(a), Elastic: metal()}
		if n%2 == 0 {
			shaft.Bore = 0
		}
		ring := interference.Ring{Bore: q.Length(a), Outside: q.Length(b), Elastic: metal()}
		hub := interference.Ring{Bore: q.Length(b), Outside: q.Length(D), Elastic: metal()}
		t.Run(fmt.Sprint("nest ", n), func(t *testing.T) { agrees(t, shaft, ring, hub) })
	}
}

// agrees presses shaft, ring and hub together and takes the ring once for a bush
// that was in the hub first, once for a sleeve that was on the shaft first.
func agrees(t *testing.T, shaft, ring, hub interference.Ring) {
	const inner, outer = 3e-4, 2e-4 // interference per diameter of the two joints
	press := func(inner, outer float64) []q.Stress {
		got, _, err := interference.Press(interference.Stack{
			Bore:         shaft.Bore,
			Parts:        []interference.Part{{Outside: shaft.Outside, Elastic: shaft.Elastic}, {Outside: ring.Outside, Elastic: ring.Elastic}, {Outside: hub.Outside, Elastic: hub.Elastic}},
			Interference: []q.Length{ring.Bore * q.Length(inner), ring.Outside * q.Length(outer)},
		})
		fine(t, err)
		return got.Pressure
	}
	hubGive, err := interference.HubGive(hub)
	fine(t, err)
	shaftGive, err := interference.ShaftGive(shaft)
	fine(t, err)

	bush, err := interference.BackedBushGive(ring, hubGive)
	fine(t, err)
	passes, err := interference.BushPassesOn(ring, hubGive)
	fine(t, err)
	p, err := interference.JointPressure(ring.Bore, ring.Bore*inner, shaftGive, bush)
	fine(t, err)
	got := press(inner, 0)
	near(t, "shaft in backed bush", float64(p), float64(got[0]), 1e-9)
	near(t, "passed on to the hub", float64(p)*passes, float64(got[1]), 1e-9)

	sleeve, err := interference.SleeveGive(ring, shaftGive)
	fine(t, err)
	passes, err = interference.SleevePassesOn(ring, shaftGive)
	fine(t, err)
	p, err = interference.JointPressure(ring.Outside, ring.Outside*outer, sleeve, hubGive)
	fine(t, err)
	got = press(0, outer)
	near(t, "sleeve in hub", float64(p), float64(got[1]), 1e-9)
	near(t, "passed on to the shaft", float64(p)*passes, float64(got[0]), 1e-9)
}

// The rule files write k out; the numbers must be the same.
func TestGivesAsTheRuleFilesWriteThem(t *testing.T) {
	const a, b, E, nu, g = 0.025, 0.032, 100e9, 0.34, 9e-12
	k := (b*b + a*a) / (b*b - a*a)
	ring := interference.Ring{Bore: a, Outside: b, Elastic: bronze}
	bush, err := interference.BackedBushGive(ring, g)
	fine(t, err)
	near(t, "bush", float64(bush), (k+nu-4*a*a*b*b/math.Pow(b*b-a*a, 2)/(E*g+k-nu))/E, 1e-12)
	sleeve, err := interference.SleeveGive(ring, g)
	fine(t, err)
	near(t, "sleeve", float64(sleeve), (k-nu-4*a*a*b*b/math.Pow(b*b-a*a, 2)/(E*g+k+nu))/E, 1e-12)
	passes, err := interference.BushPassesOn(ring, g)
	fine(t, err)
	near(t, "passes on", passes, 2*a*a/(b*b-a*a)/(E*g+k-nu), 1e-12)
}

func TestABackingThatYieldsWithoutEndIsNone(t *testing.T) {
	ring := interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: bronze}
	backed, err := interference.BackedBushGive(ring, 1)
	fine(t, err)
	bare, err := interference.HubGive(ring)
	fine(t, err)
	near(t, "bush", float64(backed), float64(bare), 1e-9)
}

func TestAHoleMakesAShaftSofter(t *testing.T) {
	solid, err := interference.ShaftGive(interference.Ring{Outside: 0.025, Elastic: steel})
	fine(t, err)
	near(t, "solid", float64(solid), (1-0.3)/206e9, 1e-12)
	hollow, err := interference.ShaftGive(interference.Ring{Bore: 0.010, Outside: 0.025, Elastic: steel})
	fine(t, err)
	if !(hollow > solid) {
		t.Errorf("hollow gives %v, solid %v; want more", hollow, solid)
	}
}

func TestGivesRefuse(t *testing.T) {
	ring := interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: bronze}
	_, err := interference.HubGive(interference.Ring{Outside: 0.032, Elastic: steel})
	refused(t, "a hub without bore", err, "bore of the hub")
	_, err = interference.ShaftGive(interference.Ring{Outside: q.Length(math.NaN()), Elastic: steel})
	refused(t, "a shaft without size", err, "bore of the shaft")
	_, err = interference.BackedBushGive(ring, 0)
	refused(t, "a hub that gives nothing", err, "give of the hub")
	_, err = interference.SleeveGive(ring, interference.Give(math.NaN()))
	refused(t, "a shaft of unknown give", err, "give of the shaft")
	_, err = interference.BushPassesOn(interference.Ring{Bore: 0.032, Outside: 0.032, Elastic: bronze}, 1e-11)
	refused(t, "a bush without wall", err, "bore of the bush")
	_, err = interference.SleevePassesOn(interference.Ring{Bore: 0.032, Outside: 0.032, Elastic: bronze}, 1e-11)
	refused(t, "a sleeve without wall", err, "bore of the sleeve")
	_, err = interference.JointPressure(0, 0, 1e-11, 1e-11)
	refused(t, "no seat", err, "seat")
	_, err = interference.JointPressure(0.025, 1e-5, 0, 0)
	refused(t, "two rigid sides", err, "give of the joint")
}

func ExampleBackedBushGive() {
	hub, _ := interference.HubGive(interference.Ring{Bore: 0.032, Outside: 0.064, Elastic: interference.Elastic{E: 206e9, Nu: 0.3}})
	bush, err := interference.BackedBushGive(interference.Ring{Bore: 0.025, Outside: 0.032, Elastic: interference.Elastic{E: 100e9, Nu: 0.34}}, hub)
	fmt.Printf("hub %.2f, bush in it %.2f µm per m and MPa %v\n", 1e12*hub, 1e12*bush, err)
	// Output: hub 9.55, bush in it 10.86 µm per m and MPa <nil>
}
