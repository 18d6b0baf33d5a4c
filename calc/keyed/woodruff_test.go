package keyed_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	"wornfit/calc/keyed"
	q "wornfit/calc/quantity"
)

// The table of the standard prints the length of the flat top besides: 0.248, 0.491,
// 0.740 and 0.992 in for discs of 1/4, 1/2, 3/4 and 1 in (from memory of ANSI B17.2). A
// thousandth is what the rounding of the height leaves.
func TestTheFlatOfAWoodruffKeyIsAsPrinted(t *testing.T) {
	for _, c := range []struct {
		number int
		flat   float64
	}{{202, 0.248}, {404, 0.491}, {606, 0.740}, {608, 0.992}} {
		k, grade, err := keyed.WoodruffKey(c.number)
		kerneltest.Fine(t, err)
		if grade != basis.Secondary {
			t.Errorf("%d: grade %v", c.number, grade)
		}
		k.Stands = 0
		l, err := keyed.WoodruffLength(k)
		kerneltest.Fine(t, err)
		if math.Abs(float64(l)/0.0254-c.flat) > 1.2e-3 {
			t.Errorf("%d: %v in long, printed %v", c.number, l/0.0254, c.flat)
		}
	}
}

// What four numbers stand out was read on a page: 204, 303, 304, 403.
func TestWhatAWoodruffKeyStandsOut(t *testing.T) {
	for number, out := range map[int]float64{204: 0.0312, 303: 0.0469, 304: 0.0469, 403: 0.0625} {
		k, _, err := keyed.WoodruffKey(number)
		kerneltest.Fine(t, err)
		if math.Abs(float64(k.Stands)/0.0254-out) > 1e-4 {
			t.Errorf("%d stands out %v in, printed %v", number, k.Stands/0.0254, out)
		}
	}
}

// Second route: the sides summed in strips of the disc.
func TestWoodruffSidesByStrips(t *testing.T) {
	k := keyed.Woodruff{Shaft: 0.030, Width: 0.006, Disc: 0.025, Height: 0.0106, Stands: 0.003}
	got, err := keyed.WoodruffHolds(k, 150e6, 200e6, 300e6)
	kerneltest.Fine(t, err)
	const n = 200000
	var hub, seat float64
	for i := range n {
		at := (float64(i) + 0.5) / n * float64(k.Height)
		r := float64(k.Disc) / 2
		strip := 2 * math.Sqrt(r*r-(r-at)*(r-at)) * float64(k.Height) / n
		if at < float64(k.Height-k.Stands) {
			seat += strip
		} else {
			hub += strip
		}
	}
	kerneltest.Near(t, "hub", float64(got.Hub), 200e6*hub*0.015, 1e-5) // a strip cut by the joint
	kerneltest.Near(t, "seat", float64(got.Seat), 300e6*seat*0.015, 1e-5)
	length, err := keyed.WoodruffLength(k)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "shear", float64(got.Shear), 150e6*0.006*float64(length)*0.015, 1e-12)
}

// A key that is half its disc and stands out next to nothing shears over a
// diameter; a shaft turned down shortens the chord and gives the hub more.
func TestWoodruffLimitsAndDirections(t *testing.T) {
	k := keyed.Woodruff{Shaft: 0.03, Width: 0.005, Disc: 0.02, Height: 0.01}
	l, err := keyed.WoodruffLength(k)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "half a disc", float64(l), 0.02, 1e-15)
	whole, err := keyed.WoodruffHolds(k, 1e8, 1e8, 1e8)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "half its area", float64(whole.Seat), 1e8*math.Pi*1e-4/2*0.015, 1e-12)
	if whole.Hub != 0 {
		t.Errorf("nothing stands out, yet the hub holds %v", whole.Hub)
	}
	k.Stands = 0.0025
	was, err := keyed.WoodruffHolds(k, 1e8, 1e8, 1e8)
	kerneltest.Fine(t, err)
	k.Stands, k.Shaft = 0.0035, 0.028
	now, err := keyed.WoodruffHolds(k, 1e8, 1e8, 1e8)
	kerneltest.Fine(t, err)
	if !(now.Shear < was.Shear && now.Hub > was.Hub && now.Seat < was.Seat) {
		t.Errorf("turned down: %+v, was %+v", now, was)
	}
}

// Every row is a key no higher than half its disc, and its number is its size.
func TestEveryWoodruffKey(t *testing.T) {
	found := 0
	for number := range 2000 {
		k, _, err := keyed.WoodruffKey(number)
		var refusal *basis.Refusal
		if errors.As(err, &refusal) {
			continue
		}
		kerneltest.Fine(t, err)
		found++
		if w, d := float64(number/100)/32*0.0254, float64(number%100)/8*0.0254; math.Abs(float64(k.Width)-w) > 1e-12 || math.Abs(float64(k.Disc)-d) > 1e-12 {
			t.Errorf("%d is %v wide on %v", number, k.Width, k.Disc)
		}
		if low := k.Disc/2 - k.Height; !(low > 0.3e-3 && low < 3e-3) {
			t.Errorf("%d is %v short of half its disc", number, low)
		}
	}
	if found != 39 {
		t.Errorf("%d keys, want 39", found)
	}
}

func TestWoodruffRefusals(t *testing.T) {
	holds := func(spoil func(*keyed.Woodruff), shear, hub, shaft q.Stress) func() error {
		return func() error {
			k := keyed.Woodruff{Shaft: 0.03, Width: 0.005, Disc: 0.02, Height: 0.009, Stands: 0.0025}
			spoil(&k)
			_, err := keyed.WoodruffHolds(k, shear, hub, shaft)
			return err
		}
	}
	sound := func(*keyed.Woodruff) {}
	blamed(t, []blame{
		{"no disc", "disc of the key", holds(func(k *keyed.Woodruff) { k.Disc = 0 }, 1, 1, 1)},
		{"more than half a disc", "height of the key", holds(func(k *keyed.Woodruff) { k.Height = 0.011 }, 1, 1, 1)},
		{"out of its seat", "what stands out of the shaft", holds(func(k *keyed.Woodruff) { k.Stands = 0.009 }, 1, 1, 1)},
		{"no shaft", "shaft diameter", holds(func(k *keyed.Woodruff) { k.Shaft = 0 }, 1, 1, 1)},
		{"wider than its shaft", "width of the key", holds(func(k *keyed.Woodruff) { k.Width = 0.03 }, 1, 1, 1)},
		{"no shear", "shear stress", holds(sound, q.Stress(math.NaN()), 1, 1)},
		{"no hub", "crushing stress of the hub", holds(sound, 1, 0, 1)},
		{"no seat", "crushing stress of the shaft", holds(sound, 1, 1, -1)},
		{"no such number", "number of the key", func() error { _, _, err := keyed.WoodruffKey(407); return err }},
	})
}

type blame struct {
	what, blame string
	call        func() error
}

func blamed(t *testing.T, all []blame) {
	t.Helper()
	for _, c := range all {
		kerneltest.Blames(t, c.what, c.call(), c.blame)
	}
}

func ExampleWoodruffHolds() {
	// A 608 key in a 1 in shaft, an iron hub that stands 70 MPa.
	k, _, err := keyed.WoodruffKey(608)
	fmt.Println(err)
	k.Shaft = 0.0254
	t, err := keyed.WoodruffHolds(k, 210e6, 70e6, 350e6)
	fmt.Printf("shear %.0f N m, hub %.0f N m, seat %.0f N m %v\n", t.Shear, t.Hub, t.Seat, err)
	// Output:
	// <nil>
	// shear 307 N m, hub 52 N m, seat 687 N m <nil>
}
