package condition

import (
	"math"
	"strings"
	"testing"

	"wornfit/advisor/casefile"
	"wornfit/calc/interval"
)

// One-sided wear of 0.40 in a 25.00 bore: 25.80 when the axis is kept, 25.40
// when it is indicated from the worn hole. Source: geometry, D + 2w and D + w.
func TestWornHoleAgainstTrueAxis(t *testing.T) {
	b := newBench().round()
	g := gauge(0.001, 0.0005)
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(g, 5, 0, 25.00), at20(g, 5, 90, 25.40)}
	b.on(casefile.Hub).Lands = []casefile.Reading{at20(g, 38, 90, 25.00)}
	b.on(casefile.Hub).Seen["wear_side"] = "one side"
	b.hub.Datums = []casefile.Datum{
		{ID: "far-bore", Given: map[string]casefile.Value{"true_axis": is(1)}}, // offset not stated: worked from the wear
		{ID: "worn-hole", Given: map[string]casefile.Value{"offset": is(0), "true_axis": is(0)}},
	}
	b.hub.Given["hub.outside"] = is(50 * mm)
	c := b.find(t)
	check(t, "one-sided wear", c.Hub.OneSided.Best, 0.40, 1e-9)
	check(t, "direction of the wear, degrees over 1000", c.Hub.Toward/deg*mm, 90, 1e-6)
	check(t, "clean-up, axis kept", c.Hub.CleanUps[0].Size.Best, 25.80, 1e-9)
	check(t, "clean-up from the worn hole", c.Hub.CleanUps[1].Size.Best, 25.40, 1e-9)
	check(t, "wall left", c.Hub.CleanUps[0].WallLeft.Best, 12.10, 1e-9)
	if sure := c.Hub.CleanUps[0].Size.Range.Hi; sure <= 25.801*mm {
		t.Errorf("the gauge's doubt is missing: sure to clean up at %.4f mm", sure/mm)
	}
}

// An eye that may move is bored where the worn hole lies: D + w, and no note.
func TestAnAxisThatMayMoveIsBelieved(t *testing.T) {
	b := newBench().round()
	g := gauge(0.001, 0.0005)
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(g, 5, 0, 25.00), at20(g, 5, 90, 25.40)}
	b.on(casefile.Hub).Lands = []casefile.Reading{at20(g, 38, 90, 25.00)}
	b.on(casefile.Hub).Seen["wear_side"] = "one side"
	b.hub.Datums = []casefile.Datum{{ID: "worn-hole", Given: map[string]casefile.Value{"offset": is(0), "true_axis": is(1), "may_move": is(1)}}}
	c := b.find(t)
	check(t, "clean-up", c.Hub.CleanUps[0].Size.Best, 25.40, 1e-9)
	for _, n := range c.Notes {
		if strings.Contains(n.Says, "one-sided wear") {
			t.Errorf("noted: %s", n.Says)
		}
	}
}

// A journal worn 0.20 on one side lies 0.10 off its centres and cleans up at
// 24.60. Who states an offset of 0.005 read it before the wear, or elsewhere: the
// wear is taken and said. Source: geometry, D - 2w.
func TestAnOffsetThatLeavesOutTheWearIsNotBelieved(t *testing.T) {
	for _, x := range []struct {
		offset, size float64
		noted        bool
	}{{0.005, 24.60, true}, {0.10, 24.60, false}, {0.15, 24.50, false}} {
		b := newBench().round()
		g := gauge(0.001, 0.0005)
		b.on(casefile.Shaft).Readings = []casefile.Reading{at20(g, 5, 0, 25.00), at20(g, 5, 90, 24.80)}
		b.on(casefile.Shaft).Lands = []casefile.Reading{at20(g, 38, 90, 25.00)}
		b.on(casefile.Shaft).Seen["wear_side"] = "one side"
		b.shaft.Datums = []casefile.Datum{{ID: "centres", Given: map[string]casefile.Value{"offset": is(x.offset * mm), "true_axis": is(1)}}}
		c := b.find(t)
		check(t, "clean-up", c.Shaft.CleanUps[0].Size.Best, x.size, 1e-9)
		noted := false
		for _, n := range c.Notes {
			noted = noted || strings.Contains(n.Says, "less than its one-sided wear makes it")
		}
		if noted != x.noted {
			t.Errorf("offset %g: noted %v", x.offset, noted)
		}
	}
}

