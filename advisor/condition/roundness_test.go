package condition

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"wornfit/advisor/casefile"
)

// profile is one of testdata/published/roundness: worn shafts with their inscribed
// and circumscribed circles by brute force and by closed form.
type profile struct {
	Name    string
	Points  [][2]float64 `json:"points_xy_mm"`
	Results struct{ MCC, MIC struct{ Diameter float64 } }
}

func profiles(t *testing.T) map[string]profile {
	t.Helper()
	data, err := os.ReadFile("../../testdata/published/roundness/roundness_reference.json")
	if err != nil {
		t.Fatal(err)
	}
	var list []profile
	if err := json.Unmarshal(data, &list); err != nil {
		t.Fatal(err)
	}
	out := map[string]profile{}
	for _, p := range list {
		out[p.Name] = p
	}
	return out
}

// miked reads a profile across every pair of opposite points, as a micrometer does.
func (p profile) miked(g *casefile.Gauge) (out []casefile.Reading) {
	half := len(p.Points) / 2
	for i := range half {
		a, b := p.Points[i], p.Points[i+half]
		out = append(out, at20(g, 10, float64(i)*180/float64(half), math.Hypot(a[0]-b[0], a[1]-b[1])))
	}
	return out
}

// The micrometer's readings, with the allowance for lobes it cannot see, hold
// the true circles. Circles: roundness_reference.json, closed forms.
func TestSizesHoldTheTrueCircles(t *testing.T) {
	for _, c := range []struct {
		name        string
		lobes       float64 // on diameter
		mic, mcc    float64
		outOfRound  float64
		smallestWas float64 // as read
	}{
		{"oval_shaft", 0, 24.92, 25.00, 0.08, 24.92},
		{"one_sided_flat_shaft", 0, 24.70, 25.00, 0.30, 24.70},
		{"three_lobe", 0.04, 24.96, 25.04, 0, 25.00},
	} {
		p, ok := profiles(t)[c.name]
		if !ok {
			t.Fatalf("no profile %s", c.name)
		}
		b := newBench()
		b.on(casefile.Shaft).Lobes = is(c.lobes * mm)
		b.on(casefile.Shaft).Readings = p.miked(gauge(0.001, 0.0005))
		s := b.find(t).Shaft
		if !s.Smallest.Range.Has(c.mic * mm) {
			t.Errorf("%s: smallest %v does not hold the inscribed circle %.3f", c.name, s.Smallest.Range, c.mic)
		}
		if !s.Largest.Range.Has(c.mcc * mm) {
			t.Errorf("%s: largest %v does not hold the circumscribed circle %.3f", c.name, s.Largest.Range, c.mcc)
		}
		check(t, c.name+": smallest as read", s.Smallest.Best, c.smallestWas, 1e-4)
		check(t, c.name+": out of round", s.OutOfRound.Best, c.outOfRound, 1e-4)
	}
}

// The three-lobed shaft without an allowance would be believed round: it reads
// 25.000 everywhere, and the ring that goes over it is 25.04.
func TestLobesAreMissedWithoutAllowance(t *testing.T) {
	b := newBench().round()
	b.on(casefile.Shaft).Readings = profiles(t)["three_lobe"].miked(gauge(0.001, 0.0005))
	if s := b.find(t).Shaft; s.Largest.Range.Has(25.04 * mm) {
		t.Errorf("largest %v holds 25.04 without being told of lobes", s.Largest.Range)
	}
}

// Turned about its own centres the flat shaft cleans up at 24.40, twice the
// flat's depth off. Source: roundness_reference.json, fixed_axis_shaft.
func TestFlatShaftOnItsCentres(t *testing.T) {
	b := newBench().round()
	s := b.on(casefile.Shaft)
	g := gauge(0.001, 0.0005)
	s.Readings = profiles(t)["one_sided_flat_shaft"].miked(g)
	s.Lands = []casefile.Reading{at20(g, 40, 0, 25.00)}
	s.Seen["wear_side"] = "one side"
	b.shaft.Datums = []casefile.Datum{{ID: "centres", Given: map[string]casefile.Value{"true_axis": is(1)}}}
	check(t, "clean-up on its centres", b.find(t).Shaft.CleanUps[0].Size.Best, 24.40, 1e-3)
}
