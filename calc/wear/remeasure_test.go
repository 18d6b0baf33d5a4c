package wear_test

import (
	"fmt"
	"math"
	"testing"

	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/outside"
	q "wornfit/calc/quantity"
	"wornfit/calc/wear"
)

// The coating of a ring, as a maker's manual works it out: what it has lost is the
// wear, what it may lose the act limit.
func TestRateAndLifeAgreeWithAManual(t *testing.T) {
	for _, id := range []string{"W01", "W02"} {
		r := outside.Get(t, outside.Read(t, "shop.json"), id)
		h := wear.History{Now: q.Length(r.In(t, "was") - r.In(t, "now")), Hours: q.Time(r.In(t, "hours"))}
		rate, _, _, err := wear.Rate(h)
		kerneltest.Fine(t, err)
		r.Want(t, "rate", float64(rate))
		left, _, _, err := wear.LifeLeft(h, q.Length(r.In(t, "was")-r.In(t, "least")))
		kerneltest.Fine(t, err)
		r.Want(t, "left", float64(left))
	}
}

// A pin worn 0.35 in 20 seasons with 0.05 to go: about 570 h, so look after half.
func TestAWornPinByHand(t *testing.T) {
	r := outside.Get(t, outside.Read(t, "shop.json"), "W03")
	h := wear.History{Now: q.Length(r.In(t, "worn")), Hours: q.Time(r.In(t, "hours"))}
	act := h.Now + q.Length(r.In(t, "room"))
	rate, _, _, err := wear.Rate(h)
	kerneltest.Fine(t, err)
	r.Want(t, "rate", float64(rate))
	left, _, _, err := wear.LifeLeft(h, act)
	kerneltest.Fine(t, err)
	r.Want(t, "left", float64(left))
	again, notes, err := wear.RemeasureAfter(h, act)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "look again", float64(again), float64(left)/2, 1e-12)
	if len(notes) > 0 {
		t.Errorf("notes %v, want none", notes)
	}
}

// No history inside the uncertainties reaches the limit sooner than twice the
// time to the next look; one at their ends reaches it just then.
func TestTheEarliestTimeIsTheWorstCorner(t *testing.T) {
	again, _, err := wear.RemeasureAfter(eye, 400e-6)
	kerneltest.Fine(t, err)
	earliest := math.Inf(1)
	const n = 10
	for i := range n + 1 {
		for j := range n + 1 {
			for k := range n + 1 {
				at := func(i int) float64 { return 2*float64(i)/n - 1 }
				h := eye
				h.New += q.Length(at(i)) * eye.NewU
				h.Now += q.Length(at(j)) * eye.NowU
				h.Hours += q.Time(at(k)) * eye.HoursU
				left, _, _, err := wear.LifeLeft(h, 400e-6)
				kerneltest.Fine(t, err)
				earliest = min(earliest, float64(left))
			}
		}
	}
	kerneltest.Near(t, "twice the next look", 2*float64(again), earliest, 1e-12)
}

func TestNearTheLimitLookAtOnce(t *testing.T) {
	for _, act := range []q.Length{260e-6, 250e-6, 240e-6} { // it reads 250 and may be 15 more
		again, notes, err := wear.RemeasureAfter(eye, act)
		if err != nil || again != 0 || len(notes) != 1 {
			t.Errorf("act at %v: %v, %v, %v; want 0 and a note", act, again, notes, err)
		}
	}
	h := eye
	h.HoursU = h.Hours
	if again, notes, err := wear.RemeasureAfter(h, 400e-6); err != nil || again != 0 || len(notes) != 1 {
		t.Errorf("hours unknown: %v, %v, %v; want 0 and a note", again, notes, err)
	}
}

func TestRemeasureRefuses(t *testing.T) {
	for what, c := range map[string]struct {
		h     wear.History
		act   q.Length
		blame string
	}{
		"no wear":                               {wear.History{New: 1e-4, Now: 1e-4, Hours: hour}, 1, "size now"},
		"an act limit already there when new":   {eye, eye.New, "act limit"},
		"an unknown limit":                      {eye, q.Length(math.NaN()), "act limit"},
		"an uncertainty that is less than none": {wear.History{Now: 1, Hours: hour, NowU: -1}, 2, "uncertainty of a size"},
	} {
		_, _, err := wear.RemeasureAfter(c.h, c.act)
		kerneltest.Blames(t, what, err, c.blame)
	}
}

func ExampleRemeasureAfter() {
	again, _, err := wear.RemeasureAfter(wear.History{New: 50e-6, Now: 250e-6, NowU: 15e-6, Hours: 4000 * 3600}, 400e-6)
	fmt.Printf("after %.0f h %v\n", again/3600, err)
	// Output: after 1256 h <nil>
}