// A journal that runs out 0.16 on its centres costs 0.16 more off the
// diameter; straightened to 0.03 first, 0.03. A 0.02 score the micrometer
// bridges costs 0.04 unless it may stay. Source: geometry.
func TestBentShaftCostsItsRunOut(t *testing.T) {
	b := newBench().round()
	b.on(casefile.Shaft).Readings = []casefile.Reading{at20(gauge(0.003, 0), 20, 0, 24.90)}
	b.shaft.Datums = []casefile.Datum{
		{ID: "centres", RunOut: is(0.16 * mm), Given: map[string]casefile.Value{}},
		{ID: "straightened", RunOut: is(0.03 * mm), Straight: true, Given: map[string]casefile.Value{}},
	}
	c := b.find(t)
	check(t, "on its centres", c.Shaft.CleanUps[0].Size.Best, 24.74, 1e-9)
	check(t, "straightened", c.Shaft.CleanUps[1].Size.Best, 24.87, 1e-9)
	check(t, "sure to clean up", c.Shaft.CleanUps[0].Size.Range.Lo, 24.737, 1e-6)

	b.on(casefile.Shaft).Score = is(0.02 * mm)
	check(t, "scored", b.find(t).Shaft.CleanUps[0].Size.Best, 24.70, 1e-9)
	b.on(casefile.Shaft).Witness = is(0.02 * mm)
	check(t, "scored, marks may stay", b.find(t).Shaft.CleanUps[0].Size.Best, 24.74, 1e-9)
}

// However often one gauge is read, what it is out by stays; in a taper it
// drops out. Source: JCGM 100:2008 5.1.2 and F.1.2.3.
func TestGaugeErrorDoesNotAverageOut(t *testing.T) {
	b := newBench().round()
	g := gauge(0.005, 0.001)
	for _, at := range []float64{5, 15, 25, 35} {
		for _, angle := range []float64{0, 60, 120} {
			b.on(casefile.Hub).Readings = append(b.on(casefile.Hub).Readings, at20(g, at, angle, 25.00+at/1000))
		}
	}
	c := b.find(t)
	check(t, "doubt of the mean of 12", c.Hub.Mean.U, 0.005, 1e-6)
	check(t, "taper", c.Hub.Taper.Best, 0.030, 1e-9)
	if c.Hub.LargerEnd != "far" {
		t.Errorf("the larger end is %q, want far", c.Hub.LargerEnd)
	}
	check(t, "doubt of the taper, 3 readings an end", c.Hub.Taper.U, 0.001*math.Sqrt(2./3), 1e-6)
	check(t, "bell mouth of an even taper", c.Hub.BellMouth.Best, 0, 1e-9)

	g.Repeats = casefile.Value{} // how it repeats is not stated: nothing is taken to cancel
	check(t, "doubt of the taper, repeat unknown", b.find(t).Hub.Taper.U, 0.005*math.Sqrt2, 1e-6)
}

// Two repeats 0.010 apart say little: with one degree of freedom k is far over
// 2. u_A = 0.005, u = √(0.0025² + 0.005²) = 0.00559, freedom = u⁴/u_A⁴ = 1.56,
// truncated 1, k95.45 = 13.97. Source: JCGM 100:2008 G.4.1 and table G.2.
func TestFewRepeatsSaySo(t *testing.T) {
	b := newBench().round()
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(gauge(0.005, 0), 5, 0, 25.00, 25.01)}
	c := b.find(t)
	check(t, "largest", c.Hub.Largest.Best, 25.005, 1e-9)
	check(t, "its doubt", c.Hub.Largest.U, 13.97*0.00559, 0.0002)
}

