package wear_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
	"wornfit/calc/wear"
)

func TestKernelsKeepTheirPromises(t *testing.T) { kerneltest.Check(t, wear.Kernels()) }

const hour = 3600

// Shigley's oil-impregnated brass bushing, from memory.
func TestBushLifeAgreesWithTheBook(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "worked.json"), "C11")
	life, err := wear.BushLife(wear.Bush{
		Bore: q.Length(r.In(t, "D")), Length: q.Length(r.In(t, "L")), Load: q.Force(r.In(t, "F")), Speed: q.Speed(r.In(t, "V")),
		K: wear.Factor(r.In(t, "K")), Motion: r.In(t, "f1"), Surroundings: r.In(t, "f2"),
	}, q.Length(r.In(t, "wear")))
	kerneltest.Fine(t, err)
	r.Want(t, "life", float64(life))
	turns := float64(life) * r.In(t, "V") / (math.Pi * r.In(t, "D"))
	r.Want(t, "revolutions", turns)
}

// A pin eye went from 0.05 to 0.25 mm clearance in 4000 h; act is 0.40.
var eye = wear.History{New: 50e-6, Now: 250e-6, Hours: 4000 * hour, NewU: 10e-6, NowU: 15e-6, HoursU: 400 * hour}

func TestRateIsWearOverHours(t *testing.T) {
	rate, u, notes, err := wear.Rate(eye)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "rate in µm per 1000 h", float64(rate)*1e6*1000*hour, 50, 1e-12)
	// by hand: (18.03/200)² + (400/4000)² = 0.1346²
	kerneltest.Near(t, "U of the rate", float64(u/rate), math.Sqrt((10*10+15*15)/(200.*200)+0.01), 1e-12)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
}

func TestLifeLeftIsRoomOverRate(t *testing.T) {
	left, _, notes, err := wear.LifeLeft(eye, 400e-6)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "hours left", float64(left)/hour, 3000, 1e-12)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
	left, _, _, err = wear.LifeLeft(eye, eye.Now)
	if err != nil || left != 0 {
		t.Errorf("at the act limit %v s are left, %v; want 0", left, err)
	}
}

// Second route to the uncertainty: draw readings and hours, look at the spread.
// The slopes are first order, so small uncertainties are drawn.
func TestUncertaintyOfLifeByDrawing(t *testing.T) {
	h := eye
	h.NewU, h.NowU, h.HoursU = 2e-6, 3e-6, 40*hour // taken as standard deviations
	_, u, _, err := wear.LifeLeft(h, 400e-6)
	kerneltest.Fine(t, err)
	r := rand.New(rand.NewPCG(3, 4))
	const n = 40000
	var sum, squares float64
	for range n {
		d := h
		d.New += q.Length(r.NormFloat64()) * h.NewU
		d.Now += q.Length(r.NormFloat64()) * h.NowU
		d.Hours += q.Time(r.NormFloat64()) * h.HoursU
		left, _, _, err := wear.LifeLeft(d, 400e-6)
		kerneltest.Fine(t, err)
		sum += float64(left)
		squares += float64(left) * float64(left)
	}
	spread := math.Sqrt(squares/n - sum/n*sum/n)
	kerneltest.Near(t, "U of the life", float64(u), spread, 0.02) // the spread of 40000 draws is good to 0.4 %, the slopes to 1 %
}

func TestALimitAlreadyPassedIsLessThanNothing(t *testing.T) {
	left, _, notes, err := wear.LifeLeft(eye, 240e-6)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "hours left", float64(left)/hour, -200, 1e-9)
	if len(notes) != 1 || !strings.Contains(notes[0].Says, "passed by 0.01 mm") {
		t.Errorf("notes %v, want one that it is passed", notes)
	}
}

func TestWearInTheNoiseIsNoted(t *testing.T) {
	h := eye
	h.Now = 60e-6
	_, _, notes, err := wear.Rate(h)
	kerneltest.Fine(t, err)
	if len(notes) != 1 || !strings.Contains(notes[0].Says, "the rate may be none") {
		t.Errorf("notes %v, want one on the uncertainty", notes)
	}
}

// Evenly spread pressure and a cosine differ by 4/π: the book's life is the
// shorter by that, with all factors 1.
func TestBushLifeAgainstDepth(t *testing.T) {
	b := wear.Bush{Bore: 0.025, Length: 0.02, Load: 500, Speed: 0.1, K: 1e-15, Motion: 1, Surroundings: 1}
	life, err := wear.BushLife(b, 100e-6)
	kerneltest.Fine(t, err)
	w, err := wear.Depth(b.K, q.Stress(float64(b.Load)/float64(b.Bore*b.Length)), b.Speed, life)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "even wear in that life", float64(w), 100e-6*math.Pi/4, 1e-12)
}

