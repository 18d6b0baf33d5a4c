package buildup_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/buildup"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
)

// Q01 was read on a page, Q02 is from memory of the handbook the page draws on.
func TestReachAgreesWithTheHandbook(t *testing.T) {
	for _, id := range []string{"Q01", "Q02"} {
		r := outside.Get(t, outside.Read(t, "shop.json"), id)
		reach := func(heat float64, start, to string) float64 {
			p := buildup.Plate{Thickness: q.Length(r.In(t, "t")), Capacity: buildup.HeatCapacity(r.In(t, "capacity")), Start: q.Temperature(r.In(t, start))}
			y, err := buildup.Reach(buildup.LineHeat(heat*r.In(t, "H")), q.Temperature(r.In(t, to)), q.Temperature(r.In(t, "melting")), p)
			kerneltest.Fine(t, err)
			return float64(y)
		}
		if id == "Q02" {
			r.Want(t, "near", reach(1, "start", "near"))
			r.Want(t, "far", reach(1, "start", "far"))
			continue
		}
		r.Want(t, "etched", reach(1, "start", "etched"))
		r.Want(t, "drawn", reach(1, "start", "drawn"))
		r.Want(t, "drawn_preheated", reach(1, "preheat", "drawn"))
		r.Want(t, "drawn_hot", reach(1.5, "start", "drawn"))
	}
}

// Steel beside a bead of 1 kJ/mm: what the tests below share.
const (
	lineHeat = 1e6
	capacity = 4.4e6
	conducts = 40.0
	start    = 293.15
	diffuses = conducts / capacity
	thisFar  = 0.020
	steps    = 4000
)

// peakOf is the highest value over time, on a grid by ratio around the time scale of
// the distance: half a step beside a flat top costs some 1e-5 of it.
func peakOf(at func(t float64) float64) float64 {
	best := 0.0
	for i := range steps {
		best = max(best, at(thisFar*thisFar/diffuses*math.Pow(10, -3+7*float64(i)/steps)))
	}
	return best
}

// Second route: a line of heat let go at once in a plate of finite thickness, by its
// images in the two faces, followed in time. It lies between the bounds, and comes to
// the thin and the thick end where it must.
func TestPlatePeakByImages(t *testing.T) {
	for _, thickness := range []float64{0.002, 0.01, 0.02, 0.03, 0.06, 0.2} {
		images := peakOf(func(t float64) float64 {
			sum := 1.0
			for n := 1; n < 400; n++ {
				sum += 2 * math.Exp(-float64(n*n)*thickness*thickness/(diffuses*t))
			}
			return lineHeat / (2 * math.Pi * conducts * t) * math.Exp(-thisFar*thisFar/(4*diffuses*t)) * sum
		})
		p, notes, err := buildup.PlatePeak(lineHeat, thisFar, buildup.Plate{Thickness: q.Length(thickness), Capacity: capacity, Start: start})
		kerneltest.Fine(t, err)
		least, most := float64(p.Least)-start, float64(p.Most)-start
		if !(images > least*(1-1e-4) && images < most*(1+1e-4)) {
			t.Errorf("%v thick: %v K by images, bounds %v and %v", thickness, images, least, most)
		}
		if thickness == 0.002 || thickness == 0.2 {
			kerneltest.Near(t, "at the end", images, least, 1e-3)
		}
		if (len(notes) > 1) != (p.Most > 1800) {
			t.Errorf("%v thick: %v with notes %v", thickness, p, notes)
		}
	}
}

// Second route: Rosenthal's travelling source on thick metal. The faster it goes, the
// nearer its peak comes to that of a bead laid at once, from below.
func TestPlatePeakByATravellingSource(t *testing.T) {
	limit := 2 * lineHeat / (math.Pi * math.E * capacity * thisFar * thisFar)
	last := 1.0
	for _, speeds := range []float64{4, 20, 100, 400} {
		v := speeds * diffuses / thisFar
		best := 0.0
		for i := range steps {
			behind := thisFar * speeds * math.Pow(10, -3+4*float64(i)/steps)
			r := math.Hypot(behind, thisFar)
			gap := thisFar * thisFar / (r + behind) // r − behind, so that it keeps its digits
			best = max(best, lineHeat*v/(2*math.Pi*conducts*r)*math.Exp(-v*gap/(2*diffuses)))
		}
		lag := 1 - best/limit
		if !(lag > -1e-4 && lag < last) {
			t.Errorf("at %v a/y: %v of the limit is lacking, before %v", speeds, lag, last)
		}
		last = lag
	}
	if !(last < 1e-3) {
		t.Errorf("at 400 a/y still %v lacking", last)
	}
}

