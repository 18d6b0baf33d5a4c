package assembly_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"wornfit/calc/assembly"
	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
)

var steel = assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510, Expansion: 12.2e-6}

// reference is grab_time.json: our own reference solver in one and two dimensions,
// not a publication.
type reference struct {
	Verification []struct {
		Test   string
		Bi, Fo float64
		Centre float64 `json:"centre_series"`
		Mean   float64 `json:"mean_series"`
	}
	Cases []referenceCase
	Wide  struct {
		Limit struct {
			Two float64 `json:"two_d_width_400mm_no_losses_s"`
			One float64 `json:"one_d_no_losses_s"`
		} `json:"wide_ring_limit"`
	} `json:"verification_2d"`
}

type referenceCase struct {
	ID     string
	Inputs struct {
		A, B, Delta, Tr0, Ts0, Width float64
		Hollow                       float64 `json:"rs_in"`
		Ring, Shaft                  *struct{ K, Rho, C, Alpha float64 }
	}
	Clearance    float64 `json:"initial_diametral_clearance_um"`
	Centred      float64 `json:"t_close_centred_1d_s"`
	Touching     float64 `json:"t_close_touching_1d_s"`
	LongCentred  float64 `json:"t_close_centred_2d_long_shaft_s"`
	LongTouching float64 `json:"t_close_touching_2d_long_shaft_s"`
	LumpCentred  float64 `json:"two_lump_centred_s"`
	LumpTouching float64 `json:"two_lump_touching_s"`
	Peaks        []struct {
		Um       float64 `json:"geff_um"`
		Centred  float64 `json:"centred_s"`
		Touching float64 `json:"touching_one_side_s"`
	} `json:"sensitivity_residual_gap"`
	Hotter []struct {
		At float64 `json:"T_C"`
		S  float64 `json:"t_s"`
	} `json:"time_vs_hub_temperature_centred_1d"`
}

func grabFile(t *testing.T) reference {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/mechanics/grab_time.json")
	kerneltest.Fine(t, err)
	var r reference
	kerneltest.Fine(t, json.Unmarshal(text, &r))
	if len(r.Cases) != 5 {
		t.Fatalf("%d reference cases, want 5", len(r.Cases))
	}
	return r
}

func (c referenceCase) joining() assembly.Joining {
	in := c.Inputs
	j := assembly.Joining{
		Seat: q.Length(2 * in.A), ShaftBore: q.Length(2 * in.Hollow), Outside: q.Length(2 * in.B), Width: q.Length(in.Width),
		Interference: q.Length(in.Delta), Rough: assembly.Peaks, Hub: steel, Shaft: steel, Film: assembly.StillAir,
		HubAt: q.Temperature(in.Tr0 + 273.15), ShaftAt: q.Temperature(in.Ts0 + 273.15), Room: 293.15,
	}
	if m := in.Ring; m != nil {
		j.Hub = assembly.Metal{Conductivity: q.Conductivity(m.K), Density: q.Density(m.Rho), SpecificHeat: q.SpecificHeat(m.C), Expansion: q.Expansion(m.Alpha)}
	}
	if m := in.Shaft; m != nil {
		j.Shaft = assembly.Metal{Conductivity: q.Conductivity(m.K), Density: q.Density(m.Rho), SpecificHeat: q.SpecificHeat(m.C), Expansion: q.Expansion(m.Alpha)}
	}
	return j
}

type grabbing func(assembly.Joining, assembly.Lie) (q.Time, []basis.Note, error)

func grabbed(t *testing.T, f grabbing, j assembly.Joining, lie assembly.Lie) float64 {
	t.Helper()
	got, _, err := f(j, lie)
	kerneltest.Fine(t, err)
	return float64(got)
}

// The reference does not say what it took for the conductivity of air. Hot cases
// come out 0.7 to 1.1 % shorter here, the hotter the more, the one with nitrogen
// 0.7 % longer, centred and touching alike. With 0.0262·(T/300)^0.82 in its place
// all 54 times agree within 0.27 % (tried once); the power 0.85 fits tables of air better.
const airDiffers = 0.0115