func TestTwiceTheLoadHalfTheLife(t *testing.T) {
	b := wear.Bush{Bore: 0.025, Length: 0.02, Load: 500, Speed: 0.1, K: 1e-15, Motion: 1.3, Surroundings: 1}
	light, err := wear.BushLife(b, 100e-6)
	kerneltest.Fine(t, err)
	b.Load *= 2
	heavy, err := wear.BushLife(b, 100e-6)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "life", float64(heavy), float64(light)/2, 1e-12)
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	history := func(spoil func(h *wear.History)) func() error {
		return func() error {
			h := eye
			spoil(&h)
			_, _, _, err := wear.Rate(h)
			return err
		}
	}
	bush := func(spoil func(b *wear.Bush)) func() error {
		return func() error {
			b := wear.Bush{Bore: 0.025, Length: 0.02, Load: 500, Speed: 0.1, K: 1e-15, Motion: 1, Surroundings: 1}
			spoil(&b)
			_, err := wear.BushLife(b, 1e-4)
			return err
		}
	}
	for _, c := range []struct {
		what, blame string
		call        func() error
	}{
		{"no wear", "size now", history(func(h *wear.History) { h.Now = h.New })},
		{"wear that is rounding", "size now", history(func(h *wear.History) { h.Now = h.New * (1 + 1e-15) })},
		{"unknown reading", "size now", history(func(h *wear.History) { h.Now = q.Length(nan) })},
		{"less than nothing when new", "size when new", history(func(h *wear.History) { h.New = -1 })},
		{"no hours", "time in service", history(func(h *wear.History) { h.Hours = 0 })},
		{"unknown gauge", "uncertainty of a size", history(func(h *wear.History) { h.NowU = q.Length(nan) })},
		{"unknown clock", "uncertainty of the time", history(func(h *wear.History) { h.HoursU = -1 })},
		{"an act limit already there when new", "act limit", func() error { _, _, _, err := wear.LifeLeft(eye, eye.New); return err }},
		{"no history", "size now", func() error { _, _, _, err := wear.LifeLeft(wear.History{}, 1); return err }},
		{"no bore", "bore", bush(func(b *wear.Bush) { b.Bore = 0 })},
		{"no length", "length", bush(func(b *wear.Bush) { b.Length = 0 })},
		{"no load", "load", bush(func(b *wear.Bush) { b.Load = 0 })},
		{"no speed", "sliding speed", bush(func(b *wear.Bush) { b.Speed = q.Speed(nan) })},
		{"no factor", "wear factor", bush(func(b *wear.Bush) { b.K = 0 })},
		{"easier than easy", "motion factor", bush(func(b *wear.Bush) { b.Motion = 0.5 })},
		{"cleaner than clean", "surroundings factor", bush(func(b *wear.Bush) { b.Surroundings = 0 })},
		{"suction", "pressure", func() error { _, err := wear.Depth(1e-15, -1, 1, 1); return err }},
		{"unknown speed", "sliding speed", func() error { _, err := wear.Depth(1e-15, 1, q.Speed(nan), 1); return err }},
		{"time run back", "time", func() error { _, err := wear.Depth(1e-15, 1, 1, -1); return err }},
	} {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleRate() {
	rate, u, _, err := wear.Rate(wear.History{New: 50e-6, Now: 250e-6, Hours: 4000 * 3600, NowU: 10e-6})
	const perThousandHours = 1e6 * 1000 * 3600
	fmt.Printf("%.0f ± %.1f µm per 1000 h %v\n", rate*perThousandHours, u*perThousandHours, err)
	// Output: 50 ± 2.5 µm per 1000 h <nil>
}

func ExampleLifeLeft() {
	left, u, _, err := wear.LifeLeft(wear.History{New: 50e-6, Now: 250e-6, Hours: 4000 * 3600, NowU: 10e-6}, 400e-6)
	fmt.Printf("%.0f ± %.0f h %v\n", left/3600, u/3600, err)
	// Output: 3000 ± 350 h <nil>
}

func ExampleDepth() {
	w, err := wear.Depth(1e-15, 2e6, 0.1, 1000*3600)
	fmt.Printf("%.2f mm %v\n", 1e3*w, err)
	// Output: 0.72 mm <nil>
}

func ExampleBushLife() {
	life, err := wear.BushLife(wear.Bush{Bore: 0.025, Length: 0.025, Load: 1000, Speed: 0.05, K: 1e-15, Motion: 1.3, Surroundings: 1}, 100e-6)
	fmt.Printf("%.0f h %v\n", life/3600, err)
	// Output: 210 h <nil>
}

// A 60 HRC pin is 654 HB by ASTM E140 (from memory); mild steel beside it is not a third as hard.
func TestHardnessShareIsAQuotient(t *testing.T) {
	s, err := wear.HardnessShare(185, 654)
	kerneltest.Fine(t, err)
	if math.Abs(s*654-185) > 1e-9 {
		t.Errorf("185 HB against 654 HB is %v", s)
	}
	for _, bad := range [][2]wear.Brinell{{0, 200}, {200, 0}, {wear.Brinell(math.NaN()), 200}} {
		if _, err := wear.HardnessShare(bad[0], bad[1]); err == nil {
			t.Errorf("%v passed", bad)
		}
	}
}