// Second route: the same for a shaft, heat let go at once in a slice of it.
func TestBarPeakInTime(t *testing.T) {
	const heat, round = 200e3, 0.050
	along := peakOf(func(t float64) float64 {
		return heat / (math.Pi / 4 * round * round * capacity * math.Sqrt(4*math.Pi*diffuses*t)) * math.Exp(-thisFar*thisFar/(4*diffuses*t))
	})
	got, err := buildup.BarPeak(heat, thisFar, buildup.Bar{Round: round, Capacity: capacity, Start: start})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "rise", float64(got)-start, along, 1e-4)
	end, err := buildup.BarPeak(heat, thisFar, buildup.Bar{Round: round, Capacity: capacity, Start: start, End: true})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "at the end", float64(end)-start, 2*along, 1e-4)
}

// Nothing reaches past melting; more heat, less metal and a warmer start reach further.
func TestHeatLimitsAndDirections(t *testing.T) {
	p := buildup.Plate{Thickness: 0.010, Capacity: capacity, Start: start}
	if y, err := buildup.Reach(lineHeat, 1800, 1800, p); err != nil || y != 0 {
		t.Errorf("melting reaches %v, %v", y, err)
	}
	reach := func(h buildup.LineHeat, p buildup.Plate) float64 {
		y, err := buildup.Reach(h, 800, 1800, p)
		kerneltest.Fine(t, err)
		return float64(y)
	}
	base := reach(lineHeat, p)
	thin, warm := p, p
	thin.Thickness, warm.Start = 0.005, 473.15
	if !(reach(2*lineHeat, p) > base && reach(lineHeat, thin) > base && reach(lineHeat, warm) > base) {
		t.Error("more heat, less metal and a warmer start must reach further")
	}
	// 24 V and 200 A at 5 mm/s with 0.75 going in: 720 J/mm
	h, err := buildup.ArcHeat(24*200, 0.005, 0.75)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "line heat", float64(h), 720e3, 1e-12)
}

func TestHeatRefusals(t *testing.T) {
	sound := buildup.Plate{Thickness: 0.01, Capacity: capacity, Start: start}
	nan := math.NaN()
	peak := func(h buildup.LineHeat, y q.Length, spoil func(*buildup.Plate)) func() error {
		return func() error {
			p := sound
			spoil(&p)
			_, _, err := buildup.PlatePeak(h, y, p)
			return err
		}
	}
	reach := func(to, melting q.Temperature) func() error {
		return func() error { _, err := buildup.Reach(1, to, melting, sound); return err }
	}
	bar := func(heat q.Energy, x q.Length, b buildup.Bar) func() error {
		return func() error { _, err := buildup.BarPeak(heat, x, b); return err }
	}
	as := func(*buildup.Plate) {}
	blamed(t, []blame{
		{"no arc", "power of the arc", func() error { _, err := buildup.ArcHeat(0, 1, 1); return err }},
		{"standing still", "speed of travel", func() error { _, err := buildup.ArcHeat(1, 0, 1); return err }},
		{"per cent", "part of the heat that goes in", func() error { _, err := buildup.ArcHeat(1, 1, 80); return err }},
		{"no heat", "heat per length", peak(0, 1, as)},
		{"on the bead", "distance from the bead", peak(1, 0, as)},
		{"no plate", "thickness of the plate", peak(1, 1, func(p *buildup.Plate) { p.Thickness = 0 })},
		{"no metal", "heat the metal stores", peak(1, 1, func(p *buildup.Plate) { p.Capacity = buildup.HeatCapacity(nan) })},
		{"no warmth known", "temperature before the bead", peak(1, 1, func(p *buildup.Plate) { p.Start = 0 })},
		{"melts cold", "melting temperature", reach(400, 200)},
		{"colder than it was", "temperature reached", reach(200, 1800)},
		{"hotter than melting", "temperature reached", reach(1900, 1800)},
		{"no heat in the land", "heat of the whole land", bar(0, 1, buildup.Bar{Round: 1, Capacity: 1, Start: 1})},
		{"in the land", "distance from the land", bar(1, 0, buildup.Bar{Round: 1, Capacity: 1, Start: 1})},
		{"no shaft", "diameter of the shaft", bar(1, 1, buildup.Bar{Capacity: 1, Start: 1})},
		{"a shaft of nothing", "heat the metal stores", bar(1, 1, buildup.Bar{Round: 1, Start: 1})},
	})
}

func ExamplePlatePeak() {
	// A rod at 22 V and 120 A, 3 mm/s, on 12 mm steel: how warm 25 mm off?
	h, err := buildup.ArcHeat(22*120, 0.003, buildup.StickAndWire)
	fmt.Printf("%.0f J/mm %v\n", h/1e3, err)
	p, _, err := buildup.PlatePeak(h, 0.025, buildup.Plate{Thickness: 0.012, Capacity: 4.4e6, Start: 293.15})
	fmt.Printf("%.0f to %.0f °C %v\n", p.Least-273.15, p.Most-273.15, err)
	// Output:
	// 704 J/mm <nil>
	// 149 to 209 °C <nil>
}