func TestGrabTimeAgreesWithTheReference(t *testing.T) {
	for _, c := range grabFile(t).Cases { // K1 K3 K5 D1 D3
		j := c.joining()
		kerneltest.Near(t, c.ID+" centred", grabbed(t, assembly.GrabTime, j, assembly.Centred), c.Centred, airDiffers)
		kerneltest.Near(t, c.ID+" touching", grabbed(t, assembly.GrabTime, j, assembly.Touching), c.Touching, airDiffers)
		for _, p := range c.Peaks {
			j.Rough = q.Length(p.Um * 1e-6)
			kerneltest.Near(t, fmt.Sprint(c.ID, " centred, peaks of ", p.Um), grabbed(t, assembly.GrabTime, j, assembly.Centred), p.Centred, airDiffers)
			kerneltest.Near(t, fmt.Sprint(c.ID, " touching, peaks of ", p.Um), grabbed(t, assembly.GrabTime, j, assembly.Touching), p.Touching, airDiffers)
		}
		j = c.joining()
		for _, h := range c.Hotter {
			j.HubAt = q.Temperature(h.At + 273.15)
			got, _, err := assembly.GrabTime(j, assembly.Centred)
			if h.S == 0 {
				kerneltest.Blames(t, "does not go on", err, "temperature of the hub")
				continue
			}
			kerneltest.Fine(t, err)
			kerneltest.Near(t, fmt.Sprint(c.ID, " at ", h.At), float64(got), h.S, airDiffers)
		}
	}
}

// Its own two lumps are marched through time; here they are one integral with one
// conductivity of air for the whole window: up to 3 % shorter.
func TestEstimateAgreesWithTheReferenceLumps(t *testing.T) {
	for _, c := range grabFile(t).Cases {
		j := c.joining()
		kerneltest.Near(t, c.ID+" centred", grabbed(t, assembly.GrabEstimate, j, assembly.Centred), c.LumpCentred, 0.03)
		kerneltest.Near(t, c.ID+" touching", grabbed(t, assembly.GrabEstimate, j, assembly.Touching), c.LumpTouching, 0.03)
		kerneltest.Near(t, c.ID+" against the rings", grabbed(t, assembly.GrabEstimate, j, assembly.Centred), grabbed(t, assembly.GrabTime, j, assembly.Centred), 0.06)
	}
}

// The rod knows no skin and middle of the shaft: always long, the more the
// narrower the hub. K1 is a plate of 6 mm on a shaft of 25.
func TestAlongTheShaftAgreesInTwoDimensions(t *testing.T) {
	tried := 0
	for _, c := range grabFile(t).Cases {
		if c.LongCentred == 0 {
			continue
		}
		tried++
		long := 1.03
		if c.ID == "K1" {
			long = 1.08
		}
		for lie, want := range map[assembly.Lie]float64{assembly.Centred: c.LongCentred, assembly.Touching: c.LongTouching} {
			if got := grabbed(t, assembly.GrabTimeAlong, c.joining(), lie) / want; !(got > 1 && got < long) {
				t.Errorf("%s: %.4f of the two-dimensional time, want 1 to %g", c.ID, got, long)
			}
		}
	}
	if tried != 4 {
		t.Errorf("%d cases in two dimensions, want 4", tried)
	}
}

// Without losses the reference has 7.97 s in one dimension and 8.02 in two for a
// ring as wide as 16 seats. The rod comes to the two lumps, 6 % longer.
func TestAWideRingDoesNotFeelTheShaft(t *testing.T) {
	r := grabFile(t)
	j := r.Cases[0].joining()
	j.Film = 0
	kerneltest.Near(t, "one dimension", grabbed(t, assembly.GrabTime, j, assembly.Centred), r.Wide.Limit.One, airDiffers)
	j.Width = 0.4
	kerneltest.Near(t, "wide ring", grabbed(t, assembly.GrabTimeAlong, j, assembly.Centred), r.Wide.Limit.Two, 0.06)
	kerneltest.Near(t, "wide ring, two lumps", grabbed(t, assembly.GrabTimeAlong, j, assembly.Centred), grabbed(t, assembly.GrabEstimate, j, assembly.Centred), 0.03)
}

// What the estimate promises, over invented joints of steel.
func TestHowFarTheEstimateIsOff(t *testing.T) {
	tried, lowest, highest, hasty := 0, 9.0, 0.0, 0.0
	for _, lie := range []assembly.Lie{assembly.Centred, assembly.Touching} {
		everyJoint(func(j assembly.Joining) {
			slow, _, err := assembly.GrabTime(j, lie)
			if err != nil {
				return
			}
			quick, notes, err := assembly.GrabEstimate(j, lie)
			if err != nil {
				t.Errorf("%+v: %v", j, err)
				return
			}
			tried++
			ratio := float64(quick / slow)
			if len(notes) > 0 {
				hasty = max(hasty, ratio)
				return
			}
			lowest, highest = min(lowest, ratio), max(highest, ratio)
		})
	}
	if tried < 2500 || lowest < 0.75 || highest > 1.2 || hasty > 1.75 {
		t.Errorf("%d joints: from %.3f to %.3f of the slow answer, %.3f where noted; promised 0.75 to 1.2 and 1.75", tried, lowest, highest, hasty)
	}
	if lowest > 0.8 || highest < 1.1 || hasty < 1.5 {
		t.Errorf("from %.3f to %.3f, %.3f where noted: the doc comment promises too little", lowest, highest, hasty)
	}
}