// A 40 mm bronze bush miked at 45 °C with a micrometer at 20 °C reads 18 µm
// large (18e-6/K, arithmetic). Not stated, the temperature is asked for.
func TestMeasuredWarm(t *testing.T) {
	b := newBench().round()
	r := at20(gauge(0.003, 0), 5, 0, 40.018)
	r.PartAt = is(318.15)
	b.on(casefile.Shaft).Readings = []casefile.Reading{r}
	c, _ := Find(b.c, b.fit, func(string) (interval.I, bool) { return interval.Point(18e-6), true })
	check(t, "size at 20 °C", c.Shaft.Mean.Best, 40.000, 0.0001)

	// warm part and warm steel gauge: 40 mm of bronze grows (18 - 11.5)e-6 * 25 K * 40 = 6.5 µm over the gauge
	b.on(casefile.Shaft).Readings[0].GaugeAt = is(318.15)
	c, _ = Find(b.c, b.fit, func(string) (interval.I, bool) { return interval.Point(18e-6), true })
	check(t, "size at 20 °C, both warm", c.Shaft.Mean.Best, 40.018-0.0065, 0.0001)

	b.on(casefile.Shaft).Readings[0].PartAt = casefile.Value{}
	c, _ = Find(b.c, b.fit, steel)
	for _, n := range c.Notes {
		if strings.Contains(n.Says, "temperature of pin") && strings.Contains(n.Says, "0.0046 mm") { // 40.018 * 11.5e-6 * 10
			return
		}
	}
	t.Errorf("the temperature is not asked for: %v", c.Notes)
}

// What shakes and what was gauged must agree; if not it is told, not averaged.
func TestShakeAgainstSizes(t *testing.T) {
	for _, c := range []struct {
		shake  float64
		agrees bool
	}{{0.300, true}, {0.306, true}, {0.345, false}, {0.250, false}} {
		b := newBench().round()
		g := gauge(0.005, 0)
		b.on(casefile.Hub).Readings = []casefile.Reading{at20(g, 5, 0, 25.02), at20(g, 5, 90, 25.25)}
		b.on(casefile.Shaft).Readings = []casefile.Reading{at20(g, 5, 0, 24.99), at20(g, 5, 90, 24.95)}
		b.fit.Shake = []casefile.Shake{{Toward: is(90 * deg), Move: is(c.shake * mm), Gauge: gauge(0.01, 0)}}
		found, solve := Find(b.c, b.fit, steel)
		check(t, "most clearance", found.Clearance.Most.Best, 0.300, 1e-9)
		check(t, "least clearance", found.Clearance.Least.Best, 0.030, 1e-9)
		if found.Clearance.Shakes[0].Agrees != c.agrees || (len(solve) == 0) != c.agrees {
			t.Errorf("a shake of %.3f against sizes of 0.300: agrees %v, told %v", c.shake, found.Clearance.Shakes[0].Agrees, solve)
		}
	}
}

// 0.35 mm worn in 20 years of 200 hours is 0.0875 µm an hour. Source: arithmetic.
func TestWearRateFromTheHours(t *testing.T) {
	b := newBench().round()
	g := gauge(0.001, 0)
	b.fit.Given["fit.nominal"] = is(25 * mm)
	b.fit.WhenNew = casefile.Value{Stated: true, Known: true, Lo: 0.02 * mm, Hi: 0.04 * mm}
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(g, 5, 0, 25.25)}
	b.on(casefile.Shaft).Readings = []casefile.Reading{at20(g, 5, 0, 24.90)}
	b.c.Duty["duty.hours"] = is(4000 * 3600)
	c := b.find(t)
	if got := c.WearRate.Best * 3600 / 1e-6; math.Abs(got-0.0875) > 1e-9 {
		t.Errorf("wear rate is %.5f um/h, want 0.0875", got)
	}
	// the bore was made 25.00 to 25.04: 0.21 to 0.25 on top of the gauge's 0.001
	check(t, "least wear of the bore", c.Hub.Wear.Range.Lo, 0.209, 1e-6)
	check(t, "most wear of the bore", c.Hub.Wear.Range.Hi, 0.251, 1e-6)
	if c.Hub.BeforeFrom != "nominal" {
		t.Errorf("wear told from %q, want nominal", c.Hub.BeforeFrom)
	}
}

// An 18 kg disc of 300 mm at 1200 rpm holds 1.6 kJ: m r² ω² / 4. Source: arithmetic.
func TestStoredEnergy(t *testing.T) {
	b := newBench()
	b.hub.Given["hub.weight"], b.hub.Given["hub.swing"] = is(18), is(300*mm)
	b.c.Duty["duty.speed"] = is(20)
	c := b.find(t)
	if math.Abs(c.Energy.Best-1599) > 1 || math.Abs(c.Energy.Range.Hi-2*c.Energy.Best) > 1e-6 {
		t.Errorf("stored energy is %+v, want 1599 J as a disc and twice that as a rim", c.Energy)
	}
}

