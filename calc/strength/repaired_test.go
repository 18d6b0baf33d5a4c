package strength_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wornfit/calc/basis"
	"wornfit/calc/kernel/kerneltest"
	q "wornfit/calc/quantity"
	"wornfit/calc/strength"
)

// The printed tables of DIN 743-2 beside its formulas, both from memory: the
// table is rounded to a tenth, torsion from the rounded bending.
func TestSeatFactorsMeetTheirPrintedTable(t *testing.T) {
	for _, row := range []struct{ tensile, pressed, keyed, pressedTwist, keyedTwist float64 }{
		{400, 1.8, 2.1, 1.2, 1.3}, {500, 2.0, 2.3, 1.3, 1.4}, {600, 2.2, 2.5, 1.4, 1.5}, {700, 2.3, 2.6, 1.5, 1.6},
		{900, 2.6, 2.9, 1.7, 1.7}, {1000, 2.7, 3.0, 1.8, 1.8}, {1100, 2.8, 3.1, 1.8, 1.8}, {1200, 2.9, 3.2, 1.9, 1.9},
	} {
		p, notes, err := strength.PressedEdge(q.Stress(row.tensile * 1e6))
		kerneltest.Fine(t, err)
		k, more, err := strength.KeyedHub(q.Stress(row.tensile * 1e6))
		kerneltest.Fine(t, err)
		if len(notes)+len(more) > 0 {
			t.Errorf("%g MPa: notes %v %v, want none", row.tensile, notes, more)
		}
		what := fmt.Sprintf("%g MPa", row.tensile)
		const rounding, twice = 0.05, 0.07
		between(t, what+" pressed", p.Bending, row.pressed-rounding, row.pressed+rounding)
		between(t, what+" keyed", k.Bending, row.keyed-rounding, row.keyed+rounding)
		between(t, what+" pressed, twisted", p.Twisting, row.pressedTwist-twice, row.pressedTwist+twice)
		between(t, what+" keyed, twisted", k.Twisting, row.keyedTwist-twice, row.keyedTwist+twice)
	}
	_, notes, err := strength.PressedEdge(300e6)
	if err != nil || len(notes) != 1 || notes[0].Grade != basis.Extrapolated {
		t.Errorf("soft steel: notes %v, %v; want one", notes, err)
	}
	_, notes, err = strength.KeyedHub(1.4e9)
	if err != nil || len(notes) != 1 || notes[0].Grade != basis.Extrapolated {
		t.Errorf("hard steel: notes %v, %v; want one", notes, err)
	}
}

// Every row is a true range, weak and said to be, and the order of trade sense
// holds: relieving helps, threading under a spray hurts, a loaded edge is worst.
func TestTreatments(t *testing.T) {
	all := map[string]strength.Treatment{}
	for _, row := range strength.Treatments() {
		got, notes, err := strength.TreatmentFor(row.Name)
		kerneltest.Fine(t, err)
		if got != row || len(notes) != 1 || !notes[0].Grade.Weak() || notes[0].Source == "" || !strings.Contains(notes[0].Says, row.Says) {
			t.Errorf("%s: %v, notes %v; want the row and one weak note", row.Name, got, notes)
		}
		if !(row.Kept.Lo > 0 && row.Kept.Lo < row.Kept.Hi && row.Kept.Hi < 1) {
			t.Errorf("%s keeps %v; want a range between 0 and 1", row.Name, row.Kept)
		}
		all[row.Name] = row
	}
	if len(all) != len(strength.Treatments()) || len(all) < 8 {
		t.Errorf("%d names of %d treatments", len(all), len(strength.Treatments()))
	}
	for _, c := range [][2]string{{"welded", "welded-relieved"}, {"sprayed-threaded", "sprayed"}, {"pressed-edge", "pressed-edge-idle"}, {"pressed-edge", "knurled"}} {
		worse, better := all[c[0]].Kept, all[c[1]].Kept
		if !(worse.Lo < better.Lo && worse.Hi < better.Hi) {
			t.Errorf("%s keeps %v, %s %v; want the first worse", c[0], worse, c[1], better)
		}
	}
	// The shop's rule of half for a weld as it comes, and a chromium plate's half in Shigley.
	for _, name := range []string{"welded", "chromium-plated"} {
		if !all[name].Kept.Has(0.5) {
			t.Errorf("%s keeps %v; half is not in it", name, all[name].Kept)
		}
	}
	// Shigley's 14 % for a sprayed shaft.
	if !all["sprayed"].Kept.Has(0.86) {
		t.Errorf("sprayed keeps %v; 0.86 is not in it", all["sprayed"].Kept)
	}
}