func everyJoint(each func(assembly.Joining)) {
	for _, seat := range []float64{0.01, 0.025, 0.05, 0.1} {
		for _, out := range []float64{1.3, 2, 4} {
			for _, wide := range []float64{0.3, 1, 2} {
				for _, tight := range []float64{0.3e-3, 0.6e-3, 1e-3, 1.6e-3} {
					for _, hub := range []float64{150, 220, 300, 400} {
						for _, shaft := range []float64{20, -78, -190} {
							each(assembly.Joining{
								Seat: q.Length(seat), Outside: q.Length(seat * out), Width: q.Length(seat * wide), Interference: q.Length(seat * tight),
								Rough: assembly.Peaks, Hub: steel, Shaft: steel, Film: assembly.StillAir,
								HubAt: q.Temperature(hub + 273.15), ShaftAt: q.Temperature(shaft + 273.15), Room: 293.15,
							})
						}
					}
				}
			}
		}
	}
}

// plate is a quarter inch thick with a bore of an inch, heated to 600 °F.
func plate(thou float64) assembly.Joining {
	return assembly.Joining{
		Seat: 0.0254, Outside: 3 * 0.0254, Width: 0.25 * 0.0254, Interference: q.Length(thou * 25.4e-6), Rough: assembly.Peaks,
		Hub: steel, Shaft: steel, Film: assembly.StillAir, HubAt: (600 + 459.67) / 1.8, ShaftAt: 293.15, Room: 293.15,
	}
}

// Common practice, no source: such a plate, two to three thou tight, goes on and
// gives about three seconds. The middle of it does; over the one thou the answer
// swings five-fold. On a long shaft that carries the heat away three thou do, and
// two and a half give eight or more: where the plate sits is worth a thou.
func TestThreeSecondsForAThinPlate(t *testing.T) {
	least, mostly, _, err := assembly.GrabWindow(plate(2.5))
	kerneltest.Fine(t, err)
	if !(least > 2 && least < 3 && mostly > 3 && mostly < 4) {
		t.Errorf("%.2f to %.2f s at two and a half thou; want about three", float64(least), float64(mostly))
	}
	for _, lie := range []assembly.Lie{assembly.Touching, assembly.Centred} {
		if along := grabbed(t, assembly.GrabTimeAlong, plate(3), lie); !(along > 2.5 && along < 3.5) {
			t.Errorf("%.2f s at three thou on a long shaft; want about three", along)
		}
		swing := grabbed(t, assembly.GrabTime, plate(2), lie) / grabbed(t, assembly.GrabTime, plate(3), lie)
		if !(swing > 4.5 && swing < 6) {
			t.Errorf("two thou give %.2f times as long as three; want about five", swing)
		}
	}
}

func TestGrabbingGoesTheRightWay(t *testing.T) {
	base := grabFile(t).Cases[1].joining()
	bare, touching, centred := grabbed(t, assembly.GrabTime, base, assembly.Bare), grabbed(t, assembly.GrabTime, base, assembly.Touching), grabbed(t, assembly.GrabTime, base, assembly.Centred)
	if !(0 < bare && bare < touching && touching < centred) {
		t.Errorf("bare %v, touching %v, centred %v", bare, touching, centred)
	}
	for what, f := range map[string]grabbing{"rings": assembly.GrabTime, "rod": assembly.GrabTimeAlong, "estimate": assembly.GrabEstimate} {
		was := grabbed(t, f, base, assembly.Touching)
		for change, c := range map[string]struct {
			longer bool
			spoil  func(j *assembly.Joining)
		}{
			"tighter":          {false, func(j *assembly.Joining) { j.Interference *= 1.5 }},
			"hotter hub":       {true, func(j *assembly.Joining) { j.HubAt += 30 }},
			"colder shaft":     {true, func(j *assembly.Joining) { j.ShaftAt -= 60 }},
			"rougher":          {true, func(j *assembly.Joining) { j.Rough *= 2 }},
			"heavier hub":      {true, func(j *assembly.Joining) { j.Outside *= 1.5 }},
			"hollow shaft":     {false, func(j *assembly.Joining) { j.ShaftBore = j.Seat / 2 }},
			"losing more heat": {false, func(j *assembly.Joining) { j.Film *= 3 }},
		} {
			j := base
			c.spoil(&j)
			if now := grabbed(t, f, j, assembly.Touching); now > was != c.longer {
				t.Errorf("%s, %s: %.3f s after %.3f", what, change, now, was)
			}
		}
	}
	if along := grabbed(t, assembly.GrabTimeAlong, base, assembly.Touching); along <= touching {
		t.Errorf("%v s with the shaft carrying heat away, %v without", along, touching)
	}
}