// What is not known is not in the map; a wear nobody saw the side of may be half.
func TestOnlyWhatIsKnownLeaves(t *testing.T) {
	b := newBench().round()
	g := gauge(0.001, 0.0005)
	b.on(casefile.Hub).Readings = []casefile.Reading{at20(g, 5, 0, 25.00), at20(g, 5, 90, 25.40)}
	b.on(casefile.Hub).Lands = []casefile.Reading{at20(g, 38, 90, 25.00)}
	b.hub.NearStated, b.hub.Kinds = true, []string{"keyway", "oil-hole"}
	b.hub.Near = []casefile.Neighbour{{Kind: "oil-hole"}}
	k := b.find(t).Known()
	for _, absent := range []string{"shaft.largest", "hub.outside", "hub.taper", "shaft.near_keyway", "fit.nominal", "fit.new_least", "shop.gauge_inside"} {
		if v, there := k[absent]; there {
			t.Errorf("%s is not known, and is given as %+v", absent, v)
		}
	}
	if k["hub.near_oil_hole"].Best != 1 || k["hub.near_keyway"].Best != 0 || !k["hub.near_keyway"].Is {
		t.Errorf("neighbours: oil hole %+v, keyway %+v", k["hub.near_oil_hole"], k["hub.near_keyway"])
	}
	if k["duty.load"].Is || k["fit.load_stated"].Best != 0 || !k["fit.load_stated"].Is {
		t.Errorf("a load nobody states is called stated: %+v", k["fit.load_stated"])
	}
	side := k["hub.one_sided"]
	check(t, "one-sided wear at most", side.Best, 0.40, 1e-9)
	if !side.Value.Has(0.21*mm) || side.Value.Has(0.15*mm) {
		t.Errorf("one-sided wear ranges over %v, want half to whole of 0.40 mm", side.Value)
	}
}

// The finest gauge that takes the size is the one to gauge with.
func TestBestGauge(t *testing.T) {
	b := newBench()
	b.fit.Given["fit.nominal"] = is(25 * mm)
	small := &casefile.Gauge{ID: "small", Kind: "inside", Within: is(1e-6), Takes: casefile.Value{Known: true, Lo: 6 * mm, Hi: 12 * mm}}
	large := &casefile.Gauge{ID: "large", Kind: "inside", Within: is(2e-6), Takes: casefile.Value{Known: true, Lo: 50 * mm, Hi: 75 * mm}}
	b.c.Gauges = []*casefile.Gauge{{ID: "caliper", Kind: "inside", Within: is(50e-6)}, small, large, {ID: "bg", Kind: "inside", Within: is(5e-6)}}
	if g := b.find(t).BestGauge(true); g == nil || g.ID != "bg" {
		t.Errorf("best gauge for a 25 mm bore is %+v, want bg", g)
	}
	if g := b.find(t).BestGauge(false); g != nil {
		t.Errorf("no outside gauge is listed, got %+v", g)
	}
}

// A three-point reading, a ring, a vee block or blue shows the lobes, and then
// nothing is allowed for them; unsaid, the allowance is noted.
func TestThreePointsSeeLobes(t *testing.T) {
	b := newBench()
	r := at20(gauge(0.004, 0), 5, 0, 25.00)
	b.on(casefile.Hub).Readings = []casefile.Reading{r}
	c := b.find(t)
	check(t, "two points: largest may be", c.Hub.Largest.Range.Hi, 25.004+lobesOtherwise/mm, 1e-9)
	b.on(casefile.Hub).LobesHow = "reamed"
	check(t, "reamed", b.find(t).Hub.Unseen.Best, lobesBy["reamed"]/mm, 1e-12)
	r.Round = true
	b.on(casefile.Hub).Readings = []casefile.Reading{r}
	c = b.find(t)
	check(t, "three points: largest may be", c.Hub.Largest.Range.Hi, 25.004, 1e-9)
	if len(c.Notes) != 1 { // of the angles between which an oval may hide
		t.Errorf("notes %v", c.Notes)
	}
}