// Second route: the safety of the whole shaft before and after, from moment to
// Goodman's line.
func TestFatigueLeftIsTheRatioOfTheSafeties(t *testing.T) {
	was := strength.Journal{Diameter: 0.030, Factor: 1.5, Kept: 1}
	now := strength.Journal{Diameter: 0.029, Factor: 1.9, Kept: 0.8}
	safety := func(j strength.Journal) float64 {
		σ, err := strength.Bending(strength.Section{Bore: 0.01, Outside: j.Diameter}, 200)
		kerneltest.Fine(t, err)
		limit, err := strength.EnduranceLimit(600e6, strength.Factors{Surface: 0.8, Size: 0.86, Load: 1, Reliability: 0.9, Kept: j.Kept})
		kerneltest.Fine(t, err)
		n, err := strength.GoodmanSafety(strength.Swing{Amplitude: σ * q.Stress(j.Factor)}, limit, 600e6)
		kerneltest.Fine(t, err)
		return n
	}
	left, err := strength.FatigueLeft(0.01, was, now)
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "left", left, safety(now)/safety(was), 1e-12)

	plain := strength.Journal{Diameter: 0.025, Factor: 1, Kept: 1}
	left, err = strength.FatigueLeft(0, plain, strength.Journal{Diameter: 0.024, Factor: 1, Kept: 1})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "without notch", left, 0.96*0.96*0.96, 1e-12)
	left, err = strength.FatigueLeft(0, strength.Journal{Diameter: 0.025, Factor: 2, Kept: 1}, strength.Journal{Diameter: 0.0245, Factor: 1.5, Kept: 1})
	kerneltest.Fine(t, err)
	if !(left > 1) {
		t.Errorf("a better radius leaves %v, want more than before", left)
	}
}

// The size factor FatigueLeft leaves out gains 1 % for a tenth of the diameter
// off, as its doc comment says.
func TestWhatTheSmallerSizeGains(t *testing.T) {
	for _, d := range []float64{0.02, 0.04, 0.08} {
		gain := must(strength.SizeFactor(q.Length(0.9*d))) / must(strength.SizeFactor(q.Length(d)))
		between(t, fmt.Sprintf("%g m", d), gain, 1, 1.018)
	}
}

// Moore's line against the bending modulus of the slotted section itself, about
// the axis across the slot, in slices: yielding starts in the corner of the slot,
// so less than the plain section must be left, but not less than the 25 % the old
// shafting codes take off for a keyway (from memory).
func TestAKeywayAgainstItsSection(t *testing.T) {
	for _, k := range []strength.Keyway{{1, 0.25, 0.125}, {0.05, 0.014, 0.0055}, {0.025, 0.008, 0.004}} {
		left, notes, err := strength.KeywayStrengthLeft(k)
		kerneltest.Fine(t, err)
		if len(notes) > 0 {
			t.Errorf("%v: notes %v, want none", k, notes)
		}
		section := slotted(float64(k.Width/k.Diameter), float64(k.Depth/k.Diameter))
		between(t, fmt.Sprintf("%v", k), left, 0.75, section)
	}
	left, _, err := strength.KeywayStrengthLeft(strength.Keyway{Diameter: 0.05})
	kerneltest.Fine(t, err)
	kerneltest.Near(t, "no keyway", left, 1, 1e-15)
	_, notes, err := strength.KeywayStrengthLeft(strength.Keyway{Diameter: 1, Width: 0.25, Depth: 0.22})
	if err != nil || len(notes) != 1 || notes[0].Grade != basis.Extrapolated {
		t.Errorf("a deep keyway: notes %v, %v; want one", notes, err)
	}
}

// slotted is the section modulus of a round bar of diameter 1 with a slot at the
// top, as part of the whole bar's.
func slotted(width, depth float64) float64 {
	const n = 100000
	var area, first, second float64
	for i := range n {
		y := (float64(i)+0.5)/n - 0.5
		across := 2 * math.Sqrt(0.25-y*y)
		if y > 0.5-depth {
			across = max(0, across-width)
		}
		area, first, second = area+across/n, first+across*y/n, second+across*y*y/n
	}
	middle := first / area
	inertia := second - area*middle*middle
	return inertia / (0.5 + math.Abs(middle)) / (math.Pi / 32)
}