func TestGrabRefusals(t *testing.T) {
	for _, c := range []struct {
		blame string
		spoil func(j *assembly.Joining)
	}{
		{"seat", func(j *assembly.Joining) { j.Seat = 0 }},
		{"bore of the shaft", func(j *assembly.Joining) { j.ShaftBore = j.Seat }},
		{"outside of the hub", func(j *assembly.Joining) { j.Outside = j.Seat }},
		{"width of the hub", func(j *assembly.Joining) { j.Width = q.Length(math.NaN()) }},
		{"interference", func(j *assembly.Joining) { j.Interference = 0 }},
		{"gap of the roughness", func(j *assembly.Joining) { j.Rough = 0 }},
		{"film", func(j *assembly.Joining) { j.Film = -1 }},
		{"expansion of the hub", func(j *assembly.Joining) { j.Hub.Expansion = 0 }},
		{"expansion of the shaft", func(j *assembly.Joining) { j.Shaft.Expansion = 0 }},
		{"conductivity of the hub", func(j *assembly.Joining) { j.Hub.Conductivity = 0 }},
		{"density of the shaft", func(j *assembly.Joining) { j.Shaft.Density = 0 }},
		{"room temperature", func(j *assembly.Joining) { j.Room = -20 }},
		{"temperature of the hub", func(j *assembly.Joining) { j.HubAt = 350 }},
		{"temperature of the hub", func(j *assembly.Joining) { j.HubAt = j.ShaftAt }},
		// A brass hub on steel, hardly tight, without losses: loose at the common temperature.
		{"interference", func(j *assembly.Joining) { j.Hub.Expansion, j.Interference, j.Film = 19e-6, 5e-6, 0 }},
	} {
		j := plate(2)
		c.spoil(&j)
		for _, f := range []grabbing{assembly.GrabTime, assembly.GrabTimeAlong, assembly.GrabEstimate} {
			_, _, err := f(j, assembly.Centred)
			kerneltest.Blames(t, c.blame, err, c.blame)
		}
	}
	_, _, err := assembly.GrabTime(plate(2), assembly.Bare+1)
	kerneltest.Blames(t, "lying nowhere", err, "lie")
	_, _, _, err = assembly.GrabWindow(assembly.Joining{})
	kerneltest.Blames(t, "nothing stated", err, "seat")
}

func ExampleGrabWindow() {
	// A quarter-inch plate with a bore of an inch, at 600 °F: the seconds hang on
	// the thou.
	for _, thou := range []float64{2, 2.5, 3} {
		steel := assembly.Metal{Conductivity: 46, Density: 7850, SpecificHeat: 510, Expansion: 12.2e-6}
		least, mostly, _, err := assembly.GrabWindow(assembly.Joining{
			Seat: 0.0254, Outside: 0.0762, Width: 0.00635, Interference: q.Length(thou * 25.4e-6), Rough: assembly.Peaks,
			Hub: steel, Shaft: steel, Film: assembly.StillAir, HubAt: (600 + 459.67) / 1.8, ShaftAt: 293.15, Room: 293.15,
		})
		fmt.Printf("%.1f thou tight: %.1f to %.1f s %v\n", thou, least, mostly, err)
	}
	// Output:
	// 2.0 thou tight: 4.7 to 6.2 s <nil>
	// 2.5 thou tight: 2.5 to 3.1 s <nil>
	// 3.0 thou tight: 1.0 to 1.1 s <nil>
}

func BenchmarkKernels(b *testing.B) {
	for _, k := range assembly.Kernels() {
		x := make([]float64, len(k.Args))
		for i, a := range k.Args {
			x[i] = a.Range.Lo + (a.Range.Hi-a.Range.Lo)/3
		}
		if k.Args[0].Name == "seat" && k.Args[1].Name == "shaft_bore" { // a joint that goes on
			copy(x, []float64{0.04, 0, 0.08, 0.04, 40e-6, 3e-6, 25, 573.15, 293.15, 293.15, 46, 7850, 510, 12.2e-6, 46, 7850, 510, 12.2e-6})
		}
		b.Run(k.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				k.Value(x)
			}
		})
	}
}