// What tests found lies no higher than the full factor of the shape; hard steel
// feels more, an end mill more than a disc cutter.
func TestKeywayFactors(t *testing.T) {
	at := func(cut strength.KeywayCut, tensile q.Stress) strength.KeywayFactors {
		f, notes, err := strength.KeywayFatigue(cut, tensile)
		kerneltest.Fine(t, err)
		if len(notes) != 1 || notes[0].Grade != basis.Memory {
			t.Errorf("%s: notes %v, want the one from memory", cut, notes)
		}
		if !(f.Bending.Lo > 1 && f.Bending.Lo <= f.Bending.Hi && f.Twisting.Lo > 1 && f.Twisting.Lo <= f.Twisting.Hi) {
			t.Errorf("%s: %v; want true ranges above 1", cut, f)
		}
		return f
	}
	soft, hard := at(strength.EndMilled, 500e6), at(strength.EndMilled, 900e6)
	if !(soft.Bending.Lo < hard.Bending.Lo && soft.Twisting.Lo < hard.Twisting.Lo) {
		t.Errorf("soft %v, hard %v; want hard steel to feel more", soft, hard)
	}
	sled := at(strength.SledRunner, 500e6)
	if !(sled.Bending.Lo < soft.Bending.Lo && sled.Bending.Hi < soft.Bending.Hi) {
		t.Errorf("sled-runner %v, end-milled %v; want the disc cutter milder in bending", sled, soft)
	}
	// With the hub on it, its edge frets too: DIN's factor is no milder than a bare keyway's least.
	hub, _, err := strength.KeyedHub(500e6)
	kerneltest.Fine(t, err)
	if !(hub.Bending > soft.Bending.Lo && hub.Twisting > soft.Twisting.Lo) {
		t.Errorf("under a hub %v, bare %v; want the hub worse", hub, soft)
	}
}

func TestRepairRefusals(t *testing.T) {
	good := strength.Journal{Diameter: 0.02, Factor: 1, Kept: 1}
	left := func(was, now strength.Journal) error { _, err := strength.FatigueLeft(0, was, now); return err }
	key := func(d, w, h q.Length) error {
		_, _, err := strength.KeywayStrengthLeft(strength.Keyway{Diameter: d, Width: w, Depth: h})
		return err
	}
	nan := q.Length(math.NaN())
	blamed(t, []blame{
		{"unknown work", "treatment", func() error { _, _, err := strength.TreatmentFor("glued"); return err }},
		{"no steel", "tensile strength", func() error { _, _, err := strength.PressedEdge(0); return err }},
		{"no steel", "tensile strength", func() error { _, _, err := strength.KeyedHub(q.Stress(nan)); return err }},
		{"no steel", "tensile strength", func() error { _, _, err := strength.KeywayFatigue(strength.EndMilled, 0); return err }},
		{"chiselled", "cut of the keyway", func() error { _, _, err := strength.KeywayFatigue("chiselled", 5e8); return err }},
		{"grown", "diameter after", func() error { return left(good, strength.Journal{Diameter: 0.021, Factor: 1, Kept: 1}) }},
		{"no factor", "fatigue factor after", func() error { return left(good, strength.Journal{Diameter: 0.02, Kept: 1}) }},
		{"no factor", "fatigue factor before", func() error { return left(strength.Journal{Diameter: 0.02, Kept: 1}, good) }},
		{"nothing kept", "part kept after", func() error { return left(good, strength.Journal{Diameter: 0.02, Factor: 1}) }},
		{"more than all kept", "part kept before", func() error { return left(strength.Journal{Diameter: 0.02, Factor: 1, Kept: 1.1}, good) }},
		{"no shaft", "diameter", func() error { return key(nan, 0.001, 0.001) }},
		{"too wide", "width of the keyway", func() error { return key(0.02, 0.011, 0.001) }},
		{"too deep", "depth of the keyway", func() error { return key(0.02, 0.006, 0.006) }},
		{"unknown depth", "depth of the keyway", func() error { return key(0.02, 0.006, nan) }},
	})
}

func ExampleFatigueLeft() {
	// A 25 mm journal trued to 24.5, its corner cut from 1 mm radius to 0.5.
	corner := func(d, r q.Length) float64 {
		kt, _, _ := strength.FilletBending(strength.Shoulder{Large: 0.030, Small: d, Radius: r})
		sensitivity, _, _ := strength.NotchSensitivity(600e6, r)
		kf, _ := strength.FatigueFactor(kt, sensitivity)
		return kf
	}
	left, err := strength.FatigueLeft(0,
		strength.Journal{Diameter: 0.025, Factor: corner(0.025, 0.001), Kept: 1},
		strength.Journal{Diameter: 0.0245, Factor: corner(0.0245, 0.0005), Kept: 1})
	fmt.Printf("%.0f %% %v\n", 100*left, err)
	// Output: 81 % <nil>
}

func ExampleKeywayStrengthLeft() {
	left, notes, err := strength.KeywayStrengthLeft(strength.Keyway{Diameter: 0.032, Width: 0.008, Depth: 0.004})
	fmt.Printf("%.4f %v %v\n", left, notes, err)
	// Output: 0.8125 [] <nil>
}

func ExampleTreatmentFor() {
	row, notes, err := strength.TreatmentFor("chromium-plated")
	fmt.Println(row.Kept.Lo, row.Kept.Hi, notes[0].Grade, err)
	// Output: 0.4 0.8 memory <nil>
}

// Every kernel at the middle of its ranges: none allocates.
func BenchmarkKernels(b *testing.B) {
	for _, k := range strength.Kernels() {
		x := make([]float64, len(k.Args))
		for i, a := range k.Args {
			x[i] = a.Range.Mid()
		}
		b.Run(k.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				k.Value(x)
			}
		})
	}
}
